import { expect, onTestFinished, test } from 'vitest';
import { openStore } from '../../../src-main/store/index.ts';
import { photoUseIn } from '../../../src-main/store/photo-use.ts';
import { TICKET_PHOTO } from '../../../src-main/store/tickets.ts';
import { photographedLayout } from '../../contract/suite/photos.ts';
import { FRAME_DXF } from '../../support/drawing-files.ts';
import { testFolder } from '../../support/host-folder.ts';
import { greyPng } from '../../support/picture-files.ts';

const FACTS = { type: 'image/png', width: 8, height: 6 };

test('photos are kept once, duplicates copy none, and one that nothing names goes with the bin', () => {
  let time = 1_000_000;
  const store = openStore({ folder: testFolder(), now: () => time });
  onTestFinished(() => store.close());
  const { photos, cars, customers, variants, bin } = store;
  const named = photos.put(greyPng(1), FACTS);
  const loose = photos.put(greyPng(2), FACTS);
  expect(photos.put(greyPng(1), FACTS)).toBe(named);
  expect(photos.count()).toBe(2);

  const car = cars.add(customers.add('Odd Fellow', ''), 'Roadster', '');
  const first = variants.add(car, photographedLayout(named), 'Begun');
  const second = variants.duplicate(first);
  expect(photos.count()).toBe(2);

  // Within the hour a layout that names it may still be on its way.
  bin.empty();
  expect(photos.count()).toBe(2);
  time += 3_600_001;
  bin.empty();
  expect([photos.count(), photos.read(loose)]).toEqual([1, undefined]);

  bin.put('variant', first);
  bin.empty();
  expect(photos.read(named)?.content).toEqual(greyPng(1));

  // An earlier state that can be gone back to names it still.
  const { document, revision } = variants.open(second);
  variants.save({
    id: second,
    document: { ...document, photos: [] },
    revision,
    step: 's',
    label: 'Photo taken away',
    force: false,
  });
  bin.empty();
  expect(photos.count()).toBe(1);
  bin.put('variant', second);
  bin.empty();
  expect(photos.count()).toBe(0);
});

test('a drawing under a view is named as a photo is, also where all is noted anew', () => {
  let time = 1_000_000;
  const folder = testFolder();
  const store = openStore({ folder, now: () => time });
  const drawing = store.photos.put(Buffer.from(FRAME_DXF), {
    type: 'image/vnd.dxf',
    width: undefined,
    height: undefined,
  });
  const car = store.cars.add(store.customers.add('Odd Fellow', ''), 'Roadster', '');
  const at = { view: 'side', name: 'frame', unit: 25.4, unitFrom: 'file', turn: 0, at: [0, 0] } as const;
  const underlays = [{ ...at, hash: drawing, shown: true, layersOff: [] }];
  store.variants.add(car, { ...photographedLayout(drawing), photos: [], underlays }, 'Begun');
  time += 3_600_001;
  store.bin.empty();
  expect(store.photos.read(drawing)?.type).toBe('image/vnd.dxf');
  store.db.exec('DELETE FROM photo_use');
  photoUseIn(store.db).noteDocuments();
  store.bin.empty();
  expect(store.photos.count()).toBe(1);
  store.close();
});

test('a photo whose hash merely stands in the words of a layout is named by none', () => {
  let time = 1_000_000;
  const store = openStore({ folder: testFolder(), now: () => time });
  onTestFinished(() => store.close());
  const hash = store.photos.put(greyPng(1), FACTS);
  const car = store.cars.add(store.customers.add('Odd Fellow', ''), 'Roadster', '');
  store.variants.add(car, { ...photographedLayout(hash), photos: [], notes: `"hash":"${hash}"` }, 'Begun');
  time += 3_600_001;
  store.bin.empty();
  expect(store.photos.count()).toBe(0);
});

test('the photo of a ticket stays while the ticket does, in the bin too, and goes with it', () => {
  let time = 1_000_000;
  const store = openStore({ folder: testFolder(), now: () => time });
  onTestFinished(() => store.close());
  const { photos, tickets, bin } = store;
  const [first, second] = [photos.put(greyPng(1), FACTS), photos.put(greyPng(2), FACTS)];
  const said = (hash: string) => ({
    customer: 'Quick Kim',
    note: '',
    headline: '',
    question: {
      kind: 'spline',
      over: 'half',
      fromPhoto: true,
      photo: { hash, rim: [] as [number, number][] },
    } as const,
  });
  const { id } = tickets.add(said(first));
  time += 3_600_001;
  bin.put('ticket', id);
  bin.restore('ticket', id);
  bin.empty();
  expect([photos.read(first)?.content, photos.read(second)]).toEqual([greyPng(1), undefined]);
  // Another photo in its place: the one before is named by nothing.
  const third = photos.put(greyPng(3), FACTS);
  tickets.save(id, said(third), 1);
  time += 3_600_001;
  bin.empty();
  expect([photos.read(first), photos.read(third)?.content]).toEqual([undefined, greyPng(3)]);
  // What a damaged ticket says cannot be read, and stops nothing.
  store.db.prepare("UPDATE ticket SET question = 'torn'").run();
  bin.put('ticket', id);
  bin.empty();
  expect(photos.count()).toBe(0);
  // A search by the index, not through the text of every ticket.
  const way = store.db.prepare(`EXPLAIN QUERY PLAN SELECT 1 FROM ticket WHERE ${TICKET_PHOTO} = ?`);
  expect(JSON.stringify(way.all(first))).toContain('ticket_photo');
});
