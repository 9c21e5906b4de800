import { Matrix, SVD } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import type { Layout } from '../../shared-math/layout/index.ts';
import { carryPoint, createState, poseAxle } from '../../shared-math/linkage/index.ts';
import {
  POSE_AXLE_FREE,
  POSE_HEAVE,
  POSE_OK,
  POSE_PITCH_LEFT,
  POSE_PITCH_RIGHT,
  POSE_ROCKER,
  POSE_ROLL,
  POSE_SIZE,
  POSE_X,
  POSE_Y,
  POSE_YAW,
  prepareAxle,
  resetPose,
  solveAxle,
} from '../../shared-math/pose/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { COMBINATIONS, frontEndOf, LATERALS, LOCATIONS, layoutOf, PLAIN_HALF } from '../support/layouts.ts';
import { isJoined, rawResiduals, softRows, solveByRegistry, toRawPose } from '../support/raw-equations.ts';

/** Numbers from 0 to 1 that are the same every time (a linear congruence, Numerical Recipes; from memory). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1_664_525 + 1_013_904_223) % 2 ** 32;
    return state / 2 ** 32;
  };
}

describe('the descent to the pose', () => {
  test.each(COMBINATIONS)('comes to one place from near and from far: $label', ({ over }) => {
    const layout = layoutOf(over);
    const model = prepareAxle(layout);
    const joined = isJoined(layout);
    expect(model.unknowns).toBe(joined ? 4 : 5);
    expect(model.centre).toEqual([0, 0, 330]);
    for (const [heave, roll] of [
      [40, 0.02],
      [-60, -0.03],
    ] as const) {
      const near = new Float64Array(POSE_SIZE);
      expect(solveAxle(model, heave, roll, near)).toBe(POSE_OK);
      expect([near[POSE_HEAVE], near[POSE_ROLL]]).toEqual([heave, roll]);
      if (joined) expect(near[POSE_PITCH_RIGHT]).toBe(near[POSE_PITCH_LEFT]);
      // Started right at this heave and roll, so that no neighbour helps, from places where plain steps overshoot.
      for (const [x, y, yaw, pitch] of [
        [5, -5, 0.01, 0.02],
        [-60, 40, 0.12, -0.15],
        [80, 90, -0.2, 0.25],
      ] as const) {
        const far = new Float64Array(POSE_SIZE);
        far.set([x, y, yaw, pitch, joined ? pitch : -pitch]);
        far[POSE_HEAVE] = heave;
        far[POSE_ROLL] = roll;
        expect(solveAxle(model, heave, roll, far)).toBe(POSE_OK);
        for (const [at, tolerance] of [
          [POSE_X, 1e-7],
          [POSE_Y, 1e-7],
          [POSE_YAW, 1e-10],
          [POSE_PITCH_LEFT, 1e-10],
          [POSE_PITCH_RIGHT, 1e-10],
        ] as const)
          expectClose(far[at]!, near[at]!, tolerance, `number ${at} from ${x}, ${y}`);
      }
      resetPose(near);
      expect([...near]).toEqual(new Array(POSE_SIZE).fill(0));
    }
  });

  test.each(['hairpins', 'wishbone'] as const)(
    'comes there from nearly anywhere: where a plain step would raise the sum it is damped (%s)',
    (kind) => {
      const model = prepareAxle(layoutOf({ location: LOCATIONS[kind], lateral: LATERALS.bar }));
      const joined = model.unknowns === 4;
      const near = new Float64Array(POSE_SIZE);
      solveAxle(model, 40, 0.02, near);
      const random = seeded(1);
      let arrived = 0;
      for (let i = 0; i < 60; i += 1) {
        // Up to 300 mm, 1 rad of yaw and 1.5 rad of pitch off: from half of these plain steps do not arrive.
        const [x, y, yaw, left, right] = [600, 600, 2, 3, 3].map((wide) => (random() - 0.5) * wide);
        const far = Float64Array.from([x!, y!, yaw!, left!, joined ? left! : right!, 0, 0, 40, 0.02]);
        const code = solveAxle(model, 40, 0.02, far);
        if (code === POSE_OK && far.slice(0, 5).every((value, at) => Math.abs(value - near[at]!) < 1e-6))
          arrived += 1;
      }
      expect(arrived).toBeGreaterThanOrEqual(56);
    },
  );

  test('a long way in one call is walked in steps from neighbour to neighbour', () => {
    // Rods of 200 mm: at 190 mm of heave they stand nearly upright, and pulled there at once the axle could fall over.
    const short = { kind: 'hairpins', left: { framePivot: [-250, 415, 330] }, right: 'mirror' };
    const model = prepareAxle(layoutOf({ location: short }));
    const once = new Float64Array(POSE_SIZE);
    expect(solveAxle(model, 230, 0, once)).toBe(POSE_OK);
    const walked = new Float64Array(POSE_SIZE);
    for (let heave = 5; heave <= 230; heave += 5) expect(solveAxle(model, heave, 0, walked)).toBe(POSE_OK);
    for (let i = 0; i < POSE_SIZE; i += 1) expectClose(once[i]!, walked[i]!, 1e-8, `number ${i}`);
    // By hand: the rod turns down by asin(230 / 250) about its pivot, and draws the axle back.
    expectClose(once[POSE_PITCH_LEFT]!, -Math.asin(230 / 250), 1e-9);
    expectClose(once[POSE_X]!, -(250 - Math.sqrt(250 ** 2 - 230 ** 2)), 1e-7);
  });
});

/** Least over largest singular value of the slopes of the rows that hold the axle; angles as mm at one metre. */
function rank(layout: Layout): number {
  const joined = isJoined(layout);
  const zero = joined ? [0, 0, 0, 0] : [0, 0, 0, 0, 0];
  const firm = (p: readonly number[]) => {
    const rows = rawResiduals(layout, 0, 0, toRawPose(joined, p));
    // A hairpin's sideways offset only guides.
    return rows.filter((_, i) => !softRows(layout).guiding.includes(i));
  };
  const columns = zero.map((_, i) => {
    const [more, less] = [1e-4, -1e-4].map((d) =>
      firm(zero.map((value, j) => (i === j ? value + d : value))),
    );
    return more!.map((value, row) => (value - less![row]!) / 2e-4);
  });
  const { diagonal } = new SVD(new Matrix(columns).transpose(), {
    computeLeftSingularVectors: false,
    computeRightSingularVectors: false,
  });
  return Math.min(...diagonal) / Math.max(...diagonal);
}

