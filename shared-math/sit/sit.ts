import { distance, type Point } from '../geometry/points.ts';
import { add, subtract } from '../geometry/vectors.ts';
import {
  type Carrier,
  hardpoints,
  type Layout,
  type LayoutDocument,
  originOf,
  type Refusal,
  readLayout,
  resolveLayout,
  SIDES,
  type Side,
  withOrigin,
  withValue,
} from '../layout/index.ts';
import {
  carryPoint,
  createState,
  drawnSpinAxis,
  type FrontEnd,
  type FrontEndState,
  prepareFrontEnd,
  solveFrontEnd,
} from '../linkage/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { type Radians, toDegrees } from '../units/index.ts';

/** How much lower the frame stands over each axle, mm; below 0 higher. */
export interface Lowered {
  readonly front: number;
  readonly rear: number;
}

/** A car as it sits lower or higher than it was drawn. */
export interface SatCar {
  /** Everything at the new ride height: heights above the ground, the frame turned by its rake, wheels straight ahead. */
  readonly document: LayoutDocument;
  /** rad that the frame's nose went down; below 0 up. */
  readonly rake: Radians;
  /** mm that the axle rose toward the frame, and moved to the left in it. */
  readonly heave: number;
  readonly aside: number;
  /** rad that the kingpins' tops went back with axle and frame. */
  readonly casterGained: number;
  /** mm by which the drag link is longer, so that the box stands in its middle with the wheels straight ahead. */
  readonly dragLinkBy: number;
}

/** Why a car cannot sit so: links out of reach, the travel used up, or a document that would be refused. */
export type SitFailure =
  | { readonly kind: 'no-pose' }
  | { readonly kind: 'no-bump' | 'no-droop'; readonly lacks: number }
  | { readonly kind: 'refused'; readonly refusal: Refusal };

/** Coordinates are kept to a millionth of a millimetre, so that going down and up again comes back. */
const tidy = (value: number) => Math.round(value * 1e6) / 1e6 + 0;

/** Rounds of heave and fore-and-aft shift; each brings them a hundred times nearer. */
const ROUNDS = 8;

/** The frame's move in the car's axes of the ground: about the axle's drawn centre, nose down by the rake, then down. */
interface FrameMove {
  readonly rake: Radians;
  readonly about: Point;
  readonly by: Point;
}

function moved({ rake, about, by }: FrameMove, at: Point): Point {
  const [x, y, z] = subtract(at, about);
  const c = Math.cos(rake);
  const s = Math.sin(rake);
  return add(add(about, [c * x + s * z, y, c * z - s * x]), by);
}

const scratch = new Float64Array(3);

/** Spindles stay straight on the axle; what they carry goes with its half. */
const CARRIED_BY: Readonly<Record<Carrier, Carrier>> = {
  frame: 'frame',
  pitman: 'frame',
  rocker: 'rocker',
  'axle-left': 'axle-left',
  'axle-right': 'axle-right',
  'spindle-left': 'axle-left',
  'spindle-right': 'axle-right',
};

/** Toe-in and camber in degrees back from the wheel's spin axis, as `drawnSpinAxis` has it from them. */
function toeAndCamber(side: Side, [x, y, z]: Point): { toeIn: number; camber: number } {
  const inward = side === 'left' ? 1 : -1;
  return {
    toeIn: tidy(toDegrees(Math.atan2(inward * x, y))),
    camber: tidy(toDegrees(Math.asin(Math.max(-1, Math.min(1, -inward * z))))),
  };
}

/** The document with both sides spelled out. */
function spelledOut(document: LayoutDocument): LayoutDocument {
  const { axle, location } = resolveLayout(document);
  return { ...document, axle, location } as LayoutDocument;
}

const alike = (a: unknown, b: unknown): boolean =>
  typeof a === 'number' && typeof b === 'number'
    ? Math.abs(a - b) < 1e-5
    : typeof a === 'object' && typeof b === 'object' && a !== null && b !== null
      ? Object.keys(a).length === Object.keys(b).length &&
        Object.entries(a).every(([key, value]) => alike(value, (b as Record<string, unknown>)[key]))
      : a === b;

/** Sides that are still each other's mirror image are written so where they were before. */
function mirroredAgain(document: LayoutDocument, before: LayoutDocument): LayoutDocument {
  let kept = document;
  for (const part of ['axle', 'location'] as const) {
    const was = before[part];
    if (!('right' in was) || was.right !== 'mirror') continue;
    const mirror = { ...kept, [part]: { ...kept[part], right: 'mirror' } } as LayoutDocument;
    if (alike(resolveLayout(mirror)[part], resolveLayout(kept)[part])) kept = mirror;
  }
  return kept;
}

