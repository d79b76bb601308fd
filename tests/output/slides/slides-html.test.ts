/** A page of slides as a browser has it: Chromium by playwright, rules for readers of screens by axe-core. */
import { readFileSync, writeFileSync } from 'node:fs';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeSlides } from '../../../src/output/slides/slides.ts';
import { slideSize } from '../../../src/slides/page-size.ts';
import { describeWith } from '../../programs.ts';
import { deck } from '../../slides/make-deck.ts';
import { skyscraper, towers } from '../../staging/stage.ts';
import { scratchFolder } from '../outside.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

const lesson = towers(
  [
    `- {id: a, title: "Two </script> & <towers>", say: "Look, there.", because: skyscraper, ${skyscraper}, show: [{ask: What goes?}, {link: all, at: +1}, {strike: all, at: +2}, {note: A street}]}`,
    '- {id: b, title: Row six, so: r6c3=3}',
    `- {id: c, title: A long one, say: "${'Much is said here of little. '.repeat(30)}", show: [{fill: 1}]}`,
  ].join('\n'),
).replace('proofreel: 1', 'proofreel: 1\ntitle: Two towers');

async function written(name: string, exercise = false): Promise<string> {
  const result = await writeSlides(deck(lesson, { exercise }), {
    out: scratch.at(name),
    kind: 'html',
    size: slideSize('16:9'),
    handout: undefined,
    language: 'en',
    signal: undefined,
    onProgress: undefined,
  });
  expect(result.kind).toBe('written');
  return scratch.at(name);
}

