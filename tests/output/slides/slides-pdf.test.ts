/** Slides and handouts as PDF, looked at by poppler and qpdf. */
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { createCanvas } from 'canvas';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { withLanguage } from '../../../src/output/slides/pdf-language.ts';
import { writeSlides } from '../../../src/output/slides/slides.ts';
import { type HandoutCount, handoutCounts } from '../../../src/slides/handout.ts';
import { handoutSize, type sizeNames, slideSize } from '../../../src/slides/page-size.ts';
import { describeWith } from '../../programs.ts';
import { deck } from '../../slides/make-deck.ts';
import { skyscraper, towers } from '../../staging/stage.ts';
import { scratchFolder } from '../outside.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

const steps = [
  `- {id: a, title: "Über zwei Türme", say: "Look here, and there.", because: skyscraper, ${skyscraper}}`,
  ...Array.from({ length: 6 }, (_, index) => `- {id: s${index}, title: "Step of words ${index}", say: Nothing new.}`),
  '- {id: z, title: The end, say: "שלום, she said.", so: r6c3=3}',
].join('\n');
const lesson = towers(steps).replace('proofreel: 1', 'proofreel: 1\ntitle: Two towers');

async function written(
  name: string,
  options: { handout?: HandoutCount; exercise?: boolean; size?: (typeof sizeNames)[number] } = {},
) {
  const { handout, exercise = false, size } = options;
  const result = await writeSlides(deck(lesson, { exercise }), {
    out: scratch.at(name),
    kind: 'pdf',
    size: handout === undefined ? slideSize(size ?? '16:9') : handoutSize(size),
    handout,
    language: 'de',
    signal: undefined,
    onProgress: undefined,
  });
  if (result.kind !== 'written') throw new Error(result.kind);
  return result;
}

const run = (program: string, ...words: string[]): string => execFileSync(program, words, { encoding: 'utf8' });

/** The entries of the catalog, as qpdf has them. */
function catalogOf(name: string): string {
  const root = /\/Root (\d+) 0 R/.exec(run('qpdf', '--show-object=trailer', scratch.at(name)))?.[1];
  return run('qpdf', `--show-object=${root}`, scratch.at(name));
}

describeWith(['qpdf', 'pdfinfo'], 'the language of a PDF', () => {
  // As cairo writes them up to 1.16, and from 1.18 on, with objects and cross-references in streams; qpdf makes either.
  it.each(['disable', 'generate'])('is set where object streams are: %s', (streams) => {
    const canvas = createCanvas(200, 100, 'pdf');
    canvas.getContext('2d').fillRect(10, 10, 50, 50);
    writeFileSync(scratch.at('plain.pdf'), canvas.toBuffer('application/pdf', { title: 'Plain' }));
    run('qpdf', `--object-streams=${streams}`, scratch.at('plain.pdf'), scratch.at('made.pdf'));
    writeFileSync(scratch.at('told.pdf'), withLanguage(readFileSync(scratch.at('made.pdf')), 'pt-BR'));
    expect(catalogOf('made.pdf')).not.toContain('/Lang');
    expect(catalogOf('told.pdf')).toContain('/Lang (pt-BR)');
    expect(run('qpdf', '--check', scratch.at('told.pdf'))).toMatch(/No syntax or stream encoding errors found/);
    expect(run('pdfinfo', scratch.at('told.pdf'))).toMatch(/^Title: +Plain$.*^Pages: +1$/ms);
  });

  it('is not set twice', () => {
    const once = withLanguage(readFileSync(scratch.at('made.pdf')), 'en');
    expect(() => withLanguage(once, 'en')).toThrow(/without a language/);
  });
});

