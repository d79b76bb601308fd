/** `proofreel slides` as it is called: what is refused, what is said, and the exit status. */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { BadCall } from '../../src/commands/bad-call.ts';
import { type SlidesCall, slides } from '../../src/commands/slides.ts';
import type { Terminal } from '../../src/commands/terminal.ts';
import { scratchFolder } from '../output/outside.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

const good = scratch.at('good.yaml');
writeFileSync(
  good,
  `proofreel: 1
title: Small
puzzle: {boxes: 2x2, givens: "1... ..1. .1.4 ..2."}
video: {size: 320x240, rate: 24, draw: board}
steps:
  - {id: first, from: 2r3, so: r3c1=2}
`,
);
const bad = scratch.at('bad.yaml');
writeFileSync(bad, readFileSync(good, 'utf8').replace('r3c1=2', 'r3c1=3'));
const withFootage = scratch.at('footage.yaml');
writeFileSync(withFootage, readFileSync(good, 'utf8').replace('draw: board', 'draw: overlay, footage: gone.mp4'));

async function called(scene: string, call: SlidesCall) {
  const said: string[] = [];
  const asItIs = (text: string) => text;
  const paint = { bold: asItIs, dim: asItIs, red: asItIs, green: asItIs, yellow: asItIs };
  const terminal: Terminal = {
    out: (text) => said.push(`out: ${text}`),
    err: (text) => said.push(text),
    outPaint: paint,
    errPaint: paint,
    isWatched: false,
    columns: undefined,
  };
  const status = await slides(scene, call, terminal);
  return { status, said: said.join('') };
}

describe('refused, before anything is read or drawn', () => {
  const rows: readonly (readonly [call: SlidesCall, says: RegExp])[] = [
    [{}, /needs -o OUT/],
    [{ out: 'a.odp' }, /\.pdf, \.pptx, \.html or a folder.*not as \.odp/],
    [{ out: 'a.pdf', size: 'A5' }, /no size A5.*(A4|16:9)/],
    [{ out: 'a.pdf', handout: '3' }, /2, 4 or 6/],
    [{ out: 'a.html', handout: '4' }, /--handout makes sheets of paper: write a \.pdf/],
    [{ out: 'a.pptx', handout: '4' }, /--handout makes sheets of paper/],
    [{ out: 'a.pdf', handout: '4', size: '4:3' }, /--size A4 or --size Letter/],
    [{ out: 'a.pdf', builds: true, exercise: true }, /leave one of them out/],
    [{ out: 'a.pdf', lang: 'English please' }, /no tag of a language/],
  ];
  it.each(rows)('%j', async (call, says) => {
    const failure = await called(scratch.at('absent.yaml'), call).catch((error: unknown) => error);
    expect(failure).toBeInstanceOf(BadCall);
    expect(String(failure)).toMatch(says);
  });
});

describe('a scene that is not sound', () => {
  it('is refused with its report, and nothing is written', async () => {
    const { status, said } = await called(bad, { out: scratch.at('bad.pdf') });
    expect(status).toBe(1);
    expect(said).toMatch(/1 step to fix: first/);
    expect(said).toMatch(/no slides, since the scene is not sound; mend it, or add --stamp/);
    expect(existsSync(scratch.at('bad.pdf'))).toBe(false);
  });

  it('is stamped where that is asked for', async () => {
    const { status, said } = await called(bad, { out: scratch.at('bad.pdf'), stamp: true });
    expect(status).toBe(0);
    expect(said).toMatch(/bad\.pdf: 1 page, stamped where it is not proved/);
  });
});

describe('what is written', () => {
  it.each([
    ['a.pdf', /a\.pdf: 1 page\n/],
    ['a.pptx', /a\.pptx: 1 slide\n/],
    ['a.html', /a\.html: 1 slide\n/],
    ['A.PDF', /A\.PDF: 1 page\n/],
  ] as const)('%s', async (out, says) => {
    const { status, said } = await called(good, { out: scratch.at(out) });
    expect(said).toMatch(says);
    expect(status).toBe(0);
  });

  it('a folder of pictures, which is replaced as a whole', async () => {
    const out = scratch.at('pages');
    expect((await called(good, { out, exercise: true })).said).toMatch(/pages: 2 pages/);
    expect(readdirSync(out)).toEqual(['01-first.question.png', 'answers-1.png']);
    await called(good, { out, handout: '2' });
    expect(readdirSync(out)).toEqual(['sheet-01.png']);
  });

  it('never over a folder that holds something else', async () => {
    const out = scratch.at('mine');
    mkdirSync(out);
    writeFileSync(scratch.at('mine/notes.txt'), 'mine');
    await expect(called(good, { out })).rejects.toThrow(/holds 'notes\.txt', which is no slide/);
    expect(readdirSync(out)).toEqual(['notes.txt']);
  });

  it('without the footage, which no slide shows', async () => {
    const { status, said } = await called(withFootage, { out: scratch.at('f.pdf') });
    expect(said).toMatch(/warning.*there is no footage/);
    expect(status).toBe(0);
  });
});

it('says where a scene cannot be read', async () => {
  const scene = scratch.at('unreadable.yaml');
  writeFileSync(scene, 'proofreel: 1\npuzle: {}\nsteps: []\n');
  const { status, said } = await called(scene, { out: scratch.at('u.pdf') });
  expect(status).toBe(2);
  expect(said).toMatch(/unreadable\.yaml:2:1/);
});
