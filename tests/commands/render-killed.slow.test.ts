/**
 * A render that is killed (SIGKILL) and hears nothing of it, from the command line: its programs end by themselves, the
 * older file is there as it was, and what it was writing goes when the next render writes to the same folder.
 */
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { afterAll, describe, expect, it } from 'vitest';
import { callOf, hasProcesses, noProcesses, pause, until } from '../processes.ts';
import { expectInterrupted, faultsFolder, inSession, type Running, start, untilEncoding } from './faults.ts';

const faults = faultsFolder();
const { at, words } = faults;
afterAll(faults.remove);
it.skipIf(hasProcesses).each(noProcesses)('skipped: a render that is killed, for $why', () => undefined);

const parts = async (): Promise<readonly string[]> =>
  (await readdir(faults.folder)).filter((name) => name.startsWith('.') && !name.startsWith('.mine'));

/** Kills the render alone; its programs are given as long as they need to notice, and no more. */
async function killed({ session, ended, kill }: Running): Promise<void> {
  kill('SIGKILL');
  expect((await ended).signal).toBe('SIGKILL');
  const start = performance.now();
  await until('an end of its programs', () => (inSession(session).length === 0 ? true : undefined));
  expect(performance.now() - start).toBeLessThan(15_000);
}

describe.skipIf(!hasProcesses)('a render that is killed', () => {
  it.each([
    { out: 'a.mp4', scene: 'long.yaml' },
    { out: 'a.mov', scene: 'clear.yaml' },
    { out: 'a.webm', scene: 'clear.yaml' },
  ])('while it encodes: $out', async ({ out, scene }) => {
    const older = faults.older(out);
    const render = start(words(out, scene));
    await untilEncoding(render.session, render.over);
    await killed(render);
    older.expectWhole();
    expect(await parts()).not.toEqual([]);
    expect((await start(words('next.mp4', 'short.yaml')).ended).status).toBe(0);
    expect(await parts()).toEqual([]);
  });

  it('while it writes a folder of frames', async () => {
    const older = faults.older('frames/');
    const render = start(words('frames/'));
    const folder = await until('a folder', () => {
      const found = execFileSync('ls', ['-A', faults.folder], { encoding: 'utf8' });
      return found.split('\n').find((name) => name.startsWith('.frames.part') && name.endsWith('-segments'));
    });
    await pause(300);
    await killed(render);
    older.expectWhole();
    expect(await parts()).toContain(folder);
    expect((await start(words('next.mp4', 'short.yaml')).ended).status).toBe(0);
    expect(await parts()).toEqual([]);
  });

  it('while it encodes over footage, which its encoder could go on to read for long', async () => {
    const source = ['-f', 'lavfi', '-i', 'testsrc2=s=320x180:r=30:d=400', '-f', 'lavfi', '-i', 'sine=d=400'];
    const encoders = ['-pix_fmt', 'yuv420p', '-c:v', 'libx264', '-preset', 'ultrafast', '-c:a', 'aac'];
    execFileSync('ffmpeg', ['-v', 'error', '-y', ...source, ...encoders, at('take.mp4')]);
    const scene = readFileSync(at('clear.yaml'), 'utf8').replace(
      'size: 320x180',
      `size: 640x360, footage: ${at('take.mp4')}`,
    );
    writeFileSync(at('over.yaml'), scene);
    const render = start(words('over.mp4', 'over.yaml'));
    const encoder = await until(
      'an encoder over footage',
      () => inSession(render.session).find(({ pid, name }) => name === 'ffmpeg' && callOf(pid).includes('take.mp4')),
      render.over,
    );
    await pause(300);
    expect(inSession(render.session)).toContainEqual(encoder);
    await killed(render);
    expect(await parts()).not.toEqual([]);
    expect((await start(words('next.mp4', 'short.yaml')).ended).status).toBe(0);
    expect(await parts()).toEqual([]);
  });

  it("and beside it another at work: only the former's goes", async () => {
    writeFileSync(at('.mine.temp-4711-0badcafe'), 'mine');
    const [dead, living] = [start(words('dead.mp4')), start(words('living.mp4'))];
    await Promise.all([untilEncoding(dead.session, dead.over), untilEncoding(living.session, living.over)]);
    await killed(dead);
    expect((await parts()).some((name) => name.startsWith('.dead.mp4.temp-'))).toBe(true);
    expect((await start(words('next.mp4', 'short.yaml')).ended).status).toBe(0);
    const left = await parts();
    expect(left.filter((name) => !name.startsWith('.living.mp4.temp-'))).toEqual([]);
    expect(left).toHaveLength(2);
    living.kill('SIGTERM');
    await expectInterrupted(living);
    expect(await parts()).toEqual([]);
    expect(readFileSync(at('.mine.temp-4711-0badcafe'), 'utf8')).toBe('mine');
  });
});
