/**
 * `proofreel join`: the parts of a render, made by `render --part`, become its video or its folder of frames.
 */
import { listenForInterrupt } from '../output/interrupt.ts';
import { joinParts } from '../output/parts/join-parts.ts';
import { exitStatus } from '../verbs/exit-status.ts';
import type { join as verb } from '../verbs/join.ts';
import { UsageError } from '../verbs/usage-error.ts';
import type { CallOf } from '../verbs/verb.ts';
import type { Terminal } from './terminal.ts';

export async function join({ parts, out }: CallOf<typeof verb>, terminal: Terminal): Promise<number> {
  const interrupt = listenForInterrupt();
  try {
    const result = await joinParts(parts, out, interrupt.signal);
    if (result.kind === 'refused') throw new UsageError(result.message);
    terminal.err(`${result.path}: ${result.frameCount} frames, joined from ${result.parts} parts\n`);
    return exitStatus.sound;
  } catch (error) {
    if (!interrupt.signal.aborted) throw error;
    terminal.err('proofreel: interrupted; nothing was written\n');
    return exitStatus.interrupted;
  } finally {
    interrupt.release();
  }
}
