/**
 * An argument of a plan in scene notation: its name, its sets or chain, its conclusions.
 */
import type { Grid } from '../grid/grid.ts';
import { printChain, printConclusions, printDeadly, printSet } from '../grid/notation/print.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { PlanStep } from '../plan/plan.ts';
import { type ArgumentName, isArgumentName, techniqueNamed } from '../techniques/all-techniques.ts';
import { recogniseIn } from '../techniques/judge-name.ts';
import type { DraftStep } from './draft-step.ts';

/** Names that mention groups, from the more special to the more general. */
const general: readonly ArgumentName[] = ['empty rectangle', 'grouped X-chain', 'grouped AIC'];

/** The plan's name for the argument, or where that leaves a detail unsaid (`AIC` of a grouped one) the name that says it. */
export function nameBorne({ name, position, instance }: PlanStep): ArgumentName {
  const shape = { ...instance, position, chains: instance.chain === undefined ? [] : [instance.chain] };
  const fits = (each: ArgumentName) => recogniseIn(techniqueNamed(each), shape)?.kind === 'fits';
  if (fits(name)) return name;
  const alike = [`grouped ${name}`, name.replace('finned', 'sashimi'), name.replace('sashimi', 'finned')];
  return [...alike.filter(isArgumentName), ...general].find(fits) ?? name;
}

/** The argument in scene notation: its chain where it has one, else its sets; and its deadly pattern. */
export function argumentText({ position: { grid }, instance }: PlanStep): Pick<DraftStep, 'from' | 'chain' | 'deadly'> {
  const { chain, deadly, sets } = instance;
  const named = sets.flatMap(({ source }) =>
    source.kind === 'cell' || source.kind === 'places' ? [printSet(grid, source)] : [],
  );
  return {
    ...(chain === undefined ? {} : { chain: printChain(grid, { ...chain, concludes: [] }) }),
    ...(chain !== undefined || named.length === 0 ? {} : { from: named.join(' ') }),
    ...(deadly === undefined ? {} : { deadly: printDeadly(grid, deadly) }),
  };
}

/** Removals put together where that is shorter: `r1c79<>7`. */
export function conclusionsText(grid: Grid, conclusions: readonly Conclusion[]): string {
  return printConclusions(grid, conclusions).join(' ');
}
