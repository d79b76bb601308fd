/**
 * What `check` says of flashes by W3C WCAG 2.2, success criterion 2.3.1; that the measure itself is right is held against
 * the criterion in `tests/output/flashes.test.ts`.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { flashWarnings } from '../../src/commands/flash-warnings.ts';
import { openLesson } from '../../src/commands/lesson.ts';
import { run } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'proofreel-flashes-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** All cells tinted and cleared `times` times, `apart` seconds from one to the other. */
function blinking(times: number, apart: number): string {
  const beats = Array.from({ length: times }, (_, index) => [
    `      - {fill: r1 r2 r3 r4 r5 r6 r7 r8 r9, group: dark, at: ${2 + index * 2 * apart}}`,
    `      - {clear: all, at: ${2 + (index * 2 + 1) * apart}}`,
  ]).flat();
  const path = join(folder, `${times}-${apart}.yaml`);
  const scene = [
    'proofreel: 1',
    `puzzle: {givens: ${'.'.repeat(80)}1}`,
    'video: {rate: 25, draw: board}',
    'groups: {dark: purple}',
    'steps:',
    '  - {id: before, at: 0, say: Look.}',
    '  - id: blink',
    '    at: 1',
    '    until: 9',
    '    show:',
    ...beats,
  ];
  writeFileSync(path, scene.join('\n'));
  return path;
}

async function warned(path: string) {
  const lesson = await openLesson(path, { media: 'if there' });
  if (lesson.kind === 'unusable') throw new Error(lesson.diagnostics.map(({ message }) => message).join('\n'));
  return { lesson, warnings: await flashWarnings(path, lesson) };
}

describe('a scene whose picture flashes', () => {
  it('is warned of at its step, with the time', async () => {
    const { lesson, warnings } = await warned(blinking(6, 0.12));
    expect(warnings.map(({ code, severity, span }) => [code, severity, span])).toEqual([
      ['flashes', 'warning', lesson.scene.steps[1]!.idSpan],
    ]);
    expect(warnings[0]!.message).toMatch(/^the picture flashes .* before 0:0[23]\.\d+.*\(WCAG 2\.2, 2\.3\.1\)/);
  });

  it('in the report of check', async () => {
    const { out } = await run('check', blinking(6, 0.12), '--json');
    const codes = (JSON.parse(out) as { warnings: { code: string }[] }).warnings.map(({ code }) => code);
    expect(codes).toContain('flashes');
  });
});

describe('a scene that does not', () => {
  it.each([
    ['three times in a second', 3, 0.12],
    ['often, and slowly', 6, 0.4],
  ])('%s', async (_, times, apart) => {
    expect((await warned(blinking(times, apart))).warnings).toEqual([]);
  });
});
