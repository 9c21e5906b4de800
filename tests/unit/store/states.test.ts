import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sampleLayout } from '../../support/host-sample.ts';
import { testStore, withVariant } from '../../support/store-sample.ts';

/** Texts that stand far from one another and near, short and longer than deflate looks back. */
const text = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 300 }),
  fc.json({ maxDepth: 4 }),
  fc
    .tuple(fc.integer({ min: 1, max: 3000 }), fc.string({ unit: 'grapheme', maxLength: 40 }))
    .map(([times, words]) => words.repeat(times)),
  fc.array(fc.integer(), { maxLength: 200 }).map((numbers) => JSON.stringify({ ...sampleLayout(), numbers })),
);

test('every state comes back byte for byte, whatever stood before it', () => {
  const store = testStore();
  fc.assert(
    fc.property(fc.array(text, { minLength: 1, maxLength: 12 }), (texts) => {
      const id = withVariant(store);
      store.together(() => {
        for (const [index, each] of texts.entries())
          store.history.add(id, { step: `${index}`, label: 'Edit' }, index, each);
      });
      const read = store.variants.states(id).map((state) => store.history.text(state.id));
      expect(read.reverse().slice(1)).toEqual(texts.map((each) => Buffer.from(each).toString()));
    }),
    { numRuns: 40, seed: 20_260_310 },
  );
});

test('a small edit costs at most 200 bytes, and two hundred of them a tenth of their texts', () => {
  const store = testStore();
  const id = withVariant(store);
  let plain = 0;
  for (let revision = 1; revision <= 200; revision += 1) {
    const document = sampleLayout('Arm down', 200 + (revision % 97) * 1.37);
    plain += JSON.stringify(document).length;
    const edit = { step: `edit ${revision}`, label: 'Drag', force: false };
    store.variants.save({ id, document, revision, ...edit });
  }
  const [most, states] = store.db
    .prepare<[], [number, number]>('SELECT max(length(packed)), sum(length(packed)) FROM history')
    .raw()
    .get() as [number, number];
  const bases = store.db.prepare<[], number>('SELECT sum(length(packed)) FROM base').pluck().get() as number;
  expect(most).toBeLessThan(200);
  expect(states + bases).toBeLessThan(plain / 10);
});

test('a state whose bytes, or whose base, were changed is refused, never read as something else', () => {
  for (const table of ['history', 'base']) {
    const store = testStore();
    const id = withVariant(store);
    const [state] = store.variants.states(id);
    const packed = store.db.prepare<[], Buffer>(`SELECT packed FROM ${table}`).pluck().get() as Buffer;
    for (let at = 0; at < packed.length; at += Math.ceil(packed.length / 40)) {
      const changed = Buffer.from(packed);
      changed[at] = (changed[at] as number) ^ 0x10;
      store.db.prepare(`UPDATE ${table} SET packed = ?`).run(changed);
      const text = store.history.text(state?.id ?? 0);
      expect([undefined, JSON.stringify(sampleLayout())]).toContain(text);
      if (text === undefined)
        expect(() => store.history.read(state?.id ?? 0)).toThrow(
          'this state: the stored document is damaged',
        );
    }
    store.db.prepare(`UPDATE ${table} SET packed = ?`).run(packed.subarray(0, packed.length / 2));
    expect(store.history.text(state?.id ?? 0)).toBeUndefined();
    // The layout itself is untouched, and what is saved next is kept whole again.
    const { document } = store.variants.open(id);
    store.variants.save({ id, document, revision: 1, step: 's', label: 'Edit', force: false });
    expect(store.history.read(store.variants.states(id)[0]?.id ?? 0)).toEqual(document);
  }
});

test('bases that no state needs any more are taken away with the states', () => {
  let time = 0;
  const store = testStore({ now: () => time });
  const id = withVariant(store);
  for (let revision = 1; revision <= 400; revision += 1) {
    time += 1000;
    // Each fortieth is another layout altogether.
    const notes = Array.from({ length: 300 }, (_, at) => Math.floor(revision / 40) * 7919 * (at + 1)).join(
      ' ',
    );
    const edit = { step: `edit ${revision}`, label: 'Edit', force: false };
    store.variants.save({ id, document: { ...sampleLayout(), notes }, revision, ...edit });
  }
  const [bases, used] = ['SELECT count(*) FROM base', 'SELECT count(DISTINCT base) FROM history'].map(
    (count) => store.db.prepare<[], number>(count).pluck().get(),
  );
  expect(used).toBeGreaterThan(5);
  expect(used).toBeLessThan(11);
  expect(bases).toBe(used);
});
