import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { run } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'proofreel-beside-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const path = (name: string) => join(folder, name);
function written(name: string, text: string): string {
  writeFileSync(path(name), text);
  return path(name);
}

const puzzle = 'proofreel: 1\npuzzle:\n  boxes: 2x2\n  givens: 1.34 3412 .143 432.\n';
const steps = `steps:
  - {id: first, at: 0, say: 'Row three has one place for its two.', from: 2r3, so: r3c1=2, chapter: One}
  - {id: second, at: 12, say: And so on., chapter: Two}
  - {id: third, at: 24, say: And on., chapter: Three}
`;
const good = written('good.yaml', `${puzzle}video: {size: 320x240, rate: 24, length: 40}\n${steps}`);
const bad = written('bad.yaml', readFileSync(good, 'utf8').replace('so: r3c1=2', 'so: r3c1=3'));
const silent = written('silent.yaml', `${puzzle}steps:\n  - {id: first, from: 2r3, so: r3c1=2}\n`);
const talk = written('talk.vtt', 'WEBVTT\n\n00:01.000 --> 00:03.000\nSpoken words.\n\n00:04.000 -->\nbroken\n');
const spoken = written(
  'spoken.yaml',
  `${puzzle}video: {size: 320x240, rate: 24, length: 40, narration: talk.vtt}\n${steps}`,
);

describe('captions', () => {
  it('to standard output, without a word beside them', async () => {
    const { status, out, err } = await run('captions', good);
    expect([status, err]).toEqual([0, '']);
    expect(out).toMatch(
      /^WEBVTT\n\nfirst\n00:00:00\.000 --> 00:00:03\.200\nRow three has one place for its two\.\n\nsecond\n/,
    );
  });
  it('into a file, with what is shown beside it', async () => {
    const { status, out, err } = await run('captions', good, '-o', path('a.srt'), '--describe');
    expect([status, out]).toEqual([0, '']);
    expect(err).toMatch(
      /a\.srt: 3 cues, at most [\d.]+ characters a second\n.*a\.descriptions\.srt: \d+ cues of what is shown\n$/,
    );
    expect(readFileSync(path('a.srt'), 'utf8')).toMatch(/^1\n00:00:00,000 --> 00:00:03,200\n/);
    expect(readFileSync(path('a.descriptions.srt'), 'utf8')).toContain('A 2 in row 3 column 1 is');
  });
  it('from the narration where there is one, the broken cue told and left out', async () => {
    const { out, err } = await run('captions', spoken);
    expect(out).toBe('WEBVTT\n\n00:00:01.000 --> 00:00:03.000\nSpoken words.\n');
    expect(err).toMatch(/broken-cue: talk\.vtt:6: no times can be read/);
  });
  it('what is spoken after the end of the video is left out, and told', async () => {
    written('late.vtt', 'WEBVTT\n\n00:01.000 --> 00:03.000\nIn time.\n\n00:50.000 --> 00:52.000\nToo late now.\n');
    const late = written('late.yaml', readFileSync(spoken, 'utf8').replace('talk.vtt', 'late.vtt'));
    const { status, out, err } = await run('captions', late);
    expect([status, out]).toEqual([0, 'WEBVTT\n\n00:00:01.000 --> 00:00:03.000\nIn time.\n']);
    expect(err).toMatch(/3 words are spoken after the end of the video, 0:40\.00, and left out/);
  });
  it('of an unsound scene: written, said, and exit 1', async () => {
    const { status, out, err } = await run('captions', bad);
    expect([status, out.slice(0, 6)]).toEqual([1, 'WEBVTT']);
    expect(err).toMatch(/not sound.*first/);
  });
  const refused: readonly (readonly [why: string, call: readonly string[], message: RegExp])[] = [
    ['a different extension', ['captions', good, '-o', path('a.txt')], /\.vtt or \.srt; .*a\.txt ends differently/],
    ['descriptions without a file', ['captions', good, '--describe'], /second file .*-o OUT\.vtt/],
    ['over the narration', ['captions', spoken, '-o', talk], /'talk\.vtt' is the narration itself/],
    ['nothing is said', ['captions', silent, '-o', path('b.vtt')], /nothing to caption/],
    ['no such scene', ['captions', path('nowhere.yaml')], /there is no scene file/],
  ];
  it.each(refused)('refused: %s', async (_, call, message) => {
    const { status, err } = await run(...call);
    expect([status, err]).toEqual([2, expect.stringMatching(message)]);
    expect(existsSync(path('b.vtt'))).toBe(false);
  });
});

