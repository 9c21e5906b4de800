import { createHash } from 'node:crypto';

/** A value with the keys of its objects in order, so that the order in which they were written does not count. */
function inOrder(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(inOrder);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, held]) => held !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
      .map(([key, held]) => [key, inOrder(held)]),
  );
}

/**
 * A short mark of what a layout, or what was said on a ticket, holds, for paper: the first 8 hex digits of the SHA-256 (FIPS
 * 180-4) of it as JSON with sorted keys. Two sheets with one mark were made from one content.
 */
export function contentMark(document: object): string {
  return createHash('sha256')
    .update(JSON.stringify(inOrder(document)))
    .digest('hex')
    .slice(0, 8);
}
