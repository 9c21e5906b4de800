/** A mutant that no test can notice, because the program does the same with it. */
export interface Equivalent {
  readonly file: string;
  /** The mutated stretch, as it stands and as the mutant has it; white space does not count. */
  readonly is: string;
  readonly becomes: string;
  /** How many of these there are in the file; 1 if absent. */
  readonly times?: number;
  readonly why: string;
}

/** Kept short: a long list would say that the tests are weak. A run fails where an entry no longer holds. */
export const EQUIVALENT: readonly Equivalent[] = [];
