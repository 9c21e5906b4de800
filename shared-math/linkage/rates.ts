import type { Point } from '../geometry/points.ts';
import { cross, dot, subtract, unit } from '../geometry/vectors.ts';
import type { Side } from '../layout/index.ts';
import type { FrontEnd } from './front-end.ts';
import { carryPoint, type FrontEndState } from './solve-front-end.ts';

/** How fast the wheels steer with the handwheel, in one pose: rad per rad. */
export interface SteerRates {
  readonly left: number;
  readonly right: number;
  readonly mean: number;
}

const scratch = new Float64Array(3);

function carried(
  frontEnd: FrontEnd,
  state: FrontEndState,
  carrier: Parameters<typeof carryPoint>[2],
  at: Point,
): Point {
  carryPoint(frontEnd, state, carrier, at, scratch);
  return [scratch[0] as number, scratch[1] as number, scratch[2] as number];
}

/** The kingpin's upward direction of a side in the pose. */
export function kingpinDirection(frontEnd: FrontEnd, state: FrontEndState, side: Side): Point {
  const { kingpinTop, kingpinBottom } = frontEnd.layout.axle[side];
  return unit(
    subtract(
      carried(frontEnd, state, `axle-${side}`, kingpinTop),
      carried(frontEnd, state, `axle-${side}`, kingpinBottom),
    ),
  );
}

/** d steer / d turn of a spindle: steer = atan2(-a_x, a_y) of the spin axis a, whose rate is u × a. */
function steerPerTurn(steer: number, camberTilt: number, upward: Point): number {
  // The spin axis from its two angles: it points left, forward parts by steer, up by its tilt.
  const a: Point = [
    -Math.sin(steer) * Math.cos(camberTilt),
    Math.cos(steer) * Math.cos(camberTilt),
    Math.sin(camberTilt),
  ];
  const rate = cross(upward, a);
  return (a[0] * rate[1] - a[1] * rate[0]) / (a[0] * a[0] + a[1] * a[1]);
}

/**
 * Rates of steer with the handwheel in a solved pose.
 * A link keeps its length while its ends move across it alike: with l the link from p to q, l·q̇ = l·ṗ. The pitman ball
 * has ṗ = n × (p - c) for each rad of sector, a spindle's ball q̇ = u × (q - k) for each rad of turn; so the driven
 * turn is (l·ṗ)/(l·q̇) for each rad of sector, the tie rod hands it on in the same way, and the wheel's heading follows.
 * Frame:    vehicle. Units: rad of steer for each rad of handwheel.
 * Outcomes: rates; infinite at a dead centre, where the link no longer turns its arm.
 * Source:   own derivation, as above.
 * Checked:  tests/unit/turn.test.ts (against differences of the sweep; integrates back to the wheel angles).
 */
export function steerRates(frontEnd: FrontEnd, state: FrontEndState): SteerRates {
  const { layout, driven } = frontEnd;
  const follower: Side = driven === 'left' ? 'right' : 'left';
  const { box, dragLinkBall } = layout.steering;
  const at = (side: Side, point: Point) => carried(frontEnd, state, `spindle-${side}`, point);
  const bottom = (side: Side) => carried(frontEnd, state, `axle-${side}`, layout.axle[side].kingpinBottom);
  const up = {
    left: kingpinDirection(frontEnd, state, 'left'),
    right: kingpinDirection(frontEnd, state, 'right'),
  };

  const p = carried(frontEnd, state, 'pitman', box.pitmanBall);
  const pRate = cross(unit(box.sectorAxis), subtract(p, box.sectorCentre));
  const q = at(driven, dragLinkBall);
  const dragLink = subtract(q, p);
  const qRate = cross(up[driven], subtract(q, bottom(driven)));
  const drivenTurn = dot(dragLink, pRate) / dot(dragLink, qRate);

  const m = at(driven, layout.axle[driven].tieRodBall);
  const n = at(follower, layout.axle[follower].tieRodBall);
  const tieRod = subtract(n, m);
  const mRate = cross(up[driven], subtract(m, bottom(driven)));
  const nRate = cross(up[follower], subtract(n, bottom(follower)));
  const followerTurn = (drivenTurn * dot(tieRod, mRate)) / dot(tieRod, nRate);

  const turns = { [driven]: drivenTurn, [follower]: followerTurn } as Record<Side, number>;
  const rate = (side: Side) => {
    const wheel = state[side];
    const tilt = side === 'left' ? -wheel.camber : wheel.camber;
    return (turns[side] * steerPerTurn(wheel.steer, tilt, up[side])) / frontEnd.ratio;
  };
  const [left, right] = [rate('left'), rate('right')];
  return { left, right, mean: (left + right) / 2 };
}
