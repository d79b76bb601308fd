/**
 * The language of looks: every colour, width and time that a look can set, with its range. All keys may be left out.
 */
import type { ReadOf } from './definition.ts';
import type { Faults } from './faults.ts';
import { choice, name, type TextOf, text } from './language-values.ts';
import type { LookColours, LookInks, LookMotion, LookStrokes, LookType } from './look.ts';
import { type Range, readNumber } from './numbers.ts';
import type { GroupColour } from './scene.ts';
import { byKey, keys, optional } from './structures.ts';
import type { TextNode } from './yaml-tree.ts';

type Numbers<Section> = { readonly [Key in keyof Section as Section[Key] extends number ? Key : never]: Entry };
type Entry = Range & { readonly description: string };

const between = (least: number, most: number) => (description: string) => ({ least, most, description });
const ink = between(0, 1);
const ofCell = between(0.001, 0.5);
const pixels = between(0, 200);
const capital = between(0.05, 0.95);
const fontPx = between(8, 400);
const seconds = between(0, 10);

const inks: Numbers<LookInks> = {
  fill: ink('How much of its colour a tinted cell takes on.'),
  disc: ink('The same within a circle.'),
  veil: ink('How much the veil covers of what is not in focus.'),
  candidate: ink('Of small digits while nothing is marked.'),
  quiet: ink('Of small digits that are not involved in what is marked.'),
};

const strokes: Numbers<LookStrokes> = {
  line: ofCell('Lines between cells, as a part of a cell.'),
  houseLine: ofCell('Lines around boxes.'),
  link: ofCell('Strong links.'),
  weakLink: ofCell('Weak links.'),
  circle: ofCell('Circles around candidates.'),
  strike: ofCell('Crosses through candidates.'),
  outline: ofCell('Lines around a patch of cells.'),
  casing: ofCell('The rim around every mark.'),
  cornerRadius: between(0, 0.5)('How round the corners of an outline are.'),
  leastPx: pixels('The least stroke of a mark, in pixels.'),
  leastHeadPx: pixels('The least length of an arrowhead, in pixels.'),
};

const type: Numbers<LookType> = {
  digit: capital('The height of a digit, as a part of a cell.'),
  candidate: capital('The height of a small digit.'),
  emphasis: between(1, 3)('How much larger small digits are drawn that are involved in what is marked.'),
  titlePx: fontPx('The title of the lesson, in pixels.'),
  headingPx: fontPx('The heading of a step, in pixels.'),
  bodyPx: fontPx('Running text, in pixels.'),
  notePx: fontPx('Callouts, in pixels.'),
  labelPx: fontPx('Labels, in pixels.'),
};

const motion: Numbers<LookMotion> = {
  fill: seconds('How long a tint takes to appear, in seconds.'),
  apart: seconds('From one place of a digit to the next.'),
  apartInAll: seconds('For all places of a digit, at most.'),
  circle: seconds('How long a circle takes to be drawn.'),
  linkShortest: seconds('How long the shortest link takes.'),
  linkLongest: seconds('How long the longest link takes.'),
  strike: seconds('How long a cross takes.'),
  strikeHold: seconds('How long a struck candidate stays before it fades.'),
  fade: seconds('How long a mark takes to disappear.'),
  place: seconds('How long a written digit takes to appear.'),
  outline: seconds('How long an outline takes.'),
  sight: seconds('How long a sight line takes.'),
  focus: seconds('How long the rest takes to dim.'),
};

type ColourName = Exclude<keyof LookColours, 'groups'>;

const colours: Readonly<Record<ColourName, string>> = {
  frame: 'The frame around the board, with draw: board.',
  cell: 'The background of a cell.',
  line: 'Lines between cells.',
  houseLine: 'Lines around boxes.',
  given: 'Digits that are given.',
  written: 'Digits that the scene writes.',
  candidate: 'Small digits.',
  text: 'Words.',
  quietText: 'Words that matter less: the title above, the credit.',
  card: 'The background of callouts and labels.',
  veil: 'What covers all but the cells in focus.',
  casing: 'The rim around what is lighter than it.',
  casingLight: 'The rim around what is darker than it.',
  strong: 'Strong links.',
  weak: 'Weak links.',
  removal: 'Removals, and nothing else.',
  placement: 'Placements.',
  plain: 'Marks without a group.',
};

const groupNames: Readonly<Record<GroupColour, string>> = {
  orange: 'The group colour orange.',
  sky: 'The group colour sky.',
  green: 'The group colour green.',
  yellow: 'The group colour yellow.',
  blue: 'The group colour blue.',
  purple: 'The group colour purple.',
};

interface Needs {
  readonly faults: Faults;
}

const number = ({ description, least, most }: Entry): TextOf<number, Needs> =>
  text({ description, guesses: ['number'], editor: { minimum: least, maximum: most } }, (node, { faults }, named) =>
    readNumber(node, { what: named, least, most, faults }),
  );

const colour = (description: string): TextOf<string, Needs> =>
  text({ description, editor: { pattern: '^#[0-9A-Fa-f]{6}$' } }, readColour);

const numbersOf = <Key extends string>(entries: Readonly<Record<Key, Entry>>) =>
  byKey(entries, (entry) => optional(number(entry)));
const coloursOf = <Key extends string>(entries: Readonly<Record<Key, string>>) =>
  byKey(entries, (description) => optional(colour(description)));

/** A whole look file. */
export const lookDefinition = keys('a look', 'Colours, widths, type and motion; what is left out is unchanged.', {
  name: optional(name('The name of the look.')),
  colours: optional(
    keys('"colours"', 'Colours as "#rrggbb", in quotes.', {
      ...coloursOf(colours),
      groups: optional(keys('"groups"', 'What the colours of groups look like.', coloursOf(groupNames))),
    }),
  ),
  inks: optional(keys('"inks"', 'The strength of a colour, 0 (none) to 1 (opaque).', numbersOf(inks))),
  strokes: optional(
    keys('"strokes"', 'Widths, as parts of a cell, or in pixels where the name says so.', numbersOf(strokes)),
  ),
  type: optional(
    keys('"type"', 'The typeface and its sizes.', {
      family: optional(name('The typeface.')),
      ...numbersOf(type),
    }),
  ),
  motion: optional(
    keys('"motion"', 'How things appear, and how long they take, in seconds.', {
      come: optional(choice(['drawn', 'faded'], 'Drawn on, or faded in whole, without motion; drawn by default.')),
      ...numbersOf(motion),
    }),
  ),
});

/** A look as written. */
export type LookMap = ReadOf<typeof lookDefinition>;

/** In lower case; undefined after a report. */
function readColour(node: TextNode, { faults }: Needs): string | undefined {
  const written = node.text.trim();
  if (/^#[0-9a-f]{6}$/i.test(written)) return written.toLowerCase();
  const message = `"${written}" is not a colour; write six hexadecimal digits in quotes, as in "${nearestColour(written)}"`;
  faults.error('not-a-colour', node.span, message);
  return undefined;
}

/** `#abc` and `aabbcc` in the correct form, else an example. */
function nearestColour(written: string): string {
  const digits = written.replace(/^#/, '').toLowerCase();
  if (/^[0-9a-f]{3}$/.test(digits)) return `#${[...digits].map((each) => each + each).join('')}`;
  return /^[0-9a-f]{6}$/.test(digits) ? `#${digits}` : '#d55e00';
}
