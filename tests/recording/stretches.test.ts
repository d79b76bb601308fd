import { describe, expect, it } from 'vitest';
import { uprightCorners } from '../../src/recording/corners.ts';
import { type PlaceAt, stretchesOf } from '../../src/recording/stretches.ts';

/** A board of 90 pixels a cell whose left edge lies at these places, 25 pictures a second; undefined: hidden. */
function places(lefts: readonly (number | undefined)[]): readonly PlaceAt[] {
  return lefts.map((left, index) => ({
    seconds: index / 25,
    corners: left === undefined ? undefined : uprightCorners(left, 50, 810, 810),
  }));
}

/** `still 100 0-10`: kind, left edge, first picture and the first one after. */
function told(lefts: readonly (number | undefined)[]): readonly string[] {
  return stretchesOf(places(lefts), lefts.length / 25, 9).map((stretch) => {
    const span = `${Math.round(stretch.from * 25)}-${Math.round(stretch.to * 25)}`;
    return stretch.kind === 'still' ? `still ${stretch.corners[0][0].toFixed(1)} ${span}` : `${stretch.kind} ${span}`;
  });
}

const rest = (left: number, count: number) => Array.from({ length: count }, (_, index) => left + 0.02 * (index % 2));
const hidden = (count: number) => Array.from({ length: count }, () => undefined);

describe('stretches', () => {
  const rows: readonly (readonly [
    what: string,
    lefts: readonly (number | undefined)[],
    expected: readonly string[],
  ])[] = [
    ['a board that lies still', rest(100, 20), ['still 100.0 0-20']],
    ['one picture', [100], ['still 100.0 0-1']],
    ['a card before it', [...hidden(10), ...rest(100, 10)], ['hidden 0-10', 'still 100.0 10-20']],
    [
      'a cutaway',
      [...rest(100, 10), ...hidden(3), ...rest(100, 10)],
      ['still 100.0 0-10', 'hidden 10-13', 'still 100.0 13-23'],
    ],
    ['a cut to another place', [...rest(100, 10), ...rest(300, 10)], ['still 100.0 0-10', 'still 300.0 10-20']],
    [
      'a move',
      [...rest(100, 10), 110, 140, 180, 190, ...rest(195, 10)],
      ['still 100.0 0-10', 'moving 10-14', 'still 195.0 14-24'],
    ],
    [
      'a move that begins slowly, as soon as it shows',
      [...rest(100, 12), 100.2, 101, 104, 110, ...rest(120, 10)],
      ['still 100.0 0-12', 'moving 12-16', 'still 120.0 16-26'],
    ],
    ['a tremor', [...rest(100, 10), 100.9, 99.6, ...rest(100, 10)], ['still 100.0 0-22']],
    [
      'there and back',
      [...rest(100, 10), 108, 120, 108, ...rest(100, 10)],
      ['still 100.0 0-10', 'moving 10-13', 'still 100.0 13-23'],
    ],
  ];
  it.each(rows)('%s', (_, lefts, expected) => {
    expect(told(lefts)).toEqual(expected);
  });

  it('a gap in the midst of a move is no rest', () => {
    const all = [...places([...rest(100, 10), 110, 130]), ...places(rest(200, 10)).map(later(0.7))];
    expect(stretchesOf(all, 1.2, 9).map(({ kind }) => kind)).toEqual(['still', 'moving', 'still']);
  });
});

function later(by: number) {
  return (place: PlaceAt): PlaceAt => ({ ...place, seconds: place.seconds + by });
}
