/**
 * What a footage or sound file contains, according to ffprobe: its length as an exact fraction, its size, its rate.
 */
import { existsSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { basename, resolve } from 'node:path';
import { z } from 'zod';
import {
  add,
  compare,
  divide,
  type Fraction,
  fraction,
  fractionFromDecimal,
  multiply,
  toNumber,
  zero,
} from '../../scene/fraction.ts';
import { otherThanFile } from '../machine/file-kind.ts';
import { whatIsRefused } from './allowed-input.ts';
import { probe } from './ffmpeg.ts';

export interface Media {
  readonly kind: 'media';
  /** Of the picture if there is one, otherwise of the sound; undefined if the file does not say. */
  readonly durationSeconds: Fraction | undefined;
  /** Undefined for a sound-only file (a cover picture does not count). */
  readonly picture: MediaPicture | undefined;
  readonly hasAudio: boolean;
  /** Whether it is one picture and no film: a .png, a .jpg. */
  readonly isStill: boolean;
}

export interface MediaPicture {
  /** As displayed, in square pixels: after rotation and correction of the pixel shape. */
  readonly width: number;
  readonly height: number;
  /** Frames a second; undefined if the rate is not fixed. */
  readonly rate: Fraction | undefined;
  /** Its colour matrix by ffmpeg's name (`bt709`, `smpte170m`); undefined if the file does not say. */
  readonly matrix: string | undefined;
  /** How its pixels are stored in the file. */
  readonly kept: KeptAs;
  /** The name of its kind of high dynamic range; undefined for an ordinary picture. */
  readonly hdr: string | undefined;
}

/** Pixels as a file stores them: before rotation, and before they are made square. */
export interface KeptAs {
  readonly width: number;
  readonly height: number;
  /** By ffmpeg's name: `yuv420p`. */
  readonly format: string | undefined;
  /** Whether black is 0 and white 255, instead of 16 and 235. */
  readonly fullRange: boolean;
}

export interface UnreadableMedia {
  readonly kind: 'unreadable';
  /** A sentence with the file's name. */
  readonly message: string;
}

/** Throws a `MachineFailure` if ffprobe is missing. */
export async function probeMedia(file: string, signal?: AbortSignal): Promise<Media | UnreadableMedia> {
  const path = resolve(file); // So that no part of a name is taken for an option or a protocol.
  const unreadable = (message: string): UnreadableMedia => ({ kind: 'unreadable', message });
  if (!existsSync(path)) return unreadable(`there is no file ${file}`);
  const other = otherThanFile(path);
  if (other !== undefined) return unreadable(`${basename(file)} is ${other}, not a recording`);
  const complaints: string[] = [];
  const parsed = answerShape.safeParse(await probe(path, ['-show_streams', '-show_format'], signal, complaints));
  if (!parsed.success) return unreadable(`${basename(file)} ${await whyUnreadable(path, complaints)}`);
  const { streams, format } = parsed.data;
  const video = streams.find((stream) => stream.codec_type === 'video' && stream.disposition?.attached_pic !== 1);
  const audio = streams.find((stream) => stream.codec_type === 'audio');
  const picture = video === undefined ? undefined : pictureOf(video);
  if (picture === undefined && audio === undefined) {
    return unreadable(`${basename(file)} contains neither a readable picture nor a readable sound`);
  }
  const main = picture === undefined ? audio : video;
  return {
    kind: 'media',
    durationSeconds: durationOf(main) ?? decimal(format.duration),
    picture,
    hasAudio: audio !== undefined,
    isStill: isStillFormat(format.format_name),
  };
}

/** A recorder writes the list of pictures (the `moov` box of ISO/IEC 14496-12) last, so a truncated file lacks it. */
async function whyUnreadable(path: string, complaints: readonly string[]): Promise<string> {
  if (complaints.some((line) => line.includes('not on whitelist'))) return `is ${whatIsRefused(path)}`;
  const lacksList = complaints.some((line) => line.includes('moov atom not found'));
  if (!lacksList || !(await beginsWithBox(path))) return 'cannot be read as a video or a sound';
  return 'is cut off: its end is missing, and with it the list of its pictures; copy or record it again';
}

/** ffmpeg follows the file extension; a text file named .mp4 lacks the list too. */
async function beginsWithBox(path: string): Promise<boolean> {
  const file = await open(path);
  try {
    const { bytesRead, buffer } = await file.read(Buffer.alloc(8), 0, 8, 0);
    return bytesRead === 8 && ['ftyp', 'mdat', 'wide', 'free', 'skip'].includes(buffer.toString('latin1', 4));
  } finally {
    await file.close();
  }
}

/**
 * Where the file really ends, in seconds, if that is more than a second before `promised`, the end according to its own
 * header; undefined if it is complete. Reads packets near the end, and decodes none.
 */
export async function cutOffAt(file: string, promised: Fraction, signal?: AbortSignal): Promise<Fraction | undefined> {
  const from = Math.max(0, Math.floor(toNumber(promised)) - 2);
  const isCut = (end: Fraction): boolean => compare(add(end, fraction(1n)), promised) < 0;
  const near = await lastPacketEnd(file, `${from}%${from + 4}`, signal);
  if (!isCut(near)) return undefined;
  // A recording of a screen may have no picture for minutes: then only the whole rest shows it.
  const end = await lastPacketEnd(file, `${from}%`, signal);
  return isCut(end) ? end : undefined;
}

/** When the last packet in that interval ends; zero if there is none. */
async function lastPacketEnd(file: string, interval: string, signal: AbortSignal | undefined): Promise<Fraction> {
  const wanted = ['-read_intervals', interval, '-show_entries', 'packet=pts_time,duration_time'];
  const parsed = packetsShape.safeParse(await probe(resolve(file), wanted, signal));
  const ends = (parsed.success ? parsed.data.packets : []).flatMap(({ pts_time, duration_time }) => {
    const start = decimal(pts_time);
    return start === undefined ? [] : [add(start, decimal(duration_time) ?? zero)];
  });
  return ends.reduce((latest, one) => (compare(one, latest) > 0 ? one : latest), zero);
}

/** The number of frames in the file's first picture stream, by reading every packet (and decoding none). */
export async function countFrames(file: string, signal?: AbortSignal): Promise<number> {
  const wanted = ['-count_packets', '-select_streams', 'v:0', '-show_entries', 'stream=nb_read_packets'];
  const parsed = countShape.safeParse(await probe(resolve(file), wanted, signal));
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
  color_range: z.string().optional(),
  color_transfer: z.string().optional(),
  pix_fmt: z.string().optional(),
  disposition: z.object({ attached_pic: z.number().optional() }).optional(),
  side_data_list: z
    .array(z.object({ side_data_type: z.string().optional(), rotation: z.number().optional() }))
    .optional(),
});

