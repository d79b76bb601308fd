/**
 * The elements that Matroska files are made of (EBML, RFC 8794): an id, a length, content.
 */

/** Ids with their marker bits, as in RFC 9559. */
export const ids = {
  ebml: 0x1a45dfa3,
  docType: 0x4282,
  docTypeVersion: 0x4287,
  docTypeReadVersion: 0x4285,
  segment: 0x18538067,
  seekHead: 0x114d9b74,
  seek: 0x4dbb,
  seekId: 0x53ab,
  seekPosition: 0x53ac,
  info: 0x1549a966,
  timestampScale: 0x2ad7b1,
  duration: 0x4489,
  muxingApp: 0x4d80,
  writingApp: 0x5741,
  tracks: 0x1654ae6b,
  trackEntry: 0xae,
  trackNumber: 0xd7,
  trackUid: 0x73c5,
  trackType: 0x83,
  flagLacing: 0x9c,
  codecId: 0x86,
  codecPrivate: 0x63a2,
  defaultDuration: 0x23e383,
  maxBlockAdditionId: 0x55ee,
  video: 0xe0,
  pixelWidth: 0xb0,
  pixelHeight: 0xba,
  alphaMode: 0x53c0,
  flagInterlaced: 0x9a,
  colourSpace: 0x2eb524,
  colour: 0x55b0,
  matrix: 0x55b1,
  range: 0x55b9,
  transfer: 0x55ba,
  primaries: 0x55bb,
  cluster: 0x1f43b675,
  timestamp: 0xe7,
  simpleBlock: 0xa3,
  blockGroup: 0xa0,
  block: 0xa1,
  blockAdditions: 0x75a1,
  blockMore: 0xa6,
  blockAddId: 0xee,
  blockAdditional: 0xa5,
  referenceBlock: 0xfb,
  cues: 0x1c53bb6b,
  cuePoint: 0xbb,
  cueTime: 0xb3,
  cueTrackPositions: 0xb7,
  cueTrack: 0xf7,
  cueClusterPosition: 0xf1,
} as const;

export function element(id: number, ...content: readonly Uint8Array[]): Buffer {
  const length = content.reduce((sum, part) => sum + part.length, 0);
  return Buffer.concat([idBytes(id), lengthBytes(length), ...content]);
}

/**
 * An element that contains a whole number, zero or more; `bytes` fixes its length, so that the length is known in
 * advance.
 */
export function whole(id: number, value: number, bytes?: number): Buffer {
  const length = bytes ?? Math.max(1, Math.ceil(Math.log2(value + 1) / 8));
  const content = Buffer.alloc(length);
  let rest = value;
  for (let at = length - 1; at >= 0; at--) {
    content[at] = rest % 256;
    rest = Math.floor(rest / 256);
  }
  return element(id, content);
}

export function letters(id: number, value: string): Buffer {
  return element(id, Buffer.from(value, 'utf8'));
}

export function float(id: number, value: number): Buffer {
  const content = Buffer.alloc(8);
  content.writeDoubleBE(value);
  return element(id, content);
}

export function idBytes(id: number): Buffer {
  const bytes = Buffer.alloc(4);
  bytes.writeUInt32BE(id);
  return bytes.subarray(bytes.findIndex((byte) => byte !== 0));
}

/** A length in as few bytes as possible, eight at most, which is enough for any file. */
export function lengthBytes(length: number): Buffer {
  const short = [1, 2, 3, 4, 5, 6, 7].find((bytes) => length < 2 ** (7 * bytes) - 1) ?? 8;
  const bytes = Buffer.alloc(8);
  bytes.writeBigUInt64BE(BigInt(length) + 2n ** BigInt(7 * short));
  return bytes.subarray(8 - short);
}
