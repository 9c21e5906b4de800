import { findAim, holdTravel } from '../aim/index.ts';
import { analyse, bestHeight } from '../findings/index.ts';
import type { Point } from '../geometry/points.ts';
import { add, scaled, subtract, unit } from '../geometry/vectors.ts';
import {
  driverSideOf,
  inTheMirror,
  type Layout,
  type LayoutDocument,
  readLayout,
  resolveLayout,
  steeringSide,
  withInputTrue,
  withShaftAtBox,
  withSteeringMirrored,
} from '../layout/index.ts';
import { prepareFrontEnd } from '../linkage/index.ts';
import { lockAngles, turningCircle, turnsLockToLock } from '../sweep/index.ts';
import { toDegrees } from '../units/index.ts';

/** What the person knows of the car beside the drawing. */
export interface CarFacts {
  /** mm, outside to outside of the rails beside the axle. */
  readonly frameWidth: number;
  /** Whether the engine stands where a box or drag link behind the axle would be. */
  readonly engineFillsFrame: boolean;
  readonly driven: 'town' | 'open-road' | 'show';
}

export type ArrangementName = 'side-manual' | 'side-assisted' | 'cross-manual' | 'cross-assisted';

/** What a proposed arrangement measures. Degrees, mm, N; undefined if the linkage does not turn or reach. */
export interface ArrangementFigures {
  readonly worstBumpSteer: number;
  /** With each wheel anywhere in its own travel; undefined if that is not reached everywhere. */
  readonly oneWheel: number | undefined;
  /** Degrees of steer for each degree of roll; above 0 is understeer. */
  readonly rollSteer: number;
  /** Degrees by which a hard stop steers the wheels by itself, a positive size; undefined if that is not reached. */
  readonly brakeSteer: number | undefined;
  readonly overallRatio: number;
  readonly turnsLockToLock: number;
  readonly innerLock: number;
  readonly circleBetweenKerbs: number;
  /** At the rim, without assistance. */
  readonly rimForce: number;
  /** At the worst on the way to lock. */
  readonly rimForceMost: number;
}

export interface Arrangement {
  readonly name: ArrangementName;
  readonly title: string;
  readonly document: LayoutDocument;
  readonly figures: ArrangementFigures | undefined;
  /** Plain sentences for and against; the choice is the person's. */
  readonly reasons: readonly string[];
}

/** Usual arms and ratios; common practice, no published source. */
const ARM = 146;
const PITMAN_ARM = 140;
const RATIO = { manual: 16, assisted: 14 } as const;
/** mm. How far a box stands off its rail: half its body and the mounting plate. */
const BOX_OFF_RAIL = 80;
/** mm. How far inside the frame's width a pitman arm hangs that swings across the car: its rail, its swing and some air. */
const ARM_INSIDE_FRAME = 160;
/** mm above the wheel centres, and above a leaf that is crossed, at which a drag link runs across the car. */
const LINK_ABOVE = { wheels: 25, leaf: 76 } as const;
/** mm from the axle at which a lateral bar runs, and from the kingpin at which it begins: clear of the steering arm. */
const BAR = { fromAxle: 72, inboard: { besideLink: 140, acrossAxle: 60 } } as const;
/** Degrees; of a car whose axle has no stops yet. */
const STOP_ANGLE = 35;

function stopOf({ steering }: LayoutDocument): number {
  return steering.stopAngle ?? STOP_ANGLE;
}

function kingpinAt(layout: Layout, side: 'left' | 'right', z: number): Point {
  const { kingpinTop: top, kingpinBottom: bottom } = layout.axle[side];
  const share = (z - bottom[2]) / (top[2] - bottom[2]);
  return [bottom[0] + share * (top[0] - bottom[0]), bottom[1] + share * (top[1] - bottom[1]), z];
}

/** How a box is laid: its sector shaft's direction, and from the pitman ball to its centre, mm. */
interface Mounting {
  readonly axis: Point;
  readonly centre: Point;
}

/** Beside the rail: the sector shaft lies across the car and the arm hangs. */
const BESIDE_RAIL: Mounting = { axis: [0, -1, 0], centre: [0, 0, PITMAN_ARM] };

/** mm along the sector shaft from the arm to the middle of a box that stands on it. */
const BOX_ABOVE_ARM = 62;

/**
 * Between rail and engine: the sector shaft stands nearly upright, square to an input that runs back and a little up to
 * the driver, and the arm lies flat, ahead of the box where that stands behind the axle and back from it where it stands
 * ahead. A sector shaft along the car would want its input from above or from the side.
 */
function upright(ahead: 1 | -1): Mounting {
  const up = unit([1, 0, 4]);
  const arm = scaled(unit([4, 0, -1]), -ahead);
  return {
    axis: [-1, 0, -4],
    centre: subtract(scaled(up, BOX_ABOVE_ARM), scaled(arm, PITMAN_ARM)),
  };
}

