/**
 * Scenes of a stranger: what they name as footage or sound, and what files are called. Every program of ffmpeg is started
 * through one that writes down its words.
 */
import { execFileSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ffmpeg, probeSound, probeVideo, scratchFolder } from '../output/outside.ts';
import { run } from './run.ts';

const scratch = scratchFolder();
const before = { FFMPEG_PATH: process.env.FFMPEG_PATH, FFPROBE_PATH: process.env.FFPROBE_PATH };
const log = scratch.at('calls');

beforeAll(() => {
  const sources = ['-f', 'lavfi', '-i', 'testsrc2=s=64x64:r=24', '-f', 'lavfi', '-i', 'sine=duration=1'];
  ffmpeg([...sources, '-frames:v', '24', '-c:v', 'libx264', '-pix_fmt', 'yuv420p', scratch.at('clip.mp4')]);
  ffmpeg(['-f', 'lavfi', '-i', 'sine=duration=1', scratch.at('tone.wav')]);
  for (const [name, variable] of [
    ['ffmpeg', 'FFMPEG_PATH'],
    ['ffprobe', 'FFPROBE_PATH'],
  ] as const) {
    const real = execFileSync('sh', ['-c', `command -v ${name}`], { encoding: 'utf8' }).trim();
    // A word a line, a blank line after each call: no word of these has a line break in it.
    const lines = ['#!/bin/sh', `printf '%s\\n' ${name} "$@" "" >> '${log}'`, `exec '${real}' "$@"`];
    writeFileSync(scratch.at(name), `${lines.join('\n')}\n`);
    chmodSync(scratch.at(name), 0o755);
    process.env[variable] = scratch.at(name);
  }
});
afterAll(() => {
  for (const [variable, value] of Object.entries(before)) {
    if (value === undefined) delete process.env[variable];
    else process.env[variable] = value;
  }
  scratch.remove();
});

interface Video {
  readonly footage?: string;
  readonly audio?: string;
}

/** A scene of half a second, two chapters, with those files, written as YAML writes them in quotes. */
function scene({ footage, audio }: Video): string {
  const files = Object.entries({ footage, audio }).flatMap(([key, name]) =>
    name === undefined ? [] : [`, ${key}: ${JSON.stringify(name)}`],
  );
  return `proofreel: 1
puzzle: {boxes: 2x2, givens: 1... ..1. .1.4 ..2.}
video: {size: 64x64, rate: 24, length: 0.5${files.join('')}}
steps:
  - {id: first, at: 0, chapter: One, from: 2r3, so: r3c1=2}
  - {id: second, at: 0.25, chapter: "Two; = #", show: [{outline: b1}]}
`;
}

/** The words of each call since the last time that this was asked, its program's name first. */
function calls(): readonly (readonly string[])[] {
  const all = existsSync(log) ? readFileSync(log, 'utf8') : '';
  rmSync(log, { force: true });
  return all
    .split('\n\n')
    .map((call) => call.split('\n'))
    .filter((call) => call.length > 1);
}

/** The options that stand before each input of a call, with the input's name. */
function inputsOf([program = '', ...words]: readonly string[]): readonly {
  name: string;
  options: readonly string[];
}[] {
  if (program === 'ffprobe') return [{ name: words.at(-1) ?? '', options: words.slice(0, -1) }];
  let from = 0;
  return words.flatMap((word, at) => {
    if (word !== '-i') return [];
    const options = words.slice(from, at);
    from = at + 2;
    return [{ name: words[at + 1] ?? '', options }];
  });
}

const valueOf = (options: readonly string[], option: string): string | undefined =>
  options.includes(option) ? options[options.lastIndexOf(option) + 1] : undefined;

describe('every input of every call', () => {
  const renders: readonly (readonly [string, Video, number])[] = [
    ['over.mp4', { footage: 'clip.mp4', audio: 'tone.wav' }, 3],
    ['sound.mp4', { audio: 'tone.wav' }, 4],
    ['sound.webm', { audio: 'tone.wav' }, 4],
    ['sound.mov', { audio: 'tone.wav' }, 4],
  ];
  it.each(renders)('%s names the protocols and the formats that are allowed', async (name, video, least) => {
    writeFileSync(scratch.at('scene.yaml'), scene(video));
    calls();
    const ran = await run('render', scratch.at('scene.yaml'), '-o', scratch.at(name), '--quiet', '--no-cache');
    expect(ran.status).toBe(0);
    const inputs = calls()
      .flatMap(inputsOf)
      .filter((input) => input.name !== '-version');
    expect(inputs.length).toBeGreaterThanOrEqual(least);
    for (const { name, options } of inputs) {
      const protocol = name.startsWith('/') ? 'file' : name.startsWith('data:') ? 'data' : 'pipe';
      expect({ name, protocol: valueOf(options, '-protocol_whitelist') }).toEqual({ name, protocol });
      // What is not a file has its format forced.
      if (protocol !== 'file') expect(valueOf(options, '-f')).toBeDefined();
      else expect(valueOf(options, '-format_whitelist')?.split(',')).toContain('mov');
    }
    expect(inputs.some(({ name }) => name.startsWith('data:'))).toBe(true);
  });
});

