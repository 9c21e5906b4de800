import { describe, expect, test, vi } from 'vitest';
import type { ClearanceAnswer, ClearanceQuestion } from '../../../src-renderer/document/clearance-worker.ts';
import { pageMeasurer } from '../../../src-renderer/document/measurer.ts';
import { JobClient } from '../../../src-renderer/jobs/job-client.ts';
import type { FromWorker, ToWorker } from '../../../src-renderer/jobs/messages.ts';
import { FAILED, FAILURES_MOST, type Line, lineTo } from '../../../src-renderer/jobs/worker-line.ts';
import type { FromOriginals, ToOriginals } from '../../../src-renderer/pictures/original-messages.ts';
import { Originals } from '../../../src-renderer/pictures/originals.ts';
import type {
  FromPhotoWorker,
  ToPhotoWorker,
} from '../../../src-renderer/places/measure/photos/photo-messages.ts';
import { Straightening } from '../../../src-renderer/places/measure/photos/straightening.ts';
import { RideLine } from '../../../src-renderer/places/road/ride-line.ts';
import type { FromRideWorker, ToRideWorker } from '../../../src-renderer/places/road/ride-messages.ts';
import { sampleLayout } from '../../support/host-sample.ts';

/** Workers that do nothing by themselves: each with what it was sent, and a way to answer and to fail. */
function workers<To, From>() {
  const made: {
    readonly sent: To[];
    answer: (message: From) => void;
    fail: () => void;
    ended: boolean;
  }[] = [];
  const start = (): Line<To, From> => {
    const worker = { sent: [] as To[], answer: (_: From) => {}, fail: () => {}, ended: false };
    made.push(worker);
    return {
      send: (message) => worker.sent.push(message),
      listen: (hear) => {
        worker.answer = hear;
      },
      onFailure: (hear) => {
        worker.fail = hear;
      },
      end: () => {
        worker.ended = true;
      },
    };
  };
  const worker = (number: number) => {
    const found = made[number - 1];
    if (!found) throw new Error(`only ${made.length} workers were started`);
    return found;
  };
  return { start, made, worker };
}

test('a worker of the page fails by an error that nothing caught and by a message that cannot be read', () => {
  const worker = { postMessage: () => {}, terminate: () => {} } as unknown as Worker;
  let failures = 0;
  lineTo(worker).onFailure?.(() => {
    failures += 1;
  });
  worker.onerror?.({} as ErrorEvent);
  worker.onmessageerror?.({} as MessageEvent);
  expect(failures).toBe(2);
});

describe('jobs of a worker that fails', () => {
  function setUp() {
    const kit = workers<ToWorker, FromWorker>();
    const client = new JobClient(kit.start);
    const heard: string[] = [];
    const begin = (job: string) =>
      client.begin<number, never, number>(job, 7, {
        answer: (value) => heard.push(`${job} ${value}`),
        broken: (reason) => heard.push(`${job} broken: ${reason}`),
      });
    return { ...kit, begin, heard };
  }

  test('are begun anew in another, and answered as if nothing had been', () => {
    const { begin, worker, made, heard } = setUp();
    begin('map');
    begin('tune')();
    begin('band');
    worker(1).fail();
    expect(worker(1).ended).toBe(true);
    expect(worker(2).sent).toEqual([
      { kind: 'begin', id: 1, job: 'map', input: 7 },
      { kind: 'begin', id: 3, job: 'band', input: 7 },
    ]);
    // What the failed one says after its end, and its failing once more, count for nothing.
    worker(1).answer({ kind: 'answer', id: 1, answer: 0 });
    worker(1).fail();
    expect(made).toHaveLength(2);
    worker(2).answer({ kind: 'answer', id: 1, answer: 14 });
    worker(2).answer({ kind: 'answer', id: 3, answer: 15 });
    expect(heard).toEqual(['map 14', 'band 15']);
  });

  test('are told of after two failures, and no more than that; what is asked next has a worker again', () => {
    const { begin, worker, made, heard } = setUp();
    begin('map');
    worker(1).fail();
    begin('band');
    worker(2).fail();
    expect(FAILURES_MOST).toBe(2);
    expect(heard).toEqual([`map broken: ${FAILED}`]);
    // The later question had failed once only.
    expect(worker(3).sent).toEqual([{ kind: 'begin', id: 2, job: 'band', input: 7 }]);
    worker(3).fail();
    expect(heard).toEqual([`map broken: ${FAILED}`, `band broken: ${FAILED}`]);
    expect(made).toHaveLength(3);
    begin('map');
    worker(4).answer({ kind: 'answer', id: 3, answer: 1 });
    expect(heard.at(-1)).toBe('map 1');
  });

  test('that were called off are begun no more, also after the failure', () => {
    const { begin, worker, made } = setUp();
    const callOff = begin('map');
    worker(1).fail();
    callOff();
    expect(worker(2).sent.at(-1)).toEqual({ kind: 'call-off', id: 1 });
    worker(2).fail();
    expect(made).toHaveLength(2);
  });
});

