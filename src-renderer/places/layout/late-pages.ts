import { type Handed, latePiece, type Shown } from '../../controls/late.svelte.ts';
import type { ColumnPage } from '../../document/shell.svelte.ts';

/** The pages of the right column that are files of their own, all but the two that the board opens with, and what it says of a point. */
export type LatePages = Readonly<Record<Exclude<ColumnPage, 'verdict' | 'points'> | 'point', Handed<Shown>>>;

export const latePages = (): LatePages => ({
  point: latePiece(() => import('../../panels/points/PointChosen.svelte'), {}),
  around: latePiece(() => import('./around/AroundPage.svelte'), {}),
  car: latePiece(() => import('./car/CarFacts.svelte'), {}),
  links: latePiece(() => import('./links/LinksPage.svelte'), {}),
  compare: latePiece(() => import('../../panels/compare/ComparePage.svelte'), {}),
  tune: latePiece(() => import('./tune/TunePage.svelte'), {}),
});
