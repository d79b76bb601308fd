/**
 * The messages between a render and its worker process.
 */
import type { CodecName } from '../codecs/codecs.ts';
import type { Painting } from '../painters/painting.ts';
import type { Segment } from './segments.ts';

/** Everything except the pictures that decides the bytes of a segment; can be cloned. */
export interface Setting {
  readonly codec: CodecName;
  /** Every pixel is opaque. */
  readonly opaque: boolean;
  readonly compatible: boolean;
  /** `#rrggbb`, put under every frame. */
  readonly key: string | undefined;
  /** The store's folder. */
  readonly folder: string;
}

export type ToWorker =
  | { readonly kind: 'begin'; readonly painting: Painting; readonly setting: Setting }
  | { readonly kind: 'segments'; readonly segments: readonly Segment[] }
  | { readonly kind: 'stop' };

export type FromWorker =
  | { readonly kind: 'picture'; readonly frames: number; readonly drawn: number; readonly of: SegmentDigest }
  | { readonly kind: 'done'; readonly of: SegmentDigest }
  /** `isMachine`: the sentence is meant for the user. `of` is undefined if the process cannot work at all. */
  | {
      readonly kind: 'failed';
      readonly sentence: string;
      readonly isMachine: boolean;
      readonly of: SegmentDigest | undefined;
    };

/** Of the first of the requested segments. */
type SegmentDigest = Segment['digest'];
