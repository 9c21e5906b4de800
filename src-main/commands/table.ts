import { NUMBERS, type Numbers, TABLE_NAMES, type TableName } from '../output/tables/names.ts';
import { choice, onlyFile, takeArguments } from './arguments.ts';
import { readLayoutFile } from './layout-file.ts';
import type { Command, SlowAnswer } from './usage.ts';

async function* answer(file: string, name: TableName, numbers: Numbers): SlowAnswer {
  const document = readLayoutFile(file);
  // Loaded here, so that no other command waits for it.
  const { forSpreadsheet, TABLES } = await import('../output/tables/index.ts');
  const { of, columns } = TABLES[name];
  const plain = of(document);
  yield* numbers === 'data' ? plain : forSpreadsheet(plain, columns, numbers);
}

export const table: Command = {
  name: 'table',
  usage: `table LAYOUT.json [--of ${TABLE_NAMES.join('|')}] [--numbers ${NUMBERS.join('|')}]`,
  about:
    'Prints a table of a layout as CSV: every digit, or for a spreadsheet with units in its heads and a decimal point or comma.',
  run(args) {
    const taken = takeArguments(args, { values: ['of', 'numbers'], flags: [] });
    return answer(onlyFile(taken), choice(taken, 'of', TABLE_NAMES), choice(taken, 'numbers', NUMBERS));
  },
};
