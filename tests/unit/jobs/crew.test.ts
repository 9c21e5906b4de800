import { expect, test } from 'vitest';
import { Crew } from '../../../src-renderer/jobs/crew.ts';
import { type AnyJob, JobRunner } from '../../../src-renderer/jobs/job-runner.ts';
import type { ToWorker } from '../../../src-renderer/jobs/messages.ts';
import type { Line } from '../../../src-renderer/jobs/worker-line.ts';

/** Workers in one thread that take a step each time that `pass` is called, in the order given. */
function workers(jobs: Record<string, AnyJob>) {
  const made: { steps: (() => void)[]; begun: unknown[]; fail: () => void }[] = [];
  const start = (): Line<ToWorker, never> => {
    const worker = { steps: [] as (() => void)[], begun: [] as unknown[], fail: () => {} };
    made.push(worker);
    let hear: (message: never) => void = () => {};
    const runner = new JobRunner(jobs, {
      send: (message) => hear(message as never),
      soon: (run) => worker.steps.push(run),
    });
    return {
      send: (message) => {
        if (message.kind === 'begin') worker.begun.push(message.input);
        runner.read(message);
      },
      listen: (heard) => {
        hear = heard;
      },
      onFailure: (hearFailure) => {
        worker.fail = hearFailure;
      },
    };
  };
  const pass = (which: number) => made[which]?.steps.shift()?.();
  return { made, start, pass };
}

/** Answers ten times its input after as many steps as the input says. */
const slow: AnyJob = function* (input: number) {
  for (let i = 0; i < input; i += 1) yield `${input} at ${i}`;
  return 10 * input;
};

function heard() {
  const said: string[] = [];
  return {
    said,
    listener: {
      news: (at: number, news: string) => said.push(`${at}: ${news}`),
      answer: (at: number, answer: number) => said.push(`${at} = ${answer}`),
      done: () => said.push('done'),
      broken: (reason: string) => said.push(`broken: ${reason}`),
    },
  };
}

test('a free worker takes the next input, and each answer comes with the place of its input', () => {
  const { made, start, pass } = workers({ slow });
  const { said, listener } = heard();
  new Crew(start, 2).begin('slow', [3, 1, 1, 2], listener);
  expect(made.map(({ begun }) => begun)).toEqual([[3], [1]]);
  // The second worker alone goes on: it does all the others meanwhile.
  for (let i = 0; i < 7; i += 1) pass(1);
  expect(made.map(({ begun }) => begun)).toEqual([[3], [1, 1, 2]]);
  expect(said).toEqual(['1: 1 at 0', '1 = 10', '2: 1 at 0', '2 = 10', '3: 2 at 0', '3: 2 at 1', '3 = 20']);
  for (let i = 0; i < 4; i += 1) pass(0);
  expect(said.slice(-2)).toEqual(['0 = 30', 'done']);
});

test('called off, nothing more is begun, worked at or heard of', () => {
  const { made, start, pass } = workers({ slow });
  const { said, listener } = heard();
  const callOff = new Crew(start, 2).begin('slow', [3, 3, 1], listener);
  pass(0);
  pass(1);
  callOff();
  const before = [...said];
  for (let i = 0; i < 5; i += 1) for (const which of [0, 1]) pass(which);
  expect(said).toEqual(before);
  expect(made.flatMap(({ begun }) => begun)).toEqual([3, 3]);
  expect(made.map(({ steps }) => steps.length)).toEqual([0, 0]);
});

test('an input at which a worker fails twice ends all of it with its reason, once', () => {
  const { made, start, pass } = workers({ slow });
  const { said, listener } = heard();
  new Crew(start, 2).begin('slow', [3, 3, 3], listener);
  made[0]?.fail();
  // Asked again of a new one.
  expect(made.map(({ begun }) => begun)).toEqual([[3], [3], [3]]);
  made[2]?.fail();
  expect(said.filter((line) => line.startsWith('broken'))).toHaveLength(1);
  for (let i = 0; i < 5; i += 1) pass(1);
  expect(said.at(-1)).toMatch(/^broken: /);
});

test('nothing to do is done at once', () => {
  const { said, listener } = heard();
  new Crew(workers({ slow }).start, 2).begin('slow', [], listener);
  expect(said).toEqual(['done']);
});
