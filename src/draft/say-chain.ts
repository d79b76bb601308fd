/**
 * A chain in words, link by link: if the first end is not true, the next thing is, then the one after is not, ...
 */
import type { Digit } from '../grid/grid.ts';
import type { Chain, ChainNode } from '../grid/terms.ts';
import type { PartKey } from './sayings.ts';
import type { Wording } from './wording.ts';

/** The links of the chain read from its first node; undefined for a chain that begins with a weak link. */
export function chainInWords(wording: Wording, { nodes, links }: Chain): string | undefined {
  const strong = links.filter((link) => link.kind === 'strong');
  const alternates = links.every((link, index) => (link.kind === 'strong') === (index % 2 === 0));
  if (!alternates || strong.length === 0) return undefined;
  let last: Digit | undefined;
  const said = strong.map(({ from, to }, index) => {
    const [near, far] = [nodes[from]!, nodes[to]!];
    const isWithinCell = near.cells.join() === far.cells.join();
    if (index === 0) {
      const first = stated(wording, near, 'if-not', undefined);
      const what = isWithinCell ? withinCell(wording, far) : stated(wording, far, 'so', onlyDigit(near));
      last = onlyDigit(far);
      return wording.part('chain-first', { if: first, what });
    }
    const not = stated(wording, near, 'then-not', last);
    const what = stated(wording, far, 'so', isWithinCell ? undefined : onlyDigit(near));
    last = onlyDigit(far);
    return isWithinCell ? wording.part('chain-on', { what }) : wording.part('chain-next', { not, what });
  });
  return wording.inTurn(said);
}

type Form = 'if-not' | 'so' | 'then-not';

/** What a node says. `spokenOf`: the digit mentioned last, which need not be named again. */
function stated(wording: Wording, node: ChainNode, form: Form, spokenOf: Digit | undefined): string {
  const [digit] = node.digits;
  const [cell, ...others] = node.cells;
  if (digit === undefined || cell === undefined) return '';
  if (node.digits.length > 1) {
    const digits = wording.all(node.digits.map(wording.digit));
    const keys = { 'if-not': 'if-not-hold', so: 'then-hold', 'then-not': 'then-not-hold' } as const;
    return wording.part(keys[form], { cells: wording.cells(node.cells), digits });
  }
  const slots = { digit: wording.digit(digit), 'a-digit': wording.aDigit(digit) };
  if (others.length > 0) {
    const keys = { 'if-not': 'if-not-in', so: 'then-in', 'then-not': 'then-not-in' } as const;
    return wording.part(keys[form], { ...slots, cells: wording.cells(node.cells) });
  }
  return wording.part(keyOf(form, spokenOf === digit), { ...slots, cell: wording.cell(cell) });
}

function keyOf(form: Form, isSame: boolean): PartKey {
  switch (form) {
    case 'if-not':
      return 'if-not';
    case 'so':
      return isSame ? 'then-is-too' : 'then-is';
    case 'then-not':
      return isSame ? 'then-not-too' : 'then-not';
  }
}

function withinCell(wording: Wording, node: ChainNode): string {
  const digit = onlyDigit(node);
  if (digit === undefined || node.cells.length > 1) return stated(wording, node, 'so', undefined);
  return wording.part('then-it-is', { 'a-digit': wording.aDigit(digit) });
}

function onlyDigit({ digits }: ChainNode): Digit | undefined {
  return digits.length === 1 ? digits[0] : undefined;
}
