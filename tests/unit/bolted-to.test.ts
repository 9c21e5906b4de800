import { describe, expect, test } from 'vitest';
import { bodiesOf, pairsOf } from '../../shared-math/clearance/index.ts';
import { LOCATIONS, layoutOf } from '../support/layouts.ts';

const member = (x: number) => ({
  kind: 'box',
  name: 'Gearbox crossmember',
  role: 'crossmember',
  centre: [x, 0, 385],
  size: [60, 676, 50],
  mirrored: false,
});

const judged = (over: Record<string, unknown>) =>
  pairsOf(bodiesOf(layoutOf(over))).map(({ a, b }) => `${a.id} ${b.id}`);

describe("a wishbone's ball", () => {
  test('is bolted to the crossmember beside it, which it is not judged against', () => {
    const over = { location: LOCATIONS.wishbone, obstacles: [member(-1010)] };
    expect(judged(over)).not.toContain('wishbone obstacle-0');
    expect(judged(over)).toContain('drag-link obstacle-0');
  });

  test('is judged against a crossmember that it is not beside, and against what is no crossmember', () => {
    expect(judged({ location: LOCATIONS.wishbone, obstacles: [member(-500)] })).toContain(
      'wishbone obstacle-0',
    );
    expect(
      judged({ location: LOCATIONS.wishbone, obstacles: [{ ...member(-1010), role: 'other' }] }),
    ).toContain('wishbone obstacle-0');
  });
});
