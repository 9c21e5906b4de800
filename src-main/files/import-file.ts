import { type LayoutDocument, parseLayout, type Refusal } from '../../shared-math/layout/index.ts';
import { failed, type Outcome, succeeded } from '../../shared-math/outcome.ts';
import { fileKind, LOOKED_AT } from '../../shared-math/outside/file-kinds.ts';
import { parseJson } from '../../shared-math/outside/index.ts';
import { CAR_FILE_FORMAT, isCarFile, type ReadCar, readCarFile } from './car-file.ts';

/** Characters. A layout is a few thousand, a car a few dozen layouts and its photos. */
export const FILE_TEXT_MAX = 90_000_000;

export type ImportedFile =
  | { readonly kind: 'layout'; readonly layout: LayoutDocument }
  | { readonly kind: 'car'; readonly car: ReadCar };

/** The mark of a whole car's file. Within a string of it the quotation marks would be escaped. */
const CAR_MARK = new RegExp(`"format"\\s*:\\s*"${CAR_FILE_FORMAT}"`);

/** A refusal that says what was refused, as one of a layout says by its own words. */
function ofCar({ path, reason }: Refusal): Refusal {
  return path === '' ? { path: 'car file', reason } : { path: `car file: ${path}`, reason };
}

/** Takes a text that bears a car's mark; undefined if it turns out to be another sort of file that holds the mark. */
function readCar(text: string): Outcome<ImportedFile, Refusal> | undefined {
  const input = parseJson(text);
  if (!input.ok) return failed(ofCar({ path: '', reason: input.failure }));
  if (!isCarFile(input.value)) return undefined;
  const car = readCarFile(input.value);
  return car.ok ? succeeded({ kind: 'car', car: car.value }) : failed(ofCar(car.failure));
}

/** What a file is that was no text before it was read as one; undefined where it may have been. */
function otherKind(text: string): string | undefined {
  const kind = fileKind(new TextEncoder().encode(text.slice(0, LOOKED_AT)));
  return kind === 'plain text' ? undefined : kind;
}

/** Takes the text of a file for what it says it is: a whole car, else a layout. */
export function readImport(text: string): Outcome<ImportedFile, Refusal> {
  if (text.length > FILE_TEXT_MAX)
    return failed({ path: '', reason: 'too large to be a Toeboard file (more than 90 million characters)' });
  const other = otherKind(text);
  if (other !== undefined) return failed({ path: '', reason: `it is ${other}, neither a layout nor a car` });
  // Looked for by its mark first: rubbish by the megabyte is not worth parsing.
  const car = CAR_MARK.test(text) ? readCar(text) : undefined;
  if (car) return car;
  const layout = parseLayout(text);
  return layout.ok ? succeeded({ kind: 'layout', layout: layout.value }) : layout;
}
