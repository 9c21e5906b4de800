import type { Point } from '../geometry/points.ts';
import { distance } from '../geometry/points.ts';
import { subtract } from '../geometry/vectors.ts';
import { PLAIN_LAYOUT, type ShaftStock, type Side } from '../layout/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { INPUT, stockWords, USUAL_DOUBLE_D } from '../shaft/index.ts';
import { formatDegrees, formatLength, type LengthStyle, toRadians } from '../units/index.ts';
import { type Assumed, listed } from './answer.ts';
import { PRACTICE } from './counter-cautions.ts';
import type { QuestionOf } from './questions.ts';

type ShaftQuestion = QuestionOf<'shaft'>;

/** Where column and box end and how they point, as given or assumed. mm, vehicle axes; axes from the handwheel to the box. */
export interface ShaftRun {
  readonly column: { readonly end: Point; readonly axis: Point };
  readonly box: { readonly end: Point; readonly axis: Point };
  readonly driverSide: Side;
  readonly stock: ShaftStock;
  readonly assumed: readonly Assumed[];
}

/** Why there is no run yet: what has to be asked, or why what was said cannot be. */
export type NoRun =
  | { readonly kind: 'asks'; readonly words: string }
  | { readonly kind: 'cannot'; readonly words: string };

/** Degrees that a column usually falls toward the front, for whoever has no angle finder at hand. */
export const USUAL_COLUMN_FALL = 30;

/** mm. Nearer than this, two ends leave no room for a joint on each and a shaft between. */
const NEAREST_ENDS = 100;

const USUAL_STOCK: ShaftStock = { kind: 'double-d', ...USUAL_DOUBLE_D };

/**
 * A direction that falls toward the front by `falls` and points outward by `points`, degrees; `side` is 1 where outward is
 * left. Unit length.
 */
export function pointing(falls: number, points: number, side: 1 | -1): Point {
  const [f, p] = [toRadians(falls), toRadians(points)];
  return [Math.cos(f) * Math.cos(p), side * Math.cos(f) * Math.sin(p), -Math.sin(f)];
}

const PLACES = {
  columnBack: 'how far the column’s end is behind the front axle',
  columnOut: 'how far it is from the car’s middle',
  columnUp: 'how high it is above the ground',
  boxBack: 'how far the box’s input is behind the front axle',
  boxOut: 'how far it is from the car’s middle',
  boxUp: 'how high it is above the ground',
} as const;

type PlaceField = keyof typeof PLACES;

/** Where the plain car has its box's input, on that side. */
function plainInput(side: 1 | -1): Point {
  const [x, y, z] = PLAIN_LAYOUT.steering.box.sectorCentre;
  return [x - INPUT.back, side * Math.abs(y), z + INPUT.up];
}

/**
 * The box's input from the column's end by a tape between them: straight apart a, lower by l, farther out by o, so ahead by
 * √(a² - l² - o²). Where nobody said how much lower, the input lies on the column's own line as seen from the side:
 * l = ahead · tan(fall), so ahead = cos(fall) · √(a² - o²).
 */
function fromDistances(
  question: ShaftQuestion,
  falls: number,
  side: 1 | -1,
): Outcome<Point, NoRun> & { readonly lower?: number } {
  const { apart, out = 0 } = question;
  if (apart === undefined)
    return failed({
      kind: 'asks',
      words: 'Ask how far it is, straight, from the column’s end to the box’s input.',
    });
  const along = Math.sqrt(apart ** 2 - out ** 2);
  const ahead =
    question.lower === undefined
      ? along * Math.cos(toRadians(falls))
      : Math.sqrt(apart ** 2 - out ** 2 - question.lower ** 2);
  if (!(ahead >= 0))
    return failed({
      kind: 'cannot',
      words: 'the way straight between the ends is longer than what lies beside or below it: measure again',
    });
  const lower = question.lower ?? ahead * Math.tan(toRadians(falls));
  return { ...succeeded<Point>([ahead, side * out, -lower]), lower };
}

