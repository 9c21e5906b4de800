import { type JointLimits, LONGEST_SPAN, USUAL_JOINT_DEGREES } from '../shaft/index.ts';
import { toRadians } from '../units/index.ts';

/** How a limit's figure is shown. Angles in degrees, lengths in mm, forces in N. */
export type LimitUnit = 'degrees' | 'degrees-per-inch' | 'length' | 'force' | 'ratio' | 'turns' | 'share';

/** What limits are about, in the order in which a front end is laid out. */
export const LIMIT_GROUPS = [
  'Bump and roll',
  'Links and balls',
  'Turn',
  'Room',
  'Caster and toe',
  'Braking',
  'Steering shaft',
  'Effort',
] as const;

/** A limit that a rule holds a layout to: a usual figure that each shop may change for its own. */
export interface LimitKind {
  readonly words: string;
  readonly group: (typeof LIMIT_GROUPS)[number];
  /** What to know before setting it, where there is something. */
  readonly hint?: string;
  readonly usual: number;
  /** What a shop may set it to, in its unit: wide enough for any car, narrow enough to catch a slip of the hand. */
  readonly range: readonly [least: number, most: number];
  readonly unit: LimitUnit;
  readonly source: string;
}

const PRACTICE = 'common practice, no published source';

const USUAL_LIMITS = {
  bumpSteerWorst: {
    words: 'Bump steer over the travel, at most',
    group: 'Bump and roll',
    usual: 0.5,
    range: [0.01, 20],
    unit: 'degrees',
    source: PRACTICE,
  },
  bumpSteerSlope: {
    words: 'Bump steer slope at ride height, at most',
    group: 'Bump and roll',
    usual: 0.25,
    range: [0.01, 10],
    unit: 'degrees-per-inch',
    source: PRACTICE,
  },
  rollOversteer: {
    words: 'Roll steer into the turn for each degree of roll, at most',
    group: 'Bump and roll',
    usual: 0.1,
    range: [0, 2],
    unit: 'degrees',
    source: PRACTICE,
  },
  toeLeast: {
    hint: 'Total of both wheels, over the tyre’s diameter.',
    words: 'Total toe-in front to rear of the tyres, at least',
    group: 'Caster and toe',
    usual: 0.8,
    range: [-25, 25],
    unit: 'length',
    source: PRACTICE,
  },
  toeMost: {
    words: 'Total toe-in front to rear of the tyres, at most',
    group: 'Caster and toe',
    usual: 3.2,
    range: [-25, 25],
    unit: 'length',
    source: PRACTICE,
  },
  casterLeast: {
    words: 'Caster, at least',
    group: 'Caster and toe',
    usual: 4,
    range: [-10, 20],
    unit: 'degrees',
    source: PRACTICE,
  },
  casterMost: {
    words: 'Caster, at most',
    group: 'Caster and toe',
    usual: 8,
    range: [-10, 20],
    unit: 'degrees',
    source: PRACTICE,
  },
  casterChange: {
    words: 'Caster change over the travel, at most',
    group: 'Caster and toe',
    usual: 5,
    range: [0.1, 30],
    unit: 'degrees',
    source: PRACTICE,
  },
  casterBrakedLeast: {
    words: 'Caster in a hard stop, at least',
    group: 'Braking',
    hint: 'Braked at 0.7 g: leaf springs let the axle wind up, and its caster goes.',
    usual: 1,
    range: [-5, 10],
    unit: 'degrees',
    source: PRACTICE,
  },
  brakeSteer: {
    words: 'Brake steer in a hard stop, at most',
    group: 'Braking',
    usual: 0.5,
    range: [0.01, 20],
    unit: 'degrees',
    source: PRACTICE,
  },
  bind: {
    words: 'Bind in the links, at most',
    group: 'Links and balls',
    usual: 1,
    range: [0.1, 50],
    unit: 'length',
    source: PRACTICE,
  },
  beamTwist: {
    words: 'Twist asked of an I-beam in full roll, at most',
    group: 'Links and balls',
    usual: 4,
    range: [0.1, 30],
    unit: 'degrees',
    source: PRACTICE,
  },
  barLinkAngle: {
    words: 'Angle between lateral bar and drag link in the front view, at most',
    group: 'Links and balls',
    usual: 2,
    range: [0.1, 45],
    unit: 'degrees',
    source: PRACTICE,
  },
  barLinkLength: {
    words: 'Difference in length of lateral bar and drag link, at most',
    group: 'Links and balls',
    usual: 0.1,
    range: [0.01, 1],
    unit: 'share',
    source: PRACTICE,
  },
  aimHeight: {
    words: 'Frame end of the drag link off the zero-slope line, at most',
    group: 'Bump and roll',
    usual: 12.7,
    range: [0.5, 200],
    unit: 'length',
    source: PRACTICE,
  },
  transmissionLeast: {
    words: 'Angle between drag link and arm, at least',
    group: 'Links and balls',
    usual: 40,
    range: [5, 85],
    unit: 'degrees',
    source: 'Norton, Design of Machinery, ch. 2 (from memory)',
  },
  ballTilt: {
    hint: 'Type the figure of the maker of your balls and rod ends.',
    words: 'Tilt of a ball or rod end, at most',
    group: 'Links and balls',
    usual: 25,
    range: [1, 60],
    unit: 'degrees',
    source: 'common practice, no published source; the maker’s figure rules',
  },
  linkMarginLeast: {
    hint: 'A rough bound: knocks from the road, fatigue, threads and welds are not in it.',
    words: 'Strength of a link over its load, at least',
    group: 'Links and balls',
    usual: 3,
    range: [1, 20],
    unit: 'ratio',
    source: PRACTICE,
  },
  ratioLeast: {
    words: 'Overall ratio, at least',
    group: 'Turn',
    usual: 12,
    range: [1, 60],
    unit: 'ratio',
    source: PRACTICE,
  },
  ratioMost: {
    words: 'Overall ratio, at most',
    group: 'Turn',
    usual: 24,
    range: [1, 60],
    unit: 'ratio',
    source: PRACTICE,
  },
  turnsLeast: {
    words: 'Turns of the handwheel lock to lock, at least',
    group: 'Turn',
    usual: 2,
    range: [0.5, 12],
    unit: 'turns',
    source: 'Washington Administrative Code 204-10-034, where it applies',
  },
  turnsMost: {
    words: 'Turns of the handwheel lock to lock, at most',
    group: 'Turn',
    usual: 6,
    range: [0.5, 12],
    unit: 'turns',
    source: 'Washington Administrative Code 204-10-034, where it applies',
  },
  lockLeast: {
    words: 'Inner wheel at full lock, at least',
    group: 'Turn',
    usual: 28,
    range: [5, 70],
    unit: 'degrees',
    source: PRACTICE,
  },
  lockMost: {
    words: 'Inner wheel at full lock, at most',
    group: 'Turn',
    usual: 40,
    range: [5, 70],
    unit: 'degrees',
    source: PRACTICE,
  },
  lockApart: {
    words: 'Difference between left and right lock, at most',
    group: 'Turn',
    usual: 3,
    range: [0.1, 30],
    unit: 'degrees',
    source: PRACTICE,
  },
  clearanceMoving: {
    words: 'Room around a moving part, at least',
    group: 'Room',
    usual: 12.7,
    range: [0, 100],
    unit: 'length',
    source: PRACTICE,
  },
  clearanceTyre: {
    words: 'Room around a tyre at lock and bump, at least',
    group: 'Room',
    usual: 25.4,
    range: [0, 200],
    unit: 'length',
    source:
      'common practice, no published source; COMAR 11.22.03.04 asks an inch at the stops, where it applies',
  },
  jointSingle: {
    words: 'Angle of a single universal joint, at most',
    group: 'Steering shaft',
    usual: USUAL_JOINT_DEGREES.single,
    range: [1, 60],
    unit: 'degrees',
    source: PRACTICE,
  },
  jointDouble: {
    words: 'Angle of a double universal joint, at most',
    group: 'Steering shaft',
    usual: USUAL_JOINT_DEGREES.double,
    range: [1, 120],
    unit: 'degrees',
    source: PRACTICE,
  },
  boxInput: {
    words: 'Box input off the box’s own angle to its sector shaft, at most',
    group: 'Steering shaft',
    usual: 2,
    range: [0.1, 30],
    unit: 'degrees',
    source: PRACTICE,
  },
  shaftSpan: {
    words: 'Steering shaft between joint and support, at most',
    group: 'Steering shaft',
    usual: LONGEST_SPAN,
    range: [100, 3000],
    unit: 'length',
    source: PRACTICE,
  },
  rimForce: {
    words: 'Parking effort at the rim, at most',
    group: 'Effort',
    usual: 150,
    range: [10, 2000],
    unit: 'force',
    source: 'UN Regulation 79, category M1, intact steering (from memory; a moving car)',
  },
} as const satisfies Record<string, LimitKind>;

