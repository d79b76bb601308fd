/**
 * All techniques, from the most specific to the most general: a skyscraper is a turbot fish is an X-chain is an AIC. If
 * neither of two names covers the other, the one that says more about the shape comes first. The names, their families,
 * their costs and the teaching order all follow from the records.
 */
import { Bug } from '../grid/bug.ts';
import { alignedPairExclusion } from './aligned-pairs.ts';
import { alsChain, alsXYWing, alsXZ } from './almost-locked.ts';
import { alternatingChain, continuousLoop, discontinuousLoop, groupedAlternatingChain } from './alternating-chains.ts';
import { remotePair, xyChain } from './bivalue-chains.ts';
import { multiColouring, simpleColouring } from './colouring.ts';
import { deathBlossom } from './death-blossom.ts';
import {
  basicFish,
  finnedFish,
  finnedFrankenFish,
  finnedMutantFish,
  frankenFish,
  mutantFish,
  sashimiFish,
} from './fish.ts';
import { forcingChain, forcingNet } from './forcing.ts';
import { bugPlusAny, bugPlusOne } from './graves.ts';
import { krakenFish } from './kraken.ts';
import { boxLineReduction, claiming, lockedCandidates, pointing, pointingPair, pointingTriple } from './locked.ts';
import { medusa } from './medusa.ts';
import { emptyRectangle, groupedXChain, skyscraper, turbotFish, twoStringKite, xChain } from './one-digit.ts';
import { fullHouse, hiddenSingle, nakedSingle } from './singles.ts';
import {
  hiddenPair,
  hiddenQuad,
  hiddenTriple,
  lockedPair,
  lockedTriple,
  nakedPair,
  nakedQuad,
  nakedTriple,
} from './subsets.ts';
import { sueDeCoq } from './sue-de-coq.ts';
import { type Family, families, type TechniqueRecord } from './technique.ts';
import { hWing, lWing, mWing, sWing, wWing } from './three-link-wings.ts';
import { avoidableRectangle, extendedRectangle, uniqueLoop } from './unique-patterns.ts';
import {
  hiddenRectangle,
  uniqueRectangle,
  uniqueRectangleType1,
  uniqueRectangleType2,
  uniqueRectangleType3,
  uniqueRectangleType4,
  uniqueRectangleType5,
  uniqueRectangleType6,
} from './unique-rectangles.ts';
import { vwxyzWing, wxyzWing, xyWing, xyzWing } from './wings.ts';

const records = [
  fullHouse,
  nakedSingle,
  hiddenSingle,
  pointingPair,
  pointingTriple,
  pointing,
  claiming,
  boxLineReduction,
  lockedCandidates,
  lockedPair,
  lockedTriple,
  nakedPair,
  nakedTriple,
  nakedQuad,
  hiddenPair,
  hiddenTriple,
  hiddenQuad,
  ...basicFish,
  skyscraper,
  twoStringKite,
  emptyRectangle,
  turbotFish,
  remotePair,
  xyWing,
  xyzWing,
  wxyzWing,
  vwxyzWing,
  wWing,
  mWing,
  sWing,
  lWing,
  hWing,
  ...sashimiFish,
  ...finnedFish,
  simpleColouring,
  multiColouring,
  xChain,
  groupedXChain,
  ...frankenFish,
  ...finnedFrankenFish,
  ...mutantFish,
  ...finnedMutantFish,
  bugPlusOne,
  uniqueRectangleType1,
  uniqueRectangleType2,
  uniqueRectangleType3,
  uniqueRectangleType4,
  uniqueRectangleType5,
  uniqueRectangleType6,
  hiddenRectangle,
  uniqueRectangle,
  avoidableRectangle,
  extendedRectangle,
  uniqueLoop,
  bugPlusAny,
  xyChain,
  medusa,
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
  krakenFish,
  forcingChain,
  forcingNet,
] as const;

/** The name of a technique in its canonical spelling. */
export type ArgumentName = (typeof records)[number]['name'];

/** A record that refers only to names of techniques: one that misspells a name does not compile here. */
export type Technique = TechniqueRecord<ArgumentName, ArgumentName>;

/** The most specific first. */
export const allTechniques: readonly Technique[] = records;

/** Every name in its canonical spelling, the most specific first. */
export const namesBySpeciality: readonly ArgumentName[] = allTechniques.map(({ name }) => name);

const byName = new Map(allTechniques.map((technique) => [technique.name, technique]));

export function techniqueNamed(name: ArgumentName): Technique {
  const technique = byName.get(name);
  if (technique === undefined) throw new Bug(`${name} has its technique`);
  return technique;
}

/** Whether the text is a name in its canonical spelling. */
export function isArgumentName(text: string): text is ArgumentName {
  return allTechniques.some(({ name }) => name === text);
}

/** The names of the family, the most specific first. */
export function namesInFamily(family: Family): readonly ArgumentName[] {
  return allTechniques.filter((technique) => technique.family === family).map(({ name }) => name);
}

/** Every name by family, as the language lists them. */
export const argumentNames: readonly ArgumentName[] = families.flatMap(namesInFamily);
