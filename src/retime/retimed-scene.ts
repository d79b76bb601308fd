/**
 * A scene whose times are moved: after its narration was re-recorded, or by a plain shift. Only the times themselves
 * change in its text; comments, order and layout stay byte for byte.
 */
import { type Edit, edited } from '../check/scene-text.ts';
import { dependenciesOf } from '../scene/anchors.ts';
import { compare, type Fraction, zero } from '../scene/fraction.ts';
import type { Scene } from '../scene/scene.ts';
import { frameAtTime } from '../timeline/seconds.ts';
import { timesOf, type WrittenTime, writtenLike } from './written-times.ts';

/** How a moment moves. */
export type Move = (seconds: Fraction) => { readonly seconds: Fraction; readonly lost: string | undefined };

export interface MovedTime extends WrittenTime {
  readonly to: Fraction;
  /** The word that it belonged to, if it is no longer spoken. */
  readonly lost: string | undefined;
}

export interface RetimedScene {
  readonly text: string;
  /** Every absolute time, in the order of the text; one that stays on its frame keeps its text. */
  readonly times: readonly MovedTime[];
  /** Times that would be before the video's start, and so are left unchanged. */
  readonly beforeStart: readonly WrittenTime[];
  /** Times behind a YAML alias, which are left unchanged. */
  readonly hidden: readonly { readonly start: number }[];
  /** How many times count from a step (`+1.5`), and how many from the narration: they are left unchanged. */
  readonly afterSteps: number;
  readonly onNarration: number;
}

/**
 * The scene of this text with each of its absolute times moved; times that were in order stay in order. `further`:
 * edits applied together with them.
 */
export function retimedScene(scene: Scene, text: string, move: Move, further: readonly Edit[] = []): RetimedScene {
  const { written, staying, hidden } = timesOf(scene, text);
  const moved = new Map<WrittenTime, { readonly to: Fraction; readonly lost: string | undefined }>();
  let latest: Fraction | undefined;
  for (const time of [...written].sort((a, b) => compare(a.seconds, b.seconds))) {
    const { seconds, lost } = move(time.seconds);
    const to = latest === undefined || compare(seconds, latest) > 0 ? seconds : latest;
    moved.set(time, { to, lost });
    latest = to;
  }
  const times = written.map((time): MovedTime => ({ ...time, ...moved.get(time)! }));
  const beforeStart = times.filter(({ to }) => compare(to, zero) < 0);
  const { rate } = scene.video;
  const edits = times
    .filter((time) => compare(time.to, zero) >= 0)
    .filter(({ seconds, to }) => frameAtTime(rate, seconds) !== frameAtTime(rate, to))
    .map(({ span, to }): Edit => ({ ...span, text: writtenLike(text.slice(span.start, span.end), to, scene) }));
  return {
    text: edited(text, [...edits, ...further]),
    times,
    beforeStart,
    hidden,
    afterSteps: staying.filter(({ time }) => dependenciesOf(time).includes('base')).length,
    onNarration: staying.filter(({ time }) => dependenciesOf(time).includes('narration')).length,
  };
}