describe('the drive in a worker that fails', () => {
  function setUp() {
    const kit = workers<ToRideWorker, FromRideWorker>();
    const line = new RideLine(kit.start);
    const heard: FromRideWorker[] = [];
    line.onRun((message) => heard.push(message));
    line.onHand((message) => heard.push(message));
    return { ...kit, line, heard };
  }
  const run = (id: number, key: string): ToRideWorker => ({
    kind: 'run',
    id,
    key,
    document: sampleLayout(),
    road: { kind: 'kerb' } as never,
    options: { speed: 1, seconds: 1 } as never,
  });

  test('is driven anew, the newest order of each car; after two failures the refusal says so', () => {
    const { line, worker, heard } = setUp();
    line.send(run(1, ''));
    line.send(run(2, ''));
    line.send(run(3, 'other'));
    worker(1).answer({ kind: 'not-run', id: 3, key: 'other', refusal: { path: '', reason: 'x' } });
    worker(1).fail();
    expect(worker(2).sent).toEqual([run(2, '')]);
    worker(2).fail();
    expect(heard.at(-1)).toEqual({ kind: 'not-run', id: 2, key: '', refusal: { path: '', reason: FAILED } });
    expect(heard).toHaveLength(2);
  });

  test('has the hand take hold anew and pull as it did; after two failures it lets go and says so', () => {
    const { line, worker, heard } = setUp();
    const hold = { held: 'axle', y: 0, z: 300, sideways: false } as const;
    const take = { kind: 'take', turn: 4, document: sampleLayout(), hold, heave: 0, roll: 0 } as const;
    const pull = { kind: 'pull', turn: 4, to: { up: 9, over: 0 }, seconds: 0.02, still: false } as const;
    line.send(take);
    line.send(pull);
    worker(1).fail();
    expect(worker(2).sent).toEqual([take, pull]);
    worker(2).fail();
    expect(heard).toEqual([{ kind: 'not-held', turn: 4, reason: FAILED }]);
  });
});

test('photos are laid straight anew by another worker, which is given them first; after two failures not at all', async () => {
  const { start, worker } = workers<ToPhotoWorker, FromPhotoWorker>();
  const straightening = new Straightening(start);
  const picture = { data: new Uint8ClampedArray(4), width: 1, height: 1 };
  straightening.keep('h', picture);
  const order = {} as never;
  const first = straightening.warped('h', order);
  worker(1).fail();
  expect(worker(2).sent).toEqual([
    { kind: 'keep', hash: 'h', picture },
    { kind: 'warp', id: 1, hash: 'h', order },
  ]);
  worker(2).answer({ id: 1, picture });
  expect(await first).toBe(picture);
  const second = straightening.warped('h', order);
  worker(2).fail();
  worker(3).fail();
  expect(await second).toBeUndefined();
});

test('an original that was let go is opened again; one at which its worker fails is done without', async () => {
  const { start, worker } = workers<ToOriginals, FromOriginals>();
  const originals = new Originals(start);
  const part = { left: 0, top: 0, width: 1, height: 1 };
  const file = new Blob(['x']);
  const opened: string[] = [];
  const ask = (name: string) =>
    originals.part(
      'h',
      async () => {
        opened.push(name);
        return file;
      },
      part,
    );
  const first = ask('first');
  const second = ask('second');
  worker(1).answer({ id: 1, kind: 'missing' });
  worker(1).answer({ id: 2, kind: 'missing' });
  await vi.waitFor(() => expect(worker(1).sent.at(-1)).toEqual({ kind: 'open', id: 3, key: 'h', file }));
  expect(opened).toEqual(['first']);
  worker(1).answer({ id: 3, kind: 'opened', ok: true });
  await vi.waitFor(() => expect(worker(1).sent).toHaveLength(5));
  const bitmap = {} as ImageBitmap;
  worker(1).answer({ id: 4, kind: 'part', bitmap });
  expect(await first).toBe(bitmap);
  worker(1).fail();
  expect(await second).toBeUndefined();
  const third = ask('third');
  worker(2).answer({ id: 6, kind: 'missing' });
  await vi.waitFor(() => expect(worker(2).sent.at(-1)).toMatchObject({ kind: 'open', id: 7 }));
  worker(2).answer({ id: 7, kind: 'opened', ok: false });
  expect(await third).toBeUndefined();
});

test('clearances are measured anew by another worker; after two failures it is said', () => {
  const { start, worker, made } = workers<ClearanceQuestion, ClearanceAnswer>();
  const measurer = pageMeasurer(start);
  const heard: unknown[] = [];
  measurer.onanswer = ({ number }) => heard.push(number);
  measurer.onfailure = (number) => heard.push(`failed ${number}`);
  const question = (number: number) => ({ number, document: sampleLayout() });
  measurer.ask(question(1));
  measurer.ask(question(2));
  worker(1).answer({ number: 1, clearances: null });
  worker(1).fail();
  expect(worker(2).sent).toEqual([question(2)]);
  measurer.ask(question(3));
  worker(2).fail();
  expect(heard).toEqual([1, 'failed 2']);
  expect(worker(3).sent).toEqual([question(3)]);
  worker(3).answer({ number: 3, clearances: null });
  expect(heard).toEqual([1, 'failed 2', 3]);
  measurer.end();
  expect(made.map(({ ended }) => ended)).toEqual([true, true, true]);
});
