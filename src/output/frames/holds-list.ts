/**
 * The list in a folder that contains each picture once: when each is shown.
 */
import type { Painter } from '../painters/painter.ts';

/** Its name; no frame has that name. */
export const holdsFile = 'holds.json';

/** A picture on screen from frame `in` to frame `out`, `out` not included; frame 0 is the first. */
export interface HeldPicture {
  readonly file: string;
  readonly in: number;
  readonly out: number;
}

type FilmSize = Pick<Painter, 'rate' | 'frameCount' | 'width' | 'height'>;

/** JSON, one picture a line, in the order in which they are shown; a picture that returns is listed again. */
export function holdsText({ rate, frameCount, width, height }: FilmSize, list: readonly HeldPicture[]): string {
  const head = JSON.stringify({
    ...{ holds: 1, rate: `${rate.numerator}/${rate.denominator}`, frames: frameCount, width, height },
  });
  const lines = list.map((picture) => `  ${JSON.stringify(picture)}`).join(',\n');
  return `${head.slice(0, -1)},"pictures":[\n${lines}\n]}\n`;
}
