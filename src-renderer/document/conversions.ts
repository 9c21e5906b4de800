import { mirrored, type Point } from '../../shared-math/geometry/points.ts';
import {
  driverSideOf,
  type LateralKind,
  type Layout,
  type LayoutDocument,
  type Location,
  type LocationKind,
  resolveLayout,
  type Side,
  withValue,
} from '../../shared-math/layout/index.ts';
import { createState, prepareFrontEnd, solveFrontEnd } from '../../shared-math/linkage/index.ts';

// Changing what kind of thing a part is: the new kind's points are proposed from where the old one's stood, so that
// the car on the board still looks like the car in the shop. The person moves them from there.

/** mm. How far the proposed bars of a pair stand apart, half of it above and half below. */
const BAR_HALF_SPREAD = 55;
/** mm. A proposed quarter-elliptic spring from its clamp to its eye, and how much of it is clamped. */
const QUARTER = { length: 520, clamped: 160 };
/** mm. The length of a proposed leaf each way from its seat, and how far its eyes stand above the seat. */
const LEAF_HALF = 470;
const LEAF_ARCH = 35;

/** mm. A proposed spring across: its eyes above the axle's centre line, its clamp above those, half of the clamp's width. */
const SPRING = { overAxle: 60, arch: 90, clampHalf: 50 };

/** mm. A proposed Watt's linkage: its rocker behind the axle's line, half of its length, and its bars' ends inside the rods. */
const WATT = { behind: 60, arm: 60, short: 40 };

/** Where the rods of a side leave the axle: inboard of the kingpin, at the wheel centre's height. */
function axleEnd(layout: Layout): Point {
  const { wheelCentre, kingpinBottom } = layout.axle.left;
  return [wheelCentre[0], Math.abs(kingpinBottom[1]) * 0.7, wheelCentre[2]];
}

/** Where the present location takes hold of the frame on the left side. */
function frameEnd(layout: Layout): Point {
  const { location } = layout;
  const besideCentre = axleEnd(layout)[1];
  switch (location.kind) {
    case 'hairpins':
    case 'split-rods':
      return location.left.framePivot;
    case 'wishbone':
      return [location.framePivot[0], besideCentre, location.framePivot[2]];
    case 'four-bar': {
      const { upper, lower } = location.left;
      return [
        (upper.frame[0] + lower.frame[0]) / 2,
        (upper.frame[1] + lower.frame[1]) / 2,
        (upper.frame[2] + lower.frame[2]) / 2,
      ];
    }
    case 'quarter-elliptic': {
      const { frame } = location.left.rod;
      return [frame[0], frame[1], frame[2] + BAR_HALF_SPREAD];
    }
    case 'parallel-leaf': {
      const { fixedEye, shackleEye } = location.left;
      return fixedEye[0] < shackleEye[0] ? fixedEye : shackleEye;
    }
  }
}

function proposedLocation(kind: LocationKind, layout: Layout): Location {
  const frame = frameEnd(layout);
  const axle = axleEnd(layout);
  switch (kind) {
    case 'hairpins':
    case 'split-rods':
      return { kind, left: { framePivot: frame }, right: 'mirror' };
    case 'wishbone':
      return { kind, framePivot: [frame[0], 0, frame[2]] };
    case 'four-bar': {
      const bar = (rise: number) => ({
        axle: [axle[0], frame[1], axle[2] + rise] as Point,
        frame: [frame[0], frame[1], frame[2] + rise] as Point,
      });
      return {
        kind,
        left: { upper: bar(BAR_HALF_SPREAD), lower: bar(-BAR_HALF_SPREAD) },
        right: 'mirror',
      };
    }
    case 'quarter-elliptic': {
      // Above the axle and straight at ride height; the rod below it, from where the frame holds the axle now.
      const [x, y, z] = axle;
      const up = z + BAR_HALF_SPREAD;
      const down = z - BAR_HALF_SPREAD;
      const clamp = x - QUARTER.length;
      const spring = {
        butt: [clamp - QUARTER.clamped, y, up] as Point,
        clamp: [clamp, y, up] as Point,
        eye: [x, y, up] as Point,
        rod: {
          axle: [x, frame[1], down] as Point,
          frame: [frame[0], frame[1], frame[2] - BAR_HALF_SPREAD] as Point,
        },
      };
      return { kind, eyes: 'pinned', left: spring, right: 'mirror' };
    }
    case 'parallel-leaf': {
      const seat: Point = [axle[0], axle[1], axle[2] + LEAF_ARCH];
      const eye = (way: 1 | -1): Point => [seat[0] + way * LEAF_HALF, seat[1], seat[2] + LEAF_ARCH];
      return { kind, left: { fixedEye: eye(1), seat, shackleEye: eye(-1) }, right: 'mirror' };
    }
  }
}

/** The document with another way of locating the axle. The same kind gives the same document back. */
export function withLocationKind(document: LayoutDocument, kind: LocationKind): LayoutDocument {
  if (document.location.kind === kind) return document;
  return { ...document, location: proposedLocation(kind, resolveLayout(document)) };
}

