/**
 * Writing a file from beginning to end, in large pieces.
 */
import { open } from 'node:fs/promises';

const pieceBytes = 1 << 20;

/** Writes the parts one after the other into `file`, replacing what exists. */
export async function writeStream(
  file: string,
  parts: Iterable<Uint8Array>,
  signal: AbortSignal | undefined,
): Promise<void> {
  const handle = await open(file, 'w');
  try {
    let waiting: Uint8Array[] = [];
    let bytes = 0;
    const flush = async (): Promise<void> => {
      signal?.throwIfAborted();
      // `writev` may write only a part; `writeFile` on a handle continues where the last one ended.
      if (bytes > 0) await handle.writeFile(waiting.length === 1 ? waiting[0]! : Buffer.concat(waiting));
      waiting = [];
      bytes = 0;
    };
    for (const part of parts) {
      waiting.push(part);
      bytes += part.length;
      if (bytes >= pieceBytes) await flush();
    }
    await flush();
  } finally {
    await handle.close();
  }
}
