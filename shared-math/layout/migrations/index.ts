import { toVersion2 } from './0002-ride.ts';
import { toVersion3 } from './0003-origins.ts';

/**
 * One file per step, named by the version it leads to (`0002-ride.ts`), each a pure function from the document
 * of the version before. Steps are frozen once released: a later step never reads today's schema.
 */
export type LayoutMigration = (document: Record<string, unknown>) => Record<string, unknown>;

/** From version n to n + 1, keyed by n. */
export const LAYOUT_MIGRATIONS: ReadonlyMap<number, LayoutMigration> = new Map([
  [1, toVersion2],
  [2, toVersion3],
]);
