import { distance, type Point } from '../../shared-math/geometry/points.ts';
import { add, dot, norm, scaled, subtract, unit } from '../../shared-math/geometry/vectors.ts';
import {
  type Layout,
  type LayoutDocument,
  moveHardpoint,
  placeHardpoint,
  resolveLayout,
  type Side,
} from '../../shared-math/layout/index.ts';
import { toDegrees, toRadians } from '../../shared-math/units/index.ts';
import { isMirrored } from './conversions.ts';

/** A length or an angle that every shop knows of its car: read off the drawing, and set by moving what it is a length of. */
export interface KnownLength {
  readonly id: string;
  readonly name: string;
  readonly unit: 'length' | 'angle';
  /** What setting it moves. */
  readonly moves: string;
  /** mm or degrees, of the layout as drawn. */
  read(layout: Layout): number;
  /** The document in which it has the value; not validated. */
  withValue(document: LayoutDocument, value: number): LayoutDocument;
}

/** A vector in its part along a direction of length 1 and the rest. */
function parts(vector: Point, along: Point): { readonly along: Point; readonly square: Point } {
  const lengthwise = scaled(along, dot(vector, along));
  return { along: lengthwise, square: subtract(vector, lengthwise) };
}

/** Pitman arm: from the sector shaft's line to the ball, in the arm's plane of swing. */
function armParts({ steering: { box } }: Layout) {
  return parts(subtract(box.pitmanBall, box.sectorCentre), unit(box.sectorAxis));
}

/** From a kingpin's line to a point, square to it. */
function squareToKingpin({ axle }: Layout, side: Side, point: Point) {
  const { kingpinTop, kingpinBottom } = axle[side];
  return parts(subtract(point, kingpinBottom), unit(subtract(kingpinTop, kingpinBottom)));
}

const pitmanArm: KnownLength = {
  id: 'pitman-arm',
  name: 'Pitman arm',
  unit: 'length',
  moves: 'the pitman ball, away from its shaft or toward it',
  read: (layout) => norm(armParts(layout).square),
  withValue(document, value) {
    const layout = resolveLayout(document);
    const { along, square } = armParts(layout);
    const ball = add(layout.steering.box.sectorCentre, add(along, scaled(square, value / norm(square))));
    return placeHardpoint(document, 'steering.box.pitmanBall', ball);
  },
};

const dragLink: KnownLength = {
  id: 'drag-link',
  name: 'Drag link',
  unit: 'length',
  moves: 'the box with its arm, along the drag link',
  read: ({ steering }) => distance(steering.dragLinkBall, steering.box.pitmanBall),
  withValue(document, value) {
    const { dragLinkBall, box } = document.steering;
    const way = unit(subtract(box.pitmanBall, dragLinkBall));
    const shift = scaled(way, value - distance(dragLinkBall, box.pitmanBall));
    return moveHardpoint(document, 'steering.box.sectorCentre', add(box.sectorCentre, shift));
  },
};

const steeringArm: KnownLength = {
  id: 'steering-arm',
  name: 'Steering arm',
  unit: 'length',
  moves: 'its ball, away from the kingpin or toward it',
  read: (layout) =>
    norm(squareToKingpin(layout, layout.steering.dragLinkTo, layout.steering.dragLinkBall).square),
  withValue(document, value) {
    const layout = resolveLayout(document);
    const { dragLinkTo, dragLinkBall } = layout.steering;
    const { along, square } = squareToKingpin(layout, dragLinkTo, dragLinkBall);
    const from = layout.axle[dragLinkTo].kingpinBottom;
    const ball = add(from, add(along, scaled(square, value / norm(square))));
    return placeHardpoint(document, 'steering.dragLinkBall', ball);
  },
};

const tieRod: KnownLength = {
  id: 'tie-rod',
  name: 'Tie rod',
  unit: 'length',
  moves: 'both of its balls, by half each',
  read: ({ axle }) => distance(axle.left.tieRodBall, axle.right.tieRodBall),
  withValue(document, value) {
    const { left, right } = resolveLayout(document).axle;
    const way = unit(subtract(left.tieRodBall, right.tieRodBall));
    const half = (value - distance(left.tieRodBall, right.tieRodBall)) / 2;
    const moved = placeHardpoint(document, 'axle.left.tieRodBall', add(left.tieRodBall, scaled(way, half)));
    if (isMirrored(document, 'axle')) return moved;
    return placeHardpoint(moved, 'axle.right.tieRodBall', add(right.tieRodBall, scaled(way, -half)));
  },
};

/** A lean of a side's kingpin about its middle, seen along an axis; `sign` as the contract has caster and inclination. */
function lean(id: string, name: string, side: Side, axis: 0 | 1, sign: 1 | -1): KnownLength {
  return {
    id,
    name,
    unit: 'angle',
    moves: 'both ends of the kingpin, about its middle',
    read({ axle }) {
      const u = subtract(axle[side].kingpinTop, axle[side].kingpinBottom);
      return toDegrees(Math.atan2(sign * u[axis], u[2]));
    },
    withValue(document, value) {
      const { kingpinTop: top, kingpinBottom: bottom } = resolveLayout(document).axle[side];
      const middle = (top[axis] + bottom[axis]) / 2;
      const reach = (sign * (top[2] - bottom[2]) * Math.tan(toRadians(value))) / 2;
      const at = (point: Point, to: number) =>
        point.map((each, index) => (index === axis ? to : each)) as unknown as Point;
      const leant = placeHardpoint(document, `axle.${side}.kingpinTop`, at(top, middle + reach));
      return placeHardpoint(leant, `axle.${side}.kingpinBottom`, at(bottom, middle - reach));
    },
  };
}

/** The known lengths of a document's car; of angles, each side's where the sides differ. */
export function knownLengths(document: LayoutDocument): KnownLength[] {
  const sides: readonly Side[] = isMirrored(document, 'axle') ? ['left'] : ['left', 'right'];
  const named = (name: string, side: Side) => (sides.length === 1 ? name : `${name}, ${side}`);
  return [
    dragLink,
    pitmanArm,
    steeringArm,
    tieRod,
    ...sides.map((side) => lean(`caster-${side}`, named('Caster', side), side, 0, -1)),
    ...sides.map((side) =>
      lean(`inclination-${side}`, named('Kingpin inclination', side), side, 1, side === 'left' ? -1 : 1),
    ),
  ];
}

/**
 * The document with the pitman ball moved and its arm as it is: the box comes along. The arm is held while its length is
 * known; where the arm itself is being chosen, the ball alone is moved.
 */
export function withArmHeld(document: LayoutDocument, to: Point): LayoutDocument {
  const { pitmanBall, sectorCentre } = document.steering.box;
  return moveHardpoint(document, 'steering.box.sectorCentre', add(sectorCentre, subtract(to, pitmanBall)));
}
