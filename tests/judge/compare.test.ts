/** The judge sees every field: a report that is tampered with in one place no longer agrees. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Report } from '../../src/report/report.ts';
import { reportOn } from '../scenes/run.ts';
import { differencesIn } from './compare.ts';
import { inventTale, type Tale } from './invent.ts';

type Step = Report['steps'][number];
type Conclusion = Step['conclusions'][number];

/** Changes the first thing of its kind in the report; false where the report has none. */
type Tampering = (report: Report) => boolean;

const step =
  (is: (step: Step) => boolean, change: (step: Step) => unknown): Tampering =>
  (report) => {
    const found = report.steps.find(is);
    if (found !== undefined) change(found);
    return found !== undefined;
  };
const conclusion = (is: (conclusion: Conclusion) => boolean, change: (conclusion: Conclusion) => unknown): Tampering =>
  step(
    (each) => each.conclusions.some(is),
    (each) => change(each.conclusions.find(is)!),
  );

const tamperings: readonly (readonly [what: string, Tampering])[] = [
  [
    'something unproved is proved',
    conclusion(
      (each) => each.verdict === 'unproved',
      (each) => Object.assign(each, { verdict: 'proved' }),
    ),
  ],
  [
    'something false is unproved',
    conclusion(
      (each) => each.verdict === 'false',
      (each) => Object.assign(each, { verdict: 'unproved' }),
    ),
  ],
  [
    'something proved is unproved',
    conclusion(
      (each) => each.verdict === 'proved',
      (each) => Object.assign(each, { verdict: 'unproved' }),
    ),
  ],
  [
    'something redundant is proved',
    conclusion(
      (each) => each.verdict === 'spent',
      (each) => Object.assign(each, { verdict: 'proved' }),
    ),
  ],
  [
    'a reason is missing',
    conclusion(
      (each) => each.verdict === 'unproved',
      (each) => Object.assign(each, { message: '' }),
    ),
  ],
  [
    'a counterexample is empty',
    conclusion(
      (each) => (each.counterexample ?? []).length > 1,
      (each) => each.counterexample?.splice(0),
    ),
  ],
  [
    'a failure rests on what does not fail',
    conclusion(
      (each) => each.verdict === 'unproved',
      (each) => each.restsOn.push('s0'),
    ),
  ],
  [
    'a step is sound that is not',
    step(
      (each) => !each.sound,
      (each) => Object.assign(each, { sound: true }),
    ),
  ],
  [
    'a broken link holds',
    step(
      (each) => each.links.some((link) => !link.holds),
      (each) => Object.assign(each.links.find((link) => !link.holds)!, { holds: true }),
    ),
  ],
  [
    'a link is broken by less',
    step(
      (each) => each.links.some((link) => link.brokenBy.length > 0),
      (each) => each.links.find((link) => link.brokenBy.length > 0)!.brokenBy.pop(),
    ),
  ],
  [
    'a further removal is not told',
    step(
      (each) => each.missed.length > 0,
      (each) => each.missed.pop(),
    ),
  ],
  [
    'a needless set is not told',
    step(
      (each) => each.unneeded.length > 0,
      (each) => each.unneeded.pop(),
    ),
  ],
  [
    'a needed set is called needless',
    step(
      (each) => each.argument.sets.length > 1 && each.unneeded.length === 0 && each.verdict === 'proved',
      (each) => each.unneeded.push(each.argument.sets[0]!),
    ),
  ],
  [
    'a stale candidate is not told',
    step(
      (each) => each.stale.length > 0,
      (each) => each.stale.pop(),
    ),
  ],
  [
    'a set is missing',
    step(
      (each) => each.argument.sets.length > 1,
      (each) => each.argument.sets.pop(),
    ),
  ],
  [
    'an assumption is hidden',
    step(
      (each) => each.assumesOneSolution,
      (each) => Object.assign(each, { assumesOneSolution: false }),
    ),
  ],
  ['the scene is sound that is not', (report) => !report.sound && Object.assign(report, { sound: true }).sound],
  ['nothing is to mend', ({ summary }) => summary.toMend.splice(0).length > 0],
];

describe('a report that says otherwise is noticed where', () => {
  const told: { readonly tale: Tale; readonly made: ReturnType<typeof reportOn> }[] = [];
  beforeAll(() => {
    for (let seed = 100; seed < 112; seed++) {
      const tale = inventTale(seed, 10);
      told.push({ tale, made: reportOn('invented.yaml', tale.text) });
    }
  });

  it.each(tamperings)('%s', (_, tamper) => {
    const tampered = told.flatMap(({ tale, made }) => {
      const report = structuredClone(made.report);
      return tamper(report) ? [differencesIn(tale.truth, tale.steps, { report, exit: made.exit })] : [];
    });
    expect(tampered.length).toBeGreaterThan(0);
    for (const differences of tampered) expect(differences).not.toEqual([]);
  });
});
