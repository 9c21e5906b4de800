import { z } from 'zod';
import { coordinate, length, notBlank, point } from './measures.ts';

// Photos under the drawing, in the layout document. The pixels are in the store, by hash; here is what was specified about them.
// A spot is px right and down in the upright original; mm are those of the car.

/** px. No picture that is taken in is larger. */
export const PHOTO_SIDE_MAX = 20_000;

const px = z
  .number()
  .min(-PHOTO_SIDE_MAX)
  .max(2 * PHOTO_SIDE_MAX);
const spot = z.tuple([px, px]).readonly().describe('[right, down], px of the upright original.');
const side = z.number().int().min(1).max(PHOTO_SIDE_MAX);
/** The place of a hardpoint in the document: `steering.box.pitmanBall`. */
const pointId = z
  .string()
  .min(1)
  .max(80)
  .describe('A hardpoint: its path in the document with the side spelled out, as axle.left.kingpinTop.');

/** A point of a plane whose places in it are known: mm right and down of the plane's own. */
const known = z.strictObject({
  at: spot.describe('Where it shows: [right, down], px of the upright original.'),
  place: z.tuple([coordinate, coordinate]).readonly().describe("[right, down], mm of the plane's own."),
});

export const photoSchema = z.strictObject({
  view: z.enum(['side', 'top', 'front']).describe('The view that it lies under.'),
  hash: z
    .string()
    .regex(/^[0-9a-f]{64}$/, 'expected a hash of 64 hexadecimal digits')
    .describe('SHA-256 of the file as it was brought in.'),
  name: z
    .string()
    .trim()
    .min(1)
    .max(200)
    .meta({ ...notBlank, description: 'What the photo is called.' }),
  page: z
    .number()
    .int()
    .min(1)
    .max(100_000)
    .describe('Of a PDF, which of its pages, from 1. Absent, the first.')
    .optional(),
  size: z.tuple([side, side]).readonly().describe('Width and height of the upright original, px.'),
  opacity: z.number().min(0.05).max(1).describe('1 is not seen through.'),
  shown: z.boolean().describe('Whether it is drawn.'),
  front: z
    .literal(true)
    .describe(
      'Of several in one view, the one that lies over the others. Absent, later ones lie over earlier.',
    )
    .optional(),
  flipped: z
    .boolean()
    .describe('Left and right swapped: taken from the other side than the view looks. Absent, it is not.')
    .optional(),
  crop: z
    .tuple([px, px, px, px])
    .readonly()
    .describe('What of it shows: left, top, right, bottom, px. Absent, all of it.')
    .optional(),
  lens: z
    .strictObject({
      line: z.array(spot).min(3).max(40).describe('Points on a line that is straight in the world.'),
    })
    .describe('What tells how the lens bends straight lines. Absent, nothing is unbent.')
    .optional(),
  straighten: z
    .strictObject({
      points: z.array(known).min(4).max(40).describe('Points of one plane whose places in it are known.'),
    })
    .describe('What lays a plane that was seen askew flat. Absent, it is taken as it was seen.')
    .optional(),
  scale: z
    .strictObject({
      from: spot,
      to: spot,
      distance: length.describe('mm between the two.'),
    })
    .describe('A distance that is known. Absent, the straightened plane alone says the scale.')
    .optional(),
  level: z
    .strictObject({ from: spot, to: spot })
    .describe('A line that is level in the world, its left end first. Absent, the picture is taken as level.')
    .optional(),
  levelCheck: z
    .strictObject({
      by: z.enum(['floor', 'wheels']).describe('On the floor, or both wheel centres.'),
      from: spot,
      to: spot,
    })
    .describe(
      'Two spots that lie level, from above square across the car, by which the level is checked. Absent, it is not checked.',
    )
    .optional(),
  anchor: z
    .strictObject({
      at: spot.describe('The spot that shows it: [right, down], px of the upright original.'),
      point: pointId,
      stands: point.describe('Where the point stood when this was marked: [x, y, z], mm.'),
    })
    .describe('What puts the picture in its place: the spot that shows a known hardpoint.')
    .optional(),
  depth: coordinate
    .describe(
      'mm: where the straightened or scaled plane stands along the view: y from the side, z from above, x from ahead.',
    )
    .optional(),
  distance: length
    .describe(
      'mm of the camera from that plane. Absent, and with no focal length, nothing is corrected for depth.',
    )
    .optional(),
  distanceSure: z
    .boolean()
    .describe('Whether the person confirmed a distance that looks wrong. Absent, nobody did.')
    .optional(),
  distanceDoubt: length
    .describe('mm: one standard deviation of that distance. Absent, three thousandths of it.')
    .optional(),
  focal: z
    .strictObject({
      px: z
        .number()
        .positive()
        .max(100 * PHOTO_SIDE_MAX)
        .describe('px of the upright original.'),
      share: z.number().min(0.001).max(1).describe('The share of it that is one standard deviation.'),
    })
    .describe("The camera's focal length by the photo's own file. Absent, the file does not say.")
    .optional(),
  marks: z
    .array(
      z.strictObject({
        point: pointId,
        at: spot,
        depth: coordinate
          .describe('mm: where the point stands along the view, typed. Absent, nobody typed it.')
          .optional(),
      }),
    )
    .max(80)
    .default([])
    .describe('Which spot was said to show which hardpoint.'),
  notes: z
    .array(
      z.strictObject({
        from: spot,
        to: spot,
        text: z.string().max(120).describe('What it is.'),
        tape: length.describe('mm by the tape for the same. Absent, it was not taped.').optional(),
      }),
    )
    .max(60)
    .default([])
    .describe('Distances measured on the photo.'),
  lengths: z
    .array(
      z.strictObject({ from: pointId, to: pointId, tape: length.describe('mm, straight through space.') }),
    )
    .max(40)
    .default([])
    .describe('Lengths by the tape between two hardpoints.'),
});

export type Photo = z.infer<typeof photoSchema>;
