import { distance, mirrored, type Point } from '../../geometry/points.ts';
import { add, scaled } from '../../geometry/vectors.ts';
import { halfOf, halvesOfSpring, type Layout, lateralBars, SIDES, type Side } from '../../layout/index.ts';
import { clampLine } from '../../pose/index.ts';
import type { Pen } from '../pen.ts';
import { halfPack } from './cantilever.ts';
import { kingpin, onBeam } from './halves.ts';
import { leafPack } from './leaf.ts';
import { eye, eyeBar, rod } from './links.ts';
import { railAt } from './rails.ts';
import { SIZES, tubeRadius } from './sizes.ts';

/** Share of the half beam at which a transverse spring's perch stands. */
const PERCH_STATION = 0.6;
/** mm: the spring's eye above its perch, and the arch of the spring above its eyes. */
const PERCH_RISE = 62;
const ARCH = 88;
const LEAVES = [1, 0.82, 0.64, 0.46, 0.28];

function drawBars(pen: Pen, layout: Layout): void {
  for (const { id, name, from, to } of lateralBars(layout.lateral))
    pen.add({
      id,
      name,
      role: 'link',
      hardpoints: [from.id, to.id],
      shapes: eyeBar(
        pen,
        [from.carrier, from.at],
        [to.carrier, to.at],
        tubeRadius(layout.diameters?.lateralBar, SIZES.rod),
      ),
    });
}

/** mm: half the clamp's height, and how thick and wide the crossmember above it is. */
const CLAMP_HALF = 17;
const CROSSMEMBER = { halfThickness: 13, halfWidth: 34 };

/** The crossmember that the spring is clamped under, from rail to rail where there are rails. */
function drawCrossmember(pen: Pen, layout: Layout, clamp: Point): void {
  const found = railAt(layout, clamp[0]);
  if (!found) return;
  const inner = found.y - found.rail.width / 2;
  const above = clamp[2] + CLAMP_HALF + CROSSMEMBER.halfThickness;
  // Near the rails it comes down or up to their middle, as a bent one does.
  const station = (y: number, z: number) =>
    pen.section('frame', [clamp[0], y, z], [0, 0, CROSSMEMBER.halfThickness], [CROSSMEMBER.halfWidth, 0, 0]);
  pen.add({
    id: 'crossmember',
    name: 'Front crossmember',
    role: 'frame',
    hardpoints: [],
    shapes: [
      {
        kind: 'band',
        sections: [
          station(-inner, found.z),
          station(-inner * 0.72, above),
          station(inner * 0.72, above),
          station(inner, found.z),
        ],
        endOn: ['side'],
        ink: 'outline',
        fill: 'tint',
        views: ['top', 'front'],
        pictorial: true,
      },
    ],
  });
}

/** A spring across the car: clamped to the frame in its middle, its ends on shackles above the beam. */
function drawTransverseSpring(pen: Pen, layout: Layout): void {
  const perch = (side: 'left' | 'right') => onBeam(layout, side, PERCH_STATION);
  const eyeOf = (side: 'left' | 'right'): Point =>
    add(perch(side), [0, side === 'left' ? 34 : -34, SIZES.beamUp + PERCH_RISE]);
  const left = eyeOf('left');
  const right = eyeOf('right');
  const clamp: Point = [(left[0] + right[0]) / 2, (left[1] + right[1]) / 2, (left[2] + right[2]) / 2 + ARCH];
  const ends = [pen.point('axle-left', left), pen.point('axle-right', right)] as const;
  const block = [-1, 1].flatMap((y) =>
    [-1, 1].flatMap((x) => [-1, 1].map((z): Point => add(clamp, [x * 30, y * 62, z * CLAMP_HALF]))),
  );
  drawCrossmember(pen, layout, clamp);
  pen.add({
    id: 'transverse-spring',
    name: 'Transverse spring',
    role: 'spring',
    hardpoints: [],
    shapes: [
      ...SIDES.map((side) =>
        rod(
          pen,
          [`axle-${side}`, add(perch(side), [0, 0, SIZES.beamUp])],
          [`axle-${side}`, eyeOf(side)],
          SIZES.hairpin,
        ),
      ),
      ...leafPack(pen, ends, pen.point('frame', clamp), {
        shares: LEAVES,
        halfThickness: SIZES.leaf,
        halfWidth: SIZES.leafHalfWidth,
        stack: 1,
        wide: 0,
        clamp: 0.5,
      }),
      pen.block('frame', block),
    ],
  });
}

/** mm that the perch of a shackled eye stands further out, and below it. */
const SHACKLE = { out: 26, down: 62 };

