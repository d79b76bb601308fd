/** An argument that was found, written in scene notation. */
import { Bug } from '../grid/bug.ts';
import type { Grid } from '../grid/grid.ts';
import { printChain, printDeadly, printSet } from '../grid/notation/print.ts';
import type { Chain, Deadly } from '../grid/terms.ts';
import type { OneOf } from '../proof/kernel.ts';

export interface WrittenArgument {
  readonly sets: string[];
  readonly chain?: string;
  readonly deadly?: string;
}

export function writtenArgument(
  grid: Grid,
  argument: { readonly sets: readonly OneOf[]; readonly chain: Chain | undefined; readonly deadly: Deadly | undefined },
): WrittenArgument {
  const { chain, deadly } = argument;
  const sets = argument.sets.map(({ source }) => {
    if (source.kind === 'cell' || source.kind === 'places') return printSet(grid, source);
    if (source.kind === 'guardians') return `deadly ${printDeadly(grid, source.deadly)}`;
    throw new Bug('an argument that was found rests only on cells, houses and patterns');
  });
  return {
    sets,
    ...(chain === undefined ? {} : { chain: printChain(grid, { ...chain, concludes: [] }) }),
    ...(deadly === undefined ? {} : { deadly: printDeadly(grid, deadly) }),
  };
}
