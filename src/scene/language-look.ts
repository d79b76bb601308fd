/**
 * The language of looks: every colour, width and time that a look can set, with its range. All keys may be left out.
 */
import { z } from 'zod';
import { choice, keys, name } from './language-values.ts';
import type { LookColours, LookInks, LookMotion, LookStrokes, LookType } from './look.ts';
import type { GroupColour } from './scene.ts';

/** Both ends are in the range. */
export interface Range {
  readonly least: number;
  readonly most: number;
}

type Numbers<Section> = { readonly [Key in keyof Section as Section[Key] extends number ? Key : never]: Entry };
type Entry = Range & { readonly description: string };

const between = (least: number, most: number) => (description: string) => ({ least, most, description });
const ink = between(0, 1);
const ofCell = between(0.001, 0.5);
const pixels = between(0, 200);
const capital = between(0.05, 0.95);
const fontPx = between(8, 400);
const seconds = between(0, 10);

export const inks: Numbers<LookInks> = {
  fill: ink('How much of its colour a tinted cell takes on.'),
  disc: ink('The same within a circle.'),
  veil: ink('How much the veil covers of what is not in focus.'),
  candidate: ink('Of small digits while nothing is marked.'),
  quiet: ink('Of small digits that have no part in what is marked.'),
};

export const strokes: Numbers<LookStrokes> = {
  line: ofCell('Lines between cells, as a part of a cell.'),
  houseLine: ofCell('Lines round boxes.'),
  link: ofCell('Strong links.'),
  weakLink: ofCell('Weak links.'),
  circle: ofCell('Circles round candidates.'),
  strike: ofCell('Crosses through candidates.'),
  outline: ofCell('Lines round a patch of cells.'),
  casing: ofCell('The rim round every mark.'),
  cornerRadius: between(0, 0.5)('How round the corners of an outline are.'),
  leastPx: pixels('The least stroke of a mark, in pixels.'),
  leastHeadPx: pixels('The least length of an arrowhead, in pixels.'),
};

export const type: Numbers<LookType> = {
  digit: capital('The height of a digit, as a part of a cell.'),
  candidate: capital('The height of a small digit.'),
  emphasis: between(1, 3)('How much larger small digits are drawn that have a part in what is marked.'),
  titlePx: fontPx('The title of the lesson, in pixels.'),
  headingPx: fontPx('The heading of a step, in pixels.'),
  bodyPx: fontPx('Running text, in pixels.'),
  notePx: fontPx('Callouts, in pixels.'),
  labelPx: fontPx('Labels, in pixels.'),
};

export const motion: Numbers<LookMotion> = {
  fill: seconds('How long a tint takes to come, in seconds.'),
  apart: seconds('From one place of a digit to the next.'),
  apartInAll: seconds('For all places of a digit, at most.'),
  circle: seconds('How long a circle takes to be drawn.'),
  linkShortest: seconds('How long the shortest link takes.'),
  linkLongest: seconds('How long the longest link takes.'),
  strike: seconds('How long a cross takes.'),
  strikeHold: seconds('How long a struck candidate stays before it fades.'),
  fade: seconds('How long a mark takes to go.'),
  place: seconds('How long a written digit takes to come.'),
  outline: seconds('How long an outline takes.'),
  sight: seconds('How long a sight line takes.'),
  focus: seconds('How long the rest takes to dim.'),
};

export const waysToCome = ['drawn', 'faded'] as const;

type ColourName = Exclude<keyof LookColours, 'groups'>;

export const colours: Readonly<Record<ColourName, string>> = {
  frame: 'The frame around the board, with draw: board.',
  cell: 'The ground of a cell.',
  line: 'Lines between cells.',
  houseLine: 'Lines round boxes.',
  given: 'Digits that are given.',
  written: 'Digits that the scene writes.',
  candidate: 'Small digits.',
  text: 'Words.',
  quietText: 'Words that matter less: the title above, the credit.',
  card: 'The ground of callouts and labels.',
  veil: 'What covers all but the cells in focus.',
  casing: 'The rim round what is lighter than it.',
  casingLight: 'The rim round what is darker than it.',
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

/** A whole look file. */
export const lookDefinition = keys('a look', 'Colours, widths, type and motion; what is left out stays as it is.', {
  name: name('What the look is called.').optional(),
  colours: keys('"colours"', 'Colours as "#rrggbb", in quotes.', {
    ...coloursOf(colours),
    groups: keys('"groups"', 'What the colours of groups look like.', coloursOf(groupNames)).optional(),
  }).optional(),
  inks: keys('"inks"', 'How much of a colour is laid on, 0 (none) to 1 (opaque).', numbersOf(inks)).optional(),
  strokes: keys(
    '"strokes"',
    'Widths, as parts of a cell, or in pixels where the name says so.',
    numbersOf(strokes),
  ).optional(),
  type: keys('"type"', 'The typeface and its sizes.', {
    family: name('The typeface.').optional(),
    ...numbersOf(type),
  }).optional(),
  motion: keys('"motion"', 'How things come, and how long they take, in seconds.', {
    come: choice(waysToCome, 'Drawn on, or faded in whole, without motion; drawn by default.').optional(),
    ...numbersOf(motion),
  }).optional(),
});

function numbersOf(entries: Readonly<Record<string, Entry>>): Readonly<Record<string, z.ZodOptional>> {
  return Object.fromEntries(
    Object.entries(entries).map(([key, { description, least, most }]) => [
      key,
      z
        .string()
        .meta({ description, guesses: ['number'], minimum: least, maximum: most })
        .optional(),
    ]),
  );
}

function coloursOf(entries: Readonly<Record<string, string>>): Readonly<Record<string, z.ZodOptional>> {
  return Object.fromEntries(
    Object.entries(entries).map(([key, description]) => [
      key,
      z.string().meta({ description, pattern: '^#[0-9A-Fa-f]{6}$' }).optional(),
    ]),
  );
}
