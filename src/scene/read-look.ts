/**
 * A look file: what it changes of a look that is whole.
 */
import type { ReadText } from './definition.ts';
import type { Diagnostic } from './diagnostic.ts';
import { type Faults, quoted } from './faults.ts';
import { type LookMap, lookDefinition } from './language-look.ts';
import type { Look } from './look.ts';
import { editorSchema } from './schema.ts';
import { readShape } from './shape.ts';
import { namesIn } from './structures.ts';
import { readYamlFile } from './yaml-file.ts';

export interface ReadLook {
  /** Undefined if there is an error. */
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
      const file = readShape(lookDefinition, tree, faults);
      return file === undefined ? undefined : lookOf(file, base, faults);
    },
  );
  return { look: value, diagnostics };
}

/** A schema of JSON Schema draft 2020-12 for look files. */
export function lookSchema(): object {
  return editorSchema(lookDefinition, 'A proofreel look');
}

function lookOf(file: LookMap, base: Look, faults: Faults): Look {
  const { name, colours, inks, strokes, type, motion } = file.values;
  const { groups, ...plainColours } = colours?.values ?? {};
  const { family, ...sizes } = type?.values ?? {};
  const { come, ...times } = motion?.values ?? {};
  return {
    name: name?.text ?? base.name,
    colours: {
      ...over(base.colours, plainColours, faults),
      groups: over(base.colours.groups, groups?.values ?? {}, faults),
    },
    inks: over(base.inks, inks?.values ?? {}, faults),
    strokes: over(base.strokes, strokes?.values ?? {}, faults),
    type: { ...over(base.type, sizes, faults), family: familyOf(family, faults) ?? base.type.family },
    motion: { ...over(base.motion, times, faults), come: come?.read() ?? base.motion.come },
  };
}

/** It stands in quotes in the fonts of a canvas and the styles of a page, and must not end them. */
function familyOf(written: ReadText<string, void> | undefined, faults: Faults): string | undefined {
  if (written === undefined || /^[\p{L}\p{N}][\p{L}\p{M}\p{N} ,._-]*$/u.test(written.text)) return written?.text;
  const message = `${quoted(written.text)} cannot name a typeface; use letters, digits, blanks and - _ . ,`;
  faults.error('bad-name', written.span, message);
  return undefined;
}

/** A section of a look with the file's values in place of the former ones. */
function over<Section extends object, Value>(
  base: Section,
  written: { readonly [Key in keyof Section]?: ReadText<Value, { readonly faults: Faults }> | undefined },
  faults: Faults,
): Section {
  const read: { [Key in keyof Section]?: Value } = {};
  for (const key of namesIn(written)) {
    const value = written[key]?.read({ faults });
    if (value !== undefined) read[key] = value;
  }
  return { ...base, ...read };
}
