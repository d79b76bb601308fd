/**
 * A question: a card next to the board, with a question mark in its group's colour. The step's later beats wait.
 */

import { nothingToJudge } from '../check/marks.ts';
import { paintCallouts } from '../picture/callout.ts';
import { type MarkPainting, none } from '../picture/painting.ts';
import { type MarkReading, markReading } from '../scene/beats.ts';
import { type Fraction, fraction, fractionFromDecimal } from '../scene/fraction.ts';
import { measure, sentence } from '../scene/language-values.ts';
import { readNumber } from '../scene/numbers.ts';
import type { Context } from '../scene/reading.ts';
import { optional } from '../scene/structures.ts';
import type { TextNode } from '../scene/yaml-tree.ts';
import { standing } from '../staging/strokes.ts';
import { halfSecond } from '../timeline/pace.ts';
import type { BeatRecord } from './record.ts';
import { type MarkWords, never, oneLine } from './words.ts';

export const reading = (): MarkReading<'ask'> =>
  markReading(
    {
      ask: sentence("A question; the step's later beats wait."),
      hold: optional(measure('How many seconds they wait; 5 by default.', ['5'])),
    },
    ({ values: { ask, hold } }, context) => ask && { kind: 'ask', text: ask.text, hold: readHold(hold?.node, context) },
  );

export const beat = {
  judge: nothingToJudge,
  seconds: () => halfSecond,
  strokes: (_, { text }, drawn) => [standing({ kind: 'ask', text }, drawn)],
} satisfies BeatRecord<'ask'>['beat'];

export const words = {
  clause: ([shape]) => `a question: ${oneLine(shape?.text ?? '')}`,
  isClaim: false,
  areJoined: false,
  isNews: true,
  answers: never,
} satisfies MarkWords<'ask'>;

export const painting = {
  comesIn: (_, motion) => motion.fade,
  candidates: none,
  isRinged: false,
  covers: () => 'card',
  onBoard: {},
  onFrame: { card: paintCallouts },
} satisfies MarkPainting<'ask'>;

const mostHold = 600;

function readHold(node: TextNode | undefined, { faults }: Context): Fraction {
  const seconds = node === undefined ? undefined : { ...node, text: node.text.trim().replace(/ ?s$/, '') };
  if (
    seconds === undefined ||
    readNumber(seconds, { what: '"hold", in seconds,', least: 0, most: mostHold, faults }) === undefined
  )
    return fraction(5);
  return fractionFromDecimal(seconds.text) ?? fraction(5);
}
