/**
 * A call that cannot be carried out as written: a missing file, an option that does not fit.
 * Its message is one plain sentence; the command line prints it and exits with status 2.
 */
export class UsageError extends Error {
  constructor(sentence: string) {
    super(sentence);
    this.name = 'UsageError';
  }
}
