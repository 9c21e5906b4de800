import type { LayoutDocument } from './schema.ts';

/** The value at a path of an object. */
export function valueAt(root: unknown, path: string): unknown {
  let value = root;
  for (const key of path.split('.')) value = (value as Record<string, unknown>)[key];
  return value;
}

/** A copy with the value at the path replaced; everything beside the path is shared. */
export function withValueAt<Root>(root: Root, keys: readonly string[], value: unknown): Root {
  const [key, ...rest] = keys;
  if (key === undefined) return value as Root;
  if (Array.isArray(root)) return root.with(Number(key), withValueAt(root[Number(key)], rest, value)) as Root;
  const record = root as Record<string, unknown>;
  return { ...record, [key]: withValueAt(record[key], rest, value) } as Root;
}

/**
 * A copy of the document with the value at a path replaced, as `car.wheelbase` or `obstacles.0.centre`. The result is
 * not validated.
 */
export function withValue(document: LayoutDocument, path: string, value: unknown): LayoutDocument {
  return withValueAt(document, path.split('.'), value);
}
