/**
 * The keys of a step, of the items in it, and of its beats.
 */
import { z } from 'zod';
import { argumentNames } from './argument-names.ts';
import { beatTime, stepEnd, stepTime } from './language-times.ts';
import { keys, listOf, measure, name, notation, sentence, yesOrNo } from './language-values.ts';

const becauseText = 'The name of the argument, as the trade has it. If it is given it must be right.';
const because = () =>
  z
    .union([z.enum(argumentNames), z.string().meta({ description: 'Any usual spelling of such a name.' })])
    .meta({ description: becauseText });

const from = () =>
  notation('The sets that the conclusion is drawn from: cells, places of a digit in a house, or what a step proved.', [
    '7c58',
    'r9c13',
    'step towers',
  ]);

const chainText = () =>
  notation('A chain: = is a strong link, - a weak one; => and conclusions may follow.', [
    '(7)r1c5=r9c5-r9c8=r2c8',
    '(7=8)r1c2-(8=5)r4c2-(5=7)r4c9',
  ]);
const chain = () =>
  z.union([chainText(), listOf(chainText())]).meta({ description: 'A chain of links, or a list of chains.' });

const onlyText = () => notation('The only places of a digit in a house.', ['4b5 in r4c46']);
const pencilText = () => notation('All the digits still possible in a cell.', ['2358r9c1 28r9c3']);
const cascadeText = () => notation('Placements and removals, one after the other.', ['r9c8=1 r6c9=1 r4c79<>6']);

/** A text, or a list of texts and of maps that hold the text with a time of its own. */
function items(text: () => z.ZodString, item: z.ZodObject, description: string) {
  return z.union([text(), listOf(z.union([text(), item]))]).meta({ description });
}

const onlyItem = keys('an item of only', 'Places, and when they are shown.', {
  only: onlyText(),
  at: beatTime().optional(),
});
const pencilItem = keys('an item of pencil', 'Candidate lists, and when they are shown.', {
  pencil: pencilText(),
  at: beatTime().optional(),
});
const cascadeItem = keys('an item of cascade', 'Placements and removals with a time or an argument of their own.', {
  cascade: cascadeText(),
  at: beatTime().optional(),
  because: because().optional(),
  from: from().optional(),
  chain: chain().optional(),
});

const targets = (description: string) => notation(description, ['r1c5 b2', '7r1c5', '7']);

/** What a beat can say beside its mark. */
const ofEveryBeat = {
  at: beatTime().optional(),
  group: name('The colour group of this mark, as named under groups.').optional(),
  keep: yesOrNo('true: the mark stays when its step ends.').optional(),
};

const candidate = (description: string) => notation(description, ['7r1c5']);

const sightWay = keys('a sight line', 'A written digit, and where its line is drawn.', {
  of: notation('The written digit, or its cell.', ['4r4c1', 'r4c1']),
  into: notation('Only the lines that reach this house.', ['b5']).optional(),
  along: notation('Only the line along this house.', ['r4']).optional(),
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
    gone: beatTime().optional(),
  },
  place: { place: notation("Writes the step's placements: all, or cells.", ['all', 'r8c4']) },
  outline: { outline: notation('A line round a house or a patch of cells.', ['b2', 'r12c456']) },
  label: { label: notation('A word tied to a cell or a candidate.', ['7r1c5 "roof"']) },
  note: { note: sentence('The callout beside the board.') },
  focus: { focus: targets('Everything else dims.') },
  sight: {
    sight: z
      .union([
        notation('The lines along which a written digit shuts out its copies.', ['4r4c1']),
        sightWay,
        listOf(sightWay),
      ])
      .meta({
        description: 'The lines along which a written digit shuts out its copies, or the one that does the work.',
      }),
  },
  sides: {
    sides: candidate('The two colours of the cluster of strong links that this candidate belongs to.'),
    groups: listOf(name('A colour group.')).meta({ description: 'The groups of the two sides: [a, b].' }).optional(),
  },
  suppose: {
    suppose: notation(
      'Plays the proof out in ghost ink from a candidate taken as true, as not true (no), or each of a set.',
      ['7r1c7', 'no 7r1c5', 'each 7c5'],
    ),
  },
  ask: {
    ask: sentence("A question; the step's later beats wait."),
    hold: measure('How many seconds they wait; 5 by default.', ['5']).optional(),
  },
  clear: { clear: notation('Takes marks away: those of a step or of a group, or all.', ['all', 'towers']) },
} as const;

export type MarkName = keyof typeof marks;

/** The keys that say what a beat draws. */
export const markNames: readonly string[] = Object.keys(marks);

const beats = Object.entries(marks).map(([mark, shape]) =>
  keys(`a beat with "${mark}"`, 'One mark, and when it is drawn.', { ...shape, ...ofEveryBeat }),
);

/** One item of `show`. */
export const beatDefinition = z.union(beats).meta({ title: 'a beat', description: 'One mark, and when it is drawn.' });

export const stepDefinition = keys('a step', 'One step of the telling.', {
  id: name('The name of the step: letters, digits, hyphens; each once.'),
  at: stepTime().optional(),
  until: stepEnd().optional(),
  title: sentence('The heading shown on screen.').optional(),
  say: sentence('The sentence said: for captions and slide notes, and to find its time in the narration.').optional(),
  chapter: sentence('The name of the chapter that starts here.').optional(),
  because: because().optional(),
  called: sentence("A name of the teller's own, shown and not checked.").optional(),
  from: from().optional(),
  chain: chain().optional(),
  deadly: notation('A deadly pattern whose guardians are a set: cells with their digits, or grid.', [
    '12r34c58',
    'grid',
    'grid without 7r1c5',
  ]).optional(),
  so: notation('The conclusions; all stands for every removal that the argument proves.', [
    'r1c79<>7',
    'r8c4=8',
    'all',
  ]).optional(),
  only: items(onlyText, onlyItem, 'Places written down: only there can the digit of the house be.').optional(),
  pencil: items(
    pencilText,
    pencilItem,
    'Candidate lists written down: these are all the digits still possible.',
  ).optional(),
  cascade: items(
    cascadeText,
    cascadeItem,
    'Placements and removals in order, each by a single or by locked candidates from all before it.',
  ).optional(),
  fails: yesOrNo(
    'true: this looks like an argument and is not; right exactly if its conclusions are not proved.',
  ).optional(),
  show: z
    .array(beatDefinition)
    .meta({ description: 'What is drawn, and when; without it the claim draws itself.' })
    .optional(),
});
