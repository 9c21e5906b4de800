import type { LayoutMigration } from './migration.ts';

/** Version 2 brings `ride`: springs, dampers, tyres and masses. A document that tells nothing of them has none. */
export const toVersion2: LayoutMigration = (document) => ({ ride: null, ...document, version: 2 });
