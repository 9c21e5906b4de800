import { project } from '../../../shared-math/drawing/index.ts';
import type { Road, RoadProfile } from '../../../shared-math/ride/index.ts';
import { MM_PER_INCH, toRadians } from '../../../shared-math/units/index.ts';
import type { BoardView } from '../../board/board-view.svelte.ts';
import { type Contribution, piece } from '../../board/contributor.ts';
import type { OtherCar } from '../../board/other-cars.ts';
import type { OverlayLine } from '../../board/overlay.ts';
import type { RoadPicture } from '../../board/road-ground.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import { COMPARE_DASHES } from '../../look/compare.ts';
import type { Comparison } from '../../panels/compare/comparison.svelte.ts';
import { AxleGrasp } from './axle-grasp.svelte.ts';
import type { AxlePull } from './axle-pull.svelte.ts';
import PullReadout from './PullReadout.svelte';
import type { RoadRun } from './road-run.svelte.ts';

/** mm that the road is drawn ahead of the axle and behind it, and from one of its points to the next. */
const AHEAD = 900;
const BEHIND = 2000;
const STEP = 10;
const COUNT = (AHEAD + BEHIND) / STEP + 1;
/** mm that a lane is drawn wider than its tyre, each side. */
const LANE_BESIDE = 45;
/** mm from one mark along the road to the next: a yard, or a metre. */
const MARK_STEP = { in: 36 * MM_PER_INCH, mm: 1000 };

/**
 * The ground's own height at distances along a road. The mathematics know a kerb by the way on which a stiff wheel's
 * middle climbs it; what is drawn is its edge, where the wheel's middle stands above it.
 */
export function groundOf(profile: RoadProfile | undefined, road: Road, tyreRadius: number): Road {
  if (profile?.kind !== 'kerb') return road;
  const { start, height, side } = profile;
  const edge = start + Math.sqrt(Math.max(0, tyreRadius ** 2 - (tyreRadius - height) ** 2));
  const at = (distance: number) => (distance >= edge ? height : 0);
  const flat = () => 0;
  return { leftAt: side === 'right' ? flat : at, rightAt: side === 'left' ? flat : at };
}

/** The road about the axle once the wheels have rolled so far, mm. */
function pictureOf(
  run: RoadRun,
  openLayout: OpenLayout,
  left: Float64Array,
  right: Float64Array,
): RoadPicture {
  const { car, axle } = openLayout.layout;
  const { distance, road } = run;
  const ground = groundOf(run.profile, road, car.tyreRadius);
  // From behind forward: a measured road is read on from where it was read last.
  for (let i = COUNT - 1; i >= 0; i -= 1) {
    const at = distance + AHEAD - i * STEP;
    left[i] = ground.leftAt(at);
    right[i] = ground.rightAt(at);
  }
  const half = car.tyreWidth / 2 + LANE_BESIDE;
  const spacing = MARK_STEP[openLayout.settings.unit];
  const marks: number[] = [];
  for (
    let mark = Math.ceil((distance - BEHIND) / spacing) * spacing;
    mark < distance + AHEAD;
    mark += spacing
  )
    marks.push(mark - distance);
  return {
    from: AHEAD,
    step: STEP,
    left,
    right,
    lanes: [
      { y: axle.right.wheelCentre[1], half, height: road.rightAt(distance) },
      { y: axle.left.wheelCentre[1], half, height: road.leftAt(distance) },
    ],
    marks,
  };
}

/** The variants beside the open one where the road has brought each of them. */
function othersOnRoad(comparison: Comparison, run: RoadRun): OtherCar[] {
  if (!comparison.ghosts) return [];
  return run.others.map(({ other, driven }) => ({
    id: other.id,
    frontEnd: other.frontEnd,
    ...run.standOf(other, driven),
    dash: COMPARE_DASHES[other.letter],
    whole: true,
  }));
}

/** From where the hand's point of the axle has come to where the hand is: what the springs hold back. */
function handLines(
  axlePull: AxlePull,
  { grip }: AxleGrasp,
  openLayout: OpenLayout,
  view: BoardView,
): OverlayLine[] {
  if (!grip || !axlePull.hold || axlePull.byKeys || !view.shown.includes(grip.view)) return [];
  const { heave, roll } = openLayout.carPose.pose;
  const given = heave - grip.heave + grip.y * toRadians(roll - grip.roll);
  const { up, over } = axlePull.pulled;
  const [x, y] = view.onBoard(grip.view, [grip.at[0], grip.at[1] - given]);
  const across = grip.view === 'front' ? project('front', [0, over, 0])[0] : 0;
  const [toX, toY] = view.onBoard(grip.view, [grip.at[0] + across, grip.at[1] - up]);
  return [{ points: [x, y, toX, toY], ink: 'steel' }];
}

/** A drive over a road, and a hand on the axle, on the board. */
export const roadOnBoard =
  (openLayout: OpenLayout, comparison: Comparison, run: RoadRun, axlePull: AxlePull) =>
  (view: BoardView): Contribution => {
    const left = new Float64Array(COUNT);
    const right = new Float64Array(COUNT);
    const grasp = new AxleGrasp(openLayout, axlePull);
    /** While a hand pulls, the frame stands still on the board as in every pose, and the tyres take the ground along. */
    const onRoad = () => run.open && !axlePull.active;
    return {
      id: 'road',
      ground: () => (onRoad() ? pictureOf(run, openLayout, left, right) : undefined),
      otherCars: () => (onRoad() ? othersOnRoad(comparison, run) : undefined),
      // A drive has nothing to say that would not move too fast to read: its figures stand beside its curves.
      overlay: () => ({ lines: handLines(axlePull, grasp, openLayout, view) }),
      graspable: grasp,
      cursor: () => (axlePull.offered === null ? undefined : 'ns-resize'),
      wantsKeys: () => axlePull.byKeys,
      help: 'P takes hold of the axle: arrow keys up and down pull it on its springs, Shift P lets go, Escape puts it to rest.',
      above: piece(PullReadout, { openLayout, axlePull }),
    };
  };
