import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { differences, type Expected, reportOn } from './run.ts';

const scenes = new URL('../../scenes/', import.meta.url);
const expectations = new URL('./lessons/', import.meta.url);
const names = readdirSync(scenes).filter((name) => name.endsWith('.yaml'));

function filesOf(name: string): { readonly text: string; readonly narration: string | undefined } {
  const spoken = new URL(name.replace('.yaml', '.vtt'), scenes);
  const narration = existsSync(spoken) ? readFileSync(spoken, 'utf8') : undefined;
  return { text: readFileSync(new URL(name, scenes), 'utf8'), narration };
}

describe('the lessons in scenes/', () => {
  it.each(names.filter((name) => name !== 'mistaken.yaml'))('%s is sound', (name) => {
    const { text, narration } = filesOf(name);
    const { report, exit } = reportOn(name, text, narration);
    expect([report.errors, report.summary.toMend, exit]).toEqual([[], [], 0]);
  });

  it.each(readdirSync(expectations))('%s', (file) => {
    const name = file.replace('.expected.json', '.yaml');
    const { text, narration } = filesOf(name);
    const expected = JSON.parse(readFileSync(new URL(file, expectations), 'utf8')) as Expected;
    expect(differences(name, text, expected, narration)).toEqual([]);
  });
});
