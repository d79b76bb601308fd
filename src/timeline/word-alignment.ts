/**
 * Which words of one text are those of another: the pairing, in order, that keeps the most words, and among those the
 * one that keeps them in the longest sequences.
 *
 * The longest common subsequence by dynamic programming (Wagner & Fischer, *The string-to-string correction problem*,
 * J. ACM 21(1), 1974; from memory) with a bonus for a pair that follows a pair. Long texts are first split at phrases
 * that occur once in each, so that time and memory grow with the length and not with its square.
 */

/** The most cells in one table: one byte each. */
const mostCells = 1 << 22;

/**
 * By word of `before`: the index of the same word in `after`, or -1 if it is no longer there. Ascending except for -1.
 */
export function alignWords(before: readonly string[], after: readonly string[]): Int32Array {
  const numbers = new Map<string, number>();
  const numbered = (words: readonly string[]) =>
    Int32Array.from(words, (word) => {
      const number = numbers.get(word) ?? numbers.size;
      numbers.set(word, number);
      return number;
    });
  const pairs = new Int32Array(before.length).fill(-1);
  pairWithin(numbered(before), numbered(after), { a: 0, aEnd: before.length, b: 0, bEnd: after.length }, pairs);
  dropStrays(pairs, after.length);
  return pairs;
}

/** Words `a` to `aEnd` of the one text and `b` to `bEnd` of the other, the ends excluded. */
interface Part {
  readonly a: number;
  readonly aEnd: number;
  readonly b: number;
  readonly bEnd: number;
}

function pairWithin(as: Int32Array, bs: Int32Array, part: Part, pairs: Int32Array): void {
  const { a, aEnd, b, bEnd } = part;
  if (a === aEnd || b === bEnd) return;
  if ((aEnd - a) * (bEnd - b) <= mostCells) {
    pairByTable(as, bs, part, pairs);
    return;
  }
  let from = { a, b };
  for (const [nextA, nextB] of [...cutsOf(as, bs, part), [aEnd, bEnd] as const]) {
    pairWithin(as, bs, { ...from, aEnd: nextA, bEnd: nextB }, pairs);
    from = { a: nextA, b: nextB };
  }
}

/** Where both parts may be split: at phrases that occur once in each; if there are none, in their middles. */
function cutsOf(as: Int32Array, bs: Int32Array, part: Part): readonly (readonly [number, number])[] {
  for (const length of [4, 3, 2, 1]) {
    const [inA, inB] = [onceIn(as, part.a, part.aEnd, length), onceIn(bs, part.b, part.bEnd, length)];
    const shared = [...inA].flatMap(([phrase, at]): (readonly [number, number])[] => {
      const other = inB.get(phrase);
      return other === undefined || (at === part.a && other === part.b) ? [] : [[at, other]];
    });
    const cuts = longestRising(shared.sort(([one], [other]) => one - other));
    if (cuts.length > 0) return cuts;
  }
  return [[Math.floor((part.a + part.aEnd) / 2), Math.floor((part.b + part.bEnd) / 2)]];
}

/** Where each phrase of this many words begins, for those that occur there once. */
function onceIn(words: Int32Array, from: number, until: number, length: number): Map<string, number> {
  const places = new Map<string, number>();
  const twice = new Set<string>();
  for (let at = from; at + length <= until; at++) {
    const phrase = words.subarray(at, at + length).join(' ');
    if (places.has(phrase)) twice.add(phrase);
    else places.set(phrase, at);
  }
  for (const phrase of twice) places.delete(phrase);
  return places;
}

/** The longest part of the list, in its order, in which the second numbers also ascend. */
function longestRising(list: readonly (readonly [number, number])[]): (readonly [number, number])[] {
  /** By length minus one: the index of the pair that ends an ascending part of it with the least second number. */
  const ends: number[] = [];
  const before = new Int32Array(list.length).fill(-1);
  for (const [index, [, second]] of list.entries()) {
    let [low, high] = [0, ends.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (list[ends[middle]!]![1] < second) low = middle + 1;
      else high = middle;
    }
    before[index] = ends[low - 1] ?? -1;
    ends[low] = index;
  }
  const rising: (readonly [number, number])[] = [];
  for (let at = ends.at(-1) ?? -1; at >= 0; at = before[at]!) rising.push(list[at]!);
  return rising.reverse();
}

/** How the best pairing of two beginnings comes about; the last bit: its last pair follows a pair. */
const [leaveA, leaveB, pair, afterPair] = [1, 2, 3, 4];

function pairByTable(as: Int32Array, bs: Int32Array, { a, aEnd, b, bEnd }: Part, pairs: Int32Array): void {
  const [rows, columns] = [aEnd - a, bEnd - b];
  const ways = new Uint8Array(rows * columns);
  let best = new Int32Array(columns + 1);
  /** Of pairings that end with this pair. */
  let paired = new Int32Array(columns + 1).fill(-1);
  for (let row = 0; row < rows; row++) {
    const [nextBest, nextPaired] = [new Int32Array(columns + 1), new Int32Array(columns + 1).fill(-1)];
    for (let column = 0; column < columns; column++) {
      const [leftA, leftB] = [best[column + 1]!, nextBest[column]!];
      let way = leftA >= leftB ? leaveA : leaveB;
      let most = Math.max(leftA, leftB);
      if (as[a + row] === bs[b + column]) {
        const follows = paired[column]! >= 0 && paired[column]! + 1 >= best[column]!;
        const here = 2 + (follows ? paired[column]! + 1 : best[column]!);
        nextPaired[column + 1] = here;
        if (follows) way |= afterPair;
        if (here >= most) [way, most] = [pair | (way & afterPair), here];
      }
      ways[row * columns + column] = way;
      nextBest[column + 1] = most;
    }
    [best, paired] = [nextBest, nextPaired];
  }
  let [row, column, mustPair] = [rows - 1, columns - 1, false];
  while (row >= 0 && column >= 0) {
    const way = ways[row * columns + column]!;
    if (mustPair || (way & 3) === pair) {
      pairs[a + row] = b + column;
      mustPair = (way & afterPair) !== 0;
      row--;
      column--;
    } else if ((way & 3) === leaveA) row--;
    else column--;
  }
}

/**
 * A word or two in the middle of a passage that was replaced match by chance ("the", "is"): they are not paired.
 */
function dropStrays(pairs: Int32Array, count: number): void {
  for (let dropped = true; dropped; ) {
    dropped = false;
    const sequences = sequencesOf(pairs);
    for (const [index, { a, b, length }] of sequences.entries()) {
      const [before, after] = [sequences[index - 1], sequences[index + 1]];
      const gapBefore = Math.min(
        a - (before === undefined ? 0 : before.a + before.length),
        b - (before === undefined ? 0 : before.b + before.length),
      );
      const gapAfter = Math.min((after?.a ?? pairs.length) - a - length, (after?.b ?? count) - b - length);
      const gap = Math.min(gapBefore, gapAfter);
      if (!((length === 1 && gap >= 2) || (length === 2 && gap >= 4))) continue;
      pairs.fill(-1, a, a + length);
      dropped = true;
      break;
    }
  }
}

function sequencesOf(pairs: Int32Array): { readonly a: number; readonly b: number; length: number }[] {
  const sequences: { a: number; b: number; length: number }[] = [];
  for (const [a, b] of pairs.entries()) {
    const last = sequences.at(-1);
    if (b < 0) continue;
    if (last !== undefined && last.a + last.length === a && last.b + last.length === b) last.length++;
    else sequences.push({ a, b, length: 1 });
  }
  return sequences;
}