describe('what is no recording', () => {
  it.each([
    [
      'footage',
      'http://127.0.0.1:9/a.mp4',
      'there is no footage http://127.0.0.1:9/a.mp4 next to the scene; no address is opened, name a file',
    ],
    [
      'audio',
      'concat:tone.wav|tone.wav',
      'there is no audio concat:tone.wav|tone.wav next to the scene; no address is opened, name a file',
    ],
    ['footage', '/dev/zero', 'zero is a device, not a recording'],
    ['footage', 'list.mp4', 'list.mp4 is a playlist (M3U8); name the recording itself'],
    ['audio', 'list.wav', 'list.wav is a playlist (M3U8); name the recording itself'],
  ])('%s: %s', async (key, name, message) => {
    for (const list of ['list.mp4', 'list.wav']) {
      const text = `#EXTM3U\n#EXT-X-TARGETDURATION:1\n#EXTINF:1,\n${scratch.at('clip.mp4')}\n#EXT-X-ENDLIST\n`;
      writeFileSync(scratch.at(list), text);
    }
    writeFileSync(scratch.at('scene.yaml'), scene({ [key]: name }));
    const ran = await run('render', scratch.at('scene.yaml'), '-o', scratch.at('no.mp4'));
    expect(ran.status).toBe(2);
    expect(ran.err).toContain(message);
    expect(existsSync(scratch.at('no.mp4'))).toBe(false);
  });

  it.each([
    ['narration', '/dev/zero', '/dev/zero is a device; name a narration (.vtt, .srt, .json)'],
    ['narration', 'pipe.vtt', 'pipe.vtt is a pipe; name a narration (.vtt, .srt, .json)'],
    ['narration', 'https://a.example/b.vtt', 'next to the scene; no address is opened, name a file'],
    ['look', '/dev/zero', '/dev/zero is a device; name a look'],
  ])('%s: %s', async (key, name, message) => {
    if (!existsSync(scratch.at('pipe.vtt'))) execFileSync('mkfifo', [scratch.at('pipe.vtt')]);
    const whole = scene({});
    const text = key === 'look' ? `${whole}look: ${name}\n` : whole.replace('0.5}', `0.5, ${key}: "${name}"}`);
    writeFileSync(scratch.at('scene.yaml'), text);
    const ran = await run('render', scratch.at('scene.yaml'), '-o', scratch.at('no.mp4'));
    expect(ran.status).toBe(2);
    expect(ran.err).toContain(message);
    // A look is for `render` to speak of; a check goes on without it.
    expect((await run('check', scratch.at('scene.yaml'))).status).toBe(key === 'look' ? 0 : 2);
  });
});

describe('a file may be called anything', () => {
  const names = [
    `it's "quoted", a:b, 10%d %03d%%`,
    '-i -dash\nline\rand\ttab',
    `[0:v];,=\\' $(touch ran) \`touch ran\` | touch ran & *? <b> é 日本 \u202e`,
  ];
  it.each(names)('%j', async (name) => {
    const folder = scratch.at(`folder ${name}`);
    mkdirSync(folder);
    copyFileSync(scratch.at('clip.mp4'), join(folder, `${name}.mp4`));
    copyFileSync(scratch.at('tone.wav'), join(folder, `${name}.wav`));
    const file = join(folder, `${name}.yaml`);
    writeFileSync(file, scene({ footage: `${name}.mp4`, audio: `${name}.wav` }));
    const out = join(folder, `out ${name}.mp4`);
    expect(await run('render', file, '-o', out, '--quiet')).toMatchObject({ status: 0 });
    expect(probeVideo(out)).toMatchObject({ nb_read_frames: '12', width: 64 });
    expect(probeSound(out)?.codec).toBe('aac');
    const whole = { status: 0 };
    expect(await run('still', file, '--step', 'first', '-o', join(folder, `${name}.png`))).toMatchObject(whole);
    expect(await run('render', file, '-o', join(folder, `frames ${name}`), '--quiet')).toMatchObject(whole);
    expect(readdirSync(folder).filter((found) => !found.includes(name))).toEqual([]);
    expect([scratch.folder, process.cwd(), folder].filter((place) => existsSync(join(place, 'ran')))).toEqual([]);
  });
});
