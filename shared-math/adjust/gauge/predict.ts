import { type Layout, type LayoutDocument, resolveLayout, type Side } from '../../layout/index.ts';
import {
  createState,
  type FrontEnd,
  type FrontEndState,
  poseAxle,
  prepareFrontEnd,
  steerAxle,
  steerRates,
} from '../../linkage/index.ts';
import { type Degrees, toDegrees, toRadians } from '../../units/index.ts';
import {
  type GaugeReadings,
  type PlateReading,
  type SteerReading,
  steerReading,
  USUAL_GAUGE_DOUBT,
} from './readings.ts';

/** A reading on the plates: the wheel on the inside of the turn sets the turn, the other's angle is what is read. */
export interface TurnReading {
  readonly id: string;
  /** The wheel on the outside of the turn. */
  readonly side: Side;
  /** Degrees that each wheel turned from straight ahead, positive to the left. */
  readonly inner: Degrees;
  readonly outer: Degrees;
  /** One standard deviation of each. */
  readonly doubt: Degrees;
}

export interface GaugeTask {
  readonly stations: readonly SteerReading[];
  readonly turns: readonly TurnReading[];
}

function turnReading({ id, turn, left, right }: PlateReading, doubt: Degrees): TurnReading {
  const sign = turn === 'left' ? 1 : -1;
  return turn === 'left'
    ? { id, side: 'right', inner: sign * left, outer: sign * right, doubt }
    : { id, side: 'left', inner: sign * right, outer: sign * left, doubt };
}

/** The readings as steer: what the mathematics compares with the layout. */
export function gaugeTask(readings: GaugeReadings): GaugeTask {
  const plateDoubt = readings.plateDoubt ?? USUAL_GAUGE_DOUBT.plate;
  return {
    stations: readings.stations.map((station) => steerReading(readings.gauge, station)),
    turns: readings.plates.map((plate) => turnReading(plate, plateDoubt)),
  };
}

/** The document with both sides spelled out and nothing planned: on a finished car each point stands by itself. */
export function eachPointByItself(document: LayoutDocument): LayoutDocument {
  const { origins: _, ...layout } = resolveLayout(document);
  return layout as LayoutDocument;
}

/** Rad of sector between two looks for the handwheel angle that turns a wheel as far as it was turned. */
const SECTOR_STEP = toRadians(2);
const CLOSE = 1e-10;

/**
 * Turns the posed axle's handwheel until a wheel has turned by `angle` (rad) from where it stands at handwheel 0:
 * walked outward until the angle is passed, then halved.
 * Returns false if the linkage does not turn it so far.
 */
function turnUntil(
  frontEnd: FrontEnd,
  side: Side,
  angle: number,
  straight: number,
  state: FrontEndState,
): boolean {
  const { sectorTravel } = frontEnd.layout.steering.box;
  const towards = Math.sign(angle);
  // A box that is mounted the wrong way round turns the wheels the other way.
  const way = Math.sign(steerRates(frontEnd, state).mean);
  const step = towards * way * Math.abs(frontEnd.ratio) * SECTOR_STEP;
  const most = Math.ceil(toRadians(sectorTravel) / SECTOR_STEP);
  const past = (handwheel: number): boolean | undefined =>
    steerAxle(frontEnd, handwheel, state) === 'ok'
      ? towards * (state[side].steer - straight - angle) >= 0
      : undefined;
  let inside = 0;
  let outside = Number.NaN;
  for (let i = 1; i <= most; i += 1) {
    const found = past(i * step);
    if (found === undefined) break;
    if (found) {
      outside = i * step;
      break;
    }
    inside = i * step;
  }
  if (Number.isNaN(outside)) return false;
  while (Math.abs(outside - inside) > CLOSE) {
    const middle = (inside + outside) / 2;
    if (past(middle)) outside = middle;
    else inside = middle;
  }
  return steerAxle(frontEnd, outside, state) === 'ok';
}

/**
 * Writes what a layout makes of the readings: each station's change of steer since ride height, then of each turn the
 * outer wheel's angle where the inner one stands as it was read; degrees, in the task's order.
 * Frame:   vehicle, ISO 8855; steer positive to the left.
 * @param gains  takes, of each turn, how far the outer wheel goes on for each degree of the inner one
 * Returns the name of the first reading that the layout cannot reach, or undefined if it reaches all.
 */
export function predictReadings(
  layout: Layout,
  task: GaugeTask,
  out: Float64Array,
  gains?: Float64Array,
): string | undefined {
  const frontEnd = prepareFrontEnd(layout);
  const state = createState();
  const straightAt = (heave: number): { left: number; right: number } | undefined => {
    if (!poseAxle(frontEnd, heave, 0, state) || steerAxle(frontEnd, 0, state) !== 'ok') return undefined;
    return { left: state.left.steer, right: state.right.steer };
  };
  const ride = straightAt(0);
  const first = task.stations[0] ?? task.turns[0];
  if (!ride) return first?.id;
  let row = 0;
  for (const { id, side, heave } of task.stations) {
    const at = straightAt(heave);
    if (!at) return id;
    out[row] = toDegrees(at[side] - ride[side]);
    row += 1;
  }
  if (task.turns.length === 0) return undefined;
  for (const [i, { id, side, inner }] of task.turns.entries()) {
    const other = side === 'left' ? 'right' : 'left';
    straightAt(0);
    if (!turnUntil(frontEnd, other, toRadians(inner), ride[other], state)) return id;
    out[row] = toDegrees(state[side].steer - ride[side]);
    row += 1;
    if (gains) {
      const rates = steerRates(frontEnd, state);
      gains[i] = rates[side] / rates[other];
    }
  }
  return undefined;
}
