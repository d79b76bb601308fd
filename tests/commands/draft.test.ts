/** `draft`: what it writes, and what it says of calls that cannot be carried out. */
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { run } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'draft-'));
afterAll(() => rmSync(folder, { recursive: true }));

const symbols = '..71.........7.53.8...2.7..2..3....1..3..1..5.1.2.8.4.6495.......8..2.6....49....';
const out = join(folder, 'lesson.yaml');

function written() {
  const { scene, diagnostics } = readScene(readFileSync(out, 'utf8'));
  expect(diagnostics).toEqual([]);
  return { scene: scene!, checked: checkScene(scene!) };
}

describe('draft', () => {
  it('writes a scene that holds', async () => {
    const { status, err } = await run('draft', symbols, '-o', out, '--title', 'Our: lesson');
    expect(status).toBe(0);
    expect(err).toContain('naked pair (cost 3), proved to be the least');
    const { scene, checked } = written();
    expect([checked.sound, scene.title]).toEqual([true, 'Our: lesson']);
  });

  it('in another language, with what arguments are called there', async () => {
    await run('draft', symbols, '-o', out, '--language', 'de');
    const { scene } = written();
    expect(scene.steps.find(({ because }) => because !== undefined)?.called).toBe('Nacktes Paar');
  });

  it('as far as the audience can follow, and says where it ends', async () => {
    const { status, err } = await run('draft', symbols, '-o', out, '--know', 'hidden single');
    expect(status).toBe(1);
    expect(err).toContain('it ends there, since no named argument leads further');
    const { scene, checked } = written();
    expect(checked.sound).toBe(true);
    expect(scene.steps.map(({ say }) => say?.value).join(' ')).not.toMatch(/board is full|The other/);
  });

  it('as far as a cell, and nothing that does not lead there', async () => {
    await run('draft', symbols, '-o', out);
    const whole = written().checked;
    const last = whole.steps.flatMap(({ conclusions }) => conclusions).findLast(({ origin }) => origin === 'cascade')!;
    const { status } = await run('draft', symbols, '-o', out, '--until', last.text);
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
    ['r1c3', 'is on the board from the start'],
    ['towers', '--until "towers"'],
  ])('--until %s is refused', async (until, said) => {
    expect(await run('draft', symbols, '-o', out, '--until', until)).toEqual({
      status: 2,
      out: '',
      err: expect.stringContaining(said),
    });
  });

  it('one easy digit is told as one', async () => {
    await run('draft', symbols, '-o', out);
    const first = written().checked.steps[0]!.conclusions[0]!.text;
    const { err } = await run('draft', symbols, '-o', out, '--until', first);
    expect(err).toContain('lesson.yaml: 1 step, only singles');
    expect(written().scene.steps[0]?.say?.value).toMatch(/^\d+ digits are given\. One more goes in/);
  });

  it('keeps the board and the start of a scene', async () => {
    await run('draft', 'scenes/names/skyscraper.yaml', '-o', out);
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
    const { err } = await run('draft', symbols, '-o', out, '--narration', narration);
    expect(err).toContain('1 of 5 steps were heard');
    expect(err).toContain('0:12 naked-pair: Here is a naked pair.');
    expect(err).toContain('said, but not a step of the plan: 0:16 That swordfish is not needed.');
    expect(written().scene.video.narration?.value).toBe('take.vtt');
  });

  const rows: readonly (readonly [about: string, call: readonly string[], said: RegExp])[] = [
    ['a puzzle of several solutions', ['draft', symbols.replace('7', '.')], /several solutions/],
    ['a language that there is not', ['draft', symbols, '--language', 'dee'], /did you mean de\?/],
    ['a file of phrases that is not there', ['draft', symbols, '--language', 'fr.yaml'], /there is no file of phrases/],
    ['a narration that is not there', ['draft', symbols, '--narration', 'none.vtt'], /there is no narration none.vtt/],
    ['a file that is not a scene', ['draft', symbols, '-o', 'lesson.mp4'], /ends in .yaml/],
  ];
  it.each(rows)('refuses %s', async (_, words, said) => {
    rmSync(out, { force: true });
    const ran = words.includes('-o') ? await run(...words) : await run(...words, '-o', out);
    expect(ran).toEqual({ status: 2, out: '', err: expect.stringMatching(said) });
    expect(existsSync(out)).toBe(false);
  });
});
