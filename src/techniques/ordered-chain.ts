/** Links that were ordered or found, as a chain that can be written and drawn. */
import { type Candidates, union } from '../grid/candidates.ts';
import type { Grid } from '../grid/grid.ts';
import type { Chain, ChainNode, Conclusion } from '../grid/terms.ts';
import type { OneOf } from '../proof/kernel.ts';
import { cellsOf, digitsOf } from './seen-by-all.ts';
import { type StrungLink, severalSets, strungChains } from './strung-chains.ts';
import type { Instance } from './technique.ts';

/**
 * The chain from end to end: strong, weak, strong; a ring with the weak link that closes it. An almost locked set is
 * written in its short form.
 */
export function orderedChain(
  grid: Grid,
  links: readonly StrungLink[],
  { loop }: { readonly loop: boolean } = { loop: false },
): Chain {
  const nodes = links.flatMap((link) => [nodeOf(grid, link, link.near), nodeOf(grid, link, link.far)]);
  const count = loop ? nodes.length : nodes.length - 1;
  return {
    nodes,
    links: Array.from({ length: count }, (_, index) => ({
      kind: index % 2 === 0 ? 'strong' : 'weak',
      from: index,
      to: (index + 1) % nodes.length,
    })),
    loop,
    concludes: [],
  };
}

/** The sets in the order of a chain to one of the conclusions, if they form one; otherwise as given. */
export function orderedInstance(grid: Grid, sets: readonly OneOf[], conclusions: readonly Conclusion[]): Instance {
  for (const conclusion of conclusions) {
    for (const links of strungChains({ grid, sets, shapes: severalSets }, conclusion)) {
      return {
        sets: links.flatMap((link) => link.sets),
        chain: orderedChain(grid, links),
        deadly: undefined,
        conclusions,
      };
    }
  }
  return { sets, chain: undefined, deadly: undefined, conclusions };
}

function nodeOf(grid: Grid, { shape, sets }: StrungLink, part: Candidates): ChainNode {
  const cells =
    shape === 'almost locked' ? cellsOf(grid, sets.map((set) => set.members).reduce(union)) : cellsOf(grid, part);
  return { digits: digitsOf(grid, part), cells };
}
