/**
 * Makes the scenes and pictures of scenes/names/ anew: `npx tsx tests/scenes/make-names.ts [scenes] [pictures] [pages] [NAME ...]`;
 * without words, all of it. For each name the clearest instance is taken of the first few that turn up in positions of
 * generated puzzles, those with few candidates first. The pages are written by hand, but for what `page-parts.ts` takes
 * over.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { buildFound } from '../../src/check/argument.ts';
import { main } from '../../src/commands/main.ts';
import { processTerminal } from '../../src/commands/terminal.ts';
import { difference, has, membersOf } from '../../src/grid/candidates.ts';
import { candidateAt, type Digit, type Grid } from '../../src/grid/grid.ts';
import { compactly } from '../../src/grid/notation/compact.ts';
import { printChain, printConclusion } from '../../src/grid/notation/print.ts';
import type { Conclusion } from '../../src/grid/terms.ts';
import { begin, oneOf, type Position, takeAsRead } from '../../src/proof/kernel.ts';
import { stepText } from '../../src/scene/step-text.ts';
import {
  type ArgumentName,
  isArgumentName,
  namesBySpeciality,
  techniqueNamed,
} from '../../src/techniques/all-techniques.ts';
import { instancesOf } from '../../src/techniques/find-argument.ts';
import { recogniseIn } from '../../src/techniques/judge-name.ts';
import type { Instance } from '../../src/techniques/technique.ts';
import { findNets, findRectangleNets } from './find-nets.ts';
import { allMoreSpecial, asNames, mayStandBefore, moreGeneral, slugOf } from './name-pages.ts';
import { type Place, placesOf } from './name-positions.ts';
import { refreshedIndex, refreshedPage } from './page-parts.ts';
import { reportOn } from './run.ts';
import { smallPng } from './small-png.ts';

const folder = new URL('../../scenes/names/', import.meta.url);
/** Of so many scenes the clearest is taken; of each position, and of each puzzle, so many instances are looked at. */
const enough = 24;
const mostInPlace = 8;
const mostOfPuzzle = 4;
/** Puzzles are made in batches of this size, and so many batches are gone through until an instance is found. */
const seedsInBatch = 40;
const mostBatches = 8;
const placesInBatch = 160;

interface Made {
  readonly text: string;
  /** The lower, the clearer. */
  readonly weight: number;
  /** Whether it bears the name of one of the name's own kinds too. */
  readonly isKind: boolean;
}

/**
 * Writes the name's scene; says whether an instance was found. One that is none of the name's own kinds is looked for
 * first; some names have only kinds.
 */
export function makeScene(name: ArgumentName, placesIn: (batch: number) => readonly Place[]): boolean {
  for (const isPlain of [true, false]) {
    if (isPlain && techniqueNamed(name).page.hasOnlyKinds === true) continue;
    for (let batch = 0; batch < mostBatches; batch++) {
      const best = clearest(name, suited(name, placesIn(batch)), isPlain);
      if (best === undefined) continue;
      writeFileSync(new URL(`${slugOf(name)}.yaml`, folder), best.text);
      return true;
    }
  }
  return false;
}

/** The places of each batch of puzzles, made when first asked for. */
function batchesOfPlaces(): (batch: number) => readonly Place[] {
  const known = new Map<number, readonly Place[]>();
  return (batch) => {
    const seeds = Array.from({ length: seedsInBatch }, (_, index) => batch * seedsInBatch + index + 1);
    const places = known.get(batch) ?? placesOf(seeds);
    known.set(batch, places);
    return places;
  };
}

/** The clearest of the first few scenes of the name that these places give. */
function clearest(name: ArgumentName, places: readonly Place[], isPlain: boolean): Made | undefined {
  const all: Made[] = [];
  const bySeed = new Map<number, number>();
  for (const place of places) {
    let left = mostInPlace;
    for (const instance of instancesIn(place.position, name)) {
      const ofPuzzle = bySeed.get(place.seed) ?? 0;
      if (left === 0 || all.length === enough || ofPuzzle === mostOfPuzzle) break;
      if (isPlain && isOfKind(name, place.position, instance)) continue;
      left--;
      const made = sceneOf(name, place, instance);
      if (made === undefined || (isPlain && made.isKind)) continue;
      all.push(made);
      bySeed.set(place.seed, ofPuzzle + 1);
    }
  }
  return all.sort((a, b) => a.weight - b.weight)[0];
}

