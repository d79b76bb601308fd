/**
 * Where notes and questions are in their room. Callouts that are on screen together, or are linked by others that
 * overlap in time, share one plan, so that none moves when another comes or goes.
 */
import type { Film, Mark, Shown } from '../timeline/film.ts';
import type { Box } from './board-place.ts';
import type { Stage } from './stage.ts';
import { fitText, type SetText } from './type.ts';

/** A note or question with its words set and its place found; lengths in frame pixels. */
export interface PlannedCallout {
  readonly mark: Mark;
  readonly kind: 'note' | 'ask';
  readonly set: SetText;
  /** Counted from the top; if two callouts share a slot, the later hides the earlier. */
  readonly slot: number;
  readonly box: Box;
  /** Between the card's edge and its words, in frame pixels. */
  readonly pad: number;
}

/** The callouts of the plans that have one on screen, including past and future ones. */
export function planCallouts(stage: Stage): PlannedCallout[] {
  const shown = new Set(stage.standing.map(({ mark }) => mark));
  return calloutGroups(stage.film)
    .filter((group) => group.some((mark) => shown.has(mark)))
    .flatMap((group) => stack(stage, group));
}

/**
 * The room that no callout takes while the current headings are on screen, so that the words in it need not move when a
 * callout comes or goes.
 */
export function roomBesideCallouts(stage: Stage): Box {
  const { film, drawing, layout } = stage;
  const { callout: room, calloutAt } = layout;
  const headings = drawing.headings.flatMap(({ index }) => film.headings[index] ?? []);
  const planned = calloutGroups(film)
    .filter((group) => headings.some((heading) => group.some((mark) => areTogether(mark, heading))))
    .flatMap((group) => stack(stage, group));
  if (planned.length === 0) return room;
  const gap = 24 * stage.unit;
  return calloutAt === 'bottom'
    ? { ...room, bottom: Math.min(...planned.map(({ box }) => box.top)) - gap }
    : { ...room, top: Math.max(...planned.map(({ box }) => box.bottom)) + gap };
}

/** Notes and questions, grouped by shared plan. */
export function calloutGroups(film: Film): Mark[][] {
  return together(film.marks.filter(({ shape }) => shape.kind === 'note' || shape.kind === 'ask'));
}

/** Whether two things are on screen together at some frame. */
export function areTogether(one: Shown, other: Shown): boolean {
  return one.from < other.until && other.from < one.until;
}

/** The width of a note's bar or a question's mark, in frame pixels. */
export function sideWidth(stage: Stage, kind: 'note' | 'ask'): number {
  return (kind === 'ask' ? 84 : 16) * stage.unit;
}

/** Groups of marks linked by overlapping in time; the marks come in order of `from`. */
function together(marks: readonly Mark[]): Mark[][] {
  const groups: Mark[][] = [];
  let until = -1;
  for (const mark of marks) {
    if (mark.from >= until) groups.push([]);
    groups.at(-1)?.push(mark);
    until = Math.max(until, mark.until);
  }
  return groups;
}

function stack(stage: Stage, group: readonly Mark[]): PlannedCallout[] {
  const { callout: room, calloutAt } = stage.layout;
  const roomHeight = room.bottom - room.top;
  const gap = Math.min(20 * stage.unit, roomHeight * 0.1);
  const slots = mergedInto(slotsOf(group), Math.floor((roomHeight + gap) / (56 * stage.unit + gap)));
  const share = (roomHeight - gap * (slots.length - 1)) / slots.length;
  const pad = Math.min(28 * stage.unit, share * 0.12);
  const set = slots.map((slot) => slot.map((mark) => setCallout(stage, mark, room.right - room.left, share, pad)));
  const heights = set.map((slot) => Math.max(...slot.map(({ height }) => height)));
  const whole = heights.reduce((sum, height) => sum + height, 0) + gap * (slots.length - 1);
  let top = calloutAt === 'bottom' ? room.bottom - whole : room.top;
  const planned: PlannedCallout[] = [];
  set.forEach((slot, index) => {
    for (const { height, width, ...callout } of slot) {
      const box = { left: room.left, right: room.left + width, top, bottom: top + height };
      planned.push({ ...callout, slot: index, pad, box });
    }
    top += heights[index]! + gap;
  });
  return planned;
}

/**
 * At most this many slots, at least one: further callouts share the first ones, where a later callout hides an earlier.
 */
function mergedInto(slots: readonly Mark[][], most: number): Mark[][] {
  const count = Math.max(1, Math.min(slots.length, most));
  return slots.slice(0, count).map((_, slot) => slots.filter((_, index) => index % count === slot).flat());
}

/** From top to bottom: each mark takes the first slot that is free for its whole time. */
function slotsOf(group: readonly Mark[]): Mark[][] {
  const slots: Mark[][] = [];
  for (const mark of group) {
    const free = slots.find((slot) => slot.every((other) => other.until <= mark.from || mark.until <= other.from));
    if (free === undefined) slots.push([mark]);
    else free.push(mark);
  }
  return slots;
}

function setCallout(stage: Stage, mark: Mark, roomWidth: number, roomHeight: number, pad: number) {
  const { shape } = mark;
  const kind: 'note' | 'ask' = shape.kind === 'ask' ? 'ask' : 'note';
  const text = shape.kind === 'ask' || shape.kind === 'note' ? shape.text : '';
  const setting = {
    family: stage.look.type.family,
    weight: 500,
    px: stage.look.type.notePx * stage.unit,
    notation: true,
  };
  const width = Math.min(roomWidth, 900 * stage.unit);
  const room = { width: width - 2 * pad - sideWidth(stage, kind), height: roomHeight - 2 * pad, lines: 2, least: 0.45 };
  const set = fitText(stage.context, text, setting, room);
  return { mark, kind, set, width, height: set.height + 2 * pad };
}
