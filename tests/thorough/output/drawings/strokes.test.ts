import { describe, expect, test } from 'vitest';
import {
  drawLayout,
  isClosed,
  isShown,
  type Outline,
  outline,
  paintOrder,
  placeAtRide,
  roomFor,
  type Shape,
  VIEW_AXES,
  VIEWS,
  type View,
} from '../../../../shared-math/drawing/index.ts';
import { resolveLayout } from '../../../../shared-math/layout/index.ts';
import { toRadians } from '../../../../shared-math/units/index.ts';
import { AT_RIDE, type DrawingJob } from '../../../../src-main/output/drawings/job.ts';
import { sceneOf } from '../../../../src-main/output/drawings/scene.ts';
import { coverOf, seenOf } from '../../../../src-main/output/drawings/strokes/covered.ts';
import { Once } from '../../../../src-main/output/drawings/strokes/once.ts';
import { outlineStrokes } from '../../../../src-main/output/drawings/strokes/outline-strokes.ts';
import {
  circle,
  endOf,
  isCircular,
  isWhole,
  type Room,
  rangeOf,
  type Spot,
  type Stroke,
  sampled,
  spotAt,
  startOf,
  strokeRoom,
} from '../../../../src-main/output/drawings/strokes/stroke.ts';
import { viewStrokes } from '../../../../src-main/output/drawings/strokes/view-strokes.ts';
import { DEMONSTRATIONS } from '../../../support/demonstration-files.ts';

const apart = (a: Spot, b: Spot) => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Distance of a place from a closed or open line through places. */
function off([x, y]: Spot, line: readonly Spot[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < line.length; i += 1) {
    const [ax, ay] = line[i - 1] as Spot;
    const [ex, ey] = [(line[i] as Spot)[0] - ax, (line[i] as Spot)[1] - ay];
    const share = Math.max(0, Math.min(1, ((x - ax) * ex + (y - ay) * ey) / (ex * ex + ey * ey || 1)));
    least = Math.min(least, Math.hypot(x - ax - share * ex, y - ay - share * ey));
  }
  return least;
}

/** Length by many chords, of whatever stroke. */
const lengthOf = (stroke: Stroke): number => {
  const [from, to] = rangeOf(stroke);
  let sum = 0;
  for (let i = 1; i <= 200; i += 1)
    sum += apart(
      spotAt(stroke, from + ((to - from) * (i - 1)) / 200),
      spotAt(stroke, from + ((to - from) * i) / 200),
    );
  return sum;
};

const job = (document: DrawingJob['document'], pose = AT_RIDE): DrawingJob => ({
  view: 'side',
  format: 'dxf',
  document,
  unit: 'mm',
  fraction: 16,
  pose,
});

/** How far a shape reaches in a direction of a view, worked out from its discs in space. */
function reachOf(shape: Hull, placed: Float64Array, view: View, angle: number): number {
  const { right, down } = VIEW_AXES[view];
  const d = [0, 0, 0];
  d[right.axis] = right.sign * Math.cos(angle);
  d[down.axis] = -down.sign * Math.sin(angle);
  const at = (point: number) => [0, 1, 2].map((i) => placed[3 * point + i] as number);
  return Math.max(
    ...shape.discs.map((disc) => {
      const [c, tip] = [at(disc.at), at(disc.tip)];
      const axis = tip.map((value, i) => value - (c[i] as number));
      const length = Math.hypot(...axis) || 1;
      const along = d.reduce((sum, value, i) => sum + (value * (axis[i] as number)) / length, 0);
      const square = d.map((value, i) => value - (along * (axis[i] as number)) / length);
      const centre = d.reduce((sum, value, i) => sum + value * (c[i] as number), 0);
      return centre + disc.round + disc.radius * Math.hypot(...square);
    }),
  );
}

type Hull = Extract<Shape, { kind: 'body' }>;

describe.each(DEMONSTRATIONS)('outlines of %s as lines and arcs', (_, document) => {
  test.each(VIEWS)('%s view: reach as far as their discs do in every direction, end to end', (view) => {
    const drawing = drawLayout(resolveLayout(document));
    const placed = roomFor(drawing);
    placeAtRide(drawing, placed);
    for (const part of drawing.parts)
      for (const shape of part.shapes) {
        if (!isShown(shape, view)) continue;
        const strokes = outlineStrokes(shape, placed, view);
        strokes.forEach((stroke, i) => {
          const next = strokes[(i + 1) % strokes.length] as Stroke;
          if (i + 1 < strokes.length || isClosed(shape))
            expect(apart(endOf(stroke), startOf(next)), part.id).toBeLessThan(1e-5);
        });
        if (shape.kind !== 'body') continue;
        const own = strokes.flatMap(sampled);
        for (let angle = 0.003; angle < 2 * Math.PI; angle += 0.13) {
          const [c, s] = [Math.cos(angle), Math.sin(angle)];
          const most = Math.max(...own.map(([x, y]) => x * c + y * s));
          // 0.05 mm: what is so nearly round or straight is drawn so.
          expect(Math.abs(most - reachOf(shape, placed, view, angle)), part.id).toBeLessThan(0.06);
        }
      }
  });
});

