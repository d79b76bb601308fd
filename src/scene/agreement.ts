/**
 * The part after the `=>` of a chain must agree with what the step concludes.
 */
import type { Grid } from '../grid/grid.ts';
import { printConclusion } from '../grid/notation/print.ts';
import type { Chain } from '../grid/terms.ts';
import type { Span } from './diagnostic.ts';
import type { Faults } from './faults.ts';
import type { Located, So } from './scene.ts';

export interface Agreement {
  readonly chains: readonly (Located<Chain> & { readonly arrow: Span })[];
  readonly conclusions: So | undefined;
  /** What contains the conclusions: `so`, or the item of a cascade. */
  readonly named: string;
  readonly conclusionsSpan: Span | undefined;
  readonly grid: Grid;
  readonly faults: Faults;
}

/** Reports every `=>` that disagrees. A single chain states all conclusions, each of several states a part of them. */
export function checkAgreement({ chains, conclusions, named, conclusionsSpan, grid, faults }: Agreement): void {
  const listed = conclusions?.kind === 'listed' ? conclusions.conclusions : [];
  const said = listed.map((each) => printConclusion(grid, each.value));
  for (const { value, arrow } of chains) {
    const concluded = value.concludes.map((each) => printConclusion(grid, each));
    if (concluded.length === 0) continue;
    const notes = conclusionsSpan === undefined ? [] : [{ span: conclusionsSpan, message: `what ${named} says` }];
    if (conclusions === undefined) {
      faults.error(
        'so-missing',
        arrow,
        `the chain concludes ${concluded.join(' ')}, and the step has no ${named}; add so: ${concluded.join(' ')}`,
      );
    } else if (conclusions.kind === 'all') {
      const placed = value.concludes
        .filter((each) => each.kind !== 'impossible')
        .map((each) => printConclusion(grid, each));
      if (placed.length === 0) continue;
      faults.error(
        'disagrees',
        arrow,
        `so: all stands for removals, and ${placed.join(' ')} is not one; write so: ${concluded.join(' ')}`,
        notes,
      );
    } else {
      const more = concluded.filter((each) => !said.includes(each));
      const less = chains.length > 1 ? [] : said.filter((each) => !concluded.includes(each));
      if (more.length === 0 && less.length === 0) continue;
      const parts = [
        ...(more.length > 0 ? [`${named} does not say ${more.join(' ')}`] : []),
        ...(less.length > 0 ? [`${less.join(' ')} is missing after =>`] : []),
      ];
      faults.error(
        'disagrees',
        arrow,
        `=> disagrees with ${named}: ${parts.join(', and ')}; make the two the same`,
        notes,
      );
    }
  }
}
