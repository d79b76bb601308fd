/**
 * A look file: what it changes of a look that is whole.
 */
import type { Diagnostic } from './diagnostic.ts';
import type { Faults } from './faults.ts';
import { colours, inks, lookDefinition, motion, type Range, strokes, type, waysToCome } from './language-look.ts';
import type { Look } from './look.ts';
import { readNumber, wordOf } from './reading.ts';
import { editorSchema } from './schema.ts';
import { checkShape } from './shape.ts';
import { readYamlFile } from './yaml-file.ts';
import { type MapNode, type Tree, textOf, valueOf } from './yaml-tree.ts';

export interface ReadLook {
  /** Undefined where there is an error. */
  readonly look: Look | undefined;
  /** All faults of the file by place. */
  readonly diagnostics: readonly Diagnostic[];
}

/** Reads a look over another: what the file leaves out is as in `base`. `text` is the file's content. */
export function readLook(text: string, base: Look): ReadLook {
  const { value, diagnostics } = readYamlFile(
    text,
    'a look begins with `name:` and what it is called',
    (tree, faults) => {
      const meant = checkShape(lookDefinition, tree, faults);
      return meant.kind === 'map' ? lookOf(meant, base, faults) : undefined;
    },
  );
  return { look: value, diagnostics };
}

/** A schema of JSON Schema draft 2020-12 for look files. */
export function lookSchema(): object {
  return editorSchema(lookDefinition, 'A proofreel look');
}

function lookOf(file: MapNode, base: Look, faults: Faults): Look {
  const [colourMap, typeMap] = [mapOf(file, 'colours'), mapOf(file, 'type')];
  const motionMap = mapOf(file, 'motion');
  return {
    name: textOf(file, 'name')?.text ?? base.name,
    colours: {
      ...coloursOver(base.colours, keysOf(colours), colourMap, faults),
      groups: coloursOver(
        base.colours.groups,
        keysOf(base.colours.groups),
        colourMap && mapOf(colourMap, 'groups'),
        faults,
      ),
    },
    inks: numbersOver(base.inks, inks, mapOf(file, 'inks'), faults),
    strokes: numbersOver(base.strokes, strokes, mapOf(file, 'strokes'), faults),
    type: {
      ...numbersOver(base.type, type, typeMap, faults),
      family: (typeMap && textOf(typeMap, 'family')?.text) ?? base.type.family,
    },
    motion: {
      ...numbersOver(base.motion, motion, motionMap, faults),
      come: wordOf(motionMap, 'come', waysToCome) ?? base.motion.come,
    },
  };
}

function numbersOver<Section extends object>(
  base: Section,
  ranges: Readonly<Record<string, Range>>,
  map: MapNode | undefined,
  faults: Faults,
): Section {
  if (map === undefined) return base;
  const read: Partial<Record<string, number>> = {};
  for (const [key, { least, most }] of Object.entries(ranges)) {
    const node = textOf(map, key);
    const number = node === undefined ? undefined : readNumber(node, { what: `"${key}"`, least, most, faults });
    if (number !== undefined) read[key] = number;
  }
  return { ...base, ...read };
}

function coloursOver<Section extends object>(
  base: Section,
  names: readonly string[],
  map: MapNode | undefined,
  faults: Faults,
): Section {
  if (map === undefined) return base;
  const read: Partial<Record<string, string>> = {};
  for (const key of names) {
    const node = textOf(map, key);
    if (node === undefined) continue;
    const colour = node.text.trim();
    if (/^#[0-9a-f]{6}$/i.test(colour)) read[key] = colour.toLowerCase();
    else
      faults.error(
        'not-a-colour',
        node.span,
        `"${colour}" is no colour; write six hexadecimal digits in quotes, as in "${mended(colour)}"`,
      );
  }
  return { ...base, ...read };
}

/** `#abc` and `aabbcc` as they would be right, else an example. */
function mended(colour: string): string {
  const digits = colour.replace(/^#/, '').toLowerCase();
  if (/^[0-9a-f]{3}$/.test(digits)) return `#${[...digits].map((each) => each + each).join('')}`;
  return /^[0-9a-f]{6}$/.test(digits) ? `#${digits}` : '#d55e00';
}

function keysOf(section: object): readonly string[] {
  return Object.keys(section);
}

function mapOf(map: MapNode, key: string): MapNode | undefined {
  const value: Tree | undefined = valueOf(map, key);
  return value?.kind === 'map' ? value : undefined;
}
