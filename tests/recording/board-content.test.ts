import { expect, it } from 'vitest';
import { contentOf, likeness } from '../../src/recording/board-content.ts';
import { type Corners, uprightCorners } from '../../src/recording/corners.ts';
import { greyPictureOf } from './take-pictures.ts';
import { takeFrom } from './takes/takes.ts';
import { cornersAt } from './takes/truth.ts';

it('a board is like itself, whatever is lit, and unlike itself one cell off', () => {
  for (const size of [4, 6, 9] as const) {
    const take = takeFrom(1002, { size, look: { lit: [46, 52, 60], cell: [20, 34, 58], fadeFrames: 0 } });
    const select = take.deeds.find(({ kind }) => kind === 'select')!;
    const corners = cornersAt(take, 0);
    const cell = take.board.side / size;
    const [left, top] = corners[0];
    const beside: Corners = uprightCorners(left - cell, top, take.board.side, take.board.side);
    const first = contentOf(greyPictureOf(take, 0), size, corners);
    const later = greyPictureOf(take, select.frame);
    expect(likeness(first, contentOf(later, size, corners))).toBeGreaterThan(0.7);
    expect(likeness(first, contentOf(later, size, beside))).toBeLessThan(0.5);
  }
});
