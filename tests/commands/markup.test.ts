/**
 * A scene of a stranger with markup in every text that it can have: it stands in what is written as words, and runs
 * nothing.
 */
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import JSZip from 'jszip';
import { type Browser, chromium } from 'playwright-core';
import { SaxesParser } from 'saxes';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { scratchFolder } from '../output/outside.ts';
import { describeWith } from '../programs.ts';
import { run } from './run.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

/** Ends whatever a text may stand in, and would set `window.ran` or ask for a picture. `n` tells the fields apart. */
const hostile = (n: string): string =>
  `${n}"'></style></title></text></script><script>window.ran='${n}'</script><img src="http://127.0.0.1:9/${n}" onerror="window.ran='${n}'"><svg/onload=window.ran=1>]]>--><a href="javascript:window.ran=1">x</a>&lt;b&gt;) /JS (x`;

/** Of each field: a narration that is spoken shows in captions, a look's name nowhere. */
function sceneWith(words: (field: string) => string): string {
  const yaml = (field: string): string => JSON.stringify(words(field));
  const group = JSON.stringify(words('group').replaceAll(/[ ,]/g, '_'));
  const label = JSON.stringify(`3r6c3 ${JSON.stringify(words('label').replaceAll('"', ''))}`);
  return `proofreel: 1
title: ${yaml('title')}
puzzle: {boxes: 2x3, setter: ${yaml('setter')}, givens: ...... ..2.6. .3.... ...41. ..6..1 5...2.}
video: {size: 640x360, rate: 24, subtitles: on}
look: look.yaml
groups: {${group}: blue}
versions: {${yaml('version')}: {size: 360x640}}
steps:
  - id: towers
    title: ${yaml('heading')}
    say: ${yaml('say')}
    chapter: ${yaml('chapter')}
    called: ${yaml('called')}
    chain: (3)r6c3=r1c3-r1c5=r5c5
    so: r5c1<>3 r6c46<>3
    show:
      - {ask: ${yaml('ask')}}
      - {note: ${yaml('note')}}
      - {label: ${label}}
      - {link: all, group: ${group}}
      - {strike: all}
  - {id: trap, title: ${yaml('trap')}, say: ${yaml('said')}, fails: true, from: 3r1, so: r1c1<>3}
  - {id: corner, chapter: ${yaml('later')}, so: r6c3=3}
`;
}
/** What must be found as words in a file of slides. */
const onSlides = ['title', 'heading', 'say', 'ask', 'note'];

beforeAll(() => {
  writeFileSync(scratch.at('look.yaml'), `name: ${JSON.stringify(hostile('look'))}\n`);
  writeFileSync(scratch.at('scene.yaml'), sceneWith(hostile));
  writeFileSync(
    scratch.at('plain.yaml'),
    sceneWith((field) => field),
  );
});

async function made(verb: string, out: string, ...options: readonly string[]): Promise<string> {
  const ran = await run(verb, scratch.at('scene.yaml'), '-o', scratch.at(out), ...options);
  expect(ran).toMatchObject({ status: 0 });
  return scratch.at(out);
}

describeWith(['chromium'], 'a page', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
  });
  afterAll(() => browser.close());

  /** Opens the file, as one does; gives what ran, what was asked for, and what stands there. */
  async function opened(file: string) {
    const page = await browser.newPage();
    const requests: string[] = [];
    const faults: string[] = [];
    page.on('request', (request) => requests.push(request.url()));
    page.on('console', (message) => {
      if (message.type() === 'error') faults.push(message.text());
    });
    await page.goto(`file://${file}`);
    await page.waitForTimeout(500);
    for (let slides = 0; slides < 4; slides++) await page.keyboard.press('ArrowRight');
    const found = await page.evaluate(`({
      ran: window.ran,
      scripts: document.scripts.length,
      foreign: [...document.querySelectorAll('img, iframe, object, embed, a, form, base, link, foreignObject')].length,
      handlers: [...document.querySelectorAll('*')].filter((each) => [...each.attributes].some(({ name }) => /^on/i.test(name))).length,
      words: document.documentElement.textContent,
    })`);
    await page.close();
    return { ...(found as Record<'ran' | 'scripts' | 'foreign' | 'handlers' | 'words', unknown>), requests, faults };
  }

  it.each([['slides.html'], ['exercise.html', '--exercise'], ['builds.html', '--builds']])(
    '%s',
    async (out, ...options) => {
      const file = await made('slides', out, ...options);
      const found = await opened(file);
      expect(found).toMatchObject({ ran: undefined, foreign: 0, handlers: 0, faults: [] });
      expect(found.requests).toEqual([
        `file://${file}`,
        ...found.requests.slice(1).filter((url) => url.startsWith('data:')),
      ]);
      for (const field of onSlides) expect(found.words).toContain(hostile(field));
      // The program and the data of the page, as where the words are plain.
      const plain = scratch.at(`plain-${out}`);
      expect(await run('slides', scratch.at('plain.yaml'), '-o', plain, ...options)).toMatchObject({ status: 0 });
      expect(found.scripts).toBe((await opened(plain)).scripts);
    },
  );

  it('captions as a track of a video', async () => {
    const file = await made('captions', 'captions.vtt', '--describe');
    for (const name of [file, scratch.at('captions.descriptions.vtt')]) {
      const page = await browser.newPage();
      await page.setContent('<video></video>');
      const data = Buffer.from(readFileSync(name)).toString('base64');
      const cues = (await page.evaluate(`(async () => {
        const track = document.createElement('track');
        track.src = 'data:text/vtt;base64,${data}';
        track.default = true;
        document.querySelector('video').append(track);
        track.track.mode = 'hidden';
        await new Promise((resolve) => track.addEventListener('load', resolve));
        return [...track.track.cues].map((cue) => {
          const box = document.createElement('div');
          box.append(cue.getCueAsHTML());
          document.body.append(box);
          return { elements: box.querySelectorAll('*:not(br)').length, text: box.textContent };
        });
      })()`)) as { elements: number; text: string }[];
      expect(cues.length).toBeGreaterThan(1);
      expect(cues.map(({ elements }) => elements)).toEqual(cues.map(() => 0));
      expect(await page.evaluate('window.ran')).toBeUndefined();
      await page.close();
      const all = cues
        .map(({ text }) => text)
        .join(' ')
        .replaceAll(/\s/g, '');
      if (name === file) expect(all).toContain(hostile('say').replaceAll(/\s/g, ''));
    }
  });

  it('the plan of a puzzle as a drawing', async () => {
    const file = await made('plan', 'tree.svg', '--tree', '--seconds', '1');
    expect(await opened(file)).toMatchObject({ ran: undefined, scripts: 0, foreign: 0, handlers: 0 });
  });
});

