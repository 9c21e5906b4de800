import type { LAYOUT_VERSION } from '../version.ts';
import { toVersion2 } from './0002-ride.ts';
import { toVersion3 } from './0003-origins.ts';
import { toVersion4 } from './0004-loads.ts';
import type { LayoutMigration } from './migration.ts';

/** As many steps as it takes from version 1 to version N: one less than N. */
type StepsTo<N extends number, Steps extends readonly LayoutMigration[] = readonly []> = [
  LayoutMigration,
  ...Steps,
]['length'] extends N
  ? Steps
  : StepsTo<N, readonly [LayoutMigration, ...Steps]>;

/** The n-th step leads from version n to n + 1. One too few or too many for today's version does not compile. */
export const LAYOUT_MIGRATIONS: StepsTo<typeof LAYOUT_VERSION> = [toVersion2, toVersion3, toVersion4];
