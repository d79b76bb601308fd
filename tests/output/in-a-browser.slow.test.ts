/**
 * Videos of every kind that a browser plays, as Chromium seeks them and plays them through.
 */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { fraction } from '../../src/scene/fraction.ts';
import { describeWith } from '../programs.ts';
import { expectSought, startBrowser } from './browser.ts';
import { scratchFolder } from './outside.ts';
import { framesOf, mixed } from './timelines.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

const formats = [
  { name: 'film.mp4', opaque: true },
  { name: 'compatible.mp4', opaque: true, compatible: true },
  { name: 'film.webm', opaque: false },
  { name: 'opaque.webm', opaque: true },
  { name: 'av1.mp4', opaque: true, codec: 'av1' },
  { name: 'av1.webm', opaque: true, codec: 'av1' },
] as const;
const rates = [fraction(24n), fraction(25n), fraction(30000n, 1001n), fraction(50n), fraction(60n)];

describeWith(['chromium'], 'Chromium', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(() => browser.close());

  it.each(
    formats.flatMap((format) =>
      rates.map((rate) => ({ ...format, rate, at: `${rate.numerator}/${rate.denominator}` })),
    ),
  )('shows and plays $name at $at', async ({ name, at: _, ...options }) => {
    const player = await expectSought(browser, scratch.at(name), options);
    expect(await player.play()).toEqual({ error: '', corrupted: 0, decoded: framesOf(mixed).length });
    await player.close();
  });
});
