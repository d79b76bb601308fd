/**
 * `proofreel draft`: the least-cost plan of a puzzle as a scene that is ready to edit.
 */
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { draftOf } from '../draft/draft.ts';
import { type NarratedDraft, narrate } from '../draft/narrated.ts';
import { type Phrases, readPhrases } from '../draft/phrases.ts';
import { Bug } from '../grid/bug.ts';
import { checkScene } from '../lesson/check-scene.ts';
import { readScene } from '../lesson/read-scene.ts';
import { schedule } from '../lesson/schedule.ts';
import { writeAtomically } from '../output/machine/atomic-write.ts';
import type { Plan } from '../plan/plan.ts';
import { printDiagnostic } from '../scene/locate.ts';
import { nearestWords } from '../scene/nearest-word.ts';
import { type Narration, readNarration } from '../timeline/narration.ts';
import type { draft as verb } from '../verbs/draft.ts';
import { exitStatus } from '../verbs/exit-status.ts';
import { UsageError } from '../verbs/usage-error.ts';
import type { CallOf } from '../verbs/verb.ts';
import { costsFor } from './audience.ts';
import { type GivenPuzzle, readGivenPuzzle } from './given-puzzle.ts';
import { goalFrom } from './goal.ts';
import { refuseTarget } from './put-text.ts';
import { readText } from './read-text.ts';
import { reachesGoal, searchedPlan } from './searched-plan.ts';
import { costsFrom } from './teaching-costs.ts';
import type { Terminal } from './terminal.ts';

export async function draft(call: CallOf<typeof verb>, terminal: Terminal): Promise<number> {
  const { given, seconds } = call;
  if (!/\.ya?ml$/i.test(call.out))
    throw new UsageError(`-o ${call.out}: a scene is written, so its name ends in .yaml`);
  refuseTarget(call.out, {
    puzzle: given,
    narration: call.narration,
    'table of costs': call.costs,
    'file of phrases': call.language,
  });
  const table = costsFrom(call.costs, terminal);
  const costs = table === undefined ? undefined : costsFor(table, call);
  const phrases = phrasesOf(call.language, terminal);
  const narration = call.narration === undefined ? undefined : narrationFrom(call.narration, terminal);
  const puzzle = readGivenPuzzle(given, terminal);
  if (costs === undefined || phrases === undefined || puzzle === undefined) return exitStatus.unusable;
  const until = call.until === undefined ? undefined : goalFrom(call.until, puzzle);
  const plan = searchedPlan(puzzle, { given, costs, until, seconds }, terminal);
  const drafted = draftOf({ plan, givens: puzzle.puzzle.givens, taken: takenFrom(puzzle), phrases, title: call.title });
  const narrated = narration === undefined ? undefined : narrate(drafted.steps, plan, narration, phrases);
  const beside = call.narration === undefined ? [] : [`narration: ${pathFrom(call.out, call.narration)}`];
  const text = drafted.textWith(narrated?.steps ?? drafted.steps, beside);
  requireSound(text, narration);
  await writeAtomically(resolve(call.out), (part) => writeFile(part, text));
  terminal.err(
    `${call.out}: ${drafted.steps.length === 1 ? '1 step' : `${drafted.steps.length} steps`}, ${planInWords(plan, seconds)}\n`,
  );
  if (narrated !== undefined) printHeard(narrated, call.narration ?? '', terminal);
  return reachesGoal(plan) ? exitStatus.sound : exitStatus.unsound;
}

function takenFrom({ scene }: GivenPuzzle) {
  return scene === undefined ? undefined : { text: scene.text, puzzle: scene.scene.puzzle.span };
}

/** A draft is a scene like any other: if it is not sound, nothing is written. */
function requireSound(text: string, narration: Narration | undefined): void {
  const { scene, diagnostics } = readScene(text);
  const fault = diagnostics.find(({ severity }) => severity === 'error');
  if (scene === undefined || fault !== undefined) throw new Bug(`a draft that can be read (${fault?.message ?? ''})`);
  const untimed = schedule(scene, narration, {}).diagnostics.find(({ severity }) => severity === 'error');
  if (untimed !== undefined) throw new Bug(`a draft whose times are valid (${untimed.message})`);
  const unsound = checkScene(scene).steps.find((step) => !step.sound);
  if (unsound !== undefined) throw new Bug(`a draft that is sound (step ${unsound.step.id}: ${unsound.message})`);
}

