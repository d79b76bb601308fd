/**
 * `show`: the beats of a step, each with one mark. How a mark is written and read is in its record (`src/marks`); this
 * file has what all beats share.
 */
import type { Claims } from './claims.ts';
import type { MarkedDefinition, Opens, ReadMap } from './definition.ts';
import { groupNamed } from './groups.ts';
import { beatTime } from './language-times.ts';
import { name, yesOrNo } from './language-values.ts';
import type { Context } from './reading.ts';
import type { Beat, BeatMark, BeatMarks } from './scene.ts';
import { byKey, keys, marked, type Opening, type OpeningShape, optional } from './structures.ts';
import type { MapNode, TextNode } from './yaml-tree.ts';

/** What a mark is read with. */
export interface MarkContext extends Context {
  /** Undefined for a step that claims nothing. */
  readonly claims: Claims | undefined;
}

export interface MarkReading<Kind extends keyof BeatMarks> {
  /** Its keys apart from those of any beat; the required key is the mark's name. */
  readonly keys: OpeningShape;
  /** The mark; undefined after a report, or if its shape does not fit the keys, which is already reported. */
  readonly read: (beat: MapNode, context: MarkContext) => BeatMarks[Kind] | undefined;
}

export type MarkReadings = { readonly [Kind in keyof BeatMarks]: MarkReading<Kind> };

/** How a mark is written, and what is made of it; its texts were checked against its keys before. */
export function markReading<Kind extends keyof BeatMarks, Own extends OpeningShape & Readonly<Record<Kind, Opening>>>(
  own: Own,
  read: (written: ReadMap<Own>, context: MarkContext) => BeatMarks[Kind] | undefined,
): MarkReading<Kind> {
  const map = keys('a mark', '', own);
  return {
    keys: own,
    read(beat, context) {
      const written = map.open(beat, 'a mark');
      return written && read(written, context);
    },
  };
}

/** A beat as written. */
export interface BeatMap {
  readonly kind: 'beat';
  /** Undefined after a report. */
  read(context: MarkContext): Beat | undefined;
}

export type BeatDefinition = MarkedDefinition & Opens<BeatMap>;

const ofEveryBeat = {
  at: optional(beatTime()),
  group: optional(name('The colour group of this mark, as named under groups.')),
  keep: optional(yesOrNo('true: the mark stays when its step ends.')),
};

/** One item of `show`: with any of the marks, described in their order. */
export function beatDefinition(readings: MarkReadings): BeatDefinition {
  const description = 'One mark, and when it is drawn.';
  const shapes = byKey<keyof BeatMarks, MarkReading<keyof BeatMarks>, OpeningShape>(
    readings,
    (reading) => reading.keys,
  );
  const definition = marked(shapes, ofEveryBeat, {
    title: 'a beat',
    titleOf: (mark) => `a beat with "${mark}"`,
    descriptionOf: () => description,
    description,
  });
  return {
    ...definition,
    open(node, named) {
      const beat = definition.open(node, named);
      if (beat === undefined) return undefined;
      const { at, group, keep } = beat.common.values;
      const read = (context: MarkContext): Beat | undefined => {
        const ofBeat = { at: at?.read(context), group: groupNamed(group?.node, context), keep: keep?.read() ?? false };
        const mark: BeatMark | undefined = beat.mark && readings[beat.mark].read(beat.own.node, context);
        return mark && { span: beat.span, ...ofBeat, mark };
      };
      return { kind: 'beat', read };
    },
  };
}

/** The claims of which a mark draws some; undefined after a report that its step claims nothing. */
export function claimsFor(key: TextNode | undefined, { claims, faults }: MarkContext): Claims | undefined {
  if (key === undefined || claims !== undefined) return claims;
  const message = `"${key.text}" draws what a step claims, and this step claims nothing; add so, chain, only, pencil or cascade, or leave the beat out`;
  faults.error('no-claim', key.span, message);
  return undefined;
}
