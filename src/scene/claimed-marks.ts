/**
 * Marks that draw conclusions, `strike` and `place`: each may draw only what its step concludes.
 */
import type { Grid } from '../grid/grid.ts';
import { parseCandidates } from '../grid/notation/candidates.ts';
import { parseCells } from '../grid/notation/cells.ts';
import { printCandidate, printCell } from '../grid/notation/print.ts';
import type { Reading } from '../grid/terms.ts';
import type { Time } from './anchors/anchors.ts';
import type { Claims } from './claims.ts';
import type { ReadText } from './definition.ts';
import { type Context, readNotation, saysAll } from './reading.ts';
import type { BeatMark, Located } from './scene.ts';
import { spanIn, type TextNode } from './yaml-tree.ts';

/** The removals that are crossed out; undefined after a report. */
export function readStrike(
  node: TextNode,
  written: ReadText<Located<Time>, Context> | undefined,
  claims: Claims,
  context: Context,
): BeatMark | undefined {
  const { faults, grid } = context;
  const gone = written?.read(context);
  if (saysAll(node)) {
    if (claims.removesAny) return { kind: 'strike', candidates: 'all', gone };
    faults.error(
      'not-concluded',
      node.span,
      'this step removes nothing that could be struck; add the removal to so, or leave the beat out',
    );
    return undefined;
  }
  const candidates = readNotation(node, parseCandidates, context);
  for (const { span, value } of candidates === undefined ? [] : itemsIn(node, parseCandidates, grid)) {
    const strange = value.filter((candidate) => !claims.removes(candidate)).map((each) => printCandidate(grid, each));
    if (strange.length === 0) continue;
    const verb = strange.length === 1 ? 'is' : 'are';
    const message = `${strange.join(' ')} ${verb} not among the step's removals; a cross is a claim, so add it to so or leave it out`;
    faults.error('not-concluded', span, message);
  }
  return candidates === undefined ? undefined : { kind: 'strike', candidates, gone };
}

/** The placements that are written; undefined after a report. */
export function readPlace(node: TextNode, claims: Claims, context: Context): BeatMark | undefined {
  const { faults, grid } = context;
  if (saysAll(node)) {
    if (claims.placesAny) return { kind: 'place', cells: 'all' };
    faults.error(
      'not-concluded',
      node.span,
      'this step places nothing; add the placement to so, or leave the beat out',
    );
    return undefined;
  }
  const cells = readNotation(node, parseCells, context);
  for (const { span, value } of cells === undefined ? [] : itemsIn(node, parseCells, grid)) {
    const strange = value.filter((cell) => !claims.places(cell)).map((each) => printCell(grid, each));
    if (strange.length === 0) continue;
    const message = `the step places nothing in ${strange.join(' ')}; a written digit is a claim, so add it to so or leave it out`;
    faults.error('not-concluded', span, message);
  }
  return cells === undefined ? undefined : { kind: 'place', cells };
}

/** The items of a list that is known to be readable, each with its place. */
function itemsIn<T>(
  node: TextNode,
  parse: (grid: Grid, text: string) => Reading<T>,
  grid: Grid,
): readonly Located<T>[] {
  return [...node.text.matchAll(/[^\s,]+/g)].flatMap((match) => {
    const reading = parse(grid, match[0]);
    return reading.ok ? [{ value: reading.value, span: spanIn(node, match.index, match.index + match[0].length) }] : [];
  });
}
