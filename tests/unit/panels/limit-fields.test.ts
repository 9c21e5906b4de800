import { describe, expect, test } from 'vitest';
import { LIMIT_GROUPS, LIMIT_NAMES, LIMITS, type LimitName } from '../../../shared-math/findings/index.ts';
import { limitWords, ownCount, withTypedLimit } from '../../../src-renderer/panels/findings/limit-fields.ts';

const INCHES = { unit: 'in', fraction: 16 } as const;
const MM = { unit: 'mm', fraction: 16 } as const;

function typed(name: LimitName, text: string, style: typeof INCHES | typeof MM = INCHES) {
  const outcome = withTypedLimit({}, name, text, style);
  return outcome.ok ? outcome.value[name] : outcome.failure;
}

describe('a limit as it is typed', () => {
  test.each<[LimitName, string, number]>([
    ['ballTilt', '18', 18],
    ['ballTilt', ' 18.5 ° ', 18.5],
    ['bumpSteerSlope', '0.2', 0.2],
    ['bumpSteerSlope', '0.2° per inch', 0.2],
    ['bumpSteerSlope', '0.2 per 25 mm', 0.2032],
    ['aimHeight', '1/4', 6.35],
    ['aimHeight', '8 mm', 8],
    ['rimForce', '30', 30 * 4.4482216152605],
    ['rimForce', '120 N', 120],
    ['ratioMost', '20 to 1', 20],
    ['turnsMost', '4.5 turns', 4.5],
    ['barLinkLength', '15 per cent', 0.15],
    ['barLinkLength', '15%', 0.15],
  ])('%s: "%s"', (name, text, wanted) => {
    expect(typed(name, text)).toBeCloseTo(wanted, 9);
  });

  test.each<[LimitName, string, number]>([
    ['aimHeight', '8', 8],
    ['rimForce', '120', 120],
    ['bumpSteerSlope', '0.25', 0.254],
    ['bumpSteerSlope', '0.3 per inch', 0.3],
  ])('%s: "%s" by a reader of millimetres', (name, text, wanted) => {
    expect(typed(name, text, MM)).toBeCloseTo(wanted, 9);
  });

  test('reads back as it is told, in either unit', () => {
    for (const style of [INCHES, MM])
      for (const name of LIMIT_NAMES) {
        const other = name.endsWith('Least') ? 0.7 : 1.3;
        const wanted = LIMITS[name].usual * other;
        const read = typed(name, limitWords(name, wanted, style), style);
        expect(read, name).toBeTypeOf('number');
        const told = limitWords(name, read as number, style);
        expect(told, name).toBe(limitWords(name, wanted, style));
      }
  });

  test('emptied, or typed as the usual figure, is the usual one again; the others stay', () => {
    const own = { ballTilt: 18, bind: 2 };
    expect(withTypedLimit(own, 'ballTilt', '  ', INCHES)).toEqual({ ok: true, value: { bind: 2 } });
    expect(withTypedLimit(own, 'ballTilt', '25', INCHES)).toEqual({ ok: true, value: { bind: 2 } });
    expect(withTypedLimit(own, 'bind', '3 mm', INCHES)).toEqual({
      ok: true,
      value: { ballTilt: 18, bind: 3 },
    });
  });

  test('that cannot be is refused in one line that says what it could be', () => {
    expect(typed('ballTilt', 'a lot')).toMatch(/^"a lot" is not an angle/);
    expect(typed('ballTilt', '90')).toBe('it must be from 1° to 60°');
    expect(typed('rimForce', '-3')).toBe('it must be from 2 lb to 450 lb');
    expect(typed('ratioMost', 'quick')).toBe('"quick" is not a number');
    expect(typed('casterLeast', '9')).toBe('it cannot be more than “Caster, at most”, 8°');
    expect(typed('toeMost', '0.5', MM)).toBe(
      'it cannot be less than “Total toe-in front to rear of the tyres, at least”, 0.8 mm',
    );
  });

  test('counts as the shop’s own only where it differs', () => {
    expect(ownCount({})).toBe(0);
    expect(ownCount({ ballTilt: 25, bind: 2 })).toBe(1);
  });
});

test('every group of the list has limits of its own', () => {
  for (const group of LIMIT_GROUPS)
    expect(LIMIT_NAMES.filter((name) => LIMITS[name].group === group).length, group).toBeGreaterThan(0);
});
