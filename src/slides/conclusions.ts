/**
 * What a step concludes, in displayed notation and as a question.
 */
import type { CheckedStep } from '../check/verdict.ts';
import { membersOf } from '../grid/candidates.ts';
import type { Grid } from '../grid/grid.ts';
import { printCells, printConclusions, printOnly, printPencil } from '../grid/notation/print.ts';
import { asShown } from '../grid/notation/shown.ts';
import type { Conclusion } from '../grid/terms.ts';

/** Removals combined if that is shorter (`r1c79≠7`), then placements and either/ors in their order. */
function shownAll(grid: Grid, conclusions: readonly Conclusion[]): string[] {
  return printConclusions(grid, conclusions).map(asShown);
}

/**
 * Everything that the step has proved, in notation: its removals, placements and either/ors, then its places and lists
 * as written. Nothing unproved; nothing for a false step.
 */
export function provedTexts(grid: Grid, { step, conclusions }: CheckedStep): string[] {
  if (step.fails) return [];
  const proved = conclusions.filter(({ verdict }) => verdict === 'proved');
  const shown = proved.filter(({ origin }) => origin === 'so' || origin === 'cascade');
  const isWhole = (origin: string, item: number) =>
    conclusions.every(
      (each) => each.origin !== origin || each.item !== item || ['proved', 'redundant'].includes(each.verdict),
    );
  return [
    ...shownAll(
      grid,
      shown.map(({ conclusion }) => conclusion),
    ),
    ...step.only.flatMap(({ places }, item) =>
      isWhole('only', item) ? places.map((only) => printOnly(grid, only)) : [],
    ),
    ...step.pencil.flatMap(({ lists }, item) =>
      isWhole('pencil', item) ? lists.map((list) => printPencil(grid, list)) : [],
    ),
  ];
}

/** What a false step claims: conclusions that do not follow. */
export function falseStepTexts(grid: Grid, { step, conclusions }: CheckedStep): string[] {
  if (!step.fails) return [];
  return shownAll(
    grid,
    conclusions.map(({ conclusion }) => conclusion),
  );
}

/** The step's proof as a question; undefined for a step that concludes nothing. */
export function questionOf(grid: Grid, checked: CheckedStep): string | undefined {
  const { step, conclusions } = checked;
  if (step.fails) return `Does ${falseStepTexts(grid, checked).join(' ')} follow from this?`;
  const shown = conclusions.filter(
    ({ origin, verdict }) => verdict !== 'redundant' && (origin === 'so' || origin === 'cascade'),
  );
  if (shown.length > 0) return askedOf(shown.map(({ conclusion }) => conclusion));
  const only = step.only.flatMap(({ places }) => places);
  if (only.length > 0)
    return `Where can the ${listed(only.map(({ digit, house }) => `${digit} of ${house.name}`))} be?`;
  const lists = step.pencil.flatMap((item) => item.lists.map(({ cell }) => cell));
  return lists.length > 0
    ? `Which digits are still possible in ${printCells(grid, lists).replaceAll('|', ' ')}?`
    : undefined;
}

function askedOf(conclusions: readonly Conclusion[]): string {
  const kinds = new Set(conclusions.map(kindOf));
  if (kinds.size > 1) return 'What follows?';
  if (kinds.has('removal')) return conclusions.length === 1 ? 'Which candidate goes?' : 'Which candidates go?';
  if (kinds.has('either')) return 'What must be true here?';
  return conclusions.length === 1 ? 'Which digit goes in, and where?' : 'Which digits go in, and where?';
}

function kindOf(conclusion: Conclusion): 'removal' | 'placement' | 'either' {
  if (conclusion.kind === 'impossible') return 'removal';
  return membersOf(conclusion.candidates).length === 1 ? 'placement' : 'either';
}

function listed(texts: readonly string[]): string {
  return texts.length < 2 ? texts.join('') : `${texts.slice(0, -1).join(', ')} and ${texts.at(-1)}`;
}
