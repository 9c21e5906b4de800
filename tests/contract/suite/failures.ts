import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { expect, test } from 'vitest';
import { LAYOUT_VERSION } from '../../../shared-math/layout/index.ts';
import { DATABASE_FILE } from '../../../src-main/store/index.ts';
import { sampleLayout } from '../../support/host-sample.ts';
import { begin, drawer, labels, type OpenSession } from '../../support/host-session.ts';
import { failure, value } from '../../support/host-transports.ts';

/** Runs SQL on a host's database from outside, as a hostile neighbour would. */
function meddle(dataFolder: string, sql: string): void {
  const db = new BetterSqlite3(join(dataFolder, DATABASE_FILE));
  db.exec(sql);
  db.close();
}

export function failureTests(open: OpenSession): void {
  test('a request that is not in the contract is refused with its place, in one line', async () => {
    const { call } = await open();
    const { id } = await begin(call);
    const layout = sampleLayout();
    const nan = { ...layout, car: { ...layout.car, wheelbase: Number.NaN } };
    const cases: readonly (readonly [name: string, input: unknown, reason: RegExp])[] = [
      ['nothing.known', {}, /^there is no call "nothing\.known"$/],
      ['toString', {}, /^there is no call "toString"$/],
      ['customer.add', {}, /^customer\.add: name: missing; expected text$/],
      ['customer.add', { name: '   ' }, /^customer\.add: name: must not be empty$/],
      ['customer.add', { name: 'x'.repeat(201) }, /^customer\.add: name: longer than 200 characters$/],
      ['customer.add', { name: 'x', extra: 1 }, /^customer\.add: unknown key "extra"$/],
      ['customer.add', null, /^customer\.add: expected an object \{ \}, found null$/],
      ['settings.set', { fraction: 7 }, /^settings\.set: fraction: expected 0 or 16 or 32 or 64, found 7$/],
      ['variant.open', { id: "' OR 1=1" }, /^variant\.open: id: /],
      ['variant.save', { id, document: nan }, /^variant\.save: document\.car\.wheelbase: expected a number/],
      ['bin.put', { kind: 'history', id }, /^bin\.put: kind: expected "customer" or "car" or "variant"/],
    ];
    for (const [name, input, reason] of cases) {
      const told = await failure(call, name as 'customer.add', input);
      expect(told).toMatch(/^bad-request: [^\n]+$/);
      expect(told.replace('bad-request: ', '')).toMatch(reason);
    }
  });

  test('what does not exist is said so', async () => {
    const { call } = await open();
    const id = crypto.randomUUID();
    await begin(call);
    for (const [name, input] of [
      ['customer.change', { id, name: 'x' }],
      ['car.add', { customerId: id, name: 'x' }],
      ['car.change', { id, name: 'x' }],
      ['car.duplicate', { id }],
      ['variant.open', { id }],
      ['variant.rename', { id, name: 'x' }],
      ['variant.duplicate', { id }],
      ['variant.save', { id, document: sampleLayout(), revision: 1, step: 's', label: '' }],
      ['bin.put', { kind: 'customer', id }],
      ['file.exportCar', { id }],
      ['file.import', { text: JSON.stringify(sampleLayout()), fileName: 'x.json', carId: id }],
    ] as const)
      expect(await failure(call, name, input)).toMatch(/^not-found: [^\n]+$/);
  });

  test('a database that refuses the work loses nothing and takes the save afterwards', async () => {
    const { call, dataFolder } = await open();
    const { id } = await begin(call);
    const save = { id, document: sampleLayout('Arm down', 300), revision: 1, step: 's', label: 'Drag' };
    meddle(
      dataFolder,
      `CREATE TRIGGER refusing BEFORE INSERT ON history BEGIN SELECT RAISE(ABORT, 'no'); END`,
    );
    expect(await failure(call, 'variant.save', save)).toBe('storage-failed: the database refused the work');
    // The variant's row had been written when the history refused: both were taken back.
    expect(await value(call, 'variant.open', { id })).toMatchObject({
      document: sampleLayout(),
      revision: 1,
    });
    expect(await labels(call, id)).toEqual(['Created']);
    meddle(dataFolder, 'DROP TRIGGER refusing');
    expect((await value(call, 'variant.save', save)).revision).toBe(2);
  });

  test('a stored document that cannot be read is named and not repaired in silence', async () => {
    const { call, dataFolder } = await open();
    const { id } = await begin(call);
    meddle(
      dataFolder,
      `UPDATE variant SET document = replace(document, '"version":${LAYOUT_VERSION}', '"version":99')`,
    );
    expect(await failure(call, 'variant.open', { id })).toMatch(
      /^refused-document: Arm down: version: this document is version 99, newer than this program reads/,
    );
    meddle(dataFolder, `UPDATE variant SET document = 'torn {'`);
    expect(await failure(call, 'variant.open', { id })).toBe(
      'refused-document: Arm down: the stored document is damaged',
    );
    expect(await drawer(call)).toHaveLength(3);
  });

  test('a name as long as names may be, with signs that turn the writing, stands short and plain in every refusal', async () => {
    const { call, dataFolder } = await open();
    const { carId } = await begin(call);
    const name = `\u202Edesrever\u001B[31m ${'n'.repeat(180)}`;
    const { id } = await value(call, 'variant.add', { carId, document: { ...sampleLayout(), name } });
    const save = { id, document: { ...sampleLayout(), name }, revision: 1, step: 's', label: 'Drag' };
    await value(call, 'variant.save', save);
    const told = [await failure(call, 'variant.save', { ...save, step: 't' })];
    meddle(dataFolder, `UPDATE variant SET document = 'torn {'`);
    told.push(await failure(call, 'variant.open', { id }));
    for (const sentence of told)
      expect(sentence).toMatch(
        /^[a-z-]+: desrever \[31m n{20,50}… ?[\w: ]+$|^[a-z-]+: desrever \[31m n{20,50}…: [\w ]+$/,
      );
  });

  test("the program's own mistakes are named as such and leak nothing", async () => {
    const { call, dataFolder } = await open();
    const { id } = await begin(call);
    // No save ever counted so far.
    meddle(dataFolder, 'UPDATE variant SET revision = 9000000000000000000');
    expect(await failure(call, 'variant.open', { id })).toBe(
      'internal: Toeboard made a mistake of its own in variant.open',
    );
  });
}
