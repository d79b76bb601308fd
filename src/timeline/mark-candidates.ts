/**
 * Which small digits a mark speaks of: what the picture draws larger, and what stands on the board as long as the mark does.
 */
import type { Candidate } from '../grid/candidates.ts';
import type { MarkShape } from './film.ts';

/** The candidates that the mark lies on, in no order; none for marks of cells, of houses and of words. */
export function candidatesOfMark(shape: MarkShape): readonly Candidate[] {
  switch (shape.kind) {
    case 'circle':
    case 'strike':
    case 'opens':
      return [shape.candidate];
    case 'reach':
      return [shape.from, shape.to];
    case 'link':
      return [...shape.from, ...shape.to];
    case 'ghost':
      return shape.candidates;
    case 'clash':
      return shape.between.flat();
    case 'label':
      return shape.candidate === undefined ? [] : [shape.candidate];
    case 'fill':
    case 'place':
    case 'ring':
    case 'outline':
    case 'note':
    case 'ask':
    case 'focus':
    case 'sight':
    case 'stamp':
      return [];
    default:
      return shape satisfies never;
  }
}
