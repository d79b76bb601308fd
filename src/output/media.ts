/**
 * What a file of footage or sound holds, asked of ffprobe: its length as an exact fraction, its size, its rate.
 */
import { existsSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { z } from 'zod';
import {
  compare,
  divide,
  type Fraction,
  fraction,
  fractionFromDecimal,
  multiply,
  toNumber,
  zero,
} from '../scene/fraction.ts';
import { probe } from './ffmpeg.ts';

export interface Media {
  readonly kind: 'media';
  /** Of the picture where there is one, else of the sound; undefined where the file does not say. */
  readonly durationSeconds: Fraction | undefined;
  /** Undefined for a file of sound alone (a cover picture does not count). */
  readonly picture: MediaPicture | undefined;
  readonly hasAudio: boolean;
}

export interface MediaPicture {
  /** As it is to be seen, in square pixels: after rotation and with the shape of its pixels worked in. */
  readonly width: number;
  readonly height: number;
  /** Frames a second; undefined where they come at no fixed rate. */
  readonly rate: Fraction | undefined;
  /** The matrix of its colours by ffmpeg's name (`bt709`, `smpte170m`); undefined where the file does not say. */
  readonly matrix: string | undefined;
}

export interface UnreadableMedia {
  readonly kind: 'unreadable';
  /** A sentence with the file's name. */
  readonly message: string;
}

/** Throws a `MachineFailure` where ffprobe is missing. */
export async function probeMedia(file: string, signal?: AbortSignal): Promise<Media | UnreadableMedia> {
  const path = resolve(file); // So that no part of a name is taken for an option or a protocol.
  if (!existsSync(path)) return { kind: 'unreadable', message: `there is no file ${file}` };
  const parsed = answerShape.safeParse(await probe(path, ['-show_streams', '-show_format'], signal));
  if (!parsed.success) return { kind: 'unreadable', message: `${basename(file)} cannot be read as a video or a sound` };
  const { streams, format } = parsed.data;
  const video = streams.find((stream) => stream.codec_type === 'video' && stream.disposition?.attached_pic !== 1);
  const audio = streams.find((stream) => stream.codec_type === 'audio');
  const picture = video === undefined ? undefined : pictureOf(video);
  if (picture === undefined && audio === undefined) {
    return { kind: 'unreadable', message: `${basename(file)} holds neither a picture nor a sound that can be read` };
  }
  const main = picture === undefined ? audio : video;
  return {
    kind: 'media',
    durationSeconds: durationOf(main) ?? decimal(format.duration),
    picture,
    hasAudio: audio !== undefined,
  };
}

/** The number of frames in the file's first picture stream, by reading every packet of it (and decoding none). */
export async function countFrames(file: string, signal?: AbortSignal): Promise<number> {
  const wanted = ['-count_packets', '-select_streams', 'v:0', '-show_entries', 'stream=nb_read_packets'];
  const parsed = countShape.safeParse(await probe(file, wanted, signal));
  const count = parsed.success ? parsed.data.streams[0]?.nb_read_packets : undefined;
  return count === undefined ? 0 : Number(count);
}

const streamShape = z.object({
  codec_type: z.string().optional(),
  width: z.number().optional(),
  height: z.number().optional(),
  sample_aspect_ratio: z.string().optional(),
  avg_frame_rate: z.string().optional(),
  time_base: z.string().optional(),
  duration_ts: z.number().optional(),
  duration: z.string().optional(),
  color_space: z.string().optional(),
  disposition: z.object({ attached_pic: z.number().optional() }).optional(),
  side_data_list: z.array(z.object({ rotation: z.number().optional() })).optional(),
});

const answerShape = z.object({
  streams: z.array(streamShape),
  format: z.object({ duration: z.string().optional() }),
});

const countShape = z.object({ streams: z.array(z.object({ nb_read_packets: z.string().optional() })) });

function pictureOf(stream: z.infer<typeof streamShape>): MediaPicture | undefined {
  const { width, height } = stream;
  if (width === undefined || height === undefined || width === 0 || height === 0) return undefined;
  const wide = Math.round(width * toNumber(ratio(stream.sample_aspect_ratio, ':') ?? fraction(1n)));
  const rotation = stream.side_data_list?.find((data) => data.rotation !== undefined)?.rotation ?? 0;
  const onItsSide = Math.abs(rotation) % 180 === 90;
  return {
    width: onItsSide ? height : wide,
    height: onItsSide ? wide : height,
    rate: ratio(stream.avg_frame_rate, '/'),
    matrix: stream.color_space === 'unknown' ? undefined : stream.color_space,
  };
}

function durationOf(stream: z.infer<typeof streamShape> | undefined): Fraction | undefined {
  const tick = ratio(stream?.time_base, '/');
  if (stream?.duration_ts !== undefined && tick !== undefined) return multiply(fraction(stream.duration_ts), tick);
  return decimal(stream?.duration);
}

/** `30000/1001`, `4:3`; undefined for anything else, and for `0/0` and `0:1`, which stand for "not known". */
function ratio(text: string | undefined, sign: '/' | ':'): Fraction | undefined {
  const [top, bottom, ...more] = (text ?? '').split(sign).map((part) => fractionFromDecimal(part));
  if (top === undefined || bottom === undefined || more.length > 0 || compare(bottom, zero) === 0) return undefined;
  return compare(top, zero) === 0 ? undefined : divide(top, bottom);
}

function decimal(text: string | undefined): Fraction | undefined {
  return text === undefined ? undefined : fractionFromDecimal(text);
}
