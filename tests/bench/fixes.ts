/**
 * What `check --fix` makes of spoilt scenes: the repository's sound scenes and drafts of generated puzzles, each with one
 * slip (`spoiling.ts`). Counted are the sound steps that a fix altered, the steps taken out whole, and the unsound ones
 * that stand afterwards with the author's own argument.
 *
 * `SCENES=300 SEED=1` by default; `SHOW=yes` prints each step that was altered or taken out.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import type { CheckedScene, CheckedStep } from '../../src/check/verdict.ts';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { fixScene } from '../../src/lesson/fixed-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { chanceFrom as puzzleChance } from '../../src/puzzles/chance.ts';
import { anyPuzzle, printGivens } from '../../src/puzzles/new-puzzle.ts';
import { board, drafted } from '../draft/drafted.ts';
import { type Chance, chanceFrom } from '../random.ts';
import { slips, spoilt, type ToSpoil } from './spoiling.ts';

const scenes = Number(process.env.SCENES ?? 300);
const seed = Number(process.env.SEED ?? 1);
const drafts = 20;

export interface Outcome {
  /** Steps that were sound in the spoilt scene and do not stand as they did: by id, with what became of them. */
  readonly altered: readonly string[];
  readonly takenOut: readonly string[];
  /** Unsound steps of the spoilt scene that are sound now with the argument that they had, under their name. */
  readonly kept: readonly string[];
  /** Those that are sound now with another argument or under another name. */
  readonly changed: readonly string[];
  readonly unsound: boolean;
  readonly mixedEnds: boolean;
  readonly blankLines: boolean;
}

export async function run(): Promise<void> {
  const sources = [...ownScenes(), ...draftedScenes()];
  const chance = chanceFrom(seed);
  const [hash, kinds] = [createHash('sha256'), Object.keys(slips)];
  const total = {
    altered: 0,
    scenesAltered: 0,
    takenOut: 0,
    kept: 0,
    changed: 0,
    unsound: 0,
    mixedEnds: 0,
    blankLines: 0,
  };
  const began = process.cpuUsage().user;
  let done = 0;
  for (let turn = 0; done < scenes && turn < scenes * 20; turn++) {
    const source = chance.pick(sources);
    const text = spoiltText(source, kinds[done % kinds.length]!, chance);
    const before = text === undefined ? undefined : checkedText(text);
    if (text === undefined || before === undefined || before.sound) continue;
    done++;
    const fixed = fixScene(text);
    hash.update(text).update(fixed.text);
    const outcome = outcomeOf(text, before, fixed.text);
    total.altered += outcome.altered.length;
    total.scenesAltered += Math.min(1, outcome.altered.length);
    total.takenOut += outcome.takenOut.length;
    total.kept += outcome.kept.length;
    total.changed += outcome.changed.length;
    total.unsound += Number(outcome.unsound);
    total.mixedEnds += Number(outcome.mixedEnds);
    total.blankLines += Number(outcome.blankLines);
    if (process.env.SHOW === 'yes') show(source.name, kinds[(done - 1) % kinds.length]!, outcome, fixed.done);
  }
  const seconds = (process.cpuUsage().user - began) / 1e6;
  console.log(`${done} spoilt scenes, seed ${seed}, ${seconds.toFixed(0)} s of the processor`);
  console.log(`  sound steps altered                     ${total.altered} (in ${total.scenesAltered} scenes)`);
  console.log(`  steps taken out whole                   ${total.takenOut}`);
  console.log(`  fixes that keep the author's argument   ${total.kept}`);
  console.log(`  fixes that change it                    ${total.changed}`);
  console.log(`  scenes not sound afterwards             ${total.unsound}`);
  console.log(`  with line ends of both kinds            ${total.mixedEnds}`);
  console.log(`  with a blank line that was not there    ${total.blankLines}`);
  console.log(`  checksum ${hash.digest('hex').slice(0, 16)}`);
}

interface Source extends ToSpoil {
  readonly name: string;
}

function ownScenes(): Source[] {
  return ['../../scenes/', '../scenes/checks/'].flatMap((folder) => {
    const url = new URL(folder, import.meta.url);
    const names = readdirSync(url).filter((name) => name.endsWith('.yaml'));
    return names.flatMap((name) => sourceOf(name, readFileSync(new URL(name, url), 'utf8')));
  });
}

function draftedScenes(): Source[] {
  return Array.from({ length: drafts }, (_, index) => {
    const givens = anyPuzzle(board, 'none', puzzleChance(1000 * seed + index));
    return sourceOf(`draft ${index}`, drafted(printGivens(givens), { steps: 40 }).text);
  }).flat();
}

function sourceOf(name: string, text: string): Source[] {
  // No remarks on what is sound: they cost most of the time and change no fix.
  const quiet = /^advice:/m.test(text) ? text : text.replace(/^steps:/m, 'advice: {simpler: off, open: off}\nsteps:');
  const checked = checkedText(quiet);
  return checked?.sound ? [{ name, text: quiet, checked }] : [];
}