/** The document with something else keeping the axle in the middle. */
export function withLateralKind(document: LayoutDocument, kind: LateralKind): LayoutDocument {
  if (document.lateral.kind === kind) return document;
  if (kind === 'spring') return { ...document, lateral: { kind } };
  const layout = resolveLayout(document);
  const [x, y, z] = axleEnd(layout);
  if (kind === 'watt') {
    // Behind the beam on the axle's middle: bars alike and level, the rocker upright between them.
    const [at, up] = [x - WATT.behind, z - 20];
    const reach = y - WATT.short;
    return {
      ...document,
      lateral: {
        kind,
        rockerOn: 'axle',
        pivot: [at, 0, up],
        upper: { rocker: [at, 0, up + WATT.arm], end: [at, reach, up + WATT.arm] },
        lower: { rocker: [at, 0, up - WATT.arm], end: [at, -reach, up - WATT.arm] },
      },
    };
  }
  if (kind === 'fixed-spring') {
    // Above the beam, arched as such springs are: its fixed eye away from the driver until somebody says otherwise.
    const way = driverSideOf(document) === 'left' ? -1 : 1;
    const eye: Point = [x, way * y, z + SPRING.overAxle];
    return {
      ...document,
      lateral: { kind, clamp: [x, way * SPRING.clampHalf, eye[2] + SPRING.arch], eye },
    };
  }
  // Behind the beam and nearly level: a level bar moves the axle sideways the least.
  return {
    ...document,
    lateral: { kind, axle: [x - 60, -y, z - 20], frame: [x - 60, y, z] },
  };
}

/** The document with both sides of a part mirrored, or with the right side spelled out so that it may differ. */
export function withMirror(
  document: LayoutDocument,
  part: 'axle' | 'location',
  mirror: boolean,
): LayoutDocument {
  if (part === 'axle') {
    const right = mirror ? 'mirror' : resolveLayout(document).axle.right;
    return { ...document, axle: { ...document.axle, right } };
  }
  if (!('right' in document.location)) return document;
  const resolved = resolveLayout(document).location;
  const right = mirror ? 'mirror' : 'right' in resolved ? resolved.right : 'mirror';
  return { ...document, location: { ...document.location, right } as Location };
}

export function isMirrored(document: LayoutDocument, part: 'axle' | 'location'): boolean {
  const half = document[part];
  return 'right' in half && half.right === 'mirror';
}

/** The document with its drag link to the other wheel: the steering arm's ball goes to the other side. */
export function withDragLinkTo(document: LayoutDocument, side: Side): LayoutDocument {
  if (document.steering.dragLinkTo === side) return document;
  return steeringTheRightWay({
    ...document,
    steering: {
      ...document.steering,
      dragLinkTo: side,
      dragLinkBall: mirrored(document.steering.dragLinkBall),
    },
  });
}

/** Which way the pitman arm swings, given by the shaft it turns on. */
export type Swing = 'fore-and-aft' | 'across' | 'flat';

export function swingOf(axis: Point): Swing {
  const [x, y, z] = axis.map(Math.abs) as [number, number, number];
  if (y >= x && y >= z) return 'fore-and-aft';
  return x >= z ? 'across' : 'flat';
}

const SWING_AXIS: Record<Swing, Point> = {
  'fore-and-aft': [0, 1, 0],
  across: [1, 0, 0],
  flat: [0, 0, 1],
};

/** The document with its box turned so that the arm swings another way. The arm keeps its length. */
export function withSwing(document: LayoutDocument, swing: Swing): LayoutDocument {
  const { box } = document.steering;
  if (swingOf(box.sectorAxis) === swing) return document;
  const arm = box.pitmanBall.map((value, axis) => value - (box.sectorCentre[axis] as number));
  const length = Math.hypot(...arm);
  // A standing arm hangs below the shaft; a flat one points back from it.
  const pointing: Point = swing === 'flat' ? [-length, 0, 0] : [0, 0, -length];
  const pitmanBall = pointing.map((value, axis) => value + (box.sectorCentre[axis] as number));
  return steeringTheRightWay({
    ...document,
    steering: {
      ...document.steering,
      box: { ...box, sectorAxis: SWING_AXIS[swing], pitmanBall: pitmanBall as unknown as Point },
    },
  });
}

/** The document with its sector axis pointing so that the handwheel turned to the left steers to the left. */
export function steeringTheRightWay(document: LayoutDocument): LayoutDocument {
  const state = createState();
  const ratio = document.steering.box.ratio;
  const turned = solveFrontEnd(prepareFrontEnd(resolveLayout(document)), 0, 0, ratio * 0.01, state);
  if (turned !== 'ok' || state.meanSteer >= 0) return document;
  const reversed = document.steering.box.sectorAxis.map((value) => (value === 0 ? 0 : -value));
  return withValue(document, 'steering.box.sectorAxis', reversed);
}
