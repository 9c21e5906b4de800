import { distance, type Point } from '../geometry/points.ts';
import type { GridPose } from '../joints/index.ts';
import type { Carrier } from '../layout/index.ts';
import {
  carryPoint,
  createState,
  type FrontEnd,
  type FrontEndState,
  HeldPoses,
  MOTION_SIZE,
  steerAxle,
  writeMotion,
} from '../linkage/index.ts';
import { evenly } from '../sweep/index.ts';
import { toRadians } from '../units/index.ts';
import type { Body, BodyPart, Carried } from './body.ts';
import { BOX, coreRadius, SEGMENT, type ShapeKind } from './shapes.ts';

/** Handwheel angles at the ends of the turn, rad. */
export interface Locks {
  readonly right: number;
  readonly left: number;
}

/** The grid of travel and turn: stations of heave and roll, each steered to the same handwheel angles. */
export interface Grid {
  readonly stations: readonly (readonly [heave: number, roll: number])[];
  readonly handwheels: Float64Array;
  /** For station · turns + turn the pose's number, or -1 where a link does not reach or there is no pose. */
  readonly poseAt: Int32Array;
  /** Poses in reach. */
  readonly poses: number;
  readonly outOfReach: number;
}

/**
 * One convex part over all poses: what `shapes.ts` calls its numbers, `stride` apart. What the handwheel moves has a row
 * for each pose, what goes with the axle alone one for each station, a fixed one stands there once.
 */
export interface Track {
  readonly kind: ShapeKind;
  readonly stride: number;
  /** Which row of the data each pose has. */
  readonly rowOf: Int32Array;
  readonly data: Float64Array;
  /** The same seen from the axle's left half, for pairs that both go with the axle: by `seenFromAxle`. */
  fromAxle: Float64Array | undefined;
  isSeen: boolean;
  /** Radius of the capsule around the core; 0 for others. */
  readonly radius: number;
  /** Half the longest way through the core, in any pose placed so far; mm. */
  reach: number;
  /** Whether the handwheel moves it; else it is settled by the axle's pose. */
  readonly steered: boolean;
}

const NUMBERS = { segment: 6, round: 9, block: 12 } as const;

function isSteered({ carrier }: Carried): boolean {
  return carrier === 'pitman' || carrier.startsWith('spindle');
}

function endsOf(part: BodyPart): readonly [Carried, Carried] | undefined {
  if (part.kind === BOX) return undefined;
  return part.kind === SEGMENT ? [part.from, part.to] : [part.centre, part.tip];
}

/** Poses by their rows in tracks: of what the handwheel moves, and of what goes with the axle alone. */
interface Rows {
  readonly steered: Int32Array;
  readonly settled: Int32Array;
  readonly stations: number;
}

/** The rows of one pose alone. */
export const ONE_POSE: Rows = { steered: new Int32Array(1), settled: new Int32Array(1), stations: 1 };

function isBetweenCarriers(part: BodyPart): boolean {
  const ends = endsOf(part);
  return ends !== undefined && ends[0].carrier !== ends[1].carrier;
}

/** An empty track for a part; a block of the frame is there already. */
export function emptyTrack(part: BodyPart, rows: Rows): Track {
  const ends = endsOf(part);
  const steered = ends?.some(isSteered) === true;
  const poses = steered ? rows.steered.length : rows.stations;
  const moves = ends?.some(({ carrier }) => carrier !== 'frame') === true;
  const size = part.kind === SEGMENT ? NUMBERS.segment : part.kind === BOX ? NUMBERS.block : NUMBERS.round;
  const data = new Float64Array(size * (moves ? poses : 1));
  if (part.kind === BOX) data.set(part.numbers);
  return {
    kind: part.kind,
    stride: moves ? size : 0,
    rowOf: steered ? rows.steered : rows.settled,
    data,
    fromAxle: undefined,
    isSeen: false,
    radius: part.kind === SEGMENT ? part.radius : 0,
    reach: part.kind === BOX ? coreRadius(BOX, data, 0) : 0,
    steered,
  };
}

/** Writes a part's numbers where a solved pose puts it, from `at` on in its track. */
export function placePart(
  frontEnd: FrontEnd,
  state: FrontEndState,
  part: BodyPart,
  track: Track,
  at: number,
): void {
  const { data } = track;
  if (part.kind === BOX) return;
  if (part.kind === SEGMENT) {
    carryPoint(frontEnd, state, part.from.carrier, part.from.at, data, at);
    carryPoint(frontEnd, state, part.to.carrier, part.to.at, data, at + 3);
  } else {
    carryPoint(frontEnd, state, part.centre.carrier, part.centre.at, data, at);
    carryPoint(frontEnd, state, part.tip.carrier, part.tip.at, data, at + 3);
    for (let axis = 0; axis < 3; axis += 1)
      data[at + 3 + axis] = (data[at + 3 + axis] as number) - (data[at + axis] as number);
    data[at + 6] = part.half;
    data[at + 7] = part.outer;
    data[at + 8] = part.inner;
  }
  // A link between two carriers is not of one length in every pose to the last bit: the longest one counts.
  if (track.reach === 0 || isBetweenCarriers(part))
    track.reach = Math.max(track.reach, coreRadius(part.kind, data, at));
}

