#!/usr/bin/env node
/**
 * The program: connects the command line to this process, its streams and its exit status, and nothing else.
 */
import { closeSync } from 'node:fs';
import { isatty } from 'node:tty';
import { main } from './commands/main.ts';
import { processTerminal } from './commands/terminal.ts';
import { exitStatus } from './verbs/exit-status.ts';

// A reader that stops reading (`| head`) is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(exitStatus.sound);
  if (error.code !== 'EIO') throw error;
});
// A terminal that is closed takes its streams with it; what is under way must be taken back all the same.
process.stderr.on('error', () => undefined);
// At its end Node puts terminals back into their first mode, and aborts (status 134) where one of them has gone; of what
// is closed it lets go. So that the status is still ours, whatever is no terminal any more is closed first.
const terminals = [0, 1, 2].filter((stream) => isatty(stream));
process.on('exit', () => {
  for (const stream of terminals) if (!isatty(stream)) closeSync(stream);
});
process.exitCode = await main(process.argv.slice(2), processTerminal());
