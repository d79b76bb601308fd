/**
 * Which codec serves which file.
 */
import type { Painter } from '../painters/painter.ts';
import type { Codec as VideoCodec } from '../target.ts';
import type { Codec } from './codec.ts';
import { h264 } from './h264.ts';
import { png } from './png.ts';
import { prores } from './prores.ts';
import { qtrle } from './qtrle.ts';
import { vp9 } from './vp9.ts';

/** The codecs of videos; `png` is that of a folder of frames too. */
export type CodecName = VideoCodec;

/** `opaque`: no pixel lets anything through. `compatible`: an .mp4 in which all pictures are the encoder's own. */
export function codecOf(
  name: CodecName,
  { width, height, rate }: Pick<Painter, 'width' | 'height' | 'rate'>,
  { opaque, compatible }: { readonly opaque: boolean; readonly compatible: boolean },
): Codec {
  switch (name) {
    case 'h264':
      return h264(width, height, rate, compatible);
    case 'png':
      return png(width, height);
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
