/**
 * What `check` finds in a scene: plain data for the report, the film and the tests.
 */
import type { Candidate, Candidates } from '../grid/candidates.ts';
import type { ChainNode, Conclusion, LinkKind } from '../grid/terms.ts';
import type { StepCode } from '../scene/codes.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import type { Scene, Step } from '../scene/scene.ts';
import type { ProposedStep } from '../scene/step-text.ts';
import type { LinkRole } from './chain-roles.ts';

/** Worst first; a step's verdict is the worst of its conclusions' verdicts. */
export const verdicts = ['false', 'unproved', 'proved', 'redundant', 'none'] as const;
export type Verdict = (typeof verdicts)[number];

export interface CheckedScene {
  readonly scene: Scene;
  /** 2: two or more. */
  readonly solutions: 0 | 1 | 2;
  readonly takenAsRead: readonly Conclusion[];
  readonly steps: readonly CheckedStep[];
  readonly sound: boolean;
  readonly summary: Summary;
  /**
   * Faults that only the position reveals, such as a sight line from a cell that does not have the digit. A scene with
   * any is unusable.
   */
  readonly errors: readonly Diagnostic[];
  readonly warnings: readonly Diagnostic[];
}

export interface Summary {
  readonly steps: number;
  /** The steps to fix: unsound on their own, not merely because they rest on others. */
  readonly toFix: readonly string[];
  /** How many unsound steps only rest on those. */
  readonly restOnThem: number;
}

export interface CheckedStep {
  readonly step: Step;
  readonly verdict: Verdict;
  readonly sound: boolean;
  readonly assumesOneSolution: boolean;
  /** It rests on an earlier step that assumes one solution. */
  readonly inheritsOneSolution: boolean;
  readonly name: CheckedName | undefined;
  readonly argument: Argument;
  readonly links: readonly CheckedLink[];
  /** In the order of the step: `so`, `only`, `pencil`, `cascade`. */
  readonly conclusions: readonly CheckedConclusion[];
  readonly unneeded: readonly string[];
  readonly missed: readonly Candidate[];
  /** Candidates listed by `pencil` or `only` that are already impossible. */
  readonly stale: readonly Candidate[];
  /**
   * Why the step is not sound, if no conclusion says it: a refused deadly pattern, two weak links in a row, a false
   * step whose argument holds.
   */
  readonly faults: readonly StepFault[];
  /** One sentence for the step; empty if it is sound. */
  readonly message: string;
  /** What an author may like to know about a sound step: sentences. */
  readonly advice: readonly string[];
  /** What would fix it, if that was searched for and found. */
  readonly fixes: readonly FixFor[];
  /** The possible candidates, and the digits on the board, when the step begins. */
  readonly possibleBefore: Candidates;
  readonly placedBefore: Candidates;
}

/** What is wrong with a step as a whole. */
export interface StepFault {
  readonly code: StepCode;
  readonly message: string;
}

export interface CheckedName {
  /** As the scene writes it. */
  readonly given: string;
  readonly judged: 'fits' | 'misnamed' | 'not judged';
  /** From the most specific to the most general. */
  readonly fits: readonly string[];
  /** If it is misnamed, or fits only loosely: what is wrong with it. */
  readonly remark: string | undefined;
}

export interface Argument {
  /** Found by search rather than given. */
  readonly found: boolean;
  /** If it was found: how many others of its name, or how many other singles, would also have done. */
  readonly others: number;
  readonly sets: readonly ArgumentSet[];
  /** Of its chains, in order. */
  readonly links: readonly CheckedLink[];
}

export interface ArgumentSet {
  /** In scene notation: `7c5`, `r1c3`, `step towers`, `deadly 12r34c58`. */
  readonly name: string;
  readonly members: Candidates;
}

export interface CheckedLink {
  /** From 1. */
  readonly chain: number;
  readonly from: string;
  readonly to: string;
  readonly kind: LinkKind;
  /** What the link must be, by its turn in the chain. */
  readonly role: LinkRole;
  readonly fromNode: ChainNode;
  readonly toNode: ChainNode;
  readonly holds: boolean;
  readonly brokenBy: readonly Candidate[];
  /** The possible candidates of each end, for drawing. */
  readonly fromCandidates: readonly Candidate[];
  readonly toCandidates: readonly Candidate[];
}

export interface CheckedConclusion {
  /** Where it is in the step; `item` is the index in `only`, `pencil` or `cascade` (0 for `so`). */
  readonly origin: 'so' | 'only' | 'pencil' | 'cascade';
  readonly item: number;
  readonly conclusion: Conclusion;
  readonly text: string;
  readonly verdict: Exclude<Verdict, 'none'>;
  readonly restsOn: readonly string[];
  readonly cases: number;
  readonly counterexample: readonly Candidate[] | undefined;
  /** Empty if it is proved. */
  readonly message: string;
  /** Of conclusions of `cascade`, `pencil` and `only`. */
  readonly argument: Argument | undefined;
  /** Of a conclusion of `cascade` whose item gives a name. */
  readonly name: CheckedName | undefined;
}

/** What would fix a conclusion, or a link. */
export type Fix =
  | {
      readonly kind: 'remove first';
      readonly candidates: readonly Candidate[];
      /** The simplest named arguments that remove them before the step, in order; empty if none was found. */
      readonly steps: readonly ProposedStep[];
      /** If the argument then holds but its name no longer fits: the names that do. */
      readonly names: readonly string[] | undefined;
    }
  | { readonly kind: 'name further sets'; readonly names: readonly string[] }
  /**
   * If nothing was named: an argument that proves the conclusion, either before the step or only at that place within
   * it, once what the step concludes up to there is known.
   */
  | { readonly kind: 'prove it apart'; readonly step: ProposedStep; readonly where: 'before' | 'within' }
  /** Another argument for what the step concludes, in place of its own: where nothing else fixes it. */
  | { readonly kind: 'argue otherwise'; readonly step: ProposedStep }
  /** In a cascade: the conclusion comes too early; it follows once a later one (in notation) is known. */
  | { readonly kind: 'move behind'; readonly after: string };

/** The steps of a fix that can be inserted before the step. */
export function stepsBefore(fix: Fix): readonly ProposedStep[] {
  if (fix.kind === 'remove first') return fix.steps;
  return fix.kind === 'prove it apart' && fix.where === 'before' ? [fix.step] : [];
}

/** A fix, and the conclusions of the claim that it fixes, in notation. */
export interface FixFor {
  readonly fix: Fix;
  readonly conclusions: readonly string[];
}
