import { describe, expect, test } from 'vitest';
import type { DrawnPoint } from '../../../shared-math/drawing/drawing.ts';
import {
  boxOf,
  type Drawing,
  drawLayout,
  isClosed,
  isShown,
  type Outline,
  outline,
  type Part,
  paintOrder,
  placeAtRide,
  placeInPose,
  pointsOf,
  roomFor,
  structureOf,
  VIEWS,
  viewBoxes,
} from '../../../shared-math/drawing/index.ts';
import { distance, type Point } from '../../../shared-math/geometry/points.ts';
import {
  hardpoints,
  type LayoutDocument,
  moveHardpoint,
  resolveLayout,
} from '../../../shared-math/layout/index.ts';
import {
  carryPoint,
  createState,
  type FrontEnd,
  type FrontEndState,
  linkLengths,
  prepareFrontEnd,
  solveFrontEnd,
} from '../../../shared-math/linkage/index.ts';
import {
  CROSS_STEER,
  documentOf,
  LATERALS,
  LOCATIONS,
  rawLayout,
  SIDE_STEER,
} from '../../support/layouts.ts';
import { rawShaft } from '../../support/shafts.ts';

const RAIL = {
  name: 'Frame rail',
  path: [
    [430, 330, 430],
    [-240, 345, 430],
    [-560, 380, 398],
    [-2300, 470, 398],
  ],
  height: 100,
  width: 50,
  mirrored: true,
};

const railed = (over: Record<string, unknown>) => documentOf(rawLayout({ rails: [RAIL], ...over }));

const KINDS: [string, LayoutDocument][] = (Object.keys(LOCATIONS) as (keyof typeof LOCATIONS)[]).flatMap(
  (kind) =>
    (['bar', 'spring'] as const).flatMap((lateral) =>
      (['i-beam', 'tube'] as const).map((beam): [string, LayoutDocument] => {
        const document = railed({
          location: LOCATIONS[kind],
          lateral: LATERALS[lateral],
          steering: lateral === 'bar' ? CROSS_STEER : SIDE_STEER,
        });
        return [`${kind}, ${lateral}, ${beam}`, { ...document, axle: { ...document.axle, beam } }];
      }),
    ),
);

/** Two single joints; and three with a double one, a sliding piece and a bearing. */
const [FIRST, LAST] = rawShaft()['joints'] as [object, object];
const SHAFTS = {
  'two joints': rawShaft(),
  'a double joint, a bearing': rawShaft({
    joints: [FIRST, { kind: 'double', centre: [-1180, 390, 640] }, LAST],
    shafts: [
      { clock: 20 },
      {
        clock: -35,
        stock: { kind: 'double-d', diameter: 19, acrossFlats: 14, slip: { travel: 20, overlap: 50 } },
      },
    ],
    supports: [{ shaft: 0, at: 0.6 }],
  }),
  'a lone joint': rawShaft({ joints: [LAST], shafts: [] }),
};
for (const [name, shaft] of Object.entries(SHAFTS)) KINDS.push([`a shaft of ${name}`, railed({ shaft })]);

interface Drawn {
  readonly document: LayoutDocument;
  readonly drawing: Drawing;
  readonly placed: Float64Array;
  readonly frontEnd: FrontEnd;
  readonly state: FrontEndState;
}

function drawn(document: LayoutDocument, heave = 0, roll = 0, handwheel = 0): Drawn {
  const layout = resolveLayout(document);
  const drawing = drawLayout(layout);
  const placed = roomFor(drawing);
  const frontEnd = prepareFrontEnd(layout);
  const state = createState();
  expect(solveFrontEnd(frontEnd, heave, roll, handwheel, state)).toBe('ok');
  placeInPose(drawing, frontEnd, state, placed);
  return { document, drawing, placed, frontEnd, state };
}

const at = (placed: Float64Array, point: number): Point => [
  placed[3 * point] as number,
  placed[3 * point + 1] as number,
  placed[3 * point + 2] as number,
];

function part(drawing: Drawing, id: string): Part {
  const found = drawing.parts.find((candidate) => candidate.id === id);
  if (!found) throw new Error(`no part ${id}`);
  return found;
}

/** How far the nearest point of a part is from a place. */
const away = ({ drawing, placed }: Drawn, id: string, from: Point) =>
  Math.min(...pointsOf(part(drawing, id)).map((point) => distance(at(placed, point), from)));