export function checkedText(text: string): CheckedScene | undefined {
  const { scene } = readScene(text);
  const checked = scene === undefined ? undefined : checkScene(scene);
  return checked?.errors.length === 0 ? checked : undefined;
}

/** Every tenth has the line ends of another system. */
function spoiltText(source: Source, kind: string, chance: Chance): string | undefined {
  const text = spoilt(source, kind, chance);
  return chance.below(10) === 0 ? text?.replace(/\r?\n/g, '\r\n') : text;
}

export function outcomeOf(text: string, before: CheckedScene, fixedText: string): Outcome {
  const after = checkedText(fixedText);
  const found = new Map(after?.steps.map((step) => [step.step.id, step]));
  const [altered, takenOut, kept, changed]: [string[], string[], string[], string[]] = [[], [], [], []];
  for (const step of before.steps) {
    const { id } = step.step;
    const now = found.get(id);
    if (step.sound) {
      const why = alteration(step, textOf(text, step), now, now === undefined ? '' : textOf(fixedText, now));
      if (why !== undefined) altered.push(`${id}: ${why}`);
    } else if (now === undefined) takenOut.push(id);
    else if (now.sound && hasOwnArgument(step, now)) kept.push(id);
    else if (now.sound) changed.push(id);
  }
  return {
    ...{ altered, takenOut, kept, changed },
    unsound: after?.sound !== true,
    mixedEnds: fixedText.includes('\r\n') ? /[^\r]\n/.test(fixedText) : false,
    blankLines: blanks(fixedText) > blanks(text),
  };
}

function alteration(was: CheckedStep, text: string, now: CheckedStep | undefined, textNow: string): string | undefined {
  if (now === undefined) return 'taken out';
  if (!now.sound) return 'not sound any more';
  if (text !== textNow) return `its text is ${textNow}`;
  if (was.name?.judged !== now.name?.judged) return `its name is ${now.name?.judged}`;
  if (was.step.fails) return undefined;
  const provedNow = new Set(provedBy(now));
  // What a list leaves out may be known sooner: its text is right all the same.
  const own = was.conclusions.filter(({ origin }) => origin === 'so' || origin === 'cascade').map((each) => each.text);
  const lost = provedBy(was).filter((conclusion) => own.includes(conclusion) && !provedNow.has(conclusion));
  return lost.length > 0 ? `it no longer proves ${lost.join(' ')}` : undefined;
}

/**
 * Its chains, sets and name as they stood (sets may have been added, a name that did not fit put right), and some
 * conclusion of its own proved by them. Where only a list was too short, it has its argument still.
 */
function hasOwnArgument({ step, conclusions, name }: CheckedStep, now: CheckedStep): boolean {
  const chains = (of: Step): string => JSON.stringify(of.chains.map(({ value }) => [value.nodes, value.links]));
  const sets = (of: Step): string[] => of.from.map(({ value }) => JSON.stringify(value, withoutHouses));
  const setsNow = new Set(sets(now.step));
  const own = new Set(conclusions.map(({ text }) => text));
  return (
    chains(step) === chains(now.step) &&
    sets(step).every((set) => setsNow.has(set)) &&
    JSON.stringify(step.deadly?.value) === JSON.stringify(now.step.deadly?.value) &&
    (name?.judged === 'misnamed' || step.because?.name === now.step.because?.name) &&
    (step.pencil.length + step.only.length > 0 ||
      conclusions.length === 0 ||
      now.step.fails ||
      provedBy(now).some((conclusion) => own.has(conclusion)))
  );
}

type Step = CheckedStep['step'];

function withoutHouses(key: string, value: unknown): unknown {
  return key === 'cells' ? undefined : value;
}

function provedBy({ conclusions }: CheckedStep): string[] {
  return conclusions.filter(({ verdict }) => verdict === 'proved').map(({ text }) => text);
}

function textOf(text: string, { step: { span } }: CheckedStep): string {
  return text.slice(span.start, span.end).replace(/\s*(#[^\n]*)?\s*$/, '');
}

function blanks(text: string): number {
  return text.split('\n').filter((line) => line.trim() === '').length;
}

function show(name: string, kind: string, outcome: Outcome, done: readonly string[]): void {
  const { altered, takenOut, changed, unsound, mixedEnds, blankLines } = outcome;
  const odd = [unsound && 'not sound', mixedEnds && 'line ends of both kinds', blankLines && 'a blank line'];
  const lines = [
    ...altered.map((line) => `altered ${line.replace(/\n/g, '\n    ')}`),
    ...(takenOut.length > 0 ? [`taken out ${takenOut.join(' ')}`] : []),
    ...(changed.length > 0 ? [`changed ${changed.join(' ')}`] : []),
    ...odd.filter((each) => each !== false),
  ];
  if (lines.length === 0) return;
  console.log([`${name}: ${kind}`, ...lines, ...done.map((line) => `  ${line}`)].join('\n  '));
}
