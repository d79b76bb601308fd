/**
 * The plan of a video: where it goes, how it is encoded, and which tracks it has besides its pictures.
 */
import type { CodecName } from '../codecs/codecs.ts';
import type { Container } from '../containers/track.ts';
import type { Tracks } from '../tracks/finish-video.ts';

export interface VideoPlan extends Tracks, PicturePlan {
  /** An absolute path. */
  readonly file: string;
  readonly container: Container;
}

/** The plan of a folder of PNG frames. */
export interface FramesPlan extends PicturePlan {
  /** The folder's absolute path. */
  readonly file: string;
  readonly container: 'frames';
  readonly codec: 'png';
  /** Each picture once, and a list of when it is shown. */
  readonly holds: boolean;
}

/** What decides the bytes of a film's segments. */
export interface PicturePlan {
  readonly codec: CodecName;
  /** `#rrggbb`, put under every frame. */
  readonly key: string | undefined;
  /** An .mp4 in which all pictures are the encoder's own. */
  readonly compatible?: boolean | undefined;
}
