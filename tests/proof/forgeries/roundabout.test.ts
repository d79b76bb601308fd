/** Forgeries by a roundabout way: prototypes, classes of lists, revived copies, hints that lie, bounds that are not numbers. */
import { membersOf, setOf } from '../../../src/grid/candidates.ts';
import type { Deadly } from '../../../src/grid/terms.ts';
import { after, begin, digitsIn, guardiansBy, type OneOf, prove } from '../../../src/proof/kernel.ts';
import {
  assign,
  at,
  type Forgery,
  firstCell,
  grid,
  isFooled,
  isProved,
  one,
  oneOrTwo,
  onlyOne,
  pair,
  passed,
  proofOf,
  rectangle,
  refusesAll,
  start,
  succeeds,
  turningList,
  turningProperty,
} from './forging.ts';

const justOne = setOf(grid, [one]);
const wholeGrid: Deadly = { kind: 'grid', without: undefined };

/** Without these every cell has two digits, and each digit is twice in every house. */
const extras = setOf(
  grid,
  grid.cells.flatMap((cell) => {
    const kept = [
      [0, 1],
      [2, 3],
      [2, 3],
      [0, 1],
    ][Math.floor(cell / 4)]!;
    const isKept = (digit: number) => kept.includes(digit - 1) === cell % 4 < 2;
    return grid.digits.filter((digit) => !isKept(digit)).map((digit) => at(cell, digit));
  }),
);

/** What `act` says while every object inherits these values. */
function inherited(values: Readonly<Record<string, unknown>>, act: () => boolean): boolean {
  for (const [key, value] of Object.entries(values))
    Object.defineProperty(Object.prototype, key, { value, configurable: true, writable: true });
  try {
    return act();
  } finally {
    for (const key of Object.keys(values)) Reflect.deleteProperty(Object.prototype, key);
  }
}

/** A list whose class answers for the lists made from it. */
class OtherList<T> extends Array<T> {
  static override get [Symbol.species]() {
    return passed<ArrayConstructor>(
      class extends Array {
        override some = () => true;
        override [Symbol.iterator] = () => [{ members: justOne, lost: [], assumes: false }][Symbol.iterator]();
      },
    );
  }
}

function withBound(what: string, bound: unknown): Forgery {
  return [
    `a bound that is ${what}`,
    () => {
      const { position, cell } = pair();
      return isProved(() => prove(position, [cell], onlyOne, passed<number>(bound)));
    },
  ];
}

refusesAll([
  [
    'properties that every object inherits',
    () =>
      inherited({ members: [one], conclusion: onlyOne, candidates: justOne, candidate: at(0, 2), lost: [] }, () => {
        const { position, proof, cell } = pair();
        return isFooled(() => after(position, [proof])) || isProved(() => prove(position, [cell], onlyOne));
      }),
  ],
  [
    'objects that inherit the key of a set kept to be asked for again, and guardians made meanwhile',
    () =>
      inherited({ key: 0 }, () => {
        const { position, set } = rectangle();
        const cell = digitsIn(position, firstCell);
        return cell === set || cell.source.kind !== 'cell';
      }),
  ],
  [
    'objects that inherit that they assume nothing',
    () => inherited({ assumes: false, assumesOneSolution: false }, () => !rectangle().proof.assumesOneSolution),
  ],
  [
    'a proof revived from JSON with the parts of the first',
    () => {
      const { position, proof } = pair();
      const revive = (key: string, value: unknown) => (key === 'conclusion' ? proof.conclusion : value);
      const revived: object = JSON.parse(JSON.stringify(proof), revive);
      return succeeds(() => after(position, [passed(Object.setPrototypeOf(revived, Reflect.getPrototypeOf(proof)))]));
    },
  ],
  [
    'what a position, a set or a proof keeps under symbols',
    () => {
      const { position, proof, cell } = pair();
      for (const thing of [position, proof, cell, cell.members]) {
        for (const key of [Symbol('made'), Symbol.for('made'), ...Object.getOwnPropertySymbols(thing)])
          if (Reflect.set(thing, key, justOne)) return true;
      }
      return false;
    },
  ],
  [
    'candidates that are an heir of a set of candidates',
    () => {
      const { position, cell } = pair();
      const candidates = passed<typeof justOne>(Object.create(justOne));
      return succeeds(() => proofOf(position, [cell], { kind: 'one-of', candidates }));
    },
  ],
  [
    'a list of sets of a class that makes other lists',
    () => {
      const { position, cell } = pair();
      return isProved(() => prove(position, OtherList.from<OneOf>([cell]), onlyOne));
    },
  ],
  [
    'a proof from an equal position of the same puzzle',
    () => {
      const { proof } = pair();
      return succeeds(() => after(pair().position, [proof]));
    },
  ],
  [
    'givens that are others when they are read again',
    () => {
      const givens = turningList([at(5, 3)], [one], 1);
      const { placed } = begin(grid, givens, { oneSolution: true });
      return membersOf(placed).join() !== `${at(5, 3)}`;
    },
  ],
  [
    'a hint of extra candidates that are not enough',
    () =>
      succeeds(
        () => guardiansBy(start, wholeGrid, () => ({ extras: justOne })),
        (made) => 'members' in made,
      ),
  ],
  [
    'a hint that is another when it is read again',
    () =>
      succeeds(
        () => guardiansBy(start, wholeGrid, () => turningProperty({}, 'extras', extras, justOne, 1)),
        (made) => !('members' in made) || membersOf(made.members).join() !== membersOf(extras).join(),
      ),
  ],
  [
    'a hint that changes the position while it is searched for',
    () => {
      const find = (board: object) => {
        assign(board, { possible: justOne, placed: justOne });
        return { extras: justOne };
      };
      return succeeds(
        () => guardiansBy(start, wholeGrid, find),
        (made) => 'members' in made,
      );
    },
  ],
  [
    'a hint of things that only look like candidates',
    () =>
      succeeds(
        () => guardiansBy(start, wholeGrid, () => ({ extras: passed([...membersOf(extras)]) })),
        (made) => 'members' in made,
      ),
  ],
  withBound('NaN', Number.NaN),
  withBound('0', 0),
  withBound('negative', -1),
  withBound('a big integer', 5n),
  withBound('a thing that turns into a number', { valueOf: () => -1 }),
  [
    'a proof of a conclusion that inherits its kind and candidates',
    () => {
      const { position, cell } = pair();
      const conclusion = Object.create({ ...oneOrTwo });
      const proof = proofOf(position, [cell], conclusion);
      assign(Object(Reflect.getPrototypeOf(conclusion)), onlyOne);
      return isFooled(() => after(position, [proof]));
    },
  ],
]);
