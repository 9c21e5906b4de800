import { capitalised } from '../../../../shared-math/capitalised.ts';
import type { ViewPoint } from '../../../../shared-math/drawing/index.ts';
import type { Point } from '../../../../shared-math/geometry/points.ts';
import { add, cross, dot, norm, scaled, subtract, unit } from '../../../../shared-math/geometry/vectors.ts';
import type { Layout, Side } from '../../../../shared-math/layout/index.ts';
import type { PrintPen } from '../../pens/print-pen.ts';
import { angle } from '../figures.ts';
import { pitmanFromPlumb } from '../links.ts';
import type { SheetModel } from '../sheet-model.ts';
import { PLATE_AROUND } from './cut.ts';
import {
  around,
  ballMark,
  centreLine,
  centreMark,
  dimension,
  type OnPaper,
  type Template,
  tag,
  type WaySign,
} from './template.ts';

// Arms at full size, each in the plane square to the axis that it turns about, through its ball.

/** A plane to draw in: its origin, and which ways go right and down on the paper. Unit vectors. */
interface Plane {
  readonly origin: Point;
  readonly right: Point;
  readonly down: Point;
}

/** The plane through a point square to an axis, with `right` as near to a wish as can be; `away` points into the paper. */
function planeSquareTo(axis: Point, origin: Point, wish: Point, away: Point): Plane {
  const n = unit(dot(axis, away) >= 0 ? axis : scaled(axis, -1));
  const right = unit(subtract(wish, scaled(n, dot(wish, n))));
  // Right, down and into the paper are right-handed.
  return { origin, right, down: cross(n, right) };
}

function inPlane({ origin, right, down }: Plane, point: Point): ViewPoint {
  const d = subtract(point, origin);
  return [dot(d, right), dot(d, down)];
}

/** The foot of a point on the line through a along u (length 1). */
function footOn(point: Point, a: Point, u: Point): Point {
  return add(a, scaled(u, dot(subtract(point, a), u)));
}

interface ArmFacts {
  readonly title: string;
  readonly note: string;
  readonly plane: Plane;
  readonly centre: ViewPoint;
  readonly ball: ViewPoint;
  readonly hub: string;
  /** A direction to hold the paper by, and what it is. */
  readonly along: ViewPoint;
  readonly alongWords: string;
  readonly ways: readonly WaySign[];
  /** Which way it leans from that direction: "forward", "toward the car's centre". */
  readonly lean: string;
  readonly words: readonly string[];
}

/** Ways of the car as they lie in a plane of the paper; one that points out of it is left out. */
function waysIn(plane: Plane, ways: readonly (readonly [words: string, way: Point])[]): WaySign[] {
  return ways.flatMap(([words, way]) => {
    const seen = inPlane({ ...plane, origin: [0, 0, 0] }, way);
    const size = Math.hypot(...seen);
    return size < 0.5 ? [] : [{ words, way: [seen[0] / size, seen[1] / size] as ViewPoint }];
  });
}

/** Angle between two directions of the paper, rad. */
const between = (a: ViewPoint, b: ViewPoint) =>
  Math.acos(Math.min(1, Math.max(-1, (a[0] * b[0] + a[1] * b[1]) / (Math.hypot(...a) * Math.hypot(...b)))));

function armTemplate(model: SheetModel, facts: ArmFacts): Template {
  const { centre, ball } = facts;
  const reach: ViewPoint = [ball[0] - centre[0], ball[1] - centre[1]];
  const length = Math.hypot(...reach);
  const off = between(facts.along, reach);
  // The line to hold the paper by runs on the side to which the arm points.
  const sign = off > Math.PI / 2 ? -1 : 1;
  const onLine = (by: number): ViewPoint => [
    centre[0] + facts.along[0] * sign * by,
    centre[1] + facts.along[1] * sign * by,
  ];
  const turn = Math.min(off, Math.PI - off);
  const near = angle(turn) === '0.0°';
  const tip = onLine(Math.max(50, length * 0.6));
  return {
    title: facts.title,
    note: facts.note,
    ways: facts.ways,
    bounds: around([centre, ball, tip], 18),
    cut: {
      outlines: [{ places: [centre, ball], around: PLATE_AROUND }],
      centres: [centre, ball],
      openings: [],
      bends: [],
      // Within the plate, past the hub's centre on both sides.
      marks: [[onLine(-PLATE_AROUND + 4), onLine(PLATE_AROUND - 4)]],
    },
    words: [
      near
        ? `It stands ${facts.alongWords}.`
        : `It stands ${angle(turn)} from ${facts.alongWords}, leaning ${facts.lean}.`,
      ...facts.words,
    ],
    draw(pen: PrintPen, at: OnPaper) {
      const [c, b, t] = [at(centre), at(ball), at(tip)];
      centreLine(pen, at(onLine(-16)), t);
      if (!near) centreLine(pen, c, b);
      centreMark(pen, c, 14);
      ballMark(pen, b);
      // Beside the line, on the side that the arm does not lean to.
      const side = Math.sign((t[0] - c[0]) * (b[1] - c[1]) - (t[1] - c[1]) * (b[0] - c[0])) || 1;
      const upright = Math.abs(t[1] - c[1]) > Math.abs(t[0] - c[0]);
      const away = upright ? ([side * 3, 0] as const) : ([0, -side * 3] as const);
      tag(
        pen,
        facts.alongWords,
        [t[0] + away[0] * Math.sign(t[1] - c[1] || 1), t[1] + away[1] * Math.sign(t[0] - c[0] || 1) + 1],
        upright ? (away[0] * (t[1] - c[1]) > 0 ? 'left' : 'right') : 'centre',
        true,
      );
      dimension(pen, c, b, 13 * side, model.both(length));
      tag(pen, facts.hub, [c[0] + 5, c[1] - 6]);
      tag(pen, 'ball centre', [b[0] + 6, b[1] - 6]);
    },
  };
}

