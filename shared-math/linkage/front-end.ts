import { distance, type FramePoint, type HalfPoint, type Point } from '../geometry/points.ts';
import { add, cross, dot, scaled, subtract, unit } from '../geometry/vectors.ts';
import type { AxleSide, Layout, Side } from '../layout/index.ts';
import { type AxleModel, prepareAxle, type WindUp } from '../pose/index.ts';
import { toRadians } from '../units/index.ts';
import { type BallCircle, ballCircle, drawnBranch } from './ball-circle.ts';

/** One side's spindle, in the frame of its axle half: axes of the car at ride height, origin A0. mm, unit vectors. */
export interface Spindle {
  /** Kingpin's upward direction, length 1. */
  readonly upward: HalfPoint;
  /** Kingpin's lower end. */
  readonly bottom: HalfPoint;
  readonly tieRodBall: BallCircle<HalfPoint>;
  readonly wheelCentre: BallCircle<HalfPoint>;
  /** The wheel's spin axis, as a circle of its tip about the kingpin direction. */
  readonly spinAxis: BallCircle<HalfPoint>;
  /** z of the wheel centre as drawn, from A0. */
  readonly wheelHeight: number;
}

/**
 * A layout made ready to be solved in any number of poses. Lengths in mm, angles in radians, unit vectors of
 * length 1. Holds the axle model's scratch space: one user at a time.
 */
export interface FrontEnd {
  readonly layout: Layout;
  readonly axle: AxleModel;
  readonly left: Spindle;
  readonly right: Spindle;
  /** The side the drag link goes to; the tie rod takes the other. */
  readonly driven: Side;
  readonly dragLinkBall: BallCircle<HalfPoint>;
  readonly dragLinkLength: number;
  readonly dragLinkBranch: 1 | -1;
  readonly tieRodLength: number;
  readonly tieRodBranch: 1 | -1;
  /** In the car's frame, as is the sector's axis (length 1). */
  readonly pitmanBall: BallCircle<FramePoint>;
  readonly sectorAxis: Point;
  readonly ratio: number;
}

/** The wheel's spin axis as drawn, pointing left, from toe-in and camber in degrees (design section 6). */
export function drawnSpinAxis(side: Side, half: Pick<AxleSide, 'toeIn' | 'camber'>): Point {
  const toe = toRadians(half.toeIn);
  const camber = toRadians(half.camber);
  const inward = side === 'left' ? 1 : -1;
  return [
    inward * Math.sin(toe) * Math.cos(camber),
    Math.cos(toe) * Math.cos(camber),
    -inward * Math.sin(camber),
  ];
}

function prepareSpindle(side: Side, half: AxleSide, centre: Point): Spindle {
  const bottom: HalfPoint = subtract(half.kingpinBottom, centre);
  const upward: HalfPoint = unit(subtract(half.kingpinTop, half.kingpinBottom));
  const wheelCentre: HalfPoint = subtract(half.wheelCentre, centre);
  return {
    upward,
    bottom,
    tieRodBall: ballCircle(bottom, upward, subtract(half.tieRodBall, centre)),
    wheelCentre: ballCircle(bottom, upward, wheelCentre),
    spinAxis: ballCircle<HalfPoint>([0, 0, 0], upward, drawnSpinAxis(side, half)),
    wheelHeight: wheelCentre[2],
  };
}

type Spindles = Pick<FrontEnd, 'axle' | 'left' | 'right'>;

/** What the steering's own points come to, on an axle and spindles that are ready. */
function prepareSteering(layout: Layout, { axle, left, right }: Spindles): FrontEnd {
  const { centre } = axle;
  const { box, dragLinkTo, dragLinkBall } = layout.steering;
  const driven = dragLinkTo === 'left' ? left : right;
  const follower = dragLinkTo === 'left' ? right : left;
  const ballOfDriven = ballCircle(driven.bottom, driven.upward, subtract(dragLinkBall, centre));
  const { left: leftHalf, right: rightHalf } = layout.axle;
  const sectorAxis = unit(box.sectorAxis);
  return {
    layout,
    axle,
    left,
    right,
    driven: dragLinkTo,
    dragLinkBall: ballOfDriven,
    dragLinkLength: distance(dragLinkBall, box.pitmanBall),
    dragLinkBranch: drawnBranch(ballOfDriven, subtract(box.pitmanBall, centre)),
    tieRodLength: distance(leftHalf.tieRodBall, rightHalf.tieRodBall),
    tieRodBranch: drawnBranch(follower.tieRodBall, add(driven.tieRodBall.base, driven.tieRodBall.across)),
    pitmanBall: sectorCircle(box, sectorAxis),
    sectorAxis,
    ratio: box.ratio,
  };
}

