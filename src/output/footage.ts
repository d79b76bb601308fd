/**
 * A recording laid under the frames, as a part of ffmpeg's filter graph: the right moment of it on each frame of ours,
 * scaled to the frame without changing its shape, in the colours of BT.709.
 */
import { compare, type Fraction, floor, fraction, subtract, toNumber, zero } from '../scene/fraction.ts';
import type { MediaPicture } from './media.ts';

/** What is laid under: the moment `start` (seconds, zero or more) of the file falls on the video's first frame. */
export interface Footage {
  readonly file: string;
  readonly start: Fraction;
}

/** Where to begin reading, and how far the wanted moment lies behind that. */
export interface Seek {
  readonly options: readonly string[];
  readonly lead: Fraction;
}

/**
 * Reading begins at a whole second before the wanted moment: ffmpeg takes times as microseconds, and a frame at
 * 1001/30000 s would fall on the wrong side of a rounded one. The rest is cut off by exact arithmetic in the graph.
 */
export function seekBefore(start: Fraction): Seek {
  const seconds = floor(start) - 1n;
  if (seconds <= 0n) return { options: [], lead: start };
  return { options: ['-ss', String(seconds)], lead: subtract(start, fraction(seconds)) };
}

/** The filters between the footage's picture and a frame of `width` x `height` (even) at `rate`, 4:2:0, without end. */
export function footageFilters(
  picture: MediaPicture,
  lead: Fraction,
  width: number,
  height: number,
  rate: Fraction,
): string {
  const fit = fitted(picture, width, height);
  return [
    `setpts='round(PTS-(${expression(lead)})/TB)'`,
    `fps=${rate.numerator}/${rate.denominator}:start_time=0`,
    // Footage that ends early holds its last picture.
    'tpad=stop=-1:stop_mode=clone',
    // One matrix for both ends: of a change ffmpeg's scaler makes a detour over RGB, which costs a level of grey.
    `scale=${fit.width}:${fit.height}:in_color_matrix=bt709:out_color_matrix=bt709:out_range=tv`,
    'format=yuv420p',
    ...changeOfMatrix(picture),
    `pad=${width}:${height}:${fit.left}:${fit.top}`,
    'setsar=1',
  ].join(',');
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

/** The filters between a sound and the video's: from `lead` on, silent where it begins late, cut at `end` seconds. */
export function soundFilters(lead: Fraction, end: Fraction): string {
  const shift = compare(lead, zero) === 0 ? [] : [`asetpts=PTS-(${expression(lead)})/TB`];
  return [...shift, 'aresample=async=1:first_pts=0', `atrim=end=${toNumber(end).toFixed(6)}`].join(',');
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

function expression(value: Fraction): string {
  return `${value.numerator}/${value.denominator}`;
}
