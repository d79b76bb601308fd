/**
 * The nodes of a step: when it begins and ends, and the times that were given within it, each looked up and compared
 * with what it follows. Parts without a time are filled in afterwards, in `step-frames.ts`.
 */
import type { Place, Within as WithinWords } from '../scene/anchor.ts';
import { dependenciesOf, isSameEverywhere, type Time } from '../scene/anchors.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import { add, type Fraction, fraction, subtract, zero } from '../scene/fraction.ts';
import type { Located, Step } from '../scene/scene.ts';
import { anywhere, type Moment, momentOf } from './clock.ts';
import { type Frame, frameAt } from './film.ts';
import { endOf, momentWithin, type Within } from './given-time.ts';
import { frameAtTime, laterOf, printFrame, timeOfFrame } from './seconds.ts';
import { stepLength } from './step-length.ts';
import {
  type Begin,
  type Given,
  itemsOf,
  lastGiven,
  latestFrame,
  latestOf,
  type StepOutline,
  type Timing,
} from './step-outline.ts';
import { goesBack, orReport, pastEnd, timeWarning } from './time-faults.ts';
import { type Report, TimeNode, type ValueOf } from './time-node.ts';
import type { VideoLength } from './video-length.ts';

export interface StepNodes {
  readonly begin: TimeNode<Begin>;
  /** By beat of `show`: the time that it was given, if that is possible. */
  readonly beats: readonly TimeNode<Moment | undefined>[];
  /** By item of `only`, `pencil`, `cascade`, in this order. */
  readonly items: readonly TimeNode<Moment | undefined>[];
  readonly until: TimeNode<Moment | undefined>;
  /** All of these together. */
  readonly outline: TimeNode<StepOutline>;
  /** Where the step ends without the next one: at its `until`, else when what it says and shows is over. */
  readonly ownEnd: TimeNode<Fraction>;
}

/** What surrounds a step. */
export interface Around {
  readonly before: StepNodes | undefined;
  readonly next: Step | undefined;
  readonly length: TimeNode<VideoLength | undefined>;
}

export function stepNodes(step: Step, { before, next, length }: Around, timing: Timing): StepNodes {
  const named = (what: string) => `${what} of "${step.id}"`;
  const begin = new TimeNode(
    named('begin'),
    () => (before === undefined ? [length] : [length, before.outline, before.ownEnd]),
    (valueOf, report) => {
      const earlier = before && { outline: valueOf(before.outline), end: valueOf(before.ownEnd) };
      return beginOf(step, { next, earlier, length: valueOf(length) }, timing, report);
    },
  );
  const within = (valueOf: ValueOf, report: Report): Within => {
    const around = { begin: valueOf(begin), length: valueOf(length) };
    return { ...timing, ...around, bound: boundOf(step, next, around, timing), report };
  };
  const given = (what: 'beat' | 'item', parts: readonly { readonly at: Located<Time> | undefined }[]) => {
    const nodes: TimeNode<Moment | undefined>[] = [];
    for (const [index, { at }] of parts.entries()) {
      const earlier = nodes.slice(0, index);
      nodes.push(
        new TimeNode(
          named(`${what} ${index + 1}`),
          () => (at === undefined ? [] : [begin, length, ...earlier]),
          (valueOf, report) => {
            if (at === undefined) return undefined;
            const standing = earlier.flatMap((node, place): Given[] => {
              const [moment, span] = [valueOf(node), parts[place]?.at?.span];
              return moment === undefined || span === undefined ? [] : [{ frame: moment.frame, span }];
            });
            return momentWithin(at, what, standing.at(-1), within(valueOf, report));
          },
        ),
      );
    }
    return nodes;
  };
  const beats = given('beat', step.show ?? []);
  const items = given('item', itemsOf(step));
  const until = new TimeNode(
    named('until'),
    () => (step.until === undefined ? [] : [begin, length, ...beats, ...items]),
    (valueOf, report) => {
      if (step.until === undefined) return undefined;
      const latest = latestFrame(valueOf(begin).frame, [...beats, ...items].map(valueOf));
      return endOf(step.until, latest, within(valueOf, report));
    },
  );
  const outline = new TimeNode(
    named('outline'),
    () => [begin, ...beats, ...items, until],
    (valueOf): StepOutline => ({
      step,
      begin: valueOf(begin),
      beats: beats.map(valueOf),
      items: items.map(valueOf),
      until: valueOf(until),
    }),
  );
  const ownEnd = new TimeNode(
    named('own end'),
    () => [outline],
    (valueOf) => {
      const known = valueOf(outline);
      return known.until?.seconds ?? add(known.begin.seconds, stepLength(known, timing.strokesOf));
    },
  );
  return { begin, beats, items, until, outline, ownEnd };
}

/** What is known around a step when it begins. */
interface Beginning {
  readonly next: Step | undefined;
  readonly earlier: { readonly outline: StepOutline; readonly end: Fraction } | undefined;
  readonly length: VideoLength | undefined;
}

