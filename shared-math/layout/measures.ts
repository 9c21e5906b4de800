import { z } from 'zod';
import type { Point } from '../geometry/points.ts';
import { COORDINATE_MAX } from '../tolerances.ts';

// Under the program's strict content policy the schema compiler's probe for `eval` would log an error.
z.config({ jitless: true });

// What the parts of the document's schema are built of. mm.

export const coordinate = z.number().min(-COORDINATE_MAX).max(COORDINATE_MAX);
export const point = z.tuple([coordinate, coordinate, coordinate]).readonly();
/** The same, by what carries it. */
export const pointOf = <Carried extends Point>() => point as unknown as z.ZodType<Carried, Carried>;
export const length = z.number().positive().max(COORDINATE_MAX);