function planInWords({ outcome, cost, steps }: Plan, seconds: number): string {
  const names = steps.filter((step) => step.cost > 0).map(({ name }) => name);
  const shown = names.length === 0 ? 'only singles' : `${names.join(', ')} (cost ${cost})`;
  switch (outcome) {
    case 'least':
      return names.length === 0 ? shown : `${shown}, proved to be the least`;
    case 'found':
      return `${shown}, the least that was found`;
    case 'stuck':
      return `${shown}; it ends there, since no named argument leads further`;
    case 'unfinished':
      return `${shown}; it ends there, since no path was found in ${seconds} s (try --seconds ${seconds * 6})`;
    default:
      return outcome satisfies never;
  }
}

/** @throws UsageError if there is no such file, or nothing is said in it */
function narrationFrom(path: string, terminal: Terminal): Narration {
  if (!existsSync(path)) throw new UsageError(`there is no narration ${path}`);
  if (statSync(path).isDirectory()) throw new UsageError(`${path} is a folder; name a narration (.vtt, .srt, .json)`);
  const { narration, faults } = readNarration(readFileSync(path, 'utf8'), path);
  for (const { line, message } of faults) terminal.err(`${path}:${line}: warning broken-cue: ${message}\n`);
  if (narration.cues.length === 0)
    throw new UsageError(`nothing is said in ${path}; a narration is WebVTT, SRT, or JSON words`);
  return narration;
}

/** The narration's path, as a scene at `out` must write it. */
function pathFrom(out: string, narration: string): string {
  return relative(dirname(resolve(out)), resolve(narration)).replaceAll('\\', '/');
}

/** What was heard and where, what was not heard, and what was said but belongs to no step. */
function printHeard({ steps, heard, unheard, unmatched }: NarratedDraft, path: string, terminal: Terminal): void {
  terminal.err(`${path}: ${heard.length} of ${steps.length} steps were heard\n`);
  for (const step of steps) if (heard.includes(step.id)) terminal.err(`  ${step.at} ${step.id}: ${step.say}\n`);
  if (unheard.length > 0) terminal.err(`not heard, their times are guesses: ${unheard.join(', ')}\n`);
  for (const { at, text } of unmatched) terminal.err(`said, but not a step of the plan: ${at} ${text}\n`);
}

/** The phrases of a built-in language, or of a file; undefined if it has faults, which have then been printed. */
function phrasesOf(language: string, terminal: Terminal): Phrases | undefined {
  const shipped = folderOfPhrases();
  const languages = readdirSync(shipped).map((file) => file.replace(/\.yaml$/, ''));
  const isFile = /\.ya?ml$/i.test(language);
  if (!isFile && !languages.includes(language)) {
    const [near] = nearestWords(language, languages);
    const hint = near === undefined ? '' : `; did you mean ${near}?`;
    throw new UsageError(`--language ${language}: it is ${languages.join(', ')}, or a file of phrases (.yaml)${hint}`);
  }
  const path = isFile ? language : join(shipped, `${language}.yaml`);
  const text = readText(path, 'file of phrases');
  const { phrases, diagnostics } = readPhrases(text);
  for (const each of diagnostics) terminal.err(`${printDiagnostic(path, text, each)}\n`);
  return phrases;
}

/** Next to `src` or `dist`, depending on where this module was loaded from. */
function folderOfPhrases(): string {
  for (let folder = dirname(fileURLToPath(import.meta.url)); ; ) {
    const phrases = join(folder, 'assets', 'phrases');
    if (existsSync(phrases)) return phrases;
    const parent = dirname(folder);
    if (parent === folder) throw new Bug('assets/phrases is next to the program');
    folder = parent;
  }
}
