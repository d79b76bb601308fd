/**
 * The middle of a line, from the levels across it: half-way between the two places at which it has half its strength. A
 * tint on one side of it does not move that.
 */

export interface LineMiddle {
  /** In samples from the profile's first. */
  readonly at: number;
  /** In levels, against the nearer in level of both sides. */
  readonly contrast: number;
  readonly kind: 'dark' | 'light' | 'step';
}

/** Levels that a line must have against both sides, and both sides against each other where there is no line. */
const leastContrast = 3;

/**
 * `profile`: levels at even distances across the line, which lies within the middle half; undefined where there is
 * neither a line nor a step.
 */
export function lineMiddle(profile: Float64Array): LineMiddle | undefined {
  const count = profile.length;
  const quarter = Math.max(1, Math.floor(count / 4));
  const [left, right] = [median(profile.subarray(0, quarter)), median(profile.subarray(count - quarter))];
  let [darkest, lightest] = [quarter, quarter];
  for (let index = quarter; index < count - quarter; index++) {
    if (profile[index]! < profile[darkest]!) darkest = index;
    if (profile[index]! > profile[lightest]!) lightest = index;
  }
  const dark = Math.min(left, right) - profile[darkest]!;
  const light = profile[lightest]! - Math.max(left, right);
  const step = Math.abs(right - left);
  const contrast = Math.max(dark, light);
  if (contrast >= leastContrast && contrast >= 0.25 * step) {
    const kind = dark >= light ? 'dark' : 'light';
    const peak = kind === 'dark' ? darkest : lightest;
    const top = plateau(profile, peak);
    const before = crossing(profile, top.first, -1, (left + profile[peak]!) / 2);
    const after = crossing(profile, top.last, 1, (right + profile[peak]!) / 2);
    if (before === undefined || after === undefined) return undefined;
    return { at: (before + after) / 2, contrast, kind };
  }
  if (step < 2 * leastContrast) return undefined;
  const at = stepAt(profile, (left + right) / 2, quarter);
  return at === undefined ? undefined : { at, contrast: step, kind: 'step' };
}

/** Neighbours of the peak that are all but as strong: the middle of a thick line. */
function plateau(profile: Float64Array, peak: number): { readonly first: number; readonly last: number } {
  const isFlat = (index: number) => Math.abs(profile[index]! - profile[peak]!) < 0.75;
  let [first, last] = [peak, peak];
  while (first > 0 && isFlat(first - 1)) first -= 1;
  while (last < profile.length - 1 && isFlat(last + 1)) last += 1;
  return { first, last };
}

/** Where the profile, from `start` in the direction, first reaches the level. */
function crossing(profile: Float64Array, start: number, direction: 1 | -1, level: number): number | undefined {
  const isAbove = profile[start]! > level;
  for (let index = start + direction; index >= 0 && index < profile.length; index += direction) {
    const [here, before] = [profile[index]!, profile[index - direction]!];
    if (here > level === isAbove) continue;
    return index - direction * ((here - level) / (here - before));
  }
  return undefined;
}

/** The one place at which the level is passed; undefined where there are several, or none. */
function stepAt(profile: Float64Array, level: number, margin: number): number | undefined {
  let found: number | undefined;
  for (let index = 1; index < profile.length; index++) {
    const [before, here] = [profile[index - 1]!, profile[index]!];
    if (before > level === here > level) continue;
    if (found !== undefined) return undefined;
    found = index - (here - level) / (here - before);
  }
  return found !== undefined && found >= margin && found <= profile.length - 1 - margin ? found : undefined;
}

function median(levels: Float64Array): number {
  const sorted = [...levels].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
