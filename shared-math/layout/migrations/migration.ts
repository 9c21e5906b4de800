/**
 * One file per step, named by the version it leads to (`0002-ride.ts`), each a pure function from the document
 * of the version before. Steps are frozen once released: a later step never reads today's schema.
 */
export type LayoutMigration = (document: Record<string, unknown>) => Record<string, unknown>;
