import { z } from 'zod';
import {
  type CarSurvey,
  carSurveySchema,
  INSTRUMENTS,
  type Instrument,
} from '../../shared-math/adjust/list/index.ts';
import { type Question, questionSchema } from '../../shared-math/counter/index.ts';
import { LIMIT_NAMES, LIMITS, type LimitName, limitProblem } from '../../shared-math/findings/index.ts';
import { type LayoutDocument, layoutSchema } from '../../shared-math/layout/index.ts';
import { shelfPartSchema } from '../../shared-math/shelf/index.ts';
import { PAPER_NAMES } from '../output/pens/papers.ts';
import { outputRequest, outputStatus } from './output-contract.ts';

/**
 * Every call between the board and its host: what goes in, what comes out. Both hosts serve this map and neither
 * knows a call of its own; requests and replies are checked against it on the receiving side. JSON only.
 */

const id = z.string().regex(/^[0-9a-f-]{36}$/);
const name = z.string().trim().min(1).max(200);
const notes = z.string().max(20_000);
/** Milliseconds since 1970, UTC. */
const time = z.number().int();
const none = z.strictObject({});

const variantSummary = z.object({ id, name, savedAt: time });
const carSummary = z.object({ id, name, notes, variants: z.array(variantSummary) });
const customerSummary = z.object({ id, name, notes, cars: z.array(carSummary) });

/** What stands in the drawer, on the shelf or at the counter, and what can be in the bin. */
const kind = z.enum(['customer', 'car', 'variant', 'part', 'ticket']);
const ids = z.array(id).max(5000);

/** A document that goes out was read when it left the store or its file: it is not read a second time. */
const readDocument = z.custom<LayoutDocument>((value) => typeof value === 'object' && value !== null);

/** The same holds for a car's survey. */
const readSurvey = z.custom<CarSurvey>((value) => typeof value === 'object' && value !== null);

/** Likewise what was said on a ticket. */
const readQuestion = z.custom<Question>((value) => typeof value === 'object' && value !== null);

const customerOfTicket = z.string().trim().max(200);
const headline = z.string().max(400);

const ticket = z.object({
  id,
  customer: customerOfTicket,
  note: notes,
  question: readQuestion,
  headline,
  at: time,
  /** Counts the saves. */
  revision: z.number().int(),
  /** The layout that was made of it. */
  variantId: id.nullable(),
});

const openVariant = z.object({
  id,
  carId: id,
  carName: name,
  customerName: name,
  document: readDocument,
  /** Counts the saves. A save names the revision it was made from, so that two windows cannot overwrite each other. */
  revision: z.number().int(),
  savedAt: time,
});

const copyName = z.string().max(200);

const shopCopy = z.object({
  name: copyName,
  kind: z.enum(['day', 'update', 'before', 'rescued', 'salvaged', 'file']),
  at: time,
  bytes: z.number(),
});

const copyContents = z.object({
  customers: z.array(
    z.object({ name: z.string(), cars: z.array(z.object({ name: z.string(), layouts: z.number() })) }),
  ),
  layouts: z.number(),
  /** In the histories of these layouts, the present ones with them; none where the histories were left out. */
  states: z.number(),
  photos: z.number(),
  parts: z.number(),
  tickets: z.number(),
  /** When a layout in it was saved last. */
  newest: time.optional(),
});

const limitSchemas = Object.fromEntries(
  LIMIT_NAMES.map((name) => {
    const [least, most] = LIMITS[name].range;
    return [name, z.number().min(least).max(most).exactOptional()];
  }),
) as Record<LimitName, z.ZodExactOptional<z.ZodNumber>>;

/** A shop's own limits of the findings, each in its own unit; one that is left out is the usual one. */
const limits = z.strictObject(limitSchemas).superRefine((own, context) => {
  for (const name of LIMIT_NAMES) {
    const value = own[name];
    const problem = value === undefined ? undefined : limitProblem(name, value, own);
    if (problem?.kind === 'crossed')
      context.addIssue({
        code: 'custom',
        path: [name],
        message: `past its other end, ${problem.other}, which is ${problem.value}`,
      });
  }
});

/** What each of the shop's instruments leaves in doubt, one standard deviation: mm, the angle finder's in degrees. */
const instruments = z.strictObject(
  Object.fromEntries(INSTRUMENTS.map((name) => [name, z.number().min(0.01).max(25)])) as Record<
    Instrument,
    z.ZodNumber
  >,
);

