import { describe, expect, test } from 'vitest';
import {
  drawLayout,
  type Outline,
  outline,
  placeInPose,
  roomFor,
  VIEWS,
  type View,
} from '../../../shared-math/drawing/index.ts';
import { createState, type FrontEnd, solveFrontEnd } from '../../../shared-math/linkage/index.ts';
import { sweepTurn } from '../../../shared-math/sweep/index.ts';
import {
  FINE_SWEEP,
  lookOf,
  roomOutlines,
  SWEPT_PARTS,
  type SweptPart,
  type SweptRooms,
  sweepRooms,
} from '../../../shared-math/swept/index.ts';
import { toRadians } from '../../../shared-math/units/index.ts';
import { lot, outsideBy } from '../../support/closed-outlines.ts';
import { CROSS_STEER, frontEndOf, LATERALS, LOCATIONS } from '../../support/layouts.ts';

const CARS = {
  'side steer on hairpins': {},
  'cross steer on four bars, a tube': {
    location: LOCATIONS['four-bar'],
    lateral: LATERALS.bar,
    steering: CROSS_STEER,
  },
};

const PARTS: Record<SweptPart, RegExp> = {
  tyre: /^tyre-/,
  'drag-link': /^drag-link$/,
  'tie-rod': /^tie-rod$/,
};

function locksOf(frontEnd: FrontEnd) {
  const turn = sweepTurn(frontEnd, 0, 0, 2);
  if (turn.status !== 'ok') throw new Error(turn.status);
  return { right: turn.right.handwheel, left: turn.left.handwheel };
}

function roomsOf(frontEnd: FrontEnd, parts: readonly SweptPart[] = SWEPT_PARTS): SweptRooms {
  const job = sweepRooms(frontEnd, parts, locksOf(frontEnd), FINE_SWEEP);
  for (let step = job.next(); ; step = job.next()) if (step.done) return step.value;
}

/** The bodies of a part as the board draws them in a pose: the drawing's own way, which knows nothing of rooms. */
function drawnIn(
  frontEnd: FrontEnd,
  part: SweptPart,
  view: View,
  poses: readonly (readonly [number, number, number])[],
): Outline[] {
  const drawing = drawLayout(frontEnd.layout);
  const placed = roomFor(drawing);
  const state = createState();
  return poses.flatMap(([heave, roll, handwheel]) => {
    if (solveFrontEnd(frontEnd, heave, roll, handwheel, state) !== 'ok') return [];
    placeInPose(drawing, frontEnd, state, placed);
    return drawing.parts
      .filter(({ id }) => PARTS[part].test(id))
      .flatMap(({ shapes }) =>
        shapes
          .filter((shape) => shape.kind === 'body' && shape.ink === 'outline')
          .map((shape) => {
            const line: Outline = [];
            outline(shape, placed, view, line);
            return line;
          }),
      );
  });
}

/** mm: a step of the grid, half of it cut at corners, with what thinning and the cells' chords leave. */
const NEAR = 1;
/** mm: the same, and what these poses leave between them of a rod's end. */
const TOUCHED = 1.6;

describe.each(Object.entries(CARS))('%s', (_, over) => {
  const frontEnd = frontEndOf(over);
  const { bump, rebound: droop, roll } = frontEnd.layout.travel;
  const full = toRadians(roll);
  const locks = locksOf(frontEnd);
  const found = roomsOf(frontEnd);

  test('every pose of the travel lies within its room, in every view', () => {
    const next = lot(7);
    const poses = Array.from({ length: 60 }, (_, i) => {
      // The corners of the travel first, then poses by lot between those of the grid.
      if (i < 8)
        return [i & 1 ? bump : -droop, i & 2 ? full : -full, i & 4 ? locks.left : locks.right] as const;
      return [
        -droop + next() * (bump + droop),
        full * (2 * next() - 1),
        locks.right + next() * (locks.left - locks.right),
      ] as const;
    });
    expect(found.outOfReach).toBe(0);
    for (const room of found.rooms)
      for (const view of VIEWS) {
        const lines = roomOutlines(room, lookOf(view));
        expect(lines.length).toBeGreaterThan(0);
        let worst = 0;
        for (const line of drawnIn(frontEnd, room.part, view, poses))
          for (let i = 0; i < line.length; i += 2)
            worst = Math.max(worst, outsideBy(lines, line[i]!, line[i + 1]!));
        expect(worst, `${room.part} from ${view}`).toBeLessThan(NEAR);
      }
  });
});

