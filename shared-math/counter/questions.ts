import { z } from 'zod';
import { jointSideSchema, PHOTO_SIDE_MAX, shaftEndSchema, stockSchema } from '../layout/index.ts';
import type { QuestionKind } from './question-words.ts';

// What the person at the shop's phone is asked, and what was said. A figure that is absent was not said; mm, degrees, N.

const length = z.number().min(-20_000).max(20_000).optional();
const size = z.number().positive().max(20_000).optional();
const slope = z.number().gt(-90).lt(90).optional();
const side = z.enum(['left', 'right']).optional();
/** Which of the car's two ends a part is; absent where nobody said. */
const whose = z.enum(['column', 'box']).optional();
const whole = z.number().int().min(0).max(200);
/** A place on a photo, px of it, upright. */
const spot = z.tuple([z.number().min(0).max(PHOTO_SIDE_MAX), z.number().min(0).max(PHOTO_SIDE_MAX)]);

/** The photo that teeth are counted on, by the hash under which the store keeps it, and what was marked on it so far. */
const endPhotoSchema = z.strictObject({
  hash: z.string().regex(/^[0-9a-f]{64}$/),
  /** The end's middle. */
  centre: spot.optional(),
  /** Clicks on the rim, over the teeth, in the order in which they were made. */
  rim: z.array(spot).max(200),
});

/** Which shaft, joints and supports lead from the column to the box? */
const shaftQuestion = z.strictObject({
  kind: z.literal('shaft'),
  /** How the two ends were measured: from one to the other, or each in the car. */
  by: z.enum(['distances', 'places']),
  driverSide: side,
  /** Straight from the column's end to the box's input. */
  apart: size,
  /** How much lower the box's input is, and how much farther from the car's middle. */
  lower: length,
  out: length,
  /** Behind the front axle's centre line, out from the car's middle, above the ground. */
  columnBack: length,
  columnOut: length,
  columnUp: length,
  boxBack: length,
  boxOut: length,
  boxUp: length,
  /** How the ends point, going from the handwheel toward the box: down from level, and outward seen from above. */
  columnFalls: slope,
  columnPoints: slope,
  boxFalls: slope,
  boxPoints: slope,
  columnFit: shaftEndSchema.optional(),
  boxFit: shaftEndSchema.optional(),
  stock: stockSchema.optional(),
  /** How many joints were asked for; absent, the board's own choice. */
  joints: z.literal([1, 2, 3]).optional(),
});

/** Which spline is this? */
const splineQuestion = z.strictObject({
  kind: z.literal('spline'),
  outsideDiameter: size,
  counted: whole.optional(),
  over: z.enum(['half', 'circle']),
  otherHalf: whole.optional(),
  missing: whole.optional(),
  /** The count was taken from a photo. */
  fromPhoto: z.boolean(),
  photo: endPhotoSchema.optional(),
  /** Name of the form that an eye on the flanks has decided for. */
  chosen: z.string().max(120).optional(),
  whose,
});

/** What goes with what? */
const fitQuestion = z.strictObject({
  kind: z.literal('fit'),
  end: shaftEndSchema.optional(),
  /** What it is to meet: a joint's end, or the end of another shaft. */
  meets: z.enum(['joint', 'shaft']),
  side: jointSideSchema.optional(),
  other: shaftEndSchema.optional(),
  whose,
});

/** Side steer or cross steer, manual or assisted, for this car? */
const arrangementQuestion = z.strictObject({
  kind: z.literal('arrangement'),
  driverSide: side,
  /** N. */
  frontAxleLoad: z.number().min(500).max(50_000).optional(),
  frameWidth: size,
  tyreWidth: size,
  wheelbase: size,
  handwheelDiameter: size,
  engine: z.enum(['free', 'in the way']).optional(),
  headers: z.enum(['none', 'left', 'right', 'both']).optional(),
  driven: z.enum(['town', 'open-road', 'show']).optional(),
  /** Whether a pump or a motor for assistance can be had on this car. */
  power: z.enum(['yes', 'no']).optional(),
  chosen: z.enum(['side-manual', 'side-assisted', 'cross-manual', 'cross-assisted']).optional(),
});

export const questionSchema = z.discriminatedUnion('kind', [
  shaftQuestion,
  splineQuestion,
  fitQuestion,
  arrangementQuestion,
]);

export type Question = z.infer<typeof questionSchema>;
export type EndPhoto = z.infer<typeof endPhotoSchema>;
export type QuestionOf<Kind extends QuestionKind> = Extract<Question, { kind: Kind }>;

const NEW: { readonly [Kind in QuestionKind]: QuestionOf<Kind> } = {
  shaft: { kind: 'shaft', by: 'distances' },
  spline: { kind: 'spline', over: 'half', fromPhoto: false },
  fit: { kind: 'fit', meets: 'joint' },
  arrangement: { kind: 'arrangement' },
};

/** A question of which nothing has been said yet. */
export function newQuestion<Kind extends QuestionKind>(kind: Kind): QuestionOf<Kind> {
  return NEW[kind];
}

/** Whether anything at all has been said. */
export function saysAnything(question: Question): boolean {
  const before = NEW[question.kind] as Record<string, unknown>;
  return Object.entries(question).some(([key, value]) => value !== undefined && value !== before[key]);
}
