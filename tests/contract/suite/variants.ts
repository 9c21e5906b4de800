import { expect, test } from 'vitest';
import { impossibleLayout, sampleLayout } from '../../support/host-sample.ts';
import { begin, drawer, labels, type OpenSession } from '../../support/host-session.ts';
import { failure, value } from '../../support/host-transports.ts';

export function variantTests(open: OpenSession): void {
  test('a document comes back as it was given', async () => {
    const { call, reopen } = await open();
    const { id, carId } = await begin(call);
    const opened = await value(await reopen(), 'variant.open', { id });
    expect(opened).toEqual({
      id,
      carId,
      carName: 'Roadster',
      customerName: 'Odd Fellow',
      document: sampleLayout(),
      revision: 1,
      savedAt: expect.closeTo(Date.now(), -5),
    });
  });

  test('saves of one step share a place in the history', async () => {
    const { call } = await open();
    const { id } = await begin(call);
    let revision = 1;
    const save = async (height: number, step: string) => {
      const document = sampleLayout('Arm down', height);
      ({ revision } = await value(call, 'variant.save', { id, document, revision, step, label: 'Drag' }));
    };
    await save(340, 'first drag');
    await save(330, 'first drag');
    await save(320, 'first drag');
    await save(310, 'second drag');
    expect(revision).toBe(5);
    expect(await labels(call, id)).toEqual(['Drag', 'Drag', 'Created']);
    const { states } = await value(call, 'history.list', { variantId: id });
    const heights = await Promise.all(
      states.map(async (state) => (await value(call, 'history.read', { id: state.id })).document),
    );
    expect(heights.map((document) => document.steering.box.pitmanBall[2])).toEqual([310, 320, 346]);
  });

  test('a save from an old revision is refused, and forced keeps the other state', async () => {
    const { call } = await open();
    const { id } = await begin(call);
    const ours = { id, document: sampleLayout('Arm down', 300), revision: 1, step: 'ours', label: 'Ours' };
    const theirs = { ...ours, document: sampleLayout('Arm down', 200), step: 'theirs', label: 'Theirs' };
    await value(call, 'variant.save', theirs);
    expect(await failure(call, 'variant.save', ours)).toBe(
      'changed-elsewhere: Arm down has been changed in another window',
    );
    expect((await value(call, 'variant.open', { id })).document).toEqual(theirs.document);

    const { revision } = await value(call, 'variant.save', { ...ours, force: true });
    expect(revision).toBe(3);
    expect((await value(call, 'variant.open', { id })).document).toEqual(ours.document);
    expect(await labels(call, id)).toEqual(['Ours', 'Theirs', 'Created']);
  });

  test('a forced save does not overwrite the other window even under the same step', async () => {
    const { call } = await open();
    const { id } = await begin(call);
    const save = { id, revision: 1, step: 'one word', label: 'Theirs' };
    await value(call, 'variant.save', { ...save, document: sampleLayout('Arm down', 200) });
    await value(call, 'variant.save', {
      ...save,
      document: sampleLayout('Arm down', 300),
      label: 'Ours',
      force: true,
    });
    expect(await labels(call, id)).toEqual(['Ours', 'Theirs', 'Created']);
  });

  test('a save whose reply was lost may be sent again', async () => {
    const { call } = await open();
    const { id } = await begin(call);
    const save = { id, document: sampleLayout('Arm down', 300), revision: 1, step: 's', label: 'Drag' };
    const first = await value(call, 'variant.save', save);
    expect(await value(call, 'variant.save', save)).toEqual(first);
    expect(await labels(call, id)).toEqual(['Drag', 'Created']);
  });

  test('an impossible layout is refused with its place and changes nothing', async () => {
    const { call } = await open();
    const { id, carId } = await begin(call);
    const save = { id, document: impossibleLayout(), revision: 1, step: 's', label: 'Drag' };
    const reason =
      'refused-document: steering.dragLinkBall: on the same spot as the pitman ball: the drag link has no length';
    expect(await failure(call, 'variant.save', save)).toBe(reason);
    expect(await failure(call, 'variant.add', { carId, document: impossibleLayout() })).toBe(reason);
    expect(await value(call, 'variant.open', { id })).toMatchObject({
      document: sampleLayout(),
      revision: 1,
    });
    expect(await labels(call, id)).toEqual(['Created']);
    expect(await drawer(call)).toEqual(['Odd Fellow', '  Roadster', '    Arm down']);
  });

  test('renaming is a save: name in the document, a new revision, a place in the history', async () => {
    const { call } = await open();
    const { id } = await begin(call);
    expect((await value(call, 'variant.rename', { id, name: 'Arm up' })).revision).toBe(2);
    expect(await value(call, 'variant.open', { id })).toMatchObject({
      document: { name: 'Arm up' },
      revision: 2,
    });
    expect(await drawer(call)).toContain('    Arm up');
    expect(await labels(call, id)).toEqual(['Renamed to Arm up', 'Created']);
  });

  test('copies count on, and a name that is taken is made distinct', async () => {
    const { call } = await open();
    const { id, carId } = await begin(call);
    const { id: copy } = await value(call, 'variant.duplicate', { id });
    await value(call, 'variant.duplicate', { id });
    await value(call, 'variant.duplicate', { id: copy });
    await value(call, 'variant.add', { carId, document: sampleLayout() });
    expect((await drawer(call)).slice(2)).toEqual([
      '    Arm down',
      '    Arm down copy',
      '    Arm down copy 2',
      '    Arm down copy 3',
      '    Arm down 2',
    ]);
    expect((await value(call, 'variant.open', { id: copy })).document).toEqual(sampleLayout('Arm down copy'));
    expect(await labels(call, copy)).toEqual(['Copied from Arm down']);
  });

  test('a variant moves to another car with its history', async () => {
    const { call } = await open();
    const { id, customerId } = await begin(call);
    const { id: carId } = await value(call, 'car.add', { customerId, name: 'Tourer' });
    await value(call, 'variant.rename', { id, name: 'Arm up' });
    await value(call, 'variant.move', { id, carId });
    expect(await drawer(call)).toEqual(['Odd Fellow', '  Roadster', '  Tourer', '    Arm up']);
    expect(await labels(call, id)).toHaveLength(2);
  });

  test('a variant that another window put in the bin still takes saves', async () => {
    const { call } = await open();
    const { id } = await begin(call);
    await value(call, 'bin.put', { kind: 'variant', id });
    const document = sampleLayout('Arm down', 300);
    await value(call, 'variant.save', { id, document, revision: 1, step: 's', label: 'Drag' });
    await value(call, 'bin.restore', { kind: 'variant', id });
    expect((await value(call, 'variant.open', { id })).document).toEqual(document);
  });
}
