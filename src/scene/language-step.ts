/**
 * The keys of a step, of the items in it, and of its beats.
 */
import type { ReadOf } from './definition.ts';
import {
  becauseText,
  cascadeItems,
  chainTexts,
  deadlyText,
  fromText,
  onlyItems,
  pencilItems,
  soText,
} from './language-argument.ts';
import { beatTime, stepEnd, stepTime } from './language-times.ts';
import { measure, name, notation, sentence, yesOrNo } from './language-values.ts';
import { anyListOf, either, keys, listOf, marked, optional } from './structures.ts';

const targets = (description: string) => notation(description, ['r1c5 b2', '7r1c5', '7']);

/** What a beat can say beside its mark. */
const ofEveryBeat = {
  at: optional(beatTime()),
  group: optional(name('The colour group of this mark, as named under groups.')),
  keep: optional(yesOrNo('true: the mark stays when its step ends.')),
};

const candidate = (description: string) => notation(description, ['7r1c5']);

const sightWay = keys('a sight line', 'A written digit, and where its line is drawn.', {
  of: notation('The written digit, or its cell.', ['4r4c1', 'r4c1']),
  into: optional(notation('Only the lines that reach this house.', ['b5'])),
  along: optional(notation('Only the line along this house.', ['r4'])),
});

/** By mark: its own value, what else belongs to it, and what it draws. */
const marks = {
  fill: {
    fill: targets('Tints cells, houses, the cell of a candidate, or (a bare digit) every cell where it is open.'),
  },
  circle: { circle: targets('Circles candidates; a bare digit: every place still open to it.') },
  link: {
    link: notation("Draws the chain's arrows: all, by number (1-3), or of another chain (2:1-3).", [
      'all',
      '1-3',
      '2:1-3',
    ]),
  },
  strike: {
    strike: notation("Crosses out the step's removals: all, or candidates.", ['all', '7r1c7']),
    gone: optional(beatTime()),
  },
  place: { place: notation("Writes the step's placements: all, or cells.", ['all', 'r8c4']) },
  outline: { outline: notation('A line round a house or a patch of cells.', ['b2', 'r12c456']) },
  label: { label: notation('A word tied to a cell or a candidate.', ['7r1c5 "roof"']) },
  note: { note: sentence('The callout beside the board.') },
  focus: { focus: targets('Everything else dims.') },
  sight: {
    sight: either(
      [notation('The lines along which a written digit shuts out its copies.', ['4r4c1']), sightWay, listOf(sightWay)],
      'The lines along which a written digit shuts out its copies, or the one that does the work.',
    ),
  },
  sides: {
    sides: candidate('The two colours of the cluster of strong links that this candidate belongs to.'),
    groups: optional(listOf(name('A colour group.'), 'The groups of the two sides: [a, b].')),
  },
  suppose: {
    suppose: notation(
      'Plays the proof out in ghost ink from a candidate taken as true, as not true (no), or each of a set.',
      ['7r1c7', 'no 7r1c5', 'each 7c5'],
    ),
  },
  ask: {
    ask: sentence("A question; the step's later beats wait."),
    hold: optional(measure('How many seconds they wait; 5 by default.', ['5'])),
  },
  clear: { clear: notation('Takes marks away: those of a step or of a group, or all.', ['all', 'towers']) },
} as const;

/** One item of `show`. */
const beatDefinition = marked(marks, ofEveryBeat, {
  title: 'a beat',
  titleOf: (mark) => `a beat with "${mark}"`,
  descriptionOf: () => 'One mark, and when it is drawn.',
  description: 'One mark, and when it is drawn.',
});

/** A beat as it is written. */
export type BeatMap = ReadOf<typeof beatDefinition>;

/** What stands after `sight`, and after `groups` of a mark of two sides, as they are written. */
export type SightLines = ReadOf<typeof marks.sight.sight>;
export type SightWay = ReadOf<typeof sightWay>;
export type SideGroups = ReadOf<typeof marks.sides.groups>;

export const stepDefinition = keys('a step', 'One step of the telling.', {
  id: name('The name of the step: letters, digits, hyphens; each once.'),
  at: optional(stepTime()),
  until: optional(stepEnd()),
  title: optional(sentence('The heading shown on screen.')),
  say: optional(sentence('The sentence said: for captions and slide notes, and to find its time in the narration.')),
  chapter: optional(sentence('The name of the chapter that starts here.')),
  because: optional(becauseText()),
  called: optional(sentence("A name of the teller's own, shown and not checked.")),
  from: optional(fromText()),
  chain: optional(chainTexts()),
  deadly: optional(deadlyText()),
  so: optional(soText()),
  only: optional(onlyItems()),
  pencil: optional(pencilItems()),
  cascade: optional(cascadeItems()),
  fails: optional(
    yesOrNo('true: this looks like an argument and is not; right exactly if its conclusions are not proved.'),
  ),
  show: optional(anyListOf(beatDefinition, 'What is drawn, and when; without it the claim draws itself.')),
});

/** A step as it is written. */
export type StepMap = ReadOf<typeof stepDefinition>;
