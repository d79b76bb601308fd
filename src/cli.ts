#!/usr/bin/env node
/**
 * The program: connects the command line to this process, its streams and its exit status, and nothing else.
 */
import { closeSync } from 'node:fs';
import { isatty } from 'node:tty';
import { main } from './commands/main.ts';
import { processTerminal } from './commands/terminal.ts';
import { exitStatus } from './verbs/exit-status.ts';

// A reader that stops reading (`| head`) is not an error.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(exitStatus.sound);
  if (error.code !== 'EIO') throw error;
});
// A closed terminal closes its streams; unfinished work must still be cleaned up.
process.stderr.on('error', () => undefined);
// At exit, Node restores the original mode of terminals, and aborts (status 134) if one of them no longer exists; it
// ignores closed streams. So that the status stays ours, every stream that is no longer a terminal is closed first.
const terminals = [0, 1, 2].filter((stream) => isatty(stream));
process.on('exit', () => {
  for (const stream of terminals) if (!isatty(stream)) closeSync(stream);
});
process.exitCode = await main(process.argv.slice(2), processTerminal());
