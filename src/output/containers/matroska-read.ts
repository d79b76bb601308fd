/**
 * The packets of a Matroska file with one track, as ffmpeg writes them for us.
 */
import { ids } from './ebml.ts';
import type { Packet } from './track.ts';

interface Element {
  readonly id: number;
  readonly content: Uint8Array;
}

/** The contents of such a file. `config`: the track's CodecPrivate, empty if there is none. */
export function readMatroska(file: Uint8Array): { readonly config: Uint8Array; readonly packets: readonly Packet[] } {
  const packets: Packet[] = [];
  let config = new Uint8Array();
  for (const segment of elements(file)) {
    if (segment.id !== ids.segment) continue;
    for (const part of elements(segment.content)) {
      if (part.id === ids.tracks)
        config = Uint8Array.from(
          inner(inner([part], ids.tracks), ids.trackEntry).find(({ id }) => id === ids.codecPrivate)?.content ?? [],
        );
      if (part.id !== ids.cluster) continue;
      for (const block of elements(part.content)) {
        if (block.id === ids.simpleBlock) packets.push(simple(block.content));
        if (block.id === ids.blockGroup) packets.push(group(block.content));
      }
    }
  }
  return { config, packets };
}

/** The children of those elements that have that id. */
function inner(of: readonly Element[], id: number): readonly Element[] {
  return of.filter((each) => each.id === id).flatMap((each) => elements(each.content));
}

/** A block begins with its track (one byte), its time (two) and its flags; 0x80: a keyframe (RFC 9559, 10.2). */
function simple(block: Uint8Array): Packet {
  return { bytes: block.subarray(4), key: (block[3]! & 0x80) !== 0 };
}

function group(content: Uint8Array): Packet {
  const parts = elements(content);
  const block = parts.find(({ id }) => id === ids.block)?.content ?? new Uint8Array(4);
  const more = inner(inner(parts, ids.blockAdditions), ids.blockMore);
  return {
    bytes: block.subarray(4),
    key: !parts.some(({ id }) => id === ids.referenceBlock),
    alpha: more.find(({ id }) => id === ids.blockAdditional)?.content,
  };
}

function elements(bytes: Uint8Array): Element[] {
  const found: Element[] = [];
  let at = 0;
  while (at < bytes.length) {
    const idLength = widthOf(bytes[at]!);
    const lengthLength = widthOf(bytes[at + idLength] ?? 1);
    const id = numberAt(bytes, at, idLength, 0xff);
    // Without its marker: eight bytes would not fit into a number.
    const length = numberAt(bytes, at + idLength, lengthLength, 0xff >> lengthLength);
    const start = at + idLength + lengthLength;
    // All ones: unknown length, up to the end.
    const end = length >= 2 ** (7 * lengthLength) - 1 ? bytes.length : Math.min(bytes.length, start + length);
    found.push({ id, content: bytes.subarray(start, end) });
    at = end;
  }
  return found;
}

/** How many bytes a number takes, given by the highest bit set in its first byte. */
function widthOf(first: number): number {
  return Math.clz32(first) - 23;
}

/** `mask` is applied to the first byte. */
function numberAt(bytes: Uint8Array, at: number, length: number, mask: number): number {
  let value = (bytes[at] ?? 0) & mask;
  for (let index = 1; index < length; index++) value = value * 256 + (bytes[at + index] ?? 0);
  return value;
}
