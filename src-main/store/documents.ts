import { type LayoutDocument, readLayout, refusalLine } from '../../shared-math/layout/index.ts';
import { StoreError } from './store-error.ts';

/** The text of a document as it is stored. Only what can be read back is let in. */
export function storedText(document: LayoutDocument): string {
  const read = readLayout(document);
  if (!read.ok) throw new StoreError('refused-document', refusalLine(read.failure));
  return JSON.stringify(read.value);
}

/** A stored document, lifted to today's version. */
export function storedDocument(text: string, name: string): LayoutDocument {
  let input: unknown;
  try {
    input = JSON.parse(text);
  } catch (error) {
    throw new StoreError('refused-document', `${name}: the stored document is damaged`, error);
  }
  const read = readLayout(input);
  if (!read.ok) throw new StoreError('refused-document', `${name}: ${refusalLine(read.failure)}`);
  return read.value;
}
