/**
 * Where two pictures can differ, by the calls that draw them, and one of them drawn again there.
 */
import type { Box } from './board-place.ts';
import type { Call } from './calls.ts';
import type { Context2D } from './context.ts';

/**
 * The boxes of all calls that are in only one list, or in a different order. Outside them both pictures are drawn by
 * the same calls in the same order, and are therefore the same.
 */
export function changedBoxes(before: readonly Call[], after: readonly Call[]): Box[] {
  const boxes: Box[] = [];
  let [old, own] = [0, 0];
  const passOld = (until: number): void => {
    for (; old < until; old++) boxes.push(before[old]!.box);
  };
  const passOwn = (until: number): void => {
    for (; own < until; own++) boxes.push(after[own]!.box);
  };
  while (old < before.length && own < after.length) {
    if (isSame(before[old]!, after[own]!)) {
      old += 1;
      own += 1;
      continue;
    }
    const [inOwn, inOld] = [nextLike(before[old]!, after, own + 1), nextLike(after[own]!, before, old + 1)];
    if (inOwn < after.length && (inOld === before.length || inOwn - own <= inOld - old)) passOwn(inOwn);
    else if (inOld < before.length) passOld(inOld);
    else {
      passOld(old + 1);
      passOwn(own + 1);
    }
  }
  passOld(before.length);
  passOwn(after.length);
  return boxes;
}

/**
 * Draws the calls that reach into `box`, in order, each as a whole: a clipped shape may be rounded differently. Only
 * what fills the frame is clipped, at whole pixels. Outside `box` the picture is then undefined.
 */
export function drawCalls(context: Context2D, calls: readonly Call[], box: Box): void {
  const own = context as { -readonly [Key in keyof Call['state']]: Call['state'][Key] } & Context2D;
  let last: Call['state'] | undefined;
  let rule: Call['state']['fillRule'] | undefined;
  for (const call of calls) {
    const { kind, state, numbers, text } = call;
    if (!meets(call.box, box)) continue;
    for (const key of settings) if (last === undefined || state[key] !== last[key]) set(own, key, state[key]);
    if (state.matrix !== last?.matrix) context.setTransform(...state.matrix);
    last = state;
    const [x = 0, y = 0] = numbers;
    switch (kind) {
      case 'rect':
        context.fillRect(...cutToPixels(call, box));
        break;
      case 'clear':
        context.clearRect(...cutToPixels(call, box));
        break;
      case 'text':
        if (rule !== state.fillRule) {
          context.beginPath();
          context.fill(state.fillRule);
          rule = state.fillRule;
        }
        context.fillText(text, x, y);
        break;
      case 'outlined text':
        context.strokeText(text, x, y);
        break;
      case 'stroke':
        trace(context, numbers);
        context.stroke();
        break;
      case 'fill evenodd':
      case 'fill nonzero':
        trace(context, numbers);
        context.fill(state.fillRule);
        rule = state.fillRule;
        break;
      default:
        kind satisfies never;
    }
  }
}

/** A rectangle's left, top, width and height, within `box` as far as its own edges are those of pixels. */
function cutToPixels({ numbers, state }: Call, box: Box): [number, number, number, number] {
  const [x = 0, y = 0, width = 0, height = 0] = numbers;
  const isPlain = state.matrix.join() === '1,0,0,1,0,0' && numbers.every(Number.isInteger) && width > 0 && height > 0;
  if (!isPlain) return [x, y, width, height];
  const [left, top] = [Math.max(x, box.left), Math.max(y, box.top)];
  const [right, bottom] = [Math.min(x + width, box.right), Math.min(y + height, box.bottom)];
  // Being near is not reaching into it.
  return [left, top, Math.max(0, right - left), Math.max(0, bottom - top)];
}

/** A few boxes that contain all of these; two are merged if that adds little. Clipped to the frame. */
export function fewBoxes(boxes: readonly Box[], width: number, height: number): Box[] {
  const few: Box[] = [];
  for (const { left, top, right, bottom } of boxes) {
    let box: Box = {
      ...{ left: Math.max(0, left), top: Math.max(0, top) },
      ...{ right: Math.min(width, right), bottom: Math.min(height, bottom) },
    };
    if (box.left >= box.right || box.top >= box.bottom) continue;
    for (let at = 0; at < few.length; ) {
      const joined = around(few[at]!, box);
      if (areaOf(joined) > 1.2 * (areaOf(few[at]!) + areaOf(box))) {
        at += 1;
        continue;
      }
      few.splice(at, 1);
      box = joined;
      at = 0; // It has grown, and may now take others in.
    }
    few.push(box);
  }
  while (few.length > mostBoxes) few.push(around(few.shift()!, few.shift()!));
  return few.reduce((sum, box) => sum + areaOf(box), 0) < 0.7 * width * height
    ? few
    : [{ left: 0, top: 0, right: width, bottom: height }];
}

const mostBoxes = 8;

const settings = [
  ...(['fillStyle', 'strokeStyle', 'lineCap', 'lineJoin', 'textAlign', 'textBaseline'] as const),
  ...(['lineWidth', 'globalAlpha', 'font'] as const),
];

function set<K extends (typeof settings)[number]>(
  context: Record<K, Call['state'][K]>,
  key: K,
  value: Call['state'][K],
): void {
  context[key] = value;
}

function trace(context: Context2D, path: readonly number[]): void {
  context.beginPath();
  for (let at = 0; at < path.length; ) {
    const step = path[at++];
    if (step === 2) {
      context.closePath();
      continue;
    }
    const [x, y] = [path[at++]!, path[at++]!];
    if (step === 0) context.moveTo(x, y);
    else context.lineTo(x, y);
  }
}

/** How far ahead a call is searched for that has moved because others were added or removed. */
const farthest = 200;

/** Where in `calls`, from `from` on, one like `call` stands; their number where none does. */
function nextLike(call: Call, calls: readonly Call[], from: number): number {
  const until = Math.min(calls.length, from + farthest);
  for (let at = from; at < until; at++) if (isSame(call, calls[at]!)) return at;
  return calls.length;
}

function isSame(a: Call, b: Call): boolean {
  if (a.sum !== b.sum || a.kind !== b.kind || a.text !== b.text || a.numbers.length !== b.numbers.length) return false;
  for (const key of settings) if (a.state[key] !== b.state[key]) return false;
  if (a.state.fillRule !== b.state.fillRule || a.state.matrix.some((part, at) => part !== b.state.matrix[at]))
    return false;
  return a.numbers.every((number, at) => number === b.numbers[at]);
}

function meets(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

function around(a: Box, b: Box): Box {
  return {
    ...{ left: Math.min(a.left, b.left), top: Math.min(a.top, b.top) },
    ...{ right: Math.max(a.right, b.right), bottom: Math.max(a.bottom, b.bottom) },
  };
}

function areaOf({ left, top, right, bottom }: Box): number {
  return (right - left) * (bottom - top);
}
