import { brakingCar, prepareBraked } from '../../shared-math/brake/index.ts';
import {
  analyse,
  findings,
  LIMITS,
  type ShopLimits,
  withClearances,
} from '../../shared-math/findings/index.ts';
import { linkForces } from '../../shared-math/forces/index.ts';
import { distance } from '../../shared-math/geometry/points.ts';
import { gridExtremes } from '../../shared-math/joints/index.ts';
import { type Layout, type LayoutDocument, resolveLayout } from '../../shared-math/layout/index.ts';
import { createState, prepareFrontEnd, solveFrontEnd } from '../../shared-math/linkage/index.ts';
import { lockAngles, sweepTravel, sweepTurn } from '../../shared-math/sweep/index.ts';
import { DEGREE } from './close.ts';
import { shift } from './edits.ts';

// How good or bad a layout is, by figures of the solved car and not by what a finding says of it. rad and mm.

export const BALL = 'steering.box.pitmanBall';

export const frontEndOf = (document: LayoutDocument) => prepareFrontEnd(resolveLayout(document));
export function solved(document: LayoutDocument, heave: number, roll: number, handwheel = 0) {
  const state = createState();
  const status = solveFrontEnd(frontEndOf(document), heave, roll, handwheel, state);
  return { ...state, status };
}
export const sweep = (document: LayoutDocument, along: 'heave' | 'roll') => {
  const { bump, rebound, roll } = document.travel;
  const [from, to] = along === 'heave' ? [-rebound, bump] : [-roll * DEGREE, roll * DEGREE];
  return sweepTravel(frontEndOf(document), along, from, to, 31, 0);
};
export const largest = (values: ArrayLike<number>) => Math.max(...Array.from(values, Math.abs));
/** How far a value is out of a range. */
export const outside = (value: number, least: number, most: number) =>
  Math.max(least - value, value - most, 0);

// How bad it is: less is better.
export const bumpSteer = (document: LayoutDocument) => largest(sweep(document, 'heave').bumpSteer);
export const bumpSteerAtBestHeight = (document: LayoutDocument) =>
  Math.min(...Array.from({ length: 33 }, (_, i) => bumpSteer(shift(BALL, [0, 0, 10 * (i - 16)])(document))));
export const bind = (document: LayoutDocument) =>
  Math.max(largest(sweep(document, 'heave').bind), largest(sweep(document, 'roll').bind));
export const slope = (document: LayoutDocument) =>
  Math.abs(solved(document, 0.5, 0).meanSteer - solved(document, -0.5, 0).meanSteer);
/** Mean steer into a left turn as the frame leans out of it: right side down on the frame, so left wheel down on it. */
export const rollOversteer = (document: LayoutDocument) =>
  solved(document, 0, -1 * DEGREE).meanSteer - solved(document, 0, 0).meanSteer;
export const toeOut = ({ axle: { left, right }, car }: LayoutDocument) => {
  const toe = left.toeIn + (right === 'mirror' ? left : right).toeIn;
  const total = 2 * car.tyreRadius * Math.sin((toe / 2) * DEGREE) * 2;
  return outside(total, LIMITS.toeLeast.usual, LIMITS.toeMost.usual);
};
export const casterOut = (document: LayoutDocument) => {
  const { left, right } = solved(document, 0, 0);
  return Math.max(
    ...[left, right].map(({ caster }) =>
      outside(caster / DEGREE, LIMITS.casterLeast.usual, LIMITS.casterMost.usual),
    ),
  );
};
export const casterChange = (document: LayoutDocument) => {
  const drawn = solved(document, 0, 0).left.caster;
  return largest(sweep(document, 'heave').leftCaster.map((caster) => caster - drawn));
};
/** What a hard stop leaves too little of: rad below 1° of caster; and how far it steers by itself, rad. */
const hardStop = (document: LayoutDocument) => {
  const frontEnd = frontEndOf(document);
  const car = brakingCar(frontEnd.layout);
  if (!car.ok) throw new Error(car.failure.reason);
  const state = createState();
  const at = (grip: number) => {
    solveFrontEnd(prepareBraked(frontEnd, car.value, grip), 0, 0, 0, state);
    return { caster: Math.min(state.left.caster, state.right.caster), steer: state.meanSteer };
  };
  const [off, hard] = [at(0), at(0.7)];
  return { caster: hard.caster, steer: hard.steer - off.steer };
};
export const casterGone = (document: LayoutDocument) => DEGREE - hardStop(document).caster;
export const brakeSteer = (document: LayoutDocument) => Math.abs(hardStop(document).steer);
export const twist = (document: LayoutDocument) =>
  Math.abs(solved(document, 0, document.travel.roll * DEGREE).axle.twist);
