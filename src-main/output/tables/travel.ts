import type { Layout } from '../../../shared-math/layout/index.ts';
import type { FrontEnd, FrontEndState, PoseStatus, WheelState } from '../../../shared-math/linkage/index.ts';
import { evenly, visitGrid } from '../../../shared-math/sweep/index.ts';
import { toDegrees, toRadians } from '../../../shared-math/units/index.ts';

const USUAL_POSES = 31;

/** The poses over a layout's whole travel, mm. */
export function usualHeaves({ travel }: Layout): number[] {
  return [...evenly(-travel.rebound, travel.bump, USUAL_POSES)];
}

function wheel(state: WheelState) {
  return {
    steer: toDegrees(state.steer),
    toeIn: toDegrees(state.toeIn),
    camber: toDegrees(state.camber),
    caster: toDegrees(state.caster),
    kingpinInclination: toDegrees(state.kingpinInclination),
    wheelRise: state.wheelRise,
  };
}

/** One row of the answer: degrees and mm, full precision. A pose that failed holds its inputs and status only. */
export function sweepRow(
  at: { heave: number; roll: number; handwheel: number },
  status: PoseStatus,
  state: FrontEndState,
  bump: number,
) {
  if (status !== 'ok') return { ...at, status };
  const { axle } = state;
  return {
    ...at,
    status,
    left: wheel(state.left),
    right: wheel(state.right),
    meanSteer: toDegrees(state.meanSteer),
    bumpSteer: toDegrees(bump),
    totalToeIn: toDegrees(state.totalToeIn),
    axle: {
      x: axle.x,
      y: axle.y,
      pitch: toDegrees(axle.pitch),
      yaw: toDegrees(axle.yaw),
      twist: toDegrees(axle.twist),
    },
    bind: state.bind,
  };
}

type Row = ReturnType<typeof sweepRow>;

const WHEEL_COLUMNS = ['steer', 'toeIn', 'camber', 'caster', 'kingpinInclination', 'wheelRise'];
export const SWEEP_COLUMNS = [
  'heave',
  'roll',
  'handwheel',
  'status',
  ...WHEEL_COLUMNS.map((name) => `left.${name}`),
  ...WHEEL_COLUMNS.map((name) => `right.${name}`),
  'meanSteer',
  'bumpSteer',
  'totalToeIn',
  'axle.x',
  'axle.y',
  'axle.pitch',
  'axle.yaw',
  'axle.twist',
  'bind',
];

/** A row as CSV, a failed pose's columns left empty. No value needs quoting. */
export function sweepLine(entry: Row): string {
  return SWEEP_COLUMNS.map((column) => {
    let value: unknown = entry;
    for (const key of column.split('.')) value = (value as Record<string, unknown> | undefined)?.[key];
    return value === undefined ? '' : String(value);
  }).join(',');
}

/** The whole travel at ride height's roll and handwheel. */
export function* travelTable(frontEnd: FrontEnd): Iterable<string> {
  yield `${SWEEP_COLUMNS.join(',')}\n`;
  for (const heave of usualHeaves(frontEnd.layout)) {
    let line = '';
    visitGrid(frontEnd, [heave], [toRadians(0)], [toRadians(0)], (state, status, bump) => {
      line = sweepLine(sweepRow({ heave: heave + 0, roll: 0, handwheel: 0 }, status, state, bump));
    });
    yield `${line}\n`;
  }
}
