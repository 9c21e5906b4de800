import { existsSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import type { LayoutMigration } from '../../../shared-math/layout/migrations/migration.ts';
import { useFreshModules } from '../../support/fresh-modules.ts';
import { sampleLayout } from '../../support/host-sample.ts';

// A version of the document is its number, one step and one line; the compiler asks for the step
// (tests/types/forgotten-piece.test.ts). A dummy of one more lifts every older document wherever one is read.

const { LAYOUT_VERSION: TODAY } = await vi.importActual<
  typeof import('../../../shared-math/layout/version.ts')
>('../../../shared-math/layout/version.ts');
const NEXT = TODAY + 1;

/** The dummy's version says in the notes that it has been there. */
const toNext: LayoutMigration = (document) => ({
  ...document,
  notes: `${document['notes']} Lifted by the dummy.`,
  version: NEXT,
});

type Modules = {
  layout: typeof import('../../../shared-math/layout/index.ts');
  importFile: typeof import('../../../src-main/files/index.ts');
};
let the: Modules;

useFreshModules();
beforeAll(async () => {
  vi.doMock('../../../shared-math/layout/version.ts', () => ({ LAYOUT_VERSION: NEXT }));
  const { LAYOUT_MIGRATIONS } = await import('../../../shared-math/layout/migrations/index.ts');
  (LAYOUT_MIGRATIONS as unknown as LayoutMigration[]).push(toNext);
  the = {
    layout: await import('../../../shared-math/layout/index.ts'),
    importFile: await import('../../../src-main/files/index.ts'),
  };
  return () => vi.doUnmock('../../../shared-math/layout/version.ts');
});

const old = (version: number) => `tests/durability/layout-version-${version}.json`;
const EARLIER = Array.from({ length: TODAY - 1 }, (_, i) => i + 1);

test('of every version before today’s a file is kept as it was written', () => {
  for (const version of EARLIER) {
    expect(existsSync(old(version)), old(version)).toBe(true);
    expect(JSON.parse(readFileSync(old(version), 'utf8')).version).toBe(version);
  }
});

describe('a version added', () => {
  test.each([...EARLIER.map((version) => [version, readFileSync(old(version), 'utf8')] as const)])(
    'lifts a document of version %i through all steps, the dummy’s last',
    (_, text) => {
      const read = the.layout.parseLayout(text);
      expect(read.ok && read.value.version).toBe(NEXT);
      expect(read.ok && read.value.notes).toBe(`${JSON.parse(text).notes} Lifted by the dummy.`);
    },
  );

  test('lifts today’s document and takes its own as it is', () => {
    const today = sampleLayout();
    const read = the.layout.readLayout(today);
    expect(read.ok && read.value.notes).toBe(`${today.notes} Lifted by the dummy.`);
    const own = { ...today, version: NEXT };
    const again = the.layout.readLayout(own);
    expect(again.ok && again.value.notes).toBe(today.notes);
  });

  test('refuses one newer than the dummy, and names it', () => {
    const read = the.layout.readLayout({ ...sampleLayout(), version: NEXT + 1 });
    expect(read.ok ? '' : read.failure.reason).toContain(`newer than this program reads (${NEXT})`);
  });

  test('a new layout begins in it, and is not lifted', () => {
    const plain = the.layout.PLAIN_LAYOUT;
    expect(plain.version).toBe(NEXT);
    const read = the.layout.readLayout(plain);
    expect(read.ok && read.value.notes).toBe(plain.notes);
  });
});
