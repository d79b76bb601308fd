/**
 * Single pictures of takes, in grey, without a file between.
 */
import type { GreyPicture } from '../../src/recording/picture.ts';
import { screenOf } from './takes/draw-screen.ts';
import { tilted } from './takes/film.ts';
import type { Take } from './takes/take.ts';

export function greyPictureOf(take: Take, frame: number): GreyPicture {
  const screen = screenOf(take);
  screen.draw(frame);
  const flat = screen.canvas.toBuffer('raw');
  const raw = take.tilt === undefined ? flat : tilted(flat, take);
  const levels = new Uint8Array(take.width * take.height);
  for (let pixel = 0; pixel < levels.length; pixel++) {
    const at = 4 * pixel;
    levels[pixel] = Math.round(0.0722 * raw[at]! + 0.7152 * raw[at + 1]! + 0.2126 * raw[at + 2]!);
  }
  return { width: take.width, height: take.height, levels };
}
