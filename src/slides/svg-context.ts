/**
 * A canvas that writes SVG (W3C, SVG 2, 9.3 and 11): paths and text, so that the picture is sharp at any size and its
 * words are text. Adjacent elements of one style share a group.
 */
import type { Context2D } from '../picture/context.ts';

/** `[a c e; b d f]`. */
type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];
const identity: Matrix = [1, 0, 0, 1, 0, 0];

interface State {
  readonly matrix: Matrix;
  readonly fillStyle: string;
  readonly strokeStyle: string;
  readonly lineWidth: number;
  readonly lineCap: 'butt' | 'round';
  readonly lineJoin: 'miter' | 'round';
  readonly globalAlpha: number;
  readonly font: string;
  readonly textAlign: 'left' | 'center' | 'right';
}

const initial: State = {
  matrix: identity,
  fillStyle: '#000000',
  strokeStyle: '#000000',
  lineWidth: 1,
  lineCap: 'butt',
  lineJoin: 'miter',
  globalAlpha: 1,
  font: '10px sans-serif',
  textAlign: 'left',
};

/** `measure` measures the width of a text in the font set on it. */
export class SvgContext implements Context2D {
  private state: State = initial;
  private readonly saved: State[] = [];
  private path = '';
  private hasPoint = false;
  private readonly parts: string[] = [];
  private style = '';
  private readonly measure: Pick<Context2D, 'font' | 'measureText'>;

  constructor(measure: Pick<Context2D, 'font' | 'measureText'>) {
    this.measure = measure;
  }

  /** What was drawn, as the content of an `<svg>` element. */
  content(): string {
    return `${this.parts.join('')}${this.style === '' ? '' : '</g>'}`;
  }

  save(): void {
    this.saved.push(this.state);
  }
  restore(): void {
    this.state = this.saved.pop() ?? this.state;
  }
  transform(a: number, b: number, c: number, d: number, e: number, f: number): void {
    this.set({ matrix: product(this.state.matrix, [a, b, c, d, e, f]) });
  }
  setTransform(a: number, b: number, c: number, d: number, e: number, f: number): void {
    this.set({ matrix: [a, b, c, d, e, f] });
  }

  beginPath(): void {
    this.path = '';
    this.hasPoint = false;
  }
  moveTo(x: number, y: number): void {
    this.path += `M${this.point(x, y)}`;
    this.hasPoint = true;
  }
  lineTo(x: number, y: number): void {
    if (!this.hasPoint) {
      this.moveTo(x, y);
      return;
    }
    // Further pairs after a moveto or a lineto are lines.
    this.path += `${this.path.endsWith('Z') ? 'L' : ' '}${this.point(x, y)}`;
  }
  closePath(): void {
    if (this.hasPoint) this.path += 'Z';
  }
  fill(rule: 'nonzero' | 'evenodd' = 'nonzero'): void {
    if (this.path === '') return;
    this.put(
      `fill="${this.state.fillStyle}"${rule === 'evenodd' ? ' fill-rule="evenodd"' : ''}${this.opacity('fill')}`,
    );
    this.parts.push(`<path d="${this.path}"/>`);
  }
  stroke(): void {
    if (this.path === '') return;
    const { strokeStyle, lineWidth, lineCap, lineJoin, matrix } = this.state;
    const width = rounded(lineWidth * scaleOf(matrix));
    const ends = `${lineCap === 'round' ? ' stroke-linecap="round"' : ''}${lineJoin === 'round' ? ' stroke-linejoin="round"' : ''}`;
    this.put(`fill="none" stroke="${strokeStyle}" stroke-width="${width}"${ends}${this.opacity('stroke')}`);
    this.parts.push(`<path d="${this.path}"/>`);
  }
  fillRect(x: number, y: number, width: number, height: number): void {
    const corners = [this.point(x, y), this.point(x + width, y), this.point(x + width, y + height)];
    this.put(`fill="${this.state.fillStyle}"${this.opacity('fill')}`);
    this.parts.push(`<path d="M${corners.join(' ')} ${this.point(x, y + height)}Z"/>`);
  }
  /** An SVG page is initially empty. */
  clearRect(): void {
    return;
  }
  fillText(text: string, x: number, y: number): void {
    this.put(`fill="${this.state.fillStyle}"${this.fontAttributes()}${this.opacity('fill')}`);
    this.parts.push(this.textElement(text, x, y));
  }
  strokeText(text: string, x: number, y: number): void {
    const { strokeStyle, lineWidth, lineJoin } = this.state;
    const join = lineJoin === 'round' ? ' stroke-linejoin="round"' : '';
    this.put(
      `fill="none" stroke="${strokeStyle}" stroke-width="${rounded(lineWidth)}"${join}${this.fontAttributes()}${this.opacity('stroke')}`,
    );
    // Read out once: the text written over it is enough.
    this.parts.push(this.textElement(text, x, y).replace('<text', '<text aria-hidden="true"'));
  }
  measureText(text: string): { readonly width: number } {
    this.measure.font = this.state.font;
    return { width: this.measure.measureText(text).width };
  }

