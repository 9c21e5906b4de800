import { expect } from '../../node_modules/vitest/dist/index.js';

// What test files import as "vitest" where mutants are tried: tests are written down as the files are loaded, and run by
// the lean runner as often as there are mutants, without a process, a transform or a report for each.

export { expect };

export interface Written {
  readonly id: string;
  readonly name: string;
  readonly file: string;
  run(): Promise<void>;
}

type Body = (...values: never[]) => unknown;

/** The tests of the files loaded since the last `forget`, in their order. */
export const written: Written[] = [];
let file = '';
let titles: readonly string[] = [];

export function forget(): void {
  written.length = 0;
}

/** Everything written down from here on stands in this file. */
export function nowIn(path: string): void {
  file = path;
  titles = [];
}

function writeDown(title: string, body: Body, values: readonly unknown[]): void {
  const name = [...titles, title].join(' > ');
  written.push({
    // Titles can be alike; the number tells them apart and is the same at every load.
    id: `${file}#${written.length} ${name}`,
    name,
    file,
    run: async () => {
      await body(...(values as never[]));
    },
  });
}

type Each = (rows: readonly unknown[]) => (title: string, body: Body) => void;
const spread = (row: unknown): readonly unknown[] => (Array.isArray(row) ? row : [row]);

export const test = Object.assign((title: string, body: Body) => writeDown(title, body, []), {
  each: ((rows) => (title, body) => {
    for (const row of rows) writeDown(title, body, spread(row));
  }) as Each,
});

function within(title: string, inside: () => void): void {
  const outer = titles;
  titles = [...outer, title];
  inside();
  titles = outer;
}

export const describe = Object.assign((title: string, inside: () => void) => within(title, inside), {
  each: ((rows) => (title, body) => {
    for (const row of rows) within(title, () => body(...(spread(row) as never[])));
  }) as Each,
});
