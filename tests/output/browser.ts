/**
 * Videos as Chromium decodes and plays them. What stands is written without an encoder, so a player must agree with
 * ffmpeg's decoders about it.
 *
 * Sources: HTML Living Standard, 4.8.11.9 (seeking); requestVideoFrameCallback (WICG: `mediaTime` is the time of the
 * frame that is shown); Media Playback Quality (W3C: frames decoded, frames corrupt).
 */
import { readFileSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';
import { expect } from 'vitest';
import { type RenderOptions, renderFilm } from '../../src/output/render.ts';
import { type Fraction, toNumber } from '../../src/scene/fraction.ts';
import { bordersOf, drawnAlone, framesOf, mixed, nearestOf, timelinePainter } from './timelines.ts';

export function startBrowser(): Promise<Browser> {
  return chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
}

/** A video in a page of its own. */
export interface Player {
  /** The frame shown after a jump to that second: its own time, and its pixels as R, G, B, A, straight alpha. */
  shownAt(second: number): Promise<{ readonly time: number; readonly pixels: Uint8Array }>;
  /** From its beginning to its end. Frames dropped are not counted: they tell how busy the machine is, not what lies in the file. */
  play(): Promise<{ readonly error: string; readonly decoded: number; readonly corrupted: number }>;
  close(): Promise<void>;
}

export async function playerOf(browser: Browser, file: string): Promise<Player> {
  const page = await browser.newPage();
  page.setDefaultTimeout(50_000); // A machine may be busy.
  await page.setContent(content);
  const data = readFileSync(file).toString('base64');
  const load = `load('${data}', '${file.endsWith('.webm') ? 'video/webm' : 'video/mp4'}')`;
  await page.evaluate(load);
  return {
    async shownAt(second) {
      const { time, data } = (await page.evaluate(`shownAt(${second})`)) as { time: number; data: string };
      return { time, pixels: Buffer.from(data, 'base64') };
    },
    async play() {
      await page.evaluate(load); // Counts begin anew.
      return (await page.evaluate('play()')) as { error: string; decoded: number; corrupted: number };
    },
    close: () => page.close(),
  };
}

const content = `<video muted></video><canvas></canvas><script>
  const video = document.querySelector('video');
  const canvas = document.querySelector('canvas');
  const context = canvas.getContext('2d', { willReadFrequently: true });
  const next = (name) => new Promise((resolve) => video.addEventListener(name, resolve, { once: true }));
  async function load(data, type) {
    const bytes = Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0));
    video.src = URL.createObjectURL(new Blob([bytes], { type }));
    await next('loadeddata');
    [canvas.width, canvas.height] = [video.videoWidth, video.videoHeight];
  }
  async function shownAt(second) {
    const shown = new Promise((resolve) => video.requestVideoFrameCallback((_, { mediaTime }) => resolve(mediaTime)));
    video.currentTime = second;
    const time = await shown;
    context.clearRect(0, 0, canvas.width, canvas.height);
    context.drawImage(video, 0, 0);
    const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
    let letters = '';
    for (let at = 0; at < data.length; at += 8192) letters += String.fromCharCode(...data.subarray(at, at + 8192));
    return { time, data: btoa(letters) };
  }
  async function play() {
    const over = Promise.race([next('ended'), next('error')]);
    await video.play();
    await over;
    const { totalVideoFrames, corruptedVideoFrames } = video.getVideoPlaybackQuality();
    return { error: video.error?.message ?? '', corrupted: corruptedVideoFrames, decoded: totalVideoFrames };
  }
</script>`;

/** Within the picture that stands from frame 5 to 134, most not on a keyframe, and some next to one (65 and 125). */
const standing = [7, 34, 63, 64, 65, 66, 90, 124, 125, 126, 133];
/** Parts of a frame: a player that goes to any of its moments shows it. A WebM rounds times and jumps to milliseconds. */
const within = [0.06, 0.5, 0.94];

/** Renders `mixed`, and expects each frame that the browser is sent to, in no order, to be the one drawn alone. */
export async function expectSought(
  browser: Browser,
  file: string,
  { rate, opaque, ...options }: RenderOptions & { readonly rate: Fraction; readonly opaque: boolean },
): Promise<Player> {
  const painter = timelinePainter(mixed, { rate, opaque });
  await renderFilm(painter, file, options);
  const player = await playerOf(browser, file);
  const pictures = framesOf(mixed);
  const drawn = drawnAlone(painter, mixed);
  for (const [index, frame] of outOfOrder([...bordersOf(mixed), ...standing]).entries()) {
    const { time, pixels } = await player.shownAt((frame + within[index % 3]!) / toNumber(rate));
    expect(Math.round(time * toNumber(rate))).toBe(frame);
    const nearest = nearestOf(pixels, drawn);
    expect({ frame, picture: nearest.picture }).toEqual({ frame, picture: pictures[frame] });
    expect(nearest.off).toBeLessThan(2);
    if (!opaque) expect(pixels.at(-1)).toBe(0);
  }
  return player;
}

/** Each once, neighbours far from one another; the same in every run. */
function outOfOrder(frames: readonly number[]): readonly number[] {
  const all = [...new Set(frames)].sort((a, b) => a - b);
  return Array.from({ length: 7 }, (_, start) => all.filter((_, at) => at % 7 === start)).flat();
}
