import { type BumpSteerMap, PLACE_HIT_FROM, PLACE_OK, placeOf } from '../aim/index.ts';
import { distance, type Point } from '../geometry/points.ts';
import { subtract } from '../geometry/vectors.ts';
import type { Layout } from '../layout/index.ts';
import {
  createState,
  drawnBranch,
  type FrontEnd,
  type FrontEndState,
  poseAxle,
  sectorCircle,
  steerAxle,
} from '../linkage/index.ts';
import { evenly } from '../sweep/index.ts';
import { toRadians } from '../units/index.ts';
import { bodiesOf, steeringBodies } from './bodies.ts';
import type { Body } from './body.ts';
import { steeringBox } from './fixed-bodies.ts';
import {
  type Couple,
  couple,
  distanceAlong,
  distanceAt,
  rememberParting,
  roughDistance,
} from './least-distance.ts';
import { emptyTrack, type Locks, ONE_POSE, placePart, type Track } from './motion.ts';
import { pairsOf } from './pairs.ts';

/** What is hit at some place of a map; the n-th stands at the places whose reason is PLACE_HIT_FROM + n. Plain data. */
export interface MapHit {
  readonly a: string;
  readonly b: string;
  readonly nameOfA: string;
  readonly nameOfB: string;
}

export interface MapHitOptions {
  /** mm. How near counts as a hit. */
  readonly gap?: number;
  /** Every how many nodes of the map are looked at; those between take the answer of the one before them. */
  readonly every?: number;
  /** Pairs that are not looked at: what hits as drawn says nothing about a place. */
  readonly leaving?: readonly { readonly a: string; readonly b: string }[];
}

/** What goes with the box: only these are judged, since nothing else of the car depends on the place. */
const GOING: readonly string[] = ['drag-link', 'pitman-arm', 'box'];
const HITS_MAX = 255 - PLACE_HIT_FROM;
const TURNS = 5;

/** A layout with its box moved so that the pitman ball stands at a point. */
export function withBoxAt(layout: Layout, ball: Point): Layout {
  const { box } = layout.steering;
  const centre: Point = [
    box.sectorCentre[0] + ball[0] - box.pitmanBall[0],
    box.sectorCentre[1] + ball[1] - box.pitmanBall[1],
    box.sectorCentre[2] + ball[2] - box.pitmanBall[2],
  ];
  return {
    ...layout,
    steering: { ...layout.steering, box: { ...box, pitmanBall: ball, sectorCentre: centre } },
  };
}

/** Two parts that may hit, with the direction that parted them when they were last looked at. */
interface Watched {
  readonly hit: number;
  readonly parts: Couple;
  readonly parting: Float64Array;
}

function couplesOf(
  judged: readonly { hit: number; a: number; b: number }[],
  tracks: readonly (readonly Track[])[],
): Watched[] {
  return judged.flatMap(({ hit, a, b }) =>
    (tracks[a] as Track[]).flatMap((first) =>
      (tracks[b] as Track[]).map((second) => ({
        hit,
        parts: couple(first, second),
        parting: new Float64Array(3),
      })),
    ),
  );
}

/** The first hit among parts as they stand, or -1. Mostly the direction that parted two of them before still does. */
function hitAmong(couples: readonly Watched[], gap: number): number {
  for (const { hit, parts, parting } of couples) {
    if (roughDistance(parts, 0) > gap || distanceAlong(parts, 0, parting) > gap) continue;
    if (distanceAt(parts, 0) <= gap) return hit;
    rememberParting(parting);
  }
  return -1;
}

/** The front end with its box moved: the axle and the spindles stay as they were made ready. */
function frontEndAt(frontEnd: FrontEnd, layout: Layout): FrontEnd {
  const { box, dragLinkBall } = layout.steering;
  return {
    ...frontEnd,
    layout,
    dragLinkLength: distance(dragLinkBall, box.pitmanBall),
    dragLinkBranch: drawnBranch(frontEnd.dragLinkBall, subtract(box.pitmanBall, frontEnd.axle.centre)),
    pitmanBall: sectorCircle(box, frontEnd.sectorAxis),
  };
}

/** The poses of the axle that are looked at: the ends of the travel and ride height. */
function stationsOf(frontEnd: FrontEnd): FrontEndState[] {
  const { bump, rebound: droop } = frontEnd.layout.travel;
  return [0, bump, -droop].flatMap((heave) => {
    const state = createState();
    return poseAxle(frontEnd, heave, 0, state) ? [state] : [];
  });
}

