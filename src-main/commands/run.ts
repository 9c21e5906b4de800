import { oneLine, quoted } from '../../shared-math/outside/index.ts';
import { asksForHelp } from './arguments.ts';
import { COMMANDS } from './index.ts';
import { type Command, InputError, UsageError } from './usage.ts';

/** Where an answer goes: the program's own two streams, or a reader in the same process. */
export interface Streams {
  /** Takes a piece of the answer; resolves when a slow reader has taken it, so that a long one does not pile up. */
  readonly out: (text: string) => Promise<void>;
  readonly err: (text: string) => void;
}

const EXITS =
  'Exit: 0 answered, 1 the input is wrong, 2 wrong usage. Lengths are millimetres, angles degrees.';

function help(): string {
  const lines = COMMANDS.flatMap(({ usage, about }) => [`  ${usage}`, `      ${about}`]);
  return [
    'Usage: npm run -s toeboard -- COMMAND …',
    '',
    ...lines,
    '',
    'COMMAND --help shows one of them alone.',
    EXITS,
    '',
  ].join('\n');
}

function helpOn({ usage, about }: Command): string {
  return [`Usage: npm run -s toeboard -- ${usage}`, '', about, EXITS, ''].join('\n');
}

/**
 * Runs one command: its answer on `out`, or one line on `err`.
 *
 * @param args The words after the program's name, the command first.
 * @returns The exit code: 0 answered, 1 the input is wrong, 2 wrong usage. Rejects only on a fault of the program.
 */
export async function runCommand(args: readonly string[], { out, err }: Streams): Promise<number> {
  const [name, ...rest] = args;
  if (name === '--help' || name === '-h' || name === 'help') {
    await out(help());
    return 0;
  }
  const command = COMMANDS.find((entry) => entry.name === name);
  try {
    if (!command)
      throw new UsageError(
        `${name === undefined ? 'a command is missing' : `unknown command ${quoted(name)}`}; there are ${COMMANDS.map((entry) => entry.name).join(', ')}`,
      );
    if (asksForHelp(rest)) {
      await out(helpOn(command));
      return 0;
    }
    for await (const piece of command.run(rest)) await out(piece);
    return 0;
  } catch (error) {
    if (error instanceof UsageError) {
      err(`${oneLine(error.message)}\n${command ? `usage: ${command.usage}\n` : ''}`);
      return 2;
    }
    if (error instanceof InputError) {
      err(`${oneLine(error.message)}\n`);
      return 1;
    }
    throw error;
  }
}
