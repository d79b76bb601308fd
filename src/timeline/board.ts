/**
 * Where the board lies when: the places that the scene gives, each from its frame on.
 */

import type { Clock } from '../scene/anchors/anchor.ts';
import type { Diagnostic, Span } from '../scene/diagnostic.ts';
import { type Fraction, zero } from '../scene/fraction.ts';
import type { BoardPlacement, BoardShape } from '../scene/scene.ts';
import { momentOf } from './clock.ts';
import { type Frame, frameAt } from './film.ts';
import { printFrame } from './seconds.ts';
import { orReport, pastEnd, timeError } from './time-faults.ts';
import type { VideoLength } from './video-length.ts';

export interface BoardPlace {
  readonly from: Frame;
  readonly shape: BoardShape;
}

/**
 * The places in order, the first at frame 0: before the first one that has a later time the board is hidden. `+1.5`
 * counts from the place before, and words are looked for after it.
 */
export function scheduleBoard(
  placements: readonly BoardPlacement[],
  { clock, length }: { readonly clock: Clock; readonly length: VideoLength | undefined },
): { readonly places: readonly BoardPlace[]; readonly diagnostics: readonly Diagnostic[] } {
  const places: BoardPlace[] = [];
  const diagnostics: Diagnostic[] = [];
  let before: { readonly seconds: Fraction; readonly frame: Frame; readonly span: Span | undefined } = {
    seconds: zero,
    frame: frameAt(0),
    span: undefined,
  };
  for (const { shape, at } of placements) {
    if (at === undefined) {
      places.push({ from: before.frame, shape });
      continue;
    }
    const found = momentOf(clock, at.value, { base: before.seconds, notBefore: before.frame, until: undefined });
    const moment = orReport(found, at.span, diagnostics);
    if (moment === undefined) continue;
    const { frame, seconds } = moment;
    if (frame < before.frame) {
      const message = `the board moves at ${printFrame(clock.rate, frame)}, before the place before it begins (${printFrame(clock.rate, before.frame)}); put the places in order of time`;
      const note = before.span === undefined ? [] : [{ span: before.span, message: 'the place before it' }];
      diagnostics.push(timeError('time-goes-back', at.span, message, note));
      continue;
    }
    if (length !== undefined && frame >= length.frameCount) {
      diagnostics.push(pastEnd(at.span, 'the board moves', frame, clock, length));
      continue;
    }
    places.push({ from: frame, shape });
    before = { seconds, frame, span: at.span };
  }
  const first = places[0];
  if (first !== undefined && first.from > 0) places.unshift({ from: frameAt(0), shape: { kind: 'hidden' } });
  return { places, diagnostics };
}
