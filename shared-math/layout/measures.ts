import { z } from 'zod';
import type { Point } from '../geometry/points.ts';
import { COORDINATE_MAX } from '../tolerances.ts';

// Under the program's strict content policy the schema compiler's probe for `eval` would log an error.
z.config({ jitless: true });

// What the parts of the document's schema are built of. mm.

export const coordinate = z.number().min(-COORDINATE_MAX).max(COORDINATE_MAX);
export const point = z
  .tuple([coordinate, coordinate, coordinate])
  .readonly()
  .describe('[x, y, z], mm: x forward, y left, z up, from the ground below the front axle, at ride height.');
/** The same, by what carries it. */
export const pointOf = <Carried extends Point>() => point as unknown as z.ZodType<Carried, Carried>;
export const length = z.number().positive().max(COORDINATE_MAX);
/** A direction in the same axes. Its length is of no account, but it has one. */
export const direction = point.describe('[x, y, z], a direction: x forward, y left, z up; any length but 0.');
/** JSON Schema has no word for a text whose blanks are taken off first; this pattern refuses one of blanks alone. */
export const notBlank = { pattern: '\\S' };
