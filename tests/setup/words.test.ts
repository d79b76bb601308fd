/**
 * The words of the project: one word for one thing, and the field's own wherever it has one. Idioms that read as
 * translated, and words that were given up for better ones, do not come back into code, messages, pages or phrases.
 *
 * The keys and values of the JSON that `check`, `plan` and `alternatives` print are published, and stay as they are.
 */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');

interface Word {
  /** What must not be written. */
  readonly was: RegExp;
  /** What is written instead. */
  readonly now: string;
  /** Lines on which it may stand all the same. */
  readonly but?: RegExp;
}

/** The keys of the published JSON, quoted or as a property. */
const published = /\b(mends|toMend)\b|['"`]spent['"`]|\bspent:|spoilt-spent|renamed: \{ mend: 'fix' \}/;

const words: readonly Word[] = [
  { was: /\b(hang|hangs|hung|hanging) on\b/i, now: 'depend on' },
  { was: /\b(un)?mend(s|ed|ing|able)?\b|\bmend(?=[A-Z])|Mend(?=[A-Z]|s?\b)/, now: 'fix', but: published },
  { was: /\bspent\b|isSpent|Spent\b/, now: 'redundant', but: published },
  { was: /\bdear(er|est|ly)?\b/i, now: 'costly' },
  { was: /\bcheap(er|est|ly)?\b/i, now: 'least, low in cost, or fast' },
  {
    was: /\b(telling|teller|tellers)\b|Telling|tellers?-|\btell-film\b|\btold[A-Z-]|[a-z]Told\b/,
    now: 'a word of presentation: shown, film, step',
  },
  { was: /\bkey[ -]pictures?\b|keyPicture/i, now: 'keyframe' },
  { was: /\bpour(s|ed|ing)?\b/i, now: 'write stream' },
  { was: /\bwhole-file\b|[wW]holeFile/, now: 'atomic write' },
  { was: /\bBadCall\b|bad-call/, now: 'UsageError' },
  { was: /\bdemands?\b/i, now: 'landmark, or require' },
  {
    was: /(?<!\b[Tt]here )\b(is|are) no (time|number|colour|rate|size|name|cell|digit|place|picture|video|scene|file|folder)\b/,
    now: 'is not a ...',
  },
  { was: /\b(is|are) due\b/, now: 'expected ...' },
  { was: /\bwants? (a|an|the|blanks|spaces|to)\b/i, now: 'requires, or needs' },
  { was: /\bcan be had\b|\bto be had\b/, now: 'is available' },
  { was: /\bwho(ever)? wants to\b/i, now: 'to ...' },
  { was: /\bwhole of all\b/, now: 'joins the parts' },
  { was: /\bwhat is free\b|\ball that is free\b/, now: 'singles' },
  { was: /\bhinges?\b/i, now: 'pivot' },
  { was: /\bsaid: o(n|ff)\b/, now: 'subtitles: on' },
  { was: /\breckon(s|ed|ing)?\b/i, now: 'compute, or count' },
];

/** Files that people read: code, tests, pages, phrases and lessons. */
function filesRead(): string[] {
  const patterns = ['*.ts', '*.mjs', '*.cjs', '*.md', 'assets/**/*.yaml', 'scenes/**/*.yaml', '.ci/*'];
  return execFileSync('git', ['ls-files', '-co', '--exclude-standard', '--', ...patterns], {
    cwd: root,
    encoding: 'utf8',
  })
    .split('\n')
    .filter((file) => file !== '' && file !== 'tests/setup/words.test.ts');
}

describe('words given up', () => {
  const files = filesRead().map((file) => ({ file, lines: readFileSync(join(root, file), 'utf8').split('\n') }));

  it('are looked for in all that is read', () => {
    expect(files.length).toBeGreaterThan(500);
  });

  it.each(words)('$was, now "$now"', ({ was, but }) => {
    const found = files.flatMap(({ file, lines }) =>
      lines.flatMap((line, index) =>
        was.test(line) && but?.test(line) !== true ? [`${file}:${index + 1}: ${line.trim().slice(0, 120)}`] : [],
      ),
    );
    expect(found).toEqual([]);
  });
});
