import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { LayoutDocument } from '../../../shared-math/layout/index.ts';
import {
  type CallFailure,
  type CallHost,
  type CallResult,
  contract,
  type Request,
} from '../../../src-main/api/contract.ts';
import {
  RETRY_AFTER,
  SAVE_AFTER,
  SAVE_AFTER_DRAGGING,
  SaveQueue,
  type SaveState,
} from '../../../src-renderer/document/save-queue.ts';
import { sampleLayout } from '../../support/host-sample.ts';

type Save = Request<'variant.save'>;
const ID = '00000000-0000-4000-8000-000000000001';

/** A host with one variant, which answers after a while and refuses what it is asked to. */
class FakeHost {
  revision = 1;
  readonly saves: Save[] = [];
  refusal: CallFailure | undefined;
  /** Which saves the refusal is for; all of them if absent. */
  refuses: (save: Save) => boolean = () => true;
  latency = 5;

  readonly call = (async (name: string, input: unknown): Promise<CallResult<'variant.save'>> => {
    expect(name).toBe('variant.save');
    const save = input as Save;
    this.saves.push(save);
    await new Promise((resolve) => setTimeout(resolve, this.latency));
    if (this.refusal && this.refuses(save)) return { ok: false, failure: this.refusal };
    if (save.revision !== this.revision && !save.force)
      return { ok: false, failure: { code: 'changed-elsewhere', reason: 'changed in another window' } };
    this.revision += 1;
    return { ok: true, value: { revision: this.revision, savedAt: 0 } };
  }) as CallHost;
}

let host: FakeHost;
let states: SaveState[];
let queue: SaveQueue;

const layout = (height: number): LayoutDocument => sampleLayout('Arm down', height);
const job = (height: number, step: string) => ({ document: layout(height), step, label: `to ${height}` });
const heights = () => host.saves.map((save) => save.document.steering.box.pitmanBall[2]);

beforeEach(() => {
  vi.useFakeTimers();
  host = new FakeHost();
  states = [];
  queue = new SaveQueue(host.call, (state) => states.push(state));
  queue.open(ID, 1);
});

afterEach(() => {
  vi.useRealTimers();
});

describe('saving by itself', () => {
  test('a change is in the store well inside half a second, without being asked', async () => {
    queue.put(job(340, 'one'));
    expect(states.at(-1)).toBe('saving');
    await vi.advanceTimersByTimeAsync(SAVE_AFTER + host.latency);
    expect(heights()).toEqual([340]);
    expect(states.at(-1)).toBe('saved');
    expect(queue.pending).toBe(false);
  });

  test('a label longer than the host takes is cut, and never in the way of the save', async () => {
    const { label } = contract['variant.save'].input.shape;
    const long = `Rename to ${'n'.repeat(200)}`;
    expect(label.safeParse(long).success).toBe(false);
    queue.put({ ...job(340, 'one'), label: long });
    await vi.advanceTimersByTimeAsync(SAVE_AFTER + host.latency);
    expect(label.safeParse(host.saves[0]?.label).success).toBe(true);
    expect(host.saves[0]?.label).toMatch(/^Rename to n{180,}…$/);
  });

  test('a stream of changes does not put the save off', async () => {
    for (let i = 0; i < 20; i += 1) {
      queue.put(job(300 + i, `step ${i}`));
      await vi.advanceTimersByTimeAsync(50);
    }
    // One second of changes: the newest ones may wait, all older ones are there.
    expect(heights().length).toBeGreaterThanOrEqual(13);
  });

  test('a drag is saved while it lasts, as one step, and at once at its end', async () => {
    for (let i = 0; i < 100; i += 1) {
      queue.put(job(300 + i, 'drag'), SAVE_AFTER_DRAGGING);
      await vi.advanceTimersByTimeAsync(16);
    }
    const during = host.saves.length;
    expect(during).toBeGreaterThanOrEqual(3);
    expect(during).toBeLessThanOrEqual(6);
    queue.put(job(400, 'drag'), 0);
    await vi.advanceTimersByTimeAsync(2 * host.latency);
    expect(heights().at(-1)).toBe(400);
    expect(new Set(host.saves.map((save) => save.step))).toEqual(new Set(['drag']));
  });

  test('two steps inside one wait are both kept, in order, on the revisions of one another', async () => {
    queue.put(job(340, 'one'));
    queue.put(job(330, 'two'));
    queue.put(job(320, 'two'));
    await vi.advanceTimersByTimeAsync(SAVE_AFTER + 3 * host.latency);
    expect(heights()).toEqual([340, 320]);
    expect(host.saves.map((save) => save.revision)).toEqual([1, 2]);
  });

  test('a change during a running save is saved after it, not lost and not beside it', async () => {
    host.latency = 100;
    queue.put(job(340, 'drag'), 0);
    await vi.advanceTimersByTimeAsync(50);
    queue.put(job(330, 'drag'), SAVE_AFTER_DRAGGING);
    expect(host.saves).toHaveLength(1);
    await vi.advanceTimersByTimeAsync(1000);
    expect(heights()).toEqual([340, 330]);
    expect(host.revision).toBe(3);
  });

  test('flush resolves when the store has it', async () => {
    queue.put(job(340, 'one'));
    const flushed = queue.flush();
    await vi.advanceTimersByTimeAsync(host.latency);
    await flushed;
    expect(heights()).toEqual([340]);
    expect(queue.pending).toBe(false);
  });
});

