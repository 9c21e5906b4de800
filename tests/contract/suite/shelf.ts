import { expect, test } from 'vitest';
import type { CallHost } from '../../../src-main/api/contract.ts';
import type { OpenSession } from '../../support/host-session.ts';
import { failure, value } from '../../support/host-transports.ts';
import { SAMPLE_BOX, SAMPLE_JOINT, shelfPart } from '../../support/shelf-sample.ts';

/** The shelf as a person reads it: how many of what. */
async function shelf(call: CallHost): Promise<string[]> {
  const { entries } = await value(call, 'shelf.list', {});
  return entries.map(({ part }) => `${part.count} ${part.name}`);
}

export function shelfTests(open: OpenSession): void {
  test('what is put on the shelf is read back whole, changed, and there at the next start', async () => {
    const { call, reopen } = await open();
    const { id } = await value(call, 'shelf.add', { part: SAMPLE_BOX });
    await value(call, 'shelf.add', { part: SAMPLE_JOINT });
    expect((await value(call, 'shelf.list', {})).entries[0]).toEqual({ id, part: SAMPLE_BOX });
    await value(call, 'shelf.change', { id, part: { ...SAMPLE_BOX, count: 1, note: 'one sold' } });
    const again = await reopen();
    expect(await shelf(again)).toEqual(['1 Cowl box', '2 36 spline to double-D']);
    expect((await value(again, 'shelf.list', {})).entries[0]?.part.note).toBe('one sold');
  });

  test('what is taken off comes back in its old place, or lies in the bin', async () => {
    const { call } = await open();
    const { id } = await value(call, 'shelf.add', { part: SAMPLE_BOX });
    const { id: other } = await value(call, 'shelf.add', { part: SAMPLE_JOINT });
    await value(call, 'shelf.remove', { ids: [id] });
    expect(await shelf(call)).toEqual(['2 36 spline to double-D']);
    expect(await failure(call, 'shelf.change', { id, part: SAMPLE_BOX })).toBe(
      'not-found: this entry is not on the shelf',
    );
    const { entries } = await value(call, 'bin.list', {});
    expect(entries).toMatchObject([{ kind: 'part', id, name: 'Cowl box', from: '' }]);
    await value(call, 'shelf.restore', { ids: [id] });
    expect(await shelf(call)).toEqual(['2 Cowl box', '2 36 spline to double-D']);

    // All or none: the second is unknown, so the first stays where it is.
    const nobody = id.replace(/./g, (sign) => (sign === '-' ? sign : '0'));
    expect(await failure(call, 'shelf.remove', { ids: [other, nobody] })).toBe(
      'not-found: this entry of the shelf no longer exists',
    );
    expect(await shelf(call)).toHaveLength(2);

    await value(call, 'bin.put', { kind: 'part', id });
    await value(call, 'bin.empty', {});
    expect(await failure(call, 'shelf.restore', { ids: [id] })).toMatch(/^not-found: /);
    expect(await shelf(call)).toEqual(['2 36 spline to double-D']);
  });

  test('a table file goes out and comes in as the same shelf', async () => {
    const { call } = await open();
    await value(call, 'shelf.add', { part: SAMPLE_BOX });
    await value(call, 'shelf.add', { part: SAMPLE_JOINT });
    const before = (await value(call, 'shelf.list', {})).entries.map(({ part }) => part);
    for (const unit of ['in', 'mm'] as const) {
      const file = await value(call, 'shelf.exportCsv', { unit });
      expect(file.fileName).toBe('shelf.csv');
      const { added, removed } = await value(call, 'shelf.importCsv', { ...file, replace: true });
      const { entries } = await value(call, 'shelf.list', {});
      expect(entries.map(({ part }) => part)).toEqual(before);
      expect([added, removed].map(({ length }) => length)).toEqual([2, 2]);
    }
    const file = await value(call, 'shelf.exportCsv', { unit: 'mm' });
    const { added } = await value(call, 'shelf.importCsv', file);
    expect(await shelf(call)).toHaveLength(4);
    await value(call, 'shelf.remove', { ids: added });
    expect(await shelf(call)).toHaveLength(2);
  });

  test('a table file with one bad cell changes nothing and is told by line and column', async () => {
    const { call } = await open();
    await value(call, 'shelf.add', { part: SAMPLE_BOX });
    const text = 'kind,name,bearing bore (mm)\nsupport,A,19.2\nsupport,B,nineteen\n';
    expect(await failure(call, 'shelf.importCsv', { text, fileName: 'stock.csv', replace: true })).toBe(
      'refused-document: stock.csv: line 3, column "bearing bore (mm)": "nineteen" is not a length; write for example 3 1/4, 3.25 in or 82.5 mm',
    );
    expect(await shelf(call)).toEqual(['2 Cowl box']);
  });

  test('an entry that cannot be is refused by its place and reason', async () => {
    const { call } = await open();
    expect(await failure(call, 'shelf.add', { part: { ...SAMPLE_BOX, ratio: 0 } })).toBe(
      'bad-request: shelf.add: part.ratio: must be more than 0, found 0',
    );
    const [first] = SAMPLE_JOINT.kind === 'joint' ? SAMPLE_JOINT.ends : [];
    const flat = { kind: 'double-d-set-screw', bore: 14, acrossFlats: 19 };
    expect(await failure(call, 'shelf.add', { part: { ...SAMPLE_JOINT, ends: [first, flat] } })).toBe(
      'bad-request: shelf.add: part.ends[1].acrossFlats: must be less than the bore, 14; found 19',
    );
    expect(await shelf(call)).toEqual([]);
  });

  test('the demonstration fills the shelf, and once only', async () => {
    const { call } = await open();
    await value(call, 'shelf.add', {
      part: shelfPart({ kind: 'support', name: 'Rod-end support, 3/4', count: 9, bore: 19.3 }),
    });
    await value(call, 'demonstration.take', {});
    const taken = await shelf(call);
    expect(taken.length).toBeGreaterThan(12);
    // What the shop has under that name is kept as it is.
    expect(taken.filter((line) => line.includes('Rod-end support'))).toEqual(['9 Rod-end support, 3/4']);
    await value(call, 'demonstration.take', {});
    expect(await shelf(call)).toEqual(taken);
  });
}
