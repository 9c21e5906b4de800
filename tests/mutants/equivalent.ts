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
const LENGTHS = 'shared-math/units/lengths.ts';

export const EQUIVALENT: readonly Equivalent[] = [
  {
    file: LENGTHS,
    is: 'denominator !== undefined',
    becomes: 'true',
    why: 'Number(undefined) is NaN, which is not 0 either',
  },
  { file: LENGTHS, is: 'inches < 0', becomes: 'inches <= 0', why: 'at 0 there are no parts, and no sign' },
  { file: LENGTHS, is: 'mm < 0', becomes: 'mm <= 0', why: 'at 0 there are no inches, and no sign' },
];
