/**
 * The text of a file that a call names, or what is wrong with the file.
 */
import { existsSync, readFileSync, statSync } from 'node:fs';
import { otherThanFile } from '../output/machine/file-kind.ts';
import { UsageError } from '../verbs/usage-error.ts';

/**
 * The file's text. `kind` is what it should be, for messages: "scene file".
 * @throws UsageError if there is none, if it is a folder, cannot be opened, or is not UTF-8 text
 */
export function readText(path: string, kind: string): string {
  if (!existsSync(path)) throw new UsageError(`there is no ${kind} ${path}`);
  if (statSync(path).isDirectory()) throw new UsageError(`${path} is a folder; name a ${kind}`);
  return textOf(bytesOf(path), path, kind);
}

/**
 * The same for a file that a scene names, which may come from a stranger: a device or a pipe is not read.
 * @throws UsageError as `readText`, and where the path leads to anything but a file
 */
export function readTextBeside(path: string, kind: string): string {
  const other = existsSync(path) ? otherThanFile(path) : undefined;
  if (other !== undefined) throw new UsageError(`${path} is ${other}; name a ${kind}`);
  return readText(path, kind);
}

function bytesOf(path: string): Uint8Array {
  try {
    return readFileSync(path);
  } catch (failure) {
    const denied = ['EACCES', 'EPERM'].includes((failure as NodeJS.ErrnoException).code ?? '');
    throw denied
      ? new UsageError(`${path} cannot be read: permission denied; ask for permission, or copy it`)
      : failure;
  }
}

/** A byte order mark is kept, as when Node decodes: offsets in the text count it. */
function textOf(bytes: Uint8Array, path: string, kind: string): string {
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff))
    throw new UsageError(`${path} is written in UTF-16; save it as UTF-8`);
  try {
    const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
    if (!text.includes('\0')) return text;
  } catch {
    // Reported below, as for a file with zero bytes.
  }
  throw new UsageError(`${path} is not UTF-8 text; a ${kind} is plain text`);
}
