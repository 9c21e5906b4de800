import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openStore } from '../../../src-main/store/index.ts';
import { MIGRATIONS } from '../../../src-main/store/migrations/index.ts';
import { readShop } from '../../../src-main/store/shop-file/read-shop.ts';
import { writeShop } from '../../../src-main/store/shop-file/write-shop.ts';
import { testFolder } from '../../support/host-folder.ts';
import { testStore, withVariant } from '../../support/store-sample.ts';

test('a sheet is counted where its content differs from the last that went out, and only then', () => {
  const store = testStore();
  const { variants } = store;
  const id = withVariant(store);
  expect(variants.sheetRevision(id, 'aaaa')).toBe(1);
  // Asking counts nothing.
  expect(variants.sheetRevision(id, 'bbbb')).toBe(1);
  variants.sheetWentOut(id, 'aaaa');
  expect(variants.sheetRevision(id, 'aaaa')).toBe(1);
  expect(variants.sheetRevision(id, 'bbbb')).toBe(2);
  variants.sheetWentOut(id, 'aaaa');
  expect(variants.sheetRevision(id, 'bbbb')).toBe(2);
  variants.sheetWentOut(id, 'bbbb');
  // Back to what it was before the last: paper with another content is out, so it is a new one.
  expect(variants.sheetRevision(id, 'aaaa')).toBe(3);
});

test('each variant has a count of its own, which a save, a copy and the bin leave alone', () => {
  const store = testStore();
  const { variants } = store;
  const id = withVariant(store);
  variants.sheetWentOut(id, 'aaaa');
  const { document, revision } = variants.open(id);
  variants.save({
    id,
    document: { ...document, notes: 'x' },
    revision,
    force: false,
    step: 'a',
    label: 'Noted',
  });
  expect(variants.sheetRevision(id, 'aaaa')).toBe(1);
  expect(variants.sheetRevision(variants.duplicate(id), 'aaaa')).toBe(1);
  expect(variants.sheetRevision(variants.duplicate(id), 'other')).toBe(1);
  store.bin.put('variant', id);
  expect(variants.sheetRevision(id, 'other')).toBe(2);
});

async function* pieces(whole: Iterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  yield* whole;
}

test.each([
  ['counted', 3],
  ['never counted', 1],
] as const)('the file of the whole shop takes the count along: %s', async (how, version) => {
  const folder = testFolder();
  const store = openStore({ folder });
  const id = withVariant(store);
  if (how === 'counted') {
    store.variants.sheetWentOut(id, 'aaaa');
    store.variants.sheetWentOut(id, 'bbbb');
  }
  store.close();
  const file = [...writeShop(join(folder, 'toeboard.sqlite'), { history: 'all', made: 0 })];
  expect(JSON.parse(String(file[0])).version).toBe(version);
  const other = testFolder();
  await readShop(
    pieces(file),
    join(other, 'toeboard.sqlite'),
    MIGRATIONS,
    () => ({ ok: false, failure: '' }),
    0,
  );
  const again = openStore({ folder: other });
  try {
    expect(again.variants.sheetRevision(id, 'bbbb')).toBe(how === 'counted' ? 2 : 1);
    expect(again.variants.sheetRevision(id, 'cccc')).toBe(how === 'counted' ? 3 : 1);
  } finally {
    again.close();
  }
});
