/**
 * The list of codecs. A new one is one more record here; what can be requested, read and refused follows from it.
 */
import { type Container, containers } from '../containers/track.ts';
import { av1 } from './av1.ts';
import type { Codec, CodecFilm, CodecRecord } from './codec.ts';
import { h264 } from './h264.ts';
import { hevc } from './hevc.ts';
import type { NamedCodec } from './named-codecs.ts';
import { png } from './png.ts';
import { prores } from './prores.ts';
import { qtrle } from './qtrle.ts';
import { vp9 } from './vp9.ts';

/**
 * The codecs of videos by name: what a file's extension or an option selects. `png` is also the codec of a folder of
 * frames.
 */
export type CodecName = 'h264' | 'prores' | 'qtrle' | 'png' | 'vp9' | NamedCodec;

export const codecs: Readonly<Record<CodecName, CodecRecord>> = { h264, prores, qtrle, png, vp9, av1, hevc };

/** The container in which a codec is checked, and written if no other is requested. */
export function firstContainer(name: CodecName): Container {
  return containers.find((one) => codecs[name].holders[one] !== undefined) ?? 'mov';
}

/** A container's codec if no other is requested. */
export const usualCodec: Readonly<Record<Container, CodecName>> = { mp4: 'h264', mov: 'prores', webm: 'vp9' };

export function isCodecName(name: unknown): name is CodecName {
  return typeof name === 'string' && Object.hasOwn(codecs, name);
}

export function codecOf(
  name: CodecName,
  { width, height, rate }: Pick<CodecFilm, 'width' | 'height' | 'rate'>,
  { opaque, compatible }: Pick<CodecFilm, 'opaque' | 'compatible'>,
): Codec {
  return codecs[name].make({ width, height, rate, opaque, compatible });
}
