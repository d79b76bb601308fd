/**
 * A removal: a slash across the small digit on a tinted disc, in the one colour that nothing else has. It falls from
 * left to right, against the slant that 1, 2, 4 and 7 have in common, so that it does not run along a stroke of a
 * digit; over the digit it is thin, and without a casing.
 */

import { nothingToJudge } from '../check/marks.ts';
import { parseCandidates } from '../grid/notation/candidates.ts';
import { printCandidate } from '../grid/notation/print.ts';
import { each, type MarkPainting, none } from '../picture/painting.ts';
import { cut, length, line } from '../picture/path.ts';
import { fillPaths, strokePaths, strokeWidth } from '../picture/pen.ts';
import { roomFor, roundRoom, wideRoom } from '../picture/ring-room.ts';
import { pointOfCandidate } from '../picture/small-digits.ts';
import type { BoardStage, Standing } from '../picture/stage.ts';
import { claimsFor, type MarkReading, markReading } from '../scene/beats.ts';
import type { Claims } from '../scene/claims.ts';
import { beatTime } from '../scene/language-times.ts';
import { notation } from '../scene/language-values.ts';
import { type Context, itemsIn, readNotation, saysAll } from '../scene/reading.ts';
import type { BeatMarks } from '../scene/scene.ts';
import { optional } from '../scene/structures.ts';
import type { TextNode } from '../scene/yaml-tree.ts';
import { conclusionStrokes } from '../staging/conclusion-strokes.ts';
import { conclusionCount, oneByOne, quarterSecond } from '../timeline/pace.ts';
import type { BeatRecord } from './record.ts';
import { always, areCandidates, type MarkWords, unlessSound } from './words.ts';

export const reading = (): MarkReading<'strike'> =>
  markReading(
    {
      strike: notation("Crosses out the step's removals: all, or candidates.", ['all', '7r1c7']),
      gone: optional(beatTime()),
    },
    ({ keys, values: { strike, gone } }, context) => {
      const claims = claimsFor(keys.strike, context);
      return strike && claims && readStrike(strike.node, gone?.read(context), claims, context);
    },
  );

export const beat = {
  judge: nothingToJudge,
  seconds: ({ candidates }, step) =>
    oneByOne(quarterSecond, candidates === 'all' ? conclusionCount(step) : candidates.length),
  strokes: (context, _, drawn) => conclusionStrokes(context, drawn),
} satisfies BeatRecord<'strike'>['beat'];

export const words = {
  clause: (shapes, manner) => {
    const candidates = shapes.map(({ candidate }) => candidate);
    return `${areCandidates(manner.grid, candidates)} crossed out${unlessSound(manner)}`;
  },
  isClaim: true,
  areJoined: true,
  isNews: true,
  answers: always,
} satisfies MarkWords<'strike'>;

export const painting = {
  comesIn: (_, motion) => motion.strike,
  candidates: ({ candidate }) => [candidate],
  isRinged: true,
  covers: none,
  onBoard: { disc: each(paintDisc), slash: each(paintSlash) },
  onFrame: {},
} satisfies MarkPainting<'strike'>;

/** The length of the slash, in cells, that has no casing, so that the digit shows above and below it. */
const bare = 0.22;

/** How wide the slash is over the digit, as a fraction of its width. */
const slender = 0.72;

/** Flatter than a diagonal, so that the slashes of diagonally adjacent small digits do not merge. */
const slope = 0.56;

/** Between two marked ones in one row of small digits, half as wide as their distance, and steep. */
const besideReach = 0.135;
const steep = 1.35;

function paintDisc(stage: BoardStage, { mark, ink }: Standing<'strike'>): void {
  const { look, film } = stage;
  const { candidate } = mark.shape;
  const disc = roundRoom(pointOfCandidate(film, candidate), roomFor(stage, candidate));
  fillPaths(stage, [disc], look.colours.removal, look.inks.disc * ink.progress * ink.alpha);
}

function paintSlash(stage: BoardStage, { mark, ink }: Standing<'strike'>): void {
  const { look } = stage;
  const [x, y] = pointOfCandidate(stage.film, mark.shape.candidate);
  const room = roomFor(stage, mark.shape.candidate);
  // If small digits are close by, it ends before them.
  const beyond = room.emphasis < wideRoom(stage.film, look).emphasis ? 0.04 : 0.08;
  const isBeside = room.touching.some(([, otherY]) => Math.abs(otherY - y) < 0.05);
  const across = isBeside ? besideReach : look.type.candidate * room.emphasis * 0.62 + beyond;
  const down = isBeside ? besideReach * steep : across * slope;
  const slash = line([x - across, y - down], [x + across, y + down]);
  const long = length(slash);
  const drawn = long * ink.progress;
  const width = strokeWidth(stage, look.strokes.strike);
  const thin = strokeWidth(stage, look.strokes.strike * slender);
  const stroke = { colour: look.colours.removal, width, alpha: ink.alpha };
  const before = (long - bare) / 2;
  const ends = [cut(slash, 0, Math.min(drawn, before))];
  if (drawn > long - before) ends.push(cut(slash, long - before, drawn));
  strokePaths(stage, ends, { ...stroke, cased: true });
  if (drawn > before) {
    const middle = cut(slash, before - width, Math.min(drawn, long - before + width));
    strokePaths(stage, [middle], { ...stroke, width: thin, cased: false, cap: 'butt' });
  }
}

/** The removals to cross out; undefined after a report. */
function readStrike(
  node: TextNode,
  gone: BeatMarks['strike']['gone'],
  claims: Claims,
  context: Context,
): BeatMarks['strike'] | undefined {
  const { faults, grid } = context;
  if (saysAll(node)) {
    if (claims.removesAny) return { kind: 'strike', candidates: 'all', gone };
    faults.error(
      'not-concluded',
      node.span,
      'this step removes nothing that could be struck; add the removal to so, or leave the beat out',
    );
    return undefined;
  }
  const candidates = readNotation(node, parseCandidates, context);
  for (const { span, value } of candidates === undefined ? [] : itemsIn(node, parseCandidates, grid)) {
    const strange = value.filter((candidate) => !claims.removes(candidate)).map((each) => printCandidate(grid, each));
    if (strange.length === 0) continue;
    const verb = strange.length === 1 ? 'is' : 'are';
    const message = `${strange.join(' ')} ${verb} not among the step's removals; a cross is a claim, so add it to so or leave it out`;
    faults.error('not-concluded', span, message);
  }
  return candidates === undefined ? undefined : { kind: 'strike', candidates, gone };
}
