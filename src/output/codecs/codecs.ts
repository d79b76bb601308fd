/**
 * Which codec serves which file.
 */
import type { Painter } from '../painter.ts';
import type { Codec as CodecName } from '../target.ts';
import type { Codec } from './codec.ts';
import { h264 } from './h264.ts';
import { prores } from './prores.ts';
import { qtrle } from './qtrle.ts';
import { vp9 } from './vp9.ts';

/** `opaque`: no pixel lets anything through. */
export function codecOf(name: CodecName, { width, height, rate }: Painter, opaque: boolean): Codec {
  switch (name) {
    case 'h264':
      return h264(width, height, rate);
    case 'prores':
      return prores(width, height, rate, !opaque);
    case 'qtrle':
      return qtrle(width, height, rate, !opaque);
    case 'vp9':
      return vp9(width, height, rate, !opaque);
    default:
      return name satisfies never;
  }
}
