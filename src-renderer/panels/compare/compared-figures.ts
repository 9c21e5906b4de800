import { JUDGED_GRIP, leastCaster } from '../../../shared-math/brake/index.ts';
import { toeLength, turnsLockToLock } from '../../../shared-math/sweep/index.ts';
import {
  decimalBeside,
  degreesBeside,
  formatForce,
  formatRimForce,
  formatSpan,
  formatToeLength,
  type LengthStyle,
  lengthBeside,
  MM_PER_INCH,
  toDegrees,
  toRadians,
} from '../../../shared-math/units/index.ts';
import type { SweptVariant } from './swept-variant.ts';

/** One figure that variants are held against each other by. */
export interface ComparedFigure {
  readonly what: string;
  /** What it is reported for or in, where the figure alone does not say. */
  readonly aside?: (style: LengthStyle) => string;
  /** rad, mm, N; undefined if the variant has none. */
  readonly of: (variant: SweptVariant) => number | undefined;
  readonly words: (value: number, style: LengthStyle) => string;
}

const degrees =
  (decimals: number) =>
  (radians: number): string =>
    degreesBeside(toDegrees(radians), [0], decimals);

/** Sixteenths are too coarse to tell lengths apart by. */
const fine = (style: LengthStyle): LengthStyle =>
  style.fraction === 16 ? { ...style, fraction: 32 } : style;
const length = (mm: number, style: LengthStyle) => lengthBeside(mm, [0], fine(style));

/** mm that a slope is reported over. */
const slopePer = ({ unit }: LengthStyle) => (unit === 'in' ? MM_PER_INCH : 25);

/** Handwheel over wheels, straight ahead. */
function straightRatio({ turn }: SweptVariant): number | undefined {
  return turn && Number.isFinite(turn.straightRatio) ? Math.abs(turn.straightRatio) : undefined;
}

/** The wider of the two turns. */
function widestCircle({ locks }: SweptVariant): number | undefined {
  const circles = locks.flatMap(({ circle }) => circle?.betweenKerbs ?? []);
  return circles.length > 0 ? Math.max(...circles) : undefined;
}

/** Total toe-in as drawn, over the tyres' diameter. */
function drawnToe({ layout }: SweptVariant): number {
  const { left, right } = layout.axle;
  const over = (degreesIn: number) => toeLength(toRadians(degreesIn), layout.car.tyreRadius);
  return over(left.toeIn) + over(right.toeIn);
}

const FIGURES = {
  worstBumpSteer: {
    what: 'Worst bump steer',
    of: ({ heave }) => (heave.okCount > 0 ? heave.worstBumpSteer : undefined),
    words: degrees(2),
  },
  oneWheel: {
    what: 'One wheel over a bump',
    of: ({ oneWheel }) => (oneWheel.status === 'ok' ? oneWheel.worst : undefined),
    words: degrees(2),
  },
  /** rad per mm, signed. */
  slope: {
    what: 'Bump steer slope',
    aside: ({ unit }) => (unit === 'in' ? 'per inch' : 'per 25 mm'),
    of: ({ heave }) => (heave.okCount > 1 ? heave.slopeAtRide : undefined),
    words: (slope, style) => degreesBeside(toDegrees(slope) * slopePer(style), [0], 2),
  },
  /** rad of steer for each rad of roll, signed: above 0 is understeer. */
  rollSteer: {
    what: 'Roll steer',
    aside: () => 'per degree of roll',
    of: ({ roll }) => (roll.okCount > 1 ? roll.slopeAtRide : undefined),
    words: (slope) => degreesBeside(slope, [0], 3),
  },
  casterBraked: {
    what: 'Caster under braking',
    aside: () => `at ${JUDGED_GRIP} g`,
    of: ({ braking }) => braking && leastCaster(braking.hard),
    words: degrees(1),
  },
  /** rad, signed as the wheels are. */
  brakeSteer: {
    what: 'Steer by braking',
    aside: () => `at ${JUDGED_GRIP} g, handwheel held`,
    of: ({ braking }) => braking?.hard.brakeSteer,
    words: degrees(2),
  },
  ratio: {
    what: 'Overall ratio',
    of: straightRatio,
    words: (ratio) => `${decimalBeside(ratio, [0], 1)} : 1`,
  },
  turns: {
    what: 'Lock to lock',
    of: ({ turn }) => turn && turnsLockToLock(turn),
    words: (turns) => `${decimalBeside(turns, [0], 2)} turns`,
  },
  leftLock: { what: 'Inner wheel, left lock', of: ({ locks }) => locks[0]?.inner, words: degrees(1) },
  rightLock: { what: 'Inner wheel, right lock', of: ({ locks }) => locks[1]?.inner, words: degrees(1) },
  circle: {
    what: 'Circle between kerbs',
    of: widestCircle,
    words: (mm, { unit }) => formatSpan(mm, unit),
  },
  rimForce: {
    what: 'Parking at the rim',
    aside: () => 'manual, straight ahead',
    of: ({ effort }) => effort?.centre.rimForce,
    words: (newtons, { unit }) => formatRimForce(newtons, unit),
  },
  rimForceMost: {
    what: 'Parking, most on the way to lock',
    aside: () => 'manual',
    of: ({ effort }) => effort?.worst.rimForce,
    words: (newtons, { unit }) => formatRimForce(newtons, unit),
  },
  parkedDragLink: {
    what: 'Drag link, parked',
    aside: () => 'most on the way to lock, dry floor',
    of: ({ parkedDragLink }) => parkedDragLink,
    words: (newtons, { unit }) => formatForce(newtons, unit),
  },
  toe: {
    what: 'Total toe-in',
    aside: () => 'front to rear of the tyres',
    of: drawnToe,
    words: (mm, { unit }) => formatToeLength(mm, unit),
  },
  dragLink: { what: 'Drag link', of: ({ links }) => links.dragLink, words: length },
  pitmanArm: { what: 'Pitman arm', of: ({ links }) => links.pitmanArm, words: length },
  steeringArm: { what: 'Steering arm', of: ({ links }) => links.steeringArm, words: length },
  tieRod: { what: 'Tie rod', of: ({ links }) => links.tieRod, words: length },
} as const satisfies Record<string, ComparedFigure>;

export type FigureName = keyof typeof FIGURES;

/** The figures of the comparison in the order of their weight. A new one is one entry in the table above. */
export const COMPARED_FIGURES: Readonly<Record<FigureName, ComparedFigure>> = FIGURES;

export function figureNames(): readonly FigureName[] {
  return Object.keys(COMPARED_FIGURES) as FigureName[];
}
