/**
 * Which parts of a scene with faults were read as they were meant: what other stages find there is a fault of its own,
 * and not a consequence of those already reported.
 */
import type { Diagnostic, Span } from './diagnostic.ts';
import type { SceneMap } from './language.ts';
import type { StepMap } from './language-step.ts';
import type { VideoMap } from './language-video.ts';
import type { MapNode, Tree } from './yaml-tree.ts';

/**
 * What of a step may not be as it was meant: nothing; only words; its argument or its conclusions; or its times or what
 * they are measured by, which is everything that its own keys contain.
 */
export type StepDoubt = 'none' | 'words' | 'argument' | 'times';

export interface Doubts {
  readonly puzzle: boolean;
  /** What its times depend on: rate, length, narration, or what is next to it at the top of the file. */
  readonly video: boolean;
  /** Where its board is and when. */
  readonly board: boolean;
  readonly versions: boolean;
  /** An item of `steps` was left out altogether. */
  readonly order: boolean;
  readonly steps: readonly StepDoubt[];
}

const besidesTheVideo: readonly (keyof SceneMap['keys'])[] = [
  'proofreel',
  'title',
  'puzzle',
  'look',
  'groups',
  'advice',
  'versions',
  'steps',
];
/** Keys of the video that no time depends on. */
const ofThePicture: readonly (keyof VideoMap['keys'])[] = [
  'size',
  'board',
  'small',
  'draw',
  'candidates',
  'coordinates',
  'subtitles',
  'camera',
];
type StepKey = keyof StepMap['keys'];
const words: readonly StepKey[] = ['id', 'title', 'chapter', 'called'];
const argument: readonly StepKey[] = ['because', 'from', 'chain', 'deadly', 'so', 'fails'];
const explaining: readonly string[] = [...words, ...argument];

/**
 * From the faults that were found. `written` is the file's tree, `meant` the same with misspelt keys as they were
 * meant; such a key casts no doubt, since its value was read.
 */
export function doubtsOf(written: Tree, meant: SceneMap, faults: readonly Diagnostic[]): Doubts {
  const guessed = guessedKeys(written, meant.node);
  const doubtful = faults
    .filter(({ code, severity, span }) => severity === 'error' && !(code === 'unknown-key' && guessed.has(span.start)))
    .map(({ span }) => span);
  const { video, steps: list } = meant.values;
  const steps = (list?.items ?? []).flatMap((step) => step ?? []);
  const inSteps = doubtful.filter((span) => list !== undefined && within(span, list.span));
  const elsewhere = doubtful.filter((span) => !inSteps.includes(span));
  const under = (key: keyof SceneMap['keys']) => elsewhere.filter((span) => holds(meant.node, key, [span]));
  const inVideo = (key: keyof VideoMap['keys']) =>
    video === undefined ? [] : elsewhere.filter((span) => holds(video.node, key, [span]));
  const explained = new Set([...besidesTheVideo.flatMap(under), ...ofThePicture.flatMap(inVideo)]);
  return {
    puzzle: meant.values.puzzle === undefined || under('puzzle').length > 0,
    video: elsewhere.some((span) => !explained.has(span)),
    board: inVideo('board').length > 0,
    versions: under('versions').length > 0,
    order: under('steps').length > 0 || inSteps.some((span) => !steps.some((step) => overlap(span, step.span))),
    steps: steps.map(({ node }) => doubtOf(node, doubtful)),
  };
}

function doubtOf(step: MapNode, doubtful: readonly Span[]): StepDoubt {
  const own = doubtful.filter((span) => overlap(span, step.span));
  const unexplained = own.filter((span) => !explaining.some((key) => holds(step, key, [span])));
  const others = step.entries.filter(({ key }) => !explaining.includes(key.text));
  if (unexplained.length > 0 || others.some(({ key }) => holds(step, key.text, doubtful))) return 'times';
  if (argument.some((key) => holds(step, key, doubtful))) return 'argument';
  return words.some((key) => holds(step, key, doubtful)) ? 'words' : 'none';
}

/** Whether one of the places is in the key or its value, which may be elsewhere, as the text of an alias. */
function holds(map: MapNode, key: string, places: readonly Span[]): boolean {
  const entry = map.entries.find((each) => each.key.text === key);
  const parts = entry === undefined ? [] : [entry.key.span, ...partsOf(entry.value)];
  return parts.some((part) => places.some((place) => overlap(part, place)));
}

function partsOf(tree: Tree): readonly Span[] {
  if (tree.kind === 'list') return [tree.span, ...tree.items.flatMap(partsOf)];
  if (tree.kind !== 'map') return [tree.span];
  return [tree.span, ...tree.entries.flatMap(({ key, value }) => [key.span, ...partsOf(value)])];
}

/** Where keys begin whose meaning differs from what is written. */
function guessedKeys(written: Tree, meant: Tree): ReadonlySet<number> {
  const before = keysOf(written);
  return new Set([...keysOf(meant)].filter(([at, key]) => before.get(at) !== key).map(([at]) => at));
}

function keysOf(tree: Tree, keys = new Map<number, string>()): ReadonlyMap<number, string> {
  if (tree.kind === 'list') for (const item of tree.items) keysOf(item, keys);
  if (tree.kind === 'map') {
    for (const { key, value } of tree.entries) {
      keys.set(key.span.start, key.text);
      keysOf(value, keys);
    }
  }
  return keys;
}

/** Touching counts too: some places are empty, and two values are always separated by a character. */
function overlap(a: Span, b: Span): boolean {
  return a.start <= b.end && b.start <= a.end;
}

function within(inner: Span, outer: Span): boolean {
  return inner.start >= outer.start && inner.end <= outer.end;
}
