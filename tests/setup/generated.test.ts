/** What is generated is up to date, and says what the code says. */
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { answerTo, firstScene, generatedFiles, verbRow } from '../../src/setup/generated.ts';
import { exitStatus } from '../../src/verbs/exit-status.ts';
import { verbNames, verbs } from '../../src/verbs/verbs.ts';

const root = join(dirname(fileURLToPath(import.meta.url)), '../..');
const read = (file: string): string => readFileSync(join(root, file), 'utf8');

/** The cells of the rows of the table under a heading, without its head. */
function tableAfter(text: string, marker: string): string[][] {
  const lines = text.slice(text.indexOf(marker)).split('\n');
  const first = lines.findIndex((line) => line.startsWith('|'));
  const rows = lines.slice(first);
  const last = rows.findIndex((line) => !line.startsWith('|'));
  return rows.slice(2, last).map((line) =>
    line
      .split(/(?<!\\)\|/)
      .slice(1, -1)
      .map((cell) => cell.trim()),
  );
}

describe('generated files', () => {
  it.each(generatedFiles(read).map(({ file, text }) => [file, text] as const))('%s is up to date', (file, text) => {
    expect(read(file)).toBe(text);
  });

  it('are refused where a page has lost its marks', () => {
    expect(() => generatedFiles((file) => (file === 'README.md' ? 'a page without marks' : read(file)))).toThrow(
      'README.md has no part marked "scene"',
    );
  });
});

describe('README', () => {
  it('explains a scene of ten lines that is sound, and a change that is not', () => {
    const lines = read(firstScene).trimEnd().split('\n');
    expect(lines).toHaveLength(10);
    expect(answerTo(read(firstScene))).toBe(`sound  ${firstScene}: 2 steps, 4 conclusions proved\n`);
    expect(lines[8]?.endsWith('so: r5c1<>3 r6c46<>3')).toBe(true);
    expect(read('README.md')).toContain('not sound  scenes/two-towers.yaml: 1 step to fix: towers');
  });

  it('lists the verbs of the command line, in their order', () => {
    const rows = tableAfter(read('README.md'), '<!-- verbs:');
    expect(rows.map((cells) => cells.map((cell) => cell.replaceAll('\\|', '|')))).toEqual(
      verbNames.map((name) => verbRow(name, verbs[name])),
    );
  });

  it('lists the exit statuses', () => {
    const rows = tableAfter(read('README.md'), '| status |');
    expect(rows.map(([status]) => Number(status))).toEqual(Object.values(exitStatus));
  });
});
