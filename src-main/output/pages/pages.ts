import type { PageFrame } from '../flow/page-frame.ts';

/** The pages of a kind of print, as named parts in the order in which they are drawn. */
export type Pages = readonly (readonly [what: string, draw: (pageFrame: PageFrame) => void])[];
