/** Wrong use of the command line: reported on stderr, exit 2. */
export class UsageError extends Error {}

/** A wrong input: file, place in it, reason; reported in one line on stderr, exit 1. */
export class InputError extends Error {}

/** What one command answers: text for stdout, in pieces so that a long answer is not held whole. */
export type Answer = Iterable<string>;

/** The same from work that waits for the disk or can be called off. */
export type SlowAnswer = AsyncIterable<string>;

/** A command of the program: its name, how it is written, what it does in a sentence, and the work. */
export interface Command {
  readonly name: string;
  readonly usage: string;
  readonly about: string;
  run(args: readonly string[]): Answer | SlowAnswer;
}
