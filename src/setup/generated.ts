/**
 * What the generated parts of the repository should contain, computed from the code.
 */

import { phrasesSchema } from '../draft/phrases.ts';
import { checkScene } from '../lesson/check-scene.ts';
import { readScene, sceneSchema } from '../lesson/read-scene.ts';
import { locateSchema } from '../report/locate-report.ts';
import { planSchema, waysSchema } from '../report/plan-report.ts';
import { printReport } from '../report/print-report.ts';
import { reportSchema } from '../report/report.ts';
import { reportOf } from '../report/report-of.ts';
import { codes } from '../scene/codes.ts';
import { printOwnCosts } from '../scene/print-teaching-costs.ts';
import { lookSchema } from '../scene/read-look.ts';
import { teachingCostsSchema } from '../scene/teaching-costs.ts';
import type { Verb } from '../verbs/verb.ts';
import { verbNames, verbs } from '../verbs/verbs.ts';

export interface GeneratedFile {
  /** From the project's folder. */
  readonly file: string;
  /** All of it. */
  readonly text: string;
}

/** `read` returns the text of a file of the project; in a page written by hand, only the marked parts are generated. */
export function generatedFiles(read: (file: string) => string): readonly GeneratedFile[] {
  const scene = read(firstScene);
  return [
    page(read, 'README.md', {
      scene: fenced('yaml', scene),
      answer: fenced('text', answerTo(scene.replace('r6c46<>3', 'r6c46<>3 r1c1<>3'))),
      verbs: verbsTable(),
    }),
    page(read, 'scenes/LANGUAGE.md', { codes: codesTable() }),
    { file: 'assets/schemas/scene.json', text: asJson(sceneSchema()) },
    { file: 'assets/schemas/look.json', text: asJson(lookSchema()) },
    { file: 'assets/teaching-costs.yaml', text: printOwnCosts() },
    { file: 'assets/schemas/teaching-costs.json', text: asJson(teachingCostsSchema()) },
    { file: 'assets/schemas/phrases.json', text: asJson(phrasesSchema()) },
    { file: 'assets/schemas/plan.json', text: asJson(planSchema()) },
    { file: 'assets/schemas/ways.json', text: asJson(waysSchema()) },
    { file: 'assets/schemas/report.json', text: asJson(reportSchema()) },
    { file: 'assets/schemas/locate.json', text: asJson(locateSchema()) },
  ];
}

/** The scene that the README explains line by line. */
export const firstScene = 'scenes/two-towers.yaml';

/** What `check` says about the first scene with this text. */
export function answerTo(text: string): string {
  const { scene, diagnostics } = readScene(text);
  if (scene === undefined) throw new Error(`${firstScene} cannot be read: ${JSON.stringify(diagnostics)}`);
  const asItIs = (words: string) => words;
  const paint = { bold: asItIs, dim: asItIs, red: asItIs, green: asItIs, yellow: asItIs };
  return printReport(reportOf({ path: firstScene, text }, checkScene(scene), diagnostics), paint);
}

/** One line per verb: how it is called, and what it does. */
function verbsTable(): string {
  return table(
    ['call', 'does'],
    verbNames.map((name) => verbRow(name, verbs[name])),
  );
}

/** How a verb is called, and what it does. */
export function verbRow(name: string, { usage, does }: Verb): readonly [call: string, does: string] {
  return [`\`proofreel ${`${name} ${usage}`.trim()}\``, does];
}

function codesTable(): string {
  return table(
    ['code', 'means'],
    Object.entries(codes).map(([code, means]) => [`\`${code}\``, means] as const),
  );
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
  return [line(head), `|${'---|'.repeat(head.length)}`, ...rows.map(line)].join('\n');
}

/** The page with each part between `<!-- name: ... -->` and `<!-- /name -->` replaced. */
function page(read: (file: string) => string, file: string, parts: Readonly<Record<string, string>>): GeneratedFile {
  let text = read(file);
  for (const [name, part] of Object.entries(parts)) {
    const marked = new RegExp(`(<!-- ${name}: [^\\n]*-->\\n)[^]*?(<!-- /${name} -->)`);
    if (!marked.test(text)) throw new Error(`${file} has no part marked "${name}" to write into`);
    text = text.replace(marked, (_all, before: string, after: string) => `${before}\n${part}\n\n${after}`);
  }
  return { file, text };
}

function fenced(language: string, text: string): string {
  return `\`\`\`${language}\n${text.trimEnd()}\n\`\`\``;
}

function asJson(schema: object): string {
  return `${JSON.stringify(schema, undefined, 2)}\n`;
}
