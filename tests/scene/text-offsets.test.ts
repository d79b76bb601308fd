/**
 * A sign of a text is found again in the file, whatever the style of the scalar. The oracle is the YAML library, which
 * reads the same source.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseDocument, stringify } from 'yaml';
import { gatherFaults } from '../../src/scene/faults.ts';
import { parseYaml, spanIn, type TextNode, treeOf } from '../../src/scene/yaml-tree.ts';

function textAfterKey(file: string): TextNode {
  const [document] = parseYaml(file);
  const tree = treeOf(file, document!, gatherFaults());
  const value = tree.kind === 'map' ? tree.entries[0]?.value : undefined;
  if (value?.kind !== 'text') throw new Error(`no text in ${JSON.stringify(file)}`);
  return value;
}

describe('a word of the text lies in the file', () => {
  const rows: readonly [string, string, string][] = [
    ['plain', 'k: one two', 'two'],
    ['plain over lines', 'k: one\n  two\n\n  three', 'three'],
    ['single quotes', "k: 'it''s two'", 'two'],
    ['double quotes', 'k: "a \\"b\\" \\u0041\\x42 \\\n   two"', 'two'],
    ['double quotes, folded', 'k: "one\n  two"', 'two'],
    ['literal', 'k: |\n  one\n\n    two\n  three', 'two'],
    ['literal with a comment in its header', 'k: |- # two\n  one two', 'two'],
    ['literal with an indent of its own', 'k: |2\n    one\n  two', 'two'],
    ['folded', 'k: >-\n  one\n  more\n\n  two', 'two'],
    ['carriage returns', 'k: >-\r\n  one\r\n  two', 'two'],
    ['an anchor before it', 'k: &a one two', 'two'],
    ['a long sign', 'k: "\\U0001F44D 👍 two"', 'two'],
  ];
  it.each(rows)('%s', (_, file, word) => {
    const node = textAfterKey(file);
    const at = node.text.indexOf(word);
    const span = spanIn(node, at, at + word.length);
    expect(file.slice(span.start, span.end)).toBe(word);
    expect(span.start).toBe(file.lastIndexOf(word));
  });
});

it('every sign but white space is found again, in all styles that the library writes', () => {
  const styles = ['PLAIN', 'QUOTE_DOUBLE', 'QUOTE_SINGLE', 'BLOCK_FOLDED', 'BLOCK_LITERAL'] as const;
  const sign = fc.constantFrom(...'ab1=<>-:#\'" \n|é日👍');
  fc.assert(
    fc.property(fc.array(sign, { minLength: 1, maxLength: 60 }), fc.constantFrom(...styles), (signs, style) => {
      const file = stringify({ k: signs.join('') }, { defaultStringType: style, lineWidth: 24 });
      // What the library wrote it reads again, but for white space at the ends.
      const text = String(parseDocument(file, { schema: 'failsafe' }).get('k'));
      fc.pre(text.trim() !== '');
      const node = textAfterKey(file);
      expect(node.text).toBe(text);
      expect(node.offsets).toHaveLength(text.length + 1);
      let at = -1;
      for (const [index, unit] of text.split('').entries()) {
        const offset = node.offsets[index]!;
        expect(offset).toBeGreaterThanOrEqual(at);
        at = offset;
        if (!/\s/.test(unit) && file[offset] !== '\\') expect(file[offset]).toBe(unit);
      }
    }),
    { numRuns: 400 },
  );
});
