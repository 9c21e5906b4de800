/**
 * One file per step, named by the version it leads to (`0002-shaft.ts`), each a pure function from the document
 * of the version before. Steps are frozen once released: a later step never reads today's schema.
 */
export type LayoutMigration = (document: Record<string, unknown>) => Record<string, unknown>;

/** From version n to n + 1, keyed by n. Version 1 is the first, so there is nothing to lift yet. */
export const LAYOUT_MIGRATIONS: ReadonlyMap<number, LayoutMigration> = new Map();
