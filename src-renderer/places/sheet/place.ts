import { handOver } from '../../document/hand-over.ts';
import { getOpenLayout } from '../../document/open-layout.svelte.ts';
import { getShop } from '../../document/shop.svelte.ts';
import { type Place, placePiece } from '../place.ts';
import { Outgoing } from './outgoing.svelte.ts';
import SheetPlace from './SheetPlace.svelte';

/** What leaves the board: build sheet, templates, drawings, tables. */
export function sheetPlace(): Place {
  const outgoing = new Outgoing(getOpenLayout(), getShop(), handOver);
  return { id: 'sheet', name: 'Sheet', whole: placePiece(SheetPlace, { outgoing }) };
}
