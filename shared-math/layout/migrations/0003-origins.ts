import type { LayoutMigration } from './migration.ts';

/**
 * Version 3 brings `origins`, where each point's place comes from, the box's own angle between input and sector shaft, and
 * which side the driver sits on. A document that says nothing of them keeps saying nothing: the angle that it happens to
 * draw is what the finding looks at, not a property of its box.
 */
export const toVersion3: LayoutMigration = (document) => ({ ...document, version: 3 });
