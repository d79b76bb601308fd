/**
 * What the engine is measured against: the same film by the plain way, and what the encoder alone takes.
 */
import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { closeSync, openSync, writeSync } from 'node:fs';
import type { Painter } from '../../src/output/painters/painter.ts';
import { canvasPixelFormat, frameCanvas } from '../../src/output/pixels/canvas.ts';

export interface Format {
  readonly ending: string;
  /** As `renderFilm` is asked for it. */
  readonly wish: { readonly lossless?: boolean; readonly png?: boolean };
  /** Whether the pictures must come out of ours as they do of the plain way, to the bit. */
  readonly exact: boolean;
  readonly draw: 'board' | 'overlay';
  /** Filters and encoder, as one would write them. */
  readonly words: readonly string[];
}

const tags = 'setparams=range=tv:color_primaries=bt709:color_trc=bt709:colorspace=bt709';
const straight = 'format=gbrap,unpremultiply=inplace=1';

export const formats: Readonly<Record<string, Format>> = {
  mp4: {
    ...{ ending: 'mp4', wish: {}, exact: false, draw: 'board' },
    words: [
      ...['-vf', `scale=out_color_matrix=bt709:out_range=tv,format=yuv420p,${tags}`],
      ...['-c:v', 'libx264', '-preset', 'veryfast', '-crf', '18'],
    ],
  },
  mov: {
    ...{ ending: 'mov', wish: {}, exact: false, draw: 'overlay' },
    words: [
      ...['-vf', `${straight},scale=out_color_matrix=bt709:out_range=tv,${tags},format=yuva444p10le`],
      ...['-c:v', 'prores_ks', '-profile:v', '4444', '-alpha_bits', '16', '-qscale:v', '2'],
    ],
  },
  qtrle: {
    ...{ ending: 'mov', wish: { lossless: true }, exact: true, draw: 'board' },
    words: ['-vf', 'format=rgb24', '-c:v', 'qtrle'],
  },
  // ffmpeg and the canvas differ by 1 in how they round what shows half.
  png: {
    ...{ ending: 'mov', wish: { png: true }, exact: false, draw: 'overlay' },
    words: ['-vf', `${straight},format=rgba`, '-c:v', 'png'],
  },
  webm: {
    ...{ ending: 'webm', wish: {}, exact: false, draw: 'overlay' },
    words: [
      ...['-vf', `${straight},scale=out_color_matrix=bt709:out_range=tv,format=yuva420p,${tags}`],
      ...['-c:v', 'libvpx-vp9', '-crf', '10', '-b:v', '0', '-deadline', 'realtime', '-cpu-used', '8', '-row-mt', '1'],
      ...['-auto-alt-ref', '0', '-lag-in-frames', '0'],
    ],
  },
};

/** Every frame drawn in full and piped. */
export async function renderPlain(painter: Painter, format: Format, file: string): Promise<void> {
  const canvas = frameCanvas(painter.width, painter.height, undefined);
  const child = spawn('ffmpeg', words(painter, format, 'pipe:0', file), { stdio: ['pipe', 'inherit', 'inherit'] });
  const ended = once(child, 'exit');
  for (let frame = 0; frame < painter.frameCount; frame++) {
    canvas.draw(painter, frame);
    if (!child.stdin.write(canvas.pixels())) await once(child.stdin, 'drain');
  }
  child.stdin.end();
  await ended;
}

/** The different frames into a file of raw pictures; returns how many there are. */
export function drawDifferent(painter: Painter, file: string): number {
  const canvas = frameCanvas(painter.width, painter.height, undefined);
  const handle = openSync(file, 'w');
  let count = 0;
  let before: string | undefined;
  for (let frame = 0; frame < painter.frameCount; frame++) {
    const digest = painter.digestAt(frame);
    if (digest === before) continue;
    before = digest;
    canvas.draw(painter, frame);
    writeSync(handle, canvas.pixels());
    count += 1;
  }
  closeSync(handle);
  return count;
}

export function encodeDrawn(painter: Painter, format: Format, drawn: string, file: string): void {
  execFileSync('ffmpeg', words(painter, format, drawn, file), { stdio: 'inherit' });
}

function words(painter: Painter, format: Format, input: string, file: string): string[] {
  const rate = `${painter.rate.numerator}/${painter.rate.denominator}`;
  const pixels = painter.transparent ? canvasPixelFormat.replace('0', 'a') : canvasPixelFormat;
  return [
    ...['-v', 'error', '-y', '-f', 'rawvideo', '-pix_fmt', pixels, '-video_size', `${painter.width}x${painter.height}`],
    ...['-framerate', rate, '-i', input, ...format.words, file],
  ];
}
