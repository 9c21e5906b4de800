import { oneLine, quoted } from '../shared-math/outside/index.ts';
import { asksForHelp, COMMANDS, type Command, InputError, UsageError } from './commands/index.ts';

/**
 * `npm run -s toeboard -- COMMAND …`: arguments in; the answer on stdout, or one line on stderr.
 * Exit 0 answered, 1 the input is wrong, 2 wrong usage.
 */

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

/** Writes and waits for a slow reader, so that a long answer does not pile up in memory. */
function write(text: string): Promise<void> {
  return new Promise((resolve) => {
    process.stdout.write(text, () => resolve());
  });
}

async function main(args: readonly string[]): Promise<number> {
  const [name, ...rest] = args;
  if (name === '--help' || name === '-h' || name === 'help') {
    await write(help());
    return 0;
  }
  const command = COMMANDS.find((entry) => entry.name === name);
  try {
    if (!command)
      throw new UsageError(
        `${name === undefined ? 'a command is missing' : `unknown command ${quoted(name)}`}; there are ${COMMANDS.map((entry) => entry.name).join(', ')}`,
      );
    if (asksForHelp(rest)) {
      await write(helpOn(command));
      return 0;
    }
    for await (const piece of command.run(rest)) await write(piece);
    return 0;
  } catch (error) {
    if (error instanceof UsageError) {
      process.stderr.write(`${oneLine(error.message)}\n${command ? `usage: ${command.usage}\n` : ''}`);
      return 2;
    }
    if (error instanceof InputError) {
      process.stderr.write(`${oneLine(error.message)}\n`);
      return 1;
    }
    throw error;
  }
}

// A reader that has seen enough (as `head` has) is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

process.exitCode = await main(process.argv.slice(2));
