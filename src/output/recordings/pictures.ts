/**
 * The pictures of a recording, in grey or in colour, at the size and as often as is asked for.
 */
import type { GreyPicture, RgbPicture, Shown } from '../../recording/picture.ts';
import { timedPictures } from '../ffmpeg/timed-pictures.ts';
import type { Recording } from './recording.ts';

export interface Sampling {
  /** In pixels; by default as the recording is to be seen. */
  readonly size?: { readonly width: number; readonly height: number } | undefined;
  /** Pictures that are first shown before this moment are left out. In seconds, as are the others. */
  readonly from?: number | undefined;
  /** Pictures that are first shown at this moment or later are left out. */
  readonly until?: number | undefined;
  /** A picture is left out that comes sooner than this after the last one that was not. By default all are there. */
  readonly every?: number | undefined;
}

/**
 * In order of time; a picture is valid until the next is asked for. Whoever stops asking ends the reading.
 * Throws a `MachineFailure`, or the signal's reason.
 */
export async function* greyPictures(
  recording: Recording,
  sampling: Sampling,
  signal?: AbortSignal,
): AsyncGenerator<Shown<GreyPicture>> {
  for await (const { seconds, bytes, width, height } of pictures(recording, sampling, 'gray', signal))
    yield { seconds, picture: { width, height, levels: bytes } };
}

/** The same in colour. */
export async function* rgbPictures(
  recording: Recording,
  sampling: Sampling,
  signal?: AbortSignal,
): AsyncGenerator<Shown<RgbPicture>> {
  for await (const { seconds, bytes, width, height } of pictures(recording, sampling, 'rgb24', signal))
    yield { seconds, picture: { width, height, rgb: bytes } };
}

async function* pictures(
  recording: Recording,
  { size, from = 0, until, every }: Sampling,
  pixelFormat: 'gray' | 'rgb24',
  signal: AbortSignal | undefined,
) {
  const { width, height } = size ?? recording.picture;
  const filters = [
    ...(every === undefined
      ? []
      : [`select='isnan(prev_selected_t)+gte(t-prev_selected_t,${(every - slack).toFixed(6)})'`]),
    scale(recording, width, height, pixelFormat),
  ];
  const frameBytes = width * height * (pixelFormat === 'gray' ? 1 : 3);
  const decoding = {
    file: recording.file,
    from: Math.max(0, from - slack),
    filter: filters.join(','),
    pixelFormat,
    frameBytes,
  };
  for await (const { seconds, bytes } of timedPictures(decoding, signal)) {
    if (until !== undefined && seconds >= until - slack / 2) return;
    if (seconds >= from - slack / 2) yield { seconds, bytes, width, height };
  }
}

/** Seconds by which times may differ that mean the same: far less than a frame, more than ffmpeg's microseconds. */
const slack = 0.0005;

/** Area: each pixel that is left is the mean of those that it stands for. The flags make it the same on every machine. */
function scale({ picture }: Recording, width: number, height: number, pixelFormat: 'gray' | 'rgb24'): string {
  const { kept } = picture;
  const grows = width >= picture.width;
  const flags = `${grows ? 'bicubic' : 'area'}+accurate_rnd+full_chroma_int+bitexact`;
  const matrix = picture.matrix ?? (picture.height < 720 ? 'smpte170m' : 'bt709');
  const isYuv = kept.format?.startsWith('yuv') === true || kept.format?.startsWith('nv') === true;
  const colour = pixelFormat === 'rgb24' && isYuv ? `:in_color_matrix=${matrices.get(matrix) ?? 'bt709'}` : '';
  return `scale=${width}:${height}:flags=${flags}${colour}`;
}

/** What ffmpeg's scaler calls the matrices that it knows. */
const matrices: ReadonlyMap<string, string> = new Map([
  ['bt709', 'bt709'],
  ['fcc', 'fcc'],
  ['bt470bg', 'bt470'],
  ['smpte170m', 'smpte170m'],
  ['smpte240m', 'smpte240m'],
  ['bt2020nc', 'bt2020'],
]);
