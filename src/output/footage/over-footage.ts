/**
 * The frames over a recording, as an .mp4. Every picture of it must be encoded again, so time can be saved only before
 * the encoder: each of our pictures goes down the pipe once, cropped to the part that is drawn on, and while nothing is
 * drawn the recording passes unchanged.
 */
import type { Fraction } from '../../scene/fraction.ts';
import type { Chapter } from '../../timeline/chapters.ts';
import { colourOptions, colourTags } from '../codecs/colour.ts';
import { keyframeEvery } from '../codecs/keyframes.ts';
import { type Encoding, encode, type Input, type Run, run } from '../ffmpeg/ffmpeg.ts';
import { requireFrames } from '../ffmpeg/require-frames.ts';
import { writeAtomically } from '../machine/atomic-write.ts';
import type { ProgressMeter } from '../machine/progress-meter.ts';
import type { Painter } from '../painters/painter.ts';
import { type FrameCanvas, frameCanvas } from '../pixels/canvas.ts';
import { boxConverter } from '../pixels/changed-part.ts';
import { chaptersInput } from '../tracks/chapters.ts';
import { mappedChapters, secondsOf } from '../tracks/finish-video.ts';
import { encodersFor, requireEncoders } from '../tracks/require-encoders.ts';
import { seekBefore, soundFilters, sounds } from '../tracks/sound.ts';
import { footageFilters, seekPictureBefore } from './footage.ts';
import type { Layers } from './layers.ts';
import { isInside, type OverlayPlan, overlayPlan, wholeFrame } from './overlay-plan.ts';
import { streamFrame, streamHead, streamOptions, timesOfFrames } from './timed-frames.ts';

export interface OverFootagePlan {
  /** An absolute path. */
  readonly file: string;
  readonly under: NonNullable<Layers['under']>;
  readonly sound: Layers['sound'];
  readonly chapters: readonly Chapter[];
}

/** Writes the film over `plan.under`. Throws a `MachineFailure`, or the signal's reason. */
export async function writeOverFootage(
  painter: Painter,
  plan: OverFootagePlan,
  options: { readonly meter: ProgressMeter; readonly signal: AbortSignal | undefined },
): Promise<void> {
  const { meter, signal } = options;
  await requireEncoders(encodersFor('h264', 'mp4', plan.sound !== undefined));
  const canvas = frameCanvas(painter.width, painter.height, undefined);
  const planned = overlayPlan(painter, canvas);
  await writeAtomically(plan.file, async (temp) => {
    const write = async (overlay: OverlayPlan): Promise<void> => {
      const counter = { drawn: 0 };
      const reach = (done: number): void => {
        const frames = Math.min(done, painter.frameCount) - meter.done;
        if (frames > 0) meter.advance(frames, counter.drawn - meter.drawn);
      };
      const encoding = { ...encodingOf(painter, plan, overlay, temp), onEncoded: reach };
      const { frameOptions, ...work } = encoding;
      if (frameOptions === undefined) await run(work, signal);
      else await encode({ ...work, frameOptions }, sparseFrames(painter, canvas, overlay, counter), signal);
      await requireFrames(temp, painter, signal);
      reach(painter.frameCount);
    };
    try {
      await write(planned);
    } catch (error) {
      if (!(error instanceof OutOfBox)) throw error;
      await write({ ...planned, box: wholeFrame(painter) });
    }
    signal?.throwIfAborted();
  });
}

/** Something is drawn where the plan expected nothing. */
class OutOfBox extends Error {}

/** A picture for each change, cropped to the box. */
function* sparseFrames(
  painter: Painter,
  canvas: FrameCanvas,
  { box, changes }: OverlayPlan,
  counter: { drawn: number },
): Generator<Uint8Array> {
  if (box === undefined) return;
  const converter = boxConverter(box, painter.width);
  yield streamHead(box.width, box.height);
  for (const frame of changes) {
    canvas.draw(painter, frame);
    counter.drawn += 1;
    const pixels = canvas.pixels();
    if (!isInside(box, pixels, painter.width, painter.height)) throw new OutOfBox();
    yield streamFrame(frame, converter.convert(pixels));
  }
}

