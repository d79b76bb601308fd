/**
 * Which codecs there are. One more is one more record here; what can be asked for, read and refused follows from it.
 */
import type { Container } from '../containers/track.ts';
import { av1 } from './av1.ts';
import type { Codec, CodecFilm, CodecRecord } from './codec.ts';
import { h264 } from './h264.ts';
import { hevc } from './hevc.ts';
import { png } from './png.ts';
import { prores } from './prores.ts';
import { qtrle } from './qtrle.ts';
import { vp9 } from './vp9.ts';

/** The codecs of videos by name; `png` is that of a folder of frames too. */
const records = { h264, prores, qtrle, png, vp9, av1, hevc } as const;

export type CodecName = keyof typeof records;

export const codecs: Readonly<Record<CodecName, CodecRecord>> = records;

/** What a container holds where nothing else is asked for. */
export const usualCodec: Readonly<Record<Container, CodecName>> = { mp4: 'h264', mov: 'prores', webm: 'vp9' };

export function isCodecName(name: unknown): name is CodecName {
  return typeof name === 'string' && Object.hasOwn(records, name);
}

export function codecOf(
  name: CodecName,
  { width, height, rate }: Pick<CodecFilm, 'width' | 'height' | 'rate'>,
  { opaque, compatible }: Pick<CodecFilm, 'opaque' | 'compatible'>,
): Codec {
  return codecs[name].make({ width, height, rate, opaque, compatible });
}
