import { z } from 'zod';
import { COORDINATE_MAX } from '../tolerances.ts';

// What links and arms are made of and how links' ends are made, in the layout document. Every figure may be left out:
// what is absent is not known, and whoever needs it takes a usual one and says so. mm. A tube's outside stands in
// `diameters`, which the drawing and the clearances read.

const size = z.number().positive().max(500);
const reach = z.number().positive().max(COORDINATE_MAX);

/** Steel as it is sold for links; the strength of each stands in `links/materials.ts`. */
const material = z.enum(['mild-steel', 'drawn-steel', 'chromoly', 'stainless']);

const thread = z.strictObject({
  /** Outside. */
  diameter: size,
  /** From thread to thread. */
  pitch: z.number().positive().max(20).optional(),
  hand: z.enum(['right', 'left']).optional(),
});

/** One end of a link. `takeOff` runs from the centre of its ball or bore to where the tube ends, set as drawn. */
const linkEnd = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('threaded'),
    takeOff: reach.optional(),
    thread: thread.optional(),
    /** From the ball's centre to the thread's tip. */
    reach: reach.optional(),
    /** How much of that is threaded, from the tip. */
    threadLength: size.optional(),
    /** Width of the jam nut. */
    jamNut: size.optional(),
    /** How far the end is to be screwed in or out from where it is set, each way. */
    adjuster: z.number().min(0).max(500).optional(),
  }),
  /** A bored sleeve, or an eye, that the tube is welded to. */
  z.strictObject({ kind: z.literal('welded'), takeOff: reach.optional() }),
]);

const stock = {
  section: z.enum(['tube', 'rod']).optional(),
  /** Of a tube. */
  wall: size.optional(),
  material: material.optional(),
  /** Of a bent link: how far its middle line stands from the straight line between its ends, at the most. */
  offset: z.number().min(0).max(1000).optional(),
};

/** A link whose ends have these two names. */
const link = <First extends string, Second extends string>(first: First, second: Second) =>
  z.strictObject({
    ...stock,
    ends: z
      .strictObject({ [first]: linkEnd.optional(), [second]: linkEnd.optional() } as Record<
        First | Second,
        z.ZodOptional<typeof linkEnd>
      >)
      .optional(),
  });

/** An arm where it leaves its boss: `width` along its swing, `thickness` along the axis that it turns about. */
const arm = z.strictObject({
  width: size.optional(),
  thickness: size.optional(),
  material: material.optional(),
});

export const linksSchema = z.strictObject({
  dragLink: link('pitman', 'steeringArm').optional(),
  tieRod: link('left', 'right').optional(),
  lateralBar: link('axle', 'frame').optional(),
  /** Each tube of hairpins, wishbone or radius rods; each of the bars. */
  rods: link('axle', 'frame').optional(),
  pitmanArm: arm.optional(),
  steeringArm: arm.optional(),
  tieRodArms: arm.optional(),
});

/** What a layout tells of how its links and arms are made. */
export type LinksDocument = z.infer<typeof linksSchema>;
export type LinkEndDocument = z.infer<typeof linkEnd>;
export type ThreadedEnd = Extract<LinkEndDocument, { kind: 'threaded' }>;
export type LinkMaterial = z.infer<typeof material>;