/** Whether a wheel is turned past the axle's stops, where the pose does not occur. */
function isPastStop(layout: Layout, { left, right }: FrontEndState): boolean {
  const { stopAngle } = layout.steering;
  const turned = Math.max(Math.abs(left.steer), Math.abs(right.steer));
  return stopAngle !== undefined && turned > toRadians(stopAngle) + 1e-6;
}

/**
 * Marks the places of a map at which the box, its pitman arm or its drag link would hit something, and says what: at
 * ride height and both ends of the travel, straight ahead, at both locks and half-way to them. Places that are out of
 * reach already keep that reason. What else the car hits is no matter of where the box is, and is left out here.
 * Frame:    vehicle. Units: mm. Shapes: writes `map.reason`. Outcomes: what is hit, in the order of the marks.
 * Source:   own derivation; the distances are those of `leastClearances`, at 15 poses.
 * Checked:  tests/unit/map.test.ts (against `leastClearances` of the moved layout).
 */
export function markHits(
  frontEnd: FrontEnd,
  map: BumpSteerMap,
  locks: Locks,
  options: MapHitOptions = {},
): MapHit[] {
  const { gap = 0, every = 2, leaving = [] } = options;
  const { layout } = frontEnd;
  const drawn = bodiesOf(layout);
  const pairs = pairsOf(drawn)
    .filter(({ a, b }) => GOING.includes(a.id) || GOING.includes(b.id))
    .filter(({ a, b }) => !leaving.some((known) => known.a === a.id && known.b === b.id))
    .slice(0, HITS_MAX);
  const judged = pairs.map(({ a, b }, hit) => ({ hit, a: drawn.indexOf(a), b: drawn.indexOf(b) }));
  const involved = [...new Set(judged.flatMap(({ a, b }) => [a, b]))];
  const going = involved.filter((i) => GOING.includes((drawn[i] as Body).id));
  const stations = stationsOf(frontEnd).map((state) => ({
    state,
    tracks: drawn.map((body) => body.parts.map((part) => emptyTrack(part, ONE_POSE))),
  }));
  // From straight ahead outward, so that what is hit as the car stands is found at once.
  const handwheels = [...evenly(locks.right, locks.left, TURNS)].sort((a, b) => Math.abs(a) - Math.abs(b));
  type Station = (typeof stations)[number];

  const place = (moved: FrontEnd, { state, tracks }: Station, which: readonly number[], bodies: Body[]) => {
    for (const i of which)
      (bodies[i] as Body).parts.forEach((part, j) => {
        placePart(moved, state, part, tracks[i]?.[j] as Track, 0);
      });
  };
  const isSteered = (i: number) => stations[0]?.tracks[i]?.some(({ steered }) => steered) === true;
  const steered = involved.filter((i) => isSteered(i) && !going.includes(i));
  for (const station of stations)
    place(
      frontEnd,
      station,
      involved.filter((i) => !isSteered(i)),
      drawn,
    );

  const couples = stations.map(({ tracks }) => couplesOf(judged, tracks));
  const bodiesAt = (at: Layout): Body[] => {
    const own = [...steeringBodies(at), steeringBox(at)];
    return drawn.map((body) => own.find(({ id }) => id === body.id) ?? body);
  };
  const hitAt = (ball: Point): number => {
    const at = withBoxAt(layout, ball);
    const moved = frontEndAt(frontEnd, at);
    const bodies = bodiesAt(at);
    for (const [i, station] of stations.entries())
      for (const handwheel of handwheels) {
        const { state } = station;
        if (steerAxle(moved, handwheel, state) !== 'ok' || isPastStop(layout, state)) continue;
        place(moved, station, going, bodies);
        place(moved, station, steered, drawn);
        const hit = hitAmong(couples[i] as Watched[], gap);
        if (hit >= 0) return hit;
      }
    return -1;
  };

  const { columns, rows, across, up, reason } = map;
  const step = Math.max(1, Math.round(every));
  for (let row = 0; row < rows; row += step)
    for (let column = 0; column < columns; column += step) {
      const hit = hitAt(placeOf(map.window, across[column] as number, up[row] as number));
      if (hit < 0) continue;
      for (let r = row; r < Math.min(row + step, rows); r += 1)
        for (let c = column; c < Math.min(column + step, columns); c += 1)
          if (reason[r * columns + c] === PLACE_OK) reason[r * columns + c] = PLACE_HIT_FROM + hit;
    }
  return pairs.map(({ a, b }) => ({ a: a.id, b: b.id, nameOfA: a.name, nameOfB: b.name }));
}
