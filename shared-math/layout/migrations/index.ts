import { toVersion2 } from './0002-ride.ts';
import { toVersion3 } from './0003-origins.ts';
import type { LayoutMigration } from './migration.ts';

/** From version n to n + 1, keyed by n. */
export const LAYOUT_MIGRATIONS: ReadonlyMap<number, LayoutMigration> = new Map([
  [1, toVersion2],
  [2, toVersion3],
]);