/** Whether one of the name's own kinds fits the instance as it was found. */
function isOfKind(name: ArgumentName, position: Position, instance: Instance): boolean {
  const shape = { ...instance, position, chains: [] };
  return allMoreSpecial(name).some((kind) => recogniseIn(techniqueNamed(kind), shape)?.kind === 'fits');
}

/** Of these names the tool finds special kinds alone. */
const ownFinders: Readonly<Partial<Record<ArgumentName, (position: Position) => Iterable<Instance>>>> = {
  'forcing net': findNets,
  'unique rectangle': findRectangleNets,
};

function instancesIn(position: Position, name: ArgumentName): Iterable<Instance> {
  return ownFinders[name]?.(position) ?? instancesOf(position, name);
}

function suited(name: ArgumentName, places: readonly Place[]): readonly Place[] {
  const isSingle = techniqueNamed(name).family === 'singles';
  return places.filter((place) => (place.kind === 'singles') === isSingle).slice(0, placesInBatch);
}

/** The instance as a scene, if the scene is sound and the name stands before all but its own kinds. */
function sceneOf(name: ArgumentName, place: Place, instance: Instance): Made | undefined {
  const conclusions = shownConclusions(name, instance);
  const text = sceneText(name, place.position, { ...instance, conclusions });
  const { report } = reportOn(`${slugOf(name)}.yaml`, text);
  const step = report.steps[0];
  if (!report.sound || step?.name?.judged !== 'fits' || report.warnings.length > 0) return undefined;
  if (step.unneeded.length > 0) return undefined;
  const fits = asNames(step.name.fits);
  const before = fits.slice(0, fits.indexOf(name));
  if (before.some((other) => !mayStandBefore(name, other))) return undefined;
  if (!moreGeneral(name).every((other) => fits.includes(other))) return undefined;
  const isKind = allMoreSpecial(name).some((kind) => before.includes(kind));
  return { text, weight: weightOf(place, { ...instance, conclusions }) + 6 * before.length, isKind };
}

/** Removals, where there are any, so that the picture holds the argument still; a placement where the name is about one. */
function shownConclusions(name: ArgumentName, { conclusions }: Instance): readonly Conclusion[] {
  const isPlacing = techniqueNamed(name).page.shows === 'placement';
  const shown = conclusions.filter((each) => (each.kind === 'impossible') !== isPlacing);
  return shown.length > 0 ? shown : conclusions;
}

function weightOf({ clutter, kind }: Place, { sets, chain, conclusions }: Instance): number {
  const members = sets.reduce((sum, set) => sum + membersOf(set.members).length, 0);
  const size = sets.length + members / 2 + (chain?.nodes.length ?? 0) / 2;
  const own = conclusions.filter(
    (each) => each.kind === 'impossible' && sets.some((set) => has(set.members, each.candidate)),
  );
  return clutter / 12 + 2 * size + 2 * own.length + Math.abs(conclusions.length - 2) + (kind === 'thinned' ? 4 : 0);
}

function sceneText(name: ArgumentName, position: Position, instance: Instance): string {
  const { grid } = position;
  const { sets } = buildFound(position, { instance, others: 0 });
  const guardians = sets.find((named) => named.set.source.kind === 'guardians');
  const named = sets.filter((each) => each !== guardians).map((each) => each.name);
  const chain = instance.chain;
  const step = stepText(
    {
      because: name,
      from: chain === undefined && named.length > 0 ? named.join(' ') : undefined,
      chain: chain === undefined ? undefined : printChain(grid, { ...chain, concludes: [] }),
      deadly: guardians?.name.replace(/^deadly /, ''),
      so: written(grid, instance.conclusions),
    },
    slugOf(name),
  );
  return [
    'proofreel: 1',
    `title: ${name[0]!.toUpperCase()}${name.slice(1)}`,
    ...puzzleLines(position),
    'video:',
    '  size: 640x640',
    '  rate: 25',
    '  board: {left: 14, top: 14, side: 612}',
    '  draw: board',
    '  candidates: all',
    'steps:',
    ...step.split('\n').map((line) => `  ${line}`),
    '',
  ].join('\n');
}

