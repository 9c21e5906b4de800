import { describe, expect, test } from 'vitest';
import { hardpoints, type Photo } from '../../../shared-math/layout/index.ts';
import { checkLevel, planeOf } from '../../../shared-math/trace/index.ts';
import { DEGREE } from '../../support/close.ts';
import { boardPhoto } from '../../support/photo-of-board.ts';
import { photographedCar } from '../../support/photo-scene.ts';
import { type Pinhole, photographed } from '../../support/pinhole.ts';

const points = hardpoints(photographedCar());
const PLANE = 860;
const camera: Pinhole = {
  at: [-700, 4900, 820],
  lookAt: [-420, PLANE, 480],
  up: [0, 0, 1],
  roll: 0.05,
  focal: 3100,
  size: [4000, 3000],
  bend: 0.03,
};
const spot = (x: number, y: number, z: number) => photographed(camera, [x, y, z]);

function check(photo: Photo) {
  const plane = planeOf(photo);
  if (!plane.ok) throw new Error(plane.failure.step);
  return checkLevel(photo, plane.value, points);
}
const board = (change: Partial<Photo> = {}) => boardPhoto(camera, PLANE, { change });

/** The floor by both tyres, well in front of the board's plane or behind it; a board that leans by an angle tilts it. */
const floor = (y: number): Photo['levelCheck'] => ({
  by: 'floor',
  from: spot(500, y, 0),
  to: spot(-1400, y, 0),
});

describe('a level that is checked', () => {
  test('by the floor agrees at any depth when the board stands level', () => {
    for (const y of [860, 700, -700, 1400]) {
      const found = check(board({ levelCheck: floor(y) }));
      expect(found?.by).toBe('floor');
      expect(Math.abs((found?.angle ?? 9) / DEGREE), `${y}`).toBeLessThan(0.05);
      expect(found?.agrees).toBe(true);
    }
  });

  test('by a floor that runs otherwise says by how much, and what that puts off', () => {
    const slope = 0.9 * DEGREE;
    const rise = Math.tan(slope) * 1900;
    // Its back end, right in the picture, lies lower.
    const from = spot(500, 700, 0);
    const to = spot(-1400, 700, -rise);
    for (const levelCheck of [
      { by: 'floor', from, to },
      { by: 'floor', from: to, to: from },
    ] as const) {
      const found = check(board({ levelCheck }));
      expect((found?.angle ?? 0) / DEGREE).toBeCloseTo(0.9, 1);
      expect(found?.agrees).toBe(false);
      // From the wheel's centre to what lies farthest from it.
      const farthest = Math.max(...points.map(({ at }) => Math.hypot(at[0], at[2] - 330)));
      expect(found?.worst?.off).toBeCloseTo(slope * farthest, 0);
    }
  });

  test('by both wheel centres, from the side; from above they lie across the car', () => {
    const wheels = { by: 'wheels', from: spot(0, 710, 330), to: spot(-2640, 710, 330) } as const;
    expect(check(board({ levelCheck: wheels }))?.agrees).toBe(true);
    const above: Pinhole = {
      ...camera,
      at: [-400, 100, 4900],
      lookAt: [-430, 0, 0],
      up: [0, -1, 0],
      roll: 0.03,
    };
    const seen = (x: number, y: number, z = 0) => photographed(above, [x, y, z]);
    const places = [
      [0, 0],
      [1800, 0],
      [1800, 1800],
      [0, 1800],
    ] as const;
    const corners = [seen(450, -900), seen(-1350, -900), seen(-1350, 900), seen(450, 900)];
    const photo = board({
      view: 'top',
      depth: 0,
      distance: 4900,
      straighten: { points: corners.map((at, i) => ({ at, place: places[i] as (typeof places)[number] })) },
      lens: undefined,
      anchor: undefined,
      levelCheck: { by: 'wheels', from: seen(0, 710, 330), to: seen(0, -710, 330) },
    });
    const straight = check({ ...photo, size: above.size });
    expect(Math.abs((straight?.angle ?? 9) / DEGREE)).toBeLessThan(0.5);
    const askew = check({
      ...photo,
      levelCheck: { by: 'wheels', from: seen(0, 710, 330), to: seen(-60, -710, 330) },
    });
    expect(
      Math.abs(Math.abs((askew?.angle ?? 0) - (straight?.angle ?? 0)) - Math.atan2(60, 1420)),
    ).toBeLessThan(0.1 * DEGREE);
    expect(askew?.agrees).toBe(false);
  });

  test('by the rectangle, where a level line was given beside it', () => {
    expect(check(board())).toBeUndefined();
    const level = { from: spot(400, 700, 30), to: spot(-1200, 700, 30) };
    expect(check(board({ level }))).toMatchObject({ by: 'rectangle', agrees: true });
    const off = { from: spot(400, 700, 30), to: spot(-1200, 700, 75) };
    const found = check(board({ level: off }));
    expect(found).toMatchObject({ by: 'rectangle', agrees: false });
    expect(Math.abs((found?.angle ?? 0) / DEGREE)).toBeCloseTo(1.6, 1);
  });

  test('clicks that tremble by a pixel are no disagreement, more than once in a thousand', () => {
    let seed = 7;
    const random = () => {
      seed = (seed * 48271) % 2147483647;
      return seed / 2147483647;
    };
    const slip = () => {
      const radius = Math.sqrt(-2 * Math.log(random()));
      const angle = 2 * Math.PI * random();
      return [radius * Math.cos(angle), radius * Math.sin(angle)] as const;
    };
    let disagreements = 0;
    for (let i = 0; i < 300; i += 1) {
      const levelCheck = floor(700) as NonNullable<Photo['levelCheck']>;
      const [from, to] = [levelCheck.from, levelCheck.to].map(([x, y]) => {
        const [dx, dy] = slip();
        return [x + dx, y + dy] as const;
      });
      const photo = boardPhoto(camera, PLANE, {
        slip,
        change: { levelCheck: { by: 'floor', from: from ?? levelCheck.from, to: to ?? levelCheck.to } },
      });
      if (check(photo)?.agrees === false) disagreements += 1;
    }
    expect(disagreements).toBeLessThanOrEqual(3);
  });
});
