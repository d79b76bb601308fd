/**
 * The kinds of files and calls that are changed by chance, and what is done with each. A case is a text, so that it can be
 * kept as a file.
 */
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';
import { startPosition } from '../../src/check/start-position.ts';
import { draftOf } from '../../src/draft/draft.ts';
import { readPhrases } from '../../src/draft/phrases.ts';
import { possibleFrom, solutionsOf } from '../../src/grid/solutions.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { MachineFailure } from '../../src/output/machine/machine-failure.ts';
import { joinParts } from '../../src/output/parts/join-parts.ts';
import { defaultLook } from '../../src/picture/default-look.ts';
import { planFor } from '../../src/plan/plan.ts';
import { readBarePuzzle } from '../../src/scene/bare-puzzle.ts';
import { readLook } from '../../src/scene/read-look.ts';
import { readTeachingCosts } from '../../src/scene/teaching-costs.ts';
import { readNarration } from '../../src/timeline/narration.ts';
import { verbs } from '../../src/verbs/verbs.ts';
import { run } from '../commands/run.ts';
import type { Chance } from '../random.ts';
import { awkward, changed, changedLines, changedText, type Stock, stockOf } from './change.ts';
import { expectPlain, runScene } from './run-scene.ts';
import { printTree, type Tree, treeOf } from './tree.ts';

export interface Kind {
  /** How often one of this kind is made, measured against the others. */
  readonly weight: number;
  readonly make: (chance: Chance) => string;
  /** `folder` is empty, and for this case alone. Throws where the program does not stand it. */
  readonly run: (text: string, folder: string) => void | Promise<void>;
}

const root = fileURLToPath(new URL('../..', import.meta.url));
const read = (file: string): string => readFileSync(join(root, file), 'utf8');
const filesIn = (folder: string): readonly string[] =>
  readdirSync(join(root, folder))
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => read(join(folder, name)));

const talk = read('scenes/lamp-room.vtt');

/** Files of one kind changed as trees, now and then as lines. */
function trees(files: readonly string[]): (chance: Chance) => string {
  let made: { readonly trees: readonly Tree[]; readonly stock: Stock } | undefined;
  return (chance) => {
    if (made === undefined) {
      const all = files.map(treeOf);
      made = { trees: all, stock: stockOf(all) };
    }
    let tree = chance.pick(made.trees);
    for (let left = chance.pick([1, 1, 1, 2, 2, 3, 5]); left > 0; left--) tree = changed(tree, made.stock, chance);
    const text = printTree(tree, chance.below(5));
    return chance.below(16) === 0 ? changedLines(text, made.stock, chance) : text;
  };
}

const scenes = [...filesIn('scenes'), ...filesIn('scenes/names'), ...filesIn('tests/scenes/checks')].filter(
  // Nets of many cases take seconds each, and are read like any other.
  (text) => text.length < 12_000,
);
const looks = filesIn('assets/looks');
const puzzles = scenes.flatMap((text) => {
  const { scene } = readScene(text);
  if (scene === undefined || scene.puzzle.grid.cellCount !== 81) return [];
  return [scene.puzzle.givens.map((digit) => digit ?? '.').join('')];
});

const narrations: readonly string[] = [
  talk,
  talk.replace(/^WEBVTT.*\n\n/, '').replaceAll(/(\d\d:\d\d)\.(\d{3})/g, '00:$1,$2'),
  JSON.stringify(
    'Look at the two rows. There is a three in each.'
      .split(' ')
      .map((word, at) => ({ word, start: at, end: at + 0.9 })),
  ),
  'WEBVTT - a\n\nNOTE\nhere\n\nSTYLE\n::cue {}\n\none\n00:01.000 --> 00:02.000 align:start\n<v A><00:01.200>Look <b>here</b>\n',
];

/** A part of a render of two frames without a picture: what its head says is what is changed. */
const part = {
  ...{ proofreelPart: 2, number: 1, of: 1, film: 'a', container: 'mov', codec: 'qtrle', width: 16, height: 16 },
  ...{
    rate: ['24', '1'],
    alpha: true,
    frameCount: 2,
    chapters: [{ name: 'one', from: 0, until: 2 }],
    compatible: false,
  },
  ...{ timecode: '01:00:00:00', holdPictures: 1, hasSound: true, segments: [['0'.repeat(64), 1, 1]] },
  contents: [
    ['0'.repeat(64), 0],
    ['sound', 0],
  ],
};
const framesPart = {
  ...part,
  container: 'frames',
  codec: 'png',
  hasSound: false,
  frames: { once: true, holds: [[2, 0]] },
};

