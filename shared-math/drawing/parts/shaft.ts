import type { Point } from '../../geometry/points.ts';
import { add, cross, dot, norm, scaled, subtract, unit } from '../../geometry/vectors.ts';
import type { JointKind, JointSide, Layout, ShaftDocument } from '../../layout/index.ts';
import { type ShaftLine, type ShaftPin, shaftLine, TO_SPIDER } from '../../shaft/index.ts';
import type { Line, Shape } from '../drawing.ts';
import type { Bearer, Pen } from '../pen.ts';
import { VIEW_AXES, VIEWS } from '../views.ts';

/** What a shaft's document leaves open is drawn at a common size; mm. */
const USUAL = { radius: 9.525, reach: 42 } as const;
/** A yoke: where its hub ends and its ears begin from the spider, and its ears: radius, inner and outer face. */
const YOKE = { hub: 14, wall: 4.5, from: 19, root: 23, ear: 10.5, inner: 10.5, outer: 18, cap: 5 } as const;
/** A double joint is longer by what lies between its spiders, and its ring is as wide as its ears. */
const RING = { radius: 16, half: 5, round: 3 } as const;
/** How far the column's shaft stands out of its tube, how much of the tube is drawn, and how thick it is. */
const COLUMN = { out: 46, tube: 150, radius: 22 } as const;
const BEARING = { half: 8, wall: 9, shank: 52, shankRadius: 6, plate: 13 } as const;

/** A shape and where it stands, so that a view can paint the farther one first. */
interface Placed {
  readonly shape: Shape;
  readonly at: Point;
}

/**
 * Shapes of one part that stand before one another: in each view in its own order. Seen as drawn, straight ahead. The
 * pictorial finds its own, and takes each once.
 */
function byDepth(shapes: readonly Placed[]): Shape[] {
  return VIEWS.flatMap((view) => {
    const { axis, sign } = VIEW_AXES[view].toward;
    return shapes
      .toSorted((a, b) => sign * (a.at[axis] - b.at[axis]))
      .map(({ shape }) => ({ ...shape, views: [view], pictorial: view === 'side' && shape.fill !== 'none' }));
  });
}

function boreRadius(side: JointSide | undefined): number {
  if (!side) return USUAL.radius;
  return ('bore' in side ? side.bore : side.diameter) / 2;
}

/** The two ears of a yoke at a spider, and their caps; `away` points from the spider to the yoke's hub. */
function ears(pen: Pen, bearer: Bearer, centre: Point, ear: Point, away: Point, root: number): Placed[] {
  const at = (out: number, along: number) => add(add(centre, scaled(ear, out)), scaled(away, along));
  return [1, -1].flatMap((way): Placed[] => {
    const disc = (out: number, along: number, radius: number) =>
      pen.disc(bearer, at(way * out, along), ear, radius);
    return [
      {
        shape: pen.hull(
          disc(YOKE.inner, 0, YOKE.ear),
          disc(YOKE.outer, 0, YOKE.ear),
          disc(YOKE.inner - 4, root, YOKE.ear - 1),
          disc(YOKE.outer - 4, root, YOKE.ear - 1),
        ),
        at: at(way * YOKE.outer * 0.8, root / 2),
      },
      {
        shape: {
          ...pen.hull(disc(YOKE.outer, 0, YOKE.cap), disc(YOKE.outer + 1.5, 0, YOKE.cap)),
          ink: 'fine',
          fill: 'none',
        },
        at: at(way * (YOKE.outer + 1), 0),
      },
    ];
  });
}

/** A yoke on the end of a shaft: the hub that takes the shaft, and its ears. */
function yoke(
  pen: Pen,
  bearer: Bearer,
  { centre }: ShaftPin,
  ear: Point,
  away: Point,
  side: JointSide | undefined,
  further: number,
): Placed[] {
  const radius = Math.max(YOKE.hub, boreRadius(side) + YOKE.wall);
  const face = faceOf(side, further);
  return [
    {
      shape: pen.cylinder(bearer, centre, away, YOKE.from, Math.max(face, YOKE.from + 8), radius),
      at: add(centre, scaled(away, (face + YOKE.from) / 2)),
    },
    ...ears(pen, bearer, centre, ear, away, YOKE.root),
  ];
}

