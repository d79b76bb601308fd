/**
 * The words of a call, parsed by commander according to the records of the verbs, and the help printed from those.
 */
import { readFileSync } from 'node:fs';
import { Command, CommanderError } from 'commander';
import { exitStatus, statusMeanings } from '../verbs/exit-status.ts';
import { type Verb, type Written, wordOf } from '../verbs/verb.ts';
import { renamedVerbs, type VerbName, verbNames, verbs } from '../verbs/verbs.ts';
import type { Terminal } from './terminal.ts';

/** A verb to be carried out; or, if help was printed or the call was refused, just the exit status. */
export type Asked =
  | { readonly kind: 'verb'; readonly name: VerbName; readonly written: Written }
  | { readonly kind: 'answered'; readonly status: number };

/** Has no effect except on the terminal. */
export function parseCommandLine(args: readonly string[], terminal: Terminal): Asked {
  let asked: Asked = { kind: 'answered', status: exitStatus.sound };
  const program = programFor(terminal, (name, written) => {
    asked = { kind: 'verb', name, written };
  });
  try {
    program.parse(args, { from: 'user' });
  } catch (failure) {
    if (!(failure instanceof CommanderError)) throw failure;
    return { kind: 'answered', status: failure.exitCode === 0 ? exitStatus.sound : exitStatus.unusable };
  }
  return asked;
}

function programFor(terminal: Terminal, onVerb: (name: VerbName, written: Written) => void): Command {
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
  for (const name of verbNames) addVerb(program, name, verbs[name], onVerb);
  program.addHelpText('after', `\n\`proofreel VERB --help\` explains a verb, with examples.\n\n${statusTable()}`);
  return program;
}

function addVerb(
  program: Command,
  name: VerbName,
  verb: Verb,
  onVerb: (name: VerbName, written: Written) => void,
): void {
  const command = program
    .command(name)
    .summary(verb.does)
    .description(`${verb.does.charAt(0).toUpperCase()}${verb.does.slice(1)}.`)
    .copyInheritedSettings(program)
    .usage(`${requiredWords(verb)} [options]`.trim())
    .configureOutput({ outputError: (text, write) => write(refusal(text, name)) });
  for (const { written, does } of Object.values(verb.takes)) command.argument(`<${written}>`, does);
  // Commander's own value of an option is ignored: its text goes to the reader of its record.
  const options = new Map<string, string>();
  for (const [key, { takes, letter, does }] of Object.entries(verb.options)) {
    const word = wordOf(key);
    const flags = [letter === undefined ? word : `-${letter}, ${word}`, takes].filter((part) => part !== undefined);
    command.option(flags.join(' '), does);
    command.on(`option:${word.slice(2)}`, (text: string | null) => void options.set(key, text ?? ''));
  }
  command.addHelpText('after', `\nExamples:\n${verb.examples.map((example) => `  ${example}`).join('\n')}`);
  command.action(() => onVerb(name, { words: command.args, options }));
}

/** The verb's required words, from its usage line. */
function requiredWords({ usage }: Verb): string {
  return usage.replace(/\s*\[.*\]$/, '');
}

/** Commander's message for a refused call, with a pointer to the help. */
function refusal(text: string, name?: VerbName): string {
  const said = text.trimEnd().replace(/^error: /, 'proofreel: ');
  const verb: Verb | undefined = name === undefined ? undefined : verbs[name];
  const renamed = renamedWord(said, verb);
  if (renamed !== undefined) return `proofreel: ${renamed}\n`;
  const missing = /missing required argument '(\S+?)'/.exec(said)?.[1];
  if (missing !== undefined && verb !== undefined)
    return `proofreel: ${name} needs ${missing}: proofreel ${name} ${requiredWords(verb)}\n`;
  if (said.includes('(Did you mean')) return `${said}\n`;
  return `${said.replace(/\.$/, '')}; \`proofreel ${name === undefined ? '' : `${name} `}--help\` lists what exists\n`;
}

/** A word of an earlier version, and its current form. */
function renamedWord(said: string, verb: Verb | undefined): string | undefined {
  const option = /unknown option '--([\w-]+)/.exec(said)?.[1];
  const key = Object.entries(verb?.renamed ?? {}).find(([old]) => old === option)?.[1];
  if (key !== undefined) return `--${option} is now ${wordOf(key)}`;
  const word = /unknown command '([\w-]+)/.exec(said)?.[1];
  const now = word === undefined ? undefined : renamedVerbs.get(word);
  return now === undefined ? undefined : `${word} is now ${now}`;
}

function statusTable(): string {
  const lines = Object.entries(statusMeanings).map(([status, means]) => `  ${status.padStart(3)}  ${means}`);
  return `Exit status:\n${lines.join('\n')}`;
}

function versionOf(): string {
  const text = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
  return String((JSON.parse(text) as { version: unknown }).version);
}