const answerShape = z.object({
  streams: z.array(streamShape),
  format: z.object({ duration: z.string().optional(), format_name: z.string().optional() }),
});

const packetsShape = z.object({
  packets: z.array(z.object({ pts_time: z.string().optional(), duration_time: z.string().optional() })),
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
    kept: {
      width,
      height,
      format: stream.pix_fmt,
      fullRange: stream.color_range === 'pc' || stream.pix_fmt?.startsWith('yuvj') === true,
    },
    hdr: hdrOf(stream),
  };
}

/**
 * From the transfer functions of ITU-T H.273, table 3, those of ITU-R BT.2100; and the sign of a Dolby Vision stream.
 */
function hdrOf(stream: z.infer<typeof streamShape>): string | undefined {
  if (stream.color_transfer === 'smpte2084') return 'PQ';
  if (stream.color_transfer === 'arib-std-b67') return 'HLG';
  const isDolbyVision = stream.side_data_list?.some(
    ({ side_data_type }) => side_data_type?.startsWith('DOVI') === true,
  );
  return isDolbyVision === true ? 'Dolby Vision' : undefined;
}

/** ffmpeg reads one picture with `png_pipe` and the like. */
function isStillFormat(name: string | undefined): boolean {
  return name?.endsWith('_pipe') === true;
}

function durationOf(stream: z.infer<typeof streamShape> | undefined): Fraction | undefined {
  const tick = ratio(stream?.time_base, '/');
  if (stream?.duration_ts !== undefined && tick !== undefined) return multiply(fraction(stream.duration_ts), tick);
  return decimal(stream?.duration);
}

/** `30000/1001`, `4:3`; undefined for anything else, and for `0/0` and `0:1`, which mean "not known". */
function ratio(text: string | undefined, separator: '/' | ':'): Fraction | undefined {
  const [top, bottom, ...more] = (text ?? '').split(separator).map((part) => fractionFromDecimal(part));
  if (top === undefined || bottom === undefined || more.length > 0 || compare(bottom, zero) === 0) return undefined;
  return compare(top, zero) === 0 ? undefined : divide(top, bottom);
}

function decimal(text: string | undefined): Fraction | undefined {
  return text === undefined ? undefined : fractionFromDecimal(text);
}
