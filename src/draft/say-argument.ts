/**
 * What is said of an argument: by the shape that its name denotes, else along its chain, else by supposing the
 * opposite.
 */
import { type Candidate, membersOf } from '../grid/candidates.ts';
import { cellOf, digitOf } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import { aboutDigit, cellsAndDigits, placesOf, type SaidArgument, said, so, type ToSay } from './said-argument.ts';
import { chainInWords } from './say-chain.ts';
import { byShape } from './say-shape.ts';
import { supposition } from './say-supposition.ts';
import type { Slots } from './wording.ts';

/** An argument in words. */
export function argumentInWords(argument: ToSay): SaidArgument {
  return (
    byShape(argument) ?? deadlyInWords(argument) ?? byChain(argument) ?? bySupposition(argument) ?? byCases(argument)
  );
}

function deadlyInWords(argument: ToSay): SaidArgument | undefined {
  const { wording, instance } = argument;
  const { deadly } = instance;
  const guardians = instance.sets.find((set) => set.source.kind === 'guardians');
  if (deadly === undefined || guardians === undefined) return undefined;
  if (deadly.kind === 'grid') {
    const { cells } = cellsAndDigits(argument, [guardians]);
    return said(argument, 'grave', 'of-grave', { guardians: wording.cells(cells), so: so(argument) });
  }
  const cells = deadly.parts.flatMap((part) => part.cells);
  const digits = deadly.parts.flatMap((part) => part.digits);
  const slots = {
    cells: wording.cells([...new Set(cells)].sort((a, b) => a - b)),
    digits: wording.all([...new Set(digits)].sort((a, b) => a - b).map(wording.digit)),
    so: so(argument),
  };
  const isOneCell = cellsAndDigits(argument, [guardians]).cells.length === 1 && instance.sets.length === 1;
  const played = isOneCell ? undefined : playedOut(argument);
  if (played !== undefined && played.steps !== '')
    return said(argument, 'deadly-suppose', 'of-deadly', { ...played, ...slots });
  return said(argument, isOneCell ? 'rectangle' : 'deadly', 'of-deadly', slots);
}

function byChain(argument: ToSay): SaidArgument | undefined {
  const { wording, instance } = argument;
  const links = instance.chain === undefined ? undefined : chainInWords(wording, instance.chain);
  if (links === undefined) return undefined;
  if (instance.chain?.loop === true) return said(argument, 'loop', 'of-loop', { links, so: so(argument) });
  const places = placesOf(instance.sets);
  const [first] = places;
  const isOneDigit = places.length === instance.sets.length && places.every(({ digit }) => digit === first?.digit);
  if (first === undefined || !isOneDigit) return said(argument, 'chain', 'of-chain', { links, so: so(argument) });
  return said(argument, 'chain', 'of-digit-chain', { ...aboutDigit(argument, first.digit), links, so: so(argument) });
}

/** The first conclusion denied and played out; the others are refuted the same way. */
function bySupposition(argument: ToSay): SaidArgument | undefined {
  const played = playedOut(argument);
  if (played === undefined) return undefined;
  const [first, ...others] = argument.instance.conclusions;
  const isAtOnce = played.steps === '';
  if (first?.kind === 'one-of')
    return said(argument, isAtOnce ? 'suppose-not-at-once' : 'suppose-not', 'of-cases', played);
  const key = isAtOnce ? 'suppose-at-once' : others.length === 0 ? 'suppose' : 'suppose-others';
  return said(argument, key, 'of-supposition', played);
}

function playedOut(argument: ToSay): Slots | undefined {
  const { wording, position, instance } = argument;
  const [first] = instance.conclusions;
  const candidate = first === undefined ? undefined : theOne(first);
  const played = first === undefined ? undefined : supposition(wording, position, instance.sets, first);
  if (candidate === undefined || played === undefined) return undefined;
  return {
    cell: wording.cell(cellOf(wording.grid, candidate)),
    'a-digit': wording.aDigit(digitOf(wording.grid, candidate)),
    steps: wording.inTurn(played.steps),
    clash: played.clash,
    so: so(argument),
  };
}

function theOne(conclusion: Conclusion): Candidate | undefined {
  if (conclusion.kind === 'impossible') return conclusion.candidate;
  const [only, ...others] = membersOf(conclusion.candidates);
  return others.length === 0 ? only : undefined;
}

function byCases(argument: ToSay): SaidArgument {
  const { wording, name } = argument;
  return said(argument, 'cases', 'of-cases', { name: wording.nameOf(name), so: so(argument) });
}
