import { contradictionsIn } from '../../shared-math/findings/index.ts';
import {
  groundGaps,
  hardpoints,
  isOtherOfPair,
  type LayoutDocument,
  originCounts,
  originOf,
  resolveLayout,
} from '../../shared-math/layout/index.ts';
import { onlyFile, takeArguments } from './arguments.ts';
import { readLayoutFile } from './layout-file.ts';
import type { Answer, Command } from './usage.ts';

/** What contradicts itself in a layout that is one: reported in mm, without anything being solved. */
function contradictions(document: LayoutDocument): string[] {
  return contradictionsIn(resolveLayout(document), { unit: 'mm', fraction: 16 }).map(
    ({ sentence }) => sentence,
  );
}

/** The points that nobody measured, traced or planned: what is worked out rests on guesses there. */
function guessed(document: LayoutDocument): string[] {
  return hardpoints(document)
    .filter((point) => !isOtherOfPair(point) && originOf(document, point) === 'guess')
    .map(({ id }) => id);
}

function* answer(file: string): Answer {
  const document = readLayoutFile(file);
  const { name, version } = document;
  const { left, right } = groundGaps(document);
  yield `${JSON.stringify({
    format: 'toeboard-check',
    version: 1,
    layout: name,
    layoutVersion: version,
    valid: true,
    tyresIntoGround: { left, right },
    stops: contradictions(document),
    points: originCounts(document),
    guessed: guessed(document),
  })}\n`;
}

export const check: Command = {
  name: 'check',
  usage: 'check LAYOUT.json',
  about: 'Reads a layout and says whether it is one, and what in it contradicts itself; solves nothing.',
  run: (args) => answer(onlyFile(takeArguments(args, { values: [], flags: [] }))),
};
