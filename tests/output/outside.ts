/**
 * What other programs make of our files: ffmpeg's decoders and ffprobe. Nothing here uses `src/output`, so that a
 * mistake there cannot hide itself.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { z } from 'zod';

/** The first picture stream by ffprobe, with its frames counted by decoding them. */
export function probeVideo(file: string) {
  const words = ['-v', 'error', '-select_streams', 'v:0', '-count_frames', '-show_streams', '-of', 'json', file];
  return videoShape.parse(JSON.parse(execFileSync('ffprobe', words, { encoding: 'utf8' }))).streams[0]!;
}

const videoShape = z.object({
  streams: z.array(
    z.object({
      codec_name: z.string(),
      codec_tag_string: z.string(),
      pix_fmt: z.string(),
      width: z.number(),
      height: z.number(),
      r_frame_rate: z.string(),
      avg_frame_rate: z.string(),
      nb_read_frames: z.string(),
      start_time: z.string(),
      color_range: z.string().optional(),
      color_space: z.string().optional(),
      color_transfer: z.string().optional(),
      color_primaries: z.string().optional(),
      tags: z.record(z.string(), z.string()).optional(),
    }),
  ),
});

/** The times in seconds at which the frames of a file are shown. */
export function frameTimes(file: string): readonly number[] {
  // Before ffmpeg 5 it bears the other name.
  const wanted = 'frame=pts_time,pkt_pts_time';
  const words = ['-v', 'error', '-select_streams', 'v:0', '-show_entries', wanted, '-of', 'json', file];
  const { frames } = framesShape.parse(JSON.parse(execFileSync('ffprobe', words, { encoding: 'utf8' })));
  return frames.map(({ pts_time, pkt_pts_time }) => Number(pts_time ?? pkt_pts_time));
}

const framesShape = z.object({
  frames: z.array(z.object({ pts_time: z.string().optional(), pkt_pts_time: z.string().optional() })),
});

/** Codec, channels and decoded length of the first sound; undefined where there is none. */
export function probeSound(file: string): { readonly codec: string; readonly seconds: number } | undefined {
  const words = ['-v', 'error', '-select_streams', 'a:0', '-show_entries', 'stream=codec_name', '-of', 'csv=p=0', file];
  const codec = execFileSync('ffprobe', words, { encoding: 'utf8' }).trim();
  if (codec === '') return undefined;
  return { codec, seconds: decodeSound(file).length / soundRate };
}

export const soundRate = 48_000;

/** The first sound, one channel, `soundRate` samples a second between -1 and 1. */
export function decodeSound(file: string): Float32Array {
  const bytes = ffmpeg(['-i', file, '-map', '0:a:0', '-ac', '1', '-ar', String(soundRate), '-f', 'f32le', '-']);
  return new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
}

/**
 * All frames of a file as R, G, B, A. The matrix is said outright and not read from the file, so that right colours
 * come from right values. FFmpeg drops VP9's alpha unless it decodes by libvpx.
 */
export function decodeFrames(file: string): {
  readonly pixels: Uint8Array;
  readonly width: number;
  readonly height: number;
  readonly count: number;
} {
  const { width, height, codec_name, pix_fmt } = probeVideo(file);
  const decoder = codec_name === 'vp9' ? ['-c:v', 'libvpx-vp9'] : [];
  const convert = pix_fmt.includes('rgb')
    ? ''
    : 'scale=in_color_matrix=bt709:in_range=tv:flags=accurate_rnd+full_chroma_int+bilinear,';
  const pixels = ffmpeg([...decoder, '-i', file, '-vf', `${convert}format=rgba`, '-f', 'rawvideo', '-']);
  return { pixels, width, height, count: pixels.length / (width * height * 4) };
}

export function ffmpeg(words: readonly string[], input?: Uint8Array): Buffer {
  const options = { maxBuffer: 2 ** 28, ...(input === undefined ? {} : { input }) };
  return execFileSync('ffmpeg', ['-v', 'error', '-y', ...words], options);
}

/** A folder of its own for a test file: names in it, what it holds (hidden names too), and how to remove it. */
export function scratchFolder() {
  const folder = mkdtempSync(join(tmpdir(), 'proofreel-output-'));
  const at = (name: string): string => join(folder, name);
  return {
    folder,
    at,
    list: (name = ''): readonly string[] => readdirSync(at(name)).sort(),
    remove: (): void => rmSync(folder, { recursive: true, force: true }),
  };
}
