/**
 * What a step's words claim in formal notation: false, which is a fault of the step, or not proved, which is a warning.
 */
import { overlaps } from '../grid/candidates.ts';
import type { ChainLink, ChainNode, Conclusion } from '../grid/terms.ts';
import { isRedundant, type OneOf, type Position } from '../proof/kernel.ts';
import { candidatesOf, judgeStrong, judgeWeak } from '../proof/links.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import type { Step } from '../scene/scene.ts';
import { isContradicted, type Truth } from './truth.ts';
import type { StepFault } from './verdict.ts';
import { notationIn, type WrittenText } from './written-notation.ts';

type Judged = 'holds' | 'false' | 'not proved';

export interface WrittenJudgement {
  readonly faults: readonly StepFault[];
  readonly warnings: readonly Diagnostic[];
}

/** `before` and `after`: the positions around the step; `sets`: those of its argument, which a link may rest on. */
export function judgeWritten(
  step: Step,
  { before, after, sets }: { readonly before: Position; readonly after: Position; readonly sets: readonly OneOf[] },
  truth: Truth,
): WrittenJudgement {
  const faults: StepFault[] = [];
  const warnings: Diagnostic[] = [];
  for (const written of notationIn(before.grid, step)) {
    const judged = worst([
      ...written.conclusions.map((each) => judgeConclusion(after, each, truth)),
      ...linksOf(written).map((link) => judgeLink(before, link, sets, truth)),
    ]);
    const place = { title: 'its title says', say: 'its sentence says', note: 'a note says', label: 'a label says' }[
      written.where
    ];
    if (judged === 'false') faults.push({ code: 'says-false', message: `${place} ${written.text}, which is false` });
    if (judged === 'not proved') {
      const message = `${place} ${written.text}, which is not proved by then; prove it first, or say it otherwise`;
      warnings.push({ code: 'says-unproved', severity: 'warning', span: step.say?.span ?? step.idSpan, message });
    }
  }
  return { faults, warnings };
}

function worst(all: readonly Judged[]): Judged {
  return all.includes('false') ? 'false' : all.includes('not proved') ? 'not proved' : 'holds';
}

function judgeConclusion(position: Position, conclusion: Conclusion, truth: Truth): Judged {
  if (isRedundant(position, conclusion)) return 'holds';
  return isContradicted(truth, conclusion) ? 'false' : 'not proved';
}

interface WrittenLink {
  readonly kind: ChainLink['kind'];
  readonly ends: readonly [ChainNode, ChainNode];
}

function linksOf({ chain }: WrittenText): readonly WrittenLink[] {
  if (chain === undefined) return [];
  return chain.links.flatMap(({ kind }, index): WrittenLink[] => {
    const [from, to] = [chain.nodes[index], chain.nodes[(index + 1) % chain.nodes.length]];
    return from === undefined || to === undefined ? [] : [{ kind, ends: [from, to] }];
  });
}

function judgeLink(
  position: Position,
  { kind, ends: [a, b] }: WrittenLink,
  sets: readonly OneOf[],
  truth: Truth,
): Judged {
  const holds = kind === 'weak' ? judgeWeak(position, a, b).holds : judgeStrong(position, a, b, sets).holds;
  if (holds) return 'holds';
  return isLinkContradicted(position, { kind, ends: [a, b] }, truth) ? 'false' : 'not proved';
}

/** Whether a solution has both ends true (weak) or both false (strong); told of nodes of one digit only. */
function isLinkContradicted({ grid }: Position, { kind, ends }: WrittenLink, { solutions }: Truth): boolean {
  if (ends.some(({ digits }) => digits.length !== 1)) return false;
  const [a, b] = ends.map((node) => candidatesOf(grid, node)) as [OneOf['members'], OneOf['members']];
  return solutions.some((solution) =>
    kind === 'weak' ? overlaps(solution, a) && overlaps(solution, b) : !overlaps(solution, a) && !overlaps(solution, b),
  );
}
