import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { PNG } from 'pngjs';
import { afterAll, describe, expect, it } from 'vitest';
import { run } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'proofreel-cli-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A small scene: three steps on a 4x4 board, half a second at 24 frames a second. */
const sound = `proofreel: 1
puzzle:
  boxes: 2x2
  givens: |
    1 . | . .
    . . | 1 .
    ----+----
    . 1 | . 4
    . . | 2 .
video: {size: 320x240, rate: 24, length: 0.5, draw: board}
steps:
  - id: first
    at: 0
    from: 2r3
    so: r3c1=2
`;

function written(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const good = written('good.yaml', sound);
const bad = written('bad.yaml', sound.replace('r3c1=2', 'r3c1=3'));
const framed = written(
  'framed.yaml',
  `${sound.replace('steps:', 'versions:\n  upright: {size: 180x320}\n  placed: {size: 160x90, board: {left: 3, top: 1, side: 80}}\nsteps:')}`,
);
const passing = written('passing.yaml', `${sound}  - {id: second, at: 0}\n`);
const unreadable = written('unreadable.yaml', sound.replace('puzzle:', 'puzle:'));

const twiceWrong = written('twice-wrong.yaml', sound.replace('at: 0\n', 'at: cue one\n').replace('from:', 'form:'));

describe('exit status and streams', () => {
  it.each([
    [
      'a scene with a misspelt key and a time that cannot be',
      ['check', twiceWrong],
      2,
      /^$/,
      /twice-wrong\.yaml:13:9: error no-narration: .*\n.*\n.*\n.*twice-wrong\.yaml:14:5: error unknown-key: .*"form".*"from"\?\n.*\n.*\n$/,
    ],
    ['a sound scene', ['check', good], 0, /^sound {2}/, /^$/],
    ['an unsound scene', ['check', bad], 1, /1 step to fix: first/, /^$/],
    [
      'an unreadable scene',
      ['check', unreadable],
      2,
      /^$/,
      /unreadable\.yaml:2:1: error unknown-key: .*"puzle".*"puzzle"[\s\S]*\^\^\^\^\^/,
    ],
    [
      'a file that is not there',
      ['check', 'nowhere.yaml'],
      2,
      /^$/,
      /^proofreel: there is no scene file nowhere\.yaml\n$/,
    ],
    ['a misspelt verb', ['chek', good], 2, /^$/, /^proofreel: unknown command 'chek'[\s\S]*check/],
    ['a misspelt option', ['check', good, '--jsn'], 2, /^$/, /^proofreel: unknown option '--jsn'[\s\S]*--json/],
    ['an unknown verb', ['paint', good], 2, /^$/, /^proofreel: unknown command 'paint'; `proofreel --help` lists/],
    ['a verb without its scene', ['check'], 2, /^$/, /^proofreel: check needs SCENE: proofreel check SCENE\n$/],
    ['one scene too many', ['check', good, bad], 2, /^$/, /^proofreel: too many arguments.*`proofreel check --help`/],
    [
      'a part that is not there',
      ['join', 'no.part', '-o', 'x.mp4'],
      2,
      /^$/,
      /^proofreel: there is no part no\.part\n$/,
    ],
    ['a draft over its own puzzle', ['draft', good, '-o', good], 2, /^$/, /'good\.yaml' is the puzzle itself/],
    ['a fixed scene within a file', ['check', bad, '--fix', `${good}/x.yaml`], 2, /^$/, /'good\.yaml' is a file/],
    ['certificates within a file', ['check', good, '--cnf', good], 2, /^$/, /--cnf .*'good\.yaml' is a file/],
    ['slides within a file', ['slides', good, '-o', `${good}/x.html`], 2, /^$/, /'good\.yaml' is a file/],
    ['a tree within a file', ['plan', good, '-o', `${good}/x.svg`], 2, /^$/, /'good\.yaml' is a file/],
    [
      'a look by its name',
      ['still', good, '--at', '0', '-o', 'x.png', '--look', 'bluehour'],
      2,
      /^$/,
      /included with proofreel is .*assets\/looks\/bluehour\.yaml\n$/,
    ],
    ['no verb', [], 2, /^$/, /Usage: proofreel/],
    ['help', ['--help'], 0, /render .*renders the video/, /^$/],
    ['help of a verb', ['still', '--help'], 0, /--step <id>/, /^$/],
    ['the version', ['--version'], 0, /^\d+\.\d+\.\d+\n$/, /^$/],
    ['a render without a name', ['render', good], 2, /^$/, /render needs -o OUT/],
    ['a still without a place', ['still', good, '-o', 'x.png'], 2, /^$/, /one of --step ID and --at TIME/],
    [
      'a still of a step that is not there',
      ['still', good, '--step', 'frist', '-o', 'x.png'],
      2,
      /^$/,
      /did you mean first\?/,
    ],
    ['a still of two', ['still', good, '--step', 'first', '--at', '0', '-o', 'x.png'], 2, /^$/, /both --step and --at/],
    [
      'a still of a step without a frame',
      ['still', passing, '--step', 'first', '-o', 'x.png'],
      2,
      /^$/,
      /step first is on no frame: it begins and ends at 0:00\.00; give it time, or use --at/,
    ],
    [
      'a still as a version of none',
      ['still', good, '--at', '0', '--as', 'tall', '-o', 'x.png'],
      2,
      /^$/,
      /no versions/,
    ],
    [
      'a still as a misspelt version',
      ['still', framed, '--at', '0', '--as', 'uprihgt', '-o', 'x.png'],
      2,
      /^$/,
      /^proofreel: the scene has no version uprihgt; did you mean upright\?\n$/,
    ],
    ['a still past the end', ['still', good, '--at', '9', '-o', 'x.png'], 2, /^$/, /--at 9 is past the end/],
  ] as const)('%s', async (_, args, status, out, err) => {
    const ran = await run(...args);
    expect(ran.err).toMatch(err);
    expect(ran.out).toMatch(out);
    expect(ran.status).toBe(status);
    expect(ran.err).not.toMatch(/^\s+at .*\.ts/m);
  });
});

const reportSchema = JSON.parse((await run('schema', '--report')).out) as object;
describe('check --json', () => {
  const isValid = new Ajv2020({ strict: false }).compile(reportSchema);

  it.each([
    ['a sound scene', good, 0, true],
    ['an unsound scene', bad, 1, false],
    ['an unreadable scene', unreadable, 2, false],
  ] as const)('prints a report by its own schema for %s', async (_, path, status, isSound) => {
    const ran = await run('check', path, '--json');
    const report = JSON.parse(ran.out) as { sound: boolean; scene: string; steps: unknown[]; errors: unknown[] };
    expect(ran.status).toBe(status);
    expect(isValid(report), JSON.stringify(isValid.errors)).toBe(true);
    expect(report).toMatchObject({ sound: isSound, scene: path, report: 1 });
    if (status === 2) expect([report.steps.length, report.errors.length > 0]).toEqual([0, true]);
  });
});

describe('render and still', () => {
  it('writes frames of a sound scene', async () => {
    const out = join(folder, 'frames');
    const ran = await run('render', good, '-o', out);
    expect(ran.err).toContain('12 frames');
    expect([ran.status, readdirSync(out).length, ran.out]).toEqual([0, 12, '']);
  });

  it('refuses an unsound scene and leaves no file', async () => {
    const out = join(folder, 'bad.mov');
    const ran = await run('render', bad, '-o', out);
    expect([ran.status, existsSync(out)]).toEqual([1, false]);
    expect(ran.err).toContain('r3c1=3 is false');
  });

  it('stamps it where that is asked for', async () => {
    const [plain, stamped] = [join(folder, 'plain.png'), join(folder, 'stamped.png')];
    expect((await run('still', good, '--step', 'first', '-o', plain)).status).toBe(0);
    expect((await run('still', bad, '--step', 'first', '-o', join(folder, 'refused.png'))).status).toBe(1);
    expect(existsSync(join(folder, 'refused.png'))).toBe(false);
    expect((await run('still', bad, '--step', 'first', '--stamp', '-o', stamped)).status).toBe(0);
    const [a, b] = [plain, stamped].map((file) => PNG.sync.read(readFileSync(file)));
    expect([b?.width, b?.height]).toEqual([320, 240]);
    expect(a?.data.equals(b?.data ?? Buffer.alloc(0))).toBe(false);
  });

  it.each([
    ['upright', 180, 320],
    ['placed', 160, 90],
  ] as const)('draws on the frame of the version %s', async (name, width, height) => {
    const [one, frames] = [join(folder, `${name}.png`), join(folder, `${name}-frames`)];
    expect((await run('still', framed, '--step', 'first', '--as', name, '-o', one)).status).toBe(0);
    expect((await run('render', framed, '--as', name, '-o', frames)).status).toBe(0);
    for (const file of [one, join(frames, readdirSync(frames)[0]!)]) {
      const png = PNG.sync.read(readFileSync(file));
      expect([png.width, png.height]).toEqual([width, height]);
    }
  });

  it('a version says where its own times are wrong', async () => {
    const late = written('late.yaml', readFileSync(framed, 'utf8').replace('side: 80}', 'side: 80, at: cue none}'));
    const ran = await run('check', late);
    expect(ran.status).toBe(2);
    expect(ran.err).toMatch(/late\.yaml:13:\d+: error [\s\S]*cue none needs a narration/);
  });

  it('says what an .mp4 of an overlay needs', async () => {
    const overlay = written('overlay.yaml', sound.replace('draw: board', 'draw: overlay'));
    const ran = await run('render', overlay, '-o', join(folder, 'overlay.mp4'));
    expect(ran.status).toBe(2);
    expect(ran.err).toMatch(/carries no transparency.*--key/);
  });
});
