import { latePiece } from '../../controls/late.svelte.ts';
import { handOver } from '../../document/hand-over.ts';
import { getOpenLayout } from '../../document/open-layout.svelte.ts';
import { getShop } from '../../document/shop.svelte.ts';
import type { Place } from '../place.ts';
import { Outgoing } from './outgoing.svelte.ts';

/** What leaves the board: build sheet, templates, drawings, tables. */
export function sheetPlace(): Place {
  const outgoing = new Outgoing(getOpenLayout(), getShop(), handOver);
  return { id: 'sheet', name: 'Sheet', whole: latePiece(() => import('./SheetPlace.svelte'), { outgoing }) };
}
