/**
 * A recording laid under the frames, as a part of ffmpeg's filter graph: the right moment of it on each frame of ours,
 * scaled to the frame without changing its shape, in the colours of BT.709.
 */
import { divide, type Fraction, floor } from '../../scene/fraction.ts';
import type { MediaPicture } from '../ffmpeg/media.ts';
import { expression, type Seek, seekBefore } from '../tracks/sound.ts';

/**
 * As `seekBefore`, for a picture: from the keyframe before that on. A screen recording may have had its last picture long
 * before the wanted moment, and that is the one to be seen; cutting at the seek's own moment would lose it.
 */
export function seekPictureBefore(start: Fraction): Seek {
  const { options, lead } = seekBefore(start);
  return { options: options.length === 0 ? [] : ['-noaccurate_seek', ...options], lead };
}

/**
 * The filters between the footage's picture and a frame of `width` x `height` (even) at `rate`, 4:2:0, without end.
 * A recording that fits already comes out bit by bit as it went in.
 */
export function footageFilters(
  picture: MediaPicture,
  lead: Fraction,
  width: number,
  height: number,
  rate: Fraction,
): string {
  return [
    // A last picture that does not say how long it lasts, or lasts shorter than a frame of ours, would be gone at once.
    ...(picture.rate === undefined ? [] : [`tpad=stop=${floor(divide(picture.rate, rate)) + 2n}:stop_mode=clone`]),
    `setpts='round(PTS-(${expression(lead)})/TB)'`,
    // By the times of the pictures, not by their count: recordings of screens have no fixed rate.
    `fps=${rate.numerator}/${rate.denominator}:start_time=0:eof_action=pass`,
    // Footage that ends early holds its last picture.
    'tpad=stop=-1:stop_mode=clone',
    ...toFrame(picture, width, height),
    'setsar=1',
  ].join(',');
}

function toFrame(picture: MediaPicture, width: number, height: number): readonly string[] {
  const fit = fitted(picture, width, height);
  const { kept } = picture;
  const isTurned = picture.height !== kept.height;
  const isFrame = !isTurned && kept.width === width && kept.height === height && picture.width === width;
  // Even a scaler that has nothing to do copies every picture.
  if (isFrame && kept.format === 'yuv420p' && !kept.fullRange) return changeOfMatrix(picture);
  return [
    // One matrix for both ends: of a change ffmpeg's scaler makes a detour over RGB, which costs a level of grey.
    `scale=${fit.width}:${fit.height}:in_color_matrix=bt709:out_color_matrix=bt709:out_range=tv`,
    'format=yuv420p',
    ...changeOfMatrix(picture),
    ...(fit.width === width && fit.height === height ? [] : [`pad=${width}:${height}:${fit.left}:${fit.top}`]),
  ];
}

/**
 * The largest place for the picture within the frame that keeps its shape, in even pixels as 4:2:0 needs them; bars
 * are left where the shapes differ by more than that.
 */
export function fitted(picture: MediaPicture, width: number, height: number) {
  const scale = Math.min(width / picture.width, height / picture.height);
  const size = (side: number, room: number): number => {
    const wanted = side * scale;
    return room - wanted < 2 ? room : Math.max(2, 2 * Math.round(wanted / 2));
  };
  const [fitWidth, fitHeight] = [size(picture.width, width), size(picture.height, height)];
  const offset = (room: number, side: number): number => 2 * Math.floor((room - side) / 4);
  return { width: fitWidth, height: fitHeight, left: offset(width, fitWidth), top: offset(height, fitHeight) };
}

/** Files that do not name their matrix: BT.709 from 720 lines up, else BT.601; common practice. */
function changeOfMatrix(picture: MediaPicture): readonly string[] {
  const matrix = picture.matrix ?? (picture.height < 720 ? 'smpte170m' : 'bt709');
  if (!otherMatrices.has(matrix)) return [];
  const same = 'iprimaries=bt709:primaries=bt709:itrc=bt709:trc=bt709:irange=tv:range=tv';
  return [`colorspace=ispace=${matrix}:space=bt709:${same}`];
}

/** Those of ffmpeg's names that need a change. RGB (`gbr`) is none: it becomes BT.709 when it is scaled. */
const otherMatrices: ReadonlySet<string> = new Set(['fcc', 'bt470bg', 'smpte170m', 'smpte240m', 'bt2020nc']);