test('every place of an outline is touched in some pose', () => {
  const frontEnd = frontEndOf(CARS['cross steer on four bars, a tube']);
  const { bump, rebound: droop, roll } = frontEnd.layout.travel;
  const locks = locksOf(frontEnd);
  const poses: [number, number, number][] = [];
  for (let h = 0; h <= 16; h += 1)
    for (let r = -1; r <= 1; r += 0.5)
      for (let t = 0; t <= 30; t += 1)
        poses.push([
          -droop + (h / 16) * (bump + droop),
          r * toRadians(roll),
          locks.right + (t / 30) * (locks.left - locks.right),
        ]);
  const found = roomsOf(frontEnd, ['tie-rod', 'tyre']);
  for (const [part, view] of [
    ['tie-rod', 'front'],
    ['tyre', 'top'],
  ] as const) {
    const room = found.rooms.find((each) => each.part === part)!;
    const drawn = drawnIn(frontEnd, part, view, poses);
    for (const line of roomOutlines(room, lookOf(view)))
      for (let i = 0; i < line.length; i += 10) {
        let nearest = Number.POSITIVE_INFINITY;
        for (const shape of drawn) {
          nearest = Math.min(nearest, outsideBy([shape], line[i]!, line[i + 1]!));
          if (nearest === 0) break;
        }
        expect(nearest, `${part} from ${view} at ${line[i]}, ${line[i + 1]}`).toBeLessThan(TOUCHED);
      }
  }
});

test('a room that was looked at from a direction of its own is as wide as it is along it', () => {
  const frontEnd = frontEndOf();
  const [room] = roomsOf(frontEnd, ['tie-rod']).rooms;
  // Looked at from ahead and turned in its plane: distances stay, so do the widths across.
  const c = Math.SQRT1_2;
  const [plain] = roomOutlines(room!, lookOf('front'));
  const [turned] = roomOutlines(room!, { right: [0, c, c], down: [0, c, -c] });
  const across = (line: Outline, dx: number, dy: number) => {
    const along = Array.from(
      { length: line.length / 2 },
      (_, i) => dx * line[2 * i]! + dy * line[2 * i + 1]!,
    );
    return Math.max(...along) - Math.min(...along);
  };
  expect(across(turned!, c, c)).toBeCloseTo(across(plain!, 1, 0), 0);
});

test('out of reach is counted, and with no pose at all there is no outline', () => {
  const whole = (frontEnd: FrontEnd, ends: { right: number; left: number }) => {
    const job = sweepRooms(frontEnd, ['tyre'], ends, { heaves: 2, rolls: 1, turns: 10 });
    for (let step = job.next(); ; step = job.next()) if (step.done) return step.value;
  };
  // Five turns each way are more than any pitman arm can push its link round.
  const { outOfReach, reached } = whole(frontEndOf(), { right: -10 * Math.PI, left: 10 * Math.PI });
  expect(outOfReach).toBeGreaterThan(0);
  expect(reached).toBeGreaterThan(0);
  expect(outOfReach + reached).toBe(3 * 3 * 11);
  const free = frontEndOf({
    location: { kind: 'hairpins', left: { framePivot: [0, 415, 330] }, right: 'mirror' },
  });
  const none = whole(free, { right: -1, left: 1 });
  expect(none.reached).toBe(0);
  expect(roomOutlines(none.rooms[0]!, lookOf('top'))).toEqual([]);
});
