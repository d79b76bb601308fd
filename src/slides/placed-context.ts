/**
 * A canvas within a canvas: what is drawn on it appears scaled at a place on the one below. Nothing is ever cleared,
 * since the one below is a page.
 */
import type { Context2D } from '../picture/context.ts';

/** Where its origin is, and the factor by which it is enlarged. */
export interface Placed {
  readonly left: number;
  readonly top: number;
  readonly scale: number;
}

/** Draws on `page` as if that place were a separate canvas. */
export function drawWithin(page: Context2D, { left, top, scale }: Placed, draw: (context: Context2D) => void): void {
  page.save();
  page.transform(scale, 0, 0, scale, left, top);
  const context = placedOn.get(page) ?? new PlacedContext(page);
  placedOn.set(page, context);
  draw(context);
  page.restore();
}

/** The same one each time, since text measurements are cached per context. */
const placedOn = new WeakMap<Context2D, Context2D>();

class PlacedContext implements Context2D {
  private readonly page: Context2D;

  constructor(page: Context2D) {
    this.page = page;
  }

  save(): void {
    this.page.save();
  }
  restore(): void {
    this.page.restore();
  }
  transform(a: number, b: number, c: number, d: number, e: number, f: number): void {
    this.page.transform(a, b, c, d, e, f);
  }
  /** The painter sets the identity once, before it draws: that is already where this canvas is. */
  setTransform(a: number, b: number, c: number, d: number, e: number, f: number): void {
    this.page.transform(a, b, c, d, e, f);
  }
  beginPath(): void {
    this.page.beginPath();
  }
  moveTo(x: number, y: number): void {
    this.page.moveTo(x, y);
  }
  lineTo(x: number, y: number): void {
    this.page.lineTo(x, y);
  }
  closePath(): void {
    this.page.closePath();
  }
  fill(rule: 'nonzero' | 'evenodd' = 'nonzero'): void {
    this.page.fill(rule);
  }
  stroke(): void {
    this.page.stroke();
  }
  fillRect(x: number, y: number, width: number, height: number): void {
    this.page.fillRect(x, y, width, height);
  }
  clearRect(): void {
    return;
  }
  fillText(text: string, x: number, y: number): void {
    this.page.fillText(text, x, y);
  }
  strokeText(text: string, x: number, y: number): void {
    this.page.strokeText(text, x, y);
  }
  measureText(text: string): { readonly width: number } {
    return this.page.measureText(text);
  }

  get fillStyle(): unknown {
    return this.page.fillStyle;
  }
  set fillStyle(colour: string) {
    this.page.fillStyle = colour;
  }
  get strokeStyle(): unknown {
    return this.page.strokeStyle;
  }
  set strokeStyle(colour: string) {
    this.page.strokeStyle = colour;
  }
  get lineCap(): unknown {
    return this.page.lineCap;
  }
  set lineCap(cap: 'butt' | 'round') {
    this.page.lineCap = cap;
  }
  get lineJoin(): unknown {
    return this.page.lineJoin;
  }
  set lineJoin(join: 'miter' | 'round') {
    this.page.lineJoin = join;
  }
  get textAlign(): unknown {
    return this.page.textAlign;
  }
  set textAlign(align: 'left' | 'center' | 'right') {
    this.page.textAlign = align;
  }
  get textBaseline(): unknown {
    return this.page.textBaseline;
  }
  set textBaseline(baseline: 'alphabetic') {
    this.page.textBaseline = baseline;
  }
  get lineWidth(): number {
    return this.page.lineWidth;
  }
  set lineWidth(width: number) {
    this.page.lineWidth = width;
  }
  get globalAlpha(): number {
    return this.page.globalAlpha;
  }
  set globalAlpha(alpha: number) {
    this.page.globalAlpha = alpha;
  }
  get font(): string {
    return this.page.font;
  }
  set font(font: string) {
    this.page.font = font;
  }
}
