/**
 * The files of one piece: the film, or fill and matte.
 */
import { extname } from 'node:path';
import { fillPainter, mattePainter } from '../output/painters/matte.ts';
import type { Painter } from '../output/painters/painter.ts';

export interface FilmFile {
  readonly name: string;
  readonly painter: Painter;
  /** Which tracks go with it: all for a film, only sound for a fill, none for a matte. */
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