function written(grid: Grid, conclusions: readonly Conclusion[]): string {
  return compactly(conclusions.map((conclusion) => printConclusion(grid, conclusion))).join(' ');
}

function puzzleLines(position: Position): string[] {
  const { grid } = position;
  const givenIn = (cell: number) =>
    grid.digits.find((digit: Digit) => has(position.givens, candidateAt(grid, grid.cells[cell]!, digit)));
  const rows = Array.from({ length: grid.size }, (_, row) =>
    Array.from({ length: grid.size }, (__, column) => givenIn(row * grid.size + column) ?? '.').join(''),
  );
  const placed = membersOf(difference(position.placed, position.givens)).map((each) => oneOf(grid, each));
  const filled = placed.reduce(takeAsRead, begin(grid, membersOf(position.givens), { oneSolution: true }));
  const removed = membersOf(difference(filled.possible, position.possible)).map(
    (candidate): Conclusion => ({ kind: 'impossible', candidate }),
  );
  const start = [
    ...(placed.length > 0 ? [`    placed: ${written(grid, placed)}`] : []),
    ...(removed.length > 0 ? [`    removed: ${written(grid, removed)}`] : []),
  ];
  return [
    'puzzle:',
    '  setter: in-house',
    `  boxes: ${grid.size === 9 ? '3x3' : '2x3'}`,
    '  givens: |',
    ...rows.map((row) => `    ${row}`),
    ...(start.length > 0 ? ['  start:', ...start] : []),
  ];
}

/** Takes over the step of the scene, and the names that fit it, into the name's page. */
function refreshPage(name: ArgumentName): void {
  const path = new URL(`${slugOf(name)}.md`, folder);
  const scene = readFileSync(new URL(`${slugOf(name)}.yaml`, folder), 'utf8');
  const { report } = reportOn(`${slugOf(name)}.yaml`, scene);
  writeFileSync(
    path,
    refreshedPage(name, readFileSync(path, 'utf8'), scene, asNames(report.steps[0]?.name?.fits ?? [])),
  );
}

/** Draws the last full frame of the name's scene beside it. */
export async function drawPicture(name: ArgumentName): Promise<void> {
  const path = new URL(`${slugOf(name)}`, folder).pathname;
  const quiet = { ...processTerminal(), err: () => undefined };
  const status = await main(['still', `${path}.yaml`, '--step', slugOf(name), '-o', `${path}.png`], quiet);
  if (status !== 0) throw new Error(`${path}.yaml cannot be drawn`);
  writeFileSync(`${path}.png`, smallPng(readFileSync(`${path}.png`)));
}

if (process.argv[1] === new URL(import.meta.url).pathname) {
  const words = process.argv.slice(2);
  const kinds = ['scenes', 'pictures', 'pages'];
  const unknown = words.filter((word) => !kinds.includes(word) && !isArgumentName(word));
  if (unknown.length > 0) throw new Error(`no technique is called ${unknown.join(', ')}`);
  const asked = words.filter(isArgumentName);
  const names = asked.length > 0 ? asked : namesBySpeciality;
  const isAsked = (what: string) => words.includes(what) || !kinds.some((each) => words.includes(each));
  const missing: ArgumentName[] = [];
  if (isAsked('scenes')) {
    const placesIn = batchesOfPlaces();
    for (const name of names) {
      const began = performance.now();
      if (!makeScene(name, placesIn)) missing.push(name);
      console.log(
        `${name}: ${missing.at(-1) === name ? 'none' : 'found'}, ${Math.round(performance.now() - began)} ms`,
      );
    }
  }
  const standing = names.filter((name) => !missing.includes(name));
  if (isAsked('pictures')) for (const name of standing) await drawPicture(name);
  if (isAsked('pages')) {
    for (const name of standing) refreshPage(name);
    const index = new URL('README.md', folder);
    writeFileSync(index, refreshedIndex(readFileSync(index, 'utf8')));
  }
  if (missing.length > 0) console.log(`no instance found of: ${missing.join(', ')}`);
}