  get fillStyle(): unknown {
    return this.state.fillStyle;
  }
  set fillStyle(colour: string) {
    this.set({ fillStyle: colour });
  }
  get strokeStyle(): unknown {
    return this.state.strokeStyle;
  }
  set strokeStyle(colour: string) {
    this.set({ strokeStyle: colour });
  }
  get lineCap(): unknown {
    return this.state.lineCap;
  }
  set lineCap(cap: 'butt' | 'round') {
    this.set({ lineCap: cap });
  }
  get lineJoin(): unknown {
    return this.state.lineJoin;
  }
  set lineJoin(join: 'miter' | 'round') {
    this.set({ lineJoin: join });
  }
  get textAlign(): unknown {
    return this.state.textAlign;
  }
  set textAlign(align: 'left' | 'center' | 'right') {
    this.set({ textAlign: align });
  }
  get textBaseline(): unknown {
    return 'alphabetic';
  }
  set textBaseline(_: 'alphabetic') {
    // SVG's own baseline is the alphabetic one.
  }
  get lineWidth(): number {
    return this.state.lineWidth;
  }
  set lineWidth(width: number) {
    this.set({ lineWidth: width });
  }
  get globalAlpha(): number {
    return this.state.globalAlpha;
  }
  set globalAlpha(alpha: number) {
    this.set({ globalAlpha: alpha });
  }
  get font(): string {
    return this.state.font;
  }
  set font(font: string) {
    this.set({ font });
  }

  private set(change: Partial<State>): void {
    this.state = { ...this.state, ...change };
  }

  /** Opens a group of this style, unless the open one has it. */
  private put(style: string): void {
    if (style === this.style) return;
    this.parts.push(`${this.style === '' ? '' : '</g>'}<g ${style}>`);
    this.style = style;
  }

  private point(x: number, y: number): string {
    const [a, b, c, d, e, f] = this.state.matrix;
    return `${rounded(a * x + c * y + e)} ${rounded(b * x + d * y + f)}`;
  }

  /** For each element separately, as on a canvas; `opacity` would apply to the whole group. */
  private opacity(of: 'fill' | 'stroke'): string {
    const alpha = Math.round(this.state.globalAlpha * 1000) / 1000;
    return alpha === 1 ? '' : ` ${of}-opacity="${alpha}"`;
  }

  private fontAttributes(): string {
    const [, weight = '400', size = '10', family = ''] =
      /^(?:(\d+)\s+)?([\d.]+)px\s+'?([^']*)'?$/.exec(this.state.font) ?? [];
    const anchor = { left: '', center: ' text-anchor="middle"', right: ' text-anchor="end"' }[this.state.textAlign];
    return ` font-family="${escaped(family)}" font-weight="${weight}" font-size="${rounded(Number(size))}"${anchor}`;
  }

  private textElement(text: string, x: number, y: number): string {
    const [a, b, c, d, e, f] = this.state.matrix;
    const isMoved = a === 1 && b === 0 && c === 0 && d === 1;
    if (isMoved) return `<text x="${rounded(x + e)}" y="${rounded(y + f)}">${escaped(text)}</text>`;
    const matrix = [a, b, c, d].map((each) => Math.round(each * 1e5) / 1e5);
    return `<text x="${rounded(x)}" y="${rounded(y)}" transform="matrix(${[...matrix, rounded(e), rounded(f)].join(' ')})">${escaped(text)}</text>`;
  }
}

/** Text escaped for the content, or an attribute value, of an SVG or HTML element. */
export function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (character) => `&#${character.charCodeAt(0)};`);
}

/** Accurate to a twentieth of a pixel. */
function rounded(value: number): number {
  return Math.round(value * 10) / 10;
}

function product([a, b, c, d, e, f]: Matrix, [g, h, i, j, k, l]: Matrix): Matrix {
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}

function scaleOf([a, b, c, d]: Matrix): number {
  return Math.sqrt(Math.abs(a * d - b * c));
}
