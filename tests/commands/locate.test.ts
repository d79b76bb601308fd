/** `proofreel locate` on small recordings, and what it refuses. */
import { execFileSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Ajv2020 from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readScene } from '../../src/lesson/read-scene.ts';
import { type Corners, furthestApart, meanSide } from '../../src/recording/corners.ts';
import { locateSchema } from '../../src/report/locate-report.ts';
import { film } from '../recording/takes/film.ts';
import type { Take, Truth } from '../recording/takes/take.ts';
import { takeFrom } from '../recording/takes/takes.ts';
import { run } from './run.ts';

let folder = '';
const at = (name: string) => join(folder, name);
const small = { width: 640, height: 360, rate: 25, webcam: false } as const;
let take: Take;
let truth: Truth;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'proofreel-locate-'));
  take = takeFrom(11, {
    ...small,
    size: 6,
    seconds: 4,
    second: true,
    covers: [{ kind: 'title', from: 0, until: 20, fadeFrames: 0 }],
    moves: [{ from: 60, until: 70, to: { zoom: 1.15, x: 330, y: 185 }, eased: false }],
  });
  truth = await film(take, at('take.mp4'));
  await film(takeFrom(12, { ...small, size: 9, seconds: 1 }), at('other.mp4'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function scene(extra = ''): string {
  const puzzle = `puzzle: {boxes: 2x3, givens: '${truth.givens}'}`;
  return `proofreel: 1\n${puzzle}\nvideo:\n  size: 640x360 # small\n${extra}steps: [{id: look, say: Look}]\n`;
}

interface Reported {
  readonly sure: boolean;
  readonly cells: number;
  readonly others: readonly unknown[];
  readonly board: readonly {
    readonly from: number;
    readonly to: number;
    readonly corners?: Corners;
    readonly hidden?: true;
    readonly path?: readonly { readonly t: number; readonly corners: Corners }[];
  }[];
}

describe('locate', () => {
  it('finds the board, the card before it and the zoom', async () => {
    const { status, out, err } = await run('locate', at('take.mp4'), '--json', '--puzzle', truth.givens);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    const report: Reported = JSON.parse(out);
    expect(report).toMatchObject({ sure: true, cells: 6 });
    const validate = new Ajv2020.default({ strict: false }).compile(locateSchema());
    expect([validate(report), validate.errors]).toEqual([true, null]);
    expect(validate({ ...report, board: [{ from: 0, to: 1 }] })).toBe(false);
    const kinds = report.board.map((each) => (each.hidden ? 'hidden' : each.path === undefined ? 'still' : 'moving'));
    expect(kinds).toEqual(['hidden', 'still', 'moving', 'still']);
    for (const [index, stretch] of report.board.entries()) {
      const expected = truth.board[index]!;
      expect(Math.abs(stretch.from - expected.from)).toBeLessThan(2.1 / 25);
      if (stretch.corners === undefined || !('corners' in expected)) continue;
      expect((furthestApart(stretch.corners, expected.corners) / meanSide(expected.corners)) * 6).toBeLessThan(0.04);
    }
    for (const { t, corners } of report.board[2]!.path!) {
      const expected = truth.board
        .flatMap((each) => ('path' in each ? each.path : []))
        .find((each) => Math.abs(each.t - t) < 0.001);
      if (expected === undefined) continue;
      expect((furthestApart(corners, expected.corners) / meanSide(corners)) * 6).toBeLessThan(0.04);
    }
  });

  it('says the same in words, and draws it', async () => {
    const { status, out, err } = await run('locate', at('take.mp4'), '-o', at('found.png'));
    expect(status).toBe(0);
    expect(out).toContain('a board of 6x6 cells, sure');
    expect(out).toMatch(/0:00.000 - 0:00.800 {2}hidden/);
    expect(err).toContain('found.png: what was found');
    expect(readFileSync(at('found.png')).subarray(1, 4).toString()).toBe('PNG');
  });

  it('writes the board into a scene, and nothing else', async () => {
    const text = scene('  footage: take.mp4\n');
    writeFileSync(at('lesson.yaml'), text);
    const { status, err } = await run('locate', at('take.mp4'), '--write', at('lesson.yaml'));
    expect(status).toBe(0);
    expect(err).toContain('video.board written');
    const written = readFileSync(at('lesson.yaml'), 'utf8');
    expect(written.replace(/ {2}board:\n( {4}- .*\n)+/, '')).toBe(text);
    const board = readScene(written).scene!.video.board;
    expect(board[0]!.shape.kind).toBe('hidden');
    expect(board.at(-1)!.shape.kind).toBe('square');
    expect(board.length).toBeGreaterThan(8);
  });

  it('counts from the moment at which the footage begins', async () => {
    writeFileSync(at('later.yaml'), scene('  footage: {file: take.mp4, start: 0:03}\n'));
    expect((await run('locate', at('take.mp4'), '--write', at('later.yaml'))).status).toBe(0);
    expect(readScene(readFileSync(at('later.yaml'), 'utf8')).scene!.video.board).toHaveLength(1);
  });

  it('finds the board of a picture', async () => {
    execFileSync('ffmpeg', ['-v', 'error', '-ss', '1.5', '-i', at('take.mp4'), '-frames:v', '1', at('shot.png')]);
    const { status, out } = await run('locate', at('shot.png'), '--json');
    expect(status).toBe(0);
    const report: Reported = JSON.parse(out);
    expect(report.board).toHaveLength(1);
    const expected = truth.board[1]!;
    expect('corners' in expected && furthestApart(report.board[0]!.corners!, expected.corners)).toBeLessThan(1.5);
  });
});

describe('what cannot be answered is said, and nothing is written', () => {
  it('no board', async () => {
    const source = ['-f', 'lavfi', '-i', 'testsrc=s=320x240:d=1'];
    execFileSync('ffmpeg', ['-v', 'error', ...source, at('none.mp4')]);
    writeFileSync(at('kept.yaml'), scene());
    const { status, err, out } = await run('locate', at('none.mp4'), '--write', at('kept.yaml'));
    expect({ status, out }).toEqual({ status: 1, out: '' });
    expect(err).toContain('no board of 6x6 cells is found in');
    expect(readFileSync(at('kept.yaml'), 'utf8')).toBe(scene());
  });

  it('two boards', async () => {
    const both = ['-i', at('other.mp4'), '-i', at('other.mp4'), '-filter_complex', 'hstack'];
    execFileSync('ffmpeg', ['-v', 'error', ...both, at('two.mp4')]);
    const { status, err } = await run('locate', at('two.mp4'), '-o', at('two.png'));
    expect(status).toBe(1);
    expect(err).toMatch(
      /shows several boards at 0:00.000, as large as each other: 9x9 at .*; say which is meant with --puzzle/,
    );
    expect(existsSync(at('two.png'))).toBe(false);
  });

  it('another puzzle', async () => {
    const mirrored = [...truth.givens].reverse().join('');
    const { status, err } = await run('locate', at('take.mp4'), '--puzzle', mirrored);
    expect(status).toBe(1);
    expect(err).toContain('is not that of this puzzle');
  });

  it('a puzzle of another size', async () => {
    const { status, err } = await run('locate', at('other.mp4'), '--puzzle', truth.givens);
    expect(status).toBe(1);
    expect(err).toContain('no board of 6x6 cells is found');
  });

  const h264 = ['-c:v', 'libx264', '-pix_fmt', 'yuv420p'];
  const rows: readonly (readonly [what: string, make: () => string, message: string])[] = [
    ['no such file', () => at('absent.mp4'), 'there is no file'],
    [
      'sound alone',
      () => {
        execFileSync('ffmpeg', ['-v', 'error', '-y', '-f', 'lavfi', '-i', 'sine=d=1', at('tone.wav')]);
        return at('tone.wav');
      },
      'tone.wav holds sound alone',
    ],
    [
      'a high dynamic range',
      () => {
        const words = ['-f', 'lavfi', '-i', 'color=gray:s=64x48:d=1', ...h264, '-color_trc', 'arib-std-b67'];
        execFileSync('ffmpeg', ['-v', 'error', '-y', ...words, at('bright.mp4')]);
        return at('bright.mp4');
      },
      'bright.mp4 has a high dynamic range (HLG)',
    ],
    [
      'a recording without its list of pictures',
      () => {
        copyFileSync(at('take.mp4'), at('cut.mp4'));
        truncateSync(at('cut.mp4'), 20_000);
        return at('cut.mp4');
      },
      'cut.mp4 is cut off: its end is missing',
    ],
    [
      'a recording cut short',
      () => {
        const words = ['-i', at('take.mp4'), '-c', 'copy', '-movflags', 'faststart'];
        execFileSync('ffmpeg', ['-v', 'error', '-y', ...words, at('front.mp4')]);
        truncateSync(at('front.mp4'), 25_000);
        return at('front.mp4');
      },
      'front.mp4 is cut short',
    ],
    [
      'a text',
      () => {
        writeFileSync(at('words.mp4'), 'words');
        return at('words.mp4');
      },
      'words.mp4',
    ],
  ];
  it.each(rows)('%s', async (_, make, message) => {
    writeFileSync(at('kept.yaml'), scene());
    const { status, err, out } = await run('locate', make(), '--write', at('kept.yaml'));
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(message);
    expect(readFileSync(at('kept.yaml'), 'utf8')).toBe(scene());
  });

  it('a picture that is not called one', async () => {
    const { status, err } = await run('locate', at('take.mp4'), '-o', at('found.jpg'));
    expect({ status, err }).toEqual({
      status: 2,
      err: "proofreel: -o is a picture: name it with .png, not 'found.jpg'\n",
    });
  });

  it('a scene with faults, at their place', async () => {
    writeFileSync(at('bad.yaml'), scene('  speed: 3\n'));
    const { status, err } = await run('locate', at('take.mp4'), '--write', at('bad.yaml'));
    expect(status).toBe(2);
    expect(err).toContain('bad.yaml:5:3: error unknown-key');
  });
});

it('an upright recording is read like any other', async () => {
  const filter = 'pad=640:1140:0:300:gray';
  execFileSync('ffmpeg', ['-v', 'error', '-i', at('other.mp4'), '-vf', filter, at('tall.mp4')]);
  const [wide, tall] = [await run('locate', at('other.mp4'), '--json'), await run('locate', at('tall.mp4'), '--json')];
  expect([wide.status, tall.status]).toEqual([0, 0]);
  const cornersIn = ({ out }: typeof wide) => (JSON.parse(out) as Reported).board[0]!.corners!;
  const [a, b, c, d] = cornersIn(wide).map(([x, y]) => [x, y + 300] as const);
  expect(furthestApart(cornersIn(tall), [a!, b!, c!, d!])).toBeLessThan(0.5);
});
