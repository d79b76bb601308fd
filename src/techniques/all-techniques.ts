/**
 * All techniques that have a recogniser, and the order of names from the most special to the most general: a skyscraper is
 * a turbot fish is an X-chain is an AIC. Where neither of two names covers the other, the one that says more about the
 * shape comes first.
 */
import { alignedPairExclusion } from './aligned-pairs.ts';
import { alsChain, alsXYWing, alsXZ } from './almost-locked.ts';
import { alternatingChain, continuousLoop, discontinuousLoop, groupedAlternatingChain } from './alternating-chains.ts';
import { remotePair, xyChain } from './bivalue-chains.ts';
import { multiColouring, simpleColouring } from './colouring.ts';
import { deathBlossom } from './death-blossom.ts';
import { fishTechniques } from './fish.ts';
import { forcingChain, forcingNet } from './forcing.ts';
import { bugPlusAny, bugPlusOne } from './graves.ts';
import { krakenFish } from './kraken.ts';
import { boxLineReduction, claiming, lockedCandidates, pointingPair, pointingTriple } from './locked.ts';
import { medusa } from './medusa.ts';
import { emptyRectangle, groupedXChain, skyscraper, turbotFish, twoStringKite, xChain } from './one-digit.ts';
import { fullHouse, hiddenSingle, nakedSingle } from './singles.ts';
import { hiddenSubsets, lockedSubsets, nakedSubsets } from './subsets.ts';
import { sueDeCoq } from './sue-de-coq.ts';
import type { Technique } from './technique.ts';
import { hWing, lWing, mWing, sWing, wWing } from './three-link-wings.ts';
import { uniquePatterns } from './unique-patterns.ts';
import { uniqueRectangles } from './unique-rectangles.ts';
import { wxyzWing, xyWing, xyzWing } from './wings.ts';

const fishSizes = ['X-wing', 'swordfish', 'jellyfish'];
const fishNamed = (word: string) => fishSizes.map((size) => `${word} ${size}`);

/** Every name of an argument in its canonical spelling, the most special first. */
export const namesBySpeciality: readonly string[] = [
  'full house',
  'naked single',
  'hidden single',
  'pointing pair',
  'pointing triple',
  'claiming',
  'box-line reduction',
  'locked candidates',
  'locked pair',
  'locked triple',
  'naked pair',
  'naked triple',
  'naked quad',
  'hidden pair',
  'hidden triple',
  'hidden quad',
  ...fishSizes,
  'skyscraper',
  'two-string kite',
  'empty rectangle',
  'turbot fish',
  'remote pair',
  'XY-wing',
  'XYZ-wing',
  'WXYZ-wing',
  'W-wing',
  'M-wing',
  'S-wing',
  'L-wing',
  'H-wing',
  ...fishNamed('sashimi'),
  ...fishNamed('finned'),
  'simple colouring',
  'multi-colouring',
  'X-chain',
  'grouped X-chain',
  ...fishNamed('franken'),
  ...fishNamed('finned franken'),
  ...fishNamed('mutant'),
  ...fishNamed('finned mutant'),
  'BUG+1',
  'unique rectangle type 1',
  'unique rectangle type 2',
  'unique rectangle type 3',
  'unique rectangle type 4',
  'unique rectangle type 5',
  'unique rectangle type 6',
  'hidden rectangle',
  'unique rectangle',
  'avoidable rectangle',
  'extended rectangle',
  'unique loop',
  'BUG+n',
  'XY-chain',
  'three-dimensional Medusa',
  'Sue de Coq',
  'ALS-XZ',
  'ALS-XY-wing',
  'ALS chain',
  'death blossom',
  'aligned pair exclusion',
  'continuous loop',
  'discontinuous loop',
  'AIC',
  'grouped AIC',
  'kraken fish',
  'forcing chain',
  'forcing net',
];

const recognised: readonly Technique[] = [
  fullHouse,
  nakedSingle,
  hiddenSingle,
  pointingPair,
  pointingTriple,
  claiming,
  boxLineReduction,
  lockedCandidates,
  ...lockedSubsets,
  ...nakedSubsets,
  ...hiddenSubsets,
  ...fishTechniques,
  skyscraper,
  twoStringKite,
  emptyRectangle,
  turbotFish,
  simpleColouring,
  multiColouring,
  xChain,
  groupedXChain,
  bugPlusOne,
  ...uniqueRectangles,
  ...uniquePatterns,
  bugPlusAny,
  medusa,
  krakenFish,
  forcingChain,
  forcingNet,
  remotePair,
  xyWing,
  xyzWing,
  wxyzWing,
  wWing,
  mWing,
  sWing,
  lWing,
  hWing,
  xyChain,
  sueDeCoq,
  alsXZ,
  alsXYWing,
  alsChain,
  deathBlossom,
  alignedPairExclusion,
  continuousLoop,
  discontinuousLoop,
  alternatingChain,
  groupedAlternatingChain,
];

const byName = new Map(recognised.map((technique) => [technique.name, technique]));

/** The techniques that can be recognised, the most special first. */
export const allTechniques: readonly Technique[] = namesBySpeciality.flatMap((name) => byName.get(name) ?? []);

/** The technique of this name (in its canonical spelling), where it can be recognised. */
export function techniqueNamed(name: string): Technique | undefined {
  return byName.get(name);
}