function boxAt(ball: Point, { axis, centre }: Mounting, ratio: number, assist: 'manual' | 'power') {
  return {
    sectorCentre: add(ball, centre),
    sectorAxis: axis,
    pitmanBall: ball,
    ratio,
    sectorTravel: 35,
    assist,
  };
}

/** With the pitman ball at its best height, the sector's axis turned so that left steers left. */
function settled(document: LayoutDocument, mounting: Mounting): LayoutDocument {
  const frontEnd = prepareFrontEnd(resolveLayout(document));
  const travel = holdTravel(frontEnd);
  const { steering } = document;
  const { pitmanBall, sectorAxis } = steering.box;
  const ball = travel.status === 'ok' ? bestHeight(travel, pitmanBall).to : pitmanBall;
  const placed = {
    ...document,
    steering: {
      ...steering,
      box: {
        ...steering.box,
        pitmanBall: ball,
        sectorCentre: add(ball, mounting.centre),
      },
    },
  };
  const { turn } = analyse(resolveLayout(placed));
  if (turn.status !== 'ok' || turn.count === 0 || turn.straightRatio > 0) return placed;
  const axis: Point = [0 - sectorAxis[0], 0 - sectorAxis[1], 0 - sectorAxis[2]];
  return { ...placed, steering: { ...placed.steering, box: { ...placed.steering.box, sectorAxis: axis } } };
}

/** Side steer: the pitman ball outside the left rail, near the aim and within the run of a cowl-mounted box. */
function sideSteer(document: LayoutDocument, facts: CarFacts, assist: 'manual' | 'assisted'): LayoutDocument {
  const layout = resolveLayout(document);
  const height = layout.axle.left.kingpinTop[2];
  const kingpin = kingpinAt(layout, 'left', height);
  const ball: Point = [kingpin[0], kingpin[1] - ARM, height];
  const y = facts.frameWidth / 2 + BOX_OFF_RAIL;
  const steering = {
    dragLinkTo: 'left' as const,
    dragLinkBall: ball,
    box: boxAt([-750, y, height], BESIDE_RAIL, RATIO[assist], assist === 'manual' ? 'manual' : 'power'),
    stopAngle: stopOf(document),
  };
  const draft: LayoutDocument = { ...document, steering };
  const aim = findAim(prepareFrontEnd(resolveLayout(draft)));
  const nearest = facts.engineFillsFrame ? -700 : -450;
  const wanted = aim.ok ? aim.value.point[0] : -750;
  const x = Math.min(nearest, Math.max(-1000, wanted));
  const z = aim.ok
    ? ball[2] + ((x - ball[0]) * (aim.value.point[2] - ball[2])) / (aim.value.point[0] - ball[0])
    : height;
  return settled(
    { ...draft, steering: { ...steering, box: { ...steering.box, pitmanBall: [x, y, z] } } },
    BESIDE_RAIL,
  );
}

/** Cross steer: the box on the left rail, the drag link over to the right wheel beside a lateral bar of its length. */
function crossSteer(
  document: LayoutDocument,
  facts: CarFacts,
  assist: 'manual' | 'assisted',
): LayoutDocument {
  const layout = resolveLayout(document);
  const ahead = facts.engineFillsFrame ? 1 : -1;
  const mounting = upright(ahead);
  const { wheelCentre } = layout.axle.right;
  const leaf = layout.location.kind === 'parallel-leaf' ? layout.location.right : undefined;
  const overLeaf = leaf ? leaf.seat[2] + LINK_ABOVE.leaf : 0;
  const height = Math.max(wheelCentre[2] + LINK_ABOVE.wheels, overLeaf);
  const kingpin = kingpinAt(layout, 'right', height);
  const ball: Point = [kingpin[0] + ahead * ARM, kingpin[1], height];
  const pitman: Point = [ball[0], facts.frameWidth / 2 - ARM_INSIDE_FRAME, height + 8];
  // Beside the link, which its arc then matches; between leaves there is room for it only across the axle.
  const x = (leaf ? -ahead : ahead) * BAR.fromAxle;
  const y = kingpin[1] + BAR.inboard[leaf ? 'acrossAxle' : 'besideLink'];
  const bar = {
    kind: 'bar' as const,
    axle: [x, y, height] as Point,
    frame: [x, y + (pitman[1] - ball[1]), height + 8] as Point,
  };
  const steering = {
    dragLinkTo: 'right' as const,
    dragLinkBall: ball,
    box: boxAt(pitman, mounting, RATIO[assist] + 2, assist === 'manual' ? 'manual' : 'power'),
    stopAngle: stopOf(document),
  };
  return settled({ ...document, lateral: bar, steering }, mounting);
}