/**
 * A moving part's numbers as the axle's left half sees them, row for row as in its data. Worked out when they are first
 * asked after the part was carried.
 */
export function seenFromAxle(track: Track, { grid, frames, stationOf }: BodyTracks): Float64Array {
  const { data, stride, kind, steered } = track;
  const seen = track.fromAxle ?? new Float64Array(data.length);
  if (track.isSeen) return seen;
  track.fromAxle = seen;
  track.isSeen = true;
  const rows = steered ? grid.poses : grid.stations.length;
  for (let row = 0; row < rows; row += 1) {
    const frame = AXLE_NUMBERS * (steered ? (stationOf[row] as number) : row);
    const at = row * stride;
    for (let point = 0; point < 6; point += 3) {
      const isAxis = kind !== SEGMENT && point === 3;
      const x = (data[at + point] as number) - (isAxis ? 0 : (frames[frame] as number));
      const y = (data[at + point + 1] as number) - (isAxis ? 0 : (frames[frame + 1] as number));
      const z = (data[at + point + 2] as number) - (isAxis ? 0 : (frames[frame + 2] as number));
      for (let axis = 0; axis < 3; axis += 1)
        seen[at + point + axis] =
          (frames[frame + 3 + axis] as number) * x +
          (frames[frame + 6 + axis] as number) * y +
          (frames[frame + 9 + axis] as number) * z;
    }
    for (let i = at + 6; i < at + stride; i += 1) seen[i] = data[i] as number;
  }
  return seen;
}

/** Of a pose's frame the centre and the left half's axes. */
const AXLE_NUMBERS = 12;

/** The stations of heave at no roll, and of full roll either way at the ends and the middle of heave. */
export function stationsOf(frontEnd: FrontEnd, heaves: number): [heave: number, roll: number][] {
  const { bump, rebound: droop, roll } = frontEnd.layout.travel;
  const full = toRadians(roll);
  const stations = [...evenly(-droop, bump, heaves)].map((heave): [number, number] => [heave, 0]);
  if (full > 0) for (const heave of new Set([-droop, 0, bump])) stations.push([heave, full], [heave, -full]);
  return stations;
}

/** Where bodies go over the grid: a track for each part of each body, in their order. */
export interface BodyTracks {
  readonly grid: Grid;
  readonly bodies: readonly Body[];
  readonly tracks: readonly (readonly Track[])[];
  /** For each station the axle's centre (3) and its left half's axes (9), as a state's frame has them. */
  readonly frames: Float64Array;
  /** The station of each pose. */
  readonly stationOf: Int32Array;
}

/**
 * Carries bodies through the grid of travel and turn: each station's axle is posed once, then steered to `turns`
 * handwheel angles between the locks. Poses out of reach are counted and left out.
 * Carried again for another front end, only what differs is worked out anew: bodies are known by identity, axles by
 * their model. What `carry` gave before is written over.
 * Frame: vehicle. Units: mm, rad.
 */
export class BodyCarrier {
  private readonly heaves: number;
  private readonly turns: number;
  private bodies: readonly Body[] = [];
  private tracks: (readonly Track[])[] = [];
  private rows: Rows | undefined;
  private poseAt = new Int32Array(0);
  private frames = new Float64Array(0);
  private axle: FrontEnd['axle'] | undefined;

  constructor(heaves = 31, turns = 41) {
    this.heaves = heaves;
    this.turns = turns;
  }

  carry(frontEnd: FrontEnd, bodies: readonly Body[], locks: Locks, held = new HeldPoses()): BodyTracks {
    const stations = stationsOf(frontEnd, this.heaves);
    const handwheels = evenly(locks.right, locks.left, this.turns);
    const turns = handwheels.length;
    const rows = this.rowsFor(stations.length, turns);
    const { poseAt } = this;
    poseAt.fill(-1);
    const { steered, settled } = this.tracksFor(frontEnd, bodies, rows);

    let poses = 0;
    stations.forEach(([heave, roll], station) => {
      const state = held.at(frontEnd, heave, roll);
      if (!state) return;
      this.frames.set(state.work.frame.subarray(0, AXLE_NUMBERS), AXLE_NUMBERS * station);
      for (const { part, track } of settled) placePart(frontEnd, state, part, track, station * track.stride);
      for (let turn = 0; turn < turns; turn += 1) {
        if (steerAxle(frontEnd, handwheels[turn] as number, state) !== 'ok') continue;
        rows.settled[poses] = station;
        for (let i = 0; i < STEERED.length; i += 1)
          writeMotion(frontEnd, state, STEERED[i] as Carrier, motions, MOTION_SIZE * i);
        for (let i = 0; i < steered.length; i += 1) (steered[i] as Steered).place(poses);
        poseAt[station * turns + turn] = poses;
        poses += 1;
      }
    });
    for (const part of steered) part.settleReach();
    return {
      grid: { stations, handwheels, poseAt, poses, outOfReach: poseAt.length - poses },
      bodies,
      tracks: this.tracks,
      frames: this.frames,
      stationOf: rows.settled,
    };
  }

