/**
 * A process of its own for the test of interrupts: renders a long film to the file named, says `started` when frames
 * flow, and ends as the command line does, with 130 where it was interrupted.
 */
import { listenForInterrupt } from '../../src/output/interrupt.ts';
import { renderFilm } from '../../src/output/render.ts';
import { squarePainter, walkingSquare } from './square-painter.ts';

const { signal, release } = listenForInterrupt();
const painter = squarePainter({
  frameCount: 200_000,
  ground: [20, 40, 60],
  squares: walkingSquare(1, [220, 40, 40, 255]),
});
let saidSo = false;
const onProgress = ({ done }: { readonly done: number }): void => {
  if (done < 50 || saidSo) return;
  saidSo = true;
  process.stdout.write('started\n');
};
const result = await renderFilm(painter, process.argv[2] ?? '', { signal, onProgress });
release();
process.exitCode = result.kind === 'interrupted' ? 130 : 1;
