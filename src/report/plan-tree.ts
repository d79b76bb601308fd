/**
 * Which argument of a plan rests on which: its free steps drawn together, each other step with those that it rests on,
 * directly or through free steps. As text, and as an SVG picture (W3C SVG 1.1) whose words can be selected and
 * searched.
 */
import { compactly } from '../grid/notation/compact.ts';
import { asShown } from '../grid/notation/shown.ts';
import type { PlanReport, ReportedPlanStep } from './plan-report.ts';
import { argumentText, freeWord, reachesGoal } from './print-plan.ts';
import type { Paint } from './print-report.ts';

interface Node {
  readonly step: ReportedPlanStep;
  /** Arguments that are not free, without those that another of them rests on. */
  readonly on: readonly Node[];
  /** 0 for a step that rests only on the givens and free steps. */
  readonly level: number;
}

/** The tree from the goal down; an argument that several rest on is written out once. */
export function printPlanTree(report: PlanReport, paint: Paint): string {
  const nodes = nodesOf(report);
  const lines = [paint.bold(goalOf(report))];
  const shown = new Set<Node>();
  const add = (node: Node, before: string, isLast: boolean) => {
    const isAgain = shown.has(node);
    shown.add(node);
    const note = isAgain && node.on.length > 0 ? paint.dim(' (see above)') : '';
    lines.push(`${before}${isLast ? '└─ ' : '├─ '}${labelOf(node.step, paint)}${note}`);
    if (isAgain) return;
    const under = `${before}${isLast ? '   ' : '│  '}`;
    if (node.on.length === 0) lines.push(`${under}${paint.dim(`the givens and ${freeWord(report.steps)}`)}`);
    for (const [index, each] of node.on.entries()) add(each, under, index === node.on.length - 1);
  };
  const tops = topsOf(nodes);
  for (const [index, node] of tops.entries()) add(node, '', index === tops.length - 1);
  if (tops.length === 0) lines.push(paint.dim(`└─ the givens and ${freeWord(report.steps)}`));
  return `${lines.join('\n')}\n`;
}

function labelOf(step: ReportedPlanStep, paint: Paint): string {
  const so = asShown(compactly(step.conclusions).join(' '));
  return `${step.number} ${paint.bold(step.name)} ${argumentText(step)} so ${so}`;
}

function goalOf(report: PlanReport): string {
  if (!reachesGoal(report)) return 'as far as it goes';
  return report.until === undefined ? 'the solution' : shortened(asShown(compactly(report.until).join(' ')));
}

function nodesOf({ steps }: PlanReport): readonly Node[] {
  /** By step: the arguments under it that are not free, excluding itself. */
  const under: Set<Node>[] = [];
  const nodes: Node[] = [];
  const nodeOf = new Map<number, Node>();
  for (const [index, step] of steps.entries()) {
    const below = new Set<Node>();
    for (const number of step.restsOn) {
      const node = nodeOf.get(number - 1);
      if (node === undefined) for (const each of under[number - 1]!) below.add(each);
      else below.add(node);
    }
    under.push(below);
    if (step.cost === 0) continue;
    const deeper = new Set([...below].flatMap((node) => allUnder(node)));
    const on = [...below].filter((node) => !deeper.has(node)).sort((a, b) => a.step.number - b.step.number);
    const node = { step, on, level: on.length === 0 ? 0 : 1 + Math.max(...on.map(({ level }) => level)) };
    nodes.push(node);
    nodeOf.set(index, node);
  }
  return nodes;
}

function allUnder(node: Node): Node[] {
  return node.on.flatMap((each) => [each, ...allUnder(each)]);
}

function topsOf(nodes: readonly Node[]): readonly Node[] {
  return nodes.filter((node) => !nodes.some(({ on }) => on.includes(node)));
}

// Sizes in pixels.
const box = { height: 58, gapAcross: 28, gapDown: 54, padding: 14, leastWidth: 150 };
const margin = 28;
/** The width of a letter relative to the type's size; a generous guess, since the picture does not name a typeface. */
const letter = 0.6;
const sizes = { name: 16, text: 13 };

interface Placed {
  readonly node: Node | undefined;
  readonly lines: readonly [string, string];
  readonly width: number;
  x: number;
  readonly y: number;
}

/**
 * The same from the bottom (the givens) to the top (the goal), an arrow from each argument to those that rest on it.
 */