function places(question: ShaftQuestion, side: 1 | -1): Outcome<{ column: Point; box: Point }, NoRun> {
  const missing = (Object.keys(PLACES) as PlaceField[]).filter((field) => question[field] === undefined);
  if (missing.length > 0)
    return failed({ kind: 'asks', words: `Ask ${listed(missing.map((field) => PLACES[field]))}.` });
  const at = (back: PlaceField, out: PlaceField, up: PlaceField): Point => [
    0 - (question[back] as number),
    side * (question[out] as number),
    question[up] as number,
  ];
  return succeeded({
    column: at('columnBack', 'columnOut', 'columnUp'),
    box: at('boxBack', 'boxOut', 'boxUp'),
  });
}

/** What was not said of the directions, the driver and the stock, and what is taken in its place. */
export function assumedDirections(question: ShaftQuestion, style: LengthStyle): Assumed[] {
  const list: Assumed[] = [];
  const unsaid = (field: keyof ShaftQuestion, figure: string, words: string) => {
    if (question[field] === undefined) list.push({ field, figure, words });
  };
  const fall = formatDegrees(USUAL_COLUMN_FALL, 0);
  unsaid('columnFalls', fall, `The column falls ${fall} toward the front (${PRACTICE}).`);
  unsaid('columnPoints', '0°', 'The column points straight ahead, seen from above.');
  unsaid('boxFalls', '0°', 'The box’s input lies level.');
  unsaid('boxPoints', '0°', 'The box’s input points straight back, seen from above.');
  unsaid('driverSide', 'left', 'The driver sits on the left. It decides which way a yoke is turned.');
  const bar = stockWords(USUAL_STOCK, style);
  unsaid('stock', bar, `The shaft between is ${bar} (${PRACTICE}).`);
  return list;
}

/**
 * What was said at the counter as two ends in the car's axes. Measured from one to the other, the box's input stands where
 * the plain car has it, as only their difference is known.
 * Frame:    vehicle. Units: mm; degrees in the question.
 * Outcomes: a run with all that was assumed; what to ask; or why what was said cannot be.
 * Source:   geometry (Pythagoras); usual figures common practice, no published source.
 * Checked:  tests/unit/counter/shaft-run.test.ts.
 */
export function shaftRun(question: ShaftQuestion, style: LengthStyle): Outcome<ShaftRun, NoRun> {
  const driverSide = question.driverSide ?? 'left';
  const side = driverSide === 'right' ? -1 : 1;
  const falls = question.columnFalls ?? USUAL_COLUMN_FALL;
  const axes = {
    column: pointing(falls, question.columnPoints ?? 0, side),
    box: pointing(question.boxFalls ?? 0, question.boxPoints ?? 0, side),
  };
  const assumed = assumedDirections(question, style);
  let ends: { column: Point; box: Point };
  if (question.by === 'places') {
    const read = places(question, side);
    if (!read.ok) return read;
    ends = read.value;
  } else {
    const way = fromDistances(question, falls, side);
    if (!way.ok) return way;
    const box = plainInput(side);
    ends = { column: subtract(box, way.value), box };
    if (question.out === undefined)
      assumed.unshift({
        field: 'out',
        figure: formatLength(0, style),
        words: 'The box’s input is no farther out than the column’s end.',
      });
    if (question.lower === undefined)
      assumed.unshift({
        field: 'lower',
        figure: formatLength(way.lower ?? 0, style),
        words: `The box’s input is ${formatLength(way.lower ?? 0, style)} lower, on the column’s own line.`,
      });
  }
  if (distance(ends.column, ends.box) < NEAREST_ENDS)
    return failed({
      kind: 'cannot',
      words: `the two ends are nearer than ${formatLength(NEAREST_ENDS, style)}, which leaves no room for joints`,
    });
  return succeeded({
    column: { end: ends.column, axis: axes.column },
    box: { end: ends.box, axis: axes.box },
    driverSide,
    stock: question.stock ?? USUAL_STOCK,
    assumed,
  });
}
