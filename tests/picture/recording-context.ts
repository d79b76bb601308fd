/**
 * A context that draws nothing and writes down what it was asked to draw, for tests that read geometry as text.
 * Every letter is 0.6 of the font size wide.
 */
import type { Context2D } from '../../src/picture/context.ts';

export interface Recording {
  readonly context: Context2D;
  /** The calls since the last look, one a line, numbers to one decimal, with the colour of each fill and stroke. */
  take(): string[];
}

/** A fresh recorder. */
export function recorder(): Recording {
  const calls: string[] = [];
  const note = (name: string, ...numbers: readonly number[]) => {
    calls.push([name, ...numbers.map((each) => String(Math.round(each * 10) / 10 + 0))].join(' '));
  };
  const ink = (colour: unknown) => `${String(colour)} ${Math.round(context.globalAlpha * 100)}%`;
  const context: Context2D = {
    fillStyle: '',
    strokeStyle: '',
    lineCap: 'butt',
    lineJoin: 'miter',
    textAlign: 'left',
    textBaseline: 'alphabetic',
    lineWidth: 1,
    globalAlpha: 1,
    font: '',
    save: () => note('save'),
    restore: () => note('restore'),
    transform: (a: number, b: number, c: number, d: number, e: number, f: number) =>
      note('transform', a, b, c, d, e, f),
    setTransform: () => note('reset'),
    beginPath: () => note('begin'),
    moveTo: (x: number, y: number) => note('move', x, y),
    lineTo: (x: number, y: number) => note('line', x, y),
    closePath: () => note('close'),
    fill: () => note(`fill ${ink(context.fillStyle)}`),
    stroke: () => note(`stroke ${ink(context.strokeStyle)}`, context.lineWidth),
    fillRect: (...box: [number, number, number, number]) => note(`rect ${ink(context.fillStyle)}`, ...box),
    clearRect: (...box: [number, number, number, number]) => note('clear', ...box),
    fillText: (text: string, x: number, y: number) => note(`text '${text}' ${ink(context.fillStyle)}`, x, y),
    strokeText: (text: string, x: number, y: number) => note(`case '${text}' ${ink(context.strokeStyle)}`, x, y),
    measureText: (text: string) => ({ width: text.length * 0.6 * Number(/([\d.]+)px/.exec(context.font)?.[1] ?? 10) }),
  };
  return { context, take: () => calls.splice(0) };
}

/** The box that the calls' points lie in: `[left, top, right, bottom]`, strokes counted by their middle. */
export function boundsOf(calls: readonly string[]): [number, number, number, number] {
  const points = calls.flatMap((call) => {
    const [, x, y] = /^(?:move|line) (\S+) (\S+)$/.exec(call) ?? [];
    return x === undefined ? [] : [[Number(x), Number(y)] as const];
  });
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}
