import { describe, expect, test } from 'vitest';
import { bodiesOf } from '../../../shared-math/clearance/index.ts';
import { drawLayout } from '../../../shared-math/drawing/index.ts';
import { analyse, findings } from '../../../shared-math/findings/index.ts';
import { forceFigures } from '../../../shared-math/forces/index.ts';
import { ballJoints } from '../../../shared-math/joints/index.ts';
import { readLayout } from '../../../shared-math/layout/index.ts';
import { createState, poseAxle } from '../../../shared-math/linkage/index.ts';
import { rideParameters, springRateOf } from '../../../shared-math/ride/index.ts';
import { DEGREE, expectClose } from '../../support/close.ts';
import { frontEndOf, LOCATIONS, layoutOf, PLAIN_HALF, rawLayout } from '../../support/layouts.ts';
import { rawResiduals } from '../../support/raw-equations.ts';

const PINNED = LOCATIONS['quarter-elliptic'];
const SLIDING = { ...PINNED, eyes: 'sliding' };
const TUBE = { axle: { beam: 'tube', left: PLAIN_HALF, right: 'mirror' } };
const rodFrame = (PINNED['left'] as { rod: { frame: number[] } }).rod.frame;

/** Straight and level at ride height, 520 mm from clamp to eye; the rod below it as long as its arc. */
const PARALLEL = {
  kind: 'quarter-elliptic',
  eyes: 'pinned',
  left: {
    butt: [-680, 410, 390],
    clamp: [-520, 410, 390],
    eye: [0, 410, 390],
    rod: { axle: [0, 410, 270], frame: [-390, 410, 270] },
  },
  right: 'mirror',
};

describe('quarter-elliptic springs pinned to the axle', () => {
  test.each([-75, -30, 30, 75])(
    'with a rod of three quarters of their length carry the axle upright, %d mm',
    (heave) => {
      // Two level arms of one length are a parallelogram: an arc of 3/4 of 520 mm, by Pythagoras, and no pitch.
      const state = createState();
      expect(poseAxle(frontEndOf({ location: PARALLEL }), heave, 0, state)).toBe(true);
      expectClose(state.axle.x, Math.sqrt(390 ** 2 - heave ** 2) - 390, 1e-9, 'x');
      expectClose(state.axle.pitch, 0, 1e-12, 'pitch');
      expectClose(state.bind, 0, 1e-6, 'bind');
    },
  );

  test('follow the leaf that bends in a circle: its end, integrated', () => {
    // Curvature alike all along, stepped by the midpoint rule: no closed form. The parallelogram lets the eye go as it will.
    const end = (bend: number) => {
      let [x, z] = [0, 0];
      for (let i = 0; i < 4000; i += 1) {
        const slope = (bend * (i + 0.5)) / 4000;
        x += (Math.cos(slope) * 520) / 4000;
        z += (Math.sin(slope) * 520) / 4000;
      }
      return { x, z };
    };
    const state = createState();
    for (const bend of [-0.25, 0.1, 0.28]) {
      const { x, z } = end(bend);
      poseAxle(frontEndOf({ location: PARALLEL }), z, 0, state);
      expectClose(state.axle.x, x - 520, 0.002 * (520 - x), `bent by ${bend}`);
    }
  });

  test('on a tube give a little in roll as bars do, on an I-beam nothing that is shown', () => {
    const state = createState();
    poseAxle(frontEndOf({ location: PINNED }), 0, 3 * DEGREE, state);
    expect(state.bind).toBeLessThan(0.05);
    poseAxle(frontEndOf({ location: PINNED, ...TUBE }), 0, 3 * DEGREE, state);
    expect(state.bind).toBeGreaterThan(0.2);
  });

  test('have balls at both ends of their rods, and no link that buckles in their springs', () => {
    const ids = ballJoints(layoutOf({ location: PINNED })).map(({ id }) => id);
    expect(ids.filter((id) => id.startsWith('location.left'))).toEqual([
      'location.left.rod.axle',
      'location.left.rod.frame',
    ]);
    const figures = forceFigures(frontEndOf({ location: PINNED }));
    expect(figures.find(({ id }) => id === 'location.left.eye')).toMatchObject({
      name: 'Left spring, along the leaf',
      kind: 'link',
    });
    expect(figures.find(({ id }) => id === 'location.left.eye')?.link).toBeUndefined();
    expect(figures.find(({ id }) => id === 'location.left.rod.frame')?.link?.key).toBe('rods');
  });
});

