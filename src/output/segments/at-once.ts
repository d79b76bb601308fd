/**
 * How much of a render goes on at once.
 */
import { isLarge, type Size } from '../codecs/codec.ts';
import { type CodecName, codecs } from '../codecs/codecs.ts';
import { picturesInStream } from '../pixels/frame-source.ts';

/** Whether we compress the pictures, and not ffmpeg. */
export function isOurs(codec: CodecName): boolean {
  return codecs[codec].encoder === undefined;
}

/**
 * How many runs of the encoder one process keeps going: while ffmpeg compresses some segments the next are drawn; where
 * we compress ourselves there is nothing to wait for.
 */
export function atOnce(codec: CodecName, size: Size): number {
  return isOurs(codec) || isLarge(size) ? 1 : 2;
}

/** How many pictures are still read when the next is made. What we compress ourselves leans on the one before, and no more. */
export function picturesUnderWay(codec: CodecName): number {
  return isOurs(codec) ? 3 : picturesInStream;
}
