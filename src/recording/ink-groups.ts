/**
 * Digits sorted by the colour of their ink: what was given is printed in one colour, what was written often in another.
 */
import { type Colour, colourDistance } from './colours.ts';

/** Groups differ by so many levels at least. Ink of one colour is measured that differently where strokes are thin. */
const apart = 17;
/**
 * ...and by so many times what most members of a group differ from its middle. Colours that are spread evenly, as blur
 * spreads them, fall into halves that differ by 2.5 times that.
 */
const timesSpread = 3;
const mostGroups = 4;

/** Indices into `inks`, by group; the largest group first. One group where the colours do not fall apart. */
export function inkGroups(inks: readonly Colour[]): readonly (readonly number[])[] {
  let groups: readonly (readonly number[])[] = inks.length === 0 ? [] : [inks.map((_, index) => index)];
  while (groups.length < mostGroups) {
    const split = groups.map((group) => halves(inks, group)).findIndex((pair) => pair !== undefined);
    if (split < 0) break;
    groups = groups.flatMap((group, index) => (index === split ? halves(inks, group)! : [group]));
  }
  return [...groups].sort((a, b) => b.length - a.length);
}

/** Two groups by two middles (k-means), from the two colours furthest from each other; undefined if they are one group. */
function halves(inks: readonly Colour[], group: readonly number[]): readonly [number[], number[]] | undefined {
  if (group.length < 2) return undefined;
  const middle = mean(group.map((index) => inks[index]!));
  const furthest = (from: Colour) =>
    group.reduce((best, each) => (colourDistance(inks[each]!, from) > colourDistance(inks[best]!, from) ? each : best));
  let one = inks[furthest(middle)]!;
  let other = inks[furthest(one)]!;
  let parted: readonly [number[], number[]] = [[], []];
  for (let round = 0; round < 12; round++) {
    const next: readonly [number[], number[]] = [[], []];
    for (const index of group) {
      const isOne = colourDistance(inks[index]!, one) <= colourDistance(inks[index]!, other);
      next[isOne ? 0 : 1].push(index);
    }
    if (next[0].length === 0 || next[1].length === 0) return undefined;
    parted = next;
    [one, other] = [mean(next[0].map((index) => inks[index]!)), mean(next[1].map((index) => inks[index]!))];
  }
  const between = colourDistance(one, other);
  const spread = Math.max(spreadOf(inks, parted[0], one), spreadOf(inks, parted[1], other));
  return between > apart && between > timesSpread * spread ? parted : undefined;
}

/** Within what four of five members lie from the middle. */
function spreadOf(inks: readonly Colour[], group: readonly number[], middle: Colour): number {
  const distances = group.map((index) => colourDistance(inks[index]!, middle)).sort((a, b) => a - b);
  return distances[Math.floor(0.8 * (distances.length - 1))]!;
}

function mean(colours: readonly Colour[]): Colour {
  const sum = (channel: 0 | 1 | 2) => colours.reduce((total, colour) => total + colour[channel], 0) / colours.length;
  return [sum(0), sum(1), sum(2)];
}
