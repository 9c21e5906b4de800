/** How a limit's figure is shown. Angles in degrees, lengths in mm, forces in N. */
export type LimitUnit = 'degrees' | 'degrees-per-inch' | 'length' | 'force' | 'ratio' | 'turns' | 'share';

/** A limit that a rule holds a layout to: a usual figure that each shop may change for its own. */
export interface LimitKind {
  readonly words: string;
  readonly usual: number;
  readonly unit: LimitUnit;
  readonly source: string;
}

const PRACTICE = 'common practice, no published source';

/** The limits by name. A new one is one line here. */
export const LIMITS = {
  bumpSteerWorst: {
    words: 'Bump steer over the travel, at most',
    usual: 0.5,
    unit: 'degrees',
    source: PRACTICE,
  },
  bumpSteerSlope: {
    words: 'Bump steer slope at ride height, at most',
    usual: 0.25,
    unit: 'degrees-per-inch',
    source: PRACTICE,
  },
  rollOversteer: {
    words: 'Roll steer into the turn for each degree of roll, at most',
    usual: 0.1,
    unit: 'degrees',
    source: PRACTICE,
  },
  toeLeast: { words: 'Total toe-in at the tyre, at least', usual: 0.8, unit: 'length', source: PRACTICE },
  toeMost: { words: 'Total toe-in at the tyre, at most', usual: 3.2, unit: 'length', source: PRACTICE },
  casterLeast: { words: 'Caster, at least', usual: 4, unit: 'degrees', source: PRACTICE },
  casterMost: { words: 'Caster, at most', usual: 8, unit: 'degrees', source: PRACTICE },
  casterChange: {
    words: 'Caster change over the travel, at most',
    usual: 5,
    unit: 'degrees',
    source: PRACTICE,
  },
  bind: {
    words: 'What bushings and brackets may have to give, at most',
    usual: 1,
    unit: 'length',
    source: PRACTICE,
  },
  beamTwist: {
    words: 'Twist asked of an I-beam in full roll, at most',
    usual: 4,
    unit: 'degrees',
    source: PRACTICE,
  },
  barLinkAngle: {
    words: 'Lateral bar and drag link apart in the front view, at most',
    usual: 2,
    unit: 'degrees',
    source: PRACTICE,
  },
  barLinkLength: {
    words: 'Lateral bar and drag link unlike in length, at most',
    usual: 0.1,
    unit: 'share',
    source: PRACTICE,
  },
  aimHeight: {
    words: 'Frame end of the drag link off the zero-slope line, at most',
    usual: 12.7,
    unit: 'length',
    source: PRACTICE,
  },
  transmissionLeast: {
    words: 'Angle between drag link and arm, at least',
    usual: 40,
    unit: 'degrees',
    source: 'Norton, Design of Machinery, ch. 2 (from memory)',
  },
  ballTilt: {
    words: 'Tilt of a ball or rod end, at most',
    usual: 25,
    unit: 'degrees',
    source: 'common practice, no published source; the maker’s figure rules',
  },
  ratioLeast: { words: 'Overall ratio, at least', usual: 12, unit: 'ratio', source: PRACTICE },
  ratioMost: { words: 'Overall ratio, at most', usual: 24, unit: 'ratio', source: PRACTICE },
  turnsLeast: {
    words: 'Turns of the handwheel lock to lock, at least',
    usual: 2,
    unit: 'turns',
    source: 'Washington Administrative Code 204-10-034, where it applies',
  },
  turnsMost: {
    words: 'Turns of the handwheel lock to lock, at most',
    usual: 6,
    unit: 'turns',
    source: 'Washington Administrative Code 204-10-034, where it applies',
  },
  lockLeast: { words: 'Inner wheel at full lock, at least', usual: 28, unit: 'degrees', source: PRACTICE },
  lockMost: { words: 'Inner wheel at full lock, at most', usual: 40, unit: 'degrees', source: PRACTICE },
  lockApart: { words: 'Left and right lock apart, at most', usual: 3, unit: 'degrees', source: PRACTICE },
  rimForce: {
    words: 'Parking effort at the rim, at most',
    usual: 150,
    unit: 'force',
    source: 'UN Regulation 79, category M1, intact steering (from memory; a moving car)',
  },
} as const satisfies Record<string, LimitKind>;

export type LimitName = keyof typeof LIMITS;

/** A shop's own figures, in the limit's unit, where they differ from the usual ones. */
export type ShopLimits = Partial<Record<LimitName, number>>;

/** A limit as it holds in this shop, with where its figure comes from. */
export interface LimitInForce {
  readonly value: number;
  readonly source: string;
}

export function limitInForce(name: LimitName, shop: ShopLimits): LimitInForce {
  const { usual, source } = LIMITS[name];
  const own = shop[name];
  return own === undefined || own === usual
    ? { value: usual, source }
    : { value: own, source: 'this shop’s own limit' };
}
