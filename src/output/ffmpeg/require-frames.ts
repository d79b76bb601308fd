/**
 * Whether a written video is complete.
 */
import { isDiskFull } from '../machine/atomic-write.ts';
import { diskIsFull, MachineFailure } from '../machine/machine-failure.ts';
import { countFrames } from './media.ts';

/**
 * An encoder on a full disk may exit as if it had succeeded, so the frames it wrote are counted. Throws a
 * `MachineFailure`.
 */
export async function requireFrames(
  file: string,
  { frameCount }: { readonly frameCount: number },
  signal: AbortSignal | undefined,
): Promise<void> {
  const found = await countFrames(file, signal);
  if (found === frameCount) return;
  if (await isDiskFull(file)) throw new MachineFailure(`cannot write the video: ${diskIsFull}`);
  throw new MachineFailure(`the encoder wrote ${found} frames of ${frameCount}`);
}
