/**
 * The file format of an encoded segment: a line of JSON that describes what follows, then the bytes of the packets one
 * after the other. Equal segments give equal files.
 */

import { createHash } from 'node:crypto';
import { closeSync, openSync, readSync } from 'node:fs';
import { open, readFile, writeFile } from 'node:fs/promises';
import type { Encoded } from '../codecs/codec.ts';
import type { Packet } from '../containers/track.ts';

/** Where a packet is in its file, and what it is. Lengths in bytes. */
export interface PacketPlace {
  readonly at: number;
  readonly length: number;
  readonly alphaLength: number;
  readonly key: boolean;
}

export interface SegmentIndex {
  readonly config: Uint8Array;
  readonly packets: readonly PacketPlace[];
}

export async function writeSegment(file: string, { config, packets }: Encoded): Promise<void> {
  const sizes = packets.map(({ bytes, alpha, key }) => [bytes.length, alpha?.length ?? 0, key ? 1 : 0]);
  const parts = packets.flatMap(({ bytes, alpha }) => (alpha === undefined ? [bytes] : [bytes, alpha]));
  const said = { segment: 1, config: Buffer.from(config).toString('base64'), packets: sizes };
  const line = JSON.stringify({ ...said, sum: sumOf(said, parts) });
  await writeFile(file, Buffer.concat([Buffer.from(`${line}\n`), ...parts]));
}

/** Whether a segment's file contains exactly what was written into it. */
export async function isUntouched(file: string): Promise<boolean> {
  const bytes = await readFile(file);
  const end = bytes.indexOf(10);
  try {
    const { sum, ...said } = JSON.parse(bytes.toString('utf8', 0, end)) as { readonly sum?: unknown };
    return sum === sumOf(said, [bytes.subarray(end + 1)]);
  } catch {
    return false;
  }
}

function sumOf(said: object, parts: readonly Uint8Array[]): string {
  const hash = createHash('sha256').update(JSON.stringify(said));
  for (const part of parts) hash.update(part);
  return hash.digest('hex');
}

/** The places of packets that are not in a file yet. */
export function packetPlaces({ config, packets }: Encoded): SegmentIndex {
  const places = packets.map(({ bytes, alpha, key }): PacketPlace => {
    return { at: 0, length: bytes.length, alphaLength: alpha?.length ?? 0, key };
  });
  return { config, packets: places };
}

/** Undefined if the file is not a complete segment of `pictures` packets. */
export async function readSegment(file: string, pictures: number): Promise<SegmentIndex | undefined> {
  const handle = await open(file, 'r').catch(() => undefined);
  if (handle === undefined) return undefined;
  try {
    const { size } = await handle.stat();
    const head = Buffer.alloc(Math.min(size, 4096 + 32 * pictures));
    await handle.read(head, 0, head.length, 0);
    const end = head.indexOf(10);
    return end < 0 ? undefined : indexOf(head.toString('utf8', 0, end), end + 1, size, pictures);
  } finally {
    await handle.close();
  }
}

function indexOf(line: string, start: number, size: number, pictures: number): SegmentIndex | undefined {
  const said = parsed(line);
  if (said === undefined || said.packets.length !== pictures) return undefined;
  let at = start;
  const packets = said.packets.map(([length = 0, alphaLength = 0, key]): PacketPlace => {
    const place = { at, length, alphaLength, key: key === 1 };
    at += length + alphaLength;
    return place;
  });
  return at === size ? { config: Buffer.from(said.config, 'base64'), packets } : undefined;
}

function parsed(
  line: string,
): { readonly config: string; readonly packets: readonly (readonly number[])[] } | undefined {
  try {
    const said: unknown = JSON.parse(line);
    if (typeof said !== 'object' || said === null || !('segment' in said) || said.segment !== 1) return undefined;
    if (!('config' in said) || typeof said.config !== 'string') return undefined;
    if (!('packets' in said) || !Array.isArray(said.packets)) return undefined;
    return { config: said.config, packets: said.packets };
  } catch {
    return undefined;
  }
}

/** Reads packets from their files on request; one file is open at a time. */
export class PacketReader {
  #file: string | undefined;
  #handle = -1;
  #last: { readonly place: PacketPlace; readonly packet: Packet } | undefined;

  read(file: string, place: PacketPlace): Packet {
    if (this.#file !== file) {
      this.close();
      this.#handle = openSync(file, 'r');
      this.#file = file;
    }
    if (this.#last?.place === place) return this.#last.packet;
    const { at, length, alphaLength, key } = place;
    const bytes = Buffer.allocUnsafe(length + alphaLength);
    readSync(this.#handle, bytes, 0, bytes.length, at);
    const packet = {
      bytes: bytes.subarray(0, length),
      key,
      alpha: alphaLength === 0 ? undefined : bytes.subarray(length),
    };
    this.#last = { place, packet };
    return packet;
  }

  close(): void {
    if (this.#file !== undefined) closeSync(this.#handle);
    this.#file = undefined;
    this.#last = undefined;
  }
}
