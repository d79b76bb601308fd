/** The part of logic-solver 2.0.1 that the tests use. */
declare module 'logic-solver' {
  type Term = string | Formula;
  interface Formula {
    readonly type: string;
  }
  interface Solution {
    getTrueVars(): string[];
    getMap(): Record<string, boolean>;
  }
  class Solver {
    require(...terms: Term[]): void;
    forbid(...terms: Term[]): void;
    solve(): Solution | null;
    solveAssuming(term: Term): Solution | null;
  }
  const Logic: {
    readonly Solver: typeof Solver;
    readonly TRUE: string;
    readonly FALSE: string;
    or(...terms: Term[]): Term;
    and(...terms: Term[]): Term;
    not(term: Term): Term;
    implies(a: Term, b: Term): Term;
    exactlyOne(...terms: Term[]): Term;
    atMostOne(...terms: Term[]): Term;
  };
  export default Logic;
}
