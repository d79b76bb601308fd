/**
 * A note: a card next to the board, with a bar in its group's colour along its side.
 */

import { nothingToJudge } from '../check/marks.ts';
import { paintCallouts } from '../picture/callout.ts';
import { type MarkPainting, none } from '../picture/painting.ts';
import { type MarkReading, markReading } from '../scene/beats.ts';
import { sentence } from '../scene/language-values.ts';
import { standing } from '../staging/strokes.ts';
import { halfSecond } from '../timeline/pace.ts';
import type { BeatRecord } from './record.ts';
import { type MarkWords, never, oneLine } from './words.ts';

export const reading = (): MarkReading<'note'> =>
  markReading(
    { note: sentence('The callout beside the board.') },
    ({ values: { note } }) => note && { kind: 'note', text: note.text },
  );

export const beat = {
  judge: nothingToJudge,
  seconds: () => halfSecond,
  strokes: (_, { text }, drawn) => [standing({ kind: 'note', text }, drawn)],
} satisfies BeatRecord<'note'>['beat'];

export const words = {
  clause: ([shape]) => `a note says: ${oneLine(shape?.text ?? '')}`,
  isClaim: false,
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
