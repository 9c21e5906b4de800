import { runCommand } from './commands/run.ts';

/**
 * `npm run -s toeboard -- COMMAND …`: arguments in; the answer on stdout, or one line on stderr.
 * Exit 0 answered, 1 the input is wrong, 2 wrong usage.
 */

// A reader that has seen enough (as `head` has) is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

process.exitCode = await runCommand(process.argv.slice(2), {
  out: (text) => new Promise((taken) => process.stdout.write(text, () => taken())),
  err: (text) => process.stderr.write(text),
});
