/**
 * `proofreel join`: the parts of a render, made by `render --part`, become its video or its folder of frames.
 */
import { listenForInterrupt } from '../output/interrupt.ts';
import { joinParts } from '../output/segments/join-parts.ts';
import { exitStatus } from '../verbs.ts';
import { BadCall } from './bad-call.ts';
import type { Terminal } from './terminal.ts';

export interface JoinCall {
  readonly out?: string;
}

export async function join(parts: readonly string[], { out }: JoinCall, terminal: Terminal): Promise<number> {
  if (out === undefined) throw new BadCall('join needs -o OUT: the video that the parts are of');
  const interrupt = listenForInterrupt();
  try {
    const result = await joinParts(parts, out, interrupt.signal);
    if (result.kind === 'refused') throw new BadCall(result.message);
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
