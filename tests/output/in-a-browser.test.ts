/**
 * Videos as Chromium seeks them. The other formats and rates, and films played through, stand in
 * `in-a-browser.slow.test.ts`.
 */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, it } from 'vitest';
import { fraction } from '../../src/scene/fraction.ts';
import { describeWith } from '../programs.ts';
import { expectSought, startBrowser } from './browser.ts';
import { scratchFolder } from './outside.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

describeWith(['chromium'], 'Chromium, sent to any moment of a frame,', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(() => browser.close());

  it.each([
    { name: 'film.mp4', opaque: true },
    { name: 'film.webm', opaque: false },
  ])('shows that frame of $name', async ({ name, opaque }) => {
    const player = await expectSought(browser, scratch.at(name), { rate: fraction(60n), opaque });
    await player.close();
  });
});
