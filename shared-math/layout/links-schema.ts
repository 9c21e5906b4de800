import { z } from 'zod';
import { COORDINATE_MAX } from '../tolerances.ts';

// What links and arms are made of and how links' ends are made, in the layout document. Every figure may be left out:
// what is absent is not known, and whoever needs it takes a usual one and says so. mm. A tube's outside stands in
// `diameters`, which the drawing and the clearances read.

const size = z.number().positive().max(500);
const reach = z.number().positive().max(COORDINATE_MAX);

/** Steel as it is sold for links; the strength of each stands in `links/materials.ts`. */
const material = z
  .enum(['mild-steel', 'drawn-steel', 'chromoly', 'stainless'])
  .describe('The steel that it is made of.');

const thread = z.strictObject({
  diameter: size.describe('mm outside.'),
  pitch: z.number().positive().max(20).describe('mm from thread to thread.').optional(),
  hand: z.enum(['right', 'left']).describe('Which way it is cut.').optional(),
});

const takeOff = reach
  .describe('mm from the centre of its ball or bore to where the tube ends, set as drawn.')
  .optional();

/** One end of a link. */
const linkEnd = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('threaded'),
    takeOff,
    thread: thread.describe('The thread of the end.').optional(),
    reach: reach.describe("mm from the ball's centre to the thread's tip.").optional(),
    threadLength: size.describe('mm of that which are threaded, from the tip; less than reach.').optional(),
    jamNut: size.describe('mm that the jam nut is wide.').optional(),
    adjuster: z
      .number()
      .min(0)
      .max(500)
      .describe('mm that the end is to be screwed in or out from where it is set, each way.')
      .optional(),
  }),
  /** A bored sleeve, or an eye, that the tube is welded to. */
  z.strictObject({ kind: z.literal('welded'), takeOff }),
]);

const stock = {
  section: z.enum(['tube', 'rod']).describe('A tube, or solid.').optional(),
  wall: size.describe('mm of the wall of a tube; less than half of its outside.').optional(),
  material: material.optional(),
  offset: z
    .number()
    .min(0)
    .max(1000)
    .describe(
      'mm that the middle line of a bent link stands from the straight line between its ends, at the most.',
    )
    .optional(),
};

/** A link whose ends have these two names. */
const link = <First extends string, Second extends string>(first: First, second: Second) =>
  z.strictObject({
    ...stock,
    ends: z
      .strictObject({
        [first]: linkEnd.describe('How this end is made.').optional(),
        [second]: linkEnd.describe('How this end is made.').optional(),
      } as Record<First | Second, z.ZodOptional<typeof linkEnd>>)
      .describe('How its two ends are made.')
      .optional(),
  });

/** An arm where it leaves its boss. */
const arm = z.strictObject({
  width: size.describe('mm along its swing, where it leaves its boss.').optional(),
  thickness: size.describe('mm along the axis that it turns about, where it leaves its boss.').optional(),
  material: material.optional(),
});

export const linksSchema = z.strictObject({
  dragLink: link('pitman', 'steeringArm').describe('The drag link.').optional(),
  tieRod: link('left', 'right').describe('The tie rod.').optional(),
  lateralBar: link('axle', 'frame').describe('The lateral bar.').optional(),
  rods: link('axle', 'frame')
    .describe('Each tube of hairpins, wishbone or radius rods; each of the bars.')
    .optional(),
  pitmanArm: arm.describe('The pitman arm.').optional(),
  steeringArm: arm.describe('The steering arm.').optional(),
  tieRodArms: arm.describe('Each of the tie rod arms.').optional(),
});

/** What a layout tells of how its links and arms are made. */
export type LinksDocument = z.infer<typeof linksSchema>;
export type LinkEndDocument = z.infer<typeof linkEnd>;
export type ThreadedEnd = Extract<LinkEndDocument, { kind: 'threaded' }>;
export type LinkMaterial = z.infer<typeof material>;
