/**
 * The command line: words in, an exit status out. What each verb takes stands in `verbs.ts`.
 */
import { readFileSync } from 'node:fs';
import { Command, CommanderError } from 'commander';
import { Bug } from '../grid/bug.ts';
import { MachineFailure } from '../output/machine-failure.ts';
import { exitStatus, type Verb, verbs } from '../verbs.ts';
import { BadCall } from './bad-call.ts';
import type { Terminal } from './terminal.ts';

/** `scenes`: the files named; of most verbs one, of a verb that takes none none. */
type Action = (
  scene: string | undefined,
  options: Record<string, unknown>,
  terminal: Terminal,
  scenes: readonly string[],
) => Promise<number>;

// Each verb loads what it needs: a check starts fast, and runs where no canvas can be drawn on.
const actions: Readonly<Record<Verb['name'], Action>> = {
  check: async (scene, options, terminal) => (await import('./check.ts')).check(scene ?? '', options, terminal),
  render: async (_, options, terminal, scenes) => (await import('./render.ts')).render(scenes, options, terminal),
  join: async (_, options, terminal, parts) => (await import('./join.ts')).join(parts, options, terminal),
  still: async (scene, options, terminal) => (await import('./still.ts')).still(scene ?? '', options, terminal),
  chapters: async (scene, options, terminal) =>
    (await import('./chapters.ts')).chapters(scene ?? '', options, terminal),
  captions: async (scene, options, terminal) =>
    (await import('./captions.ts')).captions(scene ?? '', options, terminal),
  retime: async (scene, options, terminal) => (await import('./retime.ts')).retime(scene ?? '', options, terminal),
  slides: async (scene, options, terminal) => (await import('./slides.ts')).slides(scene ?? '', options, terminal),
  plan: async (puzzle, options, terminal) => (await import('./plan.ts')).plan(puzzle ?? '', options, terminal),
  ways: async (scene, options, terminal) => (await import('./ways.ts')).ways(scene ?? '', options, terminal),
  puzzle: async (_, options, terminal) => (await import('./puzzle.ts')).puzzle(options, terminal),
  draft: async (puzzle, options, terminal) => (await import('./draft.ts')).draft(puzzle ?? '', options, terminal),
  schema: async (_, options, terminal) => (await import('./schema.ts')).schema(options, terminal),
};

/** What a verb may take, as its call names it. */
const argumentsTaken = {
  SCENE: 'the scene file (YAML)',
  'SCENE...': 'the scene files (YAML)',
  'PART...': 'all parts of one render, in any order',
  PUZZLE: 'the puzzle: its symbols, row by row (. 0 _ are blank), a file that holds them, or a scene',
} as const;

/** Runs one call, such as `['check', 'lesson.yaml']`, and gives its exit status. Whatever fails is said on the terminal; nothing is thrown. */
export async function main(args: readonly string[], terminal: Terminal): Promise<number> {
  let status: number = exitStatus.sound;
  const program = commandLine(terminal, async (verb, scenes, options) => {
    status = await actions[verb](scenes[0], options, terminal, scenes);
  });
  try {
    await program.parseAsync(args, { from: 'user' });
    return status;
  } catch (failure) {
    return statusOf(failure, terminal);
  }
}

function commandLine(
  terminal: Terminal,
  act: (verb: Verb['name'], scenes: readonly string[], options: Record<string, unknown>) => Promise<void>,
): Command {
  const program = new Command('proofreel')
    .description('Teaching number-placement logic on video without ever showing an unsound step.')
    .version(versionOf(), '-v, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .helpCommand(false)
    .showSuggestionAfterError()
    .usage('VERB ... [options]')
    .configureHelp({
      subcommandTerm: (command) =>
        [command.name(), ...command.registeredArguments.map((each) => each.name() + (each.variadic ? '...' : ''))].join(
          ' ',
        ),
    })
    .configureOutput({
      writeOut: terminal.out,
      writeErr: terminal.err,
      outputError: (text, write) => write(refusal(text)),
    })
    .exitOverride();
  for (const verb of verbs) {
    const command = program
      .command(verb.name)
      .summary(verb.does)
      .description(`${verb.does.charAt(0).toUpperCase()}${verb.does.slice(1)}.`)
      .copyInheritedSettings(program)
      .usage(`${callOf(verb).replace(/^\S+ ?/, '')} [options]`.trim())
      .configureOutput({ outputError: (text, write) => write(refusal(text, verb)) });
    const taken = verb.call.split(' ')[1] ?? '';
    const takes = taken in argumentsTaken ? argumentsTaken[taken as keyof typeof argumentsTaken] : undefined;
    if (takes !== undefined) command.argument(`<${taken}>`, takes);
    for (const option of verb.options) command.option(option.flags, option.does);
    command.addHelpText('after', `\nExamples:\n${verb.examples.map((example) => `  ${example}`).join('\n')}`);
    command.action(async (...given: unknown[]) => {
      const files = takes === undefined ? [] : [given[0]].flat().map(String);
      await act(verb.name, files, command.opts());
    });
  }
  program.addHelpText(
    'after',
    `
\`proofreel VERB --help\` tells what a verb takes, with examples.

Exit status:
    0  done; the scene is sound
    1  the scene is unsound, or the puzzle is not carried through
    2  the input or the call is unusable
    3  the machine failed: no ffmpeg, a full disk
  130  interrupted`,
  );
  return program;
}

/** The call with what it needs alone. */
function callOf({ call }: Verb): string {
  return call.replace(/\s*\[.*\]$/, '');
}

/** What commander says of a call that it refuses, with where to read on. */
function refusal(text: string, verb?: Verb): string {
  const said = text.trimEnd().replace(/^error: /, 'proofreel: ');
  const missing = /missing required argument '(\S+?)'/.exec(said)?.[1];
  if (missing !== undefined && verb !== undefined)
    return `proofreel: ${verb.name} needs ${missing}: proofreel ${callOf(verb)}\n`;
  if (said.includes('(Did you mean')) return `${said}\n`;
  return `${said.replace(/\.$/, '')}; \`proofreel ${verb === undefined ? '' : `${verb.name} `}--help\` lists what there is\n`;
}

function statusOf(failure: unknown, terminal: Terminal): number {
  if (failure instanceof CommanderError) return failure.exitCode === 0 ? exitStatus.sound : exitStatus.unusable;
  if (failure instanceof BadCall) {
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
  const what = failure instanceof Bug ? 'a fault of proofreel itself' : 'something went wrong';
  terminal.err(`proofreel: ${what}: ${said}. Please report it with the scene that brings it about.\n`);
  return exitStatus.machineFailed;
}

function versionOf(): string {
  const text = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
  return String((JSON.parse(text) as { version: unknown }).version);
}
