/**
 * The table of what arguments cost an audience, read from a file: `assets/teaching-costs.yaml`, or one of the user's.
 */
import { z } from 'zod';
import { canonicalName, nearestNames } from './argument-names.ts';
import type { Diagnostic } from './diagnostic.ts';
import { type Faults, listed } from './faults.ts';
import { keys, listOf, measure, name } from './language-values.ts';
import { readNumber } from './reading.ts';
import { editorSchema } from './schema.ts';
import { checkShape } from './shape.ts';
import { readYamlFile } from './yaml-file.ts';
import { type Entry, type MapNode, type TextNode, textOf, valueOf } from './yaml-tree.ts';

/** What a name costs: `cost` for an argument of up to `sets` sets, and `each` for every set more. */
export interface NameCost {
  /** In canonical spelling. */
  readonly name: string;
  readonly cost: number;
  readonly sets: number;
  readonly each: number;
}

export interface TeachingCosts {
  /** For every argument that is not free. */
  readonly step: number;
  /** Names, in canonical spelling, that cost nothing whatever: what a viewer sees without being shown. */
  readonly free: readonly string[];
  /** In the order in which they are taught. */
  readonly names: readonly NameCost[];
}

export interface ReadTeachingCosts {
  /** Undefined where there is an error. */
  readonly costs: TeachingCosts | undefined;
  /** All faults of the file by place. */
  readonly diagnostics: readonly Diagnostic[];
}

const points = (description: string) => measure(description, ['1', '2.5']);

/** A whole file of teaching costs. */
export const teachingCostsDefinition = keys(
  'a table of teaching costs',
  'What arguments cost an audience: a plan of the fewest points is the best one.',
  {
    step: points('Points for every argument that is not free: it is one more to follow.'),
    free: listOf(name('The name of an argument that costs nothing.')).meta({
      description: 'What is seen without being shown, and costs nothing.',
    }),
    names: z
      .record(
        z.string(),
        z.union([
          points('Points for an argument of this name.'),
          keys('the cost of a name', 'Points that grow with the length of the argument.', {
            cost: points('Points for an argument of up to `sets` sets.'),
            sets: measure('How many sets (strong links, cells) the cost covers.', ['4']),
            each: points('Points for every set more.'),
          }),
        ]),
      )
      .meta({ description: 'Points by name, in the order in which they are taught; what has no line is not used.' }),
  },
);

/** Reads a table; `text` is the file's content. */
export function readTeachingCosts(text: string): ReadTeachingCosts {
  const { value, diagnostics } = readYamlFile(text, 'a table of costs begins with `step:`', (tree, faults) => {
    const meant = checkShape(teachingCostsDefinition, tree, faults);
    return meant.kind === 'map' ? costsOf(meant, faults) : undefined;
  });
  return { costs: value, diagnostics };
}

/** A schema of JSON Schema draft 2020-12 for tables of teaching costs. */
export function teachingCostsSchema(): object {
  return editorSchema(teachingCostsDefinition, 'Proofreel teaching costs');
}

function costsOf(file: MapNode, faults: Faults): TeachingCosts {
  const free = valueOf(file, 'free');
  const names = valueOf(file, 'names');
  const freeNames = free?.kind === 'list' ? free.items.flatMap((item) => (item.kind === 'text' ? [item] : [])) : [];
  return {
    step: numberOf(textOf(file, 'step'), '"step"', faults) ?? 0,
    free: freeNames.flatMap((item) => nameOf(item, faults) ?? []),
    names: names?.kind === 'map' ? namesOf(names, faults) : [],
  };
}

function namesOf(map: MapNode, faults: Faults): readonly NameCost[] {
  const seen = new Map<string, Entry>();
  return map.entries.flatMap((entry) => {
    const found = nameOf(entry.key, faults);
    if (found === undefined) return [];
    const earlier = seen.get(found);
    if (earlier !== undefined) {
      const notes = [{ span: earlier.key.span, message: 'the first stands here' }];
      faults.error('duplicate-key', entry.key.span, `${found} stands twice here; keep one of the two`, notes);
      return [];
    }
    seen.set(found, entry);
    return costOfName(found, entry, faults) ?? [];
  });
}

function costOfName(name: string, { value }: Entry, faults: Faults): NameCost | undefined {
  if (value.kind === 'text') {
    const cost = numberOf(value, `the cost of ${name}`, faults);
    return cost === undefined ? undefined : { name, cost, sets: 1, each: 0 };
  }
  if (value.kind !== 'map') return undefined;
  const [cost, sets, each] = ['cost', 'sets', 'each'].map((key) => numberOf(textOf(value, key), `"${key}"`, faults));
  if (cost === undefined || sets === undefined || each === undefined) return undefined;
  return { name, cost, sets, each };
}

function numberOf(node: TextNode | undefined, what: string, faults: Faults): number | undefined {
  return node === undefined ? undefined : readNumber(node, { what, least: 0, most: 1000, faults });
}

function nameOf(node: TextNode, faults: Faults): string | undefined {
  const found = canonicalName(node.text);
  if (found !== undefined) return found;
  const near = nearestNames(node.text);
  const mend = near.length === 0 ? '' : `; did you mean ${listed(near, 'or')}?`;
  faults.error('unknown-name', node.span, `no argument is called "${node.text}"${mend}`);
  return undefined;
}
