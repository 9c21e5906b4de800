import { distance, type Point } from '../geometry/points.ts';
import { dot, norm, subtract, unit } from '../geometry/vectors.ts';
import { COORDINATE_MAX, SAME_SPOT } from '../tolerances.ts';
import { lateralPoints } from './lateral-kinds.ts';
import { originProblems } from './origins.ts';
import type { Refusal } from './refusals.ts';
import { type Layout, resolveLayout } from './resolve.ts';
import type { LayoutDocument } from './schema.ts';
import { shaftProblems } from './shaft-checks.ts';
import { SIDES } from './sides.ts';

/** Distance of a point from the line through two others, mm. The two must not be one spot. */
function distanceFromLine(point: Point, a: Point, b: Point): number {
  const length = distance(a, b);
  const u = [(b[0] - a[0]) / length, (b[1] - a[1]) / length, (b[2] - a[2]) / length] as const;
  const d = [point[0] - a[0], point[1] - a[1], point[2] - a[2]] as const;
  return Math.hypot(d[1] * u[2] - d[2] * u[1], d[2] * u[0] - d[0] * u[2], d[0] * u[1] - d[1] * u[0]);
}

function* axleProblems(layout: Layout): Generator<Refusal> {
  for (const side of SIDES) {
    const at = `axle.${side}`;
    const half = layout.axle[side];
    const outboard = side === 'left' ? 1 : -1;
    if (half.wheelCentre[1] * outboard <= 0)
      yield {
        path: `${at}.wheelCentre[1]`,
        reason: `the ${side} wheel must stand at ${side === 'left' ? 'positive' : 'negative'} y (y points left)`,
      };
    if (distance(half.kingpinTop, half.kingpinBottom) < SAME_SPOT)
      yield {
        path: `${at}.kingpinTop`,
        reason: 'on the same spot as kingpinBottom: the kingpin has no length',
      };
    else if (half.kingpinTop[2] <= half.kingpinBottom[2])
      yield { path: `${at}.kingpinTop[2]`, reason: 'must be above kingpinBottom' };
    else if (distanceFromLine(half.tieRodBall, half.kingpinTop, half.kingpinBottom) < SAME_SPOT)
      yield { path: `${at}.tieRodBall`, reason: "lies on the kingpin's line, so it cannot steer the wheel" };
  }
  if (distance(layout.axle.left.tieRodBall, layout.axle.right.tieRodBall) < SAME_SPOT)
    yield {
      path: 'axle.left.tieRodBall',
      reason: 'on the same spot as the right one: the tie rod has no length',
    };
}

function* locationProblems(layout: Layout): Generator<Refusal> {
  const { location } = layout;
  if (location.kind === 'four-bar') {
    for (const side of SIDES)
      for (const bar of ['upper', 'lower'] as const)
        if (distance(location[side][bar].axle, location[side][bar].frame) < SAME_SPOT)
          yield {
            path: `location.${side}.${bar}.frame`,
            reason: 'on the same spot as its axle end: the bar has no length',
          };
  }
  if (location.kind === 'quarter-elliptic')
    for (const side of SIDES) {
      const { butt, clamp, eye, rod } = location[side];
      const at = `location.${side}`;
      if (distance(butt, clamp) < SAME_SPOT)
        yield {
          path: `${at}.butt`,
          reason: 'on the same spot as clamp: the spring leaves its clamp in no direction',
        };
      else {
        const line = unit(subtract(clamp, butt));
        const chord = subtract(eye, clamp);
        // Beyond 45° no leaf bends, and its arc no longer follows from the clamp's line.
        if (dot(chord, line) < Math.SQRT1_2 * norm(chord) || norm(chord) < SAME_SPOT)
          yield {
            path: `${at}.eye`,
            reason: 'must stand ahead of clamp on the line from butt through it, within 45° of that line',
          };
      }
      if (distance(rod.axle, rod.frame) < SAME_SPOT)
        yield { path: `${at}.rod.frame`, reason: 'on the same spot as its axle end: the rod has no length' };
    }
  if (location.kind === 'parallel-leaf') {
    for (const side of SIDES) {
      const { fixedEye, seat, shackleEye } = location[side];
      if ((fixedEye[0] - seat[0]) * (shackleEye[0] - seat[0]) >= 0)
        yield {
          path: `location.${side}.seat`,
          reason: 'must lie between fixedEye and shackleEye along the car',
        };
    }
  }
}

function* lateralProblems(layout: Layout): Generator<Refusal> {
  const { lateral } = layout;
  if (lateral.kind === 'bar' && distance(lateral.axle, lateral.frame) < SAME_SPOT)
    yield { path: 'lateral.frame', reason: 'on the same spot as its axle end: the bar has no length' };
  if (lateral.kind === 'watt')
    for (const bar of ['upper', 'lower'] as const) {
      const { rocker, end } = lateral[bar];
      if (distance(rocker, end) < SAME_SPOT)
        yield {
          path: `lateral.${bar}.end`,
          reason: 'on the same spot as its rocker end: the bar has no length',
        };
      if (Math.hypot(rocker[1] - lateral.pivot[1], rocker[2] - lateral.pivot[2]) < SAME_SPOT)
        yield {
          path: `lateral.${bar}.rocker`,
          reason: "on the line of the rocker's bolt, which runs fore and aft: the rocker has no arm there",
        };
    }
  if (lateral.kind === 'fixed-spring') {
    const { clamp, eye } = lateral;
    const across = Math.hypot(eye[0] - clamp[0], eye[1] - clamp[1]);
    if (distance(eye, clamp) < SAME_SPOT)
      yield { path: 'lateral.clamp', reason: 'on the same spot as the eye: half the spring has no length' };
    else if (Math.abs(eye[2] - clamp[2]) > across)
      yield {
        path: 'lateral.eye',
        reason: 'must stand further out from clamp than above or below it: the spring lies across the car',
      };
  }
}