export const turnOf = (document: LayoutDocument) => sweepTurn(frontEndOf(document), 0, 0);
export const locks = (document: LayoutDocument) => {
  const turn = turnOf(document);
  return [turn.left, turn.right].map((lock) => lockAngles(resolveLayout(document), lock));
};
export const lockOut = (document: LayoutDocument) =>
  Math.max(
    ...locks(document).map(({ inner }) =>
      outside(inner / DEGREE, LIMITS.lockLeast.usual, LIMITS.lockMost.usual),
    ),
  );
export const locksApart = (document: LayoutDocument) => {
  const [left, right] = locks(document);
  return Math.abs(left!.inner - right!.inner);
};
export const reversedAckermann = (document: LayoutDocument) =>
  Math.max(...locks(document).map(({ inner, outer }) => outer - inner));
export const transmission = (document: LayoutDocument, heaves = 5, turns = 21) => {
  const turn = turnOf(document);
  const { pitmanTransmission, steeringArmTransmission } = gridExtremes(
    frontEndOf(document),
    { right: turn.right.handwheel, left: turn.left.handwheel },
    heaves,
    turns,
  );
  return -Math.min(pitmanTransmission.angle, steeringArmTransmission.angle);
};
export const tilt = (document: LayoutDocument, right = -3, left = 3, heaves = 5, turns = 5) => {
  const { tilts } = gridExtremes(frontEndOf(document), { right, left }, heaves, turns);
  return Math.max(...tilts.map((entry) => entry.tilt));
};
export const ratioAt = (document: LayoutDocument) => {
  const step = 0.01;
  return (2 * step) / (solved(document, 0, 0, step).meanSteer - solved(document, 0, 0, -step).meanSteer);
};
export const ratioOut = (document: LayoutDocument) =>
  outside(Math.abs(ratioAt(document)), LIMITS.ratioLeast.usual, LIMITS.ratioMost.usual);
export const turnsOut = (document: LayoutDocument) => {
  const turn = turnOf(document);
  const turns = (turn.left.handwheel - turn.right.handwheel) / (2 * Math.PI);
  return outside(turns, LIMITS.turnsLeast.usual, LIMITS.turnsMost.usual);
};
export const oneWheel = (document: LayoutDocument) => {
  const found = analyse(resolveLayout(document)).oneWheel;
  return found.status === 'ok' ? found.worst : Number.POSITIVE_INFINITY;
};
export const rimForce = (document: LayoutDocument) =>
  analyse(resolveLayout(document)).effort?.worst.rimForce ?? Number.POSITIVE_INFINITY;
export const steersWrong = (document: LayoutDocument) => -ratioAt(document);
export const nearest = (document: LayoutDocument) =>
  -Math.min(
    ...(withClearances(analyse(resolveLayout(document))).clearances?.pairs.map((pair) => pair.distance) ??
      []),
  );
export const judged = (document: LayoutDocument, shop: ShopLimits = {}) =>
  findings(analyse(resolveLayout(document)), { unit: 'in', fraction: 16 }, shop);
export const countOf = (rule: string) => (document: LayoutDocument) =>
  judged(document).filter((finding) => finding.rule === rule && finding.severity !== 'info').length;

/** How often a tie rod of its own section and steel stands the most that any case asks of it, by Euler's and Johnson's formulas. */
export function tieRodMargin(layout: Layout): number {
  const forces = linkForces(prepareFrontEnd(layout));
  if (!forces.ok) throw new Error(forces.failure.reason);
  const { wall = Number.NaN, material, offset = 0 } = layout.links?.tieRod ?? {};
  const outside = layout.diameters?.tieRod ?? Number.NaN;
  const inside = outside - 2 * wall;
  const area = (Math.PI / 4) * (outside ** 2 - inside ** 2);
  const inertia = (Math.PI / 64) * (outside ** 4 - inside ** 4);
  const strength = material === 'drawn-steel' ? 414 : 250;
  const length = distance(layout.axle.left.tieRodBall, layout.axle.right.tieRodBall);
  const euler = (Math.PI ** 2 * 200_000 * inertia) / length ** 2;
  const squash = area * strength;
  const straight = euler <= squash / 2 ? euler : squash * (1 - squash / (4 * euler));
  const eta = (offset * outside * area) / (2 * inertia);
  const b = squash + (1 + eta) * euler;
  const bent = (b - Math.sqrt(b * b - 4 * squash * euler)) / 2;
  const push = offset > 0 ? Math.min(straight, bent) : straight;
  const pull = strength / (1 / area + (offset * outside) / 2 / inertia);
  const reaches = forces.value.cases.map(
    ({ figures }) => figures.find(({ figure }) => figure.id === 'tieRod')?.heavy,
  );
  return Math.min(
    ...reaches.map((reach) => Math.min(push / -(reach?.least.value ?? 0), pull / (reach?.most.value ?? 0))),
  );
}
