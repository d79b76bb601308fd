/**
 * How far a render has come: counted here, and reported to a callback.
 */

export interface Progress {
  /** Frames passed to the encoder, or written. */
  readonly done: number;
  readonly total: number;
  /** Since the start. */
  readonly framesPerSecond: number;
  /** At the rate so far; undefined until there is one. */
  readonly secondsLeft: number | undefined;
  /** Of the frames done: those that were drawn, and those that equal the previous frame. */
  readonly drawn: number;
  readonly reused: number;
  /** Frames of the film that were kept from an earlier render. */
  readonly kept: number;
}

/** What a render will do, before it begins. */
export interface Work {
  readonly frames: number;
  /** Different pictures on them, for each different segment. */
  readonly pictures: number;
  /** Those not kept from an earlier render. */
  readonly toMake: number;
  /** Roughly how long these take. */
  readonly seconds: number;
}

export interface ProgressMeter {
  /** Before the first frame: how many pictures there are, how many have to be made, and roughly how long that takes. */
  announce(pictures: number, toMake: number, seconds: number): void;
  /** One more frame is done; `drawn` of all so far were drawn. */
  count(drawn: number): void;
  /** This many more frames are done, and this many more were drawn. */
  advance(frames: number, drawn: number): void;
  /**
   * This many frames need not be made, since they were kept from an earlier render; they are still counted when they
   * are done.
   */
  keep(frames: number): void;
  readonly done: number;
  readonly drawn: number;
  readonly kept: number;
}

/** `now`: milliseconds from any fixed time. */
export function progressMeter(
  total: number,
  report: ((progress: Progress) => void) | undefined,
  now: () => number = () => performance.now(),
  onStart?: (work: Work) => void,
): ProgressMeter {
  const start = now();
  let done = 0;
  let drawn = 0;
  let kept = 0;
  const advance = (frames: number, more: number): void => {
    done += frames;
    drawn += more;
    const seconds = (now() - start) / 1000;
    const framesPerSecond = seconds > 0 ? done / seconds : 0;
    const secondsLeft = framesPerSecond > 0 ? (total - done) / framesPerSecond : undefined;
    report?.({ done, total, framesPerSecond, secondsLeft, drawn, reused: done - drawn, kept });
  };
  return {
    announce: (pictures, toMake, seconds) => onStart?.({ frames: total, pictures, toMake, seconds }),
    count: (drawnSoFar) => advance(1, drawnSoFar - drawn),
    advance,
    keep(frames) {
      kept += frames;
    },
    get kept() {
      return kept;
    },
    get done() {
      return done;
    },
    get drawn() {
      return drawn;
    },
  };
}
