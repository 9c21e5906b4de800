// The places of the job, in its order. A new place is a folder here and a line in this list.
import { layoutPlace } from './layout/place.svelte.ts';
import { measurePlace } from './measure/place.svelte.ts';
import type { PlaceMaker } from './place.ts';
import { roadPlace } from './road/place.svelte.ts';
import { shaftPlace } from './shaft/place.svelte.ts';
import { sheetPlace } from './sheet/place.ts';
import { turnPlace } from './turn/place.svelte.ts';

export type { Place, PlaceMaker, PlacePiece, PlaceStrip } from './place.ts';

export const PLACES: readonly PlaceMaker[] = [
  measurePlace,
  layoutPlace,
  turnPlace,
  shaftPlace,
  roadPlace,
  sheetPlace,
];

/** Where the board opens, and whose column and curves stand where a place has none of its own. */
export const HOME = 'layout';
