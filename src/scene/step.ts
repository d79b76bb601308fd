/**
 * One step: its argument, its conclusions, its times and its marks.
 */

import { checkAgreement } from './agreement.ts';
import { type Claims, claimsForMarks } from './claims.ts';
import { type CascadeWritten, type OnlyWritten, type PencilWritten, readChains } from './language-argument.ts';
import type { StepMap } from './language-step.ts';
import { type Context, located } from './reading.ts';
import type { CascadeItem, OnlyItem, PencilItem, Step } from './scene.ts';
import { eachOf } from './structures.ts';

/** A step with everything in it that could be read; the rest was reported. `index` counts from 0. */
export function readStep(map: StepMap, index: number, context: Context): Step {
  const { faults, grid } = context;
  const { values } = map;
  const before = faults.errorCount();
  const chains = readChains(values.chain, context);
  const so = values.so?.read(context);
  const soSpan = values.so?.span;
  const claiming = {
    from: values.from?.read(context) ?? [],
    chains,
    deadly: values.deadly?.read(context),
    so,
    only: eachOf(values.only).flatMap((item) => readOnly(item, context) ?? []),
    pencil: eachOf(values.pencil).flatMap((item) => readPencil(item, context) ?? []),
    cascade: eachOf(values.cascade).flatMap((item) => readCascadeItem(item, context) ?? []),
  };
  const isWhole = faults.errorCount() === before && !claimKeys.some((key) => map.misfits.has(key));
  if (isWhole || so !== undefined) {
    checkAgreement({ chains, conclusions: so, named: 'so', conclusionsSpan: soSpan, grid, faults });
  }
  checkClaimKeys(map, so, context);
  const claims = showClaims(map, claimsForMarks(claiming, grid, isWhole));
  return {
    id: values.id?.text ?? '',
    span: map.span,
    idSpan: values.id?.span ?? map.span,
    at: values.at?.read({ ...context, isFirst: index === 0 }),
    until: values.until?.read(context),
    title: values.title?.text,
    say: located(values.say),
    chapter: values.chapter?.text,
    because: values.because?.read(context),
    called: values.called?.text,
    ...claiming,
    soSpan,
    fails: values.fails?.read() ?? false,
    show: values.show?.items.flatMap((beat) => beat?.read({ ...context, claims }) ?? []),
  };
}

const claimKeys = ['so', 'chain', 'only', 'pencil', 'cascade'] as const;

function claimsAnything({ keys }: StepMap): boolean {
  return claimKeys.some((key) => keys[key] !== undefined);
}

/** Undefined if the step claims nothing. */
function showClaims(map: StepMap, claims: Claims): Claims | undefined {
  return claimsAnything(map) ? claims : undefined;
}

/** `fails` needs conclusions, and sets without any are most likely a forgotten `so`. */
function checkClaimKeys(map: StepMap, so: Step['so'], { faults }: Context): void {
  const { keys, values } = map;
  const fails = values.fails?.read() === true ? values.fails : undefined;
  if (fails !== undefined && keys.so === undefined) {
    faults.error(
      'no-claim',
      fails.span,
      'this step should fail and concludes nothing; add so: and the conclusions that do not follow',
    );
  } else if (fails !== undefined && values.so !== undefined && so?.kind === 'all') {
    faults.error(
      'so-all',
      values.so.span,
      'so: all stands for what the argument proves, and this step should fail; name the conclusions',
    );
  }
  const sets = keys.from ?? keys.deadly;
  if (sets !== undefined && !claimsAnything(map)) {
    faults.warning(
      'no-conclusion',
      sets.span,
      `"${sets.text}" names sets and nothing is concluded from them; add so: and the conclusions`,
    );
  }
}

function readOnly(item: OnlyWritten, context: Context): OnlyItem | undefined {
  const text = item?.kind === 'map' ? item.values.only : item;
  const at = item?.kind === 'map' ? item.values.at?.read(context) : undefined;
  const places = text?.read(context);
  return text === undefined || places === undefined ? undefined : { places, at, span: text.span };
}

function readPencil(item: PencilWritten, context: Context): PencilItem | undefined {
  const text = item?.kind === 'map' ? item.values.pencil : item;
  const at = item?.kind === 'map' ? item.values.at?.read(context) : undefined;
  const lists = text?.read(context);
  return text === undefined || lists === undefined ? undefined : { lists, at, span: text.span };
}

function readCascadeItem(item: CascadeWritten, context: Context): CascadeItem | undefined {
  const text = item?.kind === 'map' ? item.values.cascade : item;
  const beside = item?.kind === 'map' ? item.values : undefined;
  const at = beside?.at?.read(context);
  if (text === undefined) return undefined;
  const conclusions = text.read(context);
  const because = beside?.because?.read(context);
  const from = beside?.from?.read(context) ?? [];
  const chains = readChains(beside?.chain, context);
  if (conclusions === undefined) return undefined;
  const { grid, faults } = context;
  const { span } = text;
  checkAgreement({
    chains,
    conclusions: { kind: 'listed', conclusions },
    named: 'cascade',
    conclusionsSpan: span,
    grid,
    faults,
  });
  return { conclusions, at, because, from, chains, span };
}
