/**
 * The files of one piece: itself, or fill and matte.
 */
import { extname } from 'node:path';
import { fillPainter, mattePainter } from '../output/painters/matte.ts';
import type { Painter } from '../output/painters/painter.ts';

export interface FilmFile {
  readonly name: string;
  readonly painter: Painter;
  /** Which tracks go with it: of a film as it is all, of a fill its sound without footage, of a matte none. */
  readonly kind: 'film' | 'fill' | 'matte';
}

export function filesOf(painter: Painter, name: string, matte: boolean): readonly FilmFile[] {
  if (!matte) return [{ name, painter, kind: 'film' }];
  const ending = extname(name);
  const base = name.slice(0, name.length - ending.length);
  return [
    { name: `${base}-fill${ending}`, painter: fillPainter(painter), kind: 'fill' },
    { name: `${base}-matte${ending}`, painter: mattePainter(painter), kind: 'matte' },
  ];
}
