/** Every code of the files beside a scene is given where a file is missing or broken, and no code where none is. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { readBeside } from '../../src/commands/beside-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import type { fileCodes } from '../../src/scene/codes.ts';
import { towers } from '../staging/stage.ts';

const folder = mkdtempSync(join(tmpdir(), 'proofreel-beside-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const cue = 'WEBVTT\n\n00:01.000 --> 00:02.000\nLook.\n';
writeFileSync(join(folder, 'good.vtt'), cue);
writeFileSync(join(folder, 'broken.vtt'), `${cue}\n00:0x.000 --> 00:09.000\nLook.\n`);
writeFileSync(join(folder, 'no-sound.wav'), 'not a sound');

async function faultsOf(video: string): Promise<string[]> {
  const text = towers('  - {id: s, say: Look.}', video);
  const { scene, diagnostics } = readScene(text);
  if (scene === undefined) throw new Error(diagnostics.map(({ message }) => message).join('\n'));
  const beside = await readBeside(scene, folder, 'needed');
  return beside.diagnostics.map(
    ({ code, severity, span }) => `${severity} ${code} at ${text.slice(span.start, span.end)}`,
  );
}

const rows: Readonly<Record<keyof typeof fileCodes, readonly [video: string, fault: string]>> = {
  'file-not-found': ['narration: gone.vtt', 'error file-not-found at gone.vtt'],
  'media-not-read': ['audio: no-sound.wav', 'error media-not-read at no-sound.wav'],
  'broken-cue': ['narration: broken.vtt', 'warning broken-cue at broken.vtt'],
};

it.each(Object.entries(rows))('%s', async (_, [video, fault]) => {
  expect(await faultsOf(video)).toEqual([fault]);
});

it.each([
  ['audio: gone.wav', 'error file-not-found at gone.wav'],
  ['footage: gone.mp4', 'error file-not-found at gone.mp4'],
  ['narration: .', 'error file-not-found at .'],
])('%s', async (video, fault) => {
  expect(await faultsOf(video)).toEqual([fault]);
});

it('none where the file is there and whole', async () => {
  expect(await faultsOf('narration: good.vtt')).toEqual([]);
});
