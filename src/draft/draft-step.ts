/**
 * A step of a draft, and the draft under construction.
 */

import type { Cell } from '../grid/grid.ts';
import type { ArgumentName } from '../techniques/all-techniques.ts';
import type { Wording } from './wording.ts';

/** A step of a scene, its values in scene notation. */
export interface DraftStep {
  readonly id: string;
  readonly chapter?: string | undefined;
  readonly title: string;
  readonly say: string;
  readonly because?: ArgumentName | undefined;
  readonly called?: string | undefined;
  readonly from?: string | undefined;
  readonly chain?: string | undefined;
  readonly deadly?: string | undefined;
  readonly so?: string | undefined;
  readonly only?: readonly string[] | undefined;
  readonly pencil?: string | undefined;
  readonly cascade?: string | undefined;
  /** A callout next to the board. */
  readonly note?: string | undefined;
  /** When it begins, if that is known. */
  readonly at?: string | undefined;
  /** A comment before it, without `#`. */
  readonly remark?: string | undefined;
  /** The steps of the plan that this step presents: numbers from 0. */
  readonly covers: readonly number[];
}

/** The draft up to now. */
export interface DraftSoFar {
  readonly wording: Wording;
  readonly steps: DraftStep[];
  readonly ids: Set<string>;
  /** Cells whose list was written. */
  readonly listed: Set<Cell>;
  /** Places that were said, as printed. */
  readonly placesSaid: Set<string>;
}

/** Turns `XY-chain` into `xy-chain`. */
export function idOf(name: string): string {
  return name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
}

/** Appends the step, making its id unique. */
export function add(draft: DraftSoFar, id: string, step: Omit<DraftStep, 'id'>): void {
  let own = id;
  for (let number = 2; draft.ids.has(own); number++) own = `${id}-${number}`;
  draft.ids.add(own);
  draft.steps.push({ id: own, ...step });
}