describe('chapters', () => {
  it('the list', async () => {
    expect(await run('chapters', good)).toEqual({
      status: 0,
      out: '0:00 One\n0:12 Two\n0:24 Three\n',
      err: '',
    });
  });
  it('too few and too short are said', async () => {
    const short = written('short.yaml', readFileSync(good, 'utf8').replace('at: 24', 'at: 20'));
    const { out, err } = await run('chapters', short);
    expect(out).toBe('0:00 One\n0:20 Three\n');
    expect(err).toMatch(
      /"Two" is shorter than ten seconds, and is part of "One" here\n.*at least three chapters.*there are 2\n$/,
    );
  });
  it('the titles where there is no chapter', async () => {
    const titled = written('titled.yaml', readFileSync(good, 'utf8').replaceAll('chapter:', 'title:'));
    const { out, err } = await run('chapters', titled);
    expect(out).toBe('0:00 One\n0:12 Two\n0:24 Three\n');
    expect(err).toMatch(/no step of .* has a chapter, so the steps' titles are used/);
  });
  it('a timeline, its files named from where it lies', async () => {
    const { status, err } = await run(
      'chapters',
      spoken,
      '-o',
      path('my lesson.otio'),
      '--video',
      path('my marks.mov'),
    );
    expect([status, err.split('\n').at(-2)]).toEqual([0, `${path('my lesson.otio')}: 3 steps, 3 chapters`]);
    expect(readFileSync(path('my lesson.otio'), 'utf8')).toContain('"target_url": "my%20marks.mov"');
  });
  const refused: readonly (readonly [why: string, call: readonly string[], message: RegExp])[] = [
    ['a different extension', ['chapters', good, '-o', path('a.edl')], /\.txt or \.otio/],
    ['a clip of a list', ['chapters', good, '--video', 'x.mov'], /-o OUT\.otio/],
    ['nothing has a name', ['chapters', silent], /no step of .* has a chapter or a title/],
    [
      'a folder',
      ['chapters', good, '-o', `${folder}/x.yaml/a.txt`.replace('x.yaml', 'good.yaml')],
      /'good\.yaml' is a file/,
    ],
  ];
  it.each(refused)('refused: %s', async (_, call, message) => {
    expect(await run(...call)).toMatchObject({ status: 2, err: expect.stringMatching(message) });
  });
});

describe('retime', () => {
  const old = written('take-1.vtt', 'WEBVTT\n\n00:02.000 --> 00:06.000\nLook at the corner here, then.\n');
  const now = written('take-2.vtt', 'WEBVTT\n\n00:05.000 --> 00:09.000\nLook at the corner here, then.\n');
  const timed = written(
    'timed.yaml',
    `${puzzle}video: {size: 320x240, rate: 24, length: 40, narration: take-1.vtt, audio: take-1.flac}\nsteps:\n  - {id: first, at: 2, from: 2r3, so: r3c1=2}   # here\n  - {id: second, at: +4}\n`,
  );

  it('after a retake: a new file, every move told, the scene’s narration the new one', async () => {
    const { status, out, err } = await run('retime', timed, '--before', old, '--after', now, '-o', path('new.yaml'));
    expect([status, out]).toEqual([0, '']);
    expect(readFileSync(path('new.yaml'), 'utf8')).toBe(
      readFileSync(timed, 'utf8')
        .replace('length: 40', 'length: 43.00')
        .replace('take-1.vtt', 'take-2.vtt')
        .replace('at: 2,', 'at: 5.00,'),
    );
    expect(err.split('\n')).toEqual([
      `${path('new.yaml')}: 2 times moved, 1 that count from a step left`,
      `  ${timed}:5: length: 0:40.00 -> 0:43.00 (+0:03.00)`,
      `  ${timed}:7: first, beginning: 0:02.00 -> 0:05.00 (+0:03.00)`,
      'proofreel: take-1.flac is named as before; name the new recording there',
      '',
    ]);
  });
  it('by a shift, to standard output', async () => {
    const { status, out } = await run('retime', timed, '--stretch', '25/24', '--offset=-0:00.5');
    // 2 * 25/24 - 1/2 = 1.5833 s is frame 38; 40 * 25/24 - 1/2 = 41.1667 s is frame 988.
    expect([status, out]).toEqual([
      0,
      readFileSync(timed, 'utf8').replace('length: 40', 'length: 41.17').replace('at: 2,', 'at: 1.58,'),
    ]);
  });
  it('words that are no longer spoken are told', async () => {
    const other = written('take-3.vtt', 'WEBVTT\n\n00:05.000 --> 00:09.000\nWatch the corner here, then.\n');
    const { status, err } = await run('retime', timed, '--before', old, '--after', other);
    expect(status).toBe(0);
    expect(err).toMatch(
      /1 place to look at, since words are no longer spoken:\n .*timed\.yaml:7: first: the word at which this beginning was, "Look"/,
    );
  });

  const refused: readonly (readonly [why: string, call: readonly string[], message: RegExp])[] = [
    ['nothing to go by', ['retime', timed], /needs --before OLD\.vtt and --after NEW\.vtt, or --offset or --stretch/],
    ['one narration', ['retime', timed, '--before', old], /--after NEW\.vtt is missing/],
    ['both ways', ['retime', timed, '--before', old, '--after', now, '--offset', '1'], /leave one pair out/],
    [
      'no such narration',
      ['retime', timed, '--before', path('no.vtt'), '--after', now],
      /--before: there is no narration/,
    ],
    ['a folder', ['retime', timed, '--before', folder, '--after', now], /cannot be read/],
    [
      'no words',
      ['retime', timed, '--before', written('empty.vtt', 'WEBVTT\n'), '--after', now],
      /has no words to follow/,
    ],
    [
      'another lesson',
      ['retime', timed, '--before', old, '--after', written('x.vtt', 'WEBVTT\n\n00:01.000 --> 00:02.000\nNein.\n')],
      /no words in common/,
    ],
    ['a factor of nothing', ['retime', timed, '--stretch', '0'], /--stretch 0: write a factor above zero/],
    ['a factor that is none', ['retime', timed, '--stretch', '25/24/2'], /write a factor/],
    ['an offset that is none', ['retime', timed, '--offset', 'soon'], /--offset soon: write seconds/],
    [
      'before the start',
      ['retime', timed, '--offset=-3'],
      /1 time would be before the start of the video, first in line 7 \(0:02\.00\)/,
    ],
    ['over the scene', ['retime', timed, '--offset', '1', '-o', timed], /'timed\.yaml' is the scene itself/],
    [
      'over the narration',
      ['retime', timed, '--before', old, '--after', now, '-o', now],
      /'take-2\.vtt' is the new narration itself/,
    ],
  ];
  it.each(refused)('refused: %s', async (_, call, message) => {
    expect(await run(...call)).toEqual({ status: 2, out: '', err: expect.stringMatching(message) });
  });
});