/** Layouts that come loose as a length goes to 0; the length at which one is free is found outside the program. */
const LOOSENING: Record<string, (length: number) => Record<string, unknown>> = {
  'hairpin balls near the axle’s line': (length) => ({
    location: { kind: 'hairpins', left: { framePivot: [-length, 415, 330] }, right: 'mirror' },
  }),
  'the same on a tube': (length) => ({
    axle: { beam: 'tube', left: PLAIN_HALF, right: 'mirror' },
    location: { kind: 'hairpins', left: { framePivot: [-length, 415, 330] }, right: 'mirror' },
  }),
  'bars close over one another': (length) => ({
    location: {
      kind: 'four-bar',
      left: {
        upper: { axle: [-45, 430, 330 + length], frame: [-645, 430, 330 + length] },
        lower: { axle: [-45, 430, 330], frame: [-645, 430, 330] },
      },
      right: 'mirror',
    },
  }),
  'a bar beside the wishbone’s ball': (length) => ({
    location: { kind: 'wishbone', framePivot: [-900, 0, 340] },
    lateral: { kind: 'bar', axle: [-900 + length, -300, 340], frame: [-900 + length, 320, 340] },
  }),
  'a lateral bar nearly upright': (length) => ({
    lateral: { kind: 'bar', axle: [-70, -400, 350], frame: [-70, -400 + length, 900] },
  }),
};

describe('an axle is free where the least singular value is below a thousandth of the largest (ml-matrix)', () => {
  test.each(Object.entries(LOOSENING))('%s', (_, over) => {
    let [free, held] = [1e-3, 200];
    expect(rank(layoutOf(over(free)))).toBeLessThan(1e-3);
    expect(rank(layoutOf(over(held)))).toBeGreaterThan(1e-3);
    for (let i = 0; i < 40; i += 1) {
      const middle = Math.sqrt(free * held);
      if (rank(layoutOf(over(middle))) < 1e-3) free = middle;
      else held = middle;
    }
    const codeAt = (length: number) => {
      const layout = layoutOf(over(length));
      return solveAxle(prepareAxle(layout), 0, 0, new Float64Array(POSE_SIZE));
    };
    for (const share of [0.3, 0.9, 0.99]) expect(codeAt(free * share), `${share}`).toBe(POSE_AXLE_FREE);
    for (const share of [1.01, 1.1, 3, 10]) expect(codeAt(held * share), `${share}`).toBe(POSE_OK);
  });
});

