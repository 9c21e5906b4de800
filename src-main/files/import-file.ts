import { type LayoutDocument, parseLayout, type Refusal } from '../../shared-math/layout/index.ts';
import { failed, type Outcome, succeeded } from '../../shared-math/outcome.ts';
import { CAR_FILE_FORMAT, isCarFile, type ReadCar, readCarFile } from './car-file.ts';

/** Characters. A layout is a few thousand, a car a few dozen layouts and its photos. */
export const FILE_TEXT_MAX = 90_000_000;

export type ImportedFile =
  | { readonly kind: 'layout'; readonly layout: LayoutDocument }
  | { readonly kind: 'car'; readonly car: ReadCar };

/** The parsed text if it is a whole car's. Looked for by its mark first: rubbish by the megabyte is not worth parsing. */
function carIn(text: string): unknown {
  if (!text.includes(`"${CAR_FILE_FORMAT}"`)) return undefined;
  try {
    const input: unknown = JSON.parse(text.replace(/^\uFEFF/, ''));
    return isCarFile(input) ? input : undefined;
  } catch {
    return undefined;
  }
}

/** Takes the text of a file for what it says it is: a whole car, else a layout. */
export function readImport(text: string): Outcome<ImportedFile, Refusal> {
  if (text.length > FILE_TEXT_MAX)
    return failed({ path: '', reason: 'too large to be a Toeboard file (more than 90 million characters)' });
  const input = carIn(text);
  if (input !== undefined) {
    const car = readCarFile(input);
    return car.ok ? succeeded({ kind: 'car', car: car.value }) : car;
  }
  const layout = parseLayout(text);
  return layout.ok ? succeeded({ kind: 'layout', layout: layout.value }) : layout;
}
