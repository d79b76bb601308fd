/**
 * A video file: which encoder with which options, its sound, and the check that it is whole.
 *
 * Colour is BT.709 in limited range, converted and tagged (tags alone would be wrong); alpha is straight.
 */
import { rm } from 'node:fs/promises';
import type { Fraction } from '../scene/fraction.ts';
import { CannotHold } from './codecs/codec.ts';
import { colourOptions, colourTags } from './codecs/colour.ts';
import { type Encoding, encode, requireEncoders } from './ffmpeg.ts';
import { finishVideo, isFinished } from './finish-video.ts';
import type { Painter } from './painters/painter.ts';
import { canvasPixelFormat, frameCanvas } from './pixels/canvas.ts';
import { type FrameSource, frameSource, type PixelFormat, picturesInStream } from './pixels/frame-source.ts';
import type { ProgressMeter } from './progress.ts';
import { keyFrameEvery } from './segments/key-frames.ts';
import { isOpaque, type SegmentedOptions, writeSegmented } from './segments/segment-video.ts';
import { sounds } from './sound.ts';
import type { Codec } from './target.ts';
import type { VideoPlan } from './video-plan.ts';
import { writeWholeFile } from './whole-file.ts';
import { requireFrames } from './whole-video.ts';

/**
 * Writes the film as `plan` says, and returns what the user may not expect, a sentence each. Throws a `MachineFailure`,
 * or the signal's reason.
 */
export async function writeVideo(
  painter: Painter,
  plan: VideoPlan,
  options: SegmentedOptions,
): Promise<readonly string[]> {
  const { meter, signal } = options;
  const before = meter.done;
  try {
    await writeSegmented(painter, plan, options);
    return [];
  } catch (error) {
    if (!(error instanceof CannotHold)) throw error;
    meter.advance(before - meter.done, -meter.drawn);
  }
  const recipe = recipes[plan.codec];
  await requireEncoders([recipe.encoder, ...(plan.sound === undefined ? [] : [sounds[plan.container].encoder])]);
  const format = pixelFormat(painter, plan);
  const canvas = frameCanvas(painter.width, painter.height, plan.key);
  const frames = frameSource(painter, canvas, format, picturesInStream);
  await writeWholeFile(plan.file, async (part) => {
    const picture = isFinished(plan) ? part : `${part}-picture`;
    try {
      await encode(encodingOf(painter, plan, format, picture), framesOf(painter, frames, meter), signal);
      if (picture !== part) await finishVideo(picture, plan, plan.container, painter, part, signal);
    } finally {
      if (picture !== part) await rm(picture, { force: true });
    }
    await requireFrames(part, painter, signal);
    signal?.throwIfAborted();
  });
  return [
    'every frame was encoded, since this encoder writes its pictures in a way that cannot be continued without it',
  ];
}

/** The pixels that the encoder is handed: without alpha where nothing shows through. */
function pixelFormat(painter: Painter, plan: VideoPlan): PixelFormat {
  const opaque = isOpaque(painter, plan.key);
  switch (plan.codec) {
    case 'h264':
      return 'yuv420p';
    case 'vp9':
      return opaque ? 'yuv420p' : 'yuva420p';
    case 'prores':
    case 'qtrle':
    case 'png':
      return opaque ? 'opaque' : 'rgba';
    default:
      return plan.codec satisfies never;
  }
}

function* framesOf(painter: Painter, frames: FrameSource, meter: ProgressMeter): Generator<Uint8Array> {
  for (let frame = 0; frame < painter.frameCount; frame++) {
    yield frames.bytesAt(frame);
    meter.count(frames.drawnCount);
  }
}

function encodingOf(painter: Painter, plan: VideoPlan, format: PixelFormat, output: string): Encoding {
  const rate = `${painter.rate.numerator}/${painter.rate.denominator}`;
  const size = `${painter.width}x${painter.height}`;
  const rawFormat = format === 'opaque' ? canvasPixelFormat : format;
  const alpha = format === 'rgba' || format === 'yuva420p';
  return {
    frameOptions: ['-f', 'rawvideo', '-pix_fmt', rawFormat, '-video_size', size, '-framerate', rate],
    files: [],
    filter: `[0:v]${finish(plan.codec, alpha)}[video]`,
    outputOptions: [
      ...['-map', '[video]', '-c:v', recipes[plan.codec].encoder, ...recipes[plan.codec].options(painter.rate)],
      ...['-frames:v', String(painter.frameCount), '-r', rate],
      // Nothing of the machine or the hour goes into the file: the same scene gives the same bytes.
      ...['-map_metadata', '-1', '-fflags', '+bitexact', '-f', plan.container],
      ...(plan.container === 'mp4' ? ['-movflags', '+faststart'] : []),
    ],
    output,
  };
}

/** The last filters before the encoder: the conversion where it is not done yet, and the tags. */
function finish(codec: Codec, alpha: boolean): string {
  switch (codec) {
    case 'h264':
    case 'vp9':
      return colourTags;
    case 'prores':
      return `scale=out_color_matrix=bt709:out_range=tv:flags=accurate_rnd,${colourTags},format=${alpha ? 'yuva444p10le' : 'yuv444p10le'}`;
    case 'qtrle':
      return `format=${alpha ? 'argb' : 'rgb24'}`;
    case 'png':
      return `format=${alpha ? 'rgba' : 'rgb24'}`;
    default:
      return codec satisfies never;
  }
}

export interface Recipe {
  readonly encoder: string;
  options(rate: Fraction): readonly string[];
}

export const recipes: Readonly<Record<Codec, Recipe>> = {
  h264: {
    encoder: 'libx264',
    options: (rate) => [
      ...['-preset', 'veryfast', '-crf', '16', '-pix_fmt', 'yuv420p', '-g', String(keyFrameEvery(rate))],
      ...colourOptions,
    ],
  },
  prores: {
    encoder: 'prores_ks',
    // A fixed scale of 2 is five times faster than a search under a bit rate, and a page of marks stays within 3 of 255.
    options: () => ['-profile:v', '4444', '-vendor', 'apl0', '-alpha_bits', '16', '-qscale:v', '2'],
  },
  qtrle: { encoder: 'qtrle', options: () => [] },
  png: { encoder: 'png', options: () => [] },
  vp9: {
    encoder: 'libvpx-vp9',
    // Alpha needs the encoder to look neither ahead nor back: -auto-alt-ref 0, -lag-in-frames 0.
    options: (rate) => [
      ...['-crf', '10', '-b:v', '0', '-deadline', 'realtime', '-cpu-used', '8', '-row-mt', '1'],
      ...['-auto-alt-ref', '0', '-lag-in-frames', '0', '-g', String(keyFrameEvery(rate))],
      ...colourOptions,
    ],
  },
};
