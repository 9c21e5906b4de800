import { beforeAll, describe, expect, test } from 'vitest';
import type { Print } from '../../../src-main/output/pages/index.ts';
import type { PrintKind } from '../../../src-main/output/pages/job.ts';
import type { Table, TableName } from '../../../src-main/output/tables/index.ts';
import type { DataKind, GoingOut } from '../../../src-renderer/places/sheet/sheet-words.ts';
import { useFreshModules } from '../../support/fresh-modules.ts';
import { demonstration } from '../../support/printed.ts';

// What leaves the board is a name, a line in its record and its words on the page; the compiler asks for the last two
// (tests/types/forgotten-piece.test.ts). Dummies in those places are taken by the contract, made, named and offered.

const PRINT = 'label' as PrintKind;
const TABLE = 'links' as TableName;

const print: Print = {
  words: 'Label of the dummy',
  pages: ({ document }) => [
    [
      'label',
      (pageFrame) => {
        const { x, y } = pageFrame.open({ title: 'Label', lying: false });
        const style = { face: 'regular', size: 9, colour: '#000000' } as const;
        pageFrame.pen.text(document.name, x, y + 5, style);
      },
    ],
  ],
};
const table: Table = {
  words: 'Links of the dummy',
  columns: [],
  *of(document) {
    yield 'layout,ratio\n';
    yield `${document.name},${document.steering.box.ratio}\n`;
  },
};

type Modules = {
  contract: typeof import('../../../src-main/api/contract.ts');
  jobs: typeof import('../../../src-main/output/jobs/index.ts');
  make: typeof import('../../../src-main/output/jobs/make.ts');
  command: typeof import('../../../src-main/commands/sheet.ts');
  words: typeof import('../../../src-renderer/places/sheet/sheet-words.ts');
};
let the: Modules;

useFreshModules();
beforeAll(async () => {
  const { PRINT_KINDS } = await import('../../../src-main/output/pages/job.ts');
  const { TABLE_NAMES } = await import('../../../src-main/output/tables/names.ts');
  (PRINT_KINDS as unknown as PrintKind[]).push(PRINT);
  (TABLE_NAMES as unknown as TableName[]).push(TABLE);
  const { PRINTS } = await import('../../../src-main/output/pages/index.ts');
  const { TABLES } = await import('../../../src-main/output/tables/index.ts');
  (PRINTS as Record<PrintKind, Print>)[PRINT] = print;
  (TABLES as Record<TableName, Table>)[TABLE] = table;
  the = {
    contract: await import('../../../src-main/api/contract.ts'),
    jobs: await import('../../../src-main/output/jobs/index.ts'),
    make: await import('../../../src-main/output/jobs/make.ts'),
    command: await import('../../../src-main/commands/sheet.ts'),
    words: await import('../../../src-renderer/places/sheet/sheet-words.ts'),
  };
});

const document = demonstration('hairpins-side-steer.json');

/** What the host makes of a wish that came in by the contract. */
async function made(wish: Record<string, unknown>, preview: boolean) {
  const { input } = the.contract.contract['output.start'];
  const asked = input.parse({ id: crypto.randomUUID(), wish, unit: 'in', fraction: 16, preview });
  const source = { document, customer: 'Odile Farrowby', car: 'Roadster', date: new Date(0) };
  const { signal } = new AbortController();
  const { unit, fraction } = asked;
  return the.make.make(
    asked.wish as import('../../../src-main/output/jobs/index.ts').OutputRequest,
    { ...source, unit, fraction, preview },
    { signal, progress: () => {} },
  );
}
const textOf = (parts: readonly Uint8Array[]) =>
  parts.map((part) => Buffer.from(part).toString('utf8')).join('');

describe('a print added', () => {
  test('is taken by the contract and made: a file named after it, or its pages to look at', async () => {
    const file = await made({ kind: 'print', print: PRINT, paper: 'a4' }, false);
    expect(file.fileName).toBe(`Roadster - ${document.name} - Label of the dummy.pdf`);
    expect(textOf(file.parts).slice(0, 5)).toBe('%PDF-');
    const preview = await made({ kind: 'print', print: PRINT, paper: 'a4' }, true);
    expect(preview.parts).toHaveLength(1);
    expect(textOf(preview.parts)).toContain('Label of the dummy, page 1');
  });

  test('is a kind of the command line, in its help too', () => {
    expect(the.command.sheet.usage).toContain(`|${PRINT}|`);
  });
});

describe('a table added', () => {
  test('is taken by the contract and made: a file named after it, or its first lines to look at', async () => {
    const file = await made({ kind: 'table', table: TABLE }, false);
    expect(file.fileName).toBe(`Roadster - ${document.name} - Links of the dummy.csv`);
    expect(textOf(file.parts)).toBe(
      `\uFEFFlayout,ratio\r\n${document.name},${document.steering.box.ratio}\r\n`,
    );
    expect(textOf((await made({ kind: 'table', table: TABLE }, true)).parts)).toContain('layout,ratio\n');
  });
});

test('a name that nobody added is refused', async () => {
  await expect(made({ kind: 'table', table: 'lunks' }, false)).rejects.toThrow();
  await expect(made({ kind: 'print', print: 'lobel', paper: 'a4' }, false)).rejects.toThrow();
});

describe('the words on the page', () => {
  test('hold every print and table of the contract, whose names the page asks the host by', async () => {
    const { GOING_OUT, DATA, DATA_CHOICES } = the.words;
    const { PRINT_KINDS } = await import('../../../src-main/output/pages/job.ts');
    const { TABLE_NAMES } = await import('../../../src-main/output/tables/names.ts');
    const added = (name: string) => name === PRINT || name === TABLE;
    expect(PRINT_KINDS.filter((kind) => !added(kind) && !GOING_OUT[kind as GoingOut])).toEqual([]);
    expect(TABLE_NAMES.filter((name) => !added(name) && !DATA[name as DataKind])).toEqual([]);
    expect(DATA_CHOICES.map(([kind]) => kind)).toEqual(Object.keys(DATA));
  });
});