describe('quarter-elliptic springs that slide on the axle', () => {
  test('leave the axle to rods that are rigid with it: it moves as on hairpins with their balls there', () => {
    const hairpins = { kind: 'hairpins', left: { framePivot: rodFrame }, right: 'mirror' };
    const [one, other] = [createState(), createState()];
    for (const [heave, roll] of [
      [60, 0],
      [-40, 2],
    ] as const) {
      poseAxle(frontEndOf({ location: SLIDING }), heave, roll * DEGREE, one);
      poseAxle(frontEndOf({ location: hairpins }), heave, roll * DEGREE, other);
      expect(one.axle).toEqual(other.axle);
      expect(one.bind).toBe(other.bind);
    }
    const layout = layoutOf({ location: SLIDING });
    expect(
      ballJoints(layout)
        .filter(({ id }) => id.startsWith('location.'))
        .map(({ id }) => id),
    ).toEqual(['location.left.rod.frame', 'location.right.rod.frame']);
  });

  test('make a tube’s rods bind in roll, and that is found', () => {
    const found = (over: object) =>
      findings(analyse(layoutOf({ location: SLIDING, ...over })), { unit: 'mm', fraction: 16 }).find(
        ({ rule }) => rule === 'bind-in-roll',
      );
    expect(found(TUBE)?.severity).toBe('stop');
    expect(found(TUBE)?.advice).toMatch(/^A tube does not twist/);
    expect(found({})?.severity).toBe('info');
  });

  test('the raw equations of both ways are met at ride height', () => {
    for (const location of [PINNED, SLIDING])
      for (const row of rawResiduals(layoutOf({ location }), 0, 0, { x: 0, y: 0, yaw: 0, left: 0, right: 0 }))
        expectClose(row, 0, 1e-9);
  });
});

describe('a quarter-elliptic spring', () => {
  test('is as stiff as the handbook’s cantilever of leaves, and carries at its eye', () => {
    const leaf = { kind: 'leaf', lie: 'along', length: 520, width: 50, thickness: 7, leaves: 6 } as const;
    const layout = layoutOf({ location: PINNED, ride: { spring: leaf } });
    // Quarter-elliptic: deflection 6 F L³/(E n b t³) (textbooks of machine design; from memory). E 206 GPa.
    const rate = (206_000 * 6 * 50 * 7 ** 3) / (6 * 520 ** 3);
    expectClose(springRateOf(leaf, layout), rate, 1e-9 * rate, 'rate');
    const ride = rideParameters(layout);
    expect(ride.ok && ride.value.parameters.springBase).toBe(840);
  });

  test('is refused off the line of its clamp, or with no clamp to leave', () => {
    const refused = (over: object) => {
      const read = readLayout(
        rawLayout({ location: { ...PINNED, left: { ...(PINNED['left'] as object), ...over } } }),
      );
      return read.ok ? '' : read.failure.path;
    };
    expect(refused({})).toBe('');
    expect(refused({ butt: [-500, 412, 445] })).toBe('location.left.butt');
    expect(refused({ eye: [-480, 412, 250] })).toBe('location.left.eye');
    expect(refused({ butt: [-340, 410, 445] })).toBe('location.left.eye');
    expect(refused({ rod: { axle: [-30, 425, 268], frame: [-30, 425, 268] } })).toBe(
      'location.left.rod.frame',
    );
  });

  test('is drawn with its rod, and both are judged for room', () => {
    const layout = layoutOf({ location: PINNED });
    const parts = ['quarter-left', 'radius-rod-left', 'quarter-right', 'radius-rod-right'];
    expect(drawLayout(layout).parts.map(({ id }) => id)).toEqual(expect.arrayContaining(parts));
    expect(bodiesOf(layout).map(({ id }) => id)).toEqual(expect.arrayContaining(parts));
    // The springs along the rails carry the car: none is drawn across it.
    expect(drawLayout(layout).parts.map(({ id }) => id)).not.toContain('transverse-spring');
  });
});
