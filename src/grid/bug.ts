/**
 * A broken program, not a broken scene: an invariant that the code relies on does not hold.
 * Thrown anywhere, caught once, at the command line.
 */
export class Bug extends Error {
  constructor(invariant: string) {
    super(invariant);
    this.name = 'Bug';
  }
}
