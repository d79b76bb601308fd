/**
 * A take as a file: drawn frame by frame, tilted, encoded.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { writeFileSync } from 'node:fs';
import { uprightCorners } from '../../../src/recording/corners.ts';
import { homographyOf, inverted } from '../../../src/recording/homography.ts';
import { screenOf } from './draw-screen.ts';
import type { Take, Truth } from './take.ts';
import { picturesOf, truthOf } from './truth.ts';

/** Writes the recording, and its truth beside it as `FILE.truth.json`; returns the truth. */
export async function film(take: Take, file: string): Promise<Truth> {
  const { width, height, rate, encoding } = take;
  const { crf, noise, scaledTo, isVariable } = encoding;
  const screen = screenOf(take);
  const filters = [
    ...(isVariable ? [`setpts='(N+2*floor(N/5)+7*floor(N/23))/(${rate}*TB)'`] : []),
    ...(scaledTo === undefined ? [] : [`scale=${scaledTo.width}:${scaledTo.height}:flags=bicubic`]),
    ...(noise > 0 ? [`noise=alls=${noise}:allf=t:all_seed=${take.seed}`] : []),
    'scale=out_color_matrix=bt709:out_range=tv',
    'format=yuv420p',
  ];
  const words = [
    ...[
      '-v',
      'error',
      '-f',
      'rawvideo',
      '-pix_fmt',
      'bgr0',
      '-s',
      `${width}x${height}`,
      '-r',
      String(rate),
      '-i',
      'pipe:0',
    ],
    ...['-vf', filters.join(','), ...(isVariable ? ['-vsync', 'vfr'] : [])],
    ...['-c:v', 'libx264', '-preset', 'veryfast', '-crf', String(crf), '-g', '250', '-colorspace', 'bt709', '-y', file],
  ];
  const child = spawn('ffmpeg', words, { stdio: ['pipe', 'inherit', 'inherit'] });
  const closed = once(child, 'close');
  let key: string | undefined;
  let pixels: Buffer = Buffer.alloc(0);
  for (const { frame } of picturesOf(take)) {
    if (screen.keyOf(frame) !== key) {
      key = screen.keyOf(frame);
      screen.draw(frame);
      pixels = take.tilt === undefined ? screen.canvas.toBuffer('raw') : tilted(screen.canvas.toBuffer('raw'), take);
    }
    if (!child.stdin.write(pixels)) await once(child.stdin, 'drain');
  }
  child.stdin.end();
  const [status] = await closed;
  if (status !== 0) throw new Error(`ffmpeg ended with ${status}`);
  const truth = truthOf(take);
  writeFileSync(`${file}.truth.json`, `${JSON.stringify({ take, truth })}\n`);
  return truth;
}

/** The screen as a camera sees it that stands a little aside: bilinear, two by two samples a pixel. */
export function tilted(flat: Buffer, { width, height, tilt, look }: Take): Buffer {
  const whole = uprightCorners(0, 0, width, height);
  const [a, b, c, d, e, f, g, h, i] = inverted(homographyOf(whole.map((from, index) => ({ from, to: tilt![index]! }))));
  const seen = Buffer.alloc(flat.length);
  const around = look.background.map((level) => level * 0.5);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const sums = [0, 0, 0];
      for (const [dx, dy] of [
        [0.25, 0.25],
        [0.75, 0.25],
        [0.25, 0.75],
        [0.75, 0.75],
      ] as const) {
        const [px, py] = [column + dx, row + dy];
        const w = g * px + h * py + i;
        const [x, y] = [(a * px + b * py + c) / w - 0.5, (d * px + e * py + f) / w - 0.5];
        const [left, top] = [Math.floor(x), Math.floor(y)];
        const isOff = left < 0 || top < 0 || left + 1 >= width || top + 1 >= height;
        const [partX, partY] = [x - left, y - top];
        const at = 4 * (top * width + left);
        for (let channel = 0; channel < 3; channel++) {
          if (isOff) {
            sums[channel]! += around[2 - channel]!;
            continue;
          }
          const upper = flat[at + channel]! * (1 - partX) + flat[at + 4 + channel]! * partX;
          const below = at + 4 * width + channel;
          const lower = flat[below]! * (1 - partX) + flat[below + 4]! * partX;
          sums[channel]! += upper * (1 - partY) + lower * partY;
        }
      }
      const to = 4 * (row * width + column);
      for (let channel = 0; channel < 3; channel++) seen[to + channel] = Math.round(sums[channel]! / 4);
    }
  }
  return seen;
}
