/**
 * A picture as the list of canvas calls in order, each with the box that it stays within. Two lists show which part of
 * two pictures can differ, and a list can be redrawn only within that part.
 */
import { Bug } from '../grid/bug.ts';
import type { Box } from './board-place.ts';
import type { Context2D } from './context.ts';

/** The state that a canvas keeps between calls. */
interface State {
  fillStyle: string;
  strokeStyle: string;
  lineCap: 'butt' | 'round';
  lineJoin: 'miter' | 'round';
  textAlign: 'left' | 'center' | 'right';
  textBaseline: 'alphabetic';
  lineWidth: number;
  globalAlpha: number;
  font: string;
  /** Of the last fill: node-canvas (3.2) uses it for letters too. */
  fillRule: 'nonzero' | 'evenodd';
  /** Never mutated. */
  matrix: Matrix;
}

type Matrix = readonly [number, number, number, number, number, number];

type Kind = 'fill nonzero' | 'fill evenodd' | 'stroke' | 'rect' | 'clear' | 'text' | 'outlined text';

/** One thing drawn on the canvas. */
export interface Call {
  readonly kind: Kind;
  readonly state: Readonly<State>;
  /**
   * Of a path: 0, x, y for a move, 1, x, y for a line, 2 for a way back. Of a rectangle its four numbers, of a text its
   * two.
   */
  readonly numbers: readonly number[];
  readonly text: string;
  /** Equal for equal numbers. */
  readonly sum: number;
  /** In whole pixels, `right` and `bottom` not included; it changes none outside. */
  readonly box: Box;
}

/** What a text covers, in pixels from its point, without a transform; all four positive to the outside. */
export interface TextBox {
  readonly width: number;
  readonly left: number;
  readonly right: number;
  readonly ascent: number;
  readonly descent: number;
}

type Measure = (font: string, text: string, align: 'left' | 'center' | 'right') => TextBox;

export interface CallList {
  /** To be drawn on instead of a canvas. */
  readonly context: Context2D;
  /** Returns what was drawn since the last call and resets the state to that of a fresh canvas. */
  take(): Call[];
}

/** `measure`: measures like the canvas that will draw the calls. Called once for each text in each font. */
export function callList(measure: Measure): CallList {
  const recorder = new Recorder(measure);
  return { context: recorder as Context2D, take: () => recorder.take() };
}

class Recorder {
  readonly #measure: Measure;
  readonly #boxes = new Map<string, TextBox>();
  #calls: Call[] = [];
  #state: State = { ...untouched };
  #kept: State[] = [];
  #path: number[] = [];
  #pathMatrix: Matrix = identity;

  constructor(measure: Measure) {
    this.#measure = measure;
  }

  take(): Call[] {
    const calls = this.#calls;
    this.#calls = [];
    this.#state = { ...untouched };
    this.#kept = [];
    this.#path = [];
    return calls;
  }

  get fillStyle(): string {
    return this.#state.fillStyle;
  }
  set fillStyle(colour: string) {
    this.#state.fillStyle = colour;
  }
  get strokeStyle(): string {
    return this.#state.strokeStyle;
  }
  set strokeStyle(colour: string) {
    this.#state.strokeStyle = colour;
  }
  get lineCap(): 'butt' | 'round' {
    return this.#state.lineCap;
  }
  set lineCap(cap: 'butt' | 'round') {
    this.#state.lineCap = cap;
  }
  get lineJoin(): 'miter' | 'round' {
    return this.#state.lineJoin;
  }
  set lineJoin(join: 'miter' | 'round') {
    this.#state.lineJoin = join;
  }
  get textAlign(): 'left' | 'center' | 'right' {
    return this.#state.textAlign;
  }
  set textAlign(align: 'left' | 'center' | 'right') {
    this.#state.textAlign = align;
  }
  get textBaseline(): 'alphabetic' {
    return this.#state.textBaseline;
  }
  set textBaseline(baseline: 'alphabetic') {
    this.#state.textBaseline = baseline;
  }
  get font(): string {
    return this.#state.font;
  }
  set font(font: string) {
    this.#state.font = font;
  }
  get lineWidth(): number {
    return this.#state.lineWidth;
  }
  set lineWidth(width: number) {
    // A canvas ignores invalid values.
    if (width > 0) this.#state.lineWidth = width;
  }
  get globalAlpha(): number {
    return this.#state.globalAlpha;
  }
  set globalAlpha(alpha: number) {
    if (alpha >= 0 && alpha <= 1) this.#state.globalAlpha = alpha;
  }

