/**
 * A call that cannot be carried out as it stands: a missing file, an option that does not fit. Its message is one
 * plain sentence; the command line prints it and exits with 2.
 */
export class BadCall extends Error {
  constructor(sentence: string) {
    super(sentence);
    this.name = 'BadCall';
  }
}
