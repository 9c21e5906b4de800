import { onlyFile, takeArguments } from './arguments.ts';
import { readLayoutFile } from './layout-file.ts';
import type { Answer, Command } from './usage.ts';

function* answer(file: string): Answer {
  const { name, version } = readLayoutFile(file);
  yield `${JSON.stringify({ format: 'toeboard-check', version: 1, layout: name, layoutVersion: version, valid: true })}\n`;
}

export const check: Command = {
  name: 'check',
  usage: 'check LAYOUT.json',
  about: 'Reads a layout and says whether it is one; solves nothing.',
  run: (args) => answer(onlyFile(takeArguments(args, { values: [], flags: [] }))),
};
