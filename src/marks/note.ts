/**
 * A note: a card beside the board, with a bar in its group's colour along its side.
 */

import { paintCallouts } from '../picture/callout.ts';
import { type MarkPainting, none } from '../picture/painting.ts';
import { type MarkWords, never, oneLine } from './words.ts';

export const words = {
  clause: ([shape]) => `a note says: ${oneLine(shape?.text ?? '')}`,
  areJoined: false,
  isNews: true,
  answers: never,
} satisfies MarkWords<'note'>;

export const painting = {
  comesIn: (_, motion) => motion.fade,
  candidates: none,
  isRinged: false,
  covers: () => 'card',
  onBoard: {},
  onFrame: { card: paintCallouts },
} satisfies MarkPainting<'note'>;
