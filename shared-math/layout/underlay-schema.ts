import { z } from 'zod';
import { notBlank } from './measures.ts';

// Drawings that lie under the views, in the layout document. Their files are in the store, by hash; here is where they lie.

/** Of drawings in a layout, and of the layers of one that are turned off. */
export const UNDERLAYS_MAX = 12;

export const underlaySchema = z.strictObject({
  view: z.enum(['side', 'top', 'front']).describe('The view that it lies under.'),
  hash: z
    .string()
    .regex(/^[0-9a-f]{64}$/, 'expected a hash of 64 hexadecimal digits')
    .describe('SHA-256 of the file, a DXF or an SVG, as it was brought in.'),
  name: z
    .string()
    .trim()
    .min(1)
    .max(200)
    .meta({ ...notBlank, description: 'What the drawing is called.' }),
  unit: z.number().min(1e-6).max(1e6).describe('mm of one unit of the drawing.'),
  unitFrom: z
    .enum(['file', 'assumed', 'typed', 'points'])
    .describe(
      'Where that comes from: said by the file, assumed, typed, or from two points whose places are known.',
    ),
  turn: z
    .number()
    .min(-180)
    .max(180)
    .describe('Degrees that the drawing is turned, counter-clockwise as the view is seen.'),
  at: z
    .tuple([z.number().min(-1e6).max(1e6), z.number().min(-1e6).max(1e6)])
    .readonly()
    .describe("Where the drawing's own 0, 0 lies in the view: right and up, mm."),
  flipped: z
    .boolean()
    .describe('Left and right swapped before it is turned. Absent, they are not.')
    .optional(),
  shown: z.boolean().describe('Whether it is drawn, and points are drawn to it.'),
  layersOff: z
    .array(z.string().max(300))
    .max(200)
    .default([])
    .describe('The names of its layers that are turned off.'),
});

export type Underlay = z.infer<typeof underlaySchema>;