/** The posed axle under a frame that went down: heave and the frame's move that leave the wheels on the ground. */
function settle(
  frontEnd: FrontEnd,
  { front, rear }: Lowered,
  state: FrontEndState,
): { readonly frame: FrameMove; readonly heave: number } | undefined {
  const { layout, axle } = frontEnd;
  const rake = Math.atan((front - rear) / layout.car.wheelbase) as Radians;
  const [c, s] = [Math.cos(rake), Math.sin(rake)];
  let heave = front / c;
  for (let round = 0; round < ROUNDS; round += 1) {
    if (solveFrontEnd(frontEnd, heave, 0 as Radians, 0 as Radians, state) === 'no-pose') return undefined;
    // The axle's centre in the ground's axes stands where it stood: c h - s x = front.
    heave = (front + s * state.axle.x) / c;
  }
  const by: Point = [-(c * state.axle.x + s * heave), 0, -front];
  return { frame: { rake, about: axle.centre, by }, heave };
}

/**
 * A car whose frame sits lower over its front and rear axle than the document has it: the document at its new ride height.
 * The axle rises toward the frame by what the frame went down over it, on its links and springs; the frame turns nose down by
 * the rake, atan((front - rear)/wheelbase), and all that is bolted to it with it, box, shaft, rails and pivots; the wheels
 * stay on the ground and the origin under the axle. Spindles are left straight on the axle, and the drag link takes the
 * length that this asks with the box in its middle, as a builder sets it.
 * Not taken along, and said so: obstacles that are boxes stay level, as the document has no other; photos stay as they were taken; tyres
 * are taken as round as before; a leaf's arc begins anew from where it sits.
 * Frame:    vehicle, ISO 8855, before and after. Units: mm, rad.
 * Outcomes: `no-pose`; `no-bump` or `no-droop`, with what is lacking; a refusal. The document is not changed.
 * Source:   own derivation.
 * Checked:  tests/unit/sit.test.ts (every frame point moved by a rotation matrix of a registry library; lengths of links;
 *           the solver's own heave; there and back).
 */
export function sat(document: LayoutDocument, lowered: Lowered): Outcome<SatCar, SitFailure> {
  const layout = resolveLayout(document);
  const frontEnd = prepareFrontEnd(layout);
  const state = createState();
  const settled = settle(frontEnd, lowered, state);
  if (!settled) return failed({ kind: 'no-pose' });
  const { frame, heave } = settled;
  const bump = tidy(layout.travel.bump - heave);
  const rebound = tidy(layout.travel.rebound + heave);
  if (bump < 0) return failed({ kind: 'no-bump', lacks: -bump });
  if (rebound < 0) return failed({ kind: 'no-droop', lacks: -rebound });

  const carry = (carrier: Carrier, at: Point): Point => {
    carryPoint(frontEnd, state, CARRIED_BY[carrier], at, scratch);
    return moved(frame, [scratch[0] as number, scratch[1] as number, scratch[2] as number]);
  };
  const direction = (carrier: Carrier, at: Point, way: Point): Point =>
    subtract(carry(carrier, add(at, way)), carry(carrier, at)).map(tidy) as unknown as Point;
  const placed = (carrier: Carrier, at: Point): Point => carry(carrier, at).map(tidy) as unknown as Point;

  let sits = spelledOut(document);
  for (const { id, carrier, at } of hardpoints(document)) sits = withValue(sits, id, placed(carrier, at));
  sits = withDirections(sits, document, layout, direction);
  sits = withBodies(sits, (at) => placed('frame', at));
  sits = withHeights(sits, layout, lowered, (at) => placed('frame', at));
  const before = document.sits ?? { front: 0, rear: 0 };
  const now = { front: tidy(before.front + lowered.front), rear: tidy(before.rear + lowered.rear) };
  const { sits: _, ...rest } = sits;
  const whole = {
    ...rest,
    travel: { ...sits.travel, bump, rebound },
    ...(now.front === 0 && now.rear === 0 ? {} : { sits: now }),
  } as LayoutDocument;
  const read = readLayout(withOrigins(mirroredAgain(whole, document), document));
  if (!read.ok) return failed({ kind: 'refused', refusal: read.failure });
  const after = prepareFrontEnd(resolveLayout(read.value));
  return succeeded({
    document: read.value,
    rake: frame.rake,
    heave,
    aside: state.axle.y,
    casterGained: casterOf(read.value) - casterOf(document),
    dragLinkBy: after.dragLinkLength - frontEnd.dragLinkLength,
  });
}

