import { z } from 'zod';
import { type LayoutDocument, type Refusal, readLayout, refusalOf } from '../../shared-math/layout/index.ts';
import { failed, type Outcome, succeeded } from '../../shared-math/outcome.ts';

/** The version of the whole-car file that this program writes, and the newest that it reads. */
const CAR_FILE_VERSION = 1;
export const CAR_FILE_FORMAT = 'toeboard-car';

const carFileSchema = z.strictObject({
  format: z.literal(CAR_FILE_FORMAT),
  version: z.literal(CAR_FILE_VERSION),
  name: z.string().trim().min(1).max(200),
  notes: z.string().max(20_000).default(''),
  /** Each is read as a layout document of its own, which may be of an older version. */
  layouts: z.array(z.unknown()).max(1000),
});

/** A whole car as it travels between shops: its layouts without their histories. */
export interface CarFile {
  readonly format: typeof CAR_FILE_FORMAT;
  readonly version: typeof CAR_FILE_VERSION;
  readonly name: string;
  readonly notes: string;
  readonly layouts: readonly LayoutDocument[];
}

export function carFile(name: string, notes: string, layouts: readonly LayoutDocument[]): CarFile {
  return { format: CAR_FILE_FORMAT, version: CAR_FILE_VERSION, name, notes, layouts };
}

export function isCarFile(input: unknown): boolean {
  return typeof input === 'object' && input !== null && 'format' in input && input.format === CAR_FILE_FORMAT;
}

/** Takes parsed JSON as a whole-car file. One layout that cannot be taken refuses the whole, with its place. */
export function readCarFile(input: unknown): Outcome<CarFile, Refusal> {
  const version =
    typeof input === 'object' && input !== null && 'version' in input ? input.version : undefined;
  if (typeof version === 'number' && version > CAR_FILE_VERSION)
    return failed({
      path: 'version',
      reason: `this file is version ${version}, newer than this program reads (${CAR_FILE_VERSION}); use a newer Toeboard`,
    });
  const parsed = carFileSchema.safeParse(input);
  if (!parsed.success) return failed(refusalOf(parsed.error, input));
  const { name, notes } = parsed.data;
  const layouts: LayoutDocument[] = [];
  for (const [index, entry] of parsed.data.layouts.entries()) {
    const read = readLayout(entry);
    if (!read.ok) {
      const { path, reason } = read.failure;
      return failed({ path: `layouts[${index}]${path === '' ? '' : `.${path}`}`, reason });
    }
    layouts.push(read.value);
  }
  return succeeded(carFile(name, notes, layouts));
}
