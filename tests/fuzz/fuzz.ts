/**
 * Cases by their numbers, and the smallest one that still fails as a failing one does.
 */
import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect } from 'vitest';
import { chanceFrom } from '../random.ts';
import { type Kind, type KindName, kinds } from './kinds.ts';

export interface Case {
  readonly kind: KindName;
  readonly text: string;
}

/** The case of that number: the same on every machine. */
export function caseOf(seed: number): Case {
  const chance = chanceFrom(seed * 2_654_435_761);
  for (let warm = 0; warm < 5; warm++) chance.below(2);
  const drawn = (Object.keys(kinds) as KindName[]).flatMap((name) => Array<KindName>(kinds[name].weight).fill(name));
  const kind = chance.pick(drawn);
  return { kind, text: kinds[kind].make(chance) };
}

/** What went wrong, or undefined. */
export async function failureOf({ kind, text }: Case): Promise<string | undefined> {
  const folder = mkdtempSync(join(tmpdir(), 'proofreel-fuzz-'));
  const { run }: Kind = kinds[kind];
  try {
    await run(text, folder);
    return undefined;
  } catch (failure) {
    return failure instanceof Error ? (failure.stack ?? failure.message) : String(failure);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Runs the cases from `from` on, `count` of them; fails with the smallest that was found of the first that fails. */
export async function runCases(from: number, count: number): Promise<void> {
  for (let seed = from; seed < from + count; seed++) {
    const found = caseOf(seed);
    const failure = await failureOf(found);
    if (failure === undefined) continue;
    const small = await smallest(found, failure);
    expect.unreachable(`case ${seed}, a ${found.kind}: ${failure}\nsmallest${kept(small)}:\n${small.text}`);
  }
}

/** With `KEEP=1` the case becomes a file that `kept.test.ts` runs from then on. */
function kept({ kind, text }: Case): string {
  if (process.env.KEEP !== '1') return '';
  const name = `${kind}-${createHash('sha256').update(text).digest('hex').slice(0, 8)}.txt`;
  writeFileSync(new URL(`kept/${name}`, import.meta.url), text);
  return `, kept as ${name}`;
}

/** What of a failure is the same however long the file is: the first line without its numbers and quotes. */
const about = (failure: string): string =>
  (failure.split('\n')[0] ?? '').replace(/\d+|"[^"]*"|'[^']*'/g, '').slice(0, 60);

const patienceMs = 20_000;

/** Taken apart by lines, then by signs, as long as it fails alike. */
async function smallest(found: Case, failure: string): Promise<Case> {
  const end = performance.now() + patienceMs;
  const failsAlike = async (text: string): Promise<boolean> => {
    const again = await failureOf({ ...found, text });
    return again !== undefined && about(again) === about(failure);
  };
  let { text } = found;
  for (const mark of ['\n', '']) {
    let parts = text.split(mark);
    for (let size = Math.ceil(parts.length / 2); size >= 1; size = size === 1 ? 0 : Math.ceil(size / 2)) {
      for (let at = 0; at < parts.length && performance.now() < end; ) {
        const fewer = parts.toSpliced(at, size);
        if (await failsAlike(fewer.join(mark))) parts = fewer;
        else at += size;
      }
    }
    text = parts.join(mark);
  }
  return { ...found, text };
}
