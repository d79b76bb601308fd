/**
 * Whether a video that was written is whole.
 */
import { diskIsFull, MachineFailure } from './machine-failure.ts';
import { countFrames } from './media.ts';
import type { Painter } from './painters/painter.ts';
import { isDiskFull } from './whole-file.ts';

/** An encoder on a full disk may end as if all were well, so what it wrote is counted. Throws a `MachineFailure`. */
export async function requireFrames(
  part: string,
  painter: Pick<Painter, 'frameCount'>,
  signal: AbortSignal | undefined,
): Promise<void> {
  const found = await countFrames(part, signal);
  if (found === painter.frameCount) return;
  if (await isDiskFull(part)) throw new MachineFailure(`cannot write the video: ${diskIsFull}`);
  throw new MachineFailure(`the encoder wrote ${found} frames of ${painter.frameCount}`);
}
