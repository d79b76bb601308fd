/**
 * The faults of a machine for every kind of file, from the command line: what `render-faults.test.ts` has for one kind.
 */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { canMount, mount, noMount, unmount } from '../disks.ts';
import { hasProcesses, noProcesses, pause, processes, until } from '../processes.ts';
import {
  expectInterrupted,
  expectLosesEncoder,
  expectNoProcesses,
  expectStopped,
  faultsFolder,
  root,
  sentenceOf,
  start,
  untilEncoding,
} from './faults.ts';

const faults = faultsFolder();
const { at, words } = faults;
afterAll(faults.remove);
afterEach(faults.expectNoPartFiles);

const kinds = [
  { out: 'a.mp4', scene: 'long.yaml' },
  { out: 'a.mov', scene: 'clear.yaml' },
  { out: 'a.webm', scene: 'clear.yaml' },
] as const;
it.skipIf(hasProcesses).each(noProcesses)('skipped: faults of a running render, for $why', () => undefined);

describe.skipIf(!hasProcesses)('a render that is stopped', () => {
  for (const name of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
    it.each(kinds)(`by ${name}: $out`, async ({ out, scene }) => {
      const older = faults.older(out);
      const render = start(words(out, scene));
      await expectStopped(render, () => render.kill(name));
      older.expectWhole();
    });
  }

  it('as Control-C does it, which reaches every process of the terminal', async () => {
    const older = faults.older('a.mp4');
    const render = start(words('a.mp4'));
    await expectStopped(render, () => process.kill(-render.session, 'SIGINT'));
    older.expectWhole();
  });

  it('while it writes a folder of frames', async () => {
    const older = faults.older('frames/');
    const render = start(words('frames/'));
    await until(
      'a folder',
      () => readdirSync(faults.folder).find((name) => name.startsWith('.frames.part')),
      render.over,
    );
    await pause(300);
    render.kill('SIGTERM');
    await expectInterrupted(render);
    older.expectWhole();
  });
});

/** That of util-linux takes the command as an option; the one of other systems does not. */
const hasTerminal =
  hasProcesses && spawnSync('script', ['--version'], { encoding: 'utf8' }).stdout?.includes('util-linux');
const noTerminal = [{ why: 'this machine lacks script of util-linux' }];
it.skipIf(hasTerminal).each(noTerminal)('skipped: a terminal that is closed, for $why', () => undefined);

describe.skipIf(!hasTerminal)('a terminal that is closed', () => {
  it('ends the render, which takes everything back', async () => {
    const older = faults.older('a.mp4');
    const call = [process.execPath, ...words('a.mp4').filter((word) => word !== '--quiet')].join(' ');
    // The terminal's own shell dies with it, and then the system tells all in front of that terminal. The inner one
    // outlives it for as long as it takes to write down how the render ended.
    writeFileSync(at('inner'), `trap : HUP\necho $$ >${at('shell')}\n${call}\necho $? >${at('status')}\n`);
    writeFileSync(at('in-terminal'), `sh ${at('inner')}\ntrue\n`);
    const terminal = spawn('script', ['-qec', `sh ${at('in-terminal')}`, '/dev/null'], {
      ...{ cwd: root, stdio: ['pipe', 'ignore', 'ignore'] },
    });
    const isWritten = (name: string): true | undefined =>
      existsSync(at(name)) && readFileSync(at(name), 'utf8').endsWith('\n') ? true : undefined;
    await until('a shell', () => isWritten('shell'));
    const shell = Number(readFileSync(at('shell'), 'utf8'));
    const { session } = await until('a session', () => processes().find(({ pid }) => pid === shell));
    await untilEncoding(session);
    terminal.kill('SIGKILL');
    await until('a status', () => isWritten('status'));
    await until('an end', () => (processes().some((one) => one.session === session) ? undefined : true));
    expect(readFileSync(at('status'), 'utf8')).toBe('130\n');
    older.expectWhole();
  });
});

describe.skipIf(!hasProcesses)('a process of the render that is killed', () => {
  it.each(kinds)('the encoder: $out', async ({ out, scene }) => {
    const older = faults.older(out);
    await expectLosesEncoder(start(words(out, scene)));
    older.expectWhole();
  });
});

const mountable = canMount();
it.skipIf(mountable).each(noMount)('skipped: a disk that is full, or can only be read, for $why', () => undefined);

describe.skipIf(!mountable)('a disk', () => {
  const all = [...kinds, { out: 'frames/', scene: 'long.yaml' }];

  it.each(all)('that is full: $out', async ({ out, scene }) => {
    const disk = at('full');
    expect(mount(disk, 'size=300k')).toBe(true);
    try {
      const older = faults.older(`full/${out}`);
      const { session, ended } = start(words(`full/${out}`, scene));
      const { status, said } = await ended;
      expect(sentenceOf(said)).toMatch(/: the disk is full; make room, or write to another disk$/);
      expect(status).toBe(3);
      await expectNoProcesses(session);
      older.expectWhole();
      expect(readdirSync(disk)).toEqual([out.replace('/', '')]);
    } finally {
      unmount(disk);
    }
  });

  it.each(all)('that can only be read: $out', async ({ out, scene }) => {
    const disk = at('read-only');
    expect(mount(disk, 'size=300k')).toBe(true);
    try {
      const older = faults.older(`read-only/${out}`);
      expect(spawnSync('mount', ['-o', 'remount,ro', disk]).status).toBe(0);
      const { session, ended } = start(words(`read-only/${out}`, scene));
      const { status, said } = await ended;
      expect(sentenceOf(said)).toMatch(/: the disk is read-only; write to another folder$/);
      expect(status).toBe(3);
      await expectNoProcesses(session);
      older.expectWhole();
    } finally {
      unmount(disk);
    }
  });
});

describe.skipIf(!hasProcesses)('two renders to one name at once', () => {
  it.each(['twice.mp4', 'twice/'])('%s: both end well, and what is there is whole', async (out) => {
    mkdirSync(at('apart'), { recursive: true });
    const alone = start(words(`apart/${out}`, 'short.yaml'));
    expect((await alone.ended).status).toBe(0);
    const both = [start(words(out, 'short.yaml')), start(words(out, 'short.yaml'))];
    for (const { session, ended } of both) {
      const { status, said } = await ended;
      expect(status, said).toBe(0);
      await expectNoProcesses(session);
    }
    expect(contentOf(at(out))).toEqual(contentOf(at(`apart/${out}`)));
  });
});

function contentOf(path: string): readonly string[] {
  if (!path.endsWith('/')) return [readFileSync(path, 'base64')];
  return readdirSync(path)
    .sort()
    .map((name) => `${name} ${readFileSync(`${path}${name}`, 'base64')}`);
}
