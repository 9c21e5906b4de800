import {
  geometryRefusal,
  type LayoutDocument,
  readLayout,
  refusalLine,
} from '../../shared-math/layout/index.ts';
import { shownName } from './readable.ts';
import { StoreError } from './store-error.ts';

/** The text of a document as it is stored. Its shape was checked where it came in; impossible geometry is refused. */
export function storedText(document: LayoutDocument): string {
  const refusal = geometryRefusal(document);
  if (refusal) throw new StoreError('refused-document', refusalLine(refusal));
  return JSON.stringify(document);
}

/** A stored document, lifted to today's version. */
export function storedDocument(text: string, name: string): LayoutDocument {
  let input: unknown;
  try {
    input = JSON.parse(text);
  } catch (error) {
    throw new StoreError('refused-document', `${shownName(name)}: the stored document is damaged`, error);
  }
  const read = readLayout(input);
  if (!read.ok) throw new StoreError('refused-document', `${shownName(name)}: ${refusalLine(read.failure)}`);
  return read.value;
}