/** The pitman ball's circle, in the car's frame, where it is drawn with the box in its middle. */
export function sectorCircle(
  { sectorCentre, pitmanBall }: Layout['steering']['box'],
  sectorAxis: Point,
): BallCircle<FramePoint> {
  return ballCircle<FramePoint>(sectorCentre, sectorAxis, pitmanBall as Point);
}

/** Makes a validated layout ready. Pure; the layout is kept by reference and must not be changed afterwards. */
export function prepareFrontEnd(layout: Layout): FrontEnd {
  const axle = prepareAxle(layout);
  const left = prepareSpindle('left', layout.axle.left, axle.centre);
  const right = prepareSpindle('right', layout.axle.right, axle.centre);
  return prepareSteering(layout, { axle, left, right });
}

/**
 * A layout made ready that differs from that of `frontEnd` in its steering box and steering arm ball, where `movesAxle`
 * says so in what locates the axle, and where `movesTieRod` says so in the tie rod's balls: the rest is taken from there.
 */
export function prepareMoved(
  frontEnd: FrontEnd,
  layout: Layout,
  movesAxle: boolean,
  movesTieRod = false,
): FrontEnd {
  const axle = movesAxle ? prepareAxle(layout) : frontEnd.axle;
  if (!movesTieRod) return prepareSteering(layout, { axle, left: frontEnd.left, right: frontEnd.right });
  // The axle's pose asks nothing of its spindles.
  const left = prepareSpindle('left', layout.axle.left, axle.centre);
  const right = prepareSpindle('right', layout.axle.right, axle.centre);
  return prepareSteering(layout, { axle, left, right });
}

/**
 * The front end with its axle wound up by an angle of each half (rad), as braking does it: posed and steered as any. Its
 * links are as long as drawn, so a wound-up axle steers where its drag link makes it.
 */
export function prepareWoundUp(frontEnd: FrontEnd, windUp: WindUp): FrontEnd {
  if (windUp.left === 0 && windUp.right === 0) return frontEnd;
  return { ...frontEnd, axle: prepareAxle(frontEnd.layout, windUp) };
}

/** Lengths of the links as drawn, centre to centre, and of the arms about their axes; mm. */
export interface LinkLengths {
  readonly dragLink: number;
  readonly tieRod: number;
  readonly pitmanArm: number;
  /** From the kingpin's line to the drag link's ball. */
  readonly steeringArm: number;
  readonly leftTieRodArm: number;
  readonly rightTieRodArm: number;
}

export function linkLengths(frontEnd: FrontEnd): LinkLengths {
  return {
    dragLink: frontEnd.dragLinkLength,
    tieRod: frontEnd.tieRodLength,
    pitmanArm: Math.sqrt(frontEnd.pitmanBall.radiusSquared),
    steeringArm: Math.sqrt(frontEnd.dragLinkBall.radiusSquared),
    leftTieRodArm: Math.sqrt(frontEnd.left.tieRodBall.radiusSquared),
    rightTieRodArm: Math.sqrt(frontEnd.right.tieRodBall.radiusSquared),
  };
}

/** Scrub radius and mechanical trail of a side as drawn, mm (ISO 8855 signs: contact outboard, axis ahead). */
export function groundOffsets(layout: Layout, side: Side): { scrubRadius: number; mechanicalTrail: number } {
  const half = layout.axle[side];
  const spin = drawnSpinAxis(side, half);
  // The contact point lies in the wheel's plane, straight below the wheel centre's axle line.
  const forward = unit(cross(spin, [0, 0, 1]));
  const down = cross(spin, forward);
  const drop = half.wheelCentre[2] / -down[2];
  const contact = add(half.wheelCentre, scaled(down, drop));
  const upward = subtract(half.kingpinTop, half.kingpinBottom);
  const ground = add(half.kingpinBottom, scaled(upward, -half.kingpinBottom[2] / upward[2]));
  const outboard: Point = side === 'left' ? [0, 1, 0] : [0, -1, 0];
  const offset = subtract(contact, ground);
  return { scrubRadius: dot(offset, outboard), mechanicalTrail: -offset[0] };
}
