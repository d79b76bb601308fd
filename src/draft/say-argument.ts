/**
 * What is said of an argument: by the shape that its name stands for, else along its chain, else by supposing the opposite.
 */
import { type Candidate, membersOf } from '../grid/candidates.ts';
import { cellOf, digitOf } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import { chainInWords } from './say-chain.ts';
import { byShape } from './say-shape.ts';
import { supposition } from './say-supposition.ts';
import { aboutDigit, cellsAndDigits, placesOf, type SaidArgument, said, so, type Told } from './told-argument.ts';
import type { Slots } from './wording.ts';

/** An argument in words. */
export function argumentInWords(told: Told): SaidArgument {
  return byShape(told) ?? deadlyInWords(told) ?? byChain(told) ?? bySupposition(told) ?? byCases(told);
}

function deadlyInWords(told: Told): SaidArgument | undefined {
  const { wording, instance } = told;
  const { deadly } = instance;
  const guardians = instance.sets.find((set) => set.source.kind === 'guardians');
  if (deadly === undefined || guardians === undefined) return undefined;
  if (deadly.kind === 'grid') {
    const { cells } = cellsAndDigits(told, [guardians]);
    return said(told, 'grave', 'of-grave', { guardians: wording.cells(cells), so: so(told) });
  }
  const cells = deadly.parts.flatMap((part) => part.cells);
  const digits = deadly.parts.flatMap((part) => part.digits);
  const slots = {
    cells: wording.cells([...new Set(cells)].sort((a, b) => a - b)),
    digits: wording.all([...new Set(digits)].sort((a, b) => a - b).map(wording.digit)),
    so: so(told),
  };
  const isOneCell = cellsAndDigits(told, [guardians]).cells.length === 1 && instance.sets.length === 1;
  const played = isOneCell ? undefined : playedOut(told);
  if (played !== undefined && played.steps !== '')
    return said(told, 'deadly-suppose', 'of-deadly', { ...played, ...slots });
  return said(told, isOneCell ? 'rectangle' : 'deadly', 'of-deadly', slots);
}

function byChain(told: Told): SaidArgument | undefined {
  const { wording, instance } = told;
  const links = instance.chain === undefined ? undefined : chainInWords(wording, instance.chain);
  if (links === undefined) return undefined;
  if (instance.chain?.loop === true) return said(told, 'loop', 'of-loop', { links, so: so(told) });
  const places = placesOf(instance.sets);
  const [first] = places;
  const isOneDigit = places.length === instance.sets.length && places.every(({ digit }) => digit === first?.digit);
  if (first === undefined || !isOneDigit) return said(told, 'chain', 'of-chain', { links, so: so(told) });
  return said(told, 'chain', 'of-digit-chain', { ...aboutDigit(told, first.digit), links, so: so(told) });
}

/** The first conclusion denied and played out; the others fall in the same way. */
function bySupposition(told: Told): SaidArgument | undefined {
  const played = playedOut(told);
  if (played === undefined) return undefined;
  const [first, ...others] = told.instance.conclusions;
  const isAtOnce = played.steps === '';
  if (first?.kind === 'one-of') return said(told, isAtOnce ? 'suppose-not-at-once' : 'suppose-not', 'of-cases', played);
  const key = isAtOnce ? 'suppose-at-once' : others.length === 0 ? 'suppose' : 'suppose-others';
  return said(told, key, 'of-supposition', played);
}

function playedOut(told: Told): Slots | undefined {
  const { wording, position, instance } = told;
  const [first] = instance.conclusions;
  const candidate = first === undefined ? undefined : theOne(first);
  const played = first === undefined ? undefined : supposition(wording, position, instance.sets, first);
  if (candidate === undefined || played === undefined) return undefined;
  return {
    cell: wording.cell(cellOf(wording.grid, candidate)),
    'a-digit': wording.aDigit(digitOf(wording.grid, candidate)),
    steps: wording.inTurn(played.steps),
    clash: played.clash,
    so: so(told),
  };
}

function theOne(conclusion: Conclusion): Candidate | undefined {
  if (conclusion.kind === 'impossible') return conclusion.candidate;
  const [only, ...others] = membersOf(conclusion.candidates);
  return others.length === 0 ? only : undefined;
}

function byCases(told: Told): SaidArgument {
  const { wording, name } = told;
  return said(told, 'cases', 'of-cases', { name: wording.nameOf(name), so: so(told) });
}