function beginOf(step: Step, { next, earlier, length }: Beginning, timing: Timing, report: Report): Begin {
  const { clock } = timing;
  const before = earlier?.outline;
  const at = (seconds: Fraction): Begin => ({ seconds, frame: frameAtTime(clock.rate, seconds), given: undefined });
  const follows = at(earlier?.end ?? zero);
  const latest = before === undefined ? frameAt(0) : latestOf(before);
  const bound = leastAfter(latest, [fixedFrame(next?.at, timing), length?.frameCount]);
  const place: Place = { base: before?.begin.seconds ?? zero, notBefore: latest, until: bound };
  if (step.at === undefined) {
    const spoken = spokenBegin(step, place, follows, timing, report);
    return spoken === undefined ? follows : at(spoken);
  }
  const found = momentOf(clock, step.at.value, place);
  const moment = orReport(found, step.at.span, report, whatCameBefore(step.at.value, before, timing));
  if (moment === undefined) return follows;
  if (moment.frame < latest && before !== undefined) {
    report(goesBack(step.at.span, moment, before, clock));
    return at(laterOf(moment.seconds, before.begin.seconds));
  }
  if (length !== undefined && moment.frame >= length.frameCount) {
    // What follows is measured as if the step began where it would without the time: one wrong time is one fault.
    report(pastEnd(step.at.span, `step "${step.id}" begins`, moment.frame, clock, length));
    return follows;
  }
  return { seconds: moment.seconds, frame: moment.frame, given: moment };
}

/**
 * Words are searched for after the last time written in the previous step, which may itself be the one that is wrong.
 */
function whatCameBefore(time: Time, before: StepOutline | undefined, { clock }: Timing): Diagnostic['notes'] {
  const isAfterwards = dependenciesOf(time).includes('before');
  const last = !isAfterwards || before === undefined ? undefined : lastGiven(before);
  if (last === undefined) return undefined;
  return [{ span: last.span, message: `the words must come after this, at ${printFrame(clock.rate, last.frame)}` }];
}

/** Where the narration speaks what the step says, if it does. */
function spokenBegin(
  step: Step,
  place: Place,
  follows: Begin,
  { clock }: Timing,
  report: Report,
): Fraction | undefined {
  if (step.say === undefined || typeof clock.narration === 'string') return undefined;
  const time: Time = { kind: 'words', words: step.say.value, occurrence: 1, fallback: undefined };
  const found = momentOf(clock, time, place);
  if (found.ok) return found.moment.seconds;
  const print = (seconds: Fraction) => clock.print(clock.frameOf(seconds));
  const alike = clock.alike(step.say.value, wordsAt(place, clock.rate));
  if (alike !== undefined) {
    const message = `step "${step.id}" says "${oneLine(step.say.value)}", and ${clock.narration.name} has "${alike.text}" at ${print(alike.seconds)}, where the step begins; let it say the words spoken, if they were meant to be the same`;
    report(timeWarning('said-otherwise', step.say.span, message));
    return alike.seconds;
  }
  const near = clock.nearest(step.say.value, {});
  const nearest = near === undefined ? '' : `; the nearest words are "${near.text}" at ${print(near.seconds)}`;
  const instead = `so it begins at ${print(follows.seconds)}`;
  const fix = 'give the step an "at", or let it say the words spoken';
  const message = `what step "${step.id}" says is not spoken in ${clock.narration.name} after what comes before it, ${instead}${nearest}; ${fix}`;
  report(timeWarning('say-not-found', step.say.span, message));
  return undefined;
}

/** The times between which words at a place are searched for. A frame may begin just after the word that is on it. */
function wordsAt({ notBefore, until }: Place, rate: Fraction): WithinWords {
  const half = fraction(rate.denominator, 2n * rate.numerator);
  const from = subtract(timeOfFrame(rate, notBefore), half);
  return until === undefined ? { from } : { from, until: subtract(timeOfFrame(rate, until), half) };
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}

/**
 * The frame by which a step is known to be over before the times within it are resolved: that of its end, of the next
 * step's beginning or of the video's end, if these depend on nothing within the step.
 */
function boundOf(
  step: Step,
  next: Step | undefined,
  { begin, length }: Pick<Within, 'begin' | 'length'>,
  timing: Timing,
): Frame | undefined {
  const place: Place = { base: begin.seconds, notBefore: begin.frame, until: undefined };
  const isKnown = step.until !== undefined && !dependenciesOf(step.until.value).includes('before');
  const end = isKnown ? frameQuietly(step.until, place, timing) : undefined;
  return leastAfter(begin.frame, [end, fixedFrame(next?.at, timing), length?.frameCount]);
}

/** The frame of a time whose meaning does not depend on its place. */
function fixedFrame(at: Located<Time> | undefined, timing: Timing): Frame | undefined {
  return at === undefined || !isSameEverywhere(at.value) ? undefined : frameQuietly(at, anywhere, timing);
}

/** The frame of a time; its fault is reported at the time itself. */
function frameQuietly({ value }: Located<Time>, place: Place, { clock }: Timing): Frame | undefined {
  const found = momentOf(clock, value, place);
  return found.ok ? found.moment.frame : undefined;
}

/** The least of the frames after `from`; one before it is a fault of its own and sets no bound. */
function leastAfter(from: Frame, frames: readonly (number | undefined)[]): Frame | undefined {
  const after = frames.filter((frame) => frame !== undefined && frame > from);
  return after.length === 0 ? undefined : frameAt(Math.min(...after.filter((frame) => frame !== undefined)));
}
