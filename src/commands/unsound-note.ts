/**
 * The note on an unsound scene from verbs whose output does not claim soundness.
 */
import type { CheckedScene } from '../check/verdict.ts';
import { exitStatus } from '../verbs/exit-status.ts';
import type { Terminal } from './terminal.ts';

/** Returns the exit status; for an unsound scene, names the steps to fix on the terminal. */
export function unsoundNote({ sound, summary }: CheckedScene, terminal: Terminal): number {
  if (sound) return exitStatus.sound;
  const steps = summary.toFix.join(', ');
  terminal.err(`proofreel: the scene is not sound, and no video of it is made yet; fix ${steps}, as check says\n`);
  return exitStatus.unsound;
}
