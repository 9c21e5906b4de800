import { type LayoutDocument, withValue } from '../../../../shared-math/layout/index.ts';

/** A copy of the document without the optional value at a path of two keys, as `car.noseAhead`. */
export function withoutValue(document: LayoutDocument, path: string): LayoutDocument {
  const [part, key] = path.split('.') as [keyof LayoutDocument, string];
  const { [key]: _, ...rest } = document[part] as Record<string, unknown>;
  return withValue(document, part, rest);
}
