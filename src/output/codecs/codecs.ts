/**
 * Which codec serves which file.
 */
import type { Painter } from '../painter.ts';
import type { Codec as CodecName } from '../target.ts';
import type { Codec } from './codec.ts';
import { h264 } from './h264.ts';

/** `opaque`: no pixel lets anything through. Undefined where the film is encoded frame by frame. */
export function codecOf(name: CodecName, { width, height, rate }: Painter, _opaque: boolean): Codec | undefined {
  switch (name) {
    case 'h264':
      return h264(width, height, rate);
    default:
      return undefined;
  }
}
