/**
 * Slides for office programs as a package: content types, relations and ids by the rules of ECMA-376, read by jszip and
 * saxes.
 */
import { readFileSync } from 'node:fs';
import { posix } from 'node:path';
import JSZip from 'jszip';
import { PNG } from 'pngjs';
import { SaxesParser } from 'saxes';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { writeSlides } from '../../../src/output/slides/slides.ts';
import { type SizeName, slideSize } from '../../../src/slides/page-size.ts';
import { deck } from '../../slides/make-deck.ts';
import { skyscraper, towers } from '../../staging/stage.ts';
import { scratchFolder } from '../outside.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

const lesson = towers(
  `- {id: a, title: "Two <towers> & more", say: 'Look & "see".', because: skyscraper, ${skyscraper}, show: [{ask: What goes?}, {link: all}, {strike: all}, {note: A street}]}\n- {id: b, so: r6c3=3}`,
);

interface Wishes {
  readonly exercise?: boolean;
  readonly size?: SizeName;
  readonly language?: string;
}

/** One package for each set of wishes. */
const packages = new Map<string, Promise<JSZip>>();
function made(wishes: Wishes = {}): Promise<JSZip> {
  const key = JSON.stringify(wishes);
  const zip = packages.get(key) ?? written(`${packages.size}.pptx`, wishes);
  packages.set(key, zip);
  return zip;
}

async function written(
  name: string,
  { exercise = false, size = '16:9', language = 'en' }: Wishes = {},
): Promise<JSZip> {
  const result = await writeSlides(deck(lesson, { exercise }), {
    out: scratch.at(name),
    kind: 'pptx',
    size: slideSize(size),
    handout: undefined,
    language,
    signal: undefined,
    onProgress: undefined,
  });
  expect(result.kind).toBe('written');
  return JSZip.loadAsync(readFileSync(scratch.at(name)), { checkCRC32: true });
}

interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
}

/** Every element of an XML part with its attributes, by their names as written; throws where it is not well-formed. */
function elementsOf(text: string): Element[] {
  const elements: Element[] = [];
  const parser = new SaxesParser({ xmlns: true });
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', (tag) => {
    const attributes = Object.entries(tag.attributes).map(([name, { value }]) => [name, value] as const);
    elements.push({ name: tag.name, attributes: Object.fromEntries(attributes) });
  });
  parser.write(text.replace(/^\uFEFF/, '')).close();
  return elements;
}

describe.each<readonly [string, Wishes]>([
  ['slides', {}],
  ['an exercise', { exercise: true }],
])('the package of %s', (_, options) => {
  let zip: JSZip;
  const texts = new Map<string, string>();
  beforeAll(async () => {
    zip = await made(options);
    for (const part of Object.keys(zip.files)) texts.set(part, await zip.file(part)!.async('string'));
  });
  const xml = () => [...texts].filter(([part]) => /\.(xml|rels)$/.test(part));

  it('has well-formed parts', () => {
    expect(xml().length).toBeGreaterThan(15);
    for (const [part, text] of xml()) expect(() => elementsOf(text), part).not.toThrow();
  });

  // Part 2 (OPC), 9.1.1: names of parts; 10.1.2.2: a content type for each part, each override for a part that is there.
  it('gives every part one content type, and no part that it has not', () => {
    const types = elementsOf(texts.get('[Content_Types].xml')!);
    const defaults = types
      .filter(({ name }) => name === 'Default')
      .map(({ attributes }) => attributes.Extension!.toLowerCase());
    const overrides = types.filter(({ name }) => name === 'Override').map(({ attributes }) => attributes.PartName!);
    expect(new Set(defaults).size).toBe(defaults.length);
    expect(new Set(overrides).size).toBe(overrides.length);
    const parts = [...texts.keys()].filter((part) => part !== '[Content_Types].xml');
    for (const part of parts) {
      expect(part).toMatch(/^[^/\\]+(\/[^/\\]+)*$/);
      const isTyped =
        overrides.includes(`/${part}`) || defaults.includes(part.slice(part.lastIndexOf('.') + 1).toLowerCase());
      expect(isTyped, part).toBe(true);
    }
    for (const override of overrides) expect(parts).toContain(override.slice(1));
    const lower = parts.map((part) => part.toLowerCase());
    expect(new Set(lower).size).toBe(lower.length);
  });

  // Part 2, 9.3: relations; ids are unique within a part of relations, targets within the package exist.
  it('has relations whose targets are there, and uses none that it has not', () => {
    for (const [part, text] of xml().filter(([name]) => name.endsWith('.rels'))) {
      const relations = elementsOf(text).filter(({ name }) => name === 'Relationship');
      const ids = relations.map(({ attributes }) => attributes.Id!);
      expect(new Set(ids).size, part).toBe(ids.length);
      const source = part.replace(/_rels\/([^/]*)\.rels$/, '$1');
      for (const { attributes } of relations) {
        if (attributes.TargetMode === 'External') continue;
        const target = attributes.Target!;
        const path = target.startsWith('/')
          ? target.slice(1)
          : posix.normalize(posix.join(posix.dirname(source), target));
        expect(texts.has(path), `${part}: ${target}`).toBe(true);
      }
      if (!texts.has(source)) continue;
      const used = elementsOf(texts.get(source)!).flatMap(({ attributes }) =>
        Object.entries(attributes)
          .filter(([name]) => /^r:(id|embed|link)$/.test(name))
          .map(([, value]) => value),
      );
      for (const id of used) expect(ids, source).toContain(id);
    }
  });

  // Part 1, 20.1.2.2.8 (cNvPr): ids are unique within a slide; 19.2.1.33 (sldId): from 256 on, unique.
  it('has ids that are unique', () => {
    for (const [part, text] of xml().filter(([name]) => /^ppt\/(slides|notesSlides)\/[^_]/.test(name))) {
      const ids = elementsOf(text)
        .filter(({ name }) => name === 'p:cNvPr')
        .map(({ attributes }) => attributes.id!);
      expect(ids.length).toBeGreaterThan(1);
      expect(new Set(ids).size, part).toBe(ids.length);
    }
    const slides = elementsOf(texts.get('ppt/presentation.xml')!).filter(({ name }) => name === 'p:sldId');
    const ids = slides.map(({ attributes }) => Number(attributes.id));
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toBeGreaterThanOrEqual(256);
    expect(slides.length).toBe([...texts.keys()].filter((part) => /^ppt\/slides\/slide\d+\.xml$/.test(part)).length);
  });

  it('has a title on every slide', () => {
    for (const [part, text] of xml().filter(([name]) => /^ppt\/slides\/slide/.test(name))) {
      const titles = elementsOf(text).filter(({ name, attributes }) => name === 'p:ph' && attributes.type === 'title');
      expect(titles.length, part).toBe(1);
    }
  });

  it('has a sharp picture a slide, told in words', async () => {
    const pictures = [...texts.keys()].filter((part) => part.startsWith('ppt/media/'));
    expect(pictures.length).toBeGreaterThan(1);
    for (const part of pictures) {
      const { width, height } = PNG.sync.read(await zip.file(part)!.async('nodebuffer'));
      expect([width, height]).toEqual([1600, 1600]);
    }
    const told = xml()
      .filter(([name]) => /^ppt\/slides\/slide/.test(name))
      .flatMap(([, text]) => elementsOf(text))
      .filter(({ name, attributes }) => name === 'p:cNvPr' && attributes.name === 'Board')
      .map(({ attributes }) => attributes.descr);
    expect(told.length).toBe(pictures.length);
    for (const words of told) expect(words).toMatch(/^The board\./);
  });
});

