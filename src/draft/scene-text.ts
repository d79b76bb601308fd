/**
 * The text of a drafted scene, formatted as one would write it by hand.
 */
import type { Digit, Grid } from '../grid/grid.ts';
import type { Span } from '../scene/diagnostic.ts';
import type { DraftStep } from './draft-step.ts';

export interface DraftScene {
  readonly title: string;
  /** Lines at its head, without `#`. */
  readonly remarks: readonly string[];
  /** The key `puzzle` with all its lines, each ended. */
  readonly puzzle: string;
  /** The keys of `video` with their indentation, each line ended. */
  readonly video: string;
  readonly steps: readonly DraftStep[];
}

/** Lines are broken before this column if possible. */
const lineWidth = 116;

export function sceneText({ title, remarks, puzzle, video, steps }: DraftScene): string {
  return [
    ...remarks.map((remark) => `# ${remark}\n`),
    'proofreel: 1\n',
    `title: ${scalar(title, 0)}\n`,
    puzzle,
    'video:\n',
    video,
    'steps:\n',
    steps.map(stepText).join('\n'),
  ].join('');
}

/** The puzzle of an ordinary board, the givens row by row with a gap at each box. */
export function puzzleText({ size, boxRows, boxColumns }: Grid, givens: readonly (Digit | undefined)[]): string {
  const rows = Array.from({ length: size }, (_, row) => {
    const signs = givens.slice(row * size, (row + 1) * size).map((given) => String(given ?? '.'));
    const boxes = Array.from({ length: size / boxColumns }, (_box, box) =>
      signs.slice(box * boxColumns, (box + 1) * boxColumns).join(''),
    );
    return `    ${boxes.join(' ')}\n`;
  });
  return ['puzzle:\n', '  setter: in-house\n', `  boxes: ${boxRows}x${boxColumns}\n`, '  givens: |\n', ...rows].join(
    '',
  );
}

/** The puzzle of a scene as written in its text: `span` is that of the map after `puzzle`. */
export function puzzleOfScene(text: string, span: Span): string {
  const own = text.slice(span.start, span.end).trimEnd();
  if (own.startsWith('{')) return `puzzle: ${own}\n`;
  const indent = span.start - (text.lastIndexOf('\n', span.start - 1) + 1);
  return `puzzle:\n${' '.repeat(indent)}${own}\n`;
}

/** An item of `steps`, each line ended. */
function stepText(step: DraftStep): string {
  const lines = [`  - id: ${step.id}\n`];
  const key = (name: string, value: string | undefined) => {
    if (value !== undefined) lines.push(`    ${name}: ${scalar(value, 6)}\n`);
  };
  if (step.remark !== undefined) lines.unshift(`  # ${step.remark}\n`);
  key('at', step.at);
  key('chapter', step.chapter);
  key('title', step.title);
  key('say', step.say);
  key('because', step.because);
  key('called', step.called);
  key('from', step.from);
  key('chain', step.chain);
  key('deadly', step.deadly);
  key('so', step.so);
  if (step.only?.length === 1) key('only', step.only[0]);
  else if (step.only !== undefined) lines.push(`    only: [${step.only.join(', ')}]\n`);
  key('pencil', step.pencil);
  key('cascade', step.cascade);
  if (step.note !== undefined) lines.push(`    show:\n      - {note: ${quotedText(step.note)}}\n`);
  return lines.join('');
}

/** A string as a value: plain if YAML reads it unchanged, folded if it is long, else in quotes. */
function scalar(text: string, indent: number): string {
  if (text.length + indent > lineWidth - 14) return `>-\n${folded(text, ' '.repeat(Math.max(2, indent)))}`;
  return isPlain(text) ? text : quotedText(text);
}

function isPlain(text: string): boolean {
  return /^[\p{L}\p{N}(]/u.test(text) && !/: |:$| #|["\n]/.test(text);
}

function quotedText(text: string): string {
  return `"${text.replace(/["\\]/g, '\\$&')}"`;
}

function folded(text: string, indent: string): string {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last === undefined || last.length + 1 + word.length > lineWidth - indent.length) lines.push(word);
    else lines[lines.length - 1] = `${last} ${word}`;
  }
  return lines.map((line) => `${indent}${line}`).join('\n');
}
