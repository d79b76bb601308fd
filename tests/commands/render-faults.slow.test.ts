/**
 * The faults of a machine for every kind of file, from the command line: what `render-faults.test.ts` has for one kind.
 */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import {
  canMount,
  encodersAtWork,
  expectNoProcesses,
  faultsFolder,
  mount,
  pause,
  processesOf,
  root,
  sentenceOf,
  start,
  unmount,
  until,
} from './faults.ts';

const faults = faultsFolder();
const { at, words } = faults;
afterAll(faults.remove);
afterEach(faults.expectNoPartFiles);

const isLinux = process.platform === 'linux';
const interrupted = 'proofreel: interrupted; nothing was written';
const kinds = [
  { out: 'a.mp4', scene: 'long.yaml' },
  { out: 'a.mov', scene: 'clear.yaml' },
  { out: 'a.webm', scene: 'clear.yaml' },
] as const;
const others = [{ why: 'processes are read from /proc' }];
it.skipIf(isLinux).each(others)('skipped: faults of a running render, for $why', () => undefined);

describe.skipIf(!isLinux)('a render that is stopped', () => {
  for (const name of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
    it.each(kinds)(`by ${name}: $out`, async ({ out, scene }) => {
      const older = faults.older(out);
      const { child, ended } = start(words(out, scene));
      await encodersAtWork(child.pid!, ended);
      child.kill(name);
      const { status, said } = await ended;
      expect(sentenceOf(said)).toBe(interrupted);
      expect(status).toBe(130);
      await expectNoProcesses(child.pid!);
      older.expectWhole();
    });
  }

  it('as Control-C does it, which reaches every process of the terminal', async () => {
    const older = faults.older('a.mp4');
    const { child, ended } = start(words('a.mp4'));
    await encodersAtWork(child.pid!, ended);
    process.kill(-child.pid!, 'SIGINT');
    const { status, said } = await ended;
    expect(sentenceOf(said)).toBe(interrupted);
    expect(status).toBe(130);
    await expectNoProcesses(child.pid!);
    older.expectWhole();
  });

  it('while it writes a folder of frames', async () => {
    const older = faults.older('frames/');
    const { child, ended } = start(words('frames/'));
    await until('a folder', () => readdirSync(faults.folder).some((name) => name.startsWith('.frames.part')), ended);
    await pause(300);
    child.kill('SIGTERM');
    const { status, said } = await ended;
    expect(sentenceOf(said)).toBe(interrupted);
    expect(status).toBe(130);
    await expectNoProcesses(child.pid!);
    older.expectWhole();
  });

  it('by SIGKILL, of which it hears nothing: its processes end by themselves', async () => {
    const older = faults.older('killed-a.mp4');
    const { child, ended } = start(words('killed-a.mp4'));
    await encodersAtWork(child.pid!, ended);
    child.kill('SIGKILL');
    expect((await ended).signal).toBe('SIGKILL');
    for (let tries = 0; tries < 50 && processesOf(child.pid!).length > 0; tries++) await pause(100);
    await expectNoProcesses(child.pid!);
    older.expectWhole();
    // What it was writing it cannot take back any more.
    for (const name of readdirSync(faults.folder).filter((name) => name.startsWith('.'))) {
      spawnSync('rm', ['-rf', at(name)]);
    }
  });
});

/** That of util-linux takes the command as an option; the one of other systems does not. */
const hasTerminal = isLinux && spawnSync('script', ['--version'], { encoding: 'utf8' }).stdout?.includes('util-linux');
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
    const isWritten = (name: string): boolean => existsSync(at(name)) && readFileSync(at(name), 'utf8').endsWith('\n');
    await until('a shell', () => isWritten('shell'));
    const session = Number(readFileSync(at('shell'), 'utf8'));
    const of = Number(/\) \S \d+ \d+ (\d+)/.exec(readFileSync(`/proc/${session}/stat`, 'utf8'))?.[1]);
    await encodersAtWork(of);
    terminal.kill('SIGKILL');
    await until('a status', () => isWritten('status'));
    await expectNoProcesses(of);
    expect(readFileSync(at('status'), 'utf8')).toBe('130\n');
    older.expectWhole();
  });
});

describe.skipIf(!isLinux)('a process of the render that is killed', () => {
  it.each(kinds)('the encoder: $out', async ({ out, scene }) => {
    const older = faults.older(out);
    const { child, ended } = start(words(out, scene));
    for (const pid of await encodersAtWork(child.pid!, ended)) process.kill(pid, 'SIGKILL');
    const { status, said } = await ended;
    expect(sentenceOf(said)).toBe(
      'proofreel: the encoder was killed (SIGKILL) before it was done; memory may have run out',
    );
    expect(status).toBe(3);
    await expectNoProcesses(child.pid!);
    older.expectWhole();
  });
});

/** Root may write to every folder, so a disk is what cannot be written to. */
const mountable = canMount();
const noMount = [{ why: 'mounting a tmpfs takes root' }];
it.skipIf(mountable).each(noMount)('skipped: a disk that is full, or can only be read, for $why', () => undefined);

describe.skipIf(!mountable)('a disk', () => {
  const all = [...kinds, { out: 'frames/', scene: 'long.yaml' }];

  it.each(all)('that is full: $out', async ({ out, scene }) => {
    const disk = at('full');
    expect(mount(disk, 'size=300k')).toBe(true);
    try {
      const older = faults.older(`full/${out}`);
      const { child, ended } = start(words(`full/${out}`, scene));
      const { status, said } = await ended;
      expect(sentenceOf(said)).toMatch(/: the disk is full; make room, or write to another disk$/);
      expect(status).toBe(3);
      await expectNoProcesses(child.pid!);
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
      const { child, ended } = start(words(`read-only/${out}`, scene));
      const { status, said } = await ended;
      expect(sentenceOf(said)).toMatch(/: the disk can only be read; write to another folder$/);
      expect(status).toBe(3);
      await expectNoProcesses(child.pid!);
      older.expectWhole();
    } finally {
      unmount(disk);
    }
  });
});

describe.skipIf(!isLinux)('two renders to one name at once', () => {
  it.each(['twice.mp4', 'twice/'])('%s: both end well, and what is there is whole', async (out) => {
    mkdirSync(at('apart'), { recursive: true });
    const alone = start(words(`apart/${out}`, 'short.yaml'));
    expect((await alone.ended).status).toBe(0);
    const both = [start(words(out, 'short.yaml')), start(words(out, 'short.yaml'))];
    for (const { child, ended } of both) {
      const { status, said } = await ended;
      expect(status, said).toBe(0);
      await expectNoProcesses(child.pid!);
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