function* steeringProblems(layout: Layout): Generator<Refusal> {
  const { dragLinkBall, dragLinkTo, box } = layout.steering;
  const { kingpinTop, kingpinBottom } = layout.axle[dragLinkTo];
  if (Math.hypot(...box.sectorAxis) < 1e-6)
    yield { path: 'steering.box.sectorAxis', reason: 'has no length, so it points nowhere' };
  else {
    const along: Point = [
      box.sectorCentre[0] + box.sectorAxis[0],
      box.sectorCentre[1] + box.sectorAxis[1],
      box.sectorCentre[2] + box.sectorAxis[2],
    ];
    if (distanceFromLine(box.pitmanBall, box.sectorCentre, along) < SAME_SPOT)
      yield {
        path: 'steering.box.pitmanBall',
        reason: 'lies on the sector shaft: the pitman arm has no length',
      };
  }
  if (distance(dragLinkBall, box.pitmanBall) < SAME_SPOT)
    yield {
      path: 'steering.dragLinkBall',
      reason: 'on the same spot as the pitman ball: the drag link has no length',
    };
  if (distanceFromLine(dragLinkBall, kingpinTop, kingpinBottom) < SAME_SPOT)
    yield {
      path: 'steering.dragLinkBall',
      reason: "lies on the kingpin's line, so it cannot steer the wheel",
    };
}

function* studProblems(layout: Layout): Generator<Refusal> {
  for (const [id, axis] of Object.entries(layout.studs ?? {}))
    if (Math.hypot(...axis) < 1e-6)
      yield { path: `studs.${id}`, reason: 'has no length, so it points nowhere' };
}

function* obstacleProblems(layout: Layout): Generator<Refusal> {
  for (const [i, rail] of layout.rails.entries())
    for (let j = 1; j < rail.path.length; j += 1)
      if (distance(rail.path[j - 1] as Point, rail.path[j] as Point) < SAME_SPOT)
        yield {
          path: `rails[${i}].path[${j}]`,
          reason: 'on the same spot as the point before it: the rail has no length there',
        };
  for (const [i, obstacle] of layout.obstacles.entries())
    if (obstacle.kind !== 'box' && distance(obstacle.from, obstacle.to) < SAME_SPOT)
      yield {
        path: `obstacles[${i}].to`,
        reason: `on the same spot as from: the ${obstacle.kind} has no length`,
      };
}

function* rideProblems({ ride }: Layout): Generator<Refusal> {
  const spring = ride?.spring;
  if (spring?.kind === 'leaf' && (spring.fullLeaves ?? 0) > spring.leaves)
    yield {
      path: 'ride.spring.fullLeaves',
      reason: `must be at most the number of leaves, ${spring.leaves}; found ${spring.fullLeaves}`,
    };
}

const LINK_KEYS = ['dragLink', 'tieRod', 'lateralBar', 'rods'] as const;

/** What cannot be cut from steel: a wall that fills its tube, a thread longer than its end. */
function* linkProblems({ links = {}, diameters = {} }: Layout): Generator<Refusal> {
  for (const key of LINK_KEYS) {
    const link = links[key];
    if (!link) continue;
    const { section, wall } = link;
    const outside = diameters[key];
    if (section === 'rod' && wall !== undefined)
      yield { path: `links.${key}.wall`, reason: 'a solid rod has no wall' };
    if (wall !== undefined && outside !== undefined && 2 * wall >= outside)
      yield {
        path: `links.${key}.wall`,
        reason: `must be less than half of the outside, ${outside} mm; found ${wall}`,
      };
    for (const [name, end] of Object.entries(link.ends ?? {}))
      if (
        end?.kind === 'threaded' &&
        end.reach !== undefined &&
        end.threadLength !== undefined &&
        end.threadLength >= end.reach
      )
        yield {
          path: `links.${key}.ends.${name}.threadLength`,
          reason: `must be less than reach, ${end.reach} mm; found ${end.threadLength}`,
        };
  }
}

/** What a well-formed document can still get wrong: links of no length, points that cannot turn what they hold. */
export function geometryRefusal(document: LayoutDocument): Refusal | undefined {
  const layout = resolveLayout(document);
  for (const check of [
    axleProblems,
    locationProblems,
    lateralProblems,
    steeringProblems,
    studProblems,
    shaftProblems,
    obstacleProblems,
    rideProblems,
    linkProblems,
  ])
    for (const problem of check(layout)) return problem;
  for (const problem of originProblems(document)) return problem;
  return undefined;
}

/** Points that go with the box, the steering arm's ball, the lateral bar's ends or the shaft's box end. */
function placedFreely({ steering, lateral, shaft }: Layout): Point[] {
  const { box, dragLinkBall } = steering;
  return [
    box.sectorCentre,
    box.pitmanBall,
    dragLinkBall,
    ...lateralPoints(lateral).map(({ at }) => at),
    ...(shaft ? [shaft.box.end, ...shaft.joints.map(({ centre }) => centre)] : []),
  ];
}

/**
 * What moving points of the steering, the lateral bar and the shaft can get wrong in a layout that was taken before:
 * what `readLayout` would refuse of those, without looking at the rest again.
 */
export function steeringRefusal(layout: Layout): Refusal | undefined {
  for (const check of [lateralProblems, steeringProblems, shaftProblems])
    for (const problem of check(layout)) return problem;
  for (const point of placedFreely(layout))
    for (const value of point)
      if (!(Math.abs(value) <= COORDINATE_MAX))
        return { path: '', reason: `a point is further away than ${COORDINATE_MAX} mm` };
  return undefined;
}
