import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../..');

/** What the compiler says of a few lines that import the mathematics, or nothing. */
function compilerSays(lines: string): string {
  const folder = mkdtempSync(join(root, 'tests/types/scratch-'));
  try {
    const file = join(folder, 'lines.ts');
    writeFileSync(file, lines);
    writeFileSync(
      join(folder, 'tsconfig.json'),
      JSON.stringify({ extends: '../../tsconfig.json', include: ['lines.ts'] }),
    );
    execFileSync(process.execPath, [join(root, 'node_modules/typescript/bin/tsc'), '-p', folder], {
      encoding: 'utf8',
    });
    return '';
  } catch (error) {
    return (error as { stdout: string }).stdout;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const HEAD = `
import { createState, prepareFrontEnd, solveFrontEnd } from '../../../shared-math/linkage/index.ts';
import type { Layout } from '../../../shared-math/layout/index.ts';
import { type Degrees, toRadians } from '../../../shared-math/units/index.ts';
declare const layout: Layout;
declare const roll: Degrees;
`;

test('degrees given where radians are asked do not compile; turned into radians they do', () => {
  expect(
    compilerSays(`${HEAD}solveFrontEnd(prepareFrontEnd(layout), 10, toRadians(roll), 0, createState());`),
  ).toBe('');
  expect(compilerSays(`${HEAD}solveFrontEnd(prepareFrontEnd(layout), 10, roll, 0, createState());`)).toMatch(
    /lines\.ts.*not assignable to parameter of type 'Radians'/,
  );
});

test('a layout must be resolved before it is solved', () => {
  expect(
    compilerSays(`${HEAD}import type { LayoutDocument } from '../../../shared-math/layout/index.ts';
declare const document: LayoutDocument;
prepareFrontEnd(document);`),
  ).toMatch(/lines\.ts.*not assignable/);
});

test('a column of a table that names what a row has not does not compile', () => {
  const column = (of: string) => `import type { Column } from '../../../src-main/output/tables/column.ts';
import type { WheelState } from '../../../shared-math/linkage/index.ts';
export const one: Column<WheelState> = { name: 'camber', unit: 'deg', of: (wheel) => wheel.${of} };`;
  expect(compilerSays(column('camber'))).toBe('');
  expect(compilerSays(column('chamber'))).toMatch(/lines\.ts.*Property 'chamber' does not exist/);
});
