/**
 * What a killed render has left goes when the next one writes to the same folder; what belongs to one at work, or to
 * the user, stays. Owners are real processes: one that is running, and one that has ended.
 */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { writeAtomically } from '../../../src/output/machine/atomic-write.ts';
import { asideName, removeStaleTemps, tempFile } from '../../../src/output/machine/temp-files.ts';
import { ownerState, ownerWord } from '../../../src/output/machine/temp-owner.ts';
import { hasProcesses } from '../../processes.ts';
import { scratchFolder } from '../outside.ts';

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
  const temp = (owner: string, ending = ''): string => `.lesson.mp4.temp-${owner}-0badcafe${ending}`;
  beforeEach(() => {
    folder = scratch.at(`f${count++}`);
    mkdirSync(folder);
  });
  const list = () => scratch.list(folder.slice(scratch.folder.length + 1));

  it('loses what they left, files and folders', async () => {
    writeFileSync(at(temp(gone)), 'half');
    mkdirSync(at(temp(gone, '-segments')));
    writeFileSync(`${at(temp(gone, '-segments'))}/a.segment`, 'half');
    await removeStaleTemps(folder);
    expect(list()).toEqual([]);
  });

  it('keeps what renders at work have there', async () => {
    const kept = [temp(own), temp(own, '-segments'), temp(running), temp(foreign)];
    for (const name of kept) writeFileSync(at(name), 'half');
    await removeStaleTemps(folder);
    expect(list()).toEqual([...kept].sort());
  });

  it("keeps the user's own, whatever they are called", async () => {
    const kept = [
      ...['lesson.mp4', '.lesson.mp4', '.hidden.temp-of-mine', temp(gone).slice(1), `${temp(gone)}.mp4`],
      ...[temp(gone, '-mine'), `.temp-${gone}-0badcafe`, temp('4711')],
    ];
    for (const name of kept) writeFileSync(at(name), 'mine');
    symlinkSync(at('lesson.mp4'), at(temp(gone)));
    await removeStaleTemps(folder);
    expect(list()).toEqual([...kept, temp(gone)].sort());
  });

  it('loses a part of another machine to which nobody has written for a week', async () => {
    const longAgo = new Date(Date.now() - 8 * 24 * 60 * 60 * 1000);
    for (const ending of ['', '-segments']) {
      writeFileSync(at(temp(foreign, ending)), 'half');
      utimesSync(at(temp(foreign, ending)), longAgo, longAgo);
    }
    // One of whose files are written by turns is at work.
    for (const [ending, time] of [['', longAgo] as const, ['-segments', new Date()] as const]) {
      writeFileSync(at(temp(foreign, ending).replace('0badcafe', '0badf00d')), 'half');
      utimesSync(at(temp(foreign, ending).replace('0badcafe', '0badf00d')), time, time);
    }
    await removeStaleTemps(folder);
    expect(list()).toEqual(['', '-segments'].map((ending) => temp(foreign, ending).replace('0badcafe', '0badf00d')));
  });

  it('has the older frames back, where the kill came between two names', async () => {
    const old = asideName(at('frames')).replace(own, gone);
    mkdirSync(old);
    writeFileSync(`${old}/000000.png`, 'an older one');
    mkdirSync(tempFile(at('frames')).replace(own, gone));
    await removeStaleTemps(folder);
    expect(list()).toEqual(['frames']);
    expect(readFileSync(at('frames/000000.png'), 'utf8')).toBe('an older one');
    // Where the new ones have got the name already, the older are not wanted any more.
    mkdirSync(old);
    await removeStaleTemps(folder);
    expect(list()).toEqual(['frames']);
  });

  it('is looked through by whatever writes there next', async () => {
    writeFileSync(at(temp(gone)), 'half');
    await writeAtomically(at('other.txt'), (file) => writeFile(file, 'whole'));
    expect(list()).toEqual(['other.txt']);
  });
});

describe('the name of a temp file', () => {
  it.each(['lesson.mp4', 'ж'.repeat(127), '数'.repeat(85), `${'x'.repeat(251)}.mp4`])('of %s fits', async (name) => {
    const file = tempFile(scratch.at(name));
    expect(Buffer.byteLength(file.slice(file.lastIndexOf('/') + 1)) + '-segments'.length).toBeLessThanOrEqual(255);
    await writeAtomically(scratch.at(name), (temp) => writeFile(temp, 'whole'));
    expect(existsSync(scratch.at(name))).toBe(true);
  });
});