  private rowsFor(stations: number, turns: number): Rows {
    if (!this.rows || this.rows.stations !== stations || this.poseAt.length !== stations * turns) {
      this.poseAt = new Int32Array(stations * turns);
      this.rows = {
        steered: Int32Array.from(this.poseAt.keys()),
        settled: new Int32Array(this.poseAt.length),
        stations,
      };
      this.frames = new Float64Array(AXLE_NUMBERS * stations);
      this.bodies = [];
    }
    return this.rows;
  }

  /** Makes a track for each part that has none yet; returns what has to be placed in each pose, and at each station. */
  private tracksFor(
    frontEnd: FrontEnd,
    bodies: readonly Body[],
    rows: Rows,
  ): { steered: Steered[]; settled: Placed[] } {
    const { bodies: before, tracks } = this;
    const sameAxle = frontEnd.axle === this.axle;
    const steered: Steered[] = [];
    const settled: Placed[] = [];
    this.tracks = bodies.map((body, i) => {
      const isNew = body !== before[i];
      const own = isNew ? body.parts.map((part) => emptyTrack(part, rows)) : (tracks[i] as readonly Track[]);
      body.parts.forEach((part, j) => {
        const track = own[j] as Track;
        // What goes with the axle alone is seen from it as before, unless the axle is another.
        if (track.steered || !sameAxle) track.isSeen = false;
        if (track.steered) steered.push(new Steered(part, track));
        else if (track.stride > 0 && (isNew || !sameAxle)) settled.push({ part, track });
        else if (track.stride === 0 && isNew) placePart(frontEnd, NO_POSE, part, track, 0);
      });
      return own;
    });
    this.bodies = bodies;
    this.axle = frontEnd.axle;
    return { steered, settled };
  }
}

interface Placed {
  readonly part: BodyPart;
  readonly track: Track;
}

/** What carries parts that the handwheel moves; its motions in the pose that is carried just now, in this order. */
const STEERED: readonly Carrier[] = [
  'pitman',
  'spindle-left',
  'spindle-right',
  'axle-left',
  'axle-right',
  'frame',
  'rocker',
];
const motions = new Float64Array(MOTION_SIZE * STEERED.length);

/** A part that the handwheel moves, ready to be placed in one pose after another. */
class Steered {
  private readonly track: Track;
  private readonly from: Carried;
  private readonly to: Carried;
  private readonly atFrom: number;
  private readonly atTo: number;
  /** Half length, radius and bore of a cylinder or ring. */
  private readonly round: readonly [number, number, number] | undefined;
  private readonly isBall: boolean;
  private readonly stretches: boolean;
  private longest = 0;

  constructor(part: BodyPart, track: Track) {
    const [from, to] = endsOf(part) as readonly [Carried, Carried];
    this.track = track;
    this.from = from;
    this.to = to;
    this.atFrom = MOTION_SIZE * STEERED.indexOf(from.carrier);
    this.atTo = MOTION_SIZE * STEERED.indexOf(to.carrier);
    this.round = part.kind === SEGMENT || part.kind === BOX ? undefined : [part.half, part.outer, part.inner];
    this.isBall = from === to;
    this.stretches = from.carrier !== to.carrier;
    if (!this.stretches && part.kind === SEGMENT) track.reach = distance(from.at, to.at) / 2;
    if (this.round) track.reach = Math.hypot(this.round[0], this.round[1]);
  }

  /** Writes the part's row for a pose from the motions as they stand. */
  place(row: number): void {
    const { track, round } = this;
    const { data } = track;
    const at = row * track.stride;
    carry(this.from.at, this.atFrom, data, at);
    if (this.isBall) {
      data[at + 3] = data[at] as number;
      data[at + 4] = data[at + 1] as number;
      data[at + 5] = data[at + 2] as number;
      return;
    }
    carry(this.to.at, this.atTo, data, at + 3);
    if (!round && !this.stretches) return;
    const x = (data[at + 3] as number) - (data[at] as number);
    const y = (data[at + 4] as number) - (data[at + 1] as number);
    const z = (data[at + 5] as number) - (data[at + 2] as number);
    if (!round) {
      const squared = x * x + y * y + z * z;
      if (squared > this.longest) this.longest = squared;
      return;
    }
    data[at + 3] = x;
    data[at + 4] = y;
    data[at + 5] = z;
    data[at + 6] = round[0];
    data[at + 7] = round[1];
    data[at + 8] = round[2];
  }

