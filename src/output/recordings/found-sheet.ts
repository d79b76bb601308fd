/**
 * Pictures of a recording with the outline of the board that was found, for the eye: one for each stretch of time.
 */
import { writeFile } from 'node:fs/promises';
import { type CanvasRenderingContext2D, createCanvas } from 'canvas';
import type { Corners } from '../../recording/corners.ts';
import type { RgbPicture } from '../../recording/picture.ts';
import type { Stretch } from '../../recording/stretches.ts';
import { writeAtomically } from '../machine/atomic-write.ts';
import { rgbPictures } from './pictures.ts';
import type { Recording } from './recording.ts';

/** Pictures on the sheet at most. */
const mostPictures = 9;

/** Pixels of a picture's width on the sheet, where there is more than one. */
const widthOnSheet = 960;

/** Writes the sheet to `file`, a .png by its absolute path. Throws a `MachineFailure`, or the signal's reason. */
export async function writeFoundSheet(
  recording: Recording,
  stretches: readonly Stretch[],
  file: string,
  signal?: AbortSignal,
): Promise<void> {
  const shown = chosen(stretches).map(momentOf);
  const scale = shown.length === 1 ? 1 : Math.min(1, widthOnSheet / recording.picture.width);
  const size = {
    width: Math.round(recording.picture.width * scale),
    height: Math.round(recording.picture.height * scale),
  };
  const columns = Math.ceil(Math.sqrt(shown.length));
  const canvas = createCanvas(columns * size.width, Math.ceil(shown.length / columns) * size.height);
  const context = canvas.getContext('2d');
  for (const [index, moment] of shown.entries()) {
    const [left, top] = [(index % columns) * size.width, Math.floor(index / columns) * size.height];
    const picture = await pictureAt(recording, moment.seconds, size, signal);
    if (picture !== undefined) put(context, picture, left, top);
    context.save();
    context.translate(left, top);
    label(context, moment, size.height);
    if (moment.corners !== undefined) {
      context.scale(scale, scale);
      outline(context, moment.corners, 1 / scale);
    }
    context.restore();
  }
  await writeAtomically(file, (temp) => writeFile(temp, canvas.toBuffer('image/png')));
}

interface Moment {
  readonly seconds: number;
  readonly corners: Corners | undefined;
  readonly kind: Stretch['kind'];
}

/** All stretches, or some evenly taken. */
function chosen(stretches: readonly Stretch[]): readonly Stretch[] {
  const step = Math.max(1, stretches.length / mostPictures);
  const count = Math.min(stretches.length, mostPictures);
  return Array.from({ length: count }, (_, index) => stretches[Math.floor(index * step)]!);
}

/** A picture that is there: the first of its stretch, or one in the midst of a move. */
function momentOf(stretch: Stretch): Moment {
  switch (stretch.kind) {
    case 'hidden':
      return { seconds: stretch.from, corners: undefined, kind: stretch.kind };
    case 'still':
      return { seconds: stretch.from, corners: stretch.corners, kind: stretch.kind };
    case 'moving': {
      const middle = stretch.path[stretch.path.length >> 1];
      return { seconds: middle?.seconds ?? stretch.from, corners: middle?.corners, kind: stretch.kind };
    }
    default:
      return stretch satisfies never;
  }
}

async function pictureAt(
  recording: Recording,
  seconds: number,
  size: { readonly width: number; readonly height: number },
  signal: AbortSignal | undefined,
): Promise<RgbPicture | undefined> {
  for await (const { picture } of rgbPictures(
    recording,
    { size, ...(recording.isStill ? {} : { from: seconds }) },
    signal,
  ))
    return { ...picture, rgb: Uint8Array.from(picture.rgb) };
  return undefined;
}

function put(context: CanvasRenderingContext2D, { width, height, rgb }: RgbPicture, left: number, top: number): void {
  const image = context.createImageData(width, height);
  for (let pixel = 0; pixel < width * height; pixel++) {
    for (let channel = 0; channel < 3; channel++) image.data[4 * pixel + channel] = rgb[3 * pixel + channel]!;
    image.data[4 * pixel + 3] = 255;
  }
  context.putImageData(image, left, top);
}

/** A bright line with dark edges, which is seen on any ground, and rings at the corners. */
function outline(context: CanvasRenderingContext2D, corners: Corners, px: number): void {
  for (const [colour, width] of [
    ['rgba(0,0,0,0.8)', 3.5 * px],
    ['rgb(255,220,0)', 1.5 * px],
  ] as const) {
    context.strokeStyle = colour;
    context.lineWidth = width;
    context.beginPath();
    for (const [x, y] of corners) context.lineTo(x, y);
    context.closePath();
    context.stroke();
    for (const [x, y] of corners) {
      context.beginPath();
      context.arc(x, y, 8 * px, 0, 2 * Math.PI);
      context.stroke();
    }
  }
}

function label(context: CanvasRenderingContext2D, { seconds, kind }: Moment, height: number): void {
  const px = Math.max(12, Math.round(height / 36));
  const words = `${seconds.toFixed(3)} s  ${kind}`;
  context.font = `${px}px sans-serif`;
  context.textBaseline = 'bottom';
  context.fillStyle = 'rgba(0,0,0,0.75)';
  context.fillRect(0, height - 1.5 * px, context.measureText(words).width + px, 1.5 * px);
  context.fillStyle = 'white';
  context.fillText(words, 0.5 * px, height - 0.25 * px);
}
