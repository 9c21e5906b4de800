import type { z } from 'zod';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { parseJson } from '../outside/index.ts';
import { geometryRefusal } from './geometry-checks.ts';
import { LAYOUT_MIGRATIONS } from './migrations/index.ts';
import type { LayoutMigration } from './migrations/migration.ts';
import { type Refusal, refusalOf } from './refusals.ts';
import { type LayoutDocument, layoutSchema } from './schema.ts';
import { LAYOUT_VERSION } from './version.ts';

/** Characters. A layout is a few thousand; a text beyond this is not one, and is refused before it is parsed. */
export const LAYOUT_TEXT_MAX = 2_000_000;

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/**
 * Takes parsed JSON as a layout document: lifts older versions, refuses newer ones by name, refuses unknown keys
 * and impossible geometry. Never repairs in silence. The input is not changed.
 */
export function readLayout(input: unknown): Outcome<LayoutDocument, Refusal> {
  if (!isRecord(input)) return failed({ path: '', reason: 'not a layout document: expected an object { }' });
  if (input['format'] !== 'toeboard-layout')
    return failed({ path: 'format', reason: 'expected "toeboard-layout": this is not a layout document' });

  let document = input;
  let version = input['version'];
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return failed({ path: 'version', reason: 'expected a whole number, 1 or more' });
  if (version > LAYOUT_VERSION)
    return failed({
      path: 'version',
      reason: `this document is version ${version}, newer than this program reads (${LAYOUT_VERSION}); use a newer Toeboard`,
    });
  for (; (version as number) < LAYOUT_VERSION; version = (version as number) + 1) {
    const lift = LAYOUT_MIGRATIONS[(version as number) - 1] as LayoutMigration;
    document = lift(document);
  }

  const parsed = layoutSchema.safeParse(document);
  if (!parsed.success) return failed(refusalOf(parsed.error, document));
  const refusal = geometryRefusal(parsed.data);
  return refusal ? failed(refusal) : succeeded(parsed.data);
}

/**
 * Takes an edited copy of a document that was taken before. What the two share by identity was looked at then, so that
 * a step of a drag costs one branch of the document and not all of it; whatever is refused is refused as `readLayout` does.
 */
export function readEdited(taken: LayoutDocument, edited: LayoutDocument): Outcome<LayoutDocument, Refusal> {
  if (Object.keys(taken).some((key) => !(key in edited))) return readLayout(edited);
  const result: Record<string, unknown> = { ...edited };
  for (const key of Object.keys(edited) as (keyof LayoutDocument)[]) {
    if (edited[key] === taken[key]) continue;
    const branch = layoutSchema.shape[key] as z.ZodType | undefined;
    const parsed = branch?.safeParse(edited[key]);
    if (!parsed?.success) return readLayout(edited);
    result[key] = parsed.data;
  }
  const refusal = geometryRefusal(result as LayoutDocument);
  return refusal ? failed(refusal) : succeeded(result as LayoutDocument);
}

/** Takes the text of a file as a layout document. */
export function parseLayout(text: string): Outcome<LayoutDocument, Refusal> {
  if (text.length > LAYOUT_TEXT_MAX)
    return failed({ path: '', reason: 'too large to be a layout document (more than 2 million characters)' });
  const input = parseJson(text);
  return input.ok ? readLayout(input.value) : failed({ path: '', reason: input.failure });
}