function measure(document: LayoutDocument): ArrangementFigures | undefined {
  const analysis = analyse(resolveLayout(document));
  const { turn, effort, layout, heaveSummary, rollSummary, oneWheel, braking } = analysis;
  if (turn.status !== 'ok' || !effort) return undefined;
  const locks = [turn.left, turn.right];
  const circles = locks.map((lock) => turningCircle(layout, lock)?.betweenKerbs ?? 0);
  return {
    worstBumpSteer: toDegrees(heaveSummary.worstBumpSteer),
    oneWheel: oneWheel.status === 'ok' ? toDegrees(oneWheel.worst) : undefined,
    rollSteer: rollSummary.slopeAtRide,
    brakeSteer: braking && toDegrees(Math.abs(braking.hard.brakeSteer)),
    overallRatio: Math.abs(turn.straightRatio),
    turnsLockToLock: turnsLockToLock(turn),
    innerLock: toDegrees(Math.min(...locks.map((lock) => lockAngles(layout, lock).inner))),
    circleBetweenKerbs: Math.max(...circles),
    rimForce: effort.centre.rimForce,
    rimForceMost: effort.worst.rimForce,
  };
}

function reasonsFor(name: ArrangementName, document: LayoutDocument, facts: CarFacts): string[] {
  const reasons: string[] = [];
  if (name.startsWith('side')) {
    reasons.push(
      'Fits a light front end, and a frame with no room across it: the drag link lies outside, along the rail, in plain sight.',
    );
    if (document.location.kind === 'parallel-leaf' && document.location.left.fixedEye[0] > 0)
      reasons.push(
        'The leaves are fixed in front and the box stands behind the axle: they swing against each other, and no height of the box evens that out.',
      );
    if (document.location.kind === 'parallel-leaf')
      reasons.push(
        'Under braking the leaves let the axle wind up, and a drag link along the rail steers the wheels with it, unless its ball stands at the height of the spring seats.',
      );
    if (document.car.frontAxleLoad > 6500)
      reasons.push('Heavy on the front axle for a side box and its rail.');
    if (facts.engineFillsFrame) reasons.push('Keeps clear of an engine that fills the frame.');
  } else {
    reasons.push(
      'A lateral bar as long as the drag link, laid beside it, moves the axle across as the link does: little is left to steer the wheels over bumps.',
    );
    if (document.location.kind === 'parallel-leaf')
      reasons.push(
        'A link across the car hardly feels the axle wind up under braking. The caster that goes with it is lost all the same.',
      );
    if (facts.engineFillsFrame)
      reasons.push(
        'The engine stands behind the axle: box and drag link are laid ahead of it; check the fan and the crank.',
      );
  }
  if (name.endsWith('assisted')) {
    reasons.push('Light to park. If the pump stops, the driver has to find the whole effort.');
  } else {
    reasons.push('Nothing to fail but the parts themselves; a slower box keeps it light.');
    if (facts.driven === 'town') reasons.push('Driven in town it is parked often: weigh the effort.');
  }
  if (facts.driven === 'open-road')
    reasons.push('Driven far and fast: bump steer and roll steer weigh most.');
  return reasons;
}

const TITLES: Record<ArrangementName, string> = {
  'side-manual': 'Side steer, manual',
  'side-assisted': 'Side steer, assisted',
  'cross-manual': 'Cross steer, manual',
  'cross-assisted': 'Cross steer, assisted',
};

/** Laid on the left by the two above, on the driver's side by this: a car of the other hand is laid in the mirror. */
function laid(document: LayoutDocument, facts: CarFacts, name: ArrangementName): LayoutDocument {
  const assist = name.endsWith('assisted') ? 'assisted' : 'manual';
  const lay = name.startsWith('side') ? sideSteer : crossSteer;
  const side = driverSideOf(document);
  // What stays of the steering, the shaft and a bar, is on the driver's side before anything is laid beside it.
  const own = steeringSide(document) === side ? document : withSteeringMirrored(document);
  const placed =
    side === 'left' ? lay(own, facts, assist) : inTheMirror(lay(inTheMirror(own), facts, assist));
  // The shaft's box end goes along with the box that it is bolted to; how it gets there is another decision.
  const reached = withShaftAtBox(placed, own.steering.box.sectorCentre);
  return withInputTrue(reached) ?? reached;
}

/**
 * Side steer and cross steer, manual and assisted, laid on one car with usual arms and ratios, each pitman ball at its
 * best height, on the side where the driver sits, and measured alike. Positions are common practice, no published source: a place to begin, not an answer.
 * Units: facts in mm; figures in degrees, mm, N. Outcomes: four arrangements, without figures where one does not steer.
 */
export function proposeArrangements(document: LayoutDocument, facts: CarFacts): Arrangement[] {
  return (Object.keys(TITLES) as ArrangementName[]).map((name) => {
    const titled: LayoutDocument = { ...laid(document, facts, name), name: TITLES[name], notes: '' };
    const read = readLayout(titled);
    return {
      name,
      title: TITLES[name],
      document: titled,
      figures: read.ok ? measure(titled) : undefined,
      reasons: reasonsFor(name, document, facts),
    };
  });
}
