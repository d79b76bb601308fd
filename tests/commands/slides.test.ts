/** `proofreel slides` as it is called: what is refused, what is said, and the exit status. */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { scratchFolder } from '../output/outside.ts';
import { run } from './run.ts';

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

describe('refused, before anything is read or drawn', () => {
  const rows: readonly (readonly [call: readonly string[], says: RegExp])[] = [
    [['slides', 'absent.yaml'], /needs -o OUT/],
    [['slides', 'absent.yaml', '-o', 'a.odp'], /\.pdf, \.pptx, \.html or a folder.*not as \.odp/],
    [['slides', 'absent.yaml', '-o', 'a.pdf', '--size', 'A5'], /A5 is not a size.*(A4|16:9)/],
    [['slides', 'absent.yaml', '-o', 'a.pdf', '--handout', '3'], /2, 4 or 6/],
    [['slides', 'absent.yaml', '-o', 'a.html', '--handout', '4'], /--handout makes sheets of paper: write a \.pdf/],
    [['slides', 'absent.yaml', '-o', 'a.pptx', '--handout', '4'], /--handout makes sheets of paper/],
    [['slides', 'absent.yaml', '-o', 'a.pdf', '--handout', '4', '--size', '4:3'], /--size A4 or --size Letter/],
    [['slides', 'absent.yaml', '-o', 'a.pdf', '--builds', '--exercise'], /leave one of them out/],
    [['slides', 'absent.yaml', '-o', 'a.pdf', '--lang', 'English please'], /not a language tag/],
  ];
  it.each(rows)('%j', async (call, says) => {
    expect(await run(...call)).toEqual({ status: 2, out: '', err: expect.stringMatching(says) });
  });
});

describe('a scene that is not sound', () => {
  it('is refused with its report, and nothing is written', async () => {
    const { status, err } = await run('slides', bad, '-o', scratch.at('bad.pdf'));
    expect(status).toBe(1);
    expect(err).toMatch(/1 step to fix: first/);
    expect(err).toMatch(/no slides, since the scene is not sound; fix it, or add --stamp/);
    expect(existsSync(scratch.at('bad.pdf'))).toBe(false);
  });

  it('is stamped where that is asked for', async () => {
    const { status, err } = await run('slides', bad, '-o', scratch.at('bad.pdf'), '--stamp');
    expect(status).toBe(0);
    expect(err).toMatch(/bad\.pdf: 1 page, stamped where it is not proved/);
  });
});

describe('what is written', () => {
  it.each([
    ['a.pdf', /a\.pdf: 1 page\n/],
    ['a.pptx', /a\.pptx: 1 slide\n/],
    ['a.html', /a\.html: 1 slide\n/],
    ['A.PDF', /A\.PDF: 1 page\n/],
  ] as const)('%s', async (out, says) => {
    const { status, err } = await run('slides', good, '-o', scratch.at(out));
    expect(err).toMatch(says);
    expect(status).toBe(0);
  });

  it('a folder of pictures, which is replaced as a whole', async () => {
    const out = scratch.at('pages');
    expect((await run('slides', good, '-o', out, '--exercise')).err).toMatch(/pages: 2 pages/);
    expect(readdirSync(out)).toEqual(['01-first.question.png', 'answers-1.png']);
    await run('slides', good, '-o', out, '--handout', '2');
    expect(readdirSync(out)).toEqual(['sheet-01.png']);
  });

  it('never over a folder that holds something else', async () => {
    const out = scratch.at('mine');
    mkdirSync(out);
    writeFileSync(scratch.at('mine/notes.txt'), 'mine');
    const { status, err } = await run('slides', good, '-o', out);
    expect([status, err]).toEqual([2, expect.stringMatching(/contains 'notes\.txt', which is not a slide/)]);
    expect(readdirSync(out)).toEqual(['notes.txt']);
  });

  it('without the footage, which no slide shows', async () => {
    const { status, err } = await run('slides', withFootage, '-o', scratch.at('f.pdf'));
    expect(err).toMatch(/warning.*there is no footage/);
    expect(status).toBe(0);
  });
});

it('says where a scene cannot be read', async () => {
  const scene = scratch.at('unreadable.yaml');
  writeFileSync(scene, 'proofreel: 1\npuzle: {}\nsteps: []\n');
  const { status, err } = await run('slides', scene, '-o', scratch.at('u.pdf'));
  expect(status).toBe(2);
  expect(err).toMatch(/unreadable\.yaml:2:1/);
});

it('--look draws with another look', async () => {
  const [own, dark] = [scratch.at('own-look'), scratch.at('dark-look')];
  expect((await run('slides', good, '-o', own)).status).toBe(0);
  expect((await run('slides', good, '-o', dark, '--look', 'assets/looks/bluehour.yaml')).status).toBe(0);
  const [name] = readdirSync(own);
  expect(readFileSync(scratch.at(`dark-look/${name}`)).equals(readFileSync(scratch.at(`own-look/${name}`)))).toBe(
    false,
  );
});