describe.each(KINDS)('the drawing of %s', (_, document) => {
  test('places every carried point at ride height where it was drawn', () => {
    const { drawing, placed } = drawn(document);
    const plain = roomFor(drawing);
    placeAtRide(drawing, plain);
    drawing.points.forEach((point: DrawnPoint, i) => {
      if ('at' in point) expect(distance(at(plain, i), point.at)).toBe(0);
      // The solved pose of ride height is the identity.
      expect(distance(at(placed, i), at(plain, i))).toBeLessThan(1e-6);
    });
  });

  test('shows every hardpoint in a part that names it, and ends that part there', () => {
    const shown = drawn(document);
    for (const { id, at: place } of hardpoints(document)) {
      const owners = shown.drawing.parts.filter((candidate) => candidate.hardpoints.includes(id));
      expect(owners.length, id).toBeGreaterThan(0);
      const nearest = Math.min(...owners.map((owner) => away(shown, owner.id, place)));
      expect(nearest, id).toBeLessThan(1e-9);
    }
  });

  test.each([
    [75, 0, 0],
    [-75, 0, 0],
    [0, 0.05, 0],
    [30, -0.03, 3],
    [-40, 0.02, -4],
  ])('keeps its links as long as they are at heave %d, roll %d, handwheel %d', (heave, roll, handwheel) => {
    const shown = drawn(document, heave, roll, handwheel);
    const lengths = linkLengths(shown.frontEnd);
    const carried = (id: string): Point => {
      const point = hardpoints(document).find((candidate) => candidate.id === id);
      if (!point) throw new Error(`no hardpoint ${id}`);
      const out = new Float64Array(3);
      carryPoint(shown.frontEnd, shown.state, point.carrier, point.at, out);
      return at(out, 0);
    };
    const [ball, pitman] = [carried('steering.dragLinkBall'), carried('steering.box.pitmanBall')];
    expect(away(shown, 'drag-link', ball)).toBeLessThan(1e-9);
    expect(away(shown, 'drag-link', pitman)).toBeLessThan(1e-9);
    expect(Math.abs(distance(ball, pitman) - lengths.dragLink)).toBeLessThan(1e-6);
    const [left, right] = [carried('axle.left.tieRodBall'), carried('axle.right.tieRodBall')];
    expect(away(shown, 'tie-rod', left)).toBeLessThan(1e-9);
    expect(away(shown, 'tie-rod', right)).toBeLessThan(1e-9);
    expect(Math.abs(distance(left, right) - lengths.tieRod)).toBeLessThan(1e-6);
  });

  test('has an outline of real numbers for every shape in every view, in any pose', () => {
    for (const pose of [
      [0, 0, 0],
      [75, 0.05, 4],
      [-75, -0.05, -4],
    ] as const) {
      const { drawing, placed } = drawn(document, ...pose);
      const out: Outline = [];
      for (const { id, shapes } of drawing.parts)
        for (const shape of shapes)
          for (const view of VIEWS) {
            if (!isShown(shape, view)) continue;
            outline(shape, placed, view, out);
            expect(out.length, `${id} ${view}`).toBeGreaterThanOrEqual(isClosed(shape) ? 6 : 4);
            expect(out.every(Number.isFinite), `${id} ${view}`).toBe(true);
          }
    }
  });

  test('keeps its structure while a point is dragged, so that what shows it need not be built again', () => {
    const before = structureOf(drawLayout(resolveLayout(document)));
    for (const { id, at: from } of hardpoints(document)) {
      const to: Point = [from[0] - 3, from[1] + 2, from[2] + 4];
      expect(structureOf(drawLayout(resolveLayout(moveHardpoint(document, id, to)))), id).toBe(before);
    }
  });

  test('paints every part once, and the steering last', () => {
    const { drawing, placed } = drawn(document);
    for (const view of VIEWS) {
      const order = paintOrder(drawing, placed, view);
      expect(new Set(order).size).toBe(drawing.parts.length);
      const roles = order.map(({ role }) => role);
      expect(roles.indexOf('steering')).toBeGreaterThan(
        roles.findLastIndex((role) => role === 'axle' || role === 'link' || role === 'spring'),
      );
    }
  });
});

describe('what is seen', () => {
  test('tyres stand on the ground at ride height, and on the wheels’ ground in any pose', () => {
    const tyre = (heave: number) => {
      const { drawing, placed } = drawn(railed({}), heave);
      const out: Outline = [];
      outline(part(drawing, 'tyre-left').shapes[0] as Part['shapes'][number], placed, 'side', out);
      const lowest = boxOf(out).bottom;
      outline(part(drawing, 'ground').shapes[1] as Part['shapes'][number], placed, 'side', out);
      return { lowest, ground: out[1] as number };
    };
    const ride = tyre(0);
    expect(ride.lowest).toBeCloseTo(0, 0);
    expect(ride.ground).toBeCloseTo(0, 6);
    const bump = tyre(50);
    expect(bump.lowest).toBeLessThan(-49);
    expect(Math.abs(bump.ground - bump.lowest)).toBeLessThan(1.5);
  });

  test('a wheel that steers is drawn turned: its outline is wider from ahead', () => {
    const widthAt = (handwheel: number) => {
      const { drawing, placed } = drawn(railed({}), 0, 0, handwheel);
      const out: Outline = [];
      outline(part(drawing, 'tyre-left').shapes[0] as Part['shapes'][number], placed, 'front', out);
      const box = boxOf(out);
      return box.right - box.left;
    };
    expect(widthAt(0)).toBeLessThan(165);
    expect(widthAt(6)).toBeGreaterThan(300);
  });

  test('views cover the whole car and nothing else', () => {
    const { drawing, placed } = drawn(railed({}));
    const boxes = viewBoxes(drawing, placed);
    expect(boxes.front.right).toBeGreaterThan(710 + 75);
    expect(boxes.front.right).toBeLessThan(710 + 75 + 40);
    expect(boxes.side.bottom).toBeCloseTo(0, 0);
    // Long rails are broken off behind the front end.
    expect(boxes.side.right).toBeGreaterThan(890);
    expect(boxes.side.right).toBeLessThan(1300);
  });

  test('a car without rails has no frame but still a ground', () => {
    const drawing = drawLayout(resolveLayout(railed({ rails: [] })));
    expect(drawing.parts.some(({ role }) => role === 'frame')).toBe(false);
    expect(drawing.parts.some(({ role }) => role === 'ground')).toBe(true);
  });

  test('mirrored sides are mirror images in the front view', () => {
    const { drawing, placed } = drawn(railed({}));
    const box = (id: string) => {
      const out: Outline = [];
      outline(part(drawing, id).shapes[0] as Part['shapes'][number], placed, 'front', out);
      return boxOf(out);
    };
    for (const id of ['tyre', 'spindle', 'kingpin', 'hairpin']) {
      const [left, right] = [box(`${id}-left`), box(`${id}-right`)];
      expect(left.left).toBeCloseTo(-right.right, 6);
      expect(left.right).toBeCloseTo(-right.left, 6);
      expect(left.top).toBeCloseTo(right.top, 6);
    }
  });
});