/** If nothing is drawn, there is no stream of frames. */
type MaybePiped = Run & { readonly frameOptions: Encoding['frameOptions'] | undefined };

function encodingOf(painter: Painter, plan: OverFootagePlan, { box, drawn }: OverlayPlan, temp: string): MaybePiped {
  const { under, sound } = plan;
  const rate = `${painter.rate.numerator}/${painter.rate.denominator}`;
  const first = box === undefined ? 0 : 1;
  const seek = seekPictureBefore(under.start);
  const inputs: Input[] = [{ kind: 'file', file: under.file, options: seek.options }];
  const footage = footageFilters(under.picture, seek.lead, painter.width, painter.height, painter.rate);
  // Both get their tags before they meet: from 7 on, ffmpeg would convert an untagged one as if it were BT.601.
  const graph = [`[${first}:v:0]${footage},${colourTags}[under]`];
  // The pictures end within the graph: at the end of `-frames:v`, ffmpeg 4 to 6 would cut off the sound wherever it is
  // at that moment.
  const finish = `trim=end_frame=${painter.frameCount}`;
  if (box === undefined) graph.push(`[under]${finish}[video]`);
  else {
    const place = `x=${box.left}:y=${box.top}:format=yuv420:eof_action=repeat:enable='${whereDrawn(drawn, painter)}'`;
    graph.push(
      `[0:v]${timesOfFrames(painter.rate)},${colourTags}[marks]`,
      `[under][marks]overlay=${place},${finish}[video]`,
    );
  }
  const soundOptions: string[] = [];
  if (sound !== undefined) {
    const seek = seekBefore(sound.start);
    inputs.push({ kind: 'file', file: sound.file, options: seek.options });
    // In its own graph: ffmpeg 7 reads one input of a graph at a time, and would wait for the sound while it needs the
    // marks.
    const filter = soundFilters(seek.lead, secondsOf(painter));
    soundOptions.push(
      '-map',
      `${first + 1}:a:0`,
      '-filter:a',
      filter,
      '-c:a',
      sounds.mp4.encoder,
      ...sounds.mp4.options,
    );
  }
  if (plan.chapters.length > 0) inputs.push(chaptersInput(plan.chapters, painter.rate));
  return {
    frameOptions: box === undefined ? undefined : streamOptions,
    inputs,
    filter: graph.join(';'),
    outputOptions: [
      ...['-map', '[video]', ...footageEncoder(painter.rate)],
      ...['-r', rate, ...soundOptions],
      ...mappedChapters(plan.chapters, first + inputs.length - 1),
      ...['-map_metadata:s', '-1', '-fflags', '+bitexact', '-f', 'mp4', '-movflags', '+faststart'],
    ],
    output: temp,
  };
}

/**
 * When the overlay is on. Two frames more than needed at either end: the drawn frames themselves determine where it
 * begins and ends, and this only saves overlaying empty pictures.
 */
function whereDrawn(drawn: OverlayPlan['drawn'], { rate }: Painter): string {
  const seconds = (frame: number): string => ((frame * Number(rate.denominator)) / Number(rate.numerator)).toFixed(6);
  const spans = drawn.map(({ from, until }) => `between(t,${seconds(from - 2)},${seconds(until + 2)})`);
  return spans.length === 0 ? '0' : spans.join('+');
}

/** The encoder with its options, for a stream in which every picture is new. */
export function footageEncoder(rate: Fraction): readonly string[] {
  return [
    ...['-c:v', 'libx264', '-preset', 'veryfast', '-crf', '16', '-pix_fmt', 'yuv420p'],
    ...['-g', String(keyframeEvery(rate)), ...colourOptions],
  ];
}