export type LimitName = keyof typeof USUAL_LIMITS;

/** The limits by name. A new one is one entry in the table above. */
export const LIMITS: Readonly<Record<LimitName, LimitKind>> = USUAL_LIMITS;

/** A shop's own figures, in the limit's unit, where they differ from the usual ones. */
export type ShopLimits = Partial<Record<LimitName, number>>;

/** A limit as it holds in this shop, with where its figure comes from. */
export interface LimitInForce {
  readonly value: number;
  readonly source: string;
}

/** The source of a figure that the shop has set itself; findings that are held to one carry these words. */
export const OWN_LIMIT = 'this shop’s own limit';

export function limitInForce(name: LimitName, shop: ShopLimits): LimitInForce {
  const { usual, source } = LIMITS[name];
  const own = shop[name];
  return own === undefined || own === usual ? { value: usual, source } : { value: own, source: OWN_LIMIT };
}

/** The largest angles of universal joints in this shop, for the route. */
export function jointLimits(shop: ShopLimits): JointLimits {
  return {
    single: toRadians(limitInForce('jointSingle', shop).value),
    double: toRadians(limitInForce('jointDouble', shop).value),
  };
}

export const LIMIT_NAMES = Object.keys(LIMITS) as readonly LimitName[];

/** The other end of a limit that has two: `toeMost` for `toeLeast`. */
function otherEnd(name: LimitName): LimitName | undefined {
  const other = name.endsWith('Least') ? name.replace(/Least$/, 'Most') : name.replace(/Most$/, 'Least');
  return other !== name && Object.hasOwn(LIMITS, other) ? (other as LimitName) : undefined;
}