describe('a view drawn once', () => {
  const poses = [AT_RIDE, { heave: 30, roll: toRadians(1), handwheel: toRadians(90) }];

  test.each(DEMONSTRATIONS)('%s: nothing lies twice on one spot', (_, document) => {
    for (const pose of poses)
      for (const view of VIEWS) {
        const strokes = viewStrokes(sceneOf(job(document, pose)), view).map(({ stroke }) => stroke);
        expect(strokes.length).toBeGreaterThan(50);
        // Every stroke's middle, off which no other stroke of its kind may run in the same direction.
        const rooms = strokes.map(strokeRoom);
        for (const [i, stroke] of strokes.entries()) {
          const [from, to] = rangeOf(stroke);
          const middle = spotAt(stroke, (from + to) / 2);
          const ahead = spotAt(stroke, (from + to) / 2 + (to - from) * 1e-4);
          for (const [j, other] of strokes.entries()) {
            const room = rooms[j] as Room;
            if (i === j || other.kind !== stroke.kind) continue;
            if (middle[0] < room.left - 0.1 || middle[0] > room.right + 0.1) continue;
            if (middle[1] < room.bottom - 0.1 || middle[1] > room.top + 0.1) continue;
            if (other.kind === 'line') {
              const both = Math.max(off(middle, [other.a, other.b]), off(ahead, [other.a, other.b]));
              const alike =
                both < 1e-3 &&
                Math.min(apart(middle, other.a), apart(middle, other.b)) > 0.05 &&
                // A line may cross another at its middle; one that runs along it does not.
                Math.abs(
                  (ahead[0] - middle[0]) * (other.b[1] - other.a[1]) -
                    (ahead[1] - middle[1]) * (other.b[0] - other.a[0]),
                ) <
                  3e-4 * apart(ahead, middle) * apart(other.a, other.b);
              expect(alike, `${view} ${JSON.stringify([stroke, other])}`).toBe(false);
            } else if (stroke.kind === 'curve' && isCircular(stroke) && isCircular(other)) {
              const one =
                apart(stroke.centre, other.centre) < 1e-3 &&
                Math.abs(Math.hypot(...stroke.u) - Math.hypot(...other.u)) < 1e-3;
              if (one) expect(off(middle, [...sampled(other), endOf(other)]), view).toBeGreaterThan(0.02);
            }
          }
        }
      }
  });

  test.each(DEMONSTRATIONS)('%s: nothing that is seen lies within what covers it', (_, document) => {
    const scene = sceneOf(job(document));
    for (const view of VIEWS) {
      const order = paintOrder(scene.drawing, scene.placed, view);
      const outlines = new Map(
        order.flatMap(({ shapes }) =>
          shapes
            .filter((shape) => isShown(shape, view) && shape.fill !== 'none')
            .map((shape) => {
              const line: Outline = [];
              outline(shape, scene.placed, view, line);
              return [shape, line] as const;
            }),
        ),
      );
      for (const { part, kind, stroke } of viewStrokes(scene, view)) {
        if (kind === 'hidden' || kind === 'middle') continue;
        const [from, to] = rangeOf(stroke);
        const [x, y] = spotAt(stroke, from + 0.37 * (to - from));
        for (const later of order.slice(order.indexOf(part) + 1))
          for (const shape of later.shapes) {
            const line = outlines.get(shape);
            if (!line) continue;
            // Counted by angles all around the place, another way than the drawing's own crossings.
            let turned = 0;
            let nearest = Number.POSITIVE_INFINITY;
            for (let i = 0; i < line.length; i += 2) {
              const j = (i + 2) % line.length;
              const a: Spot = [(line[i] as number) - x, -(line[i + 1] as number) - y];
              const b: Spot = [(line[j] as number) - x, -(line[j + 1] as number) - y];
              turned += Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1]);
              nearest = Math.min(nearest, off([0, 0], [a, b]));
            }
            if (nearest > 0.4)
              expect(Math.abs(turned), `${view}: ${part.id} under ${later.id}`).toBeLessThan(1);
          }
      }
    }
  });

  test('what is round is a circle: a tyre from the side, a ball from everywhere', () => {
    const [, document] = DEMONSTRATIONS[0] as (typeof DEMONSTRATIONS)[0];
    const scene = sceneOf(job(document));
    const { pitmanBall } = scene.layout.steering.box;
    const places: Record<string, Spot> = {
      side: [-pitmanBall[0], pitmanBall[2]],
      top: [-pitmanBall[0], -pitmanBall[1]],
      front: [pitmanBall[1], pitmanBall[2]],
    };
    for (const view of VIEWS) {
      const round = viewStrokes(scene, view).flatMap(({ stroke }) =>
        stroke.kind === 'curve' && isCircular(stroke) ? [stroke] : [],
      );
      const at = round.filter(({ centre }) => apart(centre, places[view] as Spot) < 1e-6);
      expect(at.length, view).toBeGreaterThan(0);
      if (view !== 'side') continue;
      const { wheelCentre } = scene.layout.axle.left;
      const tyres = round.filter(({ u }) => Math.abs(Math.hypot(...u) - scene.layout.car.tyreRadius) < 0.05);
      expect(tyres.length).toBeGreaterThan(0);
      for (const { centre } of tyres)
        expect(apart(centre, [-wheelCentre[0], wheelCentre[2]])).toBeLessThan(3);
    }
  });
});

