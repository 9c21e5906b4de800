import { describe, expect, test } from 'vitest';
import {
  EMPTY_HISTORY,
  HISTORY_MAX,
  type History,
  MERGE_WITHIN,
  recorded,
  steppedBack,
  steppedForward,
} from '../../../src-renderer/document/history.ts';

/** Documents are only compared by identity, so plain texts stand for them. */
type Text = History<string>;
const empty: Text = EMPTY_HISTORY;

function edited(history: Text, before: string, to: string, more: { merge?: string; at?: number } = {}): Text {
  return recorded(history, { label: `${before} to ${to}`, before, after: to, at: 0, ...more });
}

function labels(history: Text): string[] {
  return history.done.map((edit) => edit.label);
}

describe('undo and redo', () => {
  test('go back and forward through the same documents', () => {
    const history = edited(edited(empty, 'a', 'b'), 'b', 'c');
    const back = steppedBack(history);
    expect(back?.edit.before).toBe('b');
    const twice = back && steppedBack(back.history);
    expect(twice?.edit.before).toBe('a');
    expect(twice && steppedBack(twice.history)).toBeUndefined();
    const forward = twice && steppedForward(twice.history);
    expect(forward?.edit.after).toBe('b');
    const again = forward && steppedForward(forward.history);
    expect(again?.edit.after).toBe('c');
    expect(again && steppedForward(again.history)).toBeUndefined();
  });

  test('a new edit drops what had been undone', () => {
    const history = edited(edited(empty, 'a', 'b'), 'b', 'c');
    const back = steppedBack(history);
    const branch = edited(back?.history ?? empty, 'b', 'x');
    expect(labels(branch)).toEqual(['a to b', 'b to x']);
    expect(steppedForward(branch)).toBeUndefined();
  });

  test('an edit that changed nothing is no step and keeps what can be redone', () => {
    const back = steppedBack(edited(empty, 'a', 'b'));
    const same = edited(back?.history ?? empty, 'a', 'a');
    expect(same.done).toHaveLength(0);
    expect(steppedForward(same)?.edit.after).toBe('b');
  });

  test('the oldest steps are let go at the bound', () => {
    let history = empty;
    for (let i = 0; i < HISTORY_MAX + 5; i += 1) history = edited(history, `${i}`, `${i + 1}`);
    expect(history.done).toHaveLength(HISTORY_MAX);
    expect(history.done[0]?.before).toBe('5');
    expect(history.done.at(-1)?.after).toBe(`${HISTORY_MAX + 5}`);
  });
});

describe('edits that run together', () => {
  const first = edited(empty, 'a', 'b', { merge: 'nudge', at: 1000 });

  test('held arrow keys become one step from the first to the last document', () => {
    const history = edited(first, 'b', 'c', { merge: 'nudge', at: 1000 + MERGE_WITHIN });
    expect(history.done).toHaveLength(1);
    expect(history.done[0]).toMatchObject({ before: 'a', after: 'c' });
  });

  test('a pause begins a new step', () => {
    expect(edited(first, 'b', 'c', { merge: 'nudge', at: 1001 + MERGE_WITHIN }).done).toHaveLength(2);
  });

  test('another key begins a new step', () => {
    expect(edited(first, 'b', 'c', { merge: 'other', at: 1001 }).done).toHaveLength(2);
    expect(edited(first, 'b', 'c', { at: 1001 }).done).toHaveLength(2);
  });

  test('a nudge never joins one that was undone', () => {
    const undone = steppedBack(edited(first, 'b', 'c', { merge: 'other', at: 1001 }));
    const history = edited(undone?.history ?? empty, 'b', 'd', { merge: 'nudge', at: 1002 });
    expect(labels(history)).toEqual(['a to b', 'b to d']);
  });

  test('a nudge never joins one that was undone and redone', () => {
    const undone = steppedBack(first);
    const redone = undone && steppedForward(undone.history);
    expect(edited(redone?.history ?? empty, 'b', 'c', { merge: 'nudge', at: 1001 }).done).toHaveLength(2);
  });
});
