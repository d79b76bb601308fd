import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { frameAt } from '../../src/timeline/film.ts';
import { compare, comparePngs, outFolder, referenceFolder } from './compare.ts';
import { drawn } from './drawn.ts';
import { circle, fill, film } from './films.ts';
import { goldens } from './goldens.ts';

describe('every picture is as it was when an eye accepted it', () => {
  for (const golden of goldens) {
    it(golden.name, () => {
      const result = compare(golden);
      if (result.kind === 'same') return;
      const numbers = result.kind === 'different' ? `: ${result.pixels} pixels, alpha by ${result.alphaLevels}` : '';
      expect.fail(`${golden.name} is ${result.kind}${numbers}. See ${outFolder}, or run "npm run pictures".`);
    });
  }
});

it('every reference belongs to a picture, and no name is used twice', () => {
  const names = goldens.map(({ name }) => `${name}.png`);
  expect(new Set(names).size).toBe(names.length);
  expect(readdirSync(referenceFolder).filter((name) => !names.includes(name))).toEqual([]);
});

describe('the comparison sees', () => {
  const small = { width: 64, height: 64, boxes: '2x2', draw: 'overlay' } as const;
  const at = (left: number) =>
    film({
      ...small,
      board: [{ from: frameAt(0), shape: { kind: 'square', left, top: 2, side: 60 } }],
      marks: [circle('1r1c1', 0)],
    });

  it('a picture that is the same', () => {
    expect(comparePngs(drawn(at(2), 50).png, drawn(at(2), 50).png).kind).toBe('same');
  });

  it('a stroke moved by a tenth of a pixel', () => {
    expect(comparePngs(drawn(at(2), 50).png, drawn(at(2.1), 50).png).kind).toBe('different');
  });

  it('a tint that is a little more transparent', () => {
    const tint = film({ ...small, marks: [fill('r1c1', 3)] });
    const look = (ink: number) => ({ ...goldens[0]!.look, inks: { ...goldens[0]!.look.inks, fill: ink } });
    expect(comparePngs(drawn(tint, 50, look(0.3)).png, drawn(tint, 50, look(0.31)).png).kind).toBe('different');
  });
});
