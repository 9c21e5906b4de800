import { z } from 'zod';
import { layoutSchema } from '../../shared-math/layout/index.ts';

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

/** What stands in the drawer, and what can be in the bin. */
const kind = z.enum(['customer', 'car', 'variant']);

const openVariant = z.object({
  id,
  carId: id,
  carName: name,
  customerName: name,
  document: layoutSchema,
  /** Counts the saves. A save names the revision it was made from, so that two windows cannot overwrite each other. */
  revision: z.number().int(),
  savedAt: time,
});

const settings = z.strictObject({
  unit: z.enum(['in', 'mm']),
  /** Inches are shown to the nearest 1/n; 0 shows decimals. */
  fraction: z.union([z.literal(0), z.literal(16), z.literal(32), z.literal(64)]),
  snap: z.boolean(),
  /** The variant that was open last, opened again at the next start. */
  lastVariant: id.nullable(),
});

export const contract = {
  'program.about': {
    input: none,
    output: z.object({ version: z.string(), dataFolder: z.string() }),
  },
  'settings.get': { input: none, output: settings },
  'settings.set': { input: settings.partial(), output: settings },

  'shop.read': {
    input: none,
    output: z.object({ customers: z.array(customerSummary), binCount: z.number() }),
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
  'car.change': {
    input: z.strictObject({ id, name: name.optional(), notes: notes.optional() }),
    output: none,
  },
  'car.duplicate': { input: z.strictObject({ id }), output: z.object({ id }) },
  'car.move': { input: z.strictObject({ id, customerId: id }), output: none },

  'variant.add': { input: z.strictObject({ carId: id, document: layoutSchema }), output: z.object({ id }) },
  'variant.open': { input: z.strictObject({ id }), output: openVariant },
  /**
   * Saves a document. `step` names the edit it belongs to: saves of one edit (one drag) share one place in the
   * history. Refused as `changed-elsewhere` if the stored revision is another than `revision`, unless `force`.
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
  'variant.rename': { input: z.strictObject({ id, name }), output: none },
  'variant.duplicate': { input: z.strictObject({ id }), output: z.object({ id }) },
  'variant.move': { input: z.strictObject({ id, carId: id }), output: none },

  'history.list': {
    input: z.strictObject({ variantId: id }),
    output: z.object({ states: z.array(z.object({ id: z.number().int(), at: time, label: z.string() })) }),
  },
  'history.read': {
    input: z.strictObject({ id: z.number().int() }),
    output: z.object({ document: layoutSchema }),
  },
  /** Makes an earlier state the present one. The state before it stays in the history. */
  'history.restore': { input: z.strictObject({ variantId: id, id: z.number().int() }), output: openVariant },

  'bin.put': { input: z.strictObject({ kind, id }), output: none },
  'bin.list': {
    input: none,
    output: z.object({ entries: z.array(z.object({ kind, id, name, from: z.string(), at: time })) }),
  },
  'bin.restore': { input: z.strictObject({ kind, id }), output: none },
  'bin.empty': { input: none, output: none },

  /** Takes the text of a layout file into a car, or of a whole-car file into a customer. */
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
  'file.exportCar': {
    input: z.strictObject({ id }),
    output: z.object({ fileName: z.string(), text: z.string() }),
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
  'demonstration.take': { input: none, output: z.object({ variantIds: z.array(id) }) },
  /** The document of one demonstration, as a starting point for a new variant. */
  'demonstration.read': {
    input: z.strictObject({ file: z.string() }),
    output: z.object({ document: layoutSchema }),
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
    | 'internal';
  readonly reason: string;
}

export type CallResult<Name extends Call> =
  | { readonly ok: true; readonly value: Reply<Name> }
  | { readonly ok: false; readonly failure: CallFailure };

/** The one function the board has of its host. */
export type CallHost = <Name extends Call>(name: Name, input: Request<Name>) => Promise<CallResult<Name>>;
export type Settings = Reply<'settings.get'>;
