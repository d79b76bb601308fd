/**
 * Control-C and SIGTERM as an abort signal, so that a render can clean up before the process ends.
 */

export interface Interrupt {
  readonly signal: AbortSignal;
  /** Restores the usual effect of the signals. */
  release(): void;
}

/** From now on SIGINT, SIGTERM and SIGHUP abort; a second one ends the process as usual. */
export function listenForInterrupt(): Interrupt {
  const controller = new AbortController();
  const release = (): void => {
    for (const name of names) process.off(name, onSignal);
  };
  const onSignal = (name: NodeJS.Signals): void => {
    release();
    controller.abort(new Error(`interrupted (${name})`));
  };
  for (const name of names) process.on(name, onSignal);
  return { signal: controller.signal, release };
}

const names = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;