/** Why a figure cannot be a shop's limit: out of range, or past the other end of the same thing. */
export type LimitProblem =
  | { readonly kind: 'range'; readonly least: number; readonly most: number }
  | { readonly kind: 'crossed'; readonly other: LimitName; readonly value: number };

/** What is wrong with a figure for a limit, in the limit's unit, beside the shop's other limits; nothing if it can be one. */
export function limitProblem(name: LimitName, value: number, shop: ShopLimits): LimitProblem | undefined {
  const [least, most] = LIMITS[name].range;
  if (!(value >= least && value <= most)) return { kind: 'range', least, most };
  const other = otherEnd(name);
  if (!other) return undefined;
  const end = limitInForce(other, shop).value;
  const crossed = name.endsWith('Least') ? value > end : value < end;
  return crossed ? { kind: 'crossed', other, value: end } : undefined;
}

/** A shop's limits out of anything that was stored: those that still mean something, the rest as if never set. */
export function readShopLimits(stored: unknown): ShopLimits {
  if (typeof stored !== 'object' || stored === null) return {};
  const found: Partial<Record<LimitName, number>> = {};
  for (const name of LIMIT_NAMES) {
    const value = (stored as Record<string, unknown>)[name];
    if (typeof value === 'number' && limitProblem(name, value, {})?.kind !== 'range') found[name] = value;
  }
  // Both ends of one thing may have been moved past each other: then neither is taken.
  for (const name of LIMIT_NAMES) {
    const value = found[name];
    const problem = value === undefined ? undefined : limitProblem(name, value, found);
    if (problem?.kind === 'crossed') {
      delete found[name];
      delete found[problem.other];
    }
  }
  return found;
}
