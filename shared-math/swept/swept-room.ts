import { type Drawing, drawLayout, type Part } from '../drawing/index.ts';
import type { Point } from '../geometry/points.ts';
import type { Carrier } from '../layout/index.ts';
import {
  carryPoint,
  createState,
  type FrontEnd,
  type FrontEndState,
  poseAxle,
  steerAxle,
} from '../linkage/index.ts';
import { evenly } from '../sweep/index.ts';
import { toRadians } from '../units/index.ts';

/** What can be asked for the room that it needs. */
export const SWEPT_PARTS = ['tyre', 'drag-link', 'tie-rod'] as const;
export type SweptPart = (typeof SWEPT_PARTS)[number];

/** Which parts of the drawing each is; their bodies alone, not what is drawn inside them. */
const DRAWN: Record<SweptPart, readonly string[]> = {
  tyre: ['tyre-left', 'tyre-right'],
  'drag-link': ['drag-link'],
  'tie-rod': ['tie-rod'],
};

/** Handwheel angles at the ends of the turn, rad. */
export interface TurnEnds {
  readonly right: number;
  readonly left: number;
}

/** How finely travel and turn are gone through: steps from droop to bump, to full roll each way, and from lock to lock. */
export interface SweptSteps {
  readonly heaves: number;
  readonly rolls: number;
  readonly turns: number;
}
export const COARSE_SWEEP: SweptSteps = { heaves: 4, rolls: 1, turns: 14 };
export const FINE_SWEEP: SweptSteps = { heaves: 12, rolls: 2, turns: 48 };

/** Numbers of a disc in a pose: its centre, its axis (length 1, or none of a ball), its radius and its rounding. */
export const DISC_SIZE = 8;

/**
 * The room that a part needs over travel and turn, in space: for each two neighbouring heaves the convex hull of the part in
 * both, so that what lies between them is covered too. mm, vehicle axes.
 */
export interface SweptRoom {
  readonly part: SweptPart;
  /** Each of the part's convex bodies: how many discs it has. They follow one another in a pose. */
  readonly bodies: readonly number[];
  /** For each pose all discs of all bodies, `DISC_SIZE` numbers each. */
  readonly discs: Float64Array;
  readonly poses: number;
  /** Two pose numbers for each hull: of one heave and the next; the same twice where only one of them is in reach. */
  readonly hulls: Int32Array;
}

export interface SweptRooms {
  readonly rooms: readonly SweptRoom[];
  /** Poses of the grid that were solved, and that are out of reach: of those no room is known. */
  readonly reached: number;
  readonly outOfReach: number;
}

interface CarriedDisc {
  readonly carrier: Carrier;
  readonly at: Point;
  readonly tip: Point;
  readonly tipCarrier: Carrier;
  readonly radius: number;
  readonly round: number;
}

/** The discs of a part's bodies, body for body. */
function discsOf(drawing: Drawing, parts: readonly Part[]): CarriedDisc[][] {
  return parts.flatMap(({ shapes }) =>
    shapes.flatMap((shape) => {
      if (shape.kind !== 'body' || shape.ink !== 'outline') return [];
      return [
        shape.discs.map(({ at, tip, radius, round }) => {
          const [centre, end] = [drawing.points[at], drawing.points[tip]];
          if (!centre || !end || !('carrier' in centre) || !('carrier' in end))
            throw new Error('a part whose room is asked for is carried by more than one part of the car');
          return {
            carrier: centre.carrier,
            at: centre.at,
            tip: end.at,
            tipCarrier: end.carrier,
            radius,
            round,
          };
        }),
      ];
    }),
  );
}

const tip = new Float64Array(3);

/** Writes a disc's numbers where the state's pose puts it. */
function placeDisc(
  frontEnd: FrontEnd,
  state: FrontEndState,
  disc: CarriedDisc,
  out: Float64Array,
  to: number,
): void {
  carryPoint(frontEnd, state, disc.carrier, disc.at, out, to);
  carryPoint(frontEnd, state, disc.tipCarrier, disc.tip, tip);
  const x = (tip[0] as number) - (out[to] as number);
  const y = (tip[1] as number) - (out[to + 1] as number);
  const z = (tip[2] as number) - (out[to + 2] as number);
  // A ball has no axis, and needs none.
  const length = Math.sqrt(x * x + y * y + z * z) || 1;
  out[to + 3] = x / length;
  out[to + 4] = y / length;
  out[to + 5] = z / length;
  out[to + 6] = disc.radius;
  out[to + 7] = disc.round;
}