describeWith(['pdfinfo', 'pdffonts', 'pdftotext', 'qpdf'], 'a PDF of slides', () => {
  beforeAll(async () => {
    await written('slides.pdf');
  });

  it('is one that qpdf finds no fault with', () => {
    expect(run('qpdf', '--check', scratch.at('slides.pdf'))).toMatch(/No syntax or stream encoding errors found/);
  });

  it('has a page a step, of the size asked for, and the lesson as its title', () => {
    const info = run('pdfinfo', scratch.at('slides.pdf'));
    expect(info).toMatch(/^Pages: +8$/m);
    expect(info).toMatch(/^Page size: +960 x 540 pts/m);
    expect(info).toMatch(/^Title: +Two towers$/m);
  });

  it('tells its language, and shows its title', () => {
    const catalog = catalogOf('slides.pdf');
    expect(catalog).toContain('/Lang (de)');
    expect(catalog).toContain('/DisplayDocTitle true');
  });

  it('has every font in it', () => {
    const fonts = run('pdffonts', scratch.at('slides.pdf'))
      .split('\n')
      .slice(2)
      .filter((line) => line !== '');
    expect(fonts.length).toBeGreaterThan(2);
    // Columns from the right: object number and generation, unicode, subset, embedded.
    for (const font of fonts) expect(font.trim().split(/\s+/).slice(-5, -2), font).toEqual(['yes', 'yes', 'yes']);
  });

  it('has words that can be selected and found', () => {
    const text = run('pdftotext', '-f', '1', '-l', '1', scratch.at('slides.pdf'), '-');
    for (const words of ['Two towers', 'Über zwei Türme', 'skyscraper', 'r5c1≠3', 'r6c46≠3', 'Look here, and there.'])
      expect(text).toContain(words);
    expect(text).toMatch(/^1 ?\/ ?8$/m);
  });

  it('has vectors and no pictures in it', () => {
    expect(readFileSync(scratch.at('slides.pdf'), 'latin1')).not.toMatch(/\/Subtype *\/Image/);
  });

  it('is the same each time', async () => {
    await written('again.pdf');
    expect(readFileSync(scratch.at('again.pdf')).equals(readFileSync(scratch.at('slides.pdf')))).toBe(true);
  });

  // ISO 216: A4 is 210 x 297 mm; ANSI Y14.1: Letter is 8.5 x 11 in; a point is 1/72 in.
  it.each([
    ['16:9', /^Page size: +960 x 540 pts/m],
    ['4:3', /^Page size: +720 x 540 pts/m],
    ['A4', /^Page size: +842 x 595 pts \(A4\)/m],
    ['Letter', /^Page size: +792 x 612 pts \(letter\)/m],
  ] as const)('of %s', async (size, line) => {
    await written('size.pdf', { size });
    expect(run('pdfinfo', scratch.at('size.pdf'))).toMatch(line);
  });

  it.each(handoutCounts)('as a handout holds %d steps a sheet', async (handout) => {
    const { count } = await written('handout.pdf', { handout });
    expect(count).toBe(Math.ceil(8 / handout));
    const info = run('pdfinfo', scratch.at('handout.pdf'));
    expect(info).toMatch(new RegExp(`^Pages: +${count}$`, 'm'));
    expect(info).toMatch(/^Page size: +595 x 842 pts \(A4\)/m);
    const text = run('pdftotext', scratch.at('handout.pdf'), '-');
    for (const words of ['1. Über zwei Türme', '8. The end', 'r6c3=3']) expect(text).toContain(words);
  });

  it('as an exercise asks first, and answers on the last page', async () => {
    const { count } = await written('exercise.pdf', { exercise: true });
    const questions = run('pdftotext', '-l', String(count - 1), scratch.at('exercise.pdf'), '-');
    expect(questions).toContain('Which candidates go?');
    for (const answer of ['r5c1≠3', 'r6c3=3', 'Look here']) expect(questions).not.toContain(answer);
    const answers = run('pdftotext', '-f', String(count), scratch.at('exercise.pdf'), '-');
    for (const answer of ['Answers', 'r5c1≠3', 'r6c3=3', 'Look here']) expect(answers).toContain(answer);
  });
});

describe('a file that is no PDF', () => {
  it('is given no language', () => {
    expect(() => withLanguage(Buffer.from('%PDF-1.5\n'), 'en')).toThrow(/ends with its cross-references/);
  });
});

describe('what stands in the way', () => {
  const call = (out: string, kind: 'pdf' | 'folder') =>
    writeSlides(deck(lesson), {
      out,
      kind,
      size: slideSize('16:9'),
      handout: undefined,
      language: 'en',
      signal: undefined,
      onProgress: undefined,
    });

  it('is said: a folder by the name of the file', async () => {
    expect(await call(scratch.folder, 'pdf')).toEqual({
      kind: 'refused',
      message: expect.stringMatching(/is a folder/),
    });
  });

  it('is said: a folder that holds something else', async () => {
    await written('other.pdf');
    expect(await call(scratch.folder, 'folder')).toEqual({
      kind: 'refused',
      message: expect.stringMatching(/is not a slide/),
    });
  });

  it('leaves nothing behind when it is interrupted', async () => {
    const before = scratch.list();
    const controller = new AbortController();
    const result = await writeSlides(deck(lesson), {
      out: scratch.at('stopped.pdf'),
      kind: 'pdf',
      size: slideSize('16:9'),
      handout: undefined,
      language: 'en',
      signal: controller.signal,
      onProgress: ({ done }) => done === 2 && controller.abort(),
    });
    expect(result).toEqual({ kind: 'interrupted' });
    expect(scratch.list()).toEqual(before);
  });
});