describe('taking back', () => {
  test('a cancelled drag that was never sent leaves no trace', async () => {
    queue.put(job(340, 'drag'), SAVE_AFTER_DRAGGING);
    expect(queue.hasSent('drag')).toBe(false);
    queue.withdraw('drag');
    expect(states.at(-1)).toBe('saved');
    await vi.advanceTimersByTimeAsync(2000);
    expect(host.saves).toEqual([]);
  });

  test('one that was sent says so', async () => {
    queue.put(job(340, 'drag'), 0);
    expect(queue.hasSent('drag')).toBe(true);
    expect(queue.hasSent('another')).toBe(false);
  });
});

describe('a page that goes away', () => {
  test('sends what waits at once', () => {
    queue.put(job(340, 'one'));
    queue.flushLeaving();
    expect(heights()).toEqual([340]);
  });

  test('sends the newest behind a running save, on the revision that it will leave', async () => {
    host.latency = 100;
    queue.put(job(340, 'one'), 0);
    queue.put(job(330, 'two'));
    queue.flushLeaving();
    expect(heights()).toEqual([340, 330]);
    expect(host.saves.map((save) => save.revision)).toEqual([1, 2]);
    await vi.advanceTimersByTimeAsync(1000);
    expect(host.revision).toBe(3);
  });
});

