import { z } from 'zod';
import { length, point } from './measures.ts';

// The steering shaft in the layout document: column end, joints, intermediate shafts and supports, box input, and
// how their ends fit one another. mm and degrees; axes point from the handwheel toward the box.

/**
 * A spline by what distinguishes it: form of its teeth, full count, outside diameter, and of involutes the pitch: diametral
 * (per inch) of inch forms, the module in mm of metric ones.
 */
export const splineShape = {
  form: z.enum([
    'involute-30',
    'involute-37.5',
    'involute-45',
    'metric-30',
    'metric-37.5',
    'metric-45',
    'reference-30',
    'serrated',
    'unidentified',
  ]),
  /** Around the whole circle, those that a flat or a blank takes away counted in. */
  teeth: z.number().int().min(6).max(200),
  pitch: z.number().positive().max(200).optional(),
  module: z.number().positive().max(20).optional(),
  diameter: length,
};
const flats = { diameter: length, acrossFlats: length };

/** The end of a column, of a box's input or of a shaft; `length` is how long that form is from the tip. */
const shaftEnd = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('round'), diameter: length, length: length.optional() }),
  z.strictObject({ kind: z.literal('double-d'), ...flats, length: length.optional() }),
  z.strictObject({ kind: z.literal('spline'), ...splineShape, length: length.optional() }),
]);

/** A pinch bolt: from the end's face to the bolt, and from the bore's axis to the bolt's axis. */
const pinchBolt = z.strictObject({ diameter: length, fromFace: length, offset: length });
/** A set screw: from the end's face to the screw. */
const setScrew = z.strictObject({ diameter: length, fromFace: length });
/** `depth` of the bore from the end's face; `reach` from the joint's centre to that face. */
const bored = { depth: length.optional(), reach: length.optional() };

/** One end of a universal joint, into which a shaft's end goes. */
export const jointSideSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('weld'), bore: length, ...bored }),
  z.strictObject({
    kind: z.literal('double-d-set-screw'),
    bore: length,
    acrossFlats: length,
    screw: setScrew.optional(),
    ...bored,
  }),
  z.strictObject({
    kind: z.literal('double-d-pinch-bolt'),
    bore: length,
    acrossFlats: length,
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

const material = z.enum(['steel', 'stainless']).optional();
/** Which ends of the stock are formed, and how long each formed end is. */
const formed = { ends: z.enum(['column', 'box', 'both']), formed: length };
/** A shaft in two pieces, one sliding in the other: how far they may slide, and how deep one sits in the other. */
const slip = z.strictObject({ travel: length, overlap: length }).optional();

export const stockSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('round'), diameter: length, material }),
  z.strictObject({ kind: z.literal('double-d-end'), ...flats, ...formed, material }),
  z.strictObject({ kind: z.literal('double-d'), ...flats, slip, material }),
  z.strictObject({ kind: z.literal('splined'), ...splineShape, ...formed, slip, material }),
]);

const joint = z.strictObject({
  kind: z.enum(['single', 'double']),
  centre: point,
  /** Degrees; absent, the usual limit of the joint's kind holds. */
  limit: z.number().positive().max(90).optional(),
  columnSide: jointSideSchema.optional(),
  boxSide: jointSideSchema.optional(),
});

/** `clock` in degrees: the yoke at the box end against that at the column end, right-hand about column to box. */
const intermediate = z.strictObject({
  clock: z.number().gt(-90).max(90).default(0),
  stock: stockSchema.optional(),
});

const end = z.strictObject({ end: point, axis: point, fit: shaftEnd.optional() });

/** A bearing on an intermediate shaft, at a share of its length from the joint nearer the column. */
const support = z.strictObject({ shaft: z.number().int().min(0), at: z.number().min(0).max(1) });

/** The steering shaft; `shafts[i]` runs between `joints[i]` and `joints[i + 1]`. */
export const shaftSchema = z.strictObject({
  column: end,
  box: end,
  joints: z.array(joint).min(1).max(12),
  shafts: z.array(intermediate).max(11),
  supports: z.array(support).max(20).default([]),
});

export type ShaftDocument = z.infer<typeof shaftSchema>;
export type ShaftJoint = z.infer<typeof joint>;
export type JointKind = ShaftJoint['kind'];
export type ShaftEnd = z.infer<typeof shaftEnd>;
export type JointSide = z.infer<typeof jointSideSchema>;
export type ShaftStock = z.infer<typeof stockSchema>;
export type ShaftSupport = z.infer<typeof support>;
/** What identifies a spline: form, full count, pitch where it is known, outside diameter in mm. */
export type SplineForm = Extract<ShaftEnd, { kind: 'spline' }>['form'];
