/**
 * A recording under the frames, as a part of ffmpeg's filter graph: the right moment of it for each of our frames,
 * scaled to the frame without changing its shape, in BT.709 colours.
 */
import { divide, type Fraction, floor } from '../../scene/fraction.ts';
import type { MediaPicture } from '../ffmpeg/media.ts';
import { expression, type Seek, seekBefore } from '../tracks/sound.ts';

/**
 * Like `seekBefore`, for a picture: from the preceding keyframe on. In a screen recording the picture to be shown may
 * come long before the wanted moment; cutting at the seek time itself would lose it.
 */
export function seekPictureBefore(start: Fraction): Seek {
  const { options, lead } = seekBefore(start);
  return { options: options.length === 0 ? [] : ['-noaccurate_seek', ...options], lead };
}

/**
 * The filters between the footage's picture and a frame of `width` x `height` (even) at `rate`, 4:2:0, without end.
 * A recording that already fits comes out bit-identical.
 */
export function footageFilters(
  picture: MediaPicture,
  lead: Fraction,
  width: number,
  height: number,
  rate: Fraction,
): string {
  return [
    // A last picture without a duration, or shorter than one of our frames, would disappear immediately.
    ...(picture.rate === undefined ? [] : [`tpad=stop=${floor(divide(picture.rate, rate)) + 2n}:stop_mode=clone`]),
    `setpts='round(PTS-(${expression(lead)})/TB)'`,
    // By the times of the pictures, not by their count: screen recordings have no fixed rate.
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
    // One matrix for both ends: to change it, ffmpeg's scaler goes through RGB, which costs one grey level.
    `scale=${fit.width}:${fit.height}:in_color_matrix=bt709:out_color_matrix=bt709:out_range=tv`,
    'format=yuv420p',
    ...changeOfMatrix(picture),
    ...(fit.width === width && fit.height === height ? [] : [`pad=${width}:${height}:${fit.left}:${fit.top}`]),
  ];
}

/**
 * The largest place for the picture within the frame that keeps its shape, in even pixels as 4:2:0 needs them; bars
 * remain if the shapes differ by more than that.
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

/** Files that do not name their matrix: BT.709 from 720 lines up, otherwise BT.601; common practice. */
function changeOfMatrix(picture: MediaPicture): readonly string[] {
  const matrix = picture.matrix ?? (picture.height < 720 ? 'smpte170m' : 'bt709');
  if (!otherMatrices.has(matrix)) return [];
  const same = 'iprimaries=bt709:primaries=bt709:itrc=bt709:trc=bt709:irange=tv:range=tv';
  return [`colorspace=ispace=${matrix}:space=bt709:${same}`];
}

/**
 * ffmpeg's names of matrices that need converting. RGB (`gbr`) is not among them: it becomes BT.709 when it is scaled.
 */
const otherMatrices: ReadonlySet<string> = new Set(['fcc', 'bt470bg', 'smpte170m', 'smpte240m', 'bt2020nc']);
