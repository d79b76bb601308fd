/**
 * Another `video.board` in the text of a scene, in which nothing else changes.
 */
import type { BoardShape } from './scene.ts';
import { readYamlFile } from './yaml-file.ts';
import { type Entry, keyOf, type MapNode } from './yaml-tree.ts';

export interface PlaceText {
  /** As `at` has it; undefined for a single place that holds all the time. */
  readonly at: string | undefined;
  readonly shape: BoardShape;
}

/** What stands from `start` to `end` (UTF-16 offsets) is replaced. */
export interface BoardEdit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/**
 * The one change that makes `places` the board of the scene, which can be read; undefined where its `video` or its board
 * stands behind an alias, or there is nothing to put it before.
 */
export function boardEdit(text: string, places: readonly PlaceText[]): BoardEdit | undefined {
  const tree = readYamlFile(text, 'a scene begins with `proofreel: 1`', (whole) => whole).value;
  if (tree?.kind !== 'map') return undefined;
  const newline = text.includes('\r\n') ? '\r\n' : '\n';
  const written = places.map(placeText);
  const video = entryOf(tree, 'video');
  if (video === undefined) return newVideo(tree, written, newline);
  if (video.value.kind === 'nothing') {
    const { start } = video.value.span;
    return { start, end: start, text: ` {board: ${inBrackets(written, `${newline}    `)}}` };
  }
  if (video.value.kind !== 'map' || !isAt(text, video)) return undefined;
  const board = entryOf(video.value, 'board');
  return board === undefined
    ? newBoard(text, video.value, written, newline)
    : otherValue(text, board, written, newline);
}

function entryOf(map: MapNode, key: string): Entry | undefined {
  const found = keyOf(map, key);
  return map.entries.find((entry) => entry.key === found);
}

/** Whether the value stands after its own key, and not where an alias takes it from. */
function isAt(text: string, { key, value }: Entry): boolean {
  return value.span.start >= key.span.end && /^\s*:/.test(text.slice(key.span.end));
}

function newVideo(whole: MapNode, written: readonly string[], newline: string): BoardEdit | undefined {
  const before = whole.entries.find(({ key }) => key.text === 'steps') ?? whole.entries.at(-1);
  if (before === undefined) return undefined;
  const { start } = before.key.span;
  if (whole.braces) return { start, end: start, text: `video: {board: ${inBrackets(written, ' ')}}, ` };
  return { start, end: start, text: `video:${newline}  ${boardLines(written, '  ', newline)}${newline}` };
}

/** Before the first key of `video`, with that one's indent. */
function newBoard(text: string, video: MapNode, written: readonly string[], newline: string): BoardEdit {
  const first = video.entries[0];
  if (first === undefined) {
    const start = video.span.start + 1;
    return { start, end: start, text: `board: ${inBrackets(written, ' ')}` };
  }
  const { start } = first.key.span;
  if (video.braces) return { start, end: start, text: `board: ${inBrackets(written, ' ')}, ` };
  const indent = indentAt(text, start);
  return { start, end: start, text: `${boardLines(written, indent, newline)}${newline}${indent}` };
}

/** What stands before an offset on its line: blanks, since a key of a map in lines begins there. */
function indentAt(text: string, offset: number): string {
  return text.slice(text.lastIndexOf('\n', offset - 1) + 1, offset).replace(/[^ ]/g, ' ');
}

function boardLines(written: readonly string[], indent: string, newline: string): string {
  const [only] = written;
  if (written.length === 1 && only !== undefined) return `board: ${only}`;
  return ['board:', ...written.map((place) => `${indent}  - ${place}`)].join(newline);
}

function otherValue(text: string, entry: Entry, written: readonly string[], newline: string): BoardEdit | undefined {
  const { key, value } = entry;
  if (!isAt(text, entry)) return undefined;
  const { start, end } = value.span;
  const isOnLineOfKey = !text.slice(key.span.end, start).includes('\n');
  if (value.kind === 'nothing' || isOnLineOfKey) {
    const indent = `${newline}${indentAt(text, key.span.start)}  `;
    const lead = value.kind === 'nothing' ? ' ' : '';
    return { start, end, text: `${lead}${inBrackets(written, indent)}` };
  }
  const [only] = written;
  // A list may stand no further to the right than its key, where braces may not.
  if (value.kind === 'map' && written.length === 1 && only !== undefined) return { start, end, text: only };
  const indent = indentAt(text, start);
  return { start, end, text: written.map((place) => `- ${place}`).join(`${newline}${indent}`) };
}

/** A single place as it is, several in brackets, parted by `between`. */
function inBrackets(written: readonly string[], between: string): string {
  const [only] = written;
  if (written.length === 1 && only !== undefined) return only;
  return `[${written.join(`,${between}`)}]`;
}

function placeText({ at, shape }: PlaceText): string {
  const time = at === undefined ? '' : `at: ${at}, `;
  switch (shape.kind) {
    case 'hidden':
      return `{${time}hidden: true}`;
    case 'square':
      return `{${time}left: ${px(shape.left)}, top: ${px(shape.top)}, side: ${px(shape.side)}}`;
    case 'corners':
      return `{${time}corners: [${shape.corners.map(([x, y]) => `[${px(x)}, ${px(y)}]`).join(', ')}]}`;
    default:
      return shape satisfies never;
  }
}

/** To a tenth of a pixel, which is less than the measurement can tell. */
function px(value: number): string {
  const rounded = Math.round(value * 10) / 10;
  return String(Object.is(rounded, -0) ? 0 : rounded);
}