describe('what covers hide', () => {
  const square = coverOf(
    (
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [0, 10],
      ] as Spot[]
    ).map((a, i, all): Stroke => ({ kind: 'line', a, b: all[(i + 1) % 4] as Spot })),
  );

  test('a line through a square is cut at its edges, and is whole again together', () => {
    const pieces = seenOf({ kind: 'line', a: [-5, 5], b: [20, 5] }, [square]);
    expect(pieces.map(({ hidden }) => hidden)).toEqual([false, true, false]);
    expect(pieces.map(({ stroke }) => lengthOf(stroke))).toEqual([
      expect.closeTo(5, 9),
      expect.closeTo(10, 9),
      expect.closeTo(10, 9),
    ]);
  });

  test('a circle about a corner loses the quarter within', () => {
    const pieces = seenOf(circle([10, 10], 4), [square]);
    const hidden = pieces.filter((piece) => piece.hidden);
    expect(hidden).toHaveLength(1);
    // A quarter of 2π · 4.
    expect(lengthOf((hidden[0] as (typeof hidden)[0]).stroke)).toBeCloseTo(2 * Math.PI, 3);
    expect(pieces.reduce((sum, { stroke }) => sum + lengthOf(stroke), 0)).toBeCloseTo(8 * Math.PI, 2);
  });

  test('an edge that lies on the cover’s own edge is seen', () => {
    expect(seenOf({ kind: 'line', a: [2, 10], b: [8, 10] }, [square])).toEqual([
      { stroke: { kind: 'line', a: [2, 10], b: [8, 10] }, hidden: false },
    ]);
  });
});

describe('once', () => {
  test('of two lines on one another the second keeps what stands out of the first', () => {
    const once = new Once();
    expect(once.add({ kind: 'line', a: [0, 0], b: [10, 0] })).toHaveLength(1);
    expect(once.add({ kind: 'line', a: [12, 0], b: [6, 0] })).toEqual([
      { kind: 'line', a: [12, 0], b: [10, 0] },
    ]);
    expect(once.add({ kind: 'line', a: [3, 0], b: [5, 0] })).toEqual([]);
    expect(once.add({ kind: 'line', a: [0, 1], b: [10, 1] })).toHaveLength(1);
  });

  test('of two arcs of one circle likewise, whichever way they run', () => {
    const once = new Once();
    const half = { ...circle([3, 4], 5), sweep: Math.PI };
    once.add(half);
    const left = once.add({ ...circle([3, 4], 5), from: 1.5 * Math.PI, sweep: -Math.PI });
    expect(left).toHaveLength(1);
    expect(lengthOf(left[0] as Stroke)).toBeCloseTo((5 * Math.PI) / 2, 3);
    expect(once.add(circle([3, 4], 5)).map(lengthOf)).toEqual([expect.closeTo((5 * Math.PI) / 2, 3)]);
    expect(once.add(circle([3, 4], 5.5)).every((stroke) => stroke.kind === 'curve' && isWhole(stroke))).toBe(
      true,
    );
  });
});
