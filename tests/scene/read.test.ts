/**
 * A scene that uses the whole language, read to typed values.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { membersOf } from '../../src/grid/candidates.ts';
import { printCandidate, printChain, printConclusion, printSet } from '../../src/grid/notation/print.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { fraction, toNumber } from '../../src/scene/fraction.ts';
import type { BeatMark, Scene } from '../../src/scene/scene.ts';

const puzzle = `
proofreel: 1
puzzle:
  boxes: 2x2
  givens: 1..4 .4.. ..43 ...1
`;

function sceneOf(text: string): Scene {
  const { scene, diagnostics } = readScene(text);
  expect(diagnostics).toEqual([]);
  if (scene === undefined) throw new Error('no scene');
  return scene;
}

describe('a scene with nothing but what is required', () => {
  const scene = sceneOf(`${puzzle}steps:\n  - id: only\n`);
  it('has a video of its own', () => {
    expect(scene.video).toEqual({
      width: 1920,
      height: 1080,
      rate: fraction(30),
      length: undefined,
      timecode: undefined,
      board: [],
      small: '123',
      draw: 'board',
      candidates: 'all',
      coordinates: false,
      subtitles: false,
      camera: undefined,
      narration: undefined,
      audio: undefined,
      footage: undefined,
    });
  });
  it('has a puzzle that may have assumptions, and a step that claims nothing', () => {
    expect(scene.puzzle.uniqueness).toBe('allowed');
    expect(scene.puzzle.givens.map((digit) => digit ?? '.').join('')).toBe('1..4.4....43...1');
    expect(scene.steps[0]).toMatchObject({
      id: 'only',
      so: undefined,
      show: undefined,
      fails: false,
      from: [],
      chains: [],
    });
  });
});

describe('the givens', () => {
  const expected = '1..4.4....43...1';
  const rows: readonly [string, string][] = [
    ['in one line', 'givens: 1..4.4....43...1'],
    ['as digits alone, which YAML takes for a number', 'givens: 1004040000430001'],
    ['in quotes', 'givens: "1__4 _4__ __43 ___1"'],
    ['as a literal with lines drawn', 'givens: |\n    1.|.4\n    .4|..\n    --+--\n    ..|43\n    ..|.1'],
    ['folded', 'givens: >\n    1..4 .4..\n    ..43 ...1'],
  ];
  it.each(rows)('%s', (_, givens) => {
    const scene = sceneOf(`proofreel: 1\npuzzle:\n  boxes: 2x2\n  ${givens}\nsteps:\n  - id: a\n`);
    expect(scene.puzzle.givens.map((digit) => digit ?? '.').join('')).toBe(expected);
  });
});

describe('scalars are read by their source', () => {
  it('as names, words and offsets that YAML would guess at', () => {
    const scene = sceneOf(
      `${puzzle}title: 012\nsteps:\n  - id: 1e3\n    say: yes\n    title: null\n  - id: "0x1"\n    at: +1.5\n    chapter: ~\n`,
    );
    expect(scene.title).toBe('012');
    expect(scene.steps[0]).toMatchObject({ id: '1e3', title: 'null', say: { value: 'yes' } });
    expect(scene.steps[1]).toMatchObject({
      id: '0x1',
      chapter: '~',
      at: { value: { kind: 'after', seconds: fraction(3, 2) } },
    });
  });
  it('whatever the style of the text', () => {
    const scene = sceneOf(
      `${puzzle}steps:\n  - id: a\n    say: 'it''s'\n    title: "a: b #c"\n    chapter: >-\n      one: two\n      three # four\n`,
    );
    expect(scene.steps[0]).toMatchObject({
      say: { value: "it's" },
      title: 'a: b #c',
      chapter: 'one: two three # four',
    });
  });
  it('an alias stands for a text', () => {
    const scene = sceneOf(`${puzzle}title: &t The room\nsteps:\n  - id: a\n    title: *t\n`);
    expect(scene.steps[0]?.title).toBe('The room');
  });
});

describe('the video', () => {
  const videoOf = (video: string) => sceneOf(`${puzzle}video: ${video}\nsteps:\n  - id: a\n`).video;
  it('of an exact rate', () => {
    expect(videoOf('{rate: 30000/1001}').rate).toEqual(fraction(30_000, 1001));
    expect(videoOf('{rate: 24000/1001}').rate).toEqual(fraction(24_000, 1001));
    expect(videoOf('{rate: 48/1}').rate).toEqual(fraction(48));
    expect(videoOf('{rate: 60}').rate).toEqual(fraction(60));
  });
  it('draws over what lies under it, and all of it where nothing does', () => {
    expect(videoOf('{footage: take.mp4}').draw).toBe('overlay');
    expect(videoOf('{board: {left: 0, top: 0, side: 900}}').draw).toBe('overlay');
    expect(videoOf('{audio: talk.flac}').draw).toBe('board');
    expect(videoOf('{footage: take.mp4, draw: writing}').draw).toBe('writing');
  });
  it('with footage from a moment on', () => {
    expect(videoOf('{footage: {file: take.mp4, start: 0:12}}').footage).toMatchObject({
      file: { value: 'take.mp4' },
      start: { value: { kind: 'seconds', seconds: fraction(12) } },
    });
  });
  it('with a board that moves', () => {
    const board = videoOf(
      '{board: [{left: -20.5, top: 60, side: 960, at: 0}, {corners: [[10, 20], [800, 0], [790.5, 700], [0, 650]], at: 1:00}, {hidden: true, at: cue away}]}',
    ).board;
    expect(board.map((placement) => placement.shape)).toEqual([
      { kind: 'square', left: -20.5, top: 60, side: 960 },
      {
        kind: 'corners',
        corners: [
          [10, 20],
          [800, 0],
          [790.5, 700],
          [0, 650],
        ],
      },
      { kind: 'hidden' },
    ]);
    expect(board.map((placement) => placement.at?.value.kind)).toEqual(['seconds', 'seconds', 'cue']);
  });
  it('with one place of the board, alone or in a list of one', () => {
    const shape = { kind: 'square', left: 1, top: 2, side: 300 };
    expect(videoOf('{board: {left: 1, top: 2, side: 300}}').board).toEqual([{ shape, at: undefined }]);
    expect(videoOf('{board: [{left: 1, top: 2, side: 300}]}').board).toEqual([{ shape, at: undefined }]);
  });
});

const argued = `${puzzle}groups: {feet: blue, tops: orange}
steps:
  - id: first
    because: Naked Singles
    from: r1c2 2b1
    chain: (2)r1c2=r1c3 => r1c3<>2
    so: r1c3<>2
  - id: second
    called: a trick
    from: step third-to-be
    so: either 2r1c2 3r1c2
    until: +4
`.replace('    from: step third-to-be\n', '');

describe('an argument', () => {
  const scene = sceneOf(
    `${argued}  - id: third
    from: step second, r1c2
    deadly: 12r12c13
    so: all
    only:
      - 1r1 in r1c1
      - {only: 4r1 in r1c4, at: +2}
    pencil: 23r1c2 23r1c3
    cascade:
      - r1c2=2 r1c3=3
      - cascade: r2c1=3
        because: hidden single
        from: 3r2
        at: +3
    fails: false
`,
  );
  const [first, second, third] = scene.steps;
  const { grid } = scene.puzzle;
  it('has its name in one spelling, and as written', () => {
    expect(first?.because).toMatchObject({ name: 'naked single', written: 'Naked Singles' });
  });
  it('has sets, chains and conclusions', () => {
    expect(first?.from.map((set) => printSet(grid, set.value))).toEqual(['r1c2', '2b1']);
    expect(first?.chains.map((chain) => printChain(grid, chain.value))).toEqual(['(2)r1c2=r1c3 => r1c3<>2']);
    expect(first?.so).toMatchObject({ kind: 'listed', conclusions: [{ value: { kind: 'impossible' } }] });
    expect(third?.from.map((set) => printSet(grid, set.value))).toEqual(['step second', 'r1c2']);
    expect(third?.so).toEqual({ kind: 'all' });
  });
  it('has a name of the author, and an end', () => {
    expect(second).toMatchObject({ called: 'a trick', until: { value: { kind: 'after' } } });
  });
  it('has items, alone or with a time and an argument of their own', () => {
    expect(third?.only.map((item) => [item.places.length, item.at?.value.kind])).toEqual([
      [1, undefined],
      [1, 'after'],
    ]);
    expect(third?.pencil.map((item) => item.lists.length)).toEqual([2]);
    expect(third?.cascade.map((item) => item.conclusions.map((each) => printConclusion(grid, each.value)))).toEqual([
      ['r1c2=2', 'r1c3=3'],
      ['r2c1=3'],
    ]);
    expect(third?.cascade[1]).toMatchObject({ because: { name: 'hidden single' }, at: { value: { kind: 'after' } } });
    expect(third?.cascade[1]?.from.map((set) => printSet(grid, set.value))).toEqual(['3r2']);
  });
});

describe('each mark', () => {
  const markOf = (beat: string): BeatMark | undefined =>
    sceneOf(`${argued}    show:\n      - ${beat}\n`).steps[1]?.show?.[0]?.mark;
  const claims = `${puzzle}steps:\n  - id: a\n    chain: [(2)r1c2=r1c3-r2c3, (3)r1c2=r1c3]\n    so: r1c3<>2\n    cascade: r1c2=2\n    show:\n      - `;
  const claimed = (beat: string) => sceneOf(`${claims}${beat}\n`).steps[0]?.show?.[0]?.mark;

  const rows: readonly [string, object][] = [
    [
      '{fill: r1c2 b2 3 2r1c2}',
      { kind: 'fill', targets: [{ kind: 'cells' }, { kind: 'house' }, { kind: 'digit' }, { kind: 'candidates' }] },
    ],
    ['fill: 7'.replace('7', '4'), { kind: 'fill', targets: [{ kind: 'digit', digit: 4 }] }],
    ['{circle: 2r1c23}', { kind: 'circle', targets: [{ kind: 'candidates' }] }],
    ['{outline: r12c3}', { kind: 'outline', targets: [{ kind: 'cells' }] }],
    ['{label: 2r1c2 "roof: 1"}'.replace(': 1', ''), { kind: 'label', text: 'roof' }],
    ['{note: Look here}', { kind: 'note', text: 'Look here' }],
    ['{focus: c2}', { kind: 'focus', targets: [{ kind: 'house' }] }],
    ['{sight: 4r1c4}', { kind: 'sight', sights: [{ digit: 4, way: { kind: 'everywhere' } }] }],
    [
      '{sight: {of: r1c4, along: r1}}',
      { kind: 'sight', sights: [{ digit: undefined, way: { kind: 'along', house: { name: 'r1' } } }] },
    ],
    ['{sight: {of: 4r1c4, into: b1}}', { kind: 'sight', sights: [{ way: { kind: 'into', house: { name: 'b1' } } }] }],
    ['{ask: Which?}', { kind: 'ask', text: 'Which?', hold: fraction(5) }],
    ['{ask: Which?, hold: 2.5}', { kind: 'ask', hold: fraction(5, 2) }],
    ['{clear: all}', { kind: 'clear', what: 'all' }],
    ['{clear: first feet}', { kind: 'clear', what: ['first', 'feet'] }],
  ];
  it.each(rows)('%s', (beat, mark) => expect(markOf(beat)).toMatchObject(mark));

  const ofClaims: readonly [string, object][] = [
    ['{link: all}', { kind: 'link', links: 'all' }],
    [
      '{link: "1, 2:1"}',
      {
        kind: 'link',
        links: [
          { chain: 1, first: 1, last: 1 },
          { chain: 2, first: 1, last: 1 },
        ],
      },
    ],
    ['{link: 1-2}', { kind: 'link', links: [{ chain: 1, first: 1, last: 2 }] }],
    ['{strike: all, gone: +2}', { kind: 'strike', candidates: 'all', gone: { value: { kind: 'after' } } }],
    ['{place: all}', { kind: 'place', cells: 'all' }],
  ];
  it.each(ofClaims)('%s of a claim', (beat, mark) => expect(claimed(beat)).toMatchObject(mark));
  it('{strike: 2r1c3} and {place: r1c2} of a claim', () => {
    const strike = claimed('{strike: 2r1c3}');
    const place = claimed('{place: r1c2}');
    expect(strike?.kind === 'strike' && strike.candidates).toEqual([9]);
    expect(place?.kind === 'place' && place.cells).toEqual([1]);
  });
  it('has a time, a group, and may stay', () => {
    const beats = sceneOf(
      `${argued}    show:\n      - {fill: r1, at: +1, group: tops, keep: true}\n      - {fill: r2}\n`,
    ).steps[1]?.show;
    expect(beats).toMatchObject([
      { at: { value: { kind: 'after' } }, group: 'tops', keep: true },
      { at: undefined, group: undefined, keep: false },
    ]);
  });
  it('may be struck where pencil or only leaves it out', () => {
    sceneOf(`${puzzle}steps:\n  - id: a\n    pencil: 23r1c2\n    show:\n      - {strike: 14r1c2}\n`);
    sceneOf(`${puzzle}steps:\n  - id: a\n    only: 1r1 in r1c1\n    show:\n      - {strike: 1r1c23}\n`);
  });
});

describe('spans', () => {
  const text = `${puzzle}steps:\n  - id: first\n    so: >-\n      r1c2=2\n      r1c3<>2 r1c3<>1\n  - {id: second, say: Look}\n`;
  const scene = sceneOf(text);
  const cut = (span: { readonly start: number; readonly end: number } | undefined) =>
    span && text.slice(span.start, span.end);
  it('hold the step, its id, and each conclusion', () => {
    expect(cut(scene.steps[0]?.span)).toBe('id: first\n    so: >-\n      r1c2=2\n      r1c3<>2 r1c3<>1');
    expect(cut(scene.steps[1]?.span)).toBe('{id: second, say: Look}');
    expect(cut(scene.steps[0]?.idSpan)).toBe('first');
    const so = scene.steps[0]?.so;
    expect(so?.kind === 'listed' && so.conclusions.map((each) => cut(each.span))).toEqual([
      'r1c2=2',
      'r1c3<>2',
      'r1c3<>1',
    ]);
  });
  it('hold the givens', () => expect(cut(scene.puzzle.givensSpan)).toBe('1..4 .4.. ..43 ...1'));
});

it('names of groups and versions may be those of members that every object has', () => {
  const { groups, versions, steps } = sceneOf(`${puzzle}groups: {__proto__: sky, constructor: orange}
versions: {toString: {size: 1080x1920}, __proto__: {size: 1080x1080}}
steps: [{id: valueOf, show: [{fill: r1, group: __proto__}, {clear: constructor}]}]
`);
  expect(groups).toEqual([
    { name: '__proto__', colour: 'sky' },
    { name: 'constructor', colour: 'orange' },
  ]);
  expect(versions.map(({ name, height }) => [name, height])).toEqual([
    ['toString', 1920],
    ['__proto__', 1080],
  ]);
  expect(steps[0]?.show?.map(({ group }) => group)).toEqual(['__proto__', undefined]);
});

describe('a scene that came from elsewhere', () => {
  it('with a byte order mark and carriage returns is the same scene', () => {
    const text = `${argued}`.trimStart();
    const other = sceneOf(`\ufeff${text.replaceAll('\n', '\r\n')}`);
    const scene = sceneOf(text);
    expect(other.steps.map((step) => step.id)).toEqual(scene.steps.map((step) => step.id));
    expect(other.puzzle.givens).toEqual(scene.puzzle.givens);
  });
  it('with document markers and a directive is read', () => {
    sceneOf(`%YAML 1.2\n---${puzzle}steps:\n  - id: a\n...\n`);
  });
});

describe('the scenes of the project', () => {
  const folders = ['../../scenes/', '../scenes/checks/'].map((folder) => new URL(folder, import.meta.url));
  const files = folders.flatMap((folder) =>
    readdirSync(folder)
      .filter((name) => name.endsWith('.yaml') && !name.startsWith('unreadable'))
      .map((name) => new URL(name, folder)),
  );
  it.each(files.map((file) => [file.pathname.split('/').at(-1)!, file] as const))(
    '%s is read without an error',
    (_, file) => {
      const { scene, diagnostics } = readScene(readFileSync(file, 'utf8'));
      expect(diagnostics.filter((diagnostic) => diagnostic.severity === 'error')).toEqual([]);
      expect(scene?.steps.length).toBeGreaterThan(0);
    },
  );
});

it('start is what stands and what is gone when the video begins', () => {
  const scene = sceneOf(
    `${puzzle}  start: {placed: r1c2=2, removed: r1c3<>1}\nsteps:\n  - id: a\n`.replace(
      '...1\n  start',
      '...1\n  start',
    ),
  );
  const { grid, start } = scene.puzzle;
  expect(start.map((each) => printConclusion(grid, each.value))).toEqual(['r1c2=2', 'r1c3<>1']);
  const [placed] = start;
  expect(
    placed?.value.kind === 'one-of' && membersOf(placed.value.candidates).map((each) => printCandidate(grid, each)),
  ).toEqual(['2r1c2']);
  expect(toNumber(scene.video.rate)).toBe(30);
});
