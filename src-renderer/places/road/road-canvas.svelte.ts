import { project } from '../../../shared-math/drawing/index.ts';
import type { Road, RoadProfile } from '../../../shared-math/ride/index.ts';
import { MM_PER_INCH, toRadians } from '../../../shared-math/units/index.ts';
import type { BoardStage } from '../../board/board-stage.ts';
import type { BoardView } from '../../board/board-view.svelte.ts';
import type { OtherCar } from '../../board/other-cars.ts';
import type { OverlayLine } from '../../board/overlay.ts';
import type { RoadPicture } from '../../board/road-ground.ts';
import { LEVEL } from '../../document/stand.ts';
import type { Workbench } from '../../document/workbench.svelte.ts';
import { COMPARE_DASHES } from '../../look/compare.ts';
import type { Comparison } from '../../panels/compare/comparison.svelte.ts';
import type { AxlePull } from './axle-pull.svelte.ts';
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
function pictureOf(run: RoadRun, workbench: Workbench, left: Float64Array, right: Float64Array): RoadPicture {
  const { car, axle } = workbench.layout;
  const { distance, road } = run;
  const ground = groundOf(run.profile, road, car.tyreRadius);
  // From behind forward: a measured road is read on from where it was read last.
  for (let i = COUNT - 1; i >= 0; i -= 1) {
    const at = distance + AHEAD - i * STEP;
    left[i] = ground.leftAt(at);
    right[i] = ground.rightAt(at);
  }
  const half = car.tyreWidth / 2 + LANE_BESIDE;
  const spacing = MARK_STEP[workbench.settings.unit];
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

/** The variants beside the open one as they stand now: in its pose, or where the road has brought each of them. */
function othersNow(comparison: Comparison, run: RoadRun, onRoad: boolean): OtherCar[] {
  if (!comparison.ghosts) return [];
  if (!onRoad)
    return comparison.others.map(({ id, frontEnd, state, letter }) => ({
      id,
      frontEnd,
      state,
      dash: COMPARE_DASHES[letter],
      stand: LEVEL,
      whole: false,
    }));
  return run.others.map(({ other, driven }) => ({
    id: other.id,
    frontEnd: other.frontEnd,
    ...run.standOf(other, driven),
    dash: COMPARE_DASHES[other.letter],
    whole: true,
  }));
}

/** From where the hand's point of the axle has come to where the hand is: what the springs hold back. */
function handLines(axlePull: AxlePull, workbench: Workbench, view: BoardView): OverlayLine[] {
  const { grip } = view;
  if (!grip || !axlePull.hold || axlePull.byKeys || !view.shown.includes(grip.view)) return [];
  const { heave, roll } = workbench.pose;
  const given = heave - grip.heave + grip.y * toRadians(roll - grip.roll);
  const { up, over } = axlePull.pulled;
  const [x, y] = view.onBoard(grip.view, [grip.at[0], grip.at[1] - given]);
  const across = grip.view === 'front' ? project('front', [0, over, 0])[0] : 0;
  const [toX, toY] = view.onBoard(grip.view, [grip.at[0] + across, grip.at[1] - up]);
  return [{ points: [x, y, toX, toY], ink: 'steel' }];
}

/** What a drive over a road and a hand on the axle put on the canvas. To be called where effects may be made. */
export function roadCanvas(
  stage: BoardStage,
  view: BoardView,
  workbench: Workbench,
  comparison: Comparison,
  run: RoadRun,
  axlePull: AxlePull,
) {
  const left = new Float64Array(COUNT);
  const right = new Float64Array(COUNT);
  /** While a hand pulls, the frame stands still on the board as in every pose, and the tyres take the ground along. */
  const onRoad = () => workbench.lookedAt === 'road' && !axlePull.active;

  $effect(() => {
    stage.showRoad(onRoad() ? pictureOf(run, workbench, left, right) : undefined);
  });

  $effect(() => {
    stage.otherCars.show(othersNow(comparison, run, onRoad()));
  });

  return { onRoad, handLines: () => handLines(axlePull, workbench, view) };
}
