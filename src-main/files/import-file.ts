import { type LayoutDocument, parseLayout, type Refusal } from '../../shared-math/layout/index.ts';
import { failed, type Outcome, succeeded } from '../../shared-math/outcome.ts';
import { type CarFile, isCarFile, readCarFile } from './car-file.ts';

/** Characters. A layout is a few thousand, a car a few dozen layouts. */
const FILE_TEXT_MAX = 10_000_000;

export type ImportedFile =
  | { readonly kind: 'layout'; readonly layout: LayoutDocument }
  | { readonly kind: 'car'; readonly car: CarFile };

function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return undefined;
  }
}

/** Takes the text of a file for what it says it is: a whole car, else a layout. */
export function readImport(text: string): Outcome<ImportedFile, Refusal> {
  if (text.length > FILE_TEXT_MAX)
    return failed({ path: '', reason: 'too large to be a Toeboard file (more than 10 million characters)' });
  const input = parsedJson(text);
  if (isCarFile(input)) {
    const car = readCarFile(input);
    return car.ok ? succeeded({ kind: 'car', car: car.value }) : car;
  }
  const layout = parseLayout(text);
  return layout.ok ? succeeded({ kind: 'layout', layout: layout.value }) : layout;
}