it('slides of an office program: words in whole parts, and nothing that leads elsewhere', async () => {
  const zip = await JSZip.loadAsync(readFileSync(await made('slides', 'slides.pptx')));
  let words = '';
  for (const [name, part] of Object.entries(zip.files)) {
    if (!/\.(xml|rels)$/.test(name)) continue;
    const parser = new SaxesParser();
    parser.on('error', (fault) => expect.unreachable(`${name}: ${fault.message}`));
    parser.on('opentag', ({ name: tag, attributes }) => {
      expect(attributes).not.toHaveProperty('TargetMode', 'External');
      expect(tag).not.toMatch(/hlinkClick|oleObj|script|control|img/);
    });
    parser.on('text', (text) => {
      words += text;
    });
    parser.write(await part.async('string')).close();
  }
  expect(Object.keys(zip.files).filter((name) => /vba|embeddings|activeX/i.test(name))).toEqual([]);
  for (const field of onSlides) expect(words.replaceAll(/\s/g, '')).toContain(hostile(field).replaceAll(/\s/g, ''));
});

describeWith(['qpdf', 'pdftotext'], 'slides as PDF', () => {
  it.each([['slides.pdf'], ['handout.pdf', '--handout', '2']])('%s holds no action', async (out, ...options) => {
    const file = await made('slides', out, ...options);
    execFileSync('qpdf', ['--check', file]);
    const objects = execFileSync('qpdf', ['--qdf', '--object-streams=disable', file, '-'], { maxBuffer: 2 ** 28 });
    // Of what lies outside the pages' own drawing: strings and streams may say anything.
    const plain = objects
      .toString('latin1')
      .replaceAll(/\bstream\r?\n[\s\S]*?endstream/g, '')
      .replaceAll(/\((?:[^()\\]|\\[\s\S])*\)|<[0-9a-fA-F\s]*>/g, '');
    expect(plain).toContain('/Catalog');
    expect(plain).not.toMatch(/\/(JavaScript|JS|AA|OpenAction|Launch|URI|SubmitForm|GoToR|EmbeddedFile|RichMedia)\b/);
    const text = execFileSync('pdftotext', ['-raw', file, '-'], { encoding: 'utf8' });
    expect(text).toContain('window.ran');
  });
});

describe('beside the video', () => {
  it('SRT has no tags, and no arrow but those of times', async () => {
    const text = readFileSync(await made('captions', 'captions.srt'), 'utf8');
    expect(text).not.toContain('<');
    for (const line of text.split('\n')) if (line.includes('-->')) expect(line).toMatch(/^[\d:,]+ --> [\d:,]+$/);
  });

  it('a timeline is JSON with the words as they are', async () => {
    const text = readFileSync(await made('chapters', 'lesson.otio'), 'utf8');
    JSON.parse(text);
    for (const field of ['heading', 'chapter']) expect(text).toContain(JSON.stringify(hostile(field)).slice(1, -1));
  });

  it('a list of chapters has their names as they are', async () => {
    const text = (await run('chapters', scratch.at('scene.yaml'))).out;
    expect(text).toContain(hostile('chapter'));
  });
});
