import { z } from 'zod';
import { flatProblems, jointSideSchema, splineShape, stockSchema } from '../layout/index.ts';
import { COORDINATE_MAX } from '../tolerances.ts';

// What a shop has on its shelf. mm and degrees, as in the layout document, whose pieces these are.

const length = z.number().positive().max(COORDINATE_MAX);
const spline = z.strictObject(splineShape);

/** What every entry tells, whatever it is. */
const facts = {
  /** As the shop calls it; nobody's part number is asked for. */
  name: z.string().trim().min(1).max(120),
  note: z.string().trim().max(2000).default(''),
  /** In the shop's own money. */
  price: z.number().min(0).max(1_000_000).optional(),
  /** How many lie there; 0 where the last one has gone and more are to come. */
  count: z.number().int().min(0).max(100_000).default(1),
};

const box = z.strictObject({
  kind: z.literal('box'),
  ...facts,
  /** For side steer (the arm swings beside the rail) or for cross steer. */
  mounting: z.enum(['side', 'cross']),
  assist: z.enum(['manual', 'power']),
  ratio: z.number().positive().max(100),
  /** Degrees of the sector each way from the middle. */
  sectorTravel: z.number().positive().max(180),
  /** How the sector turns, seen on the end that carries the arm, when the handwheel is turned to the left. */
  turns: z.enum(['clockwise', 'counter-clockwise']),
  input: spline.optional(),
  sector: spline.optional(),
  /** Length along the input, width along the sector, height. */
  size: z.tuple([length, length, length]).readonly().optional(),
});

const joint = z.strictObject({
  kind: z.literal('joint'),
  ...facts,
  joint: z.enum(['single', 'double']),
  /** Degrees; absent, the usual limit of its kind holds. */
  limit: z.number().positive().max(90).optional(),
  /** Either end may be turned toward the column. */
  ends: z.tuple([jointSideSchema, jointSideSchema]).readonly(),
});

/** Shaft stock by the piece, each as long as `length`. */
const stock = z.strictObject({ kind: z.literal('stock'), ...facts, stock: stockSchema, length });

const support = z.strictObject({ kind: z.literal('support'), ...facts, bore: length });

const rodEnd = z.strictObject({
  kind: z.literal('rod-end'),
  ...facts,
  thread: z.strictObject({ diameter: length, pitch: length.max(20) }),
  hand: z.enum(['right', 'left']),
  /** Hole through the ball, or its stud. */
  size: length,
  /** Degrees that the ball may tilt each way. */
  ballAngle: z.number().positive().max(60),
});

const arm = z.strictObject({
  kind: z.literal('arm'),
  ...facts,
  arm: z.enum(['pitman', 'steering']),
  /** From the axis it turns about to the ball. */
  length,
  /** What it is held by: the sector's spline, or a bore. */
  hole: z
    .discriminatedUnion('kind', [
      z.strictObject({ kind: z.literal('spline'), ...splineShape }),
      z.strictObject({ kind: z.literal('bore'), diameter: length }),
    ])
    .optional(),
  /** The hole for the ball's stud: its diameter at the large side; its taper 1 in so many, absent where it is plain. */
  ballHole: z.strictObject({ diameter: length, taper: z.number().min(2).max(100).optional() }).optional(),
});

/** An entry of the shelf. */
export const shelfPartSchema = z
  .discriminatedUnion('kind', [box, joint, stock, support, rodEnd, arm])
  .superRefine((part, context) => {
    const formed =
      part.kind === 'joint'
        ? part.ends.map((end, i) => [['ends', i], end] as const)
        : part.kind === 'stock'
          ? [[['stock'], part.stock] as const]
          : [];
    for (const [path, form] of formed)
      for (const { reason } of flatProblems('', form))
        context.addIssue({ code: 'custom', path: [...path, 'acrossFlats'], message: reason });
  });

export type ShelfPart = z.infer<typeof shelfPartSchema>;
/** As a caller writes it: note and count may be left out. */
export type ShelfPartInput = z.input<typeof shelfPartSchema>;
export type PartKind = ShelfPart['kind'];
export type PartOf<Kind extends PartKind> = Extract<ShelfPart, { kind: Kind }>;

/** An entry with the word that the store knows it by. */
export interface Shelved {
  readonly id: string;
  readonly part: ShelfPart;
}