  /** A link between two carriers is not of one length in every pose to the last bit: the longest one counts. */
  settleReach(): void {
    if (this.stretches && !this.round)
      this.track.reach = Math.max(this.track.reach, Math.sqrt(this.longest) / 2);
  }
}

/** Writes where a drawn point stands by the motion that begins at `motion`. */
function carry([x, y, z]: Point, motion: number, out: Float64Array, at: number): void {
  for (let row = 0; row < 3; row += 1) {
    const m = motion + 3 * row;
    out[at + row] =
      (motions[m] as number) * x +
      (motions[m + 1] as number) * y +
      (motions[m + 2] as number) * z +
      (motions[motion + 9 + row] as number);
  }
}

/** Where what the frame carries stands, no pose is asked. */
const NO_POSE = createState();

/** Bodies carried once through the grid of travel and turn, as `BodyCarrier` does. */
export function moveBodies(
  frontEnd: FrontEnd,
  bodies: readonly Body[],
  locks: Locks,
  heaves = 31,
  turns = 41,
): BodyTracks {
  return new BodyCarrier(heaves, turns).carry(frontEnd, bodies, locks);
}

/** The pose of a grid's station and turn. */
export function gridPose(grid: Grid, station: number, turn: number): GridPose {
  const [heave, roll] = grid.stations[station] as readonly [number, number];
  return { heave, roll, handwheel: grid.handwheels[turn] as number };
}

/**
 * How far any point of a part moves at most between a pose and each of others, mm; `data` is its numbers in either frame.
 * A capsule's points go with its ends; a cylinder's with its centre, and by its own reach for each radian that its axis
 * turns (its own rotation does not show).
 */
export function displacement(
  { stride, kind, reach, rowOf }: Track,
  data: Float64Array,
  from: number,
  to: readonly number[],
): number {
  const a = (rowOf[from] as number) * stride;
  const x = data[a] as number;
  const y = data[a + 1] as number;
  const z = data[a + 2] as number;
  const u = data[a + 3] as number;
  const v = data[a + 4] as number;
  const w = data[a + 5] as number;
  let mostFirst = 0;
  let mostSecond = 0;
  for (let i = 0; i < to.length; i += 1) {
    const b = (rowOf[to[i] as number] as number) * stride;
    const dx = (data[b] as number) - x;
    const dy = (data[b + 1] as number) - y;
    const dz = (data[b + 2] as number) - z;
    const du = (data[b + 3] as number) - u;
    const dv = (data[b + 4] as number) - v;
    const dw = (data[b + 5] as number) - w;
    const first = dx * dx + dy * dy + dz * dz;
    const second = du * du + dv * dv + dw * dw;
    if (first > mostFirst) mostFirst = first;
    if (second > mostSecond) mostSecond = second;
  }
  return kind === SEGMENT
    ? Math.sqrt(Math.max(mostFirst, mostSecond))
    : Math.sqrt(mostFirst) + reach * Math.sqrt(mostSecond);
}

/**
 * Writes for each of some poses the way that any point of a part has gone at most since the first of them, mm: the sum of
 * what it moves from each to the next, as `displacement` has it.
 */
export function writePath(
  { stride, kind, reach, rowOf }: Track,
  data: Float64Array,
  poses: readonly number[],
  path: Float64Array,
): void {
  let way = 0;
  let a = (rowOf[poses[0] as number] as number) * stride;
  path[0] = 0;
  for (let i = 1; i < poses.length; i += 1) {
    const b = (rowOf[poses[i] as number] as number) * stride;
    if (b !== a) {
      const dx = (data[b] as number) - (data[a] as number);
      const dy = (data[b + 1] as number) - (data[a + 1] as number);
      const dz = (data[b + 2] as number) - (data[a + 2] as number);
      const du = (data[b + 3] as number) - (data[a + 3] as number);
      const dv = (data[b + 4] as number) - (data[a + 4] as number);
      const dw = (data[b + 5] as number) - (data[a + 5] as number);
      const first = dx * dx + dy * dy + dz * dz;
      const second = du * du + dv * dv + dw * dw;
      way +=
        kind === SEGMENT ? Math.sqrt(Math.max(first, second)) : Math.sqrt(first) + reach * Math.sqrt(second);
      a = b;
    }
    path[i] = way;
  }
}
