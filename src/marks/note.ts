/**
 * A note: a card beside the board, with a bar in its group's colour along its side.
 */
import { paintCallouts } from '../picture/callout.ts';
import { type MarkPainting, none } from '../picture/painting.ts';

export const painting = {
  comesIn: (_, motion) => motion.fade,
  candidates: none,
  isRinged: false,
  covers: () => 'card',
  onBoard: {},
  onFrame: { card: paintCallouts },
} satisfies MarkPainting<'note'>;