/** Levels of heave and of roll, droop and left-hand roll first; one level where there is no travel. */
function levelsOf(frontEnd: FrontEnd, steps: SweptSteps): { heaves: Float64Array; rolls: Float64Array } {
  const { bump, rebound: droop, roll } = frontEnd.layout.travel;
  const full = toRadians(roll);
  return {
    heaves: bump + droop > 0 ? evenly(-droop, bump, steps.heaves + 1) : new Float64Array(1),
    rolls: full > 0 ? evenly(-full, full, 2 * steps.rolls + 1) : new Float64Array(1),
  };
}

/**
 * The room that parts need: carried through all heaves from droop to bump, each level and rolled as far as the layout
 * rolls either way, each from lock to lock. A generator that yields after each station of heave and roll, so that it can be
 * called off. Locks are those at ride height.
 * Frame:    vehicle. Units: mm, rad.
 * From one heave to the next a part moves nearly without turning, so that the hull of both stands for its way. Roll and the
 * handwheel turn it, and the hull of two crossing rods would cover what neither does: there the steps are fine instead, and what
 * lies between two of them stays uncovered by s² / 8r, for a step of s mm of an end that is rounded by r mm. In the fine steps, of
 * an arm of 150 mm turned by 1.5° and a rod of 11 mm, that is 0.2 mm.
 * Outcomes: poses out of reach are counted and leave no room; with no pose at all there are no hulls.
 * Checked:  tests/unit/swept/room-outlines.test.ts (poses between those of the grid, by the whole car's drawing).
 */
export function* sweepRooms(
  frontEnd: FrontEnd,
  parts: readonly SweptPart[],
  ends: TurnEnds,
  steps: SweptSteps = FINE_SWEEP,
): Generator<undefined, SweptRooms> {
  const drawing = drawLayout(frontEnd.layout);
  const bodiesOf = parts.map((part) =>
    discsOf(
      drawing,
      drawing.parts.filter(({ id }) => DRAWN[part].includes(id)),
    ),
  );
  const { heaves, rolls } = levelsOf(frontEnd, steps);
  const turns = evenly(ends.right, ends.left, steps.turns + 1);
  const count = heaves.length * rolls.length * turns.length;
  const poseAt = new Int32Array(count).fill(-1);
  const flat = bodiesOf.map((bodies) => bodies.flat());
  const discs = flat.map((carried) => new Float64Array(count * carried.length * DISC_SIZE));
  const state = createState();
  let poses = 0;
  for (let i = 0; i < heaves.length; i += 1)
    for (let j = 0; j < rolls.length; j += 1) {
      if (poseAxle(frontEnd, heaves[i] as number, rolls[j] as number, state))
        for (let k = 0; k < turns.length; k += 1) {
          if (steerAxle(frontEnd, turns[k] as number, state) !== 'ok') continue;
          flat.forEach((carried, part) => {
            const out = discs[part] as Float64Array;
            let to = poses * carried.length * DISC_SIZE;
            for (const disc of carried) {
              placeDisc(frontEnd, state, disc, out, to);
              to += DISC_SIZE;
            }
          });
          poseAt[(i * rolls.length + j) * turns.length + k] = poses;
          poses += 1;
        }
      yield undefined;
    }

  const hulls: number[] = [];
  const stride = rolls.length * turns.length;
  for (let i = 0; i < Math.max(1, heaves.length - 1); i += 1)
    for (let k = 0; k < stride; k += 1) {
      const from = poseAt[i * stride + k] as number;
      const to = poseAt[Math.min(i + 1, heaves.length - 1) * stride + k] as number;
      if (from >= 0 || to >= 0) hulls.push(from >= 0 ? from : to, to >= 0 ? to : from);
    }
  const numbered = Int32Array.from(hulls);
  return {
    rooms: parts.map((part, i) => ({
      part,
      bodies: (bodiesOf[i] as CarriedDisc[][]).map((body) => body.length),
      discs: discs[i] as Float64Array,
      poses,
      hulls: numbered,
    })),
    reached: poses,
    outOfReach: count - poses,
  };
}
