import { z } from 'zod';
import { direction, length, point } from './measures.ts';

// The steering shaft in the layout document: column end, joints, intermediate shafts and supports, box input, and
// how their ends fit one another. mm and degrees; axes point from the handwheel toward the box.

/**
 * A spline by what distinguishes it: form of its teeth, full count, outside diameter, and of involutes the pitch: diametral
 * (per inch) of inch forms, the module in mm of metric ones.
 */
export const splineShape = {
  form: z
    .enum([
      'involute-30',
      'involute-37.5',
      'involute-45',
      'metric-30',
      'metric-37.5',
      'metric-45',
      'reference-30',
      'serrated',
      'unidentified',
    ])
    .describe('The form of its teeth; the number is the pressure angle in degrees.'),
  teeth: z
    .number()
    .int()
    .min(6)
    .max(200)
    .describe('Around the whole circle, those that a flat or a blank takes away counted in.'),
  pitch: z
    .number()
    .positive()
    .max(200)
    .describe('Diametral pitch, teeth per inch of pitch diameter, of inch forms. Absent, not known.')
    .optional(),
  module: z
    .number()
    .positive()
    .max(20)
    .describe('Module, mm, of metric forms. Absent, not known.')
    .optional(),
  diameter: length.describe('mm outside.'),
};
const flats = {
  diameter: length.describe('mm of the round.'),
  acrossFlats: length.describe('mm between the two flats; less than the round.'),
};
const bore = length.describe('mm of the bore.');
const boreFlats = length.describe('mm between the two flats of the bore; less than the bore.');
const endLength = length.describe('mm of that form from the tip. Absent, not known.').optional();

/** The end of a column, of a box's input or of a shaft; `length` is how long that form is from the tip. */
export const shaftEndSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('round'), diameter: length.describe('mm outside.'), length: endLength }),
  z.strictObject({ kind: z.literal('double-d'), ...flats, length: endLength }),
  z.strictObject({ kind: z.literal('spline'), ...splineShape, length: endLength }),
]);

const fromFace = length.describe("mm from the end's face to its middle.");
const pinchBolt = z
  .strictObject({
    diameter: length.describe('mm of the bolt.'),
    fromFace,
    offset: length.describe("mm from the bore's axis to the bolt's axis."),
  })
  .describe('The pinch bolt. Absent, not known.');
const setScrew = z
  .strictObject({ diameter: length.describe('mm of the screw.'), fromFace })
  .describe('The set screw. Absent, not known.');
const bored = {
  depth: length.describe("mm of the bore from the end's face. Absent, not known.").optional(),
  reach: length.describe("mm from the joint's centre to the end's face. Absent, not known.").optional(),
};

/** One end of a universal joint, into which a shaft's end goes. */
export const jointSideSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('weld'), bore, ...bored }),
  z.strictObject({
    kind: z.literal('double-d-set-screw'),
    bore,
    acrossFlats: boreFlats,
    screw: setScrew.optional(),
    ...bored,
  }),
  z.strictObject({
    kind: z.literal('double-d-pinch-bolt'),
    bore,
    acrossFlats: boreFlats,
    bolt: pinchBolt.optional(),
    ...bored,
  }),
  z.strictObject({
    kind: z.literal('spline-pinch-bolt'),
    ...splineShape,
    bolt: pinchBolt.optional(),
    ...bored,
  }),
  z.strictObject({ kind: z.literal('spline'), ...splineShape, screw: setScrew.optional(), ...bored }),
]);

const material = z.enum(['steel', 'stainless']).describe('What it is made of. Absent, not known.').optional();
const formed = {
  ends: z.enum(['column', 'box', 'both']).describe('Which ends of the stock are formed.'),
  formed: length.describe('mm of each formed end.'),
};
const slip = z
  .strictObject({
    travel: length.describe('mm that they may slide.'),
    overlap: length.describe('mm that one sits in the other.'),
  })
  .describe('A shaft in two pieces, one sliding in the other. Absent, it is one piece.')
  .optional();

export const stockSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('round'), diameter: length.describe('mm outside.'), material }),
  z.strictObject({ kind: z.literal('double-d-end'), ...flats, ...formed, material }),
  z.strictObject({ kind: z.literal('double-d'), ...flats, slip, material }),
  z.strictObject({ kind: z.literal('splined'), ...splineShape, ...formed, slip, material }),
]);

const joint = z.strictObject({
  kind: z.enum(['single', 'double']).describe('A universal joint, or a double one that halves its angle.'),
  centre: point.describe('The middle of the joint: [x, y, z], mm.'),
  limit: z
    .number()
    .positive()
    .max(90)
    .describe("Degrees that it bends at the most. Absent, the usual limit of the joint's kind.")
    .optional(),
  columnSide: jointSideSchema
    .describe('What takes the shaft on the column side. Absent, not known.')
    .optional(),
  boxSide: jointSideSchema.describe('What takes the shaft on the box side. Absent, not known.').optional(),
});

const intermediate = z.strictObject({
  clock: z
    .number()
    .gt(-90)
    .max(90)
    .default(0)
    .describe(
      'Degrees of the yoke at the box end against that at the column end, right-hand about the way from column to box.',
    ),
  stock: stockSchema.describe('What it is made from. Absent, not known.').optional(),
});

const end = z.strictObject({
  end: point.describe('Where it ends: [x, y, z], mm.'),
  axis: direction.describe('Its direction from the handwheel toward the box, [x, y, z], any length but 0.'),
  fit: shaftEndSchema.describe('The form of its end. Absent, not known.').optional(),
});

/** A bearing on an intermediate shaft. */
const support = z.strictObject({
  shaft: z.number().int().min(0).describe('Which of the intermediate shafts, counted from 0.'),
  at: z.number().min(0).max(1).describe('The share of its length from the joint nearer the column.'),
});

/** The steering shaft; `shafts[i]` runs between `joints[i]` and `joints[i + 1]`. */
export const shaftSchema = z.strictObject({
  column: end.describe("The column's lower end."),
  box: end.describe("The box's input."),
  joints: z.array(joint).min(1).max(12).describe('The joints from the column to the box.'),
  shafts: z
    .array(intermediate)
    .max(11)
    .describe('The intermediate shafts, one between each joint and the next: one less than joints.'),
  supports: z.array(support).max(20).default([]).describe('Bearings on intermediate shafts.'),
});

export type ShaftDocument = z.infer<typeof shaftSchema>;
export type ShaftJoint = z.infer<typeof joint>;
export type JointKind = ShaftJoint['kind'];
export type ShaftEnd = z.infer<typeof shaftEndSchema>;
export type JointSide = z.infer<typeof jointSideSchema>;
export type ShaftStock = z.infer<typeof stockSchema>;
export type ShaftSupport = z.infer<typeof support>;
/** What identifies a spline: form, full count, pitch where it is known, outside diameter in mm. */
export type SplineForm = Extract<ShaftEnd, { kind: 'spline' }>['form'];
