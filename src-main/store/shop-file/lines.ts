import { z } from 'zod';
import { carSurveySchema } from '../../../shared-math/adjust/list/index.ts';
import { questionSchema } from '../../../shared-math/counter/index.ts';
import { readLayout, refusalLine } from '../../../shared-math/layout/index.ts';
import { shelfPartSchema } from '../../../shared-math/shelf/index.ts';
import { CUSTOMER_MOST, HEADLINE_MOST } from '../tickets.ts';

/*
 * The file of a whole shop: one JSON value a line, in an order in which what holds comes before what is held. The first
 * line tells what the file is, the last how many lines are before it and the SHA-256 of all their bytes (FIPS 180-4),
 * so that a file that was cut off or changed on its way is known. Photos are in base64.
 */
export const SHOP_FORMAT = 'toeboard-shop';
/**
 * Version 2 has what was measured on a car, version 3 the count of each layout's sheets, version 4 the counter's tickets,
 * version 5 such that name a photo; a shop is written as the lowest version that holds what it has, for older programs.
 */
export const SHOP_VERSION = 5;
export const SHOP_VERSION_WITHOUT_TICKET_PHOTOS = 4;
export const SHOP_VERSION_WITHOUT_TICKETS = 3;
export const SHOP_VERSION_UNCOUNTED = 2;
export const SHOP_VERSION_UNMEASURED = 1;

/** How far the histories of the layouts go along: not at all, the newest so many states of each, or all of them. */
export type HistoryWish = 'none' | 'all' | number;

const id = z.string().regex(/^[0-9a-f-]{36}$/);
const name = z.string().max(200);
const notes = z.string().max(20_000);
const time = z.number().int().min(0);
const binned = time.nullable();
/** Of the document of an earlier state: it is read as one when it is looked at. */
const stateText = z.string().max(2_000_000);

export const headSchema = z.strictObject({
  format: z.literal(SHOP_FORMAT),
  version: z.literal([
    SHOP_VERSION_UNMEASURED,
    SHOP_VERSION_UNCOUNTED,
    SHOP_VERSION_WITHOUT_TICKETS,
    SHOP_VERSION_WITHOUT_TICKET_PHOTOS,
    SHOP_VERSION,
  ]),
  made: time,
  /** Whether earlier states of the layouts are in it, all of them or the newest of each. */
  history: z.boolean(),
});

const document = z.unknown().superRefine((input, context) => {
  const read = readLayout(input);
  if (!read.ok) context.addIssue({ code: 'custom', message: refusalLine(read.failure) });
});

/** Every line between the first and the last holds one of these, under its name. */
export const lineSchema = z.union([
  z.strictObject({ customer: z.strictObject({ id, name, notes, binned }) }),
  z.strictObject({
    car: z.strictObject({ id, customer: id, name, notes, binned, survey: carSurveySchema.optional() }),
  }),
  z.strictObject({
    layout: z.strictObject({
      id,
      car: id,
      name,
      revision: z.number().int().min(1),
      saved: time,
      binned,
      document,
      sheet: z.strictObject({ revision: z.number().int().min(1), mark: z.string().max(64) }).optional(),
    }),
  }),
  z.strictObject({
    state: z.strictObject({
      layout: id,
      step: z.string().max(64),
      label: z.string().max(200),
      at: time,
      text: stateText,
    }),
  }),
  z.strictObject({ part: z.strictObject({ id, figures: shelfPartSchema, binned }) }),
  z.strictObject({
    ticket: z.strictObject({
      id,
      customer: z.string().max(CUSTOMER_MOST),
      note: notes,
      question: questionSchema,
      headline: z.string().max(HEADLINE_MOST),
      asked: time,
      revision: z.number().int().min(1),
      /** Of a layout that is in the file. */
      layout: id.optional(),
      binned,
    }),
  }),
  z.strictObject({ setting: z.strictObject({ name: z.string().min(1).max(60), value: z.unknown() }) }),
  z.strictObject({
    photo: z.strictObject({ hash: z.string().regex(/^[0-9a-f]{64}$/), added: time, content: z.base64() }),
  }),
]);

export const endSchema = z.strictObject({
  end: z.strictObject({ lines: z.number().int().min(1), sha256: z.string().regex(/^[0-9a-f]{64}$/) }),
});

export type ShopLine = z.output<typeof lineSchema>;
