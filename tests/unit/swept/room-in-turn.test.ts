import { Matrix } from 'ml-matrix';
import { expect, test } from 'vitest';
import {
  drawLayout,
  type Outline,
  outline,
  placeInPose,
  roomFor,
} from '../../../shared-math/drawing/index.ts';
import { resolveLayout } from '../../../shared-math/layout/index.ts';
import { createState, prepareFrontEnd, solveFrontEnd } from '../../../shared-math/linkage/index.ts';
import { DIMETRIC, fromOtherSide, ISOMETRIC, type Turn } from '../../../shared-math/pictorial/index.ts';
import { sweepTurn } from '../../../shared-math/sweep/index.ts';
import type { SweptPart } from '../../../shared-math/swept/index.ts';
import { toRadians } from '../../../shared-math/units/index.ts';
import {
  type RoomAnswer,
  type RoomQuestion,
  roomJob,
} from '../../../src-renderer/places/layout/room/room-job.ts';
import { lot, outsideBy } from '../../support/closed-outlines.ts';
import { sampleLayout } from '../../support/host-sample.ts';

const document = sampleLayout('Arm down');
const frontEnd = prepareFrontEnd(resolveLayout(document));
const PARTS: Record<string, readonly string[]> = {
  tyre: ['tyre-left', 'tyre-right'],
  'drag-link': ['drag-link'],
  'tie-rod': ['tie-rod'],
};

function answerTo(question: RoomQuestion): RoomAnswer {
  const job = roomJob(question);
  for (let step = job.next(); ; step = job.next())
    if (step.done) {
      if (!step.value) throw new Error('no room');
      return step.value;
    }
}

/**
 * The car turned as the one who looks sees it, so that its front view is what he sees: first about the upright axis until he stands
 * straight ahead, then about the axis across until he looks level. Rotation matrices of any textbook, multiplied by ml-matrix.
 */
function rotated({ azimuth: a, elevation: e }: Turn, placed: Float64Array): Float64Array {
  const about = new Matrix([
    [Math.cos(a), Math.sin(a), 0],
    [-Math.sin(a), Math.cos(a), 0],
    [0, 0, 1],
  ]);
  const tilted = new Matrix([
    [Math.cos(e), 0, Math.sin(e)],
    [0, 1, 0],
    [-Math.sin(e), 0, Math.cos(e)],
  ]);
  const points = Matrix.from1DArray(placed.length / 3, 3, [...placed]);
  return Float64Array.from(points.mmul(tilted.mmul(about).transpose()).to1DArray());
}

/** What the drawing's bodies of a part cover in sampled poses, seen in a turn. */
function seenIn(
  turn: Turn,
  part: SweptPart,
  poses: readonly (readonly [number, number, number])[],
): Outline[] {
  const drawing = drawLayout(frontEnd.layout);
  const placed = roomFor(drawing);
  const state = createState();
  return poses.flatMap(([heave, roll, handwheel]) => {
    expect(solveFrontEnd(frontEnd, heave, roll, handwheel, state)).toBe('ok');
    placeInPose(drawing, frontEnd, state, placed);
    const seen = rotated(turn, placed);
    return drawing.parts
      .filter(({ id }) => PARTS[part]?.includes(id))
      .flatMap(({ shapes }) => shapes.filter((shape) => shape.kind === 'body' && shape.ink === 'outline'))
      .map((shape) => {
        const line: Outline = [];
        outline(shape, seen, 'front', line);
        return line;
      });
  });
}

/** The farthest that outlines reach right and down, and left and up. */
function ends(lines: readonly Outline[]): number[] {
  const places = lines.flat();
  const [across, down] = [0, 1].map((way) => places.filter((_, i) => i % 2 === way));
  return [across, down].flatMap((values = []) => [Math.min(...values), Math.max(...values)]);
}

/** mm: a step of the grid, half of it cut at corners, with what thinning and the cells' chords leave. */
const NEAR = 1;
/** mm that the sampled poses may stay short of the room's ends. */
const SHORT = 12;

test.each([
  ['isometric', ISOMETRIC],
  ['dimetric, from the other side', fromOtherSide(DIMETRIC)],
  ['a turn by hand', { azimuth: -2.3, elevation: 0.9 }],
] as const)(
  '%s: every pose lies within the room as it is seen, and the room reaches no farther',
  (_, turn) => {
    const { bump, rebound: droop, roll } = frontEnd.layout.travel;
    const full = toRadians(roll);
    const locks = sweepTurn(frontEnd, 0, 0, 2);
    if (locks.status !== 'ok') throw new Error(locks.status);
    const [from, to] = [locks.right.handwheel, locks.left.handwheel];
    const next = lot(11);
    const poses = Array.from({ length: 48 }, (__, i) => {
      // The corners of the travel first, then poses by lot between those of the grid.
      if (i < 8) return [i & 1 ? bump : -droop, i & 2 ? full : -full, i & 4 ? to : from] as const;
      return [
        -droop + next() * (bump + droop),
        full * (2 * next() - 1),
        from + next() * (to - from),
      ] as const;
    });
    const { rooms, turn: answered } = answerTo({
      document,
      parts: ['tyre', 'drag-link', 'tie-rod'],
      fine: true,
      turn,
    });
    expect(answered).toEqual(turn);
    expect(rooms.map(({ part }) => part)).toEqual(['tyre', 'drag-link', 'tie-rod']);
    for (const { part, turned } of rooms) {
      const seen = seenIn(turn, part, poses);
      let worst = 0;
      for (const line of seen)
        for (let i = 0; i < line.length; i += 2)
          worst = Math.max(worst, outsideBy(turned, line[i]!, line[i + 1]!));
      expect(worst, part).toBeLessThan(NEAR);
      const reached = ends(seen);
      for (const [i, end] of ends(turned).entries())
        expect(Math.abs(end - reached[i]!), `${part} ${i}`).toBeLessThan(SHORT);
    }
  },
);

test('in another turn the views stay as they were, and without one nothing is seen in it', () => {
  const asked = { document, parts: ['tie-rod'], fine: false } as const;
  const first = answerTo({ ...asked, turn: ISOMETRIC });
  const second = answerTo({ ...asked, turn: DIMETRIC });
  const none = answerTo(asked);
  expect(second.rooms[0]?.outlines).toEqual(first.rooms[0]?.outlines);
  expect(second.rooms[0]?.turned).not.toEqual(first.rooms[0]?.turned);
  expect(none.rooms[0]?.turned).toEqual([]);
  expect(none.rooms[0]?.outlines).toEqual(first.rooms[0]?.outlines);
  // Another layout is no other turn of the same.
  const higher = { ...document, travel: { ...document.travel, bump: document.travel.bump + 20 } };
  expect(answerTo({ ...asked, document: higher }).rooms[0]?.outlines).not.toEqual(first.rooms[0]?.outlines);
});
