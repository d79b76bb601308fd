/**
 * The arrows of a beat: which links it names, and which of them may be drawn.
 */
import type { CheckedLink, CheckedStep } from '../check/verdict.ts';
import type { LinkRange } from '../scene/scene.ts';

/** The links of the step's own chains (not of its cascade's), in order. */
export function linksOfStep({ step, links }: CheckedStep): readonly CheckedLink[] {
  const count = step.chains.reduce((sum, chain) => sum + chain.value.links.length, 0);
  return links.slice(0, count);
}

/**
 * The links that are named and may be drawn, in order, each once. A link that does not hold is drawn as written only in
 * a stamped step; a false step has no stamp.
 */
export function drawableLinks(step: CheckedStep, named: 'all' | readonly LinkRange[]): CheckedLink[] {
  const numbers = new Map<number, number>();
  const numbered = linksOfStep(step).map((link) => {
    const number = (numbers.get(link.chain) ?? 0) + 1;
    numbers.set(link.chain, number);
    return { link, number };
  });
  const isStamped = !step.sound;
  return numbered
    .filter(({ link, number }) => named === 'all' || named.some((range) => isWithin(range, link.chain, number)))
    .map(({ link }) => link)
    .filter((link) => link.holds || (isStamped && !step.step.fails));
}

function isWithin(range: LinkRange, chain: number, number: number): boolean {
  return range.chain === chain && range.first <= number && number <= range.last;
}
