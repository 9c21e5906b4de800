import { type Analysis, analyse, type Finding, findings, withClearances } from '../findings/index.ts';
import { type LayoutDocument, readLayout, refusalLine, resolveLayout } from '../layout/index.ts';
import { routeOf } from '../shaft/index.ts';
import { lockAngles, turningCircle, turnsLockToLock } from '../sweep/index.ts';
import { toleranceBand } from '../tune/index.ts';
import { toDegrees } from '../units/index.ts';
import { type Car, limitOf } from './car.ts';
import { isLaid } from './laid-parts.ts';
import type { ProposalFigures } from './proposal.ts';

/** A document looked at as any other is: the whole of its findings, and its figures. */
export interface Judged {
  readonly findings: readonly Finding[];
  readonly stops: readonly Finding[];
  /** Undefined where the layout does not turn or reach. */
  readonly figures: ProposalFigures | undefined;
}

/** Cars built by lot, and heaves, for the band: a comparison of proposals, coarser than the band on the board. */
const BAND = { cars: 60, heaves: 9, tolerance: 3.175, seed: 1 } as const;

/** The verdict on a document by itself. */
export function judge(car: Car, document: LayoutDocument): Judged {
  const read = readLayout(document);
  if (!read.ok) throw new Error(`a proposal that is no layout: ${refusalLine(read.failure)}`);
  const analysis = withClearances(analyse(resolveLayout(read.value)));
  const found = findings(analysis, car.style, car.limits);
  return {
    findings: found,
    stops: found.filter(({ severity }) => severity === 'stop'),
    figures: figuresOf(car, analysis, read.value),
  };
}

function figuresOf(car: Car, analysis: Analysis, document: LayoutDocument): ProposalFigures | undefined {
  const { turn, effort, layout, heaveSummary, rollSummary, oneWheel, braking, extremes, clearances } =
    analysis;
  if (turn.status !== 'ok' || turn.count < 2 || !effort || !extremes) return undefined;
  const locks = [turn.left, turn.right];
  const circles = locks.map((lock) => turningCircle(layout, lock)?.betweenKerbs ?? Number.POSITIVE_INFINITY);
  const limits = { moving: limitOf(car, 'clearanceMoving'), tyre: limitOf(car, 'clearanceTyre') };
  const steered = isLaid(car.held);
  const [nearest] = (clearances?.pairs ?? [])
    .filter(({ a, b }) => steered(a) || steered(b))
    .sort((a, b) => a.distance - limits[a.limit] - (b.distance - limits[b.limit]));
  const band = toleranceBand(document, BAND);
  return {
    bumpSteer: toDegrees(heaveSummary.worstBumpSteer),
    oneWheel: oneWheel.status === 'ok' ? toDegrees(oneWheel.worst) : undefined,
    rollSteer: rollSummary.slopeAtRide,
    brakeSteer:
      braking && braking.car.by !== 'links' ? toDegrees(Math.abs(braking.hard.brakeSteer)) : undefined,
    overallRatio: Math.abs(turn.straightRatio),
    turns: turnsLockToLock(turn),
    innerLock: toDegrees(Math.min(...locks.map((lock) => lockAngles(layout, lock).inner))),
    circle: Math.max(...circles),
    rimForce: effort.centre.rimForce,
    rimForceMost: effort.worst.rimForce,
    pitmanTransmission: toDegrees(extremes.pitmanTransmission.angle),
    armTransmission: toDegrees(extremes.steeringArmTransmission.angle),
    ballTilt: toDegrees(Math.max(0, ...extremes.tilts.map(({ tilt }) => tilt))),
    nearest: nearest && {
      words: `${nearest.nameOfA} to ${nearest.nameOfB}`,
      distance: nearest.distance,
      limit: limits[nearest.limit],
    },
    shaftJoints: layout.shaft ? routeOf(layout.shaft).joints.map(({ angle }) => toDegrees(angle)) : [],
    supports: layout.shaft?.supports.length ?? 0,
    band: band.ok ? toDegrees(band.value.worst) : undefined,
  };
}
