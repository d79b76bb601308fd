/**
 * What a killed render has left goes when the next one writes to the same folder; what belongs to one at work, or to
 * the user, stays. Owners are real processes: one that is running, and one that has ended.
 */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { asideName, partFile, removeStaleParts } from '../../src/output/part-files.ts';
import { ownerState, ownerWord } from '../../src/output/part-owner.ts';
import { writeWholeFile } from '../../src/output/whole-file.ts';
import { hasProcesses } from '../processes.ts';
import { scratchFolder } from './outside.ts';

const scratch = scratchFolder();
const sleeper = spawn('sleep', ['600'], { stdio: 'ignore' });
afterAll(() => {
  sleeper.kill('SIGKILL');
  scratch.remove();
});

const own = ownerWord();
/** Of a process that has ended. */
const gone = own.replace(/-\d+-/, `-${spawnSync('true').pid}-`);
const running = ownerWord(sleeper.pid);
/** On another machine that writes to the same folder. */
const foreign = own.replace(/^[0-9a-f]{8}/, (word) => (word === '00000000' ? '11111111' : '00000000'));

describe('an owner', () => {
  it.each([
    ['this process', own, 'running'],
    ['another that is running', running, 'running'],
    ['one that has ended', gone, 'gone'],
    ['one of another machine', foreign, 'unknown'],
  ])('%s', (_, word, state) => {
    expect(ownerState(word)).toBe(state);
  });

  it.skipIf(!hasProcesses)('whose number another process has got since is gone', () => {
    expect(ownerState(running.replace(/\d+$/, (start) => String(Number(start) - 1)))).toBe('gone');
  });

  it.skipIf(!hasProcesses)('that was killed and that nobody has asked for its end is gone', async () => {
    // The shell starts a child, becomes a program that never asks for it, and the child is killed.
    const parent = spawn('sh', ['-c', 'sleep 600 & echo $!; exec sleep 600'], { stdio: ['ignore', 'pipe', 'ignore'] });
    const pid = Number(await new Promise((resolve) => parent.stdout.once('data', resolve)));
    const word = ownerWord(pid);
    expect(ownerState(word)).toBe('running');
    process.kill(pid, 'SIGKILL');
    await expect.poll(() => readFileSync(`/proc/${pid}/stat`, 'utf8')).toMatch(/\) Z /);
    expect(ownerState(word)).toBe('gone');
    parent.kill('SIGKILL');
  });
});

describe('a folder in which renders were killed', () => {
  let folder = '';
  let count = 0;
  const at = (name: string): string => `${folder}/${name}`;
  const part = (owner: string, ending = ''): string => `.lesson.mp4.part-${owner}-0badcafe${ending}`;
  beforeEach(() => {
    folder = scratch.at(`f${count++}`);
    mkdirSync(folder);
  });
  const list = () => scratch.list(folder.slice(scratch.folder.length + 1));

  it('loses what they left, files and folders', async () => {
    writeFileSync(at(part(gone)), 'half');
    writeFileSync(at(part(gone, '-picture')), 'half');
    mkdirSync(at(part(gone, '-segments')));
    writeFileSync(`${at(part(gone, '-segments'))}/a.segment`, 'half');
    await removeStaleParts(folder);
    expect(list()).toEqual([]);
  });

  it('keeps what renders at work have there', async () => {
    const kept = [part(own), part(own, '-segments'), part(running), part(foreign)];
    for (const name of kept) writeFileSync(at(name), 'half');
    await removeStaleParts(folder);
    expect(list()).toEqual([...kept].sort());
  });

  it("keeps the user's own, whatever they are called", async () => {
    const kept = [
      ...['lesson.mp4', '.lesson.mp4', '.hidden.part-of-mine', part(gone).slice(1), `${part(gone)}.mp4`],
      ...[part(gone, '-mine'), `.part-${gone}-0badcafe`, part('4711')],
    ];
    for (const name of kept) writeFileSync(at(name), 'mine');
    symlinkSync(at('lesson.mp4'), at(part(gone)));
    await removeStaleParts(folder);
    expect(list()).toEqual([...kept, part(gone)].sort());
  });

  it('loses a part of another machine to which nobody has written for a week', async () => {
    const longAgo = new Date(Date.now() - 8 * 24 * 60 * 60 * 1000);
    for (const ending of ['', '-segments']) {
      writeFileSync(at(part(foreign, ending)), 'half');
      utimesSync(at(part(foreign, ending)), longAgo, longAgo);
    }
    // One of whose files are written by turns is at work.
    for (const [ending, time] of [['', longAgo] as const, ['-segments', new Date()] as const]) {
      writeFileSync(at(part(foreign, ending).replace('0badcafe', '0badf00d')), 'half');
      utimesSync(at(part(foreign, ending).replace('0badcafe', '0badf00d')), time, time);
    }
    await removeStaleParts(folder);
    expect(list()).toEqual(['', '-segments'].map((ending) => part(foreign, ending).replace('0badcafe', '0badf00d')));
  });

  it('has the older frames back, where the kill came between two names', async () => {
    const old = asideName(at('frames')).replace(own, gone);
    mkdirSync(old);
    writeFileSync(`${old}/000000.png`, 'an older one');
    mkdirSync(partFile(at('frames')).replace(own, gone));
    await removeStaleParts(folder);
    expect(list()).toEqual(['frames']);
    expect(readFileSync(at('frames/000000.png'), 'utf8')).toBe('an older one');
    // Where the new ones have got the name already, the older are not wanted any more.
    mkdirSync(old);
    await removeStaleParts(folder);
    expect(list()).toEqual(['frames']);
  });

  it('is looked through by whatever writes there next', async () => {
    writeFileSync(at(part(gone)), 'half');
    await writeWholeFile(at('other.txt'), (file) => writeFile(file, 'whole'));
    expect(list()).toEqual(['other.txt']);
  });
});

describe('the name of a part', () => {
  it.each(['lesson.mp4', 'ж'.repeat(127), '数'.repeat(85), `${'x'.repeat(251)}.mp4`])('of %s fits', async (name) => {
    const file = partFile(scratch.at(name));
    expect(Buffer.byteLength(file.slice(file.lastIndexOf('/') + 1)) + '-segments'.length).toBeLessThanOrEqual(255);
    await writeWholeFile(scratch.at(name), (part) => writeFile(part, 'whole'));
    expect(existsSync(scratch.at(name))).toBe(true);
  });
});
