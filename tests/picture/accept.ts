/**
 * `npm run pictures:accept NAME...` (or `all`): takes the picture as it is drawn now for its reference.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { compare, referenceFolder } from './compare.ts';
import { goldens } from './goldens.ts';

const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => name !== 'all' && !goldens.some((golden) => golden.name === name));
if (wanted.length === 0 || unknown.length > 0) {
  const what =
    unknown.length > 0 ? `There is no picture named ${unknown.join(', ')}.` : 'Name the pictures to accept, or "all".';
  process.stderr.write(`${what} There are: ${goldens.map(({ name }) => name).join(', ')}\n`);
  process.exitCode = 2;
} else {
  mkdirSync(referenceFolder, { recursive: true });
  for (const golden of goldens) {
    if (!wanted.includes('all') && !wanted.includes(golden.name)) continue;
    const result = compare(golden);
    if (result.kind === 'same') continue;
    writeFileSync(join(referenceFolder, `${golden.name}.png`), result.now);
    process.stderr.write(`${golden.name}: ${result.kind}, taken\n`);
  }
}
