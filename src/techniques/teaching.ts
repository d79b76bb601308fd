/**
 * What techniques cost an audience, and the order in which they are taught: both come from their records.
 */
import { type ArgumentName, allTechniques, type Technique } from './all-techniques.ts';

/** What a name costs: `cost` for an argument of up to `sets` sets, and `each` for every further set. */
export interface NameCost {
  readonly name: ArgumentName;
  readonly cost: number;
  readonly sets: number;
  readonly each: number;
}

/** A table of costs: the built-in one, or a user's. */
export interface TeachingCosts {
  /** For every argument that is not free. */
  readonly step: number;
  /** Names that cost nothing at all: what a viewer sees without being shown. */
  readonly free: readonly ArgumentName[];
  /** In the order in which they are taught. */
  readonly names: readonly NameCost[];
}

/** A technique with its line in the built-in table. */
export interface TaughtTechnique {
  readonly technique: Technique;
  readonly teaching: Exclude<Technique['teaching'], string>;
}

/** From what is taught first to what is taught last; those without a line in the table are left out. */
export const inTeachingOrder: readonly TaughtTechnique[] = allTechniques
  .flatMap((technique): TaughtTechnique[] =>
    technique.teaching === 'under other names' ? [] : [{ technique, teaching: technique.teaching }],
  )
  .sort((a, b) => a.teaching.place - b.teaching.place);

/** The built-in table. */
export const ownCosts: TeachingCosts = {
  step: 1,
  free: inTeachingOrder.filter(({ teaching }) => teaching.cost === 'free').map(({ technique }) => technique.name),
  names: inTeachingOrder.flatMap(({ technique: { name }, teaching }): NameCost[] => {
    if (teaching.cost === 'free') return [];
    const { cost, sets = 1, each = 0 } = teaching;
    return [{ name, cost, sets, each }];
  }),
};
