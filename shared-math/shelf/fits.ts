import type { JointSide } from '../layout/index.ts';
import { MM_PER_INCH } from '../units/index.ts';
import type { Wanted } from './part-need.ts';
import type { PartKind, PartOf, ShelfPart } from './part-schema.ts';

// Whether an entry of the shelf is what is wanted, by its dimensions. The allowances are this program's own choice: wide
// enough for a size that was measured and one that was printed, narrow enough for the next size to be another.

/** mm. Bores, shafts and flats: ten thousandths of an inch. */
const SAME_SIZE = 0.01 * MM_PER_INCH;
/** mm. A bearing's bore: five thousandths. */
const SAME_BORE = 0.005 * MM_PER_INCH;
/** mm. An arm's length; more changes how fast the car steers. */
const SAME_ARM = MM_PER_INCH / 16;
/** Of the box's ratio, to 1. */
const SAME_RATIO = 0.25;
/** Degrees. */
const SAME_ANGLE = 0.5;
/** mm of wall that a tube needs round a thread, both sides together: 1/16 in each. */
const WALLS = MM_PER_INCH / 8;

const near = (a: number, b: number, within: number) => Math.abs(a - b) <= within + 1e-9;

interface Spline {
  readonly form: string;
  readonly teeth: number;
  readonly pitch?: number | undefined;
  readonly module?: number | undefined;
  readonly diameter: number;
}

/** One count and size; form and pitch where both are known. */
function sameSpline(a: Spline, b: Spline): boolean {
  const known = a.form !== 'unidentified' && b.form !== 'unidentified';
  return (
    a.teeth === b.teeth &&
    near(a.diameter, b.diameter, SAME_SIZE) &&
    (!known || a.form === b.form) &&
    (a.pitch === undefined || b.pitch === undefined || a.pitch === b.pitch) &&
    (a.module === undefined || b.module === undefined || a.module === b.module)
  );
}

function sameSide(wanted: JointSide | undefined, side: JointSide): boolean {
  if (!wanted) return true;
  if (wanted.kind !== side.kind) return false;
  if ('teeth' in wanted) return 'teeth' in side && sameSpline(wanted, side);
  if ('teeth' in side || !near(wanted.bore, side.bore, SAME_SIZE)) return false;
  return (
    !('acrossFlats' in wanted) ||
    ('acrossFlats' in side && near(wanted.acrossFlats, side.acrossFlats, SAME_SIZE))
  );
}

/** Either end may be turned toward the column. */
function sameJoint(wanted: Extract<Wanted, { kind: 'joint' }>, part: PartOf<'joint'>): boolean {
  const [a, b] = wanted.ends;
  const [one, two] = part.ends;
  return (
    wanted.joint === part.joint &&
    ((sameSide(a, one) && sameSide(b, two)) || (sameSide(a, two) && sameSide(b, one)))
  );
}

function sameStock(wanted: PartOf<'stock'>['stock'], stock: PartOf<'stock'>['stock']): boolean {
  if (wanted.kind !== stock.kind || !near(wanted.diameter, stock.diameter, SAME_SIZE)) return false;
  if (wanted.material !== undefined && stock.material !== undefined && wanted.material !== stock.material)
    return false;
  if (
    'acrossFlats' in wanted &&
    !('acrossFlats' in stock && near(wanted.acrossFlats, stock.acrossFlats, SAME_SIZE))
  )
    return false;
  if ('teeth' in wanted && !('teeth' in stock && sameSpline(wanted, stock))) return false;
  if ('ends' in wanted && 'ends' in stock) {
    // A single formed end may be turned either way.
    if ((wanted.ends === 'both') !== (stock.ends === 'both')) return false;
    if (stock.formed < wanted.formed - SAME_SIZE) return false;
  }
  const [needs, has] = [wanted, stock].map((entry) => ('slip' in entry ? entry.slip : undefined));
  if (!needs || !has) return needs === has;
  return has.travel >= needs.travel - SAME_SIZE && has.overlap >= needs.overlap - SAME_SIZE;
}

/** Stock formed at both ends can only be shortened by what its formed ends have to spare; other stock is cut to length. */
function longEnough(wanted: Extract<Wanted, { kind: 'stock' }>, { stock, length }: PartOf<'stock'>): boolean {
  if (wanted.length === undefined) return true;
  if (length < wanted.length) return false;
  if (!('ends' in stock) || stock.ends !== 'both' || !('formed' in wanted.stock)) return true;
  return length - wanted.length <= 2 * Math.max(stock.formed - wanted.stock.formed, 0) + SAME_SIZE;
}

type WantedOf<Kind extends PartKind> = Extract<Wanted, { kind: Kind }>;
type Fits<Kind extends PartKind> = (wanted: WantedOf<Kind>, part: PartOf<Kind>) => boolean;

/** When an entry of each kind is what is wanted of that kind. */
const FITS: { readonly [Kind in PartKind]: Fits<Kind> } = {
  box: (wanted, part) =>
    wanted.mounting === part.mounting &&
    wanted.assist === part.assist &&
    near(wanted.ratio, part.ratio, SAME_RATIO) &&
    part.sectorTravel >= wanted.sectorTravel - SAME_ANGLE &&
    (!wanted.input || !part.input || sameSpline(wanted.input, part.input)),
  joint: sameJoint,
  stock: (wanted, part) => sameStock(wanted.stock, part.stock) && longEnough(wanted, part),
  support: (wanted, part) => wanted.bore === undefined || near(wanted.bore, part.bore, SAME_BORE),
  'rod-end': (wanted, part) =>
    (wanted.hand === undefined || wanted.hand === part.hand) &&
    part.thread.diameter <= wanted.tube - WALLS &&
    part.ballAngle >= (wanted.ballAngle ?? 0),
  arm: (wanted, part) => wanted.arm === part.arm && near(wanted.length, part.length, SAME_ARM),
};

/**
 * Whether an entry is what is wanted, by dimension; figures that are not known are not held against it. Says nothing of
 * how many there are, nor of strength: which part may be used is for its maker and the code that applies to say.
 * Units: mm, degrees. Checked: tests/unit/shelf.test.ts.
 */
export function fitsNeed(wanted: Wanted, part: ShelfPart): boolean {
  if (wanted.kind !== part.kind) return false;
  const fits = FITS[part.kind] as (wanted: Wanted, part: ShelfPart) => boolean;
  return fits(wanted, part);
}
