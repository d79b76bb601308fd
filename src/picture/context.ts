/**
 * The canvas calls that the picture uses, and no others: node-canvas's context and a browser's both satisfy this.
 * Curves are flattened before they are drawn, so that a board filmed at an angle needs no further calls.
 */
export interface Context2D {
  save(): void;
  restore(): void;
  /** Multiplies the current transform by `[a c e; b d f]`. */
  transform(a: number, b: number, c: number, d: number, e: number, f: number): void;
  setTransform(a: number, b: number, c: number, d: number, e: number, f: number): void;
  beginPath(): void;
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
  closePath(): void;
  fill(rule?: 'nonzero' | 'evenodd'): void;
  stroke(): void;
  fillRect(x: number, y: number, width: number, height: number): void;
  clearRect(x: number, y: number, width: number, height: number): void;
  fillText(text: string, x: number, y: number): void;
  strokeText(text: string, x: number, y: number): void;
  measureText(text: string): { readonly width: number };
  // Both canvases read back more than they are given here, hence the two types.
  get fillStyle(): unknown;
  set fillStyle(colour: string);
  get strokeStyle(): unknown;
  set strokeStyle(colour: string);
  get lineCap(): unknown;
  set lineCap(cap: 'butt' | 'round');
  get lineJoin(): unknown;
  set lineJoin(join: 'miter' | 'round');
  get textAlign(): unknown;
  set textAlign(align: 'left' | 'center' | 'right');
  get textBaseline(): unknown;
  set textBaseline(baseline: 'alphabetic');
  lineWidth: number;
  globalAlpha: number;
  font: string;
}
