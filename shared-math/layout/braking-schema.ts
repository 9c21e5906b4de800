import { z } from 'zod';
import { length } from './measures.ts';

// What braking asks of the front axle. All of it may be left out: what is absent is worked out, or is a usual figure.

export const brakingSchema = z.strictObject({
  frontShare: z
    .number()
    .min(0.2)
    .max(0.8)
    .describe(
      "The share of the car's weight, 0 to 1, that stands on the front wheels at rest. Absent, half is taken.",
    )
    .optional(),
  gravityHeight: length
    .describe(
      "mm from the ground to the whole car's centre of gravity. Absent, one and a half tyre radii are taken.",
    )
    .optional(),
  windUpStiffness: z
    .number()
    .positive()
    .max(1_000_000)
    .describe(
      'N·m for each degree that the axle winds up under its brakes, both sides together. Absent, what its leaves come to; links are taken not to give.',
    )
    .optional(),
});

/** What a layout gives of braking. */
export type BrakingDocument = z.infer<typeof brakingSchema>;
