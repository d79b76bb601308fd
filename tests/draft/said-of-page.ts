/** The step of the page of a name in `scenes/names`, in words. */
import { readFileSync } from 'node:fs';
import { startPosition } from '../../src/check/start-position.ts';
import { argumentInWords } from '../../src/draft/say-argument.ts';
import { wordingOf } from '../../src/draft/wording.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { findArgument } from '../../src/techniques/find-argument.ts';
import { phrasesIn } from './drafted.ts';

/** What is said of it; undefined where nothing of that name is found again in its position. */
export function saidOfPage(page: string, language: string): string | undefined {
  const text = readFileSync(new URL(`../../scenes/names/${page}.yaml`, import.meta.url), 'utf8');
  const { puzzle, steps } = readScene(text).scene!;
  const position = startPosition(puzzle, true);
  const { because, so } = steps[0]!;
  const conclusions = so?.kind === 'listed' ? so.conclusions.map(({ value }) => value) : [];
  const found = findArgument(position, because!.name!, conclusions);
  if (found === undefined) return undefined;
  const instance = { ...found.instance, conclusions };
  const wording = wordingOf(phrasesIn(language), position.grid);
  return argumentInWords({ wording, name: because!.name!, position, instance }).say;
}
