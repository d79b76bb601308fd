/**
 * Pairs of folders that import each other, whether values or types: where there is one, neither can be understood, moved
 * or tested without the other. Each folder counts for itself, those within it apart.
 *
 * `npx tsx tests/setup/both-ways.ts` prints the pairs, and how many there are.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '../..');

/** `a <-> b`, sorted; `folder` and the names are as seen from the root of the repository. */
export function pairsBothWays(folder: string, at: string = root): readonly string[] {
  const imports = new Set<string>();
  for (const name of readdirSync(join(at, folder), { recursive: true, encoding: 'utf8' })) {
    if (!name.endsWith('.ts')) continue;
    const file = join(at, folder, name);
    const from = relative(at, dirname(file));
    for (const [, path = ''] of readFileSync(file, 'utf8').matchAll(/(?:\bfrom|\bimport\(?)\s*'(\.[^']+)'/g)) {
      const to = relative(at, dirname(join(dirname(file), path)));
      if (to !== from) imports.add(`${from} ${to}`);
    }
  }
  return [...imports]
    .map((one) => one.split(' '))
    .flatMap(([from = '', to = '']) => (from < to && imports.has(`${to} ${from}`) ? [`${from} <-> ${to}`] : []))
    .sort();
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const pairs = pairsBothWays('src');
  for (const pair of pairs) process.stdout.write(`${pair}\n`);
  process.stdout.write(`${pairs.length} pairs of folders import both ways\n`);
}
