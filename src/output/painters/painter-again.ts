/**
 * A painter made again from what another process said of it, and painters made from others so that they can be.
 */
import type { Painter } from './painter.ts';

type Remake = NonNullable<Painter['remake']>;

/** The painter that `remake` speaks of. */
export async function painterAgain({ module, data }: Remake): Promise<Painter> {
  const { remakePainter } = (await import(module)) as { remakePainter(data: unknown): Painter | Promise<Painter> };
  return remakePainter(data);
}

/** How to make a painter again that was made from `painter`: the module's `remakePainter` gets `from` and `data`. */
export function remakeOf(painter: Painter, module: string, data: unknown): Remake | undefined {
  return painter.remake === undefined ? undefined : { module, data: { from: painter.remake, data } };
}

/** What `remakeOf` hands over. */
export interface MadeFrom<T> {
  readonly from: Remake;
  readonly data: T;
}
