/**
 * Names of the trade that are not judged: what each means (common practice, from memory), and why or under which name its
 * argument is written. `because` refuses them with these words; `called` shows them.
 */
import { spelling } from './argument-names.ts';

interface UnjudgedName {
  readonly names: readonly string[];
  /** Follows the name: a clause, then what to write instead. */
  readonly means: string;
}

const bySets = 'no definition of it is judged here; name its sets after "from", with "because: forcing net"';

const unjudged: readonly UnjudgedName[] = [
  {
    names: ['X-cycle', 'fishy cycle'],
    means:
      'is a loop of one digit; write "X-chain", or "continuous loop" where strong and weak links alternate all round',
  },
  {
    names: ['bent triple', 'bent naked triple'],
    means:
      'is three cells with three digits in a line and a box that cross: an XY-wing, or an XYZ-wing if one cell has all three',
  },
  { names: ['cell forcing chain'], means: 'is a forcing chain from each digit of a cell; write "forcing chain"' },
  {
    names: ['region forcing chain', 'unit forcing chain', 'house forcing chain'],
    means: 'is a forcing chain from each place of a digit in a house; write "forcing chain"',
  },
  {
    names: ['broken wing', 'guardians'],
    means: `is an odd loop of one digit, whose further places (guardians) are not all false; ${bySets}`,
  },
  {
    names: ['fireworks', 'triple fireworks', 'quadruple fireworks'],
    means: `is digits that a row and a column, but for a cell each, confine to the box in which the two cross; ${bySets}`,
  },
  {
    names: ['tridagon', "Thor's hammer", 'trivalue oddagon'],
    means: `is twelve cells of four boxes that three digits alone cannot fill, so that a further candidate is true; ${bySets}`,
  },
  {
    names: ['exocet', 'junior exocet', 'senior exocet'],
    means: `is two base cells whose digits must also stand in two target cells, by how they are placed in three lines; ${bySets}`,
  },
  {
    names: ['SK-loop', 'domino loop'],
    means: `is a ring of eight pairs of cells around four boxes, in which each pair locks the digits of the next; ${bySets}`,
  },
];

const meanings: ReadonlyMap<string, string> = new Map(
  unjudged.flatMap(({ names, means }) => names.map((name) => [spelling(name), means] as const)),
);

/** What the name means and what to write instead, as a clause that follows the name; undefined if it is not one of these. */
export function meaningOfUnjudged(text: string): string | undefined {
  return meanings.get(spelling(text));
}
