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
  z.strictObject({
    kind: z.literal('rate'),
    rate: rate.describe('N/mm of one side, at the axle: half of a transverse spring.'),
  }),
  z.strictObject({
    kind: z.literal('leaf'),
    lie: z.enum(['along', 'across']).describe('One spring along each rail, or one across the car.'),
    length: length.describe(
      'mm between the eyes along the main leaf; of a quarter-elliptic spring from its clamp to its eye.',
    ),
    width: z.number().positive().max(500).describe('mm of a leaf.'),
    thickness: z.number().positive().max(100).describe('mm of a leaf.'),
    leaves: z.number().int().min(1).max(30).describe('How many there are.'),
    fullLeaves: z
      .number()
      .int()
      .min(0)
      .max(30)
      .describe(
        'How many of them, the main leaf included, run the whole length with square ends; no more than there are. Absent, none.',
      )
      .optional(),
  }),
  z.strictObject({
    kind: z.literal('measured'),
    load: z.number().positive().max(200_000).describe('N laid over the front axle.'),
    settles: length.describe('mm that the frame comes nearer to the axle by it.'),
  }),
]);

const damper = z.strictObject({
  bump: damping.describe('N·s/mm of one side, at the axle, as it rises toward the frame.'),
  rebound: damping.describe('N·s/mm of one side, at the axle, as it falls away from the frame.'),
});

export const rideSchema = z.strictObject({
  sprungMass: mass
    .describe('kg that the front springs carry. Absent, what the axle load leaves beside the unsprung mass.')
    .optional(),
  unsprungMass: mass
    .describe('kg that the tyres carry without a spring between: axle, wheels, brakes, half of the links.')
    .optional(),
  spring: spring.describe('How stiff the front springs are.').optional(),
  damper: damper.describe('What the front dampers do.').optional(),
  springBase: length
    .describe('mm between the places where left and right spring act on the axle.')
    .optional(),
  damperBase: length
    .describe('mm between the places where left and right damper act on the axle.')
    .optional(),
  tyreRate: rate.describe('N/mm of one tyre.').optional(),
  tyreDamping: damping.describe('N·s/mm of one tyre.').optional(),
  rollStiffness: z
    .number()
    .min(0)
    .max(100_000)
    .describe('N·m for each degree, beside the springs: an anti-roll bar, or rods that a beam twists.')
    .optional(),
  sprungHeight: length.describe('mm above the ground of the middle of the sprung mass.').optional(),
  sprungGyration: length
    .describe('mm: radius of gyration in roll of the sprung mass about its middle.')
    .optional(),
  axleGyration: length.describe('mm: radius of gyration in roll of the axle with its wheels.').optional(),
});

/** What a layout tells of springs, dampers, tyres and masses. */
export type RideDocument = z.infer<typeof rideSchema>;
export type SpringDocument = z.infer<typeof spring>;
