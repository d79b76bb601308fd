/**
 * What is said of a scene that is not sound by verbs that write nothing which would claim otherwise.
 */
import type { CheckedScene } from '../check/verdict.ts';
import { exitStatus } from '../verbs/exit-status.ts';
import type { Terminal } from './terminal.ts';

/** The exit status; of a scene that is not sound the steps to fix are named on the terminal. */
export function unsoundNote({ sound, summary }: CheckedScene, terminal: Terminal): number {
  if (sound) return exitStatus.sound;
  const steps = summary.toFix.join(', ');
  terminal.err(`proofreel: the scene is not sound, and no video of it is made yet; fix ${steps}, as check says\n`);
  return exitStatus.unsound;
}
