import { createHash } from 'node:crypto';
import { z } from 'zod';
import { type CarSurvey, carSurveySchema } from '../../shared-math/adjust/list/index.ts';
import { type LayoutDocument, type Refusal, readLayout, refusalOf } from '../../shared-math/layout/index.ts';
import { failed, type Outcome, succeeded } from '../../shared-math/outcome.ts';
import { type CheckedDrawing, checkKept } from './drawing-check.ts';
import type { CheckedPhoto } from './photo-check.ts';

/** The version of the whole-car file that this program writes, and the newest that it reads. */
const CAR_FILE_VERSION = 3;
/** What a car that nobody measured is written as, for older programs. */
const CAR_FILE_VERSION_UNMEASURED = 2;
export const CAR_FILE_FORMAT = 'toeboard-car';
/** What the name of such a file ends in, so that systems know whose it is. */
export const CAR_FILE_EXTENSION = 'toeboard-car';

const carFileSchema = z.strictObject({
  format: z.literal(CAR_FILE_FORMAT),
  version: z.literal([1, CAR_FILE_VERSION_UNMEASURED, CAR_FILE_VERSION]),
  /** Whose car it is; version 1 did not tell. */
  customer: z.string().trim().min(1).max(200).optional(),
  name: z.string().trim().min(1).max(200),
  notes: z.string().max(20_000).default(''),
  /** Each is read as a layout document of its own, which may be of an older version. */
  layouts: z.array(z.unknown()).max(1000),
  /** What was measured on the car, since version 3; how it was typed, and whether its sides are alike. */
  survey: carSurveySchema.shape.survey.optional(),
  taken: carSurveySchema.shape.taken,
  alike: carSurveySchema.shape.alike,
  /** The photos that the layouts name: each file as it was brought in, in base64. */
  photos: z
    .array(z.strictObject({ hash: z.string().regex(/^[0-9a-f]{64}$/), content: z.base64() }))
    .max(200)
    .default([]),
});

/** A whole car as it travels between shops: its layouts without their histories. */
export interface CarFile {
  readonly format: typeof CAR_FILE_FORMAT;
  readonly version: typeof CAR_FILE_VERSION | typeof CAR_FILE_VERSION_UNMEASURED;
  readonly customer?: string | undefined;
  readonly name: string;
  readonly notes: string;
  readonly layouts: readonly LayoutDocument[];
  readonly survey?: CarSurvey['survey'];
  readonly taken?: CarSurvey['taken'];
  readonly alike?: boolean | undefined;
  readonly photos?: readonly { readonly hash: string; readonly content: string }[];
}

/** A whole car as it was read: its photos looked at like any that is brought in. */
export interface ReadCar extends Omit<CarFile, 'photos' | 'survey' | 'taken' | 'alike'> {
  readonly measured: CarSurvey | undefined;
  readonly photos: readonly { readonly content: Uint8Array; readonly facts: CheckedPhoto | CheckedDrawing }[];
}

/** The hashes of all photos and drawings that layouts name, each once. */
export function photosNamed(layouts: readonly LayoutDocument[]): string[] {
  return [
    ...new Set(
      layouts.flatMap(({ photos, underlays = [] }) => [...photos, ...underlays].map(({ hash }) => hash)),
    ),
  ];
}

export function carFile(
  { name, notes, customer }: Pick<CarFile, 'name' | 'notes' | 'customer'>,
  layouts: readonly LayoutDocument[],
  contents: ReadonlyMap<string, Uint8Array> = new Map(),
  measured?: CarSurvey,
): CarFile {
  const photos = [...contents].map(([hash, content]) => ({
    hash,
    content: Buffer.from(content).toString('base64'),
  }));
  const whose = customer === undefined ? {} : { customer };
  const file = {
    format: CAR_FILE_FORMAT,
    version: measured ? CAR_FILE_VERSION : CAR_FILE_VERSION_UNMEASURED,
    ...whose,
    name,
    notes,
    ...measured,
    layouts,
  } as const;
  return photos.length > 0 ? { ...file, photos } : file;
}

export function isCarFile(input: unknown): boolean {
  return typeof input === 'object' && input !== null && 'format' in input && input.format === CAR_FILE_FORMAT;
}

/** Takes parsed JSON as a whole-car file. One layout that cannot be taken refuses the whole, with its place. */
export function readCarFile(input: unknown): Outcome<ReadCar, Refusal> {
  const version =
    typeof input === 'object' && input !== null && 'version' in input ? input.version : undefined;
  if (typeof version === 'number' && version > CAR_FILE_VERSION)
    return failed({
      path: 'version',
      reason: `this file is version ${version}, newer than this program reads (${CAR_FILE_VERSION}); use a newer Toeboard`,
    });
  const parsed = carFileSchema.safeParse(input);
  if (!parsed.success) return failed(refusalOf(parsed.error, input));
  const { name, notes, customer, survey, taken, alike } = parsed.data;
  const measured = survey && { survey, taken, ...(alike === undefined ? {} : { alike }) };
  const layouts: LayoutDocument[] = [];
  for (const [index, entry] of parsed.data.layouts.entries()) {
    const read = readLayout(entry);
    if (!read.ok) {
      const { path, reason } = read.failure;
      return failed({ path: `layouts[${index}]${path === '' ? '' : `.${path}`}`, reason });
    }
    layouts.push(read.value);
  }
  const photos: { content: Uint8Array; facts: CheckedPhoto | CheckedDrawing }[] = [];
  for (const [index, { hash, content: base64 }] of parsed.data.photos.entries()) {
    const content = Buffer.from(base64, 'base64');
    const facts = checkKept(content);
    if (!facts.ok) return failed({ path: `photos[${index}].content`, reason: facts.failure });
    if (createHash('sha256').update(content).digest('hex') !== hash)
      return failed({ path: `photos[${index}].content`, reason: 'is not the photo that its hash names' });
    photos.push({ content, facts: facts.value });
  }
  return succeeded({
    format: CAR_FILE_FORMAT,
    version: measured ? CAR_FILE_VERSION : CAR_FILE_VERSION_UNMEASURED,
    customer,
    name,
    notes,
    measured,
    layouts,
    photos,
  });
}