describe('leaves that stand askew', () => {
  // Outside check: ml-levenberg-marquardt on the raw equations. Eyes off the seat's line to either side, fixed ahead and
  // behind, the seat off the axle's line.
  const ahead = { fixedEye: [470, 360, 365], seat: [30, 410, 320], shackleEye: [-600, 450, 372] };
  const behind = { fixedEye: [-600, 450, 372], seat: [-20, 390, 325], shackleEye: [470, 360, 365] };
  test.each([
    ['fixed ahead', ahead],
    ['fixed behind', behind],
  ])('are posed as the raw equations have them: %s', (_, left) => {
    const over = { location: { kind: 'parallel-leaf', left, right: 'mirror' }, lateral: LATERALS.bar };
    const state = createState();
    for (const [heave, degrees] of [
      [70, 0],
      [-50, 2.5],
    ] as const) {
      expect(poseAxle(frontEndOf(over), heave, degrees * DEGREE, state)).toBe(true);
      const other = solveByRegistry(layoutOf(over), heave, degrees * DEGREE);
      expectClose(state.axle.x, other.x, 2e-4, 'x');
      expectClose(state.axle.y, other.y, 2e-4, 'y');
      expectClose(state.axle.yaw, other.yaw, 2e-6, 'yaw');
      expectClose(state.axle.pitch, (other.left + other.right) / 2, 2e-6, 'pitch');
      expectClose(state.axle.twist, other.left - other.right, 2e-6, 'twist');
    }
  });
});

describe('what links and springs would have to give', () => {
  const UNLIKE = {
    kind: 'parallel-leaf',
    left: { fixedEye: [510, 400, 365], seat: [0, 400, 320], shackleEye: [-580, 400, 372] },
    right: { fixedEye: [450, -400, 365], seat: [0, -400, 320], shackleEye: [-640, -400, 372] },
  };
  test.each([
    ...COMBINATIONS,
    {
      label: 'leaves unlike, tube',
      over: { axle: { beam: 'tube', left: PLAIN_HALF, right: 'mirror' }, location: UNLIKE },
    },
    { label: 'leaves unlike, I-beam', over: { location: UNLIKE, lateral: LATERALS.bar } },
  ])('bind and wrap are the largest of the raw equations: $label', ({ over }) => {
    const layout = layoutOf(over);
    const frontEnd = frontEndOf(over);
    for (const [heave, roll] of [
      [60, 0],
      [-40, 2.5 * DEGREE],
      [20, -3 * DEGREE],
    ] as const) {
      const state = createState();
      expect(poseAxle(frontEnd, heave, roll, state)).toBe(true);
      const half = state.axle.twist / 2;
      const pose = {
        x: state.axle.x,
        y: state.axle.y,
        yaw: state.axle.yaw,
        left: state.axle.pitch + half,
        right: state.axle.pitch - half,
        rocker: state.work.pose[POSE_ROCKER]!,
      };
      const rows = rawResiduals(layout, heave, roll, pose);
      const { guiding, wrapping } = softRows(layout);
      const soft = [...guiding, ...wrapping];
      const bind = Math.max(...rows.filter((_, i) => !soft.includes(i)).map(Math.abs));
      expectClose(state.bind, bind, 1e-7, 'bind');
      const wraps = [0, ...wrapping.map((i) => Math.abs(rows[i]!))];
      expectClose(state.wrap, Math.max(...wraps) / (1000 * Math.sqrt(0.05)), 1e-9, 'wrap');
    }
  });
});

test('a state that failed, or that served another axle, starts the next pose afresh', () => {
  const [one, other] = [frontEndOf(), frontEndOf({ location: LOCATIONS.wishbone, lateral: LATERALS.bar })];
  const free = frontEndOf({
    location: { kind: 'hairpins', left: { framePivot: [0, 415, 330] }, right: 'mirror' },
  });
  const [state, fresh] = [createState(), createState()];
  const place = new Float64Array(3);
  for (const before of [other, free]) {
    poseAxle(before, 70, 0.05, state);
    expect(poseAxle(one, 30, 0.01, state)).toBe(true);
    expect(poseAxle(one, 30, 0.01, fresh)).toBe(true);
    expect(state.axle).toEqual(fresh.axle);
    expect([state.heave, state.roll]).toEqual([30, 0.01]);
    carryPoint(one, state, 'axle-left', [0, 0, 330], place);
    expectClose(place[2]!, 360, 1e-9);
    fresh.work.posedFor = null;
  }
  poseAxle(free, 12, 0.02, state);
  expect(state).toMatchObject({ status: 'no-pose', failure: 'axle-free', heave: 12, roll: 0.02 });
});
