/** `draft`: what it writes, and what it says of calls that cannot be carried out. */
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { checkScene } from '../../src/check/check-scene.ts';
import { type DraftCall, draft } from '../../src/commands/draft.ts';
import { readScene } from '../../src/scene/read.ts';
import { keptTerminal } from './quiet-terminal.ts';

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
    expect(written().checked.sound).toBe(true);
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
