import { describe, expect, test } from 'vitest';
import { JobClient, type WorkerLine } from '../../../src-renderer/jobs/job-client.ts';
import { type AnyJob, JobRunner } from '../../../src-renderer/jobs/job-runner.ts';
import { Latest } from '../../../src-renderer/jobs/latest.ts';
import type { FromWorker, ToWorker } from '../../../src-renderer/jobs/messages.ts';

/** A page and a worker in one thread: messages and steps wait until `pass` lets the next of them happen. */
function setUp(jobs: Record<string, AnyJob>) {
  const waiting: (() => void)[] = [];
  const sent: ToWorker[] = [];
  let hear: (message: FromWorker) => void = () => {};
  let started = 0;
  const runner = new JobRunner(jobs, {
    send: (message) => waiting.push(() => hear(message)),
    soon: (run) => waiting.push(run),
  });
  const line: WorkerLine = {
    send: (message) => {
      sent.push(message);
      waiting.push(() => runner.read(message));
    },
    listen: (to) => {
      hear = to;
    },
  };
  const client = new JobClient(() => {
    started += 1;
    return line;
  });
  return {
    client,
    sent,
    starts: () => started,
    pass: (count: number) => {
      for (let i = 0; i < count; i += 1) waiting.shift()?.();
    },
    passAll: () => {
      for (let next = waiting.shift(); next; next = waiting.shift()) next();
    },
  };
}

function* twice(input: number): Generator<undefined, number> {
  yield undefined;
  return 2 * input;
}

function* long(input: number): Generator<string, string> {
  for (let step = 1; step <= 5; step += 1) yield `${input} step ${step}`;
  return `${input} done`;
}

// biome-ignore lint/correctness/useYield: it breaks before it gives anything.
function* breaking(): Generator<undefined, number> {
  throw new Error('no such car');
}

const asked = (sent: readonly ToWorker[]) =>
  sent.flatMap((message) => (message.kind === 'begin' ? [message.input] : [`called off ${message.id}`]));

describe('a client and its runner', () => {
  test('starts the worker with the first job and no other, and hears of each', () => {
    const { client, starts, passAll } = setUp({ twice });
    expect(starts()).toBe(0);
    const heard: unknown[] = [];
    for (const input of [3, 4])
      client.begin('twice', input, { answer: (answer) => heard.push(answer), broken: () => {} });
    passAll();
    expect(heard).toEqual([6, 8]);
    expect(starts()).toBe(1);
  });

  test('tells news while it works, and nothing once it is called off', () => {
    const { client, pass, passAll } = setUp({ long });
    const heard: unknown[] = [];
    const callOff = client.begin<number, string, string>('long', 1, {
      news: (news) => heard.push(news),
      answer: (answer) => heard.push(answer),
      broken: () => heard.push('broken'),
    });
    // Read, step, heard: two steps of the job.
    pass(5);
    const before = [...heard];
    expect(before.length).toBeGreaterThan(0);
    callOff();
    passAll();
    expect(heard).toEqual(before);
    expect(heard).not.toContain('1 done');
  });

  test('says why where a job breaks, or there is none of that name', () => {
    const { client, passAll } = setUp({ breaking });
    const heard: string[] = [];
    for (const job of ['breaking', 'flying'])
      client.begin(job, 0, { answer: () => heard.push('answer'), broken: (reason) => heard.push(reason) });
    passAll();
    expect(heard.sort()).toEqual(['no such car', 'there is no job called flying']);
  });
});

describe('the latest question', () => {
  const latest = (client: JobClient, job: string, heard: unknown[]) =>
    new Latest<number, unknown, unknown>(client, job, {
      answer: (answer) => heard.push(answer),
      broken: () => heard.push('broken'),
    });

  test('of many asked while one is under way only the newest is asked, and answers come in order', () => {
    const { client, sent, passAll } = setUp({ twice });
    const heard: unknown[] = [];
    const questions = latest(client, 'twice', heard);
    for (const input of [1, 2, 3, 4, 5]) questions.ask(input);
    expect(asked(sent)).toEqual([1]);
    passAll();
    expect(asked(sent)).toEqual([1, 5]);
    expect(heard).toEqual([2, 10]);
    expect(questions.busy).toBe(false);
  });

  test('one that may be broken off gives way at once and is never heard', () => {
    const { client, sent, pass, passAll } = setUp({ long });
    const heard: unknown[] = [];
    const questions = latest(client, 'long', heard);
    questions.ask(1, true);
    pass(4);
    questions.ask(2);
    expect(asked(sent)).toEqual([1, 'called off 1', 2]);
    passAll();
    expect(heard).toEqual(['2 done']);
  });

  test('what is forgotten is not heard, nor is what waited behind it', () => {
    const { client, sent, passAll } = setUp({ twice });
    const heard: unknown[] = [];
    const questions = latest(client, 'twice', heard);
    questions.ask(1);
    questions.ask(2);
    questions.forget();
    passAll();
    expect(heard).toEqual([]);
    expect(asked(sent)).toEqual([1, 'called off 1']);
    questions.ask(3);
    passAll();
    expect(heard).toEqual([6]);
  });

  test('a question that broke does not hold up the next', () => {
    const { client, passAll } = setUp({ breaking });
    const heard: unknown[] = [];
    const questions = latest(client, 'breaking', heard);
    questions.ask(1);
    questions.ask(2);
    passAll();
    expect(heard).toEqual(['broken', 'broken']);
  });
});
