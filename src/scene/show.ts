/**
 * `show`: the beats of a step, each with one mark. The shape of each is checked before; here its text is read, and held
 * against what the step claims.
 */

import type { Target } from '../grid/terms.ts';
import { readSides, readSuppose } from './argument-marks.ts';
import { readPlace, readStrike } from './claimed-marks.ts';
import type { Claims } from './claims.ts';
import type { ReadList, ReadText } from './definition.ts';
import { quoted } from './faults.ts';
import { fraction, fractionFromDecimal } from './fraction.ts';
import { groupNamed } from './groups.ts';
import type { BeatMap } from './language-step.ts';
import { readLinks } from './links.ts';
import { didYouMean } from './nearest-word.ts';
import { readNumber } from './numbers.ts';
import { type Context, saysAll } from './reading.ts';
import type { Beat, BeatMark } from './scene.ts';
import { readSight } from './sight.ts';
import { readLabel, withTargets } from './target-marks.ts';
import { spanIn, type TextNode } from './yaml-tree.ts';

/** The beats; undefined where the step has no `show`. `claims` is undefined for a step that claims nothing. */
export function readShow(
  show: ReadList<BeatMap> | undefined,
  claims: Claims | undefined,
  context: Context,
): readonly Beat[] | undefined {
  return show?.items.flatMap((beat) => (beat === undefined ? [] : readBeat(beat, claims, context)));
}

function readBeat(beat: BeatMap, claims: Claims | undefined, context: Context): readonly Beat[] {
  const { values } = beat.common;
  const at = values.at?.read(context);
  const group = groupNamed(values.group?.node, context);
  const mark = readMark(beat, claims, context);
  const keep = values.keep?.read() ?? false;
  return mark === undefined ? [] : [{ span: beat.span, at, group, keep, mark }];
}

function readMark(beat: BeatMap, claims: Claims | undefined, context: Context): BeatMark | undefined {
  switch (beat.mark) {
    case undefined:
      return undefined;
    case 'fill':
      return onTargets('fill', beat.own.values.fill, ['cells', 'house', 'candidates', 'digit'], context);
    case 'focus':
      return onTargets('focus', beat.own.values.focus, ['cells', 'house', 'candidates', 'digit'], context);
    case 'circle':
      return onTargets('circle', beat.own.values.circle, ['candidates', 'digit'], context);
    case 'outline':
      return onTargets('outline', beat.own.values.outline, ['cells', 'house'], context);
    case 'link': {
      const { keys, values } = beat.own;
      const drawn = drawnClaims(keys.link, values.link, claims, context);
      return drawn && readLinks(drawn.node, drawn.key, drawn.claims, context);
    }
    case 'strike': {
      const { keys, values } = beat.own;
      const drawn = drawnClaims(keys.strike, values.strike, claims, context);
      return drawn && readStrike(drawn.node, values.gone, drawn.claims, context);
    }
    case 'place': {
      const { keys, values } = beat.own;
      const drawn = drawnClaims(keys.place, values.place, claims, context);
      return drawn && readPlace(drawn.node, drawn.claims, context);
    }
    case 'suppose': {
      const { keys, values } = beat.own;
      const drawn = drawnClaims(keys.suppose, values.suppose, claims, context);
      return drawn && readSuppose(drawn.node, context);
    }
    case 'label': {
      const { label } = beat.own.values;
      return label && readLabel(label.node, context);
    }
    case 'note': {
      const { note } = beat.own.values;
      return note && { kind: 'note', text: note.text };
    }
    case 'ask': {
      const { ask, hold } = beat.own.values;
      return ask && { kind: 'ask', text: ask.text, hold: readHold(hold?.node, context) };
    }
    case 'clear': {
      const { clear } = beat.own.values;
      return clear && readClear(clear.node, context);
    }
    case 'sides': {
      const { sides, groups } = beat.own.values;
      return sides && readSides(sides.node, groups, context);
    }
    case 'sight':
      return readSight(beat.own.values.sight, context);
    default:
      return beat satisfies never;
  }
}

function onTargets<Kind extends 'fill' | 'circle' | 'outline' | 'focus'>(
  kind: Kind,
  written: ReadText<string, void> | undefined,
  takes: readonly Target['kind'][],
  context: Context,
) {
  return written && withTargets(kind, written.node, takes, context);
}

/** What a mark that draws claims is read from; undefined where it has no text, or after a report that nothing is claimed. */
function drawnClaims(
  key: TextNode | undefined,
  written: ReadText<string, void> | undefined,
  claims: Claims | undefined,
  { faults }: Context,
): { readonly key: TextNode; readonly node: TextNode; readonly claims: Claims } | undefined {
  if (key === undefined || written === undefined) return undefined;
  if (claims !== undefined) return { key, node: written.node, claims };
  const message = `"${key.text}" draws what a step claims, and this step claims nothing; add so, chain, only, pencil or cascade, or leave the beat out`;
  faults.error('no-claim', key.span, message);
  return undefined;
}

const defaultHold = fraction(5n);
const mostHold = 600;

function readHold(node: TextNode | undefined, { faults }: Context) {
  const seconds = node === undefined ? undefined : { ...node, text: node.text.trim().replace(/ ?s$/, '') };
  if (
    seconds === undefined ||
    readNumber(seconds, { what: '"hold", in seconds,', least: 0, most: mostHold, faults }) === undefined
  )
    return defaultHold;
  return fractionFromDecimal(seconds.text) ?? defaultHold;
}

function readClear(node: TextNode, { stepIds, groups, faults }: Context): BeatMark | undefined {
  if (saysAll(node)) return { kind: 'clear', what: 'all' };
  const what: string[] = [];
  for (const match of node.text.matchAll(/[^\s,]+/g)) {
    const [name] = match;
    what.push(name);
    if (stepIds.has(name) || groups.has(name)) continue;
    const known = [...stepIds.keys(), ...groups.keys()];
    const span = spanIn(node, match.index, match.index + name.length);
    const meant = didYouMean(name, [...known, 'all']);
    faults.error(
      'unknown-step',
      span,
      `${quoted(name)} is no step and no group of the scene${meant === '' ? '; write the id of a step, the name of a group, or all' : meant}`,
    );
  }
  return { kind: 'clear', what };
}