export function planTreeSvg(report: PlanReport): string {
  const nodes = nodesOf(report);
  const levels = nodes.length === 0 ? 0 : 1 + Math.max(...nodes.map(({ level }) => level));
  const yOf = (row: number) => margin + row * (box.height + box.gapDown);
  const rows: Placed[][] = [];
  const place = (node: Node | undefined, lines: readonly [string, string], row: number) => {
    const letters = Math.max(lines[0].length * sizes.name, lines[1].length * sizes.text) * letter;
    const width = Math.max(box.leastWidth, Math.ceil(letters) + 2 * box.padding);
    rows[row] ??= [];
    rows[row].push({ node, lines, width, x: 0, y: yOf(row) });
  };
  place(undefined, [goalOf(report), ''], 0);
  for (const node of nodes) {
    const { step } = node;
    const so = shortened(`${argumentText(step)} so ${asShown(compactly(step.conclusions).join(' '))}`);
    place(node, [`${step.number}  ${step.name}`, so], levels - node.level);
  }
  place(undefined, ['the givens', `and ${freeWord(report.steps)}`], levels + 1);
  const widthOf = (row: readonly Placed[]) =>
    row.reduce((sum, { width }) => sum + width, 0) + (row.length - 1) * box.gapAcross;
  const width = Math.max(...rows.map(widthOf)) + 2 * margin;
  for (const row of rows) {
    let x = (width - widthOf(row)) / 2;
    for (const each of row) {
      each.x = x;
      x += each.width + box.gapAcross;
    }
  }
  const all = rows.flat();
  const [goal, ground] = [all[0]!, all.at(-1)!];
  const at = (node: Node) => all.find((each) => each.node === node)!;
  const arrows = [
    ...nodes.flatMap((node) => node.on.map((on) => arrow(at(on), at(node)))),
    ...nodes.filter(({ on }) => on.length === 0).map((node) => arrow(ground, at(node))),
    ...topsOf(nodes).map((node) => arrow(at(node), goal)),
    ...(nodes.length === 0 ? [arrow(ground, goal)] : []),
  ];
  const height = yOf(levels + 1) + box.height + margin;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${Math.ceil(width)} ${height}" width="${Math.ceil(width)}" height="${height}" role="img" font-family="'IBM Plex Sans', sans-serif">`,
    '<title>Which argument rests on which</title>',
    `<rect width="100%" height="100%" fill="#fdfcf8"/>`,
    '<defs><marker id="head" viewBox="0 0 10 10" refX="9" refY="5" markerWidth="8" markerHeight="8" orient="auto"><path d="M0 0 10 5 0 10z" fill="#43577d"/></marker></defs>',
    ...arrows,
    ...all.map(boxOf),
    '</svg>',
    '',
  ].join('\n');
}

function arrow(from: Placed, to: Placed): string {
  const [x1, y1] = [middle(from), from.y];
  const [x2, y2] = [middle(to), to.y + box.height];
  const bend = (y1 + y2) / 2;
  const path = `M${x1} ${y1} C${x1} ${bend} ${x2} ${bend} ${x2} ${y2 + 2}`;
  return `<path d="${path}" fill="none" stroke="#43577d" stroke-width="2" marker-end="url(#head)"/>`;
}

function boxOf(placed: Placed): string {
  const { node, lines, width, x, y } = placed;
  const center = middle(placed);
  const isArgument = node !== undefined;
  const [fill, stroke] = isArgument ? ['#ffffff', '#0b5a7a'] : ['#e8e5dc', '#5d6469'];
  const isOneLine = lines[1] === '';
  const text = (words: string, size: number, down: number, weight: string) =>
    `<text x="${center}" y="${y + down}" font-size="${size}" font-weight="${weight}" text-anchor="middle" fill="#17202a">${escaped(words)}</text>`;
  return [
    `<rect x="${x}" y="${y}" width="${width}" height="${box.height}" rx="8" fill="${fill}" stroke="${stroke}" stroke-width="2"/>`,
    text(lines[0], sizes.name, isOneLine ? 35 : 24, '600'),
    ...(isOneLine ? [] : [text(lines[1], sizes.text, 45, '400')]),
  ].join('\n');
}

function middle({ x, width }: Placed): number {
  return Math.round(x + width / 2);
}

function shortened(text: string): string {
  return text.length <= 60 ? text : `${text.slice(0, 57)}...`;
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