describe('what the slides say', () => {
  it('stands in text boxes and speaker notes', async () => {
    const zip = await made();
    const slide = await zip.file('ppt/slides/slide2.xml')!.async('string');
    for (const words of ['Two &lt;towers&gt; &amp; more', 'skyscraper', 'r5c1≠3', 'A street'])
      expect(slide).toContain(words);
    expect(await zip.file('ppt/notesSlides/notesSlide2.xml')!.async('string')).toContain('Look &amp; &quot;see&quot;.');
    const front = await zip.file('ppt/slides/slide1.xml')!.async('string');
    expect(front).toContain('What goes?');
    expect(front).not.toContain('r5c1');
  });

  it('is marked with its language', async () => {
    const zip = await made({ language: 'fr', size: '4:3' });
    const slide = await zip.file('ppt/slides/slide2.xml')!.async('string');
    expect(slide).toContain('lang="fr"');
    expect(slide).not.toContain(' lang="en-US"');
  });

  it('keeps answers off the slides of an exercise', async () => {
    const zip = await made({ exercise: true });
    const all = await Promise.all(
      ['slides/slide1', 'slides/slide2', 'notesSlides/notesSlide1'].map((part) =>
        zip.file(`ppt/${part}.xml`)!.async('string'),
      ),
    );
    for (const text of all) expect(text).not.toMatch(/r5c1|r6c3|Look/);
    expect(await zip.file('ppt/slides/slide3.xml')!.async('string')).toMatch(/Answers.*r5c1.*r6c3=3/s);
  });
});

it('is the same each time', async () => {
  await written('one.pptx');
  vi.useFakeTimers({ toFake: ['Date'], now: Date.UTC(2031, 4, 17, 8, 30) });
  await written('two.pptx');
  vi.useRealTimers();
  expect(readFileSync(scratch.at('one.pptx')).equals(readFileSync(scratch.at('two.pptx')))).toBe(true);
});

it.each([
  ['4:3', 9144000, 6858000],
  ['Letter', 10058400, 7772400],
] as const)('has slides of %s', async (size, cx, cy) => {
  // A point is 12700 English metric units (ECMA-376 Part 1, 20.1.2.1).
  const zip = await made(size === '4:3' ? { language: 'fr', size } : { size });
  const [slide] = elementsOf(await zip.file('ppt/presentation.xml')!.async('string')).filter(
    ({ name }) => name === 'p:sldSz',
  );
  expect(Math.abs(Number(slide!.attributes.cx) - cx)).toBeLessThan(100);
  expect(Math.abs(Number(slide!.attributes.cy) - cy)).toBeLessThan(100);
});
