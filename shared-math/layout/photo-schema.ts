import { z } from 'zod';
import { coordinate, length, point } from './measures.ts';

// Photos under the drawing, in the layout document. The pixels are in the store, by hash; here is what was specified about them.
// A spot is px right and down in the upright original; mm are those of the car.

/** px. No picture that is taken in is larger. */
export const PHOTO_SIDE_MAX = 20_000;

const px = z
  .number()
  .min(-PHOTO_SIDE_MAX)
  .max(2 * PHOTO_SIDE_MAX);
const spot = z.tuple([px, px]).readonly();
const side = z.number().int().min(1).max(PHOTO_SIDE_MAX);
/** The place of a hardpoint in the document: `steering.box.pitmanBall`. */
const pointId = z.string().min(1).max(80);

/** A point of a plane whose places in it are known: mm right and down of the plane's own. */
const known = z.strictObject({ at: spot, place: z.tuple([coordinate, coordinate]).readonly() });

export const photoSchema = z.strictObject({
  view: z.enum(['side', 'top', 'front']),
  /** SHA-256 of the file as it was brought in. */
  hash: z.string().regex(/^[0-9a-f]{64}$/, 'expected a hash of 64 hexadecimal digits'),
  name: z.string().trim().min(1).max(200),
  /** Width and height of the upright original. */
  size: z.tuple([side, side]).readonly(),
  opacity: z.number().min(0.05).max(1),
  shown: z.boolean(),
  /** Left and right exchanged: taken from the other side than the view looks. */
  flipped: z.boolean().optional(),
  /** What of it shows: left, top, right, bottom, px. */
  crop: z.tuple([px, px, px, px]).readonly().optional(),
  /** Points on a line that is straight in the world. */
  lens: z.strictObject({ line: z.array(spot).min(3).max(40) }).optional(),
  straighten: z.strictObject({ points: z.array(known).min(4).max(40) }).optional(),
  scale: z.strictObject({ from: spot, to: spot, distance: length }).optional(),
  /** A level line, its left end first. */
  level: z.strictObject({ from: spot, to: spot }).optional(),
  /** The spot that shows a known hardpoint, and where that stood when this was marked. */
  anchor: z.strictObject({ at: spot, point: pointId, stands: point }).optional(),
  /** Where the straightened or scaled plane stands along the view: y from the side, z from above, x from ahead. */
  depth: coordinate.optional(),
  /** Of the camera from that plane. Absent, nothing is corrected for depth. */
  distance: length.optional(),
  /** Which spot was said to show which hardpoint. */
  marks: z
    .array(z.strictObject({ point: pointId, at: spot }))
    .max(80)
    .default([]),
  /** Measured on the photo; `tape` is what the tape says of the same. */
  notes: z
    .array(z.strictObject({ from: spot, to: spot, text: z.string().max(120), tape: length.optional() }))
    .max(60)
    .default([]),
  /** Lengths by the tape between two hardpoints, straight through space. */
  lengths: z
    .array(z.strictObject({ from: pointId, to: pointId, tape: length }))
    .max(40)
    .default([]),
});

export type Photo = z.infer<typeof photoSchema>;
