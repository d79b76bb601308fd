/**
 * Where the board is and when: the places that the scene gives, each from its frame on.
 */

import type { Clock } from '../scene/anchor.ts';
import type { Span } from '../scene/diagnostic.ts';
import { type Fraction, zero } from '../scene/fraction.ts';
import type { BoardPlacement, BoardShape } from '../scene/scene.ts';
import { momentOf } from './clock.ts';
import { type Frame, frameAt } from './film.ts';
import { orReport, pastEnd, timeError } from './time-faults.ts';
import { type Report, TimeNode } from './time-node.ts';
import type { VideoLength } from './video-length.ts';

export interface BoardPlace {
  readonly from: Frame;
  readonly shape: BoardShape;
}

/** A place and what the next one is compared with: the last placement that has a time. */
interface Placed {
  /** Undefined if its time is not possible there. */
  readonly place: BoardPlace | undefined;
  readonly seconds: Fraction;
  readonly frame: Frame;
  readonly span: Span | undefined;
}

const start: Placed = { place: undefined, seconds: zero, frame: frameAt(0), span: undefined };

/** A node for each placement. `+1.5` counts from the previous place, and words are searched for after it. */
export function boardNodes(
  placements: readonly BoardPlacement[],
  clock: Clock,
  length: TimeNode<VideoLength | undefined>,
): readonly TimeNode<Placed>[] {
  const nodes: TimeNode<Placed>[] = [];
  for (const [index, placement] of placements.entries()) {
    const before = nodes.at(-1);
    nodes.push(
      new TimeNode(
        `board ${index + 1}`,
        () => (before === undefined ? [length] : [length, before]),
        (valueOf, report) =>
          placed(placement, before === undefined ? start : valueOf(before), clock, valueOf(length), report),
      ),
    );
  }
  return nodes;
}

function placed(
  { shape, at }: BoardPlacement,
  before: Placed,
  clock: Clock,
  length: VideoLength | undefined,
  report: Report,
): Placed {
  if (at === undefined) return { ...before, place: { from: before.frame, shape } };
  const place = { base: before.seconds, notBefore: before.frame, until: undefined };
  const moment = orReport(momentOf(clock, at.value, place), at.span, report);
  if (moment === undefined) return { ...before, place: undefined };
  const { frame, seconds } = moment;
  if (frame < before.frame) {
    const message = `the board moves at ${clock.print(frame)}, before the previous place begins (${clock.print(before.frame)}); put the places in order of time`;
    const note = before.span === undefined ? [] : [{ span: before.span, message: 'the place before it' }];
    report(timeError('time-goes-back', at.span, message, note));
    return { ...before, place: undefined };
  }
  if (length !== undefined && frame >= length.frameCount) {
    report(pastEnd(at.span, 'the board moves', frame, clock, length));
    return { ...before, place: undefined };
  }
  return { place: { from: frame, shape }, seconds, frame, span: at.span };
}

/** The places in order, the first at frame 0: until the first one, if it has a later time, the board is hidden. */
export function placesOf(nodes: readonly TimeNode<Placed>[]): readonly BoardPlace[] {
  const places = nodes.flatMap(({ value }) => value.place ?? []);
  const first = places[0];
  return first === undefined || first.from === 0
    ? places
    : [{ from: frameAt(0), shape: { kind: 'hidden' } }, ...places];
}
