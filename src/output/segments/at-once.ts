/**
 * How much of a render runs in parallel.
 */
import { isLarge, type Size } from '../codecs/codec.ts';
import { type CodecName, codecs } from '../codecs/codecs.ts';
import { picturesInStream } from '../pixels/frame-source.ts';

/** Whether we compress the pictures ourselves, and not ffmpeg. */
export function isOurs(codec: CodecName): boolean {
  return codecs[codec].encoder === undefined;
}

/**
 * How many runs of the encoder one process keeps going: while ffmpeg compresses some segments, the next are drawn; if
 * we compress ourselves, there is nothing to wait for.
 */
export function atOnce(codec: CodecName, size: Size): number {
  return isOurs(codec) || isLarge(size) ? 1 : 2;
}

/**
 * How many pictures may still be in use when the next is made. What we compress ourselves depends only on the previous
 * one.
 */
export function picturesUnderWay(codec: CodecName): number {
  return isOurs(codec) ? 3 : picturesInStream;
}
