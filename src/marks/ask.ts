/**
 * A question: a card beside the board, with a question mark in its group's colour. The step's later beats wait.
 */

import { nothingToJudge } from '../check/marks.ts';
import { paintCallouts } from '../picture/callout.ts';
import { type MarkPainting, none } from '../picture/painting.ts';
import { standing } from '../telling/strokes.ts';
import { halfSecond } from '../timeline/pace.ts';
import type { BeatRecord } from './record.ts';
import { type MarkWords, never, oneLine } from './words.ts';

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
