import { expect, test } from 'vitest';
import { begin, type OpenSession } from '../../support/host-session.ts';
import { value } from '../../support/host-transports.ts';

export function programTests(open: OpenSession): void {
  test('the program says where it keeps things', async () => {
    const { call, dataFolder } = await open();
    const about = await value(call, 'program.about', {});
    expect(about.dataFolder).toBe(dataFolder);
    expect(about.version).toMatch(/^\d+\.\d+\.\d+/);
    expect(about.notices).toEqual([]);
  });

  test('settings begin with inches, change one by one and last', async () => {
    const { call, reopen } = await open();
    const first = { unit: 'in', fraction: 16, snap: true, lastVariant: null };
    expect(await value(call, 'settings.get', {})).toEqual(first);
    expect(await value(call, 'settings.set', { unit: 'mm' })).toEqual({ ...first, unit: 'mm' });
    expect(await value(call, 'settings.set', { fraction: 64, snap: false })).toEqual({
      ...first,
      unit: 'mm',
      fraction: 64,
      snap: false,
    });
    const again = await reopen();
    expect(await value(again, 'settings.get', {})).toEqual({
      ...first,
      unit: 'mm',
      fraction: 64,
      snap: false,
    });
  });

  test('the last variant is forgotten while it lies in the bin', async () => {
    const { call } = await open();
    const { id } = await begin(call);
    expect((await value(call, 'settings.set', { lastVariant: id })).lastVariant).toBe(id);
    await value(call, 'bin.put', { kind: 'variant', id });
    expect((await value(call, 'settings.get', {})).lastVariant).toBe(null);
    await value(call, 'bin.restore', { kind: 'variant', id });
    expect((await value(call, 'settings.get', {})).lastVariant).toBe(id);
  });
}
