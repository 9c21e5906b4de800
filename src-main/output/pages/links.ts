import { distance, type Point } from '../../../shared-math/geometry/points.ts';
import { cross, dot, norm, subtract, unit } from '../../../shared-math/geometry/vectors.ts';
import { type Layout, lateralBars, type Side } from '../../../shared-math/layout/index.ts';
import { toDegrees } from '../../../shared-math/units/index.ts';

/** A link or an arm of the car with its length, mm. */
export interface Length {
  readonly name: string;
  /** From where to where. */
  readonly between: string;
  readonly length: number;
}

/** How far a point stands from the line through two others, mm. */
function fromLine(point: Point, a: Point, b: Point): number {
  return norm(cross(subtract(point, a), unit(subtract(b, a))));
}

/** Both sides in one line where they are alike to the hundredth of a millimetre. */
function bothSides(name: string, between: string, of: (side: Side) => number): Length[] {
  const [left, right] = [of('left'), of('right')];
  if (Math.abs(left - right) < 0.01) return [{ name: `${name}, each side`, between, length: left }];
  return [
    { name: `${name}, left`, between, length: left },
    { name: `${name}, right`, between, length: right },
  ];
}

function locationLinks({ location, axle }: Layout): Length[] {
  switch (location.kind) {
    case 'hairpins':
      return bothSides('Hairpin', 'pivot to the axle’s centre line', (side) =>
        fromAxle(location[side].framePivot, axle),
      );
    case 'split-rods':
      return bothSides('Radius rod', 'ball to the axle’s centre line', (side) =>
        fromAxle(location[side].framePivot, axle),
      );
    case 'wishbone':
      return [
        {
          name: 'Wishbone',
          between: 'ball to the axle’s centre line',
          length: fromAxle(location.framePivot, axle),
        },
      ];
    case 'four-bar':
      return (['upper', 'lower'] as const).flatMap((bar) =>
        bothSides(`${bar === 'upper' ? 'Upper' : 'Lower'} bar`, 'ball to ball', (side) =>
          distance(location[side][bar].axle, location[side][bar].frame),
        ),
      );
    case 'quarter-elliptic':
      return [
        ...bothSides('Quarter-elliptic spring', 'clamp to eye, straight', (side) =>
          distance(location[side].clamp, location[side].eye),
        ),
        ...bothSides('Radius rod', location.eyes === 'pinned' ? 'ball to ball' : 'axle to ball', (side) =>
          distance(location[side].rod.axle, location[side].rod.frame),
        ),
      ];
    case 'parallel-leaf':
      return [
        ...bothSides('Leaf spring', 'fixed eye to seat', (side) =>
          distance(location[side].fixedEye, location[side].seat),
        ),
        ...bothSides('Leaf spring', 'seat to shackle eye', (side) =>
          distance(location[side].seat, location[side].shackleEye),
        ),
      ];
  }
}

function fromAxle(point: Point, axle: Layout['axle']): number {
  return fromLine(point, axle.left.wheelCentre, axle.right.wheelCentre);
}

/** "axle end", of "Lateral bar, axle end". */
const endName = ({ name }: { readonly name: string }) => name.slice(name.lastIndexOf(', ') + 2);

/** Lengths of every link, centre to centre of its balls or eyes, as drawn at ride height. mm. */
export function linkList(layout: Layout): Length[] {
  const { axle, steering, lateral } = layout;
  return [
    {
      name: 'Drag link',
      between: 'pitman ball to steering arm ball',
      length: distance(steering.box.pitmanBall, steering.dragLinkBall),
    },
    {
      name: 'Tie rod',
      between: 'ball to ball',
      length: distance(axle.left.tieRodBall, axle.right.tieRodBall),
    },
    ...lateralBars(lateral).map(({ name, from, to }) => ({
      name,
      between: `${endName(from)} to ${endName(to)}`,
      length: distance(from.at, to.at),
    })),
    ...(lateral.kind === 'watt'
      ? (['upper', 'lower'] as const).map((bar) => ({
          name: 'Rocker',
          between: `bolt to ${bar} bar`,
          length: distance(lateral.pivot, lateral[bar].rocker),
        }))
      : []),
    ...(lateral.kind === 'fixed-spring'
      ? [
          {
            name: 'Transverse spring',
            between: 'fixed eye to clamp, straight',
            length: distance(lateral.eye, lateral.clamp),
          },
        ]
      : []),
    ...locationLinks(layout),
  ];
}

