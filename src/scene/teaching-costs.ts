/**
 * The table of what arguments cost an audience, read from a file: `assets/teaching-costs.yaml`, or one of the user's.
 */
import type { ArgumentName } from '../techniques/all-techniques.ts';
import type { NameCost, TeachingCosts } from '../techniques/teaching.ts';
import { entriesByName, readArgumentName } from './argument-entries.ts';
import type { ReadOf } from './definition.ts';
import type { Diagnostic } from './diagnostic.ts';
import type { Faults } from './faults.ts';
import { name } from './language-values.ts';
import { number } from './numbers.ts';
import { editorSchema } from './schema.ts';
import { readShape } from './shape.ts';
import { either, entriesOf, keys, listOf } from './structures.ts';
import { readYamlFile } from './yaml-file.ts';

export interface ReadTeachingCosts {
  /** Undefined if there is an error. */
  readonly costs: TeachingCosts | undefined;
  /** All faults of the file by place. */
  readonly diagnostics: readonly Diagnostic[];
}

const range = { least: 0, most: 1000 };
const amount = (description: string) => number(description, ['1', '2.5'], range);

const costOfName = either([
  amount('The cost of an argument of this name.'),
  keys('the cost of a name', 'A cost that grows with the length of the argument.', {
    cost: amount('The cost of an argument of up to `sets` sets.'),
    sets: number('How many sets (strong links, cells) the cost covers.', ['4'], range),
    each: amount('The cost of every further set.'),
  }),
]);

const costsByName = entriesOf(
  costOfName,
  'The cost by name, in the order in which they are taught; a name without a line is not used.',
);

/** A whole file of teaching costs. */
export const teachingCostsDefinition = keys(
  'a table of teaching costs',
  'What arguments cost an audience: the plan of the least cost is the best one.',
  {
    step: amount('The cost of every argument that is not free: it is one more to follow.'),
    free: listOf(
      name('The name of an argument that costs nothing.'),
      'What is seen without being shown, and costs nothing.',
    ),
    names: costsByName,
  },
);

/** Reads a table; `text` is the file's content. */
export function readTeachingCosts(text: string): ReadTeachingCosts {
  const { value, diagnostics } = readYamlFile(text, 'a table of costs begins with `step:`', (tree, faults) => {
    const file = readShape(teachingCostsDefinition, tree, faults);
    return file === undefined ? undefined : costsOf(file, faults);
  });
  return { costs: value, diagnostics };
}

/** A schema of JSON Schema draft 2020-12 for tables of teaching costs. */
export function teachingCostsSchema(): object {
  return editorSchema(teachingCostsDefinition, 'Proofreel teaching costs');
}

function costsOf(file: ReadOf<typeof teachingCostsDefinition>, faults: Faults): TeachingCosts {
  const { step, free, names } = file.values;
  return {
    step: step?.read({ faults }) ?? 0,
    free: (free?.items ?? []).flatMap(
      (item) => (item === undefined ? undefined : readArgumentName(item.node, faults)) ?? [],
    ),
    names: names === undefined ? [] : namesOf(names, faults),
  };
}

function namesOf({ entries }: ReadOf<typeof costsByName>, faults: Faults): readonly NameCost[] {
  return entriesByName(entries, faults).flatMap(
    ({ name, value }) => (value === undefined ? undefined : readCost(name, value, faults)) ?? [],
  );
}

function readCost(name: ArgumentName, written: ReadOf<typeof costOfName>, faults: Faults): NameCost | undefined {
  if (written.kind === 'text') {
    const cost = written.read({ faults, called: `the cost of ${name}` });
    return cost === undefined ? undefined : { name, cost, sets: 1, each: 0 };
  }
  const { values } = written;
  const [cost, sets, each] = [
    values.cost?.read({ faults }),
    values.sets?.read({ faults }),
    values.each?.read({ faults }),
  ];
  if (cost === undefined || sets === undefined || each === undefined) return undefined;
  return { name, cost, sets, each };
}