/** How far from a spider the face of a joint's end stands; `further` is how far the spider is from the joint's centre. */
function faceOf(side: JointSide | undefined, further: number): number {
  return Math.max((side?.reach ?? USUAL.reach + further) - further, YOKE.root + 6);
}

/** How far from a joint's centre the face of its end stands, as it is drawn. */
function reachOf(side: JointSide | undefined, kind: JointKind | undefined): number {
  const further = kind === 'double' ? TO_SPIDER : 0;
  return faceOf(side, further) + further;
}

function drawJoint(pen: Pen, shaft: ShaftDocument, line: ShaftLine, joint: number): void {
  const entry = shaft.joints[joint] as ShaftDocument['joints'][number];
  const first = line.pins.findIndex((pin) => pin.joint === joint);
  const last = line.pins.findLastIndex((pin) => pin.joint === joint);
  const [near, far] = [line.pins[first] as ShaftPin, line.pins[last] as ShaftPin];
  const wayOf = (member: number) => line.members[member]?.direction as Point;
  const further = first === last ? 0 : norm(subtract(near.centre, entry.centre));
  const shapes: Placed[] = [
    ...yoke(pen, first, near, near.driving, scaled(wayOf(first), -1), entry.columnSide, further),
    ...yoke(pen, last + 1, far, far.driven, wayOf(last + 1), entry.boxSide, further),
    { shape: pen.hull(pen.ball('frame', entry.centre, 7)), at: entry.centre },
  ];
  if (first !== last) {
    const along = wayOf(last);
    const middle = scaled(add(near.centre, far.centre), 0.5);
    const root = norm(subtract(far.centre, near.centre)) / 2 - RING.half;
    shapes.push(
      ...ears(pen, last, near.centre, near.driven, along, root),
      ...ears(pen, last, far.centre, far.driving, scaled(along, -1), root),
      {
        shape: pen.hull(
          pen.disc(last, add(middle, scaled(along, -RING.half)), along, RING.radius, RING.round),
          pen.disc(last, add(middle, scaled(along, RING.half)), along, RING.radius, RING.round),
        ),
        at: middle,
      },
    );
  }
  pen.add({
    id: `shaft-joint-${joint}`,
    name: `Joint ${joint + 1}`,
    role: 'steering',
    hardpoints: [`shaft.joints.${joint}.centre`],
    shapes: byDepth(shapes),
  });
}

/** Where a shaft's tube runs between two joints, and its bearings along it, mm from the joint nearer the column. */
function stretches(from: number, to: number, bearings: readonly number[]): [number, number][] {
  const stops = [from, ...bearings.flatMap((at) => [at - BEARING.half, at + BEARING.half]), to];
  const found: [number, number][] = [];
  // A bearing beyond the tube's end leaves a stretch of no length in its place.
  for (let i = 0; i < stops.length; i += 2)
    found.push([stops[i] as number, Math.max(stops[i + 1] as number, (stops[i] as number) + 0.1)]);
  return found;
}

function drawPiece(pen: Pen, shaft: ShaftDocument, line: ShaftLine, index: number): void {
  const [from, to] = [shaft.joints[index], shaft.joints[index + 1]];
  const member = line.members.findIndex((each) => each.kind === 'shaft' && each.index === index);
  if (!from || !to || member < 0) return;
  const direction = line.members[member]?.direction as Point;
  const length = norm(subtract(to.centre, from.centre));
  const stock = shaft.shafts[index]?.stock;
  const radius = stock ? stock.diameter / 2 : USUAL.radius;
  const start = Math.min(reachOf(from.boxSide, from.kind), length / 2);
  const end = Math.max(length - reachOf(to.columnSide, to.kind), length / 2);
  const bearings = shaft.supports
    .filter((support) => support.shaft === index)
    .map(({ at }) => at * length)
    .sort((a, b) => a - b);
  const slip = stock && 'slip' in stock ? stock.slip : undefined;
  const tube = stretches(start, end, bearings).map(([a, b]) =>
    pen.cylinder(member, from.centre, direction, a, b, radius),
  );
  // The outer one of two pieces that slide: over the overlap, toward the box.
  const sleeve = slip
    ? [pen.cylinder(member, from.centre, direction, Math.max(end - slip.overlap, start), end, radius + 4)]
    : [];
  pen.add({
    id: `shaft-piece-${index}`,
    name: `Shaft ${index + 1}`,
    role: 'steering',
    hardpoints: [`shaft.joints.${index}.centre`, `shaft.joints.${index + 1}.centre`],
    shapes: [...tube, ...sleeve],
  });
}

