import type { Layout, Side } from '../../../shared-math/layout/index.ts';
import type { FrontEnd, FrontEndState, PoseStatus } from '../../../shared-math/linkage/index.ts';
import { evenly, visitGrid } from '../../../shared-math/sweep/index.ts';
import { type Radians, toRadians } from '../../../shared-math/units/index.ts';
import { type Column, dataOf, headOf, lineOf } from './column.ts';

const USUAL_POSES = 31;

/** The poses over a layout's whole travel, mm. */
export function usualHeaves({ travel }: Layout): number[] {
  return [...evenly(-travel.rebound, travel.bump, USUAL_POSES)];
}

/** A pose of the sweep: what was asked, mm and degrees, and the solved state. */
interface SweepPose {
  readonly at: { readonly heave: number; readonly roll: number; readonly handwheel: number };
  readonly status: PoseStatus;
  readonly state: FrontEndState;
  readonly bump: Radians;
}

const wheel = (side: Side): readonly Column<SweepPose>[] => [
  { name: `${side}.steer`, unit: 'deg', of: ({ state }) => state[side].steer },
  { name: `${side}.toeIn`, unit: 'deg', of: ({ state }) => state[side].toeIn },
  { name: `${side}.camber`, unit: 'deg', of: ({ state }) => state[side].camber },
  { name: `${side}.caster`, unit: 'deg', of: ({ state }) => state[side].caster },
  { name: `${side}.kingpinInclination`, unit: 'deg', of: ({ state }) => state[side].kingpinInclination },
  { name: `${side}.wheelRise`, unit: 'mm', of: ({ state }) => state[side].wheelRise },
];

/** What a pose that failed has too. Roll and handwheel are those typed, in degrees. */
const ASKED: readonly Column<SweepPose>[] = [
  { name: 'heave', unit: 'mm', of: ({ at }) => at.heave },
  { name: 'roll', unit: 'given', said: 'degrees', of: ({ at }) => at.roll },
  { name: 'handwheel', unit: 'given', said: 'degrees', of: ({ at }) => at.handwheel },
  { name: 'status', unit: 'word', of: ({ status }) => status },
];

const SOLVED: readonly Column<SweepPose>[] = [
  ...wheel('left'),
  ...wheel('right'),
  { name: 'meanSteer', unit: 'deg', of: ({ state }) => state.meanSteer },
  { name: 'bumpSteer', unit: 'deg', of: ({ bump }) => bump },
  { name: 'totalToeIn', unit: 'deg', of: ({ state }) => state.totalToeIn },
  { name: 'axle.x', unit: 'mm', of: ({ state }) => state.axle.x },
  { name: 'axle.y', unit: 'mm', of: ({ state }) => state.axle.y },
  { name: 'axle.pitch', unit: 'deg', of: ({ state }) => state.axle.pitch },
  { name: 'axle.yaw', unit: 'deg', of: ({ state }) => state.axle.yaw },
  { name: 'axle.twist', unit: 'deg', of: ({ state }) => state.axle.twist },
  { name: 'bind', unit: 'mm', of: ({ state }) => state.bind },
];

/** The sweep's columns, one line each: the table, the command's CSV and its JSON read them here. */
export const SWEEP_COLUMNS: readonly Column<SweepPose>[] = [...ASKED, ...SOLVED];

/** A pose as data. A pose that failed holds what was asked and its status. */
export function sweepRow(pose: SweepPose): Record<string, unknown> {
  return dataOf(pose.status === 'ok' ? SWEEP_COLUMNS : ASKED, pose);
}

/** A pose as CSV, a failed one's columns left empty. */
export function sweepLine(pose: SweepPose): string {
  if (pose.status === 'ok') return lineOf(SWEEP_COLUMNS, pose);
  return `${lineOf(ASKED, pose)}${','.repeat(SWEEP_COLUMNS.length - ASKED.length)}`;
}

/** The whole travel at ride height's roll and handwheel. */
export function* travelTable(frontEnd: FrontEnd): Iterable<string> {
  yield `${headOf(SWEEP_COLUMNS)}\n`;
  for (const heave of usualHeaves(frontEnd.layout)) {
    let line = '';
    visitGrid(frontEnd, [heave], [toRadians(0)], [toRadians(0)], (state, status, bump) => {
      line = sweepLine({ at: { heave: heave + 0, roll: 0, handwheel: 0 }, status, state, bump });
    });
    yield `${line}\n`;
  }
}