export const kinds = {
  scene: { weight: 5, make: trees(scenes), run: (text: string) => runScene(text) },
  narration: {
    weight: 1,
    make: (chance: Chance) => {
      let text = chance.pick(narrations);
      for (let left = 1 + chance.below(4); left > 0; left--)
        text = changedLines(text, { texts: [...talk.split(/\s/), '-->', '00:05.000', '"end":', '}]'] }, chance);
      return text;
    },
    run: (text: string) => {
      for (const name of ['a.vtt', 'a.srt', 'a.json']) {
        for (const { message, line } of readNarration(text, name).faults) {
          expect([line > 0, line <= text.split('\n').length + 1]).toEqual([true, true]);
          expect(message).not.toMatch(/undefined|NaN|\[object/);
        }
      }
      runScene(read('scenes/lamp-room.yaml'), { narration: text });
    },
  },
  look: {
    weight: 1,
    make: trees(looks),
    run: (text: string) => {
      const { look, diagnostics } = readLook(text, defaultLook);
      expectPlain(text, diagnostics);
      if (look !== undefined) runScene(read('scenes/two-towers.yaml'), { look });
    },
  },
  costs: {
    weight: 1,
    make: trees([read('assets/teaching-costs.yaml')]),
    run: (text: string) => {
      const { costs, diagnostics } = readTeachingCosts(text);
      expectPlain(text, diagnostics);
      if (costs === undefined) return;
      const { scene } = readScene(read('scenes/two-towers.yaml'));
      if (scene === undefined) return;
      let left = 40;
      planFor(startPosition(scene.puzzle, true), { costs, keepGoing: () => left-- > 0 });
    },
  },
  phrases: {
    weight: 1,
    make: trees(filesIn('assets/phrases')),
    run: (text: string) => {
      const { phrases, diagnostics } = readPhrases(text);
      expectPlain(text, diagnostics);
      if (phrases === undefined) return;
      const { scene } = readScene(read('scenes/two-towers.yaml'));
      const { costs } = readTeachingCosts(read('assets/teaching-costs.yaml'));
      if (scene === undefined || costs === undefined) return;
      let left = 40;
      const plan = planFor(startPosition(scene.puzzle, true), { costs, keepGoing: () => left-- > 0 });
      draftOf({ plan, givens: scene.puzzle.givens, taken: undefined, phrases, title: undefined }).textWith([], []);
    },
  },
  puzzle: {
    weight: 1,
    make: (chance: Chance) => {
      let text = chance.pick([...puzzles, '1..4 .4.. ..43 ...1']);
      for (let left = chance.below(4); left > 0; left--) text = changedText(text, { texts: puzzles }, chance);
      return text;
    },
    run: (text: string) => {
      const { puzzle, diagnostics } = readBarePuzzle(text);
      expectPlain(text, diagnostics);
      if (puzzle === undefined) return;
      solutionsOf(puzzle.grid, possibleFrom(puzzle.grid, puzzle.givens), 2);
      runScene(`proofreel: 1\npuzzle: {givens: ${JSON.stringify(text)}}\nsteps: [{id: a, so: r1c1=1}]\n`);
    },
  },
  part: {
    weight: 1,
    make: (chance: Chance) => {
      const stock = {
        texts: ['frames', 'mp4', 'qtrle', 'png', 'h264', '2', '0', '../a', 'null', '[]', '{}', '1e99', '-1'],
      };
      let text = JSON.stringify(chance.pick([part, framesPart]));
      for (let left = 1 + chance.below(3); left > 0; left--) text = changedText(text, stock, chance);
      return `${text}\n`;
    },
    run: async (text: string, folder: string) => {
      const file = join(folder, 'a.part');
      writeFileSync(file, text);
      try {
        for (const name of ['out.mov', 'out']) await joinParts([file], join(folder, name), undefined);
      } catch (failure) {
        if (!(failure instanceof MachineFailure)) throw failure;
        expect(failure.message).not.toMatch(/undefined|NaN|\[object|TypeError/);
      }
      // Nothing is written but what was asked for.
      expect(readdirSync(folder).filter((name) => !['a.part', 'out.mov', 'out'].includes(name))).toEqual([]);
      rmSync(join(folder, 'out'), { recursive: true, force: true });
    },
  },
  arguments: {
    weight: 1,
    make: (chance: Chance) => JSON.stringify(wordsOf(chance)),
    run: async (text: string, folder: string) => {
      const words: readonly string[] = JSON.parse(text);
      writeFileSync(join(folder, 'a.yaml'), read('scenes/two-towers.yaml'));
      const before = process.cwd();
      process.chdir(folder);
      const { err, status } = await run(...words).finally(() => process.chdir(before));
      expect([0, 1, 2, 3, 130]).toContain(status);
      expect(err).not.toMatch(/something went wrong|a bug in proofreel|undefined|\[object|\n {4}at /);
    },
  },
} as const satisfies Readonly<Record<string, Kind>>;

export type KindName = keyof typeof kinds;

/** Calls that end soon: what takes seconds by its nature, and what draws, is asked for in other tests. */
const quick = ['check', 'captions', 'chapters', 'retime', 'schema', 'join', 'still'] as const;

/** A call may write where they say: in the case's own folder. */
const awkwardNames = awkward.filter((word) => !word.includes('/'));

function wordsOf(chance: Chance): readonly string[] {
  const verb = chance.pick(quick);
  const options = Object.keys(verbs[verb].options).map(
    (key) => `--${key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`,
  );
  const values = ['a.yaml', 'out.vtt', 'out.png', 'out.yaml', '.', '0:01', '1/2', '1', 'towers', 'corner', 'a.srt'];
  const words = [verb, 'a.yaml'];
  for (let left = chance.below(5); left > 0; left--) {
    words.push(chance.pick(options));
    if (chance.below(3) > 0) words.push(chance.pick(chance.below(3) === 0 ? awkwardNames : values));
  }
  if (chance.below(3) === 0) words.push('-o', chance.pick(values));
  const at = chance.below(words.length);
  if (chance.below(4) === 0) words[at] = changedText(words[at]!, { texts: options }, chance);
  return words;
}
