/**
 * What a render and the process that helps it send to one another.
 */
import type { CodecName } from '../codecs/codecs.ts';
import type { Painting } from '../painters/painting.ts';
import type { Segment } from './segments.ts';

/** All that decides the bytes of a segment besides its pictures; survives being cloned. */
export interface Setting {
  readonly codec: CodecName;
  /** No pixel lets anything through. */
  readonly opaque: boolean;
  readonly compatible: boolean;
  /** `#rrggbb`, laid under every frame. */
  readonly key: string | undefined;
  /** The folder of the store. */
  readonly folder: string;
}

export type ToWorker =
  | { readonly kind: 'begin'; readonly painting: Painting; readonly setting: Setting }
  | { readonly kind: 'segments'; readonly segments: readonly Segment[] }
  | { readonly kind: 'stop' };

export type FromWorker =
  | { readonly kind: 'picture'; readonly frames: number; readonly drawn: number; readonly of: SegmentDigest }
  | { readonly kind: 'done'; readonly of: SegmentDigest }
  /** `isMachine`: the sentence is one for the user. `of` is undefined where the process can do nothing at all. */
  | {
      readonly kind: 'failed';
      readonly sentence: string;
      readonly isMachine: boolean;
      readonly of: SegmentDigest | undefined;
    };

/** Of the first of the segments that were asked for. */
type SegmentDigest = Segment['digest'];
