/**
 * A recording as the search for its board reads it.
 */

import type { Pictures } from '../../recording/locate-board.ts';
import { toNumber } from '../../scene/fraction.ts';
import { greyPictures } from './pictures.ts';
import type { Recording } from './recording.ts';

/** Of a single picture, or a file that does not say how long it is, the end is just after the last picture that was read. */
export function locatedPictures(recording: Recording, signal?: AbortSignal): Pictures {
  let last = 0;
  const noting = async function* (pictures: ReturnType<typeof greyPictures>) {
    for await (const shown of pictures) {
      last = Math.max(last, shown.seconds);
      yield shown;
    }
  };
  return {
    get end() {
      return recording.duration === undefined ? last : Math.max(last, toNumber(recording.duration));
    },
    sampled: (every) => noting(greyPictures(recording, recording.isStill ? {} : { every }, signal)),
    between: (from, until) => noting(greyPictures(recording, { from, until }, signal)),
  };
}
