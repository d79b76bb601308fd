/**
 * What stands on a take's board at a frame.
 */
import type { Colour, Take } from './take.ts';

export interface CellState {
  readonly digit: number;
  readonly isGiven: boolean;
  /** 0 to 1: how far the digit has come up. */
  readonly strength: number;
  /** Of a digit that is fading away. */
  readonly leaving: { readonly digit: number; readonly strength: number } | undefined;
  readonly small: readonly number[];
  readonly tint: Colour | undefined;
}

export interface BoardState {
  readonly cells: readonly CellState[];
  readonly selected: number | undefined;
  /** The same for frames that look the same. */
  readonly key: string;
}

export function boardStateAt(take: Take, frame: number): BoardState {
  const { fadeFrames } = take.look;
  const part = (since: number) => (fadeFrames === 0 ? 1 : Math.min(1, (frame - since + 1) / (fadeFrames + 1)));
  const cells = take.givens.map((digit) => ({
    digit,
    isGiven: digit !== 0,
    strength: 1,
    leaving: undefined as CellState['leaving'],
    small: [] as number[],
    tint: undefined as Colour | undefined,
  }));
  let selected: number | undefined;
  for (const deed of take.deeds) {
    if (deed.frame > frame) break;
    const cell = cells[deed.cell]!;
    switch (deed.kind) {
      case 'select':
        selected = deed.cell;
        break;
      case 'write':
      case 'erase': {
        const strength = part(deed.frame);
        cell.leaving = cell.digit !== 0 && strength < 1 ? { digit: cell.digit, strength: 1 - strength } : undefined;
        cell.digit = deed.kind === 'write' ? deed.digit : 0;
        cell.strength = strength;
        if (deed.kind === 'write') cell.small = [];
        break;
      }
      case 'pencil':
        cell.small = [...cell.small, deed.digit].sort((a, b) => a - b);
        break;
      case 'unpencil':
        cell.small = cell.small.filter((digit) => digit !== deed.digit);
        break;
      case 'tint':
        cell.tint = deed.colour;
        break;
      default:
        deed satisfies never;
    }
  }
  return { cells, selected, key: JSON.stringify([selected, cells]) };
}
