import type { LayoutMigration } from './migration.ts';

/**
 * Version 4 brings what loads the axle and what its links are made of, how the car sits, and more ways to hold an axle. A
 * document that says nothing of them keeps saying nothing.
 */
export const toVersion4: LayoutMigration = (document) => ({ ...document, version: 4 });
