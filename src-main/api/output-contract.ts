import { z } from 'zod';
import { SWEPT_PARTS } from '../../shared-math/swept/index.ts';
import { DRAWING_FORMATS, DRAWN_VIEWS, formatTrouble, roomsTrouble } from '../output/drawings/job.ts';
import { FILM_SECONDS, FILM_WIDTHS, FILMED } from '../output/film/job.ts';
import { PRINT_KINDS } from '../output/pages/job.ts';
import { PAPER_NAMES } from '../output/pens/papers.ts';
import { NUMBERS, TABLE_NAMES } from '../output/tables/names.ts';

/** What can leave the board. Poses: mm, degrees, and the brakes' grip as a share of the load. */
export const outputRequest = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('print'),
      print: z.enum(PRINT_KINDS),
      paper: z.enum(PAPER_NAMES),
      /** Parts of which the build sheet shows the room that they need. */
      rooms: z.array(z.enum(SWEPT_PARTS)).max(SWEPT_PARTS.length).optional(),
    }),
    z.strictObject({
      kind: z.literal('drawing'),
      view: z.enum(DRAWN_VIEWS),
      format: z.enum(DRAWING_FORMATS),
      heave: z.number().min(-20_000).max(20_000).default(0),
      roll: z.number().min(-180).max(180).default(0),
      handwheel: z.number().min(-36_000).max(36_000).default(0),
      braking: z.number().min(0).max(2).default(0),
      /** From where a pictorial looks: from ahead toward the car's left, and above level. */
      turn: z.number().min(-360).max(360).optional(),
      rise: z.number().min(0).max(90).optional(),
      /** Parts of which its views show the room that they need. */
      rooms: z.array(z.enum(SWEPT_PARTS)).max(SWEPT_PARTS.length).optional(),
    }),
    z.strictObject({ kind: z.literal('moving') }),
    z.strictObject({
      kind: z.literal('film'),
      over: z.enum(FILMED),
      width: z.literal(FILM_WIDTHS),
      seconds: z.literal(FILM_SECONDS),
    }),
    z.strictObject({
      kind: z.literal('table'),
      table: z.enum(TABLE_NAMES),
      numbers: z.enum(NUMBERS).default('data'),
    }),
  ])
  .superRefine((wish, context) => {
    const trouble = wish.kind === 'drawing' ? formatTrouble(wish.view, wish.format) : undefined;
    if (trouble) context.addIssue({ code: 'custom', path: ['format'], message: trouble });
    const noRooms = wish.kind === 'drawing' ? roomsTrouble(wish.view, wish.rooms) : undefined;
    if (noRooms) context.addIssue({ code: 'custom', path: ['rooms'], message: noRooms });
  });

/** How far an output has come. `of` is 0 where nobody knows how much there is to do. */
export const outputStatus = z.object({
  state: z.enum(['waiting', 'working', 'ready', 'failed', 'called-off']),
  done: z.number().int(),
  of: z.number().int(),
  what: z.string(),
  /** Why it failed: a sentence without its full stop. */
  reason: z.string(),
  /** `parts` are the pages of a preview; a file has one. */
  file: z
    .object({
      fileName: z.string(),
      type: z.string(),
      bytes: z.number().int(),
      parts: z.number().int(),
    })
    .nullable(),
});