describe('trouble', () => {
  test('a store that fails keeps the change, says why, and has it once it works again', async () => {
    host.refusal = { code: 'storage-failed', reason: 'the disk is full' };
    queue.put(job(340, 'one'));
    await vi.advanceTimersByTimeAsync(SAVE_AFTER + host.latency);
    expect(states.at(-1)).toBe('not saved: the disk is full');
    queue.put(job(330, 'two'));
    expect(states.at(-1)).toBe('not saved: the disk is full');
    host.refusal = undefined;
    await vi.advanceTimersByTimeAsync(RETRY_AFTER + 3 * host.latency);
    expect(heights().slice(-2)).toEqual([340, 330]);
    expect(states.at(-1)).toBe('saved');
    expect(host.revision).toBe(3);
  });

  test('tries again less and less often', async () => {
    host.refusal = { code: 'no-answer', reason: 'no answer' };
    queue.put(job(340, 'one'), 0);
    await vi.advanceTimersByTimeAsync(60_000);
    expect(host.saves.length).toBeGreaterThan(6);
    expect(host.saves.length).toBeLessThan(14);
    expect(queue.pending).toBe(true);
  });

  test('another window wins nothing in silence: nothing is sent until the person has chosen', async () => {
    host.revision = 7;
    queue.put(job(340, 'one'), 0);
    await vi.advanceTimersByTimeAsync(host.latency);
    expect(states.at(-1)).toBe('changed elsewhere');
    queue.put(job(330, 'two'));
    await vi.advanceTimersByTimeAsync(60_000);
    expect(host.saves).toHaveLength(1);
    const kept = queue.keepMine();
    await vi.advanceTimersByTimeAsync(5 * host.latency);
    await kept;
    expect(heights().slice(1)).toEqual([340, 330]);
    // Only the first one overrules; what follows is checked again.
    expect(host.saves.slice(1).map((save) => save.force)).toEqual([true, false]);
    expect(states.at(-1)).toBe('saved');
  });

  test('a variant that is gone is not sent again and again', async () => {
    host.refusal = { code: 'not-found', reason: 'this variant no longer exists' };
    queue.put(job(340, 'one'), 0);
    await vi.advanceTimersByTimeAsync(60_000);
    expect(host.saves).toHaveLength(1);
    expect(states.at(-1)).toBe('gone');
    expect(queue.pending).toBe(true);
  });

  test('a refused document says why and is not sent again by itself', async () => {
    host.refusal = { code: 'refused-document', reason: 'the drag link has no length' };
    queue.put(job(340, 'one'), 0);
    await vi.advanceTimersByTimeAsync(60_000);
    expect(host.saves).toHaveLength(1);
    expect(states.at(-1)).toBe('refused: the drag link has no length');
    host.refusal = undefined;
    queue.put(job(330, 'one'));
    await vi.advanceTimersByTimeAsync(1000);
    expect(states.at(-1)).toBe('saved');
    expect(heights().at(-1)).toBe(330);
  });

  test.each(['bad-request', 'refused-document', 'internal'] as const)(
    'a save that is refused as %s does not hold up those behind it',
    async (code) => {
      host.refuses = (save) => save.document.steering.box.pitmanBall[2] === 340;
      host.refusal = { code, reason: 'not this one' };
      queue.put(job(340, 'one'));
      queue.put(job(330, 'two'));
      queue.put(job(320, 'three'));
      await vi.advanceTimersByTimeAsync(SAVE_AFTER + 5 * host.latency);
      expect(heights()).toEqual([340, 330, 320]);
      expect(states.at(-1)).toBe('saved');
      expect(queue.pending).toBe(false);
    },
  );

  test('a change after one that was refused for good is saved', async () => {
    host.refuses = (save) => save.document.steering.box.pitmanBall[2] === 340;
    host.refusal = { code: 'bad-request', reason: 'not this one' };
    queue.put(job(340, 'one'), 0);
    await vi.advanceTimersByTimeAsync(1000);
    expect(states.at(-1)).toBe('refused: not this one');
    queue.put(job(330, 'two'));
    await vi.advanceTimersByTimeAsync(1000);
    expect(heights().at(-1)).toBe(330);
    expect(states.at(-1)).toBe('saved');
  });

  test('a window whose program is another now does not try for ever, and says so', async () => {
    host.refusal = { code: 'not-admitted', reason: 'not yours' };
    queue.put(job(340, 'one'), 0);
    await vi.advanceTimersByTimeAsync(60_000);
    expect(host.saves).toHaveLength(1);
    expect(states.at(-1)).toBe('not admitted');
    expect(queue.pending).toBe(true);
  });

  test('the answer to a save of one variant does not touch the next one', async () => {
    host.latency = 100;
    queue.put(job(340, 'one'), 0);
    queue.open('00000000-0000-4000-8000-000000000002', 40);
    host.revision = 40;
    await vi.advanceTimersByTimeAsync(200);
    queue.put(job(330, 'two'), 0);
    await vi.advanceTimersByTimeAsync(200);
    expect(host.saves.at(-1)).toMatchObject({ revision: 40 });
  });
});
