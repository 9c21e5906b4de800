import { expect, test } from 'vitest';
import { openStore } from '../../../src-main/store/index.ts';
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
    const first = {
      unit: 'in',
      fraction: 16,
      snap: true,
      lastVariant: null,
      limits: {},
      tolerance: 3.175,
      // The usual doubts of the contract's survey rows.
      instruments: { tape: 1.6, 'plumb-bob': 3.2, caliper: 0.1, 'angle-finder': 0.3 },
      drawnBy: '',
      driverSide: null,
      asked: false,
      walk: { step: 0, shown: false },
      arcsDetail: true,
      folded: { sliders: false, curves: false },
      ground: 'as-computer',
    };
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

  test('a shop’s own instruments are set as a whole and last', async () => {
    const { call, reopen } = await open();
    const instruments = { tape: 0.8, 'plumb-bob': 2, caliper: 0.05, 'angle-finder': 0.2 };
    await value(call, 'settings.set', { instruments });
    expect((await value(await reopen(), 'settings.get', {})).instruments).toEqual(instruments);
  });

  test('a shop’s own limits are set as a whole and last', async () => {
    const { call, reopen } = await open();
    const own = { ballTilt: 18, toeLeast: 0.5 };
    expect((await value(call, 'settings.set', { limits: own })).limits).toEqual(own);
    expect((await value(call, 'settings.set', { unit: 'mm' })).limits).toEqual(own);
    const again = await reopen();
    expect((await value(again, 'settings.get', {})).limits).toEqual(own);
    expect((await value(again, 'settings.set', { limits: { ballTilt: 20 } })).limits).toEqual({
      ballTilt: 20,
    });
    expect((await value(again, 'settings.set', { limits: {} })).limits).toEqual({});
  });

  test.each([
    ['of an unknown name', { noSuchLimit: 1 }, /limits: unknown key "noSuchLimit"/],
    ['that is no number', { ballTilt: '18' }, /limits\.ballTilt: expected a number, found the text "18"/],
    ['that is not finite', { ballTilt: Number.NaN }, /limits\.ballTilt: expected a number/],
    ['beyond its range', { ballTilt: 400 }, /limits\.ballTilt: must be at most 60, found 400/],
    [
      'past the other end',
      { casterLeast: 9 },
      /limits\.casterLeast: past its other end, casterMost, which is 8/,
    ],
    [
      'past the other end, both set',
      { toeLeast: 3, toeMost: 2 },
      /limits\.toeLeast: past its other end, toeMost, which is 2/,
    ],
  ])('a limit %s is refused, and what was set stays', async (_, wrong, reason) => {
    const { call } = await open();
    await value(call, 'settings.set', { limits: { ballTilt: 18 } });
    const refused = await call('settings.set', { limits: wrong as Record<string, number> });
    expect(refused).toMatchObject({ ok: false, failure: { code: 'bad-request' } });
    expect(refused.ok ? '' : refused.failure.reason).toMatch(reason);
    expect((await value(call, 'settings.get', {})).limits).toEqual({ ballTilt: 18 });
  });

  test('of stored limits that no longer mean anything, the others hold', async () => {
    const { call, dataFolder, reopen } = await open();
    await value(call, 'settings.set', { limits: { ballTilt: 18 } });
    const store = openStore({ folder: dataFolder });
    store.settings.write({
      limits: { ballTilt: 18, gone: 3, rimForce: -5, casterLeast: 12, ratioMost: 'quick' },
    });
    store.close();
    expect((await value(await reopen(), 'settings.get', {})).limits).toEqual({ ballTilt: 18 });
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
