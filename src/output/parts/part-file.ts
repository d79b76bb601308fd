/**
 * The file format of a part of a render: a line of JSON that describes the whole film and lists the segments that
 * follow, then their files and, in the first part, its sound, one after the other.
 */
import { createReadStream, createWriteStream } from 'node:fs';
import { open, stat } from 'node:fs/promises';
import { pipeline } from 'node:stream/promises';
import { z } from 'zod';
import { type CodecName, isCodecName } from '../codecs/codecs.ts';
import { containers } from '../containers/track.ts';

const count = z.number().int().nonnegative();
const whole = z.string().regex(/^[1-9]\d{0,9}$/);
const digest = z.string().regex(/^[0-9a-f]{64}$/);

/** A part may come from a stranger: what it says is believed as far as a film can be so long, 46 hours at 60 a second. */
const mostFrames = 10_000_000;
const frames = count.max(mostFrames);

const headShape = z.object({
  proofreelPart: z.literal(2),
  number: count.min(1),
  of: count.min(1).max(mostFrames),
  /** Of the film, the look, the size, the kind of file, and the programs: equal for parts that belong together. */
  film: z.string(),
  container: z.enum([...containers, 'frames']),
  codec: z.custom<CodecName>(isCodecName),
  width: count.max(100_000),
  height: count.max(100_000),
  rate: z.tuple([whole, whole]),
  alpha: z.boolean(),
  frameCount: frames,
  chapters: z.array(z.object({ name: z.string(), from: frames, until: frames })),
  timecode: z.string().optional(),
  compatible: z.boolean(),
  /** How many times a picture that is held is encoded. */
  holdPictures: count.min(1).max(1000),
  hasSound: z.boolean(),
  /** Of the whole film: each segment's digest, how many pictures it has in motion, and for how long its last is held. */
  segments: z.array(z.tuple([digest, frames, frames])),
  /**
   * For a folder of frames, in order: for how many frames each picture is held, and its number; equal numbers are the
   * same picture. `once`: whether the folder has each picture once.
   */
  frames: z.object({ once: z.boolean(), holds: z.array(z.tuple([frames.min(1), frames])) }).optional(),
  /** What follows, in order: a segment's digest, or `sound`, and its length in bytes. Files are named after them. */
  contents: z.array(z.tuple([z.union([z.literal('sound'), digest]), count])),
});

export type PartHead = z.infer<typeof headShape>;

/** Writes the part; `files` in the order of `head.contents`, whose lengths are filled in here. */
export async function writePart(
  file: string,
  head: Omit<PartHead, 'proofreelPart' | 'contents'>,
  files: readonly { readonly name: string; readonly file: string }[],
): Promise<void> {
  const contents: [string, number][] = [];
  for (const { name, file: path } of files) contents.push([name, (await stat(path)).size]);
  const said: PartHead = { proofreelPart: 2, ...head, contents };
  const out = createWriteStream(file);
  await pipeline(async function* () {
    yield Buffer.from(`${JSON.stringify(said)}\n`);
    for (const { file: path } of files) yield* createReadStream(path);
  }, out);
}

/** A part's head, and where in the file its contents begin; undefined if the file is not a complete part. */
export async function readPart(file: string): Promise<{ readonly head: PartHead; readonly start: number } | undefined> {
  const handle = await open(file, 'r').catch(() => undefined);
  if (handle === undefined) return undefined;
  try {
    const { size } = await handle.stat();
    const line = await firstLine(handle, size);
    if (line === undefined) return undefined;
    const parsed = headShape.safeParse(JSON.parse(line));
    if (!parsed.success || !fillsFilm(parsed.data)) return undefined;
    const start = Buffer.byteLength(line) + 1;
    const end = parsed.data.contents.reduce((sum, [, length]) => sum + length, start);
    return end === size ? { head: parsed.data, start } : undefined;
  } catch {
    return undefined;
  } finally {
    await handle.close();
  }
}

/** Whether the segments are together as long as the film, and so are the pictures of a folder. */
function fillsFilm({ container, frameCount, segments, frames }: PartHead): boolean {
  const inSegments = segments.reduce((sum, [, moving, held]) => sum + moving + held, 0);
  const inFolder = (frames?.holds ?? []).reduce((sum, [held]) => sum + held, 0);
  return container === 'frames' ? inFolder === frameCount : inSegments === frameCount;
}

/** Copies what a part holds, each to the file that `fileFor` names; undefined: not wanted. */
export async function takeOut(
  part: string,
  { head, start }: { readonly head: PartHead; readonly start: number },
  fileFor: (name: string) => string | undefined,
): Promise<void> {
  let at = start;
  for (const [name, length] of head.contents) {
    const file = fileFor(name);
    if (file !== undefined && length > 0) {
      await pipeline(createReadStream(part, { start: at, end: at + length - 1 }), createWriteStream(file));
    }
    at += length;
  }
}

/** Undefined if the file does not begin like a part, or has no end of line. */
async function firstLine(handle: Awaited<ReturnType<typeof open>>, size: number): Promise<string | undefined> {
  const step = 1 << 16;
  const blocks: Buffer[] = [];
  for (let at = 0; at < size; at += step) {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(Math.min(step, size - at)), 0, undefined, at);
    const block = buffer.subarray(0, bytesRead);
    if (at === 0 && !block.toString('latin1', 0, 17).startsWith('{"proofreelPart":')) return undefined;
    const end = block.indexOf(10);
    if (end < 0) {
      blocks.push(block);
      continue;
    }
    return Buffer.concat([...blocks, block.subarray(0, end)]).toString('utf8');
  }
  return undefined;
}
