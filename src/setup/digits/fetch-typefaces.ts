/**
 * The font files of typefaces, fetched from the npm registry by `npm pack` and kept in node_modules/.cache; nothing of
 * them is committed. What is there already is not fetched again.
 */
import { execFileSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import type { Typeface } from './typefaces.ts';
import { fontWithin } from './woff.ts';

/** One font of a typeface: a file that the canvas can register. */
export interface Font {
  readonly typeface: Typeface;
  /** By it the font is registered, and no other: `lato-700`, `lato-400-italic`. */
  readonly name: string;
  readonly file: string;
  /** As its package names it, by the SPDX list. */
  readonly licence: string;
}

const cache = fileURLToPath(new URL('../../../node_modules/.cache/typefaces', import.meta.url));
const licences = ['OFL-1.1', 'Apache-2.0'];
/** How many packages one call of npm is asked for. */
const atOnce = 12;

const metadataShape = z.object({
  weights: z.array(z.number()),
  styles: z.array(z.string()),
  license: z.object({ type: z.string() }),
});

const recordShape = z.object({ licence: z.string(), fonts: z.array(z.string()) });

/** In the order of the typefaces. @throws Error if a package is missing or has another licence */
export function fontsOf(typefaces: readonly Typeface[], say: (line: string) => void): readonly Font[] {
  const missing = typefaces.filter((typeface) => !existsSync(recordFile(typeface)));
  for (let from = 0; from < missing.length; from += atOnce) {
    const some = missing.slice(from, from + atOnce);
    say(`fetching typefaces ${from + 1} to ${from + some.length} of ${missing.length}`);
    fetch(some);
  }
  return typefaces.flatMap((typeface) => {
    const { licence, fonts } = recordShape.parse(JSON.parse(readFileSync(recordFile(typeface), 'utf8')));
    return fonts.map((name) => ({ typeface, name, licence, file: join(folderOf(typeface), `${name}.ttf`) }));
  });
}

function folderOf({ name, version }: Typeface): string {
  return join(cache, `${name}-${version}`);
}

function recordFile(typeface: Typeface): string {
  return join(folderOf(typeface), 'fonts.json');
}

function fetch(some: readonly Typeface[]): void {
  const folder = mkdtempSync(join(tmpdir(), 'proofreel-typefaces-'));
  try {
    const packages = some.map(({ name, version }) => `@fontsource/${name}@${version}`);
    execFileSync('npm', ['pack', '--silent', '--pack-destination', folder, ...packages], {
      stdio: ['ignore', 'ignore', 'inherit'],
    });
    for (const typeface of some) unpack(typeface, folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function unpack(typeface: Typeface, folder: string): void {
  const { name, version } = typeface;
  const inside = join(folder, name);
  mkdirSync(inside);
  execFileSync('tar', [
    '-xzf',
    join(folder, `fontsource-${name}-${version}.tgz`),
    '-C',
    inside,
    '--strip-components=1',
  ]);
  const { weights, styles, license } = metadataShape.parse(
    JSON.parse(readFileSync(join(inside, 'metadata.json'), 'utf8')),
  );
  if (!licences.includes(license.type))
    throw new Error(`${name} stands under ${license.type}, not under ${licences.join(' or ')}`);
  const part = `${folderOf(typeface)}.part`;
  rmSync(part, { recursive: true, force: true });
  mkdirSync(part, { recursive: true });
  const files = new Set(readdirSync(join(inside, 'files')));
  const fonts = wanted(weights, styles).flatMap(({ weight, style }) => {
    const woff = `${name}-latin-${weight}-${style}.woff`;
    if (!files.has(woff)) return [];
    const font = `${name}-${weight}${style === 'italic' ? '-italic' : ''}`;
    writeFileSync(join(part, `${font}.ttf`), fontWithin(readFileSync(join(inside, 'files', woff))));
    return [font];
  });
  if (fonts.length === 0) throw new Error(`${name} has no font of Latin letters`);
  writeFileSync(join(part, 'fonts.json'), JSON.stringify({ licence: license.type, fonts }));
  renameSync(part, folderOf(typeface));
}

/** Of the weights that there are those nearest to light, regular, bold and black, and the regular one slanted. */
function wanted(weights: readonly number[], styles: readonly string[]) {
  const nearest = (to: number) =>
    weights.reduce((best, each) => (Math.abs(each - to) < Math.abs(best - to) ? each : best));
  const upright = [...new Set([300, 400, 700, 900].map(nearest))].map((weight) => ({ weight, style: 'normal' }));
  return styles.includes('italic') ? [...upright, { weight: nearest(400), style: 'italic' }] : upright;
}