function drawBearing(pen: Pen, shaft: ShaftDocument, index: number): void {
  const support = shaft.supports[index];
  const [from, to] = support ? [shaft.joints[support.shaft], shaft.joints[support.shaft + 1]] : [];
  if (!support || !from || !to) return;
  const along = subtract(to.centre, from.centre);
  const direction = unit(along);
  const at = add(from.centre, scaled(along, support.at));
  const stock = shaft.shafts[support.shaft]?.stock;
  const radius = (stock ? stock.diameter / 2 : USUAL.radius) + BEARING.wall;
  // It hangs on a shank that stands square to the shaft, downward as far as that goes.
  const down = subtract([0, 0, -1], scaled(direction, -direction[2]));
  const shank: Point = norm(down) > 0.1 ? unit(down) : unit(cross(direction, [0, 1, 0]));
  const foot = add(at, scaled(shank, radius + BEARING.shank));
  pen.add({
    id: `shaft-bearing-${index}`,
    name: 'Support bearing',
    role: 'box',
    hardpoints: [],
    shapes: [
      pen.cylinder('frame', at, shank, radius - 2, radius + BEARING.shank, BEARING.shankRadius),
      pen.hull(
        pen.disc('frame', foot, shank, BEARING.plate),
        pen.disc('frame', add(foot, scaled(shank, 5)), shank, BEARING.plate),
      ),
      {
        ...pen.hull(
          pen.disc('frame', add(at, scaled(direction, -BEARING.half)), direction, radius),
          pen.disc('frame', add(at, scaled(direction, BEARING.half)), direction, radius),
        ),
        fill: 'tint',
      },
    ],
  });
}

/**
 * The end of a shaft that belongs to column or box: `away` from its tip as far as `seen` mm. The joint on it covers its
 * tip, which its middle line shows.
 */
function shaftTip(
  pen: Pen,
  member: number,
  tip: Point,
  away: Point,
  covered: number,
  seen: number,
  radius: number,
) {
  const from = Math.min(Math.max(covered, 0), seen - 1);
  const line: Line = {
    kind: 'line',
    points: [pen.point(member, tip), pen.point(member, add(tip, scaled(away, seen)))],
    ink: 'broken',
    fill: 'none',
  };
  return [pen.cylinder(member, tip, away, from, seen, radius), line];
}

/** mm that a coupling stands out around a stub, and reaches along it to either side of where the two meet. */
const COUPLING = { out: 4, half: 16 } as const;
/** mm of what is not there: of no length to speak of and under the joint, so that a drag leaves the drawing's parts the same. */
const NOTHING = 0.1;

/**
 * An end that has to be longer than it is, for the joint that stands farther out: from its tip as far as the joint's face, in
 * a broken line, as it is no part that the car has. A stub on the box's input is coupled on.
 */
function drawLonger(
  pen: Pen,
  part: 'column' | 'box',
  member: number,
  { tip, out, lacks, radius }: { tip: Point; out: Point; lacks: number; radius: number },
): void {
  const piece = pen.cylinder(member, tip, out, 0, Math.max(lacks, NOTHING), radius);
  const isCoupled = lacks > 2 * COUPLING.half;
  const half = isCoupled ? COUPLING.half : NOTHING / 2;
  const coupling =
    part === 'box'
      ? [pen.cylinder(member, tip, out, -half, half, radius + (isCoupled ? COUPLING.out : 0))]
      : [];
  pen.add({
    id: `shaft-${part}-longer`,
    name: part === 'column' ? 'Column’s shaft, to be made longer' : 'Stub to be coupled onto the box’s input',
    role: 'steering',
    hardpoints: [`shaft.${part}.end`],
    shapes: [piece, ...coupling].map((shape) => ({ ...shape, ink: 'broken' })),
  });
}

