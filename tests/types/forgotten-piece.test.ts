import { beforeAll, expect, test } from 'vitest';
import { type Change, compiledWith } from '../support/compiled-with.ts';

// What is truly in several places is asked for by the compiler: a dummy's name is put where its kind is declared, and
// nothing else, and the compiler names every place that a piece is missing from. DEVELOPERS.md lists the same places.

interface Dummy {
  readonly what: string;
  readonly declared: Change;
  /** Where a piece of it is missing then. */
  readonly asked: readonly string[];
}

const DUMMIES: readonly Dummy[] = [
  {
    what: 'a table',
    declared: {
      file: 'src-main/output/tables/names.ts',
      find: "'map'] as const",
      put: "'map', 'dummy-table'] as const",
    },
    asked: ['src-main/output/tables/index.ts', 'src-renderer/places/sheet/sheet-words.ts'],
  },
  {
    what: 'a print',
    declared: {
      file: 'src-main/output/pages/job.ts',
      find: "'measuring'] as const",
      put: "'measuring', 'dummy-print'] as const",
    },
    asked: ['src-main/output/pages/index.ts', 'src-renderer/places/sheet/sheet-words.ts'],
  },
  {
    what: 'a kind of request',
    declared: {
      file: 'src-main/output/jobs/request.ts',
      find: "| { readonly kind: 'table'; readonly table: TableName; readonly numbers?: Numbers };",
      put: "| { readonly kind: 'table'; readonly table: TableName; readonly numbers?: Numbers }\n  | { readonly kind: 'dummy-request' };",
    },
    asked: ['src-main/output/jobs/make.ts'],
  },
  {
    what: 'a call of the API',
    declared: {
      file: 'src-main/api/contract.ts',
      find: "  'settings.get': {",
      put: "  'dummy.call': { input: none, output: none },\n  'settings.get': {",
    },
    asked: ['src-main/api/handlers/index.ts', 'src-renderer/host/other-windows.ts'],
  },
  {
    what: 'a kind of part',
    declared: {
      file: 'shared-math/shelf/part-schema.ts',
      find: ".discriminatedUnion('kind', [box,",
      put: ".discriminatedUnion('kind', [z.strictObject({ kind: z.literal('dummy-part'), ...facts }), box,",
    },
    asked: ['shared-math/shelf/columns.ts', 'shared-math/shelf/fits.ts', 'shared-math/shelf/part-words.ts'],
  },
  {
    what: 'a kind of axle location',
    declared: {
      file: 'shared-math/layout/schema.ts',
      find: "const location = z.discriminatedUnion('kind', [",
      put: "const location = z.discriminatedUnion('kind', [\n  z.strictObject({ kind: z.literal('dummy-location'), left: rod, right: right(rod) }),",
    },
    asked: [
      'shared-math/clearance/bodies.ts',
      'shared-math/drawing/parts/location-kinds/index.ts',
      'shared-math/joints/ball-joints.ts',
      'shared-math/layout/location-kinds.ts',
      'shared-math/pose/location-kinds/index.ts',
      'shared-math/shelf/link-needs.ts',
      'src-main/output/drawings/dxf/links-in-space.ts',
      'src-main/output/pages/links.ts',
      'src-renderer/document/conversions.ts',
    ],
  },
  {
    what: 'a version of the document',
    declared: {
      file: 'shared-math/layout/version.ts',
      find: 'LAYOUT_VERSION = 4',
      put: 'LAYOUT_VERSION = 5',
    },
    asked: ['shared-math/layout/migrations/index.ts'],
  },
];

let said: ReadonlyMap<string, readonly string[]>;
beforeAll(() => {
  said = compiledWith(DUMMIES.map(({ declared }) => declared));
}, 240_000);

test.each(DUMMIES)(
  '$what that is declared and nothing more is asked for wherever it belongs',
  ({ asked }) => {
    for (const file of asked) expect(said.get(file), file).toBeDefined();
  },
);

test('nothing else of the program is at fault', () => {
  expect([...said.keys()].sort()).toEqual([...new Set(DUMMIES.flatMap(({ asked }) => asked))].sort());
});
