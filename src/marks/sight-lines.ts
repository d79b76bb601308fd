/**
 * `sight`: the lines along which a written digit rules out its copies.
 */

import { cellOf, digitOf, type HouseShape } from '../grid/grid.ts';
import { parseHouses } from '../grid/notation/houses.ts';
import { printCell } from '../grid/notation/print.ts';
import { parseTargets } from '../grid/notation/targets.ts';
import type { ReadOf } from '../scene/definition.ts';
import { notation } from '../scene/language-values.ts';
import { type Context, readNotation } from '../scene/reading.ts';
import type { BeatMarks, Sight } from '../scene/scene.ts';
import { eachOf, either, keys, listOf, optional } from '../scene/structures.ts';
import type { TextNode } from '../scene/yaml-tree.ts';

/** The value of `sight`. */
export const sightLines = () =>
  either(
    [
      notation('The lines along which a written digit rules out its copies.', ['4r4c1']),
      sightWay(),
      listOf(sightWay()),
    ],
    'The lines along which a written digit rules out its copies, or the one that does the work.',
  );

const sightWay = () =>
  keys('a sight line', 'A written digit, and where its line is drawn.', {
    of: notation('The written digit, or its cell.', ['4r4c1', 'r4c1']),
    into: optional(notation('Only the lines that reach this house.', ['b5'])),
    along: optional(notation('Only the line along this house.', ['r4'])),
  });

type SightLines = ReadOf<ReturnType<typeof sightLines>>;
type SightWay = ReadOf<ReturnType<typeof sightWay>>;
type From = Pick<Sight, 'cell' | 'digit'>;

/** The lines of a beat; undefined after a report. */
export function readSight(written: SightLines | undefined, context: Context): BeatMarks['sight'] | undefined {
  const sights = eachOf(written).map((item) => {
    if (item?.kind === 'text')
      return readFrom(item.node, context)?.map((from): Sight => ({ ...from, way: { kind: 'everywhere' } }));
    return item === undefined ? undefined : readWay(item, context);
  });
  if (sights.length === 0 || sights.includes(undefined)) return undefined;
  return { kind: 'sight', sights: sights.flatMap((each) => each ?? []) };
}

function readWay({ keys, values }: SightWay, context: Context): readonly Sight[] | undefined {
  const { faults } = context;
  const { of } = values;
  const from = of === undefined ? undefined : readFrom(of.node, context);
  const { into, along } = keys;
  if (into !== undefined && along !== undefined) {
    faults.error(
      'notation',
      along.span,
      '"into" and "along" stand together; a line goes into a house or along one, so keep one of the two',
    );
    return undefined;
  }
  const kind = into !== undefined ? 'into' : 'along';
  const node = values[kind]?.node;
  if (into === undefined && along === undefined) return from?.map((each) => ({ ...each, way: { kind: 'everywhere' } }));
  const house = node === undefined ? undefined : readHouse(node, context);
  if (node === undefined || house === undefined || from === undefined) return undefined;
  const wrong = from.map((each) => whyNoLine(each, kind, house, context)).find((each) => each !== undefined);
  if (wrong === undefined) return from.map((each) => ({ ...each, way: { kind, house } }));
  faults.error('notation', node.span, wrong);
  return undefined;
}

/** The cells that the lines start from, each with its digit if that is written. */
function readFrom(node: TextNode, context: Context): readonly From[] | undefined {
  const { grid, faults } = context;
  const targets = readNotation(node, parseTargets, context);
  if (targets?.some((target) => target.kind === 'house' || target.kind === 'digit')) {
    faults.error(
      'notation',
      node.span,
      'a sight line starts from a written digit; write it with its cell (4r3c2), or the cell (r3c2)',
    );
    return undefined;
  }
  return targets?.flatMap((target): readonly From[] => {
    if (target.kind === 'cells') return target.cells.map((cell) => ({ cell, digit: undefined }));
    if (target.kind !== 'candidates') return [];
    return target.candidates.map((each) => ({ cell: cellOf(grid, each), digit: digitOf(grid, each) }));
  });
}

function readHouse(node: TextNode, context: Context): HouseShape | undefined {
  const houses = readNotation(node, parseHouses, context);
  if (houses !== undefined && houses.length !== 1) {
    context.faults.error(
      'notation',
      node.span,
      `${houses.length} houses stand here; a line goes into one, or along one, so write a beat for each`,
    );
  }
  return houses?.length === 1 ? houses[0] : undefined;
}

function whyNoLine({ cell }: From, kind: 'into' | 'along', house: HouseShape, { grid }: Context): string | undefined {
  const written = printCell(grid, cell);
  if (kind === 'into') {
    return house.cells.some((each) => grid.peers[cell]!.includes(each))
      ? undefined
      : `${written} sees no cell of ${house.name}`;
  }
  const lines = grid.housesOf[cell]!.filter((each) => each.kind !== 'box').map((each) => each.name);
  return lines.includes(house.name)
    ? undefined
    : `no line from ${written} runs along ${house.name}; write ${lines.join(' or ')}`;
}
