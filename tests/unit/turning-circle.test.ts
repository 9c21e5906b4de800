import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { kingpinTrack, type Lock, turningCircle } from '../../shared-math/sweep/index.ts';
import { expectClose } from '../support/close.ts';
import { layoutOf, PLAIN_HALF } from '../support/layouts.ts';

const CAR = { wheelbase: 2640, frontAxleLoad: 4900, tyreRadius: 330, tyreWidth: 150, handwheelRadius: 190 };
const HALF_TRACK = 640;
/** mm from the kingpin out to the tyre's middle. */
const OFFSET = 70;

/** Upright kingpins, so that they stand over one place at every height; upright wheels. */
const upright = (offset: number) => ({
  ...PLAIN_HALF,
  kingpinTop: [0, HALF_TRACK, 395],
  kingpinBottom: [0, HALF_TRACK, 265],
  wheelCentre: [0, HALF_TRACK + offset, 330],
  camber: 0,
  toeIn: 0,
});
const carOf = (car = {}, offset = OFFSET) =>
  layoutOf({ axle: { beam: 'i-beam', left: upright(offset), right: 'mirror' }, car: { ...CAR, ...car } });

/** Both wheels square to the line to one turning point on the rear axle's line, `out` mm beside the car's middle. */
function rolling(out: number, side: 1 | -1): Lock {
  const inner = Math.atan2(CAR.wheelbase, out - HALF_TRACK);
  const outer = Math.atan2(CAR.wheelbase, out + HALF_TRACK);
  const [leftSteer, rightSteer] = side > 0 ? [inner, outer] : [-outer, -inner];
  return { handwheel: side * 9, cause: 'stop', leftSteer, rightSteer };
}

/** From the turning point, in plan. */
const away = (out: number, ahead: number, across: number) => Math.hypot(CAR.wheelbase + ahead, out + across);

// A car whose wheels roll about one point: plan geometry laid out by coordinates, no formula of the turn.
const turns = fc.record({
  out: fc.double({ min: 2500, max: 9000, noNaN: true }),
  side: fc.constantFrom(1 as const, -1 as const),
  offset: fc.double({ min: -60, max: 120, noNaN: true }),
});

describe('the turning circle of wheels that roll about one point', () => {
  test('between kerbs is the path of the outer tyre’s outer edge, the kingpin’s offset to it outward', () => {
    fc.assert(
      fc.property(turns, ({ out, side, offset }) => {
        const circle = turningCircle(carOf({}, offset), rolling(out, side));
        // The outer wheel's spin axis points at the turning point: from the kingpin the tyre lies straight out.
        const kingpin = away(out, 0, HALF_TRACK);
        expectClose(circle?.betweenKerbs ?? 0, 2 * (kingpin + offset + CAR.tyreWidth / 2), 1e-6);
      }),
      { seed: 5, numRuns: 40 },
    );
  });

  test('between walls is the path of the nose’s outer corner: as far ahead and as wide as the nose is', () => {
    fc.assert(
      fc.property(
        turns,
        fc.double({ min: 900, max: 1400, noNaN: true }),
        fc.double({ min: 1500, max: 2200, noNaN: true }),
        ({ out, side }, noseAhead, noseWidth) => {
          const circle = turningCircle(carOf({ noseAhead, noseWidth }), rolling(out, side));
          expectClose(circle?.betweenWalls ?? 0, 2 * away(out, noseAhead, noseWidth / 2), 1e-6);
        },
      ),
      { seed: 6, numRuns: 40 },
    );
  });

  test('a short narrow nose leaves the tyre’s own front corner foremost', () => {
    const lock = rolling(4000, 1);
    const circle = turningCircle(carOf({ noseAhead: 1, noseWidth: 400 }), lock);
    const edge = away(4000, 0, HALF_TRACK) + OFFSET + CAR.tyreWidth / 2;
    expectClose(circle?.betweenWalls ?? 0, 2 * Math.hypot(edge, CAR.tyreRadius), 1e-6);
  });

  test('is not told where the lock does not steer', () => {
    expect(
      turningCircle(carOf(), { handwheel: 0, cause: 'stop', leftSteer: 0, rightSteer: 0 }),
    ).toBeUndefined();
  });
});

test('the kingpin track is between the kingpins’ lines at the wheel centres, wherever on the kingpins these are', () => {
  for (const z of [270, 290, 330, 380]) {
    const half = { ...PLAIN_HALF, wheelCentre: [0, 710, z] };
    const layout = layoutOf({
      axle: { beam: 'i-beam', left: half, right: 'mirror' },
      car: { ...CAR, tyreRadius: z },
    });
    // By hand: 18 mm inboard over the 130 from bottom (265 up, 649 out) to top.
    expectClose(kingpinTrack(layout), 2 * (649 - (18 * (z - 265)) / 130), 1e-9, `wheel centre at ${z}`);
  }
});