describe('the file', () => {
  it('names nothing outside itself, and is the same each time', async () => {
    const page = readFileSync(await written('one.html'), 'utf8');
    const links = [...page.matchAll(/(?:src|href|action|data|url)\s*[=(]\s*["']?([^"')\s>]+)/g)].map(
      (match) => match[1]!,
    );
    expect(links.filter((link) => /^(https?:)?\/\//.test(link))).toEqual([]);
    expect(readFileSync(await written('two.html'), 'utf8')).toBe(page);
  });

  it('tells its language, and lets nothing in from outside', async () => {
    const page = readFileSync(scratch.at('one.html'), 'utf8');
    expect(page).toContain('<html lang="en">');
    expect(page).toContain("default-src 'none'");
  });

  it('of an exercise has no answer before its last page', async () => {
    const page = readFileSync(await written('exercise.html', true), 'utf8');
    const shown = page.slice(0, page.indexOf('<section class="slide answers"'));
    for (const answer of ['r5c1', 'r6c3', 'crossed out', 'Look, there']) expect(shown).not.toContain(answer);
    expect(page).toMatch(/class="slide answers".*r5c1≠3.*r6c3=3/s);
  });
});

describeWith(['chromium'], 'in a browser', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
    await written('slides.html');
    await written('exercise.html', true);
    // As a browser has it that runs no scripts, but for those of the test.
    const page = readFileSync(scratch.at('slides.html'), 'utf8');
    writeFileSync(scratch.at('unscripted.html'), page.replace(/<script>.*?<\/script>/s, ''));
  });
  afterAll(() => browser.close());

  /** The page, and every request that it makes besides the file itself. */
  async function opened(name: string, options: BrowserContextOptions = {}, hash = '') {
    const context = await browser.newContext({ viewport: { width: 1280, height: 720 }, ...options });
    const page = await context.newPage();
    page.setDefaultTimeout(50_000); // a machine may be busy
    const requests: string[] = [];
    const faults: string[] = [];
    page.on('request', (request) => requests.push(request.url()));
    page.on('pageerror', (error) => faults.push(error.message));
    page.on('console', (message) => message.type() === 'error' && faults.push(message.text()));
    await page.goto(`file://${scratch.at(name)}${hash}`);
    const asked = () => requests.filter((url) => !url.startsWith('data:')).slice(1);
    return { page, asked, faults, close: () => context.close() };
  }

  const shown = (page: Page) =>
    page.$$eval('.slide', (slides) => slides.filter((slide) => slide.checkVisibility()).map(({ id }) => id));

  it('shows one slide, and goes on and back by keys', async () => {
    const { page, asked, faults, close } = await opened('slides.html');
    expect(await shown(page)).toEqual(['a.question']);
    const steps = [
      ['ArrowRight', 'a'],
      [' ', 'b'],
      ['PageDown', 'c'],
      ['ArrowRight', 'c'],
      ['ArrowLeft', 'b'],
      ['Shift+ ', 'a'],
      ['End', 'c'],
      ['Home', 'a.question'],
      ['PageUp', 'a.question'],
    ] as const;
    for (const [key, id] of steps) {
      await page.keyboard.press(key);
      expect(await shown(page), key).toEqual([id]);
      expect(await page.evaluate('document.activeElement.id'), key).toBe(id);
    }
    expect(new URL(page.url()).hash).toBe('#a.question');
    expect(asked()).toEqual([]);
    expect(faults).toEqual([]);
    await close();
  });

  it('presses its buttons by the keyboard alone', async () => {
    const { page, close } = await opened('slides.html');
    await page.focus('[data-does="next"]');
    await page.keyboard.press(' ');
    expect(await shown(page)).toEqual(['a']);
    await page.focus('[data-does="back"]');
    await page.keyboard.press('Enter');
    expect(await shown(page)).toEqual(['a.question']);
    expect(await page.isDisabled('[data-does="back"]')).toBe(true);
    await close();
  });

  it('goes on and back by touch', async () => {
    const { page, close } = await opened('slides.html', { hasTouch: true });
    const swipe = async (from: number, to: number, down = 0) => {
      const session = await page.context().newCDPSession(page);
      const point = (x: number, y: number) => ({ touchPoints: [{ x, y }] });
      await session.send('Input.dispatchTouchEvent', { type: 'touchStart', ...point(from, 300) });
      await session.send('Input.dispatchTouchEvent', { type: 'touchMove', ...point(to, 300 + down) });
      await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    };
    await swipe(600, 400);
    await expect.poll(() => shown(page), { timeout: 20_000 }).toEqual(['a']);
    await swipe(400, 600);
    await expect.poll(() => shown(page), { timeout: 20_000 }).toEqual(['a.question']);
    await swipe(600, 580, 200);
    expect(await shown(page)).toEqual(['a.question']);
    await close();
  });

  it('plays the motion of a step, and then shows its picture', async () => {
    const { page, faults, close } = await opened('slides.html');
    await page.keyboard.press('ArrowRight');
    expect(await page.locator('#a canvas').count()).toBe(1);
    await expect.poll(() => page.locator('#a canvas').count(), { timeout: 40_000 }).toBe(0);
    expect(faults).toEqual([]);
    await close();
  });

  it('draws the motion as the picture is drawn', async () => {
    const { page, close } = await opened('slides.html', {}, '#a');
    const picture = page.locator('#a .picture');
    const still = PNG.sync.read(await picture.screenshot());
    // The last frame but a few of the motion, caught by stopping the clock that it goes by.
    await page.evaluate(`
      window.wanted = 0;
      const begin = performance.now();
      performance.now = () => begin + 1000 * window.wanted;
    `);
    await page.click('[data-does="play"]');
    let [best, worst] = [1, 0];
    for (const wanted of [0.2, ...Array.from({ length: 50 }, (_, tenth) => 1.5 + tenth / 12)]) {
      await page.evaluate(`window.wanted = ${wanted}`);
      await page.waitForTimeout(60);
      if ((await page.locator('#a canvas').count()) === 0) break;
      const off = difference(still, PNG.sync.read(await picture.screenshot()));
      [best, worst] = [Math.min(best, off), Math.max(worst, off)];
    }
    expect(best).toBeLessThan(0.005);
    // And it is looked at closely enough to see a strike that is not there yet.
    expect(worst).toBeGreaterThan(0.015);
    await close();
  });

  it('does not move for whoever wants no motion, unless it is asked to', async () => {
    const { page, close } = await opened('slides.html', { reducedMotion: 'reduce' });
    await page.keyboard.press('ArrowRight');
    expect(await page.locator('#a canvas').count()).toBe(0);
    await page.click('[data-does="play"]');
    expect(await page.locator('#a canvas').count()).toBe(1);
    await close();
  });

  it('shows everything without scripts', async () => {
    const { page, asked, close } = await opened('slides.html', { javaScriptEnabled: false });
    for (const id of ['a.question', 'a', 'b', 'c']) {
      expect(await page.locator(`[id="${id}"] svg`).isVisible()).toBe(true);
      expect(await page.locator(`[id="${id}"] h2`).isVisible()).toBe(true);
    }
    expect(await page.locator('button').first().isVisible()).toBe(false);
    expect(asked()).toEqual([]);
    await close();
  });

  it('is set in the typeface that it carries', async () => {
    const { page, close } = await opened('slides.html');
    const loaded = await page.evaluate(`Promise.all(
      [400, 500, 600, 700].map(async (weight) =>
        (await document.fonts.load(weight + " 20px 'IBM Plex Sans'")).map(({ status }) => status)),
    )`);
    expect(loaded).toEqual([['loaded'], ['loaded'], ['loaded'], ['loaded']]);
    await close();
  });

  it('keeps its words on the slide, wide, small and upright', async () => {
    const { page, close } = await opened('slides.html', { reducedMotion: 'reduce' });
    for (const [width, height] of [
      [1280, 720],
      [640, 360],
      [390, 844],
    ] as const) {
      await page.setViewportSize({ width, height });
      await page.keyboard.press('Home');
      for (const _slide of ['a.question', 'a', 'b', 'c']) {
        const over = await page.$eval('.slide.shown', (slide) => {
          const box = slide.getBoundingClientRect();
          return [...slide.querySelectorAll('h2, p, li')]
            .map((words) => words.getBoundingClientRect())
            .filter(
              (words) => words.right > box.right + 1 || words.bottom > box.bottom + 1 || words.left < box.left - 1,
            ).length;
        });
        expect(over).toBe(0);
        await page.keyboard.press('ArrowRight');
      }
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width);
    }
    await close();
  });

  it('prints a page a slide', async () => {
    const { page, close } = await opened('slides.html');
    const pdf = (await page.pdf({ preferCSSPageSize: true, printBackground: true })).toString('latin1');
    expect(pdf.match(/\/Type \/Page\b/g)?.length).toBe(4);
    expect(pdf).toMatch(/\/MediaBox \[0 0 9(60|59\.\d+) 5(40|39\.\d+)\]/);
    await close();
  });

  // axe-core 4, all its rules: WCAG 2.2 and good practice.
  it.each([
    ['with scripts', 'slides.html', ''],
    ['without scripts', 'unscripted.html', ''],
    ['an exercise', 'exercise.html', '#answers-1'],
  ] as const)('is without fault to axe-core: %s', async (_, name, hash) => {
    const { page, close } = await opened(name, { reducedMotion: 'reduce' }, hash);
    const axe = readFileSync(new URL('../../../node_modules/axe-core/axe.min.js', import.meta.url), 'utf8');
    // By the debugger's door, which the page's policy does not shut.
    const session = await page.context().newCDPSession(page);
    const { result } = await session.send('Runtime.evaluate', {
      expression: `${axe};axe.run().then(({violations, passes}) => JSON.stringify([passes.length, ...violations.map(({id, nodes}) => id + ': ' + nodes[0].html.slice(0, 120))]))`,
      awaitPromise: true,
    });
    const [passes, ...violations] = JSON.parse(String(result.value)) as [number, ...string[]];
    expect(violations).toEqual([]);
    expect(passes).toBeGreaterThan(15);
    await close();
  });

  it('says each picture in words, and nothing on a front that is asked', async () => {
    const { page, close } = await opened('slides.html', {}, '#a');
    const told = await page.getAttribute('#a svg', 'aria-label');
    expect(told).toMatch(/^The board\. .*An arrow runs from.*crossed out/i);
    expect(await page.getAttribute('[id="a.question"] svg', 'aria-label')).not.toMatch(/arrow|crossed out/);
    expect(await page.locator('#a figcaption').textContent()).toContain('Row 6: 5, blank, blank, blank, 2, blank.');
    await close();
  });
});

/**
 * The part of the blocks of six pixels square whose mean colours differ by more than thirty levels: edges may lie half a
 * pixel apart.
 */
function difference(a: PNG, b: PNG): number {
  if (a.width !== b.width || a.height !== b.height) return 1;
  const [columns, rows] = [Math.floor(a.width / 6), Math.floor(a.height / 6)];
  let count = 0;
  for (let block = 0; block < columns * rows; block++) {
    const sums = [0, 0, 0];
    for (let pixel = 0; pixel < 36; pixel++) {
      const x = (block % columns) * 6 + (pixel % 6);
      const y = Math.floor(block / columns) * 6 + Math.floor(pixel / 6);
      for (const channel of [0, 1, 2]) {
        const at = (y * a.width + x) * 4 + channel;
        sums[channel]! += a.data[at]! - b.data[at]!;
      }
    }
    if (sums.some((sum) => Math.abs(sum) / 36 > 30)) count += 1;
  }
  return count / (columns * rows);
}
