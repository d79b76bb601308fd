/**
 * What a video is to be: where it goes, how it is encoded, and what lies beside its pictures.
 */
import type { Tracks } from './finish-video.ts';
import type { Codec, Container } from './target.ts';

export interface VideoPlan extends Tracks {
  /** An absolute path. */
  readonly file: string;
  readonly container: Container;
  readonly codec: Codec;
  readonly key: string | undefined;
  /** An .mp4 in which all pictures are the encoder's own. */
  readonly compatible?: boolean | undefined;
}
