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

const VERDICT = 'shared-math/words/verdict-words.ts';
const TURN_WORDS = 'shared-math/words/turn-words.ts';
const LINKING = 'shared-math/linkage/solve-front-end.ts';
const LENGTHS = 'shared-math/units/lengths.ts';

/** Kept short: a long list would say that the tests are weak. A run names the entries that no longer hold. */
export const EQUIVALENT: readonly Equivalent[] = [
  {
    file: LENGTHS,
    is: 'denominator !== undefined',
    becomes: 'true',
    why: 'Number(undefined) is NaN, which is not 0 either',
  },
  { file: LENGTHS, is: 'inches < 0', becomes: 'inches <= 0', why: 'at 0 there are no parts, and no sign' },
  { file: LENGTHS, is: 'mm < 0', becomes: 'mm <= 0', why: 'at 0 there are no inches, and no sign' },
  {
    file: VERDICT,
    is: 'pose.heave > 0',
    becomes: 'pose.heave >= 0',
    why: 'asked only where it is off 0',
  },
  { file: VERDICT, is: 'pose.roll > 0', becomes: 'pose.roll >= 0', why: 'asked only where it is off 0' },
  {
    file: VERDICT,
    is: 'pose.handwheel > 0',
    becomes: 'pose.handwheel >= 0',
    why: 'asked only where it is off 0',
  },
  {
    file: TURN_WORDS,
    is: 'degrees > 0',
    becomes: 'degrees >= 0',
    times: 2,
    why: 'asked only where it is off 0',
  },
  {
    file: LINKING,
    is: 'right === left',
    becomes: 'false',
    why: 'two rotations of one angle are alike whether copied or written again',
  },
  {
    file: LINKING,
    is: '{ steer: 0.5, toeIn: 0.5, camber: 0.5, caster: 0.5, kingpinInclination: 0.5, wheelRise: 0.5 }',
    becomes: '{}',
    why: 'what an unsolved state holds means nothing; the numbers are there for speed',
  },
  {
    file: LINKING,
    is: '{ x: 0.5, y: 0.5, pitch: 0.5, yaw: 0.5, twist: 0.5 }',
    becomes: '{}',
    why: 'what an unsolved state holds means nothing; the numbers are there for speed',
  },
];
