/** Forgeries by things that answer otherwise when they are asked again, or that act while `prove` goes through them. */
import { membersOf, setOf } from '../../../src/grid/candidates.ts';
import { gridWith } from '../../../src/grid/grid.ts';
import type { Conclusion } from '../../../src/grid/terms.ts';
import { guardiansOf } from '../../../src/proof/guardians.ts';
import { after, type OneOf, type Proof, placesIn, prove } from '../../../src/proof/kernel.ts';
import {
  assign,
  at,
  deadly,
  type Forgery,
  grid,
  isFooled,
  isProved,
  one,
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
  without,
} from './forging.ts';

const justOne = setOf(grid, [one]);
const oneAndTwo = setOf(grid, [at(0, 1), at(0, 2)]);

/** The same trick, played at the second reading, the third, and so on: whichever falls between the look and the deed. */
function afterReadings(most: number, forgery: (times: number) => Forgery): Forgery[] {
  return Array.from({ length: most }, (_, index) => {
    const [attack, isBelieved] = forgery(index + 1);
    return [`${attack}, after ${index + 1} readings`, isBelieved];
  });
}

refusesAll([
  ...afterReadings(6, (times) => [
    'a conclusion with other candidates',
    () => {
      const { position, cell } = pair();
      const conclusion = turningProperty<Conclusion>({ kind: 'one-of' }, 'candidates', oneAndTwo, justOne, times);
      return isFooled(() => after(position, [proofOf(position, [cell], conclusion)]));
    },
  ]),
  ...afterReadings(4, (times) => [
    'an either/or that becomes a removal',
    () => {
      const { position, cell } = pair();
      const base = { candidates: oneAndTwo, candidate: at(0, 2) };
      const conclusion = turningProperty<Conclusion>(base, 'kind', 'one-of', 'impossible', times);
      return isFooled(() => after(position, [proofOf(position, [cell], conclusion)]));
    },
  ]),
  ...afterReadings(4, (times) => [
    'a removal of another candidate',
    () => {
      // The first row has 3 in the first cell or the second, so that it goes from the others of their box, as 2 does not.
      const position = without(start, at(2, 3), at(3, 3));
      const row = placesIn(position, grid.digits[2]!, grid.houses[0]!);
      const removal = turningProperty<Conclusion>({ kind: 'impossible' }, 'candidate', at(4, 3), at(0, 2), times);
      return isFooled(() => after(position, [proofOf(position, [row], removal)]));
    },
  ]),
  [
    'a conclusion whose bits are others each time',
    () => {
      const { position, cell } = pair();
      let asked = 0;
      const get = (target: object, key: PropertyKey) => (key === '0' && asked++ > 1 ? 1 : Reflect.get(target, key));
      const candidates = new Proxy([3, 0], { get });
      return isFooled(() => after(position, [proofOf(position, [cell], passed({ kind: 'one-of', candidates }))]));
    },
  ],
  ...afterReadings(3, (times) => [
    'a list with other sets',
    () => {
      const { position, cell } = pair();
      const forged = passed<OneOf>({ members: justOne, source: cell.source });
      return isProved(() => prove(position, turningList([cell], [forged], times), onlyOne));
    },
  ]),
  ...afterReadings(3, (times) => [
    'a list with other proofs',
    () => {
      const { position, proof } = pair();
      const forged = passed<Proof>({ conclusion: onlyOne, assumesOneSolution: false });
      return isFooled(() => after(position, turningList([proof], [forged], times)));
    },
  ]),
  [
    'a list that changes a set while prove goes through it',
    () => {
      const { position, cell } = pair();
      const sets = passed<OneOf[]>({
        length: 1,
        some: () => true,
        map: (use: (set: object) => unknown) => [use({ members: justOne, source: cell.source })],
        *[Symbol.iterator]() {
          yield cell;
          assign(cell.members, { 0: 1 });
          assign(cell, { members: justOne });
        },
      });
      return isProved(() => prove(position, sets, onlyOne));
    },
  ],
  [
    'a conclusion that changes the position while prove reads it',
    () => {
      const { position, cell } = pair();
      const conclusion = {
        kind: 'one-of',
        get candidates() {
          assign(position, { possible: justOne });
          assign(position.possible, { 0: 1 });
          assign(grid.conflicts, { [one]: setOf(grid, [at(0, 2)]) });
          return justOne;
        },
      };
      return isProved(() => prove(position, [cell], passed(conclusion)));
    },
  ],
  ...afterReadings(3, (times) => [
    'a deadly pattern of other cells',
    () => {
      const { position, set } = rectangle();
      const [{ digits, cells }] = deadly.parts;
      const turning = turningList(cells, [grid.cells[0]!, grid.cells[10]!], times);
      return succeeds(
        () => guardiansOf(position, { kind: 'pattern', parts: [{ digits, cells: turning }] }),
        (made) => 'members' in made && membersOf(made.members).join() !== membersOf(set.members).join(),
      );
    },
  ]),
  ...afterReadings(3, (times) => [
    'regions that share the cells out unevenly',
    () => {
      const even = [0, 0, 1, 1, 0, 0, 1, 1, 2, 2, 3, 3, 2, 2, 3, 3];
      const uneven = [0, 1, 1, 1, 0, 0, 1, 1, 2, 2, 3, 3, 2, 2, 3, 3];
      return succeeds(
        () => gridWith({ regions: turningList(even, uneven, times), rules: [] }),
        ({ houses }) => houses.some(({ cells }) => cells.length !== 4),
      );
    },
  ]),
]);
