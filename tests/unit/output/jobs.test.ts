import { expect, test } from 'vitest';
import { AT_RIDE, DrawingRefused } from '../../../src-main/output/drawings/job.ts';
import {
  type Made,
  OutputJobs,
  type OutputRequest,
  type Source,
} from '../../../src-main/output/jobs/index.ts';
import { TABLES, type TableName, textCell } from '../../../src-main/output/tables/index.ts';
import { sampleLayout } from '../../support/host-sample.ts';

const REQUEST: OutputRequest = { kind: 'drawing', view: 'side', format: 'svg', pose: AT_RIDE };
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
  const outputs = new OutputJobs({ make });
  const [first, second, third] = [1, 2, 3].map(() => outputs.start(REQUEST, SOURCE)) as [
    string,
    string,
    string,
  ];
  await turn();
  expect([first, second, third].map((job) => outputs.status(job).state)).toEqual([
    'working',
    'waiting',
    'waiting',
  ]);
  outputs.cancel(second);
  waiting[0]?.go(MADE);
  await turn();
  expect([first, second, third].map((job) => outputs.status(job).state)).toEqual([
    'ready',
    'called-off',
    'working',
  ]);
  expect(waiting).toHaveLength(2);
  expect(outputs.made(first)).toBe(MADE);
  expect(outputs.status(first).file).toEqual({
    fileName: 'a.svg',
    type: 'image/svg+xml',
    bytes: 3,
    parts: 1,
  });
});

test('what comes in after it was called off is not kept', async () => {
  const { make, waiting } = slow();
  const outputs = new OutputJobs({ make });
  const job = outputs.start(REQUEST, SOURCE);
  await turn();
  outputs.cancel(job);
  waiting[0]?.go(MADE);
  await turn();
  expect(outputs.status(job)).toMatchObject({ state: 'called-off', file: null });
  expect(outputs.made(job)).toBeUndefined();
});

test('a failure is told in plain words, and one of its own goes to the log alone', async () => {
  const { make, waiting } = slow();
  const logged: unknown[] = [];
  const outputs = new OutputJobs({ make, log: (fault) => logged.push(fault) });
  const reasons: string[] = [];
  for (const error of [
    new DrawingRefused('the drag link does not reach this pose'),
    Object.assign(new Error('ENOSPC: no space left'), { code: 'ENOSPC' }),
    new TypeError('x is not a function'),
  ]) {
    const job = outputs.start(REQUEST, SOURCE);
    await turn();
    waiting.at(-1)?.fail(error);
    await turn();
    expect(outputs.status(job).state).toBe('failed');
    reasons.push(outputs.status(job).reason);
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
  const outputs = new OutputJobs({ make: async () => MADE, now: () => now });
  const old = outputs.start(REQUEST, SOURCE);
  await turn();
  now = 9 * 60_000;
  expect(outputs.made(old)).toBe(MADE);
  now = 18 * 60_000;
  expect(outputs.status(old).state).toBe('ready');
  now = 29 * 60_000;
  expect(outputs.made(old)).toBeUndefined();
  expect(() => outputs.status(old)).toThrow(/no longer kept/);

  const many = Array.from({ length: 30 }, () => outputs.start(REQUEST, SOURCE));
  await turn();
  outputs.start(REQUEST, SOURCE);
  expect(many.filter((job) => outputs.made(job)).length).toBeLessThanOrEqual(16);
  outputs.close();
  expect(many.filter((job) => outputs.made(job))).toEqual([]);
});

test('a cell that a spreadsheet would work out is led by an apostrophe', () => {
  for (const text of ['=1+1', '+1', '-1', '@SUM(A1)', '\t=1'])
    expect(textCell(text).replaceAll('"', '').startsWith("'")).toBe(true);
  expect(textCell('=HYPERLINK("x","y")')).toBe(`"'=HYPERLINK(""x"",""y"")"`);
  expect(textCell('a,b')).toBe('"a,b"');
  expect(textCell('Pitman ball')).toBe('Pitman ball');
});

test('tables have a row for each thing, and numbers that are numbers', () => {
  const rows = (name: TableName) => [...TABLES[name].of(sampleLayout())].join('').trimEnd().split('\n');
  expect(rows('points').find((line) => line.startsWith('steering.box.pitmanBall'))).toBe(
    'steering.box.pitmanBall,Pitman ball,pitman,-872,500,346,plan',
  );
  expect(rows('travel')).toHaveLength(32);
  expect(rows('turn')).toHaveLength(42);
  expect(rows('map')).toHaveLength(64 * 64 + 1);
  for (const name of ['points', 'travel', 'turn', 'map'] as const)
    for (const line of rows(name)) expect(line).not.toMatch(/NaN|Infinity|undefined/);
});
