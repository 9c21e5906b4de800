import { describe, expect, test } from 'vitest';
import { HISTORY_MAX } from '../../../src-main/store/index.ts';
import { sampleLayout } from '../../support/host-sample.ts';
import { testStore, withVariant } from '../../support/store-sample.ts';

describe('the history', () => {
  test('keeps the first state and the newest of very many, of each variant for itself', () => {
    const store = testStore();
    const quiet = withVariant(store);
    const id = withVariant(store);
    const saves = HISTORY_MAX + 50;
    for (let revision = 1; revision <= saves; revision += 1) {
      const document = sampleLayout('Arm down', 200 + (revision % 100));
      store.variants.save({
        id,
        document,
        revision,
        step: `${revision}`,
        label: `Edit ${revision}`,
        force: false,
      });
    }
    const labels = store.variants.states(id).map(({ label }) => label);
    expect(labels).toHaveLength(HISTORY_MAX);
    expect(labels[0]).toBe(`Edit ${saves}`);
    expect(labels.at(-1)).toBe('Begun');
    expect(labels.at(-2)).toBe(`Edit ${saves - HISTORY_MAX + 2}`);
    expect(store.variants.states(quiet)).toHaveLength(1);
  });

  test('tells when each state was made, the last save of a drag giving its time', () => {
    let time = 1000;
    const store = testStore({ now: () => time });
    const id = withVariant(store);
    const save = (revision: number, at: number) => {
      time = at;
      store.variants.save({
        id,
        document: sampleLayout(),
        revision,
        step: 'drag',
        label: 'Drag',
        force: false,
      });
    };
    save(1, 2000);
    save(2, 2500);
    expect(store.variants.states(id).map(({ at }) => at)).toEqual([2500, 1000]);
    expect(store.variants.open(id).savedAt).toBe(2500);
  });

  test('goes with its variant when the bin is emptied', () => {
    const store = testStore();
    const id = withVariant(store);
    store.bin.put('variant', id);
    store.bin.empty();
    expect(store.db.prepare('SELECT count(*) AS count FROM history').get()).toEqual({ count: 0 });
  });
});