/** The break lines across the column's tube, which goes on to the handwheel: one in each view, square to the tube as seen there. */
function columnBreaks(pen: Pen, at: Point, along: Point): Line[] {
  return VIEWS.flatMap((view): Line[] => {
    const { axis, sign } = VIEW_AXES[view].toward;
    const eye: [number, number, number] = [0, 0, 0];
    eye[axis] = sign;
    const seen = subtract(along, scaled(eye, dot(along, eye)));
    // Seen nearly end on, the tube's end is what is looked at.
    if (norm(seen) < 0.35) return [];
    const way = unit(seen);
    const across = cross(eye, way);
    const place = (step: number, kick: number) =>
      pen.point('frame', add(at, add(scaled(across, step * COLUMN.radius), scaled(way, kick))));
    const points = [
      place(-1.5, 0),
      place(-0.5, 0),
      place(-0.18, 12),
      place(0.18, -12),
      place(0.5, 0),
      place(1.5, 0),
    ];
    return [{ kind: 'line', points, ink: 'fine', fill: 'none', views: [view] }];
  });
}

/** The column: its tube, bolted to the car, and the end of its shaft, which turns. */
function drawColumn(pen: Pen, { column, joints }: ShaftDocument): void {
  const away = scaled(unit(column.axis), -1);
  const [first] = joints;
  const along = first ? dot(subtract(column.end, first.centre), away) : 0;
  const covered = reachOf(first?.columnSide, first?.kind) - along;
  const radius = column.fit ? column.fit.diameter / 2 : USUAL.radius;
  pen.add({
    id: 'shaft-column-tube',
    name: 'Steering column',
    role: 'box',
    hardpoints: ['shaft.column.end'],
    shapes: [
      {
        ...pen.cylinder('frame', column.end, away, COLUMN.out, COLUMN.out + COLUMN.tube, COLUMN.radius),
        fill: 'tint',
      },
      ...columnBreaks(pen, add(column.end, scaled(away, COLUMN.out + COLUMN.tube)), away),
    ],
  });
  pen.add({
    id: 'shaft-column',
    name: 'Column end',
    role: 'steering',
    hardpoints: ['shaft.column.end'],
    shapes: shaftTip(pen, 0, column.end, away, covered, COLUMN.out, radius),
  });
  if (first)
    drawLonger(pen, 'column', 0, { tip: column.end, out: scaled(away, -1), lacks: -covered, radius });
}

/** The box's input shaft, from its tip to where it goes into the box. */
function drawInput(pen: Pen, { box, joints }: ShaftDocument, line: ShaftLine, into: number): void {
  const away = unit(box.axis);
  const last = joints.at(-1);
  const along = last ? dot(subtract(box.end, last.centre), away) : 0;
  const covered = reachOf(last?.boxSide, last?.kind) - along;
  const radius = box.fit ? box.fit.diameter / 2 : USUAL.radius;
  pen.add({
    id: 'shaft-box-input',
    name: 'Box input',
    role: 'steering',
    hardpoints: ['shaft.box.end'],
    shapes: shaftTip(pen, line.members.length - 1, box.end, away, covered, into, radius),
  });
  const longer = { tip: box.end, out: scaled(away, -1), lacks: -covered, radius };
  if (last) drawLonger(pen, 'box', line.members.length - 1, longer);
}

/** The steering shaft from the column to the box: `into` is how far the box's input is seen, mm from its tip. */
export function drawShaft(pen: Pen, { shaft }: Layout, into: number): void {
  if (!shaft) return;
  const line = shaftLine(shaft);
  pen.shaft = line;
  drawColumn(pen, shaft);
  for (let i = 0; i < shaft.shafts.length; i += 1) drawPiece(pen, shaft, line, i);
  drawInput(pen, shaft, line, into);
  for (let i = 0; i < shaft.supports.length; i += 1) drawBearing(pen, shaft, i);
  for (let i = 0; i < shaft.joints.length; i += 1) drawJoint(pen, shaft, line, i);
}