  save(): void {
    this.#kept.push({ ...this.#state });
  }
  restore(): void {
    this.#state = this.#kept.pop() ?? this.#state;
  }
  transform(a: number, b: number, c: number, d: number, e: number, f: number): void {
    const [m0, m1, m2, m3, m4, m5] = this.#state.matrix;
    this.#state.matrix = [
      ...([a * m0 + b * m2, a * m1 + b * m3, c * m0 + d * m2, c * m1 + d * m3] as const),
      ...([e * m0 + f * m2 + m4, e * m1 + f * m3 + m5] as const),
    ];
  }
  setTransform(a: number, b: number, c: number, d: number, e: number, f: number): void {
    this.#state.matrix = [a, b, c, d, e, f];
  }

  beginPath(): void {
    this.#path = [];
    this.#pathMatrix = this.#state.matrix;
  }
  moveTo(x: number, y: number): void {
    this.#path.push(0, x, y);
  }
  lineTo(x: number, y: number): void {
    this.#path.push(1, x, y);
  }
  closePath(): void {
    this.#path.push(2);
  }
  fill(rule: 'nonzero' | 'evenodd' = 'nonzero'): void {
    this.#state.fillRule = rule;
    this.#note(`fill ${rule}`, this.#ownPath());
  }
  stroke(): void {
    this.#note('stroke', this.#ownPath());
  }
  fillRect(x: number, y: number, width: number, height: number): void {
    this.#note('rect', [x, y, width, height]);
  }
  clearRect(x: number, y: number, width: number, height: number): void {
    this.#note('clear', [x, y, width, height]);
  }
  fillText(text: string, x: number, y: number): void {
    this.#note('text', [x, y], text);
  }
  strokeText(text: string, x: number, y: number): void {
    this.#note('outlined text', [x, y], text);
  }
  measureText(text: string): { readonly width: number } {
    return this.#boxOf(text);
  }

  #ownPath(): readonly number[] {
    if (this.#pathMatrix !== this.#state.matrix)
      throw new Bug('a path is drawn under the transform that it was begun in');
    return this.#path;
  }

  #boxOf(text: string): TextBox {
    const { font, textAlign } = this.#state;
    const key = `${font}\n${textAlign}\n${text}`;
    const box = this.#boxes.get(key) ?? this.#measure(font, text, textAlign);
    // Of a film of hours, so that memory does not grow with it.
    if (this.#boxes.size > 10_000) this.#boxes.clear();
    this.#boxes.set(key, box);
    return box;
  }

  #note(kind: Kind, numbers: readonly number[], text = ''): void {
    let sum = 0;
    for (const number of numbers) sum = sum * 0.618 + number;
    const state = { ...this.#state };
    const isText = kind === 'text' || kind === 'outlined text';
    const box = boxOf(kind, state, numbers, isText ? this.#boxOf(text) : undefined);
    if (box.left < box.right && box.top < box.bottom) this.#calls.push({ kind, state, numbers, text, sum, box });
  }
}

const identity: Matrix = [1, 0, 0, 1, 0, 0];

/** The state of a fresh canvas. */
const untouched: State = {
  fillStyle: '#000000',
  strokeStyle: '#000000',
  lineCap: 'butt',
  lineJoin: 'miter',
  textAlign: 'left',
  textBaseline: 'alphabetic',
  lineWidth: 1,
  globalAlpha: 1,
  font: '10px sans-serif',
  fillRule: 'nonzero',
  matrix: identity,
};

/** Extra pixels beyond the last one touched, for rounding. */
const air = 2;
/** Of an em, beyond what is measured. */
const textAir = 0.2;

function boxOf(kind: Kind, state: State, numbers: readonly number[], text: TextBox | undefined): Box {
  const [a, b, c, d, e, f] = state.matrix;
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  const see = (x: number, y: number): void => {
    const [atX, atY] = [a * x + c * y + e, b * x + d * y + f];
    if (atX < left) left = atX;
    if (atX > right) right = atX;
    if (atY < top) top = atY;
    if (atY > bottom) bottom = atY;
  };
  const seeAll = (x0: number, y0: number, x1: number, y1: number): void => {
    see(x0, y0);
    see(x1, y0);
    see(x0, y1);
    see(x1, y1);
  };
  if (text !== undefined) {
    const [x, y] = numbers as [number, number];
    const px = Number(/([\d.]+)px/.exec(state.font)?.[1] ?? 10);
    const pad = px * textAir;
    seeAll(x - text.left - pad, y - text.ascent - pad, x + text.right + pad, y + text.descent + pad);
  } else if (kind === 'rect' || kind === 'clear') {
    const [x, y, width, height] = numbers as [number, number, number, number];
    seeAll(x, y, x + width, y + height);
  } else {
    for (let at = 0; at < numbers.length; at += numbers[at] === 2 ? 1 : 3) {
      if (numbers[at] !== 2) see(numbers[at + 1]!, numbers[at + 2]!);
    }
  }
  let pad = air;
  if (kind === 'stroke' || kind === 'outlined text') {
    const scale = Math.max(Math.hypot(a, b), Math.hypot(c, d));
    // A sharp corner reaches out ten half widths at most (the canvas's own miter limit).
    pad += (state.lineWidth / 2) * scale * (state.lineJoin === 'miter' ? 10 : Math.SQRT2);
  }
  return {
    ...{ left: Math.floor(left - pad), top: Math.floor(top - pad) },
    ...{ right: Math.ceil(right + pad), bottom: Math.ceil(bottom + pad) },
  };
}
