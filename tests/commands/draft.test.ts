/** `draft`: what it writes, and what it says of calls that cannot be carried out. */
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { checkScene } from '../../src/check/check-scene.ts';
import { type DraftCall, draft } from '../../src/commands/draft.ts';
import { readScene } from '../../src/scene/read.ts';
import { keptTerminal } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'draft-'));
afterAll(() => rmSync(folder, { recursive: true }));

const symbols = '..71.........7.53.8...2.7..2..3....1..3..1..5.1.2.8.4.6495.......8..2.6....49....';
const out = join(folder, 'lesson.yaml');

async function call(given: string, options: DraftCall): Promise<{ readonly status: number; readonly err: string }> {
  const terminal = keptTerminal();
  const status = await draft(given, { out, ...options }, terminal);
  expect(terminal.said.out).toBe('');
  return { status, err: terminal.said.err };
}

function written() {
  const { scene, diagnostics } = readScene(readFileSync(out, 'utf8'));
  expect(diagnostics).toEqual([]);
  return { scene: scene!, checked: checkScene(scene!) };
}

describe('draft', () => {
  it('writes a scene that holds', async () => {
    const { status, err } = await call(symbols, { title: 'Our: lesson' });
    expect(status).toBe(0);
    expect(err).toContain('naked pair (3 points), proved to be the least');
    const { scene, checked } = written();
    expect([checked.sound, scene.title]).toEqual([true, 'Our: lesson']);
  });

  it('in another language, with what arguments are called there', async () => {
    await call(symbols, { language: 'de' });
    const { scene } = written();
    expect(scene.steps.find(({ because }) => because !== undefined)?.called).toBe('Nacktes Paar');
  });

  it('as far as the audience can follow, and says where it ends', async () => {
    const { status, err } = await call(symbols, { know: 'hidden single' });
    expect(status).toBe(1);
    expect(err).toContain('it ends there, since no named argument leads further');
    const { scene, checked } = written();
    expect(checked.sound).toBe(true);
    expect(scene.steps.map(({ say }) => say?.value).join(' ')).not.toMatch(/board is full|The other/);
  });

  it('as far as a cell, and nothing that does not lead there', async () => {
    await call(symbols, {});
    const whole = written().checked;
    const last = whole.steps.flatMap(({ conclusions }) => conclusions).findLast(({ origin }) => origin === 'cascade')!;
    const { status } = await call(symbols, { until: last.text });
    expect(status).toBe(0);
    const { scene, checked } = written();
    expect(checked.sound).toBe(true);
    const told = checked.steps.flatMap(({ conclusions }) => conclusions);
    expect(told.at(-1)?.text).toBe(last.text);
    expect(told.length).toBeLessThan(whole.steps.flatMap(({ conclusions }) => conclusions).length);
    expect(scene.steps.map(({ say }) => say?.value).join(' ')).not.toMatch(/board is full|fills the board/);
    expect(readFileSync(out, 'utf8')).toContain(`# It goes as far as ${last.text}.`);
  });

  it.each([
    ['r1c1=2 r1c2=3', 'disagrees with the solution'],
    ['r1c3', 'stands on the board from the start'],
    ['towers', '--until "towers"'],
  ])('--until %s is refused', async (until, said) => {
    await expect(call(symbols, { until })).rejects.toThrow(said);
  });

  it('one easy digit is told as one', async () => {
    await call(symbols, {});
    const first = written().checked.steps[0]!.conclusions[0]!.text;
    const { err } = await call(symbols, { until: first });
    expect(err).toContain('lesson.yaml: 1 step, singles alone');
    expect(written().scene.steps[0]?.say?.value).toMatch(/^\d+ digits are given\. One more goes in/);
  });

  it('keeps the board and the start of a scene', async () => {
    await call('scenes/names/skyscraper.yaml', {});
    const { scene, checked } = written();
    expect(scene.puzzle.start.length).toBeGreaterThan(10);
    expect(checked.sound).toBe(true);
  });

  it('takes times from a narration, and lists what it did not hear', async () => {
    const narration = join(folder, 'take.vtt');
    writeFileSync(
      narration,
      'WEBVTT\n\n00:12.000 --> 00:16.000\nHere is a naked pair.\n\n00:16.000 --> 00:20.000\nThat swordfish is not needed.\n',
    );
    const { err } = await call(symbols, { narration });
    expect(err).toContain('1 of 5 steps were heard');
    expect(err).toContain('0:12 naked-pair: Here is a naked pair.');
    expect(err).toContain('said, and no step of the plan: 0:16 That swordfish is not needed.');
    expect(written().scene.video.narration?.value).toBe('take.vtt');
  });

  const rows: readonly (readonly [about: string, given: string, options: DraftCall, said: RegExp])[] = [
    ['a puzzle of several solutions', symbols.replace('7', '.'), {}, /several solutions/],
    ['a language that there is not', symbols, { language: 'dee' }, /did you mean de\?/],
    ['a file of phrases that is not there', symbols, { language: 'fr.yaml' }, /there is no file of phrases/],
    ['a narration that is not there', symbols, { narration: 'none.vtt' }, /there is no narration none.vtt/],
    ['a file that is no scene', symbols, { out: 'lesson.mp4' }, /ends in .yaml/],
  ];
  it.each(rows)('refuses %s', async (_, given, options, said) => {
    rmSync(out, { force: true });
    await expect(call(given, options)).rejects.toThrow(said);
    expect(existsSync(out)).toBe(false);
  });
});
