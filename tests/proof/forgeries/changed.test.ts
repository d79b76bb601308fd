/** Forgeries by changing what was handed in, or what was given out. */
import { membersOf, setOf } from '../../../src/grid/candidates.ts';
import type { Cell } from '../../../src/grid/grid.ts';
import type { Conclusion } from '../../../src/grid/terms.ts';
import { guardiansOf } from '../../../src/proof/guardians.ts';
import { after, begin, digitsIn, eitherOf, prove, takeAsRead } from '../../../src/proof/kernel.ts';
import {
  assign,
  at,
  deadly,
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
} from './forging.ts';

const justOne = setOf(grid, [one]);

refusesAll([
  [
    'another set of candidates in the conclusion that was handed to prove',
    () => {
      const { position, cell } = pair();
      const conclusion = { kind: 'one-of', candidates: setOf(grid, [at(0, 1), at(0, 2)]) };
      const proof = proofOf(position, [cell], passed(conclusion));
      conclusion.candidates = justOne;
      return isFooled(() => after(position, [proof]));
    },
  ],
  [
    'other bits in the conclusion that was handed to prove',
    () => {
      const { position, cell } = pair();
      const candidates = setOf(grid, [at(0, 1), at(0, 2)]);
      const proof = proofOf(position, [cell], { kind: 'one-of', candidates });
      assign(candidates, { 0: 1 });
      return isFooled(() => after(position, [proof]));
    },
  ],
  [
    'another conclusion assigned onto a proof',
    () => {
      const { position, proof } = pair();
      assign(proof, { conclusion: onlyOne });
      return isFooled(() => after(position, [proof]));
    },
  ],
  [
    'other candidates assigned onto the conclusion of a proof',
    () => {
      const { position, proof } = pair();
      assign(proof.conclusion, onlyOne);
      return isFooled(() => after(position, [proof]));
    },
  ],
  [
    'other bits in the conclusion of a proof',
    () => {
      const { position, proof } = pair();
      if (proof.conclusion.kind === 'one-of') assign(proof.conclusion.candidates, { 0: 1 });
      return isFooled(() => after(position, [proof]));
    },
  ],
  [
    'a proof told to assume nothing',
    () => {
      const { position, proof } = rectangle();
      assign(proof, { assumesOneSolution: false });
      return !proof.assumesOneSolution || after(position, [proof]).assumesOneSolution === false;
    },
  ],
  [
    'other members assigned onto a set',
    () => {
      const { position, cell } = pair();
      assign(cell, { members: justOne });
      return isProved(() => prove(position, [cell], onlyOne));
    },
  ],
  [
    'other bits in a set, which is then asked for again',
    () => {
      const { position, cell } = pair();
      assign(cell.members, { 0: 1 });
      return isProved(() => prove(position, [digitsIn(position, firstCell)], onlyOne));
    },
  ],
  [
    'another set laid in wherever sets are kept to be asked for again',
    () => {
      const { position } = pair();
      const forged = { members: justOne, source: { kind: 'cell', cell: firstCell } };
      for (const key of ['cells', 'made', 'sets', 'memo', 0, '0']) {
        assign(position, { [key]: [forged] });
        assign(position.possible, { [key]: forged });
      }
      return isProved(() => prove(position, [digitsIn(position, firstCell)], onlyOne));
    },
  ],
  [
    'guardians called a cell, so that they assume nothing',
    () => {
      const { position, set } = rectangle();
      assign(set.source, { kind: 'cell', cell: firstCell });
      assign(set, { assumesOneSolution: false, source: { kind: 'cell', cell: firstCell } });
      return !proofOf(position, [set], { kind: 'impossible', candidate: at(6, 2) }).assumesOneSolution;
    },
  ],
  [
    'other bits in what is possible',
    () => {
      const { position } = pair();
      assign(position.possible, { 0: 1 });
      return isProved(() => prove(position, [digitsIn(position, firstCell)], onlyOne));
    },
  ],
  [
    'other candidates assigned onto a position',
    () => {
      const { position } = pair();
      assign(position, { possible: justOne });
      return isProved(() => prove(position, [digitsIn(position, firstCell)], onlyOne));
    },
  ],
  [
    'a position told that one solution may be assumed',
    () => {
      const position = begin(grid, [], { oneSolution: false });
      assign(position, { mayAssumeOneSolution: true });
      return succeeds(
        () => guardiansOf(position, deadly),
        (set) => 'members' in set,
      );
    },
  ],
  [
    'a position told that it assumes nothing',
    () => {
      const { position, proof } = rectangle();
      const reached = after(position, [proof]);
      assign(reached, { assumesOneSolution: false, goneByOneSolution: setOf(grid, []) });
      return reached.assumesOneSolution !== true;
    },
  ],
  [
    'the list of what was taken as read cut short',
    () => {
      const position = takeAsRead(start, { kind: 'impossible', candidate: at(0, 2) });
      assign(position.takenAsRead, { length: 0 });
      return position.takenAsRead.length === 0;
    },
  ],
  [
    'what was taken as read made to say something else',
    () => {
      const said = { kind: 'impossible', candidate: at(5, 1) };
      const [taken] = takeAsRead(start, passed(said)).takenAsRead;
      said.candidate = at(0, 2);
      return taken?.kind !== 'impossible' || taken.candidate !== at(5, 1);
    },
  ],
  [
    'an either/or put on the list of what was taken as read',
    () => {
      const { position } = pair();
      succeeds(() => passed<Conclusion[]>(position.takenAsRead).push(onlyOne));
      return isProved(() => prove(position, [eitherOf(position, onlyOne)], onlyOne));
    },
  ],
  [
    'a deadly pattern made smaller after its guardians were found',
    () => {
      const own = passed<{ parts: { cells: Cell[] }[] }>(structuredClone(deadly));
      const set = guardiansOf(rectangle().position, passed(own));
      own.parts[0]!.cells.length = 0;
      return !('source' in set) || JSON.stringify(set.source) !== JSON.stringify({ kind: 'guardians', deadly });
    },
  ],
  [
    'the pattern made smaller in the source of its guardians',
    () => {
      const { set } = rectangle();
      if (set.source.kind !== 'guardians' || set.source.deadly.kind !== 'pattern') return true;
      assign(set.source.deadly.parts[0]!.cells, { length: 0 });
      return set.source.deadly.parts[0]!.cells.length !== 4;
    },
  ],
  [
    'an outcome called proved',
    () => {
      const { position, cell } = pair();
      const outcome = prove(position, [cell], onlyOne);
      assign(outcome, { kind: 'proved', proof: { conclusion: onlyOne } });
      return outcome.kind === 'proved';
    },
  ],
  [
    'a set of candidates made from words of our own by the class of another, and the words changed',
    () => {
      const { position, cell } = pair();
      const words = [3, 0];
      const { constructor } = passed<{ constructor: new (words: readonly number[]) => typeof justOne }>(cell.members);
      return isFooled(() => {
        const proof = proofOf(position, [cell], { kind: 'one-of', candidates: new constructor(words) });
        words[0] = 1;
        return after(position, [proof]);
      });
    },
  ],
  [
    'the members of a set read out otherwise',
    () => {
      const { position, cell } = pair();
      Reflect.set(cell.members, Symbol.iterator, () => [one][Symbol.iterator]());
      return isProved(() => prove(position, [cell], onlyOne));
    },
  ],
  [
    'the prototype of sets of candidates changed',
    () => {
      const prototype: unknown = Reflect.getPrototypeOf(oneOrTwo.kind === 'one-of' ? oneOrTwo.candidates : {});
      const before = membersOf(pair().position.possible).join();
      assign(Object(prototype), { toJSON: () => [one] });
      return before !== membersOf(pair().position.possible).join() || JSON.stringify(start.possible) === `[${one}]`;
    },
  ],
]);