/** Whether an arm of a side points toward the car's centre plane. */
const leansIn = (arm: Point, side: Side) => (side === 'left' ? arm[1] < 0 : arm[1] > 0);

/** An arm on a spindle, seen along the kingpin from above. */
function spindleArm(model: SheetModel, title: string, side: Side, ball: Point): Template {
  const { layout, both } = model;
  const { kingpinTop, kingpinBottom } = layout.axle[side];
  const axis = unit(subtract(kingpinTop, kingpinBottom));
  const foot = footOn(ball, kingpinBottom, axis);
  const plane = planeSquareTo(axis, foot, [-1, 0, 0], [0, 0, -1]);
  const forward = inPlane({ ...plane, origin: [0, 0, 0] }, [1, 0, 0]);
  const size = Math.hypot(...forward) || 1;
  const height = dot(subtract(ball, kingpinBottom), axis);
  return armTemplate(model, {
    title,
    note: `${side === 'left' ? 'Left' : 'Right'} side, seen from above along the kingpin`,
    plane,
    centre: [0, 0],
    ball: inPlane(plane, ball),
    hub: 'kingpin axis',
    along: [forward[0] / size, forward[1] / size],
    alongWords: 'fore and aft',
    ways: waysIn(plane, [
      ['FRONT', [1, 0, 0]],
      ['CAR’S CENTRE', [0, side === 'left' ? -1 : 1, 0]],
    ]),
    lean: leansIn(subtract(ball, foot), side) ? 'toward the car’s centre' : 'away from the car’s centre',
    words: [
      `The ball’s centre stands ${both(Math.abs(height))} ${height >= 0 ? 'above' : 'below'} the kingpin’s lower end, along the kingpin.`,
      'Centres only: the arm’s shape, section and taper are its maker’s. No arm is bent, heated or welded to fit this paper.',
      side === 'left' ? 'For the other side lay the paper face down.' : '',
    ].filter(Boolean),
  });
}

/** The pitman arm, seen along the sector axis. */
function pitmanArm(model: SheetModel): Template {
  const { sectorCentre, sectorAxis, pitmanBall } = model.layout.steering.box;
  const axis = unit(sectorAxis);
  const foot = footOn(pitmanBall, sectorCentre, axis);
  const sizes = axis.map(Math.abs) as [number, number, number];
  const main = sizes.indexOf(Math.max(...sizes));
  // The way of the view in which the axis is seen end on.
  const [wish, away, seen]: [Point, Point, string] = [
    [[0, 1, 0], [-1, 0, 0], 'seen from ahead along the sector axis'],
    [[-1, 0, 0], [0, -1, 0], 'seen from the car’s left along the sector axis'],
    [[-1, 0, 0], [0, 0, -1], 'seen from above along the sector axis'],
  ][main] as [Point, Point, string];
  const plane = planeSquareTo(axis, foot, wish, away);
  const hold: Point = main === 2 ? [1, 0, 0] : [0, 0, -1];
  const along = inPlane({ ...plane, origin: [0, 0, 0] }, hold);
  const size = norm([along[0], along[1], 0]) || 1;
  return armTemplate(model, {
    title: 'Pitman arm',
    note: capitalised(seen),
    plane,
    centre: [0, 0],
    ball: inPlane(plane, pitmanBall),
    hub: 'sector axis',
    along: [along[0] / size, along[1] / size],
    alongWords: main === 2 ? 'fore and aft' : 'plumb',
    ways: waysIn(plane, [
      ['FRONT', [1, 0, 0]],
      ['LEFT SIDE', [0, 1, 0]],
      ['UP', [0, 0, 1]],
    ]),
    lean:
      main === 2
        ? pitmanBall[1] > foot[1]
          ? 'to the left'
          : 'to the right'
        : (pitmanFromPlumb(model.layout)?.way ?? ''),
    words: [
      'As it stands with the box on its high spot and the wheels straight ahead.',
      'Centres only: length, taper and splines are ordered of the arm’s maker, never made up by bending or welding.',
    ],
  });
}

/** The arms that the steering turns on: pitman arm, steering arm, tie rod arms. */
export function armTemplates(model: SheetModel): Template[] {
  const { axle, steering }: Layout = model.layout;
  const mirrored = model.job.document.axle.right === 'mirror';
  return [
    pitmanArm(model),
    spindleArm(model, 'Steering arm', steering.dragLinkTo, steering.dragLinkBall),
    spindleArm(model, 'Tie rod arm', 'left', axle.left.tieRodBall),
    ...(mirrored ? [] : [spindleArm(model, 'Tie rod arm', 'right', axle.right.tieRodBall)]),
  ];
}
