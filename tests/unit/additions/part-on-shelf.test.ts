import { beforeAll, describe, expect, test, vi } from 'vitest';
import { z } from 'zod';
import type { PartKind, ShelfColumn, Shelved, Wanted } from '../../../shared-math/shelf/index.ts';
import { useFreshModules } from '../../support/fresh-modules.ts';

// A figure of a part is its field and one line of the columns. Dummies of it show up in the table file, the form and the
// refusals. Of a kind of part its names, line and match are asked for by the compiler (tests/types/forgotten-piece.test.ts).

/** A bearing that says how heavy it is, N. */
const column: ShelfColumn = {
  title: 'weight of the dummy',
  path: 'weight',
  holds: 'number',
  kinds: ['support'],
  optional: true,
};

type Modules = {
  shelf: typeof import('../../../shared-math/shelf/index.ts');
  csv: typeof import('../../../src-main/files/shelf-csv.ts');
  fields: typeof import('../../../src-renderer/panels/shelf/shelf-fields.ts');
  contract: typeof import('../../../src-main/api/contract.ts');
};
let the: Modules;

useFreshModules();
beforeAll(async () => {
  const schema = await import('../../../shared-math/shelf/part-schema.ts');
  // The field stands in the schema of supports before anyone reads it.
  const union = schema.shelfPartSchema as unknown as { options: z.ZodObject[] };
  const at = union.options.findIndex(({ shape }) => shape['kind']?.safeParse('support').success);
  const support = union.options[at] as z.ZodObject;
  const options = union.options.with(at, support.extend({ weight: z.number().positive().optional() }));
  vi.doMock('../../../shared-math/shelf/part-schema.ts', () => ({
    ...schema,
    shelfPartSchema: z.discriminatedUnion('kind', options as unknown as [z.ZodObject, z.ZodObject]),
  }));
  const { COLUMNS } = await import('../../../shared-math/shelf/columns.ts');
  (COLUMNS as ShelfColumn[]).push(column);
  the = {
    shelf: await import('../../../shared-math/shelf/index.ts'),
    csv: await import('../../../src-main/files/shelf-csv.ts'),
    fields: await import('../../../src-renderer/panels/shelf/shelf-fields.ts'),
    contract: await import('../../../src-main/api/contract.ts'),
  };
  return () => vi.doUnmock('../../../shared-math/shelf/part-schema.ts');
});

const bearing = { kind: 'support', name: 'Bearing', note: '', count: 2, bore: 19.05, weight: 3.5 } as const;

describe('a figure of a part added', () => {
  test('goes out with the table file and comes back', () => {
    const text = the.csv.shelfCsv([bearing as unknown as Shelved['part']], 'in');
    expect(text.split('\r\n')[0]).toContain('weight of the dummy');
    expect(the.csv.readShelfCsv(text)).toEqual({ ok: true, value: [bearing] });
  });

  test('a wrong one is refused by line and column, and so is one of a part that has none', () => {
    const refused = the.csv.readShelfCsv(
      'kind,name,bearing bore (mm),weight of the dummy\nsupport,B,19,-2\n',
    );
    expect(refused).toMatchObject({ ok: false });
    expect(refused.ok ? '' : refused.failure).toMatch(/line 2, column "weight of the dummy": must be/);
  });

  test('is asked by the form of its kind, and of no other', () => {
    expect(the.shelf.columnsOf('support')).toContain(column);
    expect(the.shelf.columnsOf('arm')).not.toContain(column);
    const draft = the.fields.withFigure(the.fields.blankDraft('support'), column, 4);
    expect(draft['weight']).toBe(4);
    expect(the.fields.readFigure(column, '4.5', { unit: 'in', fraction: 16 })).toEqual({
      ok: true,
      value: 4.5,
    });
    expect(the.shelf.checkPart({ ...draft, name: 'B', bore: 19 } as { kind: PartKind })).toMatchObject({
      ok: true,
    });
  });

  test('passes the contract of the API whole', () => {
    const { input } = the.contract.contract['shelf.add'];
    expect(input.parse({ part: bearing }).part).toEqual(bearing);
  });
});

test('every kind of part has its names, its line and its match', () => {
  const kinds = the.shelf.KIND_WORDS.map(([kind]) => kind);
  for (const kind of kinds) {
    expect(the.shelf.wordOf(kind)).not.toBe('');
    expect(the.shelf.columnsOf(kind).length, kind).toBeGreaterThan(4);
  }
  const part = { ...bearing } as unknown as Shelved['part'];
  expect(the.shelf.partWords(part, { unit: 'mm', fraction: 16 })).toBe('Bored 19.05 mm');
  expect(
    the.shelf.fittingParts({ kind: 'support', bore: 19.05 } as Wanted, [{ id: 'a', part }]),
  ).toHaveLength(1);
});
