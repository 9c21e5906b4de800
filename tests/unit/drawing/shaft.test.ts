import { describe, expect, test } from 'vitest';
import { drawLayout, placeInPose, pointsOf, roomFor } from '../../../shared-math/drawing/index.ts';
import { resolveLayout } from '../../../shared-math/layout/index.ts';
import { createState, prepareFrontEnd, solveFrontEnd } from '../../../shared-math/linkage/index.ts';
import {
  evenColumnYoke,
  motionOf,
  outputOf,
  prepareChain,
  routeOf,
  shaftLine,
  turnsOf,
} from '../../../shared-math/shaft/index.ts';
import { DEGREE, expectClose } from '../../support/close.ts';
import { documentOf, rawLayout } from '../../support/layouts.ts';
import { rawShaft, shaftOf } from '../../support/shafts.ts';

type Vector = readonly [number, number, number];
const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

const [FIRST, LAST] = rawShaft()['joints'] as [object, object];
const WITH_DOUBLE = {
  joints: [FIRST, { kind: 'double', centre: [-1180, 390, 640] }, LAST],
  shafts: [{ clock: 20 }, { clock: -35 }],
};

describe('a shaft spider by spider', () => {
  test.each([
    ['two joints', {}, 2],
    ['a double joint between two', WITH_DOUBLE, 4],
  ])('%s: each spider keeps its two yokes square to each other and to their shafts', (_, over, pins) => {
    const line = shaftLine(shaftOf(over));
    expect(line.pins.length).toBe(pins);
    expect(line.members.length).toBe(pins + 1);
    line.pins.forEach(({ driving, driven }, i) => {
      expectClose(dot(driving, driven), 0, 1e-12, 'square to each other');
      expectClose(dot(driving, line.members[i]!.direction), 0, 1e-12, 'square to the driving shaft');
      expectClose(dot(driven, line.members[i + 1]!.direction), 0, 1e-12, 'square to the driven shaft');
    });
  });

  test('a double joint stands as two of half its angle, and turns as one that runs evenly', () => {
    const shaft = shaftOf(WITH_DOUBLE);
    const route = routeOf(shaft);
    const line = shaftLine(shaft);
    const double = route.joints[1]!.angle;
    for (const at of [1, 2]) {
      const [before, after] = [line.members[at]!.direction, line.members[at + 1]!.direction];
      expectClose(Math.acos(dot(before, after)), double / 2, 1e-9);
    }
    // What the box sees is the same whether the double joint counts as one that cancels or as two single ones.
    const chain = prepareChain(route);
    if (!chain.ok || !line.turning) throw new Error('locked');
    const clocks = shaft.shafts.map(({ clock }) => clock * DEGREE);
    const motion = motionOf(chain.value, clocks);
    const yoke = evenColumnYoke(motion, 'slowest');
    expectClose(line.turning.columnYoke, yoke, 1e-9);
    const turns = new Float64Array(5);
    for (const input of [-7, -1.2, 0.4, 2.9, 6.4]) {
      turnsOf(line.turning.chain, line.turning.clocks, line.turning.columnYoke, input, turns);
      expectClose(turns[0]!, input, 0);
      expectClose(turns[4]!, outputOf(motion, yoke, input), 1e-9, `at ${input}`);
    }
  });

  test('a joint folded to a right angle still has yokes to be drawn, and does not turn', () => {
    const line = shaftLine(
      shaftOf({
        joints: [FIRST, { kind: 'single', centre: [-1400, 332, 700] }, LAST],
        shafts: [{ clock: 0 }, { clock: 0 }],
      }),
    );
    expect(line.turning).toBeUndefined();
    for (const { driving, driven } of line.pins) {
      expectClose(Math.hypot(...driving), 1, 1e-12);
      expectClose(Math.hypot(...driven), 1, 1e-12);
    }
  });
});

