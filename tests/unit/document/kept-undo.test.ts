import { isDeepStrictEqual } from 'node:util';
import { describe, expect, test } from 'vitest';
import { type CarSurvey, EMPTY_CAR_SURVEY } from '../../../shared-math/adjust/list/index.ts';
import { PLAIN_LAYOUT } from '../../../shared-math/layout/index.ts';
import { withValueAt } from '../../../shared-math/layout/values.ts';
import {
  type Edit,
  EMPTY_HISTORY,
  type History,
  steppedBack,
} from '../../../src-renderer/document/history.ts';
import { KeptSurveys } from '../../../src-renderer/document/kept-surveys.ts';
import { type Cupboard, KeptUndo } from '../../../src-renderer/document/kept-undo.ts';
import { markOf, patched, patchesBetween } from '../../../src-renderer/document/patches.ts';

/** A storage of a browser, as the HTML standard describes it: texts by key, and an exception where it is full. */
function cupboard(most = Number.POSITIVE_INFINITY): Cupboard & { readonly texts: Map<string, string> } {
  const texts = new Map<string, string>();
  return {
    texts,
    getItem: (key) => texts.get(key) ?? null,
    removeItem: (key) => void texts.delete(key),
    setItem: (key, text) => {
      texts.delete(key);
      const held = [...texts.values()].reduce((sum, each) => sum + each.length, 0);
      if (held + text.length > most) throw new Error('QuotaExceededError');
      texts.set(key, text);
    },
  };
}

/** Documents that follow one another, each the next step's. */
function historyOf<Document>(documents: readonly Document[], undone = 0): History<Document> {
  const edits = documents.slice(1).map(
    (after, i): Edit<Document> => ({
      label: `step ${i + 1}`,
      before: documents[i] as Document,
      after,
      at: 0,
    }),
  );
  const done = edits.slice(0, edits.length - undone);
  return { done, undone: edits.slice(edits.length - undone).toReversed() };
}

const plain = ({ done, undone }: History<unknown>) => ({
  done: done.map(({ label, before, after }) => ({ label, before, after })),
  undone: undone.map(({ label, before, after }) => ({ label, before, after })),
});

const height = (mm: number) => withValueAt(PLAIN_LAYOUT, ['steering', 'box', 'pitmanBall', '2'], mm);

describe('patches', () => {
  test('make one JSON value of another, whatever the two are', () => {
    let seed = 7;
    const random = () => {
      seed = (Math.imul(seed, 1103515245) + 12345) >>> 0;
      return (seed >>> 8) / 2 ** 24;
    };
    const value = (deep: number): unknown => {
      const kind = Math.floor(random() * (deep > 0 ? 6 : 4));
      if (kind === 0) return Math.round(random() * 5);
      if (kind === 1) return random() < 0.5 ? 'a' : 'b';
      if (kind === 2) return null;
      if (kind === 3) return random() < 0.5;
      const many = Math.floor(random() * 4);
      if (kind === 4) return Array.from({ length: many }, () => value(deep - 1));
      return Object.fromEntries(Array.from({ length: many }, (_, i) => ['pqrs'[i], value(deep - 1)]));
    };
    for (let round = 0; round < 2000; round += 1) {
      const [from, to] = [value(3), value(3)];
      const there = JSON.parse(JSON.stringify(patchesBetween(from, to)));
      expect(isDeepStrictEqual(patched(from, there), to), JSON.stringify([from, to])).toBe(true);
      expect(markOf(from) === markOf(to)).toBe(isDeepStrictEqual(from, to));
    }
  });

  test('name only what differs, and leave the rest the same object', () => {
    const there = patchesBetween(PLAIN_LAYOUT, height(400));
    expect(there).toEqual([[['steering', 'box', 'pitmanBall', 2], 400]]);
    expect((patched(PLAIN_LAYOUT, there) as typeof PLAIN_LAYOUT).axle).toBe(PLAIN_LAYOUT.axle);
  });
});

