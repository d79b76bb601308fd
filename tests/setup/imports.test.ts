/** The rules of .dependency-cruiser.cjs on a small tree: each file below breaks exactly the rules named beside it. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, it } from 'vitest';

const root = join(dirname(fileURLToPath(import.meta.url)), '../..');

const cell = "import { cell } from '../grid/cell.ts';";
const rows: readonly (readonly [file: string, text: string, breaks: readonly string[]])[] = [
  ['src/grid/cell.ts', 'export const cell = 1; export type Cell = number;', []],
  ['src/proof/rule.ts', `${cell} export const rule = cell; export type Rule = number;`, []],
  ['src/scene/scene.ts', `${cell} import 'yaml'; export const scene = cell; export type Scene = number;`, []],
  ['src/timeline/film.ts', `${cell} import { scene } from '../scene/scene.ts'; export const film = [cell, scene];`, []],
  ['src/frames/paint.ts', `import type { Scene } from '../scene/scene.ts'; export const paint: Scene = 1;`, []],
  ['src/output/ffmpeg/ffmpeg.ts', "import 'fluent-ffmpeg'; import 'node:fs'; import 'canvas';", []],
  ['src/cli.ts', "import 'commander'; import './frames/paint.ts';", []],

  ['src/grid/up.ts', "import '../proof/rule.ts';", ['grid-imports']],
  ['src/grid/up-type.ts', "import type { Rule } from '../proof/rule.ts'; export const up: Rule = 1;", ['grid-imports']],
  ['src/grid/files.ts', "import 'node:fs';", ['grid-without-node']],
  ['src/proof/text.ts', "import '../scene/scene.ts';", ['proof-imports']],
  ['src/proof/solver.ts', "import 'yaml';", ['proof-packages']],
  ['src/scene/claims.ts', "import '../proof/rule.ts';", ['scene-imports']],
  ['src/scene/files.ts', "import 'fs';", ['scene-without-node']],
  ['src/timeline/proof.ts', "import '../proof/rule.ts';", ['timeline-imports']],
  ['src/picture/scene.ts', "import '../scene/scene.ts';", ['picture-types-only']],
  ['src/picture/canvas.ts', "import 'canvas';", ['picture-packages']],
  ['src/picture/font.ts', "import 'node:path';", ['picture-without-node']],
  ['src/output/proof.ts', "import '../proof/rule.ts';", ['output-imports']],
  ['src/output/second-door.ts', "import 'fluent-ffmpeg';", ['ffmpeg-in-one-file']],
  ['src/output/tools.ts', "import 'fast-check';", ['no-tools-in-the-program', 'output-packages']],
  ['src/check/again.ts', "import '../cli.ts';", ['check-imports', 'cli-is-the-end']],
  ['src/commands/check.ts', "import '../grid/cell.ts'; import 'picocolors'; import 'node:fs';", []],
  ['src/report/verb.ts', "import '../commands/check.ts';", ['commands-for-the-command-line', 'report-imports']],
  ['src/scene/fraction.ts', 'export const half = 0.5;', []],
  ['src/output/cut.ts', "import '../scene/fraction.ts';", []],
  ['src/output/scene.ts', "import '../scene/scene.ts';", ['output-types-only']],
  ['src/slides/deck.ts', "import '../frames/paint.ts'; import '../grid/cell.ts'; export const deck = 1;", []],
  ['src/slides/font.ts', "import 'node:fs';", ['slides-without-node']],
  ['src/slides/canvas.ts', "import 'canvas';", ['slides-packages']],
  ['src/slides/pdf.ts', "import '../output/cut.ts';", ['slides-imports']],
  ['src/output/slides.ts', "import '../slides/deck.ts'; import 'pptxgenjs'; import 'esbuild';", []],
  ['src/player/slides.ts', "import '../slides/deck.ts'; import '../frames/paint.ts';", []],
  ['src/player/proof.ts', "import '../proof/rule.ts'; import 'node:fs';", ['player-imports', 'player-without-node']],
  ['src/check/absent.ts', "import './nowhere.ts';", ['found']],
  ['src/check/test.ts', "import '../../tests/fixture.ts';", ['no-tests-in-the-program']],
  ['src/staging/hen.ts', "import './egg.ts'; export const hen = 1;", []], // a circle is reported once
  ['src/staging/egg.ts', "import { hen } from './hen.ts'; export const egg = hen;", ['no-circle']],
  ['src/techniques/type-a.ts', "import './type-b.ts'; export type A = number;", []],
  ['src/techniques/type-b.ts', "import type { A } from './type-a.ts'; export const b: A = 1;", []],
  ['src/output/render.ts', "import './segments/segment.ts'; import './parts/part.ts'; export const render = 1;", []],
  ['src/output/machine/failure.ts', 'export const failure = 1;', []],
  ['src/output/painters/painter.ts', 'export const painter = 1; export type Painter = number;', []],
  ['src/output/codecs/codec.ts', "import '../machine/failure.ts'; export const codec = 1;", []],
  ['src/output/segments/segment.ts', "import '../codecs/codec.ts'; export const segment = 1;", []],
  ['src/output/parts/part.ts', "import '../segments/segment.ts'; export const part = 1;", []],
  ['src/output/machine/up.ts', "import '../painters/painter.ts';", ['output-machine-imports']],
  ['src/output/painters/up.ts', "import '../machine/failure.ts';", ['output-painters-imports']],
  ['src/output/containers/up.ts', "import '../codecs/codec.ts';", ['output-containers-imports']],
  ['src/output/ffmpeg/up.ts', "import '../codecs/codec.ts';", ['output-ffmpeg-imports']],
  ['src/output/pixels/up.ts', "import '../codecs/codec.ts';", ['output-pixels-imports']],
  ['src/output/codecs/up.ts', "import '../segments/segment.ts';", ['output-codecs-imports']],
  ['src/output/tracks/up.ts', "import '../segments/segment.ts';", ['output-tracks-imports']],
  ['src/output/segments/up.ts', "import '../parts/part.ts';", ['output-segments-imports']],
  ['src/output/frames/up.ts', "import '../parts/part.ts';", ['output-frames-imports']],
  ['src/output/parts/up.ts', "import '../render.ts';", ['output-parts-imports']],
  ['src/output/footage/up.ts', "import '../segments/segment.ts';", ['output-footage-imports']],
  ['src/output/flashes/up.ts', "import '../segments/segment.ts';", ['output-flashes-imports']],
  ['src/output/slides/up.ts', "import '../segments/segment.ts';", ['output-slides-imports']],
  [
    'src/output/tracks/up-type.ts',
    "import type { Painter } from '../painters/painter.ts'; export const up: Painter = 1;",
    ['output-tracks-imports'],
  ],
  ['src/output/elsewhere/odd.ts', "import '../machine/failure.ts';", ['output-folders']],
  ['tests/fixture.ts', 'export const fixture = 1;', []],
];

interface Cruised {
  readonly modules: readonly { readonly source: string }[];
  readonly summary: {
    readonly violations: readonly { readonly from: string; readonly rule: { readonly name: string } }[];
  };
}

let tree: string;
let cruised: Cruised;
beforeAll(() => {
  tree = realpathSync(mkdtempSync(join(tmpdir(), 'proofreel-imports-')));
  for (const [file, text] of rows) {
    mkdirSync(dirname(join(tree, file)), { recursive: true });
    writeFileSync(join(tree, file), text);
  }
  for (const name of ['.dependency-cruiser.cjs', 'package.json', 'tsconfig.json'])
    cpSync(join(root, name), join(tree, name));
  symlinkSync(join(root, 'node_modules'), join(tree, 'node_modules'));
  const program = join(root, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs');
  const args = ['src', 'tests', '--config', '.dependency-cruiser.cjs', '--output-type', 'json'];
  const result = spawnSync(process.execPath, [program, ...args], { cwd: tree, encoding: 'utf8' });
  cruised = JSON.parse(result.stdout);
});
afterAll(() => {
  rmSync(tree, { recursive: true, force: true });
});

it.each(rows)('%s', (file, _text, breaks) => {
  expect(cruised.modules.map(({ source }) => source)).toContain(file);
  const found = cruised.summary.violations.filter(({ from }) => from === file).map(({ rule }) => rule.name);
  expect([...new Set(found)].sort()).toEqual(breaks);
});