const settings = z.strictObject({
  unit: z.enum(['in', 'mm']),
  /** Inches are shown to the nearest 1/n; 0 shows decimals. */
  fraction: z.literal([0, 16, 32, 64]),
  snap: z.boolean(),
  /** The variant that was open last, opened again at the next start. */
  lastVariant: id.nullable(),
  /** Set as a whole. */
  limits,
  /** mm by which this shop's hardpoints may be off, each way. */
  tolerance: z.number().min(0.1).max(25),
  /** Set as a whole. */
  instruments,
  /** Who draws in this shop, for the title block; empty where nobody said. */
  drawnBy: z.string().trim().max(120),
  /** The side that drivers of this shop's cars sit on, for a new car; null where nobody said. */
  driverSide: z.enum(['left', 'right']).nullable(),
  /** Whether units, driver's side and instruments were asked for and answered, be it with what is usual. */
  asked: z.boolean(),
  /** The walk round the board: the step that it stands at, counted from 0, and whether it is shown. */
  walk: z.strictObject({ step: z.number().int().min(0).max(20), shown: z.boolean() }),
  /** Whether the detail of the arcs stands on the board. */
  arcsDetail: z.boolean(),
  /** What of the strip below the board is folded to one line, so that the drawing has its room. Set as a whole. */
  folded: z.strictObject({ sliders: z.boolean(), curves: z.boolean() }),
  /** What the page stands on. */
  ground: z.enum(['as-computer', 'day', 'night']),
});