/** mm. Below this a point has not been moved. */
const MOVED = 1e-4;

/** A point that was measured or placed and moves is planned where it is now; one that is a guess stays one. */
function withOrigins(sits: LayoutDocument, document: LayoutDocument): LayoutDocument {
  const before = new Map(hardpoints(document).map((point) => [point.id, point]));
  let origins: NonNullable<LayoutDocument['origins']> = {};
  for (const point of hardpoints(sits)) {
    const known = before.get(point.id);
    const from = known ? originOf(document, known) : 'guess';
    if (!known || from === 'guess') continue;
    origins = withOrigin(origins, point, distance(known.at, point.at) > MOVED ? 'plan' : from);
  }
  const { origins: _, ...rest } = sits;
  return (Object.keys(origins).length > 0 ? { ...rest, origins } : rest) as LayoutDocument;
}

function casterOf(document: LayoutDocument): number {
  const { kingpinTop, kingpinBottom } = document.axle.left;
  return Math.atan2(kingpinBottom[0] - kingpinTop[0], kingpinTop[2] - kingpinBottom[2]);
}

type Turn = (carrier: Carrier, at: Point, way: Point) => Point;

/** The sector's axis, the shaft's ends, studs, and the wheels' toe and camber, turned with what carries each. */
function withDirections(
  sits: LayoutDocument,
  document: LayoutDocument,
  layout: Layout,
  turn: Turn,
): LayoutDocument {
  const { steering, shaft, axle } = layout;
  let turned = withValue(
    sits,
    'steering.box.sectorAxis',
    turn('frame', steering.box.sectorCentre, steering.box.sectorAxis),
  );
  if (shaft)
    for (const end of ['column', 'box'] as const)
      turned = withValue(turned, `shaft.${end}.axis`, turn('frame', shaft[end].end, shaft[end].axis));
  for (const side of SIDES) {
    const { toeIn, camber, wheelCentre } = axle[side];
    const spin = turn(`axle-${side}`, wheelCentre as Point, drawnSpinAxis(side, { toeIn, camber }));
    for (const [key, value] of Object.entries(toeAndCamber(side, spin)))
      turned = withValue(turned, `axle.${side}.${key}`, value);
  }
  if (!document.studs) return turned;
  const carriers = new Map(hardpoints(document).map(({ id, carrier, at }) => [id, { carrier, at }]));
  const studs = Object.fromEntries(
    Object.entries(document.studs).map(([id, axis]) => {
      const held = carriers.get(id);
      return [id, held ? turn(held.carrier, held.at, axis) : axis];
    }),
  );
  return { ...turned, studs };
}

/** Rails and obstacles, which are bolted to the frame; a box stays level. */
function withBodies(sits: LayoutDocument, placed: (at: Point) => Point): LayoutDocument {
  return {
    ...sits,
    rails: sits.rails.map((rail) => ({ ...rail, path: rail.path.map(placed) })),
    obstacles: sits.obstacles.map((obstacle) =>
      obstacle.kind === 'box'
        ? { ...obstacle, centre: placed(obstacle.centre) }
        : { ...obstacle, from: placed(obstacle.from), to: placed(obstacle.to) },
    ),
  };
}

/** Heights of the document that are no points: of a spring that centres the axle, of the centres of mass. */
function withHeights(
  sits: LayoutDocument,
  layout: Layout,
  lowered: Lowered,
  placed: (at: Point) => Point,
): LayoutDocument {
  const { lateral, braking, ride, axle, car } = layout;
  let lower = sits;
  const ahead = (axle.left.wheelCentre[0] + axle.right.wheelCentre[0]) / 2;
  if (lateral.kind === 'spring' && lateral.height !== undefined)
    lower = withValue(lower, 'lateral.height', placed([ahead, 0, lateral.height])[2]);
  if (braking?.gravityHeight !== undefined) {
    // The whole car's middle stands (1 - front share) of the wheelbase behind the front axle.
    const back = (1 - (braking.frontShare ?? 0.5)) * car.wheelbase;
    const down = lowered.front + ((lowered.rear - lowered.front) * back) / car.wheelbase;
    lower = withValue(lower, 'braking.gravityHeight', tidy(Math.max(1, braking.gravityHeight - down)));
  }
  if (ride?.sprungHeight !== undefined)
    lower = withValue(lower, 'ride.sprungHeight', tidy(Math.max(1, ride.sprungHeight - lowered.front)));
  return lower;
}
