/**
 * `proofreel draft`: the least plan of a puzzle as a scene that is ready to edit.
 */
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { checkScene } from '../check/check-scene.ts';
import { draftOf } from '../draft/draft.ts';
import { type Phrases, readPhrases } from '../draft/phrases.ts';
import { Bug } from '../grid/bug.ts';
import { writeWholeFile } from '../output/whole-file.ts';
import { type Plan, planFor } from '../plan/plan.ts';
import { printDiagnostic } from '../scene/locate.ts';
import { nearestWords } from '../scene/nearest-word.ts';
import { readScene } from '../scene/read.ts';
import { exitStatus } from '../verbs.ts';
import { type Audience, costsFor } from './audience.ts';
import { BadCall } from './bad-call.ts';
import { type GivenPuzzle, readGivenPuzzle } from './given-puzzle.ts';
import { reachesGoal, secondsOf, untilPassed } from './plan.ts';
import { costsFrom } from './teaching-costs.ts';
import type { Terminal } from './terminal.ts';

export interface DraftCall extends Audience {
  readonly out?: string;
  readonly language?: string;
  readonly title?: string;
  readonly seconds?: string;
  readonly costs?: string;
}

export async function draft(given: string, call: DraftCall, terminal: Terminal): Promise<number> {
  if (call.out === undefined) throw new BadCall('draft needs -o SCENE.yaml');
  if (!/\.ya?ml$/i.test(call.out)) throw new BadCall(`-o ${call.out}: a scene is written, so its name ends in .yaml`);
  const seconds = secondsOf(call.seconds);
  const table = costsFrom(call.costs, terminal);
  const costs = table === undefined ? undefined : costsFor(table, call);
  const phrases = phrasesOf(call.language ?? 'en', terminal);
  const puzzle = readGivenPuzzle(given, terminal);
  if (costs === undefined || phrases === undefined || puzzle === undefined) return exitStatus.unusable;
  const plan = planFor(puzzle.start, { costs, keepGoing: untilPassed(seconds) });
  const drafted = draftOf({ plan, givens: puzzle.puzzle.givens, taken: takenFrom(puzzle), phrases, title: call.title });
  const text = drafted.textWith(drafted.steps);
  demandSound(text);
  await writeWholeFile(resolve(call.out), (part) => writeFile(part, text));
  terminal.err(`${call.out}: ${drafted.steps.length} steps, ${planInWords(plan, seconds)}\n`);
  return reachesGoal(plan) ? exitStatus.sound : exitStatus.unsound;
}

function takenFrom({ scene }: GivenPuzzle) {
  return scene === undefined ? undefined : { text: scene.text, puzzle: scene.scene.puzzle.span };
}

/** What is drafted is a scene like any other: where it does not hold, nothing is written. */
function demandSound(text: string): void {
  const { scene, diagnostics } = readScene(text);
  const fault = diagnostics.find(({ severity }) => severity === 'error');
  if (scene === undefined || fault !== undefined) throw new Bug(`a draft that can be read (${fault?.message ?? ''})`);
  const unsound = checkScene(scene).steps.find((step) => !step.sound);
  if (unsound !== undefined) throw new Bug(`a draft that holds (step ${unsound.step.id}: ${unsound.message})`);
}

function planInWords({ outcome, cost, steps }: Plan, seconds: number): string {
  const names = steps.filter((step) => step.cost > 0).map(({ name }) => name);
  const told = names.length === 0 ? 'singles alone' : `${names.join(', ')} (${cost} points)`;
  switch (outcome) {
    case 'least':
      return names.length === 0 ? told : `${told}, proved to be the least`;
    case 'found':
      return `${told}, the least that was found`;
    case 'stuck':
      return `${told}; it ends there, since no named argument leads further`;
    case 'unfinished':
      return `${told}; it ends there, since no path was found in ${seconds} s (try --seconds ${seconds * 6})`;
    default:
      return outcome satisfies never;
  }
}

/** The phrases of a language that is shipped, or of a file; undefined where it has faults, which then have been said. */
function phrasesOf(language: string, terminal: Terminal): Phrases | undefined {
  const shipped = folderOfPhrases();
  const languages = readdirSync(shipped).map((file) => file.replace(/\.yaml$/, ''));
  const isFile = /\.ya?ml$/i.test(language);
  if (!isFile && !languages.includes(language)) {
    const [near] = nearestWords(language, languages);
    const mend = near === undefined ? '' : `; did you mean ${near}?`;
    throw new BadCall(`--language ${language}: it is ${languages.join(', ')}, or a file of phrases (.yaml)${mend}`);
  }
  const path = isFile ? language : join(shipped, `${language}.yaml`);
  if (!existsSync(path)) throw new BadCall(`there is no file of phrases ${path}`);
  if (statSync(path).isDirectory()) throw new BadCall(`${path} is a folder; name a file of phrases`);
  const text = readFileSync(path, 'utf8');
  const { phrases, diagnostics } = readPhrases(text);
  for (const each of diagnostics) terminal.err(`${printDiagnostic(path, text, each)}\n`);
  return phrases;
}

/** Beside `src` or beside `dist`, whichever this module was loaded from. */
function folderOfPhrases(): string {
  for (let folder = dirname(fileURLToPath(import.meta.url)); ; ) {
    const phrases = join(folder, 'assets', 'phrases');
    if (existsSync(phrases)) return phrases;
    const parent = dirname(folder);
    if (parent === folder) throw new Bug('assets/phrases lies beside the program');
    folder = parent;
  }
}
