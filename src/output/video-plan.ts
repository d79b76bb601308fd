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

/** What a folder of PNG frames is to be. */
export interface FramesPlan {
  /** The folder's absolute path. */
  readonly file: string;
  readonly container: 'frames';
  readonly codec: 'png';
  /** `#rrggbb`, laid under every frame. */
  readonly key: string | undefined;
  /** Each picture once, and a list of when it is seen. */
  readonly holds: boolean;
}

/** What decides the bytes of a film's segments. */
export interface PicturePlan {
  readonly key: string | undefined;
  readonly compatible?: boolean | undefined;
  readonly codec: Codec;
}