/** The arms' working lengths: how far each ball stands from the axis that its arm turns about. mm. */
export function armList(layout: Layout): Length[] {
  const { axle, steering } = layout;
  const kingpin = (side: Side) => [axle[side].kingpinBottom, axle[side].kingpinTop] as const;
  const { box } = steering;
  const tip: Point = [
    box.sectorCentre[0] + box.sectorAxis[0],
    box.sectorCentre[1] + box.sectorAxis[1],
    box.sectorCentre[2] + box.sectorAxis[2],
  ];
  return [
    {
      name: 'Pitman arm',
      between: 'sector axis to ball',
      length: fromLine(box.pitmanBall, box.sectorCentre, tip),
    },
    {
      name: 'Steering arm',
      between: 'kingpin axis to ball',
      length: fromLine(steering.dragLinkBall, ...kingpin(steering.dragLinkTo)),
    },
    ...bothSides('Tie rod arm', 'kingpin axis to ball', (side) =>
      fromLine(axle[side].tieRodBall, ...kingpin(side)),
    ),
  ];
}

/** How a direction lies, in words for somebody at the car: "across the car, level", "fore and aft, 12.0° from level". */
export function axisWords(axis: Point, degrees: (value: number) => string): string {
  const [x, y, z] = unit(axis);
  const turn = (value: number) => toDegrees(Math.abs(value));
  const sizes = [Math.abs(x), Math.abs(y), Math.abs(z)];
  const main = sizes.indexOf(Math.max(...sizes));
  if (main === 2) {
    const off = turn(Math.acos(Math.min(1, Math.abs(z))));
    return off < 0.05 ? 'upright' : `upright, leaning ${degrees(off)}`;
  }
  const rise = turn(Math.asin(z));
  const skew = turn(main === 1 ? Math.atan2(Math.abs(x), Math.abs(y)) : Math.atan2(Math.abs(y), Math.abs(x)));
  return [
    main === 1 ? 'across the car' : 'fore and aft',
    skew < 0.05 ? '' : `${degrees(skew)} off square`,
    rise < 0.05 ? 'level' : `${degrees(rise)} from level`,
  ]
    .filter(Boolean)
    .join(', ');
}

/**
 * How far the pitman arm stands from plumb, seen along the sector axis, rad; positive where the ball is ahead (or, with
 * an axis fore and aft, to the left). Nothing for an axis that stands upright.
 */
export function pitmanFromPlumb(layout: Layout): { angle: number; way: string } | undefined {
  const { sectorAxis, sectorCentre, pitmanBall } = layout.steering.box;
  const axis = unit(sectorAxis);
  const plumb = subtract([0, 0, -1], scaledBy(axis, -axis[2]));
  if (norm(plumb) < 0.1) return undefined;
  const arm = subtract(pitmanBall, sectorCentre);
  const flat = subtract(arm, scaledBy(axis, dot(arm, axis)));
  const angle = Math.atan2(norm(cross(plumb, flat)), dot(plumb, flat));
  const across = Math.abs(axis[1]) >= Math.abs(axis[0]);
  const lean = flat[across ? 0 : 1];
  return { angle, way: across ? (lean > 0 ? 'ahead' : 'back') : lean > 0 ? 'to the left' : 'to the right' };
}

function scaledBy(a: Point, factor: number): Point {
  return [a[0] * factor, a[1] * factor, a[2] * factor];
}