export const contract = {
  'program.about': {
    input: none,
    /** `notices` are sentences the person has to see once: a damaged database that was set aside, say. */
    output: z.object({ version: z.string(), dataFolder: z.string(), notices: z.array(z.string()) }),
  },
  'settings.get': { input: none, output: settings },
  'settings.set': { input: settings.partial(), output: settings },

  'shop.read': {
    input: none,
    /** `troubles` are sentences about what is broken in the store and left out. */
    output: z.object({
      customers: z.array(customerSummary),
      binCount: z.number(),
      troubles: z.array(z.string()),
    }),
  },

  'customer.add': { input: z.strictObject({ name, notes: notes.default('') }), output: z.object({ id }) },
  'customer.change': {
    input: z.strictObject({ id, name: name.optional(), notes: notes.optional() }),
    output: none,
  },

  'car.add': {
    input: z.strictObject({ customerId: id, name, notes: notes.default('') }),
    output: z.object({ id }),
  },
  /**
   * A customer's car with its first variant, all of it or nothing. A customer given by a name that the shop has already
   * is that one, the oldest of them; else there is a new one.
   */
  'car.begin': {
    input: z.strictObject({
      customer: z.union([z.strictObject({ id }), z.strictObject({ name })]),
      name,
      document: layoutSchema,
    }),
    output: z.object({ customerId: id, carId: id, variantId: id }),
  },
  'car.change': {
    input: z.strictObject({ id, name: name.optional(), notes: notes.optional() }),
    output: none,
  },
  'car.duplicate': { input: z.strictObject({ id }), output: z.object({ id }) },
  'car.move': { input: z.strictObject({ id, customerId: id }), output: none },

  /** What was measured on a car; an empty survey of revision 0 where nothing was. Refused as `refused-document` if damaged. */
  'survey.read': {
    input: z.strictObject({ carId: id }),
    output: z.object({ carId: id, survey: readSurvey, revision: z.number().int() }),
  },
  /** Saves it as a variant is saved: refused as `changed-elsewhere` if it was saved since, unless `force`. */
  'survey.save': {
    input: z.strictObject({
      carId: id,
      survey: carSurveySchema,
      revision: z.number().int(),
      force: z.boolean().default(false),
    }),
    output: z.object({ revision: z.number().int() }),
  },

  /** Reads a table of points, all of it or nothing; refused by line. Nothing is changed: the board says what would move. */
  'points.readCsv': {
    input: z.strictObject({ text: z.string(), fileName: z.string().max(300) }),
    output: z.object({
      /** What a bare number is in; empty if the head names no unit. */
      unit: z.enum(['', 'in', 'mm']),
      lines: z.array(
        z.object({
          line: z.number().int(),
          point: z.string(),
          at: z.tuple([z.string(), z.string(), z.string()]),
        }),
      ),
    }),
  },

  /** The list of what is measured on a variant's car as a table file to fill in, with what was measured; lengths in this unit. */
  'survey.exportCsv': {
    input: z.strictObject({ id, unit: z.enum(['in', 'mm']) }),
    output: z.object({ fileName: z.string(), text: z.string() }),
  },
  /** Reads a filled list, all of it or nothing; refused by line. Nothing is changed: the board takes the figures. */
  'survey.readCsv': {
    input: z.strictObject({ text: z.string(), fileName: z.string().max(300) }),
    output: z.object({
      lines: z.array(
        z.object({
          line: z.number().int(),
          row: z.string(),
          counted: z.string(),
          unit: z.enum(['', 'in', 'mm', 'degrees']),
          figure: z.string(),
        }),
      ),
    }),
  },

  /** A name that the car has already is made distinct: "Arm down 2". */
  'variant.add': { input: z.strictObject({ carId: id, document: layoutSchema }), output: z.object({ id }) },
  'variant.open': { input: z.strictObject({ id }), output: openVariant },
  /**
   * Saves a document. `step` names the edit it belongs to, in a word never used before (a UUID): saves of one
   * edit (one drag) share one place in the history. Refused as `changed-elsewhere` if the stored revision is
   * another than `revision`, unless `force`: then the other window's state stays in the history. Refused as
   * `refused-document` if the geometry is impossible. A variant that lies in the bin still takes saves.
   */
  'variant.save': {
    input: z.strictObject({
      id,
      document: layoutSchema,
      revision: z.number().int(),
      step: z.string().min(1).max(64),
      label: z.string().max(200),
      force: z.boolean().default(false),
    }),
    output: z.object({ revision: z.number().int(), savedAt: time }),
  },
  /** The name stands in the document too, so this is a save: the reply's revision is the next save's. */
  'variant.rename': {
    input: z.strictObject({ id, name }),
    output: z.object({ revision: z.number().int(), savedAt: time }),
  },
  /** The copy is called "Arm down copy", then "Arm down copy 2"; its history starts anew. */
  'variant.duplicate': { input: z.strictObject({ id }), output: z.object({ id }) },
  'variant.move': { input: z.strictObject({ id, carId: id }), output: none },

  /** Newest first; the newest is the present state. Long histories lose their oldest states, never the first. */
  'history.list': {
    input: z.strictObject({ variantId: id }),
    output: z.object({ states: z.array(z.object({ id: z.number().int(), at: time, label: z.string() })) }),
  },
  'history.read': {
    input: z.strictObject({ id: z.number().int() }),
    output: z.object({ document: readDocument }),
  },
  /** Makes an earlier state the present one, under the variant's present name. The state before it stays in the history. */
  'history.restore': { input: z.strictObject({ variantId: id, id: z.number().int() }), output: openVariant },

  /** Hides a thing with everything in it. */
  'bin.put': { input: z.strictObject({ kind, id }), output: none },
  'bin.list': {
    input: none,
    output: z.object({ entries: z.array(z.object({ kind, id, name, from: z.string(), at: time })) }),
  },
  /** Brings a thing back, and the car and customer that hold it if they lie in the bin too. */
  'bin.restore': { input: z.strictObject({ kind, id }), output: none },
  'bin.empty': { input: none, output: none },

  /** The shop's own stock, in the order in which it was put there. */
  'shelf.list': {
    input: none,
    output: z.object({ entries: z.array(z.object({ id, part: shelfPartSchema })) }),
  },
  'shelf.add': { input: z.strictObject({ part: shelfPartSchema }), output: z.object({ id }) },
  'shelf.change': { input: z.strictObject({ id, part: shelfPartSchema }), output: none },
  /** Into the bin; all of them or none. */
  'shelf.remove': { input: z.strictObject({ ids }), output: none },
  /** Back on the shelf, each in its old place. */
  'shelf.restore': { input: z.strictObject({ ids }), output: none },
  /**
   * Takes in a table file, all of it or nothing; refused by line and column. `replace` puts what was on the shelf into
   * the bin. What was added and removed is reported, so that it can be undone.
   */
  'shelf.importCsv': {
    input: z.strictObject({
      text: z.string(),
      fileName: z.string().max(300),
      replace: z.boolean().default(false),
    }),
    output: z.object({ added: ids, removed: ids }),
  },
  /** The whole shelf as a table file, lengths in this unit. */
  'shelf.exportCsv': {
    input: z.strictObject({ unit: z.enum(['in', 'mm']) }),
    output: z.object({ fileName: z.string(), text: z.string() }),
  },

  /**
   * Takes the text of a layout file into a car (`carId`) or a new car of a customer (`customerId`), or of a
   * whole-car file into a customer. Without either, into the customer "Imported". All of the file or nothing.
   */
  'file.import': {
    input: z.strictObject({
      text: z.string(),
      fileName: z.string().max(300),
      carId: id.optional(),
      customerId: id.optional(),
    }),
    output: z.object({ variantIds: z.array(id) }),
  },
  'file.exportVariant': {
    input: z.strictObject({ id }),
    output: z.object({ fileName: z.string(), text: z.string() }),
  },
  /** `damaged` names the layouts that cannot be read and are not in the file; it is there only where there are some. */
  'file.exportCar': {
    input: z.strictObject({ id }),
    output: z.object({ fileName: z.string(), text: z.string(), damaged: z.array(z.string()).optional() }),
  },

  /**
   * The whole copies of the shop: of each day with changes, and others; newest first. `trouble` is why the last of a day
   * could not be made, empty if it was. The shop as a file goes beside the calls (api/shop-routes.ts).
   */
  'copies.list': {
    input: none,
    output: z.object({ copies: z.array(shopCopy), bytes: z.number(), trouble: z.string() }),
  },
  'copies.look': { input: z.strictObject({ name: copyName }), output: copyContents },
  /** Puts a copy in the place of all that the shop holds, which becomes a copy itself. All of it or nothing. */
  'copies.restore': { input: z.strictObject({ name: copyName }), output: copyContents },

  /**
   * Begins to make something that leaves the board, of a variant as it is stored; with `preview`, pages to look at in
   * place of the file. It is made beside other calls: ask for its progress, then fetch it (api/output-routes.ts).
   */
  'output.start': {
    input: z.strictObject({
      id,
      wish: outputRequest,
      unit: settings.shape.unit,
      fraction: settings.shape.fraction,
      preview: z.boolean().default(false),
      /** Another variant to be shown beside it, where a picture can show both. */
      beside: id.optional(),
    }),
    output: z.object({ job: id }),
  },
  /** `not-found` where the output is no longer kept. */
  'output.progress': { input: z.strictObject({ job: id }), output: outputStatus },
  /** Calls it off, and lets go of what was made; one that is gone is no fault. */
  'output.cancel': { input: z.strictObject({ job: id }), output: none },

  /** The counter's tickets, newest first. */
  'ticket.list': { input: none, output: z.object({ tickets: z.array(ticket) }) },
  'ticket.add': {
    input: z.strictObject({ customer: customerOfTicket, note: notes, question: questionSchema, headline }),
    output: ticket,
  },
  /** Refused as `changed-elsewhere` if the ticket was saved since from another revision. */
  'ticket.save': {
    input: z.strictObject({
      id,
      customer: customerOfTicket,
      note: notes,
      question: questionSchema,
      headline,
      revision: z.number().int(),
    }),
    output: z.object({ revision: z.number().int() }),
  },
  /**
   * Makes a car of what was said: the customer, new unless there is one of that name, a car and a layout, all or none. Its
   * notes' figures are in this unit. Refused as `refused-document` where nothing can be drawn yet.
   */
  'ticket.makeCar': {
    input: z.strictObject({
      id,
      carName: name,
      unit: settings.shape.unit,
      fraction: settings.shape.fraction,
    }),
    output: z.object({ variantId: id }),
  },
  /** Begins to make the page of a ticket; from there on as `output.start`. */
  'ticket.print': {
    input: z.strictObject({
      id,
      paper: z.enum(PAPER_NAMES),
      unit: settings.shape.unit,
      fraction: settings.shape.fraction,
    }),
    output: z.object({ job: id }),
  },

  /** The demonstration layouts that ship with the program, and taking them in as a customer's cars. */
  'demonstration.list': {
    input: none,
    output: z.object({
      shop: name,
      customers: z.array(
        z.object({
          name,
          cars: z.array(
            z.object({ name, layouts: z.array(z.object({ file: z.string(), name, about: z.string() })) }),
          ),
        }),
      ),
    }),
  },
  /** Adds what is missing of the shop. A customer, car or layout of the same name that is there already is kept as it is. */
  'demonstration.take': { input: none, output: z.object({ variantIds: z.array(id) }) },
  /** The document of one demonstration, as a starting point for a new variant. */
  'demonstration.read': {
    input: z.strictObject({ file: z.string() }),
    output: z.object({ document: readDocument }),
  },
} as const;

export type Contract = typeof contract;
export type Call = keyof Contract;
/** What a caller writes: defaults may be left out. */
export type Request<Name extends Call> = z.input<Contract[Name]['input']>;
/** What a handler receives: checked, defaults filled in. */
export type Received<Name extends Call> = z.output<Contract[Name]['input']>;
export type Reply<Name extends Call> = z.output<Contract[Name]['output']>;

/** Why a call failed, as data on every transport. `reason` is one plain sentence for a person. */
export interface CallFailure {
  readonly code:
    | 'bad-request'
    | 'not-found'
    | 'changed-elsewhere'
    | 'refused-document'
    | 'storage-failed'
    | 'internal'
    /** By the page itself: nobody answers at its address. */
    | 'no-answer'
    /** By the page itself: whoever answers there is not the program that gave it its leave. */
    | 'not-admitted';
  readonly reason: string;
}

export type CallResult<Name extends Call> =
  | { readonly ok: true; readonly value: Reply<Name> }
  | { readonly ok: false; readonly failure: CallFailure };

/** The one function the board has of its host. */
export type CallHost = <Name extends Call>(name: Name, input: Request<Name>) => Promise<CallResult<Name>>;
export type Settings = Reply<'settings.get'>;
