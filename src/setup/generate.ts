/**
 * The generated parts of the repository: what is defined in one place in the code and shown in another.
 * `npm run generate` writes them; with `--check` it says which are out of date, and writes nothing.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { generatedFiles } from './generated.ts';

const root = join(dirname(fileURLToPath(import.meta.url)), '../..');

const stale = generatedFiles(read).filter(({ file, text }) => read(file) !== text);
if (process.argv.includes('--check')) {
  for (const { file } of stale) console.log(`${file} is out of date: run \`npm run generate\``);
  process.exitCode = stale.length === 0 ? 0 : 1;
} else {
  for (const { file, text } of stale) {
    mkdirSync(dirname(join(root, file)), { recursive: true });
    writeFileSync(join(root, file), text);
    console.log(`${file} written`);
  }
}

/** The file's text; empty if it does not exist yet. */
function read(file: string): string {
  try {
    return readFileSync(join(root, file), 'utf8');
  } catch {
    return '';
  }
}
