import { createState, type FrontEnd, type FrontEndState, poseAxle, steerAxle } from '../linkage/index.ts';
import type { Radians } from '../units/index.ts';
import { evenly, rideSteer } from './grid.ts';

export const ROW_OK = 0;
export const ROW_OUT_OF_REACH = 1;
export const ROW_NO_POSE = 2;

/** A sweep along heave or roll at one handwheel angle, as columns. Rows whose status is not ROW_OK hold zeros. */
export interface TravelSweep {
  readonly along: 'heave' | 'roll';
  readonly count: number;
  /** mm for heave, rad for roll. */
  readonly at: Float64Array;
  readonly status: Uint8Array;
  /** rad, as all columns that follow but the last. */
  readonly leftSteer: Float64Array;
  readonly rightSteer: Float64Array;
  readonly meanSteer: Float64Array;
  readonly bumpSteer: Float64Array;
  readonly totalToeIn: Float64Array;
  readonly leftCaster: Float64Array;
  readonly rightCaster: Float64Array;
  /** mm. */
  readonly bind: Float64Array;
}

function writeRow(sweep: TravelSweep, row: number, state: FrontEndState, rideMean: number): void {
  sweep.leftSteer[row] = state.left.steer;
  sweep.rightSteer[row] = state.right.steer;
  sweep.meanSteer[row] = state.meanSteer;
  sweep.bumpSteer[row] = state.meanSteer - rideMean;
  sweep.totalToeIn[row] = state.totalToeIn;
  sweep.leftCaster[row] = state.left.caster;
  sweep.rightCaster[row] = state.right.caster;
  sweep.bind[row] = state.bind;
}

/**
 * Sweeps heave (mm) at no roll, or roll (rad) at no heave, at a held handwheel (rad). Solved in order, so that each pose
 * starts from its neighbour, as `solveAxle` walks to the first from ride height.
 * Outcomes: a status for each row; where ride height itself is out of reach, so is every row.
 */
export function sweepTravel(
  frontEnd: FrontEnd,
  along: 'heave' | 'roll',
  from: number,
  to: number,
  count: number,
  handwheel: Radians,
): TravelSweep {
  const at = evenly(from, to, count);
  const rows = at.length;
  const sweep: TravelSweep = {
    along,
    count: rows,
    at,
    status: new Uint8Array(rows),
    leftSteer: new Float64Array(rows),
    rightSteer: new Float64Array(rows),
    meanSteer: new Float64Array(rows),
    bumpSteer: new Float64Array(rows),
    totalToeIn: new Float64Array(rows),
    leftCaster: new Float64Array(rows),
    rightCaster: new Float64Array(rows),
    bind: new Float64Array(rows),
  };
  const state = createState();
  const ride = rideSteer(frontEnd, handwheel, state);
  if (ride.status !== 'ok') {
    sweep.status.fill(ride.status === 'no-pose' ? ROW_NO_POSE : ROW_OUT_OF_REACH);
    return sweep;
  }
  for (let row = 0; row < rows; row += 1) {
    const value = at[row] as number;
    const posed = poseAxle(frontEnd, along === 'heave' ? value : 0, along === 'roll' ? value : 0, state);
    const status = posed ? steerAxle(frontEnd, handwheel, state) : 'no-pose';
    sweep.status[row] = status === 'ok' ? ROW_OK : status === 'no-pose' ? ROW_NO_POSE : ROW_OUT_OF_REACH;
    if (status === 'ok') writeRow(sweep, row, state, ride.meanSteer);
  }
  return sweep;
}

/** What a travel sweep comes to. Angles in rad, `worstAt` in mm or rad as the sweep; undefined if no row is ok. */
export interface TravelSummary {
  /** Largest |bump steer|. */
  readonly worstBumpSteer: number;
  readonly worstAt: number;
  /** Bump steer at `worstAt`, signed: above 0 the fronts of the wheels go left. */
  readonly worstSteer: number;
  /** d meanSteer / d travel at ride height, rad per mm or per rad. */
  readonly slopeAtRide: number;
  readonly okCount: number;
}

export function summariseTravel(sweep: TravelSweep): TravelSummary {
  let worstBumpSteer = 0;
  let worstAt = 0;
  let worstSteer = 0;
  let okCount = 0;
  for (let i = 0; i < sweep.count; i += 1) {
    if (sweep.status[i] !== ROW_OK) continue;
    okCount += 1;
    const size = Math.abs(sweep.bumpSteer[i] as number);
    if (size > worstBumpSteer) {
      worstBumpSteer = size;
      worstAt = sweep.at[i] as number;
      worstSteer = sweep.bumpSteer[i] as number;
    }
  }
  return { worstBumpSteer, worstAt, worstSteer, slopeAtRide: slopeAtZero(sweep), okCount };
}

/**
 * Slope of the mean steer at 0 of the sweep's axis, by the parabola through the three reachable rows nearest to it;
 * by the line through two; 0 with fewer.
 */
function slopeAtZero(sweep: TravelSweep): number {
  const rows: number[] = [];
  for (let i = 0; i < sweep.count; i += 1) if (sweep.status[i] === ROW_OK) rows.push(i);
  rows.sort((i, j) => Math.abs(sweep.at[i] as number) - Math.abs(sweep.at[j] as number));
  const x = rows.map((row) => sweep.at[row] as number);
  const y = rows.map((row) => sweep.meanSteer[row] as number);
  const [x0, x1, x2] = x as [number, number, number];
  const [y0, y1, y2] = y as [number, number, number];
  if (rows.length < 2) return 0;
  const first = (y1 - y0) / (x1 - x0);
  if (rows.length < 3) return first;
  const second = ((y2 - y1) / (x2 - x1) - first) / (x2 - x0);
  return first + second * (-x0 - x1);
}

/** Toe of one wheel as a length over the tyre's diameter, mm: 2 · tyreRadius · sin(toe). */
export function toeLength(toe: Radians, tyreRadius: number): number {
  return 2 * tyreRadius * Math.sin(toe);
}