describe('steps of undo', () => {
  const documents = [332, 340, 351, 360, 372].map(height);

  test('are taken up again where the document is the one they begin at, done and undone', () => {
    const kept = cupboard();
    const history = historyOf(documents, 2);
    const present = documents[2] as typeof PLAIN_LAYOUT;
    const first = new KeptUndo<typeof PLAIN_LAYOUT>(kept);
    first.note('v', history, present);
    first.flush();
    // As after a reload: another page, and the document from the store, whose keys stand in another order.
    const read = JSON.parse(JSON.stringify(Object.fromEntries(Object.entries(present).toReversed())));
    const found = new KeptUndo<typeof PLAIN_LAYOUT>(kept).read('v', read);
    if (found === 'other') throw new Error('not known again');
    expect(plain(found)).toEqual(plain(history));
    expect(found.done.at(-1)?.after).toBe(read);
    expect(steppedBack(found)?.edit.before).toEqual(documents[1]);
    expect(new KeptUndo<typeof PLAIN_LAYOUT>(kept).read('another', read)).toBe(EMPTY_HISTORY);
  });

  test('are let go where the document is another by now, and where what was put away is broken', () => {
    const kept = cupboard();
    const first = new KeptUndo<typeof PLAIN_LAYOUT>(kept);
    first.note('v', historyOf(documents), documents[4] as typeof PLAIN_LAYOUT);
    first.flush();
    expect(first.read('v', height(100))).toBe('other');
    // For good: not even where the document comes back.
    expect(first.read('v', documents[4] as typeof PLAIN_LAYOUT)).toBe(EMPTY_HISTORY);
    kept.setItem('toeboard-undo-v', '{"at":');
    expect(first.read('v', height(100))).toBe('other');
  });

  test('are bounded: the oldest steps go first, then whole variants, and a full storage keeps nothing old', () => {
    const kept = cupboard();
    const undo = new KeptUndo<{ readonly text: string }>(kept);
    const long = Array.from({ length: 40 }, (_, i) => ({ text: `${i}`.repeat(20_000) }));
    const last = long[39] as { readonly text: string };
    undo.note('v', historyOf(long), last);
    undo.flush();
    const found = undo.read('v', last);
    if (found === 'other') throw new Error('not known again');
    expect(found.done.length).toBeGreaterThan(0);
    expect(found.done.length).toBeLessThan(39);
    expect(found.done.at(-1)?.label).toBe('step 39');
    for (let i = 0; i < 30; i += 1) {
      undo.note(`v${i}`, historyOf(long.slice(0, 2)), long[1] as { readonly text: string });
      undo.flush();
    }
    expect([...kept.texts.keys()].filter((key) => key.startsWith('toeboard-undo-')).length).toBe(12);

    const full = cupboard(60_000);
    const little = new KeptUndo<{ readonly text: string }>(full);
    little.note('v', historyOf([{ text: 'a' }, { text: 'b' }]), { text: 'b' });
    little.flush();
    expect(little.read('v', { text: 'b' })).not.toBe('other');
    little.note('v', historyOf(long.slice(0, 3)), long[2] as { readonly text: string });
    little.flush();
    expect(little.read('v', { text: 'b' })).toBe(EMPTY_HISTORY);
  });
});

describe('what was measured with each drawing', () => {
  const survey = (rows: number): CarSurvey => ({
    ...EMPTY_CAR_SURVEY,
    survey: {
      ...EMPTY_CAR_SURVEY.survey,
      rows: Array.from({ length: rows }, (_, i) => ({
        id: `row ${i}`,
        kind: 'up',
        of: 'steering.dragLinkBall',
        value: 1,
      })),
    },
  });

  test('is found again for the drawings of undo, and the present one stands with what the store holds', () => {
    const [first, second, third] = [332, 340, 351].map(height) as [
      typeof PLAIN_LAYOUT,
      typeof PLAIN_LAYOUT,
      typeof PLAIN_LAYOUT,
    ];
    const kept = cupboard();
    const before = new KeptSurveys(kept);
    for (const [i, document] of [first, second, third].entries())
      before.remember('car', document, survey(i + 1));
    // As after a reload: the same drawings as other objects, and measurements that another window has changed.
    const again = [first, second, third].map((each) => structuredClone(each)) as (typeof PLAIN_LAYOUT)[];
    const after = new KeptSurveys(kept);
    after.recall('car', historyOf(again), again[2] as typeof PLAIN_LAYOUT, survey(9));
    expect(again.map((each) => after.with(each)?.survey.rows.length)).toEqual([1, 2, 9]);
    const other = new KeptSurveys(kept);
    other.recall('another car', historyOf(again), again[2] as typeof PLAIN_LAYOUT, survey(9));
    expect(again.map((each) => other.with(each))).toEqual([undefined, undefined, undefined]);
  });

  test('is bounded by cars and by length, and is nothing where the storage is full or broken', () => {
    const kept = cupboard();
    const surveys = new KeptSurveys(kept);
    for (let i = 0; i < 400; i += 1) surveys.note('long', `mark ${i}`, survey(20));
    const marks = [...surveys.of('long').keys()];
    expect(marks.length).toBeLessThan(400);
    expect(marks.at(-1)).toBe('mark 399');
    for (let i = 0; i < 6; i += 1) surveys.note(`car ${i}`, 'mark', survey(1));
    expect(surveys.of('long').size).toBe(0);
    expect(surveys.of('car 5').size).toBe(1);
    kept.setItem('toeboard-surveys-car 5', '{"mark":');
    expect(surveys.of('car 5').size).toBe(0);
    const full = new KeptSurveys(cupboard(100));
    full.note('car', 'mark', survey(20));
    expect(full.of('car').size).toBe(0);
  });
});
