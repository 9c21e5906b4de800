import type { Layout } from '../../../shared-math/layout/index.ts';
import { type FrontEnd, type FrontEndState, steerRates } from '../../../shared-math/linkage/index.ts';
import {
  ackermannCar,
  ackermannOf,
  type ReturnToStraight,
  returnInPose,
  type TurnSweep,
} from '../../../shared-math/sweep/index.ts';
import { toDegrees } from '../../../shared-math/units/index.ts';
import type { CurveColumn } from '../../curves/curve-column.ts';
import { rungs } from '../../curves/ranges.ts';

/** The whole turn in the units it is shown in: degrees, ratio to one, per cent. From the right lock to the left. */
export interface TurnColumns {
  readonly leftSteer: CurveColumn;
  readonly rightSteer: CurveColumn;
  readonly meanSteer: CurveColumn;
  /** Where the outer wheel should be for the inner one. */
  readonly idealOuter: CurveColumn;
  /** Handwheel to wheels, without its sign. */
  readonly ratio: CurveColumn;
  readonly error: CurveColumn;
  readonly percent: CurveColumn;
  /** Return to straight: N·m at the handwheel; of a side force, of the weight, of both. */
  readonly bySideForce: CurveColumn;
  readonly byWeight: CurveColumn;
  readonly both: CurveColumn;
}

/** Over degrees of handwheel, + to the left. */
export interface TurnData {
  readonly at: readonly number[];
  readonly columns: TurnColumns;
}

/** The same at one pose; undefined if a figure makes no sense. */
export interface TurnNow {
  readonly leftSteer: number;
  readonly rightSteer: number;
  readonly meanSteer: number;
  readonly idealOuter: number;
  readonly ratio: number | undefined;
  readonly error: number;
  readonly percent: number | undefined;
  readonly bySideForce: number | undefined;
  readonly byWeight: number | undefined;
  readonly both: number | undefined;
}

/** Near an arm's dead centre the handwheel turns and the wheels hardly do: no ratio worth a figure. */
const RATIO_MOST = 200;

function ratioShown(ratio: number): number | undefined {
  const size = Math.abs(ratio);
  return size <= RATIO_MOST ? size : undefined;
}

/** Moments from N·mm; undefined where there are none. */
interface Back {
  readonly bySideForce: number;
  readonly byWeight: number;
}

function figures(
  layout: Layout,
  left: number,
  right: number,
  ratio: number,
  back: Back | undefined,
): TurnNow {
  const ackermann = ackermannOf(left, right, ackermannCar(layout));
  return {
    leftSteer: toDegrees(left),
    rightSteer: toDegrees(right),
    meanSteer: toDegrees((left + right) / 2),
    idealOuter: toDegrees(ackermann.idealOuter),
    ratio: ratioShown(ratio),
    error: toDegrees(ackermann.error),
    percent: ackermann.percent,
    bySideForce: back && back.bySideForce / 1000,
    byWeight: back && back.byWeight / 1000,
    both: back && (back.bySideForce + back.byWeight) / 1000,
  };
}

/** A turn's columns; `back`: what brings the wheels back over the same rows. */
export function turnData(layout: Layout, sweep: TurnSweep, back: ReturnToStraight | undefined): TurnData {
  const rows = Array.from({ length: sweep.count }, (_, row) =>
    figures(
      layout,
      sweep.leftSteer[row] as number,
      sweep.rightSteer[row] as number,
      sweep.ratio[row] as number,
      back && {
        bySideForce: back.bySideForce[row] as number,
        byWeight: back.byWeight[row] as number,
      },
    ),
  );
  const column = (name: keyof TurnNow): CurveColumn => rows.map((row) => row[name] ?? null);
  return {
    at: Array.from(sweep.handwheel, toDegrees),
    columns: {
      leftSteer: column('leftSteer'),
      rightSteer: column('rightSteer'),
      meanSteer: column('meanSteer'),
      idealOuter: column('idealOuter'),
      ratio: column('ratio'),
      error: column('error'),
      percent: column('percent'),
      bySideForce: column('bySideForce'),
      byWeight: column('byWeight'),
      both: column('both'),
    },
  };
}

/** The figures of a solved pose, of a turn with that ratio straight ahead; undefined if it is not `ok`. */
export function turnNow(
  frontEnd: FrontEnd,
  state: FrontEndState,
  straightRatio: number,
): TurnNow | undefined {
  if (state.status !== 'ok') return undefined;
  const ratio = 1 / steerRates(frontEnd, state).mean;
  const back = returnInPose(frontEnd, state, straightRatio);
  return figures(frontEnd.layout, state.left.steer, state.right.steer, ratio, back);
}

/** Wheels through the whole turn. */
export const WHEEL_LADDER = rungs([10, 5], [20, 10], [30, 10], [40, 20], [55, 20], [90, 45], [180, 90]);

/** Handwheel to wheels, to one. */
export const RATIO_LADDER = rungs([2, 1], [4, 2], [8, 4], [12, 5], [25, 10], [60, 25], [150, 50]);

/** N·m at the handwheel, about 0. */
export const RETURN_LADDER = rungs([1, 0.5], [2, 1], [4, 2], [8, 4], [15, 5], [30, 10], [80, 40], [200, 100]);

/** Per cent of the Ackermann ideal, about 100. */
export const PERCENT_LADDER = rungs([25, 10], [60, 25], [120, 50], [250, 100], [600, 250]);
