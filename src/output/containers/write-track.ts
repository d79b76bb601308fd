/**
 * A file with one picture track, in any container.
 */
import { Bug } from '../../grid/bug.ts';
import { writeMov } from './mov.ts';
import type { Container, Holders, Track } from './track.ts';
import { writeWebm } from './webm.ts';

/** Writes `file`, replacing what exists. `container` must be one of `holders`. */
export async function writeTrack(
  file: string,
  container: Container,
  holders: Holders,
  track: Track,
  signal: AbortSignal | undefined,
): Promise<void> {
  const absent = new Bug(`a .${container} holds these pictures`);
  switch (container) {
    case 'mp4':
    case 'mov': {
      const entry = holders[container];
      if (entry === undefined) throw absent;
      return writeMov(file, track, entry, container, signal);
    }
    case 'webm':
      if (holders.webm === undefined) throw absent;
      return writeWebm(file, track, holders.webm, signal);
    default:
      return container satisfies never;
  }
}
