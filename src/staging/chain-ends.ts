/**
 * The ends of a step's chains, as candidates on the board.
 */
import type { CheckedLink, CheckedStep } from '../check/verdict.ts';
import type { Candidate } from '../grid/candidates.ts';
import { linksOfStep } from './links.ts';

export interface ChainEnds {
  readonly first: readonly Candidate[];
  readonly last: readonly Candidate[];
  /** It ends where it began. */
  readonly isLoop: boolean;
  /** It begins and ends with a strong link and every link holds: one of its ends, or both, is true. */
  readonly saysEither: boolean;
  /** The ends of its weak links. */
  readonly weak: readonly (readonly [readonly Candidate[], readonly Candidate[]])[];
}

/** For every chain of the step that has links, in order. */
export function chainsOf(checked: CheckedStep): ChainEnds[] {
  const byChain = new Map<number, CheckedLink[]>();
  for (const link of linksOfStep(checked)) byChain.set(link.chain, [...(byChain.get(link.chain) ?? []), link]);
  return [...byChain.values()].map((links): ChainEnds => {
    const [begin, end] = [links[0]!, links.at(-1)!];
    const [first, last] = [begin.fromCandidates, end.toCandidates];
    const isLoop = first.join(' ') === last.join(' ');
    return {
      first,
      last,
      isLoop,
      saysEither: !isLoop && begin.role === 'strong' && end.role === 'strong' && links.every((link) => link.holds),
      weak: links
        .filter((link) => link.role === 'weak')
        .map((link) => [link.fromCandidates, link.toCandidates] as const),
    };
  });
}
