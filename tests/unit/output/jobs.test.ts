import { expect, test } from 'vitest';
import { AT_RIDE, DrawingRefused } from '../../../src-main/output/drawings/job.ts';
import { type Made, OutputDesk, type Source, type Wish } from '../../../src-main/output/jobs/index.ts';
import { tableOf, textCell } from '../../../src-main/output/tables/index.ts';
import { sampleLayout } from '../../support/host-sample.ts';

const WISH: Wish = { kind: 'drawing', view: 'side', format: 'svg', pose: AT_RIDE };
const SOURCE: Source = {
  document: sampleLayout(),
  customer: 'Odd Fellow',
  car: 'Roadster',
  unit: 'in',
  fraction: 16,
  date: new Date(0),
  preview: false,
};
const MADE: Made = { fileName: 'a.svg', type: 'image/svg+xml', parts: [new Uint8Array(3)] };

/** A maker that waits to be let go on, so that nothing hangs on time. */
function slow() {
  const waiting: { go: (made: Made) => void; fail: (error: unknown) => void }[] = [];
  const make = (): Promise<Made> =>
    new Promise((go, fail) => {
      waiting.push({ go, fail });
    });
  return { make, waiting };
}

const turn = () => new Promise((done) => setImmediate(done));

test('jobs are made one after another; one that is called off while it waits is never begun', async () => {
  const { make, waiting } = slow();
  const desk = new OutputDesk({ make });
  const [first, second, third] = [1, 2, 3].map(() => desk.start(WISH, SOURCE)) as [string, string, string];
  await turn();
  expect([first, second, third].map((job) => desk.told(job).state)).toEqual([
    'working',
    'waiting',
    'waiting',
  ]);
  desk.cancel(second);
  waiting[0]?.go(MADE);
  await turn();
  expect([first, second, third].map((job) => desk.told(job).state)).toEqual([
    'ready',
    'called-off',
    'working',
  ]);
  expect(waiting).toHaveLength(2);
  expect(desk.made(first)).toBe(MADE);
  expect(desk.told(first).file).toEqual({ fileName: 'a.svg', type: 'image/svg+xml', bytes: 3, parts: 1 });
});

test('what comes in after it was called off is not kept', async () => {
  const { make, waiting } = slow();
  const desk = new OutputDesk({ make });
  const job = desk.start(WISH, SOURCE);
  await turn();
  desk.cancel(job);
  waiting[0]?.go(MADE);
  await turn();
  expect(desk.told(job)).toMatchObject({ state: 'called-off', file: null });
  expect(desk.made(job)).toBeUndefined();
});

test('a failure is told in plain words, and one of its own goes to the log alone', async () => {
  const { make, waiting } = slow();
  const logged: unknown[] = [];
  const desk = new OutputDesk({ make, log: (fault) => logged.push(fault) });
  const reasons: string[] = [];
  for (const error of [
    new DrawingRefused('the drag link does not reach this pose'),
    Object.assign(new Error('ENOSPC: no space left'), { code: 'ENOSPC' }),
    new TypeError('x is not a function'),
  ]) {
    const job = desk.start(WISH, SOURCE);
    await turn();
    waiting.at(-1)?.fail(error);
    await turn();
    expect(desk.told(job).state).toBe('failed');
    reasons.push(desk.told(job).reason);
  }
  expect(reasons).toEqual([
    'the drag link does not reach this pose',
    'the disk is full: free some space and try again',
    'Toeboard made a mistake of its own',
  ]);
  expect(logged).toHaveLength(2);
});

test('what nobody asks for is let go of, and no more than sixteen are kept', async () => {
  let now = 0;
  const desk = new OutputDesk({ make: async () => MADE, now: () => now });
  const old = desk.start(WISH, SOURCE);
  await turn();
  now = 9 * 60_000;
  expect(desk.made(old)).toBe(MADE);
  now = 18 * 60_000;
  expect(desk.told(old).state).toBe('ready');
  now = 29 * 60_000;
  expect(desk.made(old)).toBeUndefined();
  expect(() => desk.told(old)).toThrow(/no longer kept/);

  const many = Array.from({ length: 30 }, () => desk.start(WISH, SOURCE));
  await turn();
  desk.start(WISH, SOURCE);
  expect(many.filter((job) => desk.made(job)).length).toBeLessThanOrEqual(16);
  desk.close();
  expect(many.filter((job) => desk.made(job))).toEqual([]);
});

test('a cell that a spreadsheet would work out is led by an apostrophe', () => {
  for (const text of ['=1+1', '+1', '-1', '@SUM(A1)', '\t=1'])
    expect(textCell(text).replaceAll('"', '').startsWith("'")).toBe(true);
  expect(textCell('=HYPERLINK("x","y")')).toBe(`"'=HYPERLINK(""x"",""y"")"`);
  expect(textCell('a,b')).toBe('"a,b"');
  expect(textCell('Pitman ball')).toBe('Pitman ball');
});

test('tables have a row for each thing, and numbers that are numbers', () => {
  const rows = (name: Parameters<typeof tableOf>[0]) =>
    [...tableOf(name, sampleLayout())].join('').trimEnd().split('\n');
  expect(rows('points').find((line) => line.startsWith('steering.box.pitmanBall'))).toBe(
    'steering.box.pitmanBall,Pitman ball,pitman,-872,500,346',
  );
  expect(rows('travel')).toHaveLength(32);
  expect(rows('turn')).toHaveLength(42);
  expect(rows('map')).toHaveLength(64 * 64 + 1);
  for (const name of ['points', 'travel', 'turn', 'map'] as const)
    for (const line of rows(name)) expect(line).not.toMatch(/NaN|Infinity|undefined/);
});