describe('turned by the handwheel', () => {
  test('yokes stay square on their spiders, the joints’ centres where they are, and the shafts turn the right way', () => {
    const document = documentOf(rawLayout({ shaft: rawShaft(WITH_DOUBLE) }));
    const layout = resolveLayout(document);
    const frontEnd = prepareFrontEnd(layout);
    const drawing = drawLayout(layout);
    const [before, after] = [roomFor(drawing), roomFor(drawing)];
    const place = (handwheel: number, out: Float64Array) => {
      const state = createState();
      expect(solveFrontEnd(frontEnd, 0, 0, handwheel, state)).toBe('ok');
      placeInPose(drawing, frontEnd, state, out);
    };
    place(0, before);
    place(1.1, after);
    const at = (placed: Float64Array, point: number): Vector => [
      placed[3 * point]!,
      placed[3 * point + 1]!,
      placed[3 * point + 2]!,
    ];
    let moved = 0;
    for (const part of drawing.parts.filter(({ id }) => id.startsWith('shaft-'))) {
      const points = pointsOf(part);
      if (/tube|bearing/.test(part.id))
        for (const point of points) expect(at(after, point)).toEqual(at(before, point));
      for (const point of points) {
        const bearer = drawing.points[point]!;
        if (!('member' in bearer)) continue;
        const { origin, direction } = drawing.shaft!.members[bearer.member]!;
        const from = (p: Vector): Vector => [p[0] - origin[0], p[1] - origin[1], p[2] - origin[2]];
        const [a, b] = [from(at(before, point)), from(at(after, point))];
        expectClose(dot(a, direction), dot(b, direction), 1e-9, 'keeps its place along');
        expectClose(dot(a, a), dot(b, b), 1e-6, 'keeps its distance');
        const across: Vector = [
          a[1] * b[2] - a[2] * b[1],
          a[2] * b[0] - a[0] * b[2],
          a[0] * b[1] - a[1] * b[0],
        ];
        const off = Math.sqrt(Math.max(dot(a, a) - dot(a, direction) ** 2, 0));
        if (off < 1) continue;
        moved += 1;
        // To the left is counter-clockwise for the driver, who looks along the shaft toward the box.
        expect(dot(across, direction)).toBeLessThan(0);
      }
    }
    expect(moved).toBeGreaterThan(100);
  });
});

describe('a joint that stands farther out than the end reaches', () => {
  const unitOf = (v: Vector): Vector => {
    const length = Math.hypot(...v);
    return [v[0] / length, v[1] / length, v[2] / length];
  };
  const moved = (from: Vector, along: Vector, by: number): Vector => [
    from[0] + by * along[0],
    from[1] + by * along[1],
    from[2] + by * along[2],
  ];

  test.each(['column', 'box'] as const)(
    'what the %s’s end lacks is drawn up to the joint, in a broken line',
    (part) => {
      const plain = shaftOf();
      const { end, axis } = plain[part];
      // The column's axis points out of its end, the input's into the box.
      const [x, y, z] = unitOf(axis);
      const way: Vector = part === 'column' ? [x, y, z] : [-x, -y, -z];
      const own = part === 'column' ? 0 : plain.joints.length - 1;
      const longerWith = (out: number) => {
        const shaft = {
          ...plain,
          joints: plain.joints.map((joint, i) =>
            i === own ? { ...joint, centre: moved(end, way, out) } : joint,
          ),
        };
        const drawing = drawLayout(resolveLayout(documentOf(rawLayout({ shaft }))));
        const longer = drawing.parts.find(({ id }) => id === `shaft-${part}-longer`);
        if (!longer) throw new Error('nothing is drawn between end and joint');
        // How far along the end's own line its discs lie.
        const along = longer.shapes.flatMap((shape) =>
          shape.kind === 'body'
            ? shape.discs.map(({ at }) => {
                const point = drawing.points[at];
                if (!point || !('at' in point)) throw new Error('a blended point');
                return dot([point.at[0] - end[0], point.at[1] - end[1], point.at[2] - end[2]], way);
              })
            : [],
        );
        return { longer, along };
      };
      // On the end as it is nothing has to be longer: what stands for it is next to nothing, and under the joint.
      expect(Math.max(...longerWith(20).along)).toBeLessThan(0.11);

      const { longer, along } = longerWith(300);
      expect(longer.name).toBe(
        part === 'column' ? 'Column’s shaft, to be made longer' : 'Stub to be coupled onto the box’s input',
      );
      expect(longer.shapes.every(({ ink }) => ink === 'broken')).toBe(true);
      // From the tip to where the joint's hub is drawn: a hub reaches some 2 in from its spider.
      expect(Math.min(...along)).toBeLessThanOrEqual(1e-6);
      expect(Math.max(...along)).toBeLessThan(300);
      expect(Math.max(...along)).toBeGreaterThan(300 - 60);
    },
  );
});
