/**
 * The order in which a frame is painted, bottom to top. It names every layer of every mark and of the film itself: one
 * that is missing, or that nothing paints, does not compile.
 */
import { Bug } from '../grid/bug.ts';
import { type namedPaintings, paintings } from '../marks/paintings.ts';
import { roomBesideCallouts } from '../picture/callout-plan.ts';
import { paintCoordinates } from '../picture/coordinates.ts';
import {
  paintForwardDigits,
  paintInvolvedDigits,
  paintSmallDigits,
  paintStanding,
  paintWritten,
} from '../picture/digits.ts';
import { paintGround, paintLines } from '../picture/grid-lines.ts';
import { paintHeading } from '../picture/heading.ts';
import type { Layers } from '../picture/painting.ts';
import { paintSaid } from '../picture/said.ts';
import type { BoardStage, Stage, Standing } from '../picture/stage.ts';
import type { ShapeKind } from '../timeline/film.ts';

/** The layers of a board apart from marks; each checks whether the film has it. */
const ofBoard = {
  coordinates: (stage) => stage.film.coordinates && paintCoordinates(stage),
  ground: (stage) => isWhole(stage) && paintGround(stage),
  lines: (stage) => isWhole(stage) && paintLines(stage),
  givens: (stage) => isWhole(stage) && paintStanding(stage),
  'small digits': (stage) => stage.film.draw !== 'overlay' && paintSmallDigits(stage),
  'written digits': (stage) => stage.film.draw !== 'overlay' && paintWritten(stage),
  'involved digits': (stage) => stage.film.small === 'whole' && paintInvolvedDigits(stage),
  'forward digits': (stage) => stage.film.draw !== 'overlay' && paintForwardDigits(stage),
} satisfies Record<string, (stage: BoardStage) => unknown>;

/** The layers of a frame apart from marks and the board. */
const ofFrame = { said: paintSaid, headings: paintHeadings } satisfies Record<string, (stage: Stage) => void>;

const onBoard = inOrder<BoardLayer>()([
  ['board', 'coordinates'],
  ['board', 'ground'],
  ['fill', 'tint'],
  ['sight', 'band'],
  ['place', 'tint'],
  ['circle', 'disc'],
  ['ring', 'disc'],
  ['strike', 'disc'],
  ['board', 'lines'],
  ['outline', 'line'],
  // Under the digits: a group's neck may have to pass over some.
  ['link', 'hulls'],
  ['board', 'givens'],
  ['board', 'small digits'],
  ['board', 'written digits'],
  ['focus', 'veil'],
  ['board', 'involved digits'],
  ['sight', 'arrows'],
  ['place', 'frame'],
  ['opens', 'corners'],
  ['circle', 'ring'],
  ['ring', 'ring'],
  ['link', 'rims'],
  ['reach', 'dots'],
  ['link', 'line'],
  ['ghost', 'line'],
  ['board', 'forward digits'],
  ['clash', 'line'],
  ['strike', 'slash'],
  ['label', 'tag'],
]);

const onFrame = inOrder<FrameLayer>()([
  ['frame', 'said'],
  ['note', 'card'],
  ['ask', 'card'],
  ['frame', 'headings'],
  ['stamp', 'sign'],
]);

/** Paints the board and the marks on it. */
export function paintBoardLayers(stage: BoardStage): void {
  for (const [of, layer] of onBoard) {
    if (of === 'board') ofBoard[layer](stage);
    else paintOnBoard(of, layer, stage);
  }
}

/** Paints what is on the frame: words, cards, the stamp; `rest` is the stage with the room that a stamp leaves. */
export function paintFrameLayers(stage: Stage, rest: Stage): void {
  for (const [of, layer] of onFrame) {
    if (of === 'frame') ofFrame[layer](rest);
    else paintOnFrame(of, layer, of === 'stamp' ? stage : rest);
  }
}

function paintOnBoard<Kind extends ShapeKind>(kind: Kind, layer: string, stage: BoardStage): void {
  paintMarks(kind, paintings[kind].onBoard, layer, stage);
}

function paintOnFrame<Kind extends ShapeKind>(kind: Kind, layer: string, stage: Stage): void {
  paintMarks(kind, paintings[kind].onFrame, layer, stage);
}

function paintMarks<On extends Stage, Kind extends ShapeKind>(
  kind: Kind,
  layers: Layers<On, Kind>,
  layer: string,
  stage: On,
): void {
  const paintLayer = layers[layer];
  if (paintLayer === undefined) throw new Bug(`a ${kind} has no layer ${layer}`);
  paintLayer(
    stage,
    stage.standing.filter((one): one is Standing<Kind> => one.mark.shape.kind === kind),
  );
}

function paintHeadings(stage: Stage): void {
  const { heading, callout } = stage.layout;
  if (heading !== undefined) paintHeading(stage, heading === callout ? roomBesideCallouts(stage) : heading);
}

function isWhole({ film }: Stage): boolean {
  return film.draw === 'board';
}

/** The layers of all marks, as `[kind, layer]`. */
type MarkLayer<On extends 'onBoard' | 'onFrame'> = {
  [Kind in ShapeKind]: {
    [Layer in keyof (typeof namedPaintings)[Kind][On]]: readonly [Kind, Layer];
  }[keyof (typeof namedPaintings)[Kind][On]];
}[ShapeKind];

type BoardLayer = MarkLayer<'onBoard'> | LayerIn<'board', typeof ofBoard>;
type FrameLayer = MarkLayer<'onFrame'> | LayerIn<'frame', typeof ofFrame>;
type LayerIn<Name extends string, Painters> = { [Layer in keyof Painters]: readonly [Name, Layer] }[keyof Painters];

/** A mark that paints nothing does not compile. */
export type Unpainted = Nothing<Exclude<ShapeKind, (BoardLayer | FrameLayer)[0]>>;
type Nothing<None extends never> = None;

/** The order as written; one that leaves out a layer does not compile. */
function inOrder<Layer>() {
  return <const Order extends readonly Layer[]>(order: Order & Complete<Layer, Order[number]>): Order => order;
}

type Complete<Layer, Named> = [Exclude<Layer, Named>] extends [never]
  ? unknown
  : { readonly leftOut: Exclude<Layer, Named> };
