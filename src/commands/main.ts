/**
 * The command line: words in, an exit status out. What each verb takes is defined in `src/verbs`.
 */
import { Bug } from '../grid/bug.ts';
import { MachineFailure } from '../output/machine/machine-failure.ts';
import { exitStatus } from '../verbs/exit-status.ts';
import { UsageError } from '../verbs/usage-error.ts';
import { type CallOf, readCall, type Written } from '../verbs/verb.ts';
import { type VerbName, verbs } from '../verbs/verbs.ts';
import { parseCommandLine } from './command-line.ts';
import type { Terminal } from './terminal.ts';

type Actions = {
  readonly [Name in VerbName]: (call: CallOf<(typeof verbs)[Name]>, terminal: Terminal) => Promise<number>;
};

// Each verb loads what it needs: a check starts fast, and runs on machines without a working canvas.
const actions: Actions = {
  check: async (...asked) => (await import('./check.ts')).check(...asked),
  render: async (...asked) => (await import('./render.ts')).render(...asked),
  join: async (...asked) => (await import('./join.ts')).join(...asked),
  still: async (...asked) => (await import('./still.ts')).still(...asked),
  captions: async (...asked) => (await import('./captions.ts')).captions(...asked),
  slides: async (...asked) => (await import('./slides.ts')).slides(...asked),
  chapters: async (...asked) => (await import('./chapters.ts')).chapters(...asked),
  retime: async (...asked) => (await import('./retime.ts')).retime(...asked),
  locate: async (...asked) => (await import('./locate.ts')).locate(...asked),
  plan: async (...asked) => (await import('./plan.ts')).plan(...asked),
  alternatives: async (...asked) => (await import('./alternatives.ts')).alternatives(...asked),
  puzzle: async (...asked) => (await import('./puzzle.ts')).puzzle(...asked),
  draft: async (...asked) => (await import('./draft.ts')).draft(...asked),
  schema: async (...asked) => (await import('./schema.ts')).schema(...asked),
};

/**
 * Runs one call, such as `['check', 'lesson.yaml']`, and returns its exit status. Anything that goes wrong is reported
 * on the terminal; nothing is thrown.
 */
export async function main(args: readonly string[], terminal: Terminal): Promise<number> {
  try {
    const asked = parseCommandLine(args, terminal);
    return asked.kind === 'answered' ? asked.status : await act(asked.name, asked.written, terminal);
  } catch (failure) {
    return statusOf(failure, terminal);
  }
}

function act<Name extends VerbName>(name: Name, written: Written, terminal: Terminal): Promise<number> {
  return actions[name](readCall(name, verbs[name], written), terminal);
}

function statusOf(failure: unknown, terminal: Terminal): number {
  if (failure instanceof UsageError) {
    terminal.err(`proofreel: ${failure.message}\n`);
    return exitStatus.unusable;
  }
  if (failure instanceof MachineFailure) {
    terminal.err(`proofreel: ${failure.message}\n`);
    return exitStatus.machineFailed;
  }
  if (failure instanceof DOMException && failure.name === 'AbortError') {
    terminal.err('proofreel: interrupted; nothing was written\n');
    return exitStatus.interrupted;
  }
  const said = failure instanceof Error ? failure.message : String(failure);
  const what = failure instanceof Bug ? 'a bug in proofreel' : 'something went wrong';
  terminal.err(`proofreel: ${what}: ${said}. Please report it with the scene that causes it.\n`);
  return exitStatus.machineFailed;
}
