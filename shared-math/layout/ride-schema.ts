import { z } from 'zod';
import { length } from './measures.ts';

// What the car rides on. All of it may be left out: what is absent is worked out from the layout, or is a usual figure.

const mass = z.number().positive().max(10_000);
/** N/mm. */
const rate = z.number().positive().max(5000);
/** N·s/mm. */
const damping = z.number().min(0).max(100);

/** How stiff the front springs are: given, worked out from the leaves, or measured on the car. */
const spring = z.discriminatedUnion('kind', [
  /** N/mm of one side, at the axle: half of a transverse spring. */
  z.strictObject({ kind: z.literal('rate'), rate }),
  /** One spring along each rail, or one across the car. Length between the eyes along the main leaf, mm. */
  z.strictObject({
    kind: z.literal('leaf'),
    lie: z.enum(['along', 'across']),
    length,
    width: z.number().positive().max(500),
    thickness: z.number().positive().max(100),
    leaves: z.number().int().min(1).max(30),
    /** How many of them, the main leaf included, run the whole length with square ends; absent, none. */
    fullLeaves: z.number().int().min(0).max(30).optional(),
  }),
  /** The load (N) laid over the front axle that brings the frame nearer to the axle by `settles` mm. */
  z.strictObject({ kind: z.literal('measured'), load: z.number().positive().max(200_000), settles: length }),
]);

/** N·s/mm of one side, at the axle: as the axle rises toward the frame, and as it falls away. */
const damper = z.strictObject({ bump: damping, rebound: damping });

export const rideSchema = z.strictObject({
  /** kg that the front springs carry; absent, what the axle load leaves beside the unsprung mass. */
  sprungMass: mass.optional(),
  /** kg that the tyres carry without a spring between: axle, wheels, brakes, half of the links. */
  unsprungMass: mass.optional(),
  spring: spring.optional(),
  damper: damper.optional(),
  /** mm between the places where left and right spring, or damper, act on the axle. */
  springBase: length.optional(),
  damperBase: length.optional(),
  /** N/mm and N·s/mm of one tyre. */
  tyreRate: rate.optional(),
  tyreDamping: damping.optional(),
  /** N·m for each degree, beside the springs: an anti-roll bar, or rods that a beam twists. */
  rollStiffness: z.number().min(0).max(100_000).optional(),
  /** mm above the ground: the middle of the sprung mass. */
  sprungHeight: length.optional(),
  /** mm: radius of gyration in roll, of the sprung mass about its middle and of the axle with its wheels. */
  sprungGyration: length.optional(),
  axleGyration: length.optional(),
});

/** What a layout tells of springs, dampers, tyres and masses. */
export type RideDocument = z.infer<typeof rideSchema>;
export type SpringDocument = z.infer<typeof spring>;