/** A spring across with one eye bolted to its perch; the other half is taken as its mirror image, on a shackle. */
function drawFixedSpring(pen: Pen, layout: Layout): void {
  const { lateral } = layout;
  if (lateral.kind !== 'fixed-spring') return;
  const { fixed, shackled } = halvesOfSpring(lateral);
  const line = clampLine(lateral);
  const reach = distance(lateral.clamp, lateral.eye);
  const flat = add(lateral.clamp, scaled(line, reach));
  const pack = {
    shares: LEAVES,
    halfThickness: SIZES.leaf,
    halfWidth: SIZES.leafHalfWidth,
    stack: 1,
    wide: 0,
  } as const;
  const half = (side: Side, turned: (at: Point) => Point) =>
    halfPack(
      pen,
      {
        clamp: pen.point('frame', turned(lateral.clamp)),
        flat: pen.point('frame', turned(flat)),
        eye: pen.point(`axle-${side}`, turned(lateral.eye)),
      },
      pack,
    );
  const perch = (side: Side, to: Point) =>
    rod(
      pen,
      [`axle-${side}`, onBeam(layout, side, shareOfBeam(layout, side, to))],
      [`axle-${side}`, to],
      SIZES.hairpin + 4,
    );
  const hung = mirrored(lateral.eye);
  const foot = add(hung, [0, shackled === 'left' ? SHACKLE.out : -SHACKLE.out, -SHACKLE.down]);
  const middle: Point = [lateral.clamp[0], 0, lateral.clamp[2]];
  const wide = Math.abs(lateral.clamp[1]);
  const block = [-1, 1].flatMap((y) =>
    [-1, 1].flatMap((x) => [-1, 1].map((z): Point => add(middle, [x * 30, y * wide, z * CLAMP_HALF]))),
  );
  drawCrossmember(pen, layout, middle);
  pen.add({
    id: 'transverse-spring',
    name: 'Transverse spring',
    role: 'spring',
    hardpoints: ['lateral.eye', 'lateral.clamp'],
    shapes: [
      perch(fixed, lateral.eye),
      rod(pen, [`axle-${shackled}`, foot], [`axle-${shackled}`, hung], SIZES.hairpin),
      perch(shackled, foot),
      ...half(fixed, (at) => at),
      ...half(shackled, mirrored),
      pen.block('frame', block),
      eye(pen, [`axle-${fixed}`, lateral.eye], [1, 0, 0]),
      eye(pen, [`axle-${shackled}`, hung], [1, 0, 0]),
    ],
  });
}

/** Share of the half beam that lies below a point, as near to the kingpin as the beam goes. */
function shareOfBeam(layout: Layout, side: Side, at: Point): number {
  return Math.min(0.95, Math.abs(at[1]) / Math.max(1, Math.abs(kingpin(layout, side).middle[1])));
}

/** The rocker of a Watt's linkage: a plate from bar to bar on its bolt, and on the axle the bracket that holds the bolt. */
function drawRocker(pen: Pen, layout: Layout): void {
  const { lateral } = layout;
  if (lateral.kind !== 'watt') return;
  const { pivot, upper, lower, rockerOn } = lateral;
  const plate = (at: Point, radius: number) => [
    pen.disc('rocker', add(at, [-5, 0, 0]), [1, 0, 0], radius),
    pen.disc('rocker', add(at, [5, 0, 0]), [1, 0, 0], radius),
  ];
  const arm = (end: Point) => pen.hull(...plate(pivot, SIZES.armRoot), ...plate(end, SIZES.eye - 2));
  const bearer = rockerOn === 'axle' ? (`axle-${halfOf(pivot)}` as const) : 'frame';
  if (rockerOn === 'axle')
    pen.add({
      id: 'rocker-bracket',
      name: 'Rocker bracket',
      role: 'axle',
      hardpoints: ['lateral.pivot'],
      shapes: [
        rod(
          pen,
          [bearer, onBeam(layout, halfOf(pivot), shareOfBeam(layout, halfOf(pivot), pivot))],
          [bearer, pivot],
          SIZES.hairpin + 4,
        ),
      ],
    });
  pen.add({
    id: 'watt-rocker',
    name: 'Rocker',
    role: 'link',
    hardpoints: ['lateral.pivot', 'lateral.upper.rocker', 'lateral.lower.rocker'],
    shapes: [
      arm(upper.rocker),
      arm(lower.rocker),
      pen.cylinder(bearer, pivot, [1, 0, 0], -16, 16, SIZES.kingpin),
    ],
  });
}

/** Whether springs along the rails carry the car. */
function springsAlong({ location }: Layout): boolean {
  return location.kind === 'parallel-leaf' || location.kind === 'quarter-elliptic';
}

/** What holds the axle sideways. Springs along the rails do it themselves and are drawn already. */
export function drawLateral(pen: Pen, layout: Layout): void {
  drawRocker(pen, layout);
  drawBars(pen, layout);
  if (layout.lateral.kind === 'fixed-spring') drawFixedSpring(pen, layout);
  else if (layout.lateral.kind === 'spring' && !springsAlong(layout)) drawTransverseSpring(pen, layout);
}
