/** Forgeries by things that look like the kernel's: literals, copies, proxies, and what is the kernel's but of another puzzle. */
import { membersOf, setOf } from '../../../src/grid/candidates.ts';
import {
  after,
  begin,
  digitsIn,
  eitherOf,
  type OneOf,
  type Proof,
  placesIn,
  prove,
} from '../../../src/proof/kernel.ts';
import {
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
  refusesAll,
  start,
  succeeds,
  without,
} from './forging.ts';

const justOne = setOf(grid, [one]);

/** A position like the other's in which the first row has 1 in the first cell alone. */
const otherPuzzle = without(begin(grid, [], { oneSolution: true }), at(1, 1), at(2, 1), at(3, 1));
const lastPlace = placesIn(otherPuzzle, grid.digits[0]!, grid.houses[0]!);

/** Of each thing that the kernel makes, a copy made by `copy`. */
function copies(by: string, copy: <T extends object>(value: T) => T): Forgery[] {
  return [
    [
      `a proof copied by ${by}`,
      () => {
        const { position, proof } = pair();
        return succeeds(() => after(position, [copy(proof)]));
      },
    ],
    [`a position copied by ${by}`, () => succeeds(() => digitsIn(copy(start), firstCell))],
    [
      `a set copied by ${by}`,
      () => {
        const { position, cell } = pair();
        return isProved(() => prove(position, [copy(cell)], oneOrTwo));
      },
    ],
    [`a grid copied by ${by}`, () => succeeds(() => begin(copy(grid), [], { oneSolution: true }))],
  ];
}

refusesAll([
  ...copies('spreading', (value) => ({ ...value })),
  ...copies('structuredClone', (value) => structuredClone(value)),
  ...copies('JSON', (value) => passed(JSON.parse(JSON.stringify(value)))),
  ...copies('a proxy', (value) => new Proxy(value, {})),
  ...copies('a prototype', (value) => passed(Object.create(value))),
  [
    'a literal that looks like a proof',
    () => isFooled(() => after(pair().position, [passed({ conclusion: onlyOne, assumesOneSolution: false })])),
  ],
  [
    'a copy of a proof with another conclusion',
    () => {
      const { position, proof } = pair();
      return isFooled(() => after(position, [{ ...proof, conclusion: onlyOne }]));
    },
  ],
  [
    'a copy of a set with other members',
    () => {
      const { position, cell } = pair();
      return isProved(() => prove(position, [{ ...cell, members: justOne }], onlyOne));
    },
  ],
  [
    'a copy of a position with other candidates',
    () => {
      const { position } = pair();
      const forged = {
        ...position,
        possible: setOf(
          grid,
          membersOf(position.possible).filter((each) => each !== at(0, 2)),
        ),
      };
      return isProved(() => prove(forged, [digitsIn(forged, firstCell)], onlyOne));
    },
  ],
  [
    'a proxy of a proof that tells of another conclusion',
    () => {
      const { position, proof } = pair();
      const get = (_: object, key: PropertyKey) => (key === 'conclusion' ? onlyOne : Reflect.get(proof, key));
      return isFooled(() => after(position, [passed<Proof>(new Proxy({ ...proof }, { get }))]));
    },
  ],
  [
    'a proxy of a set that tells of other members',
    () => {
      const { position, cell } = pair();
      const get = (_: object, key: PropertyKey) => (key === 'members' ? justOne : Reflect.get(cell, key));
      return isProved(() => prove(position, [passed<OneOf>(new Proxy({ ...cell }, { get }))], onlyOne));
    },
  ],
  [
    'a proof, a set and a position put upon another prototype',
    () => {
      const { position, proof, cell } = pair();
      for (const thing of [proof, cell, position, proof.conclusion, cell.members])
        Reflect.setPrototypeOf(thing, { conclusion: onlyOne, members: justOne, possible: justOne });
      return isFooled(() => after(position, [proof])) || isProved(() => prove(position, [cell], onlyOne));
    },
  ],
  [
    'a proof from another puzzle',
    () => {
      const proof = proofOf(otherPuzzle, [lastPlace], onlyOne);
      return isFooled(() => after(pair().position, [proof]));
    },
  ],
  ['a set from another puzzle', () => isProved(() => prove(pair().position, [lastPlace], onlyOne))],
  [
    'an either/or that was proved in another puzzle',
    () => {
      const proof = proofOf(otherPuzzle, [lastPlace], onlyOne);
      return succeeds(() => eitherOf(pair().position, proof));
    },
  ],
  [
    'an either/or that was proved later',
    () => {
      const { position, proof } = pair();
      return (
        succeeds(() => eitherOf(start, proof)) ||
        succeeds(() => eitherOf(begin(grid, [], { oneSolution: true }), proof)) ||
        position === start
      );
    },
  ],
]);
