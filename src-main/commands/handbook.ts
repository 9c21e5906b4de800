import { quoted } from '../../shared-math/outside/index.ts';
import { handbookPicture } from '../files/index.ts';
import { PAPER_NAMES, type Paper } from '../output/pens/papers.ts';
import { choice, takeArguments } from './arguments.ts';
import { calledOffByHand, writeOut } from './out-file.ts';
import { type Command, type SlowAnswer, UsageError } from './usage.ts';

async function* answer(out: string, paper: Paper): SlowAnswer {
  const { printHandbook } = await import('../output/pages/handbook/handbook.ts');
  const bytes = await calledOffByHand(async (signal) => {
    const whole = await printHandbook({ paper, picture: handbookPicture, date: new Date() });
    signal.throwIfAborted();
    await writeOut(out, whole);
    return whole.length;
  });
  yield `${JSON.stringify({ format: 'toeboard-handbook', version: 1, paper, file: out, bytes })}\n`;
}

export const handbook: Command = {
  name: 'handbook',
  usage: 'handbook --out FILE.pdf [--paper letter|a4]',
  about:
    'Prints the handbook as a PDF: six short walks with pictures of the board, and all words with their sketches.',
  run(args) {
    const taken = takeArguments(args, { values: ['out', 'paper'], flags: [] });
    const [extra] = taken.words;
    if (extra !== undefined) throw new UsageError(`handbook takes no file: remove ${quoted(extra)}`);
    const out = taken.values.get('out');
    if (!out) throw new UsageError('--out needs the PDF to write');
    return answer(out, choice(taken, 'paper', PAPER_NAMES));
  },
};
