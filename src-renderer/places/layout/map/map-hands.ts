import type { BoardView } from '../../../board/board-view.svelte.ts';
import { toScreen } from '../../../board/camera.ts';
import type { BoxMap, MapSpot } from './box-map.svelte.ts';

/** px about the pointer from which it is drawn to the best spot and the ridge. */
const REACH = 9;

/** What the pointer does to the map: shows what stands under it, and on a click sends the box there. */
export class MapHands {
  readonly #view: BoardView;
  readonly #map: BoxMap;

  constructor(view: BoardView, map: BoxMap) {
    this.#view = view;
    this.#map = map;
  }

  /** The spot of the map under a place of the board; nothing off the map. */
  #spotUnder(x: number, y: number): MapSpot | undefined {
    const { camera, sheet, shown, weight } = this.#view;
    const { view } = this.#map;
    if (!this.#map.shown || !shown.includes(view)) return undefined;
    const [left, top] = toScreen(camera, sheet.origin[view]);
    const right = (x - left) / camera.scale;
    const down = (y - top) / camera.scale;
    return this.#map.spotAt(view === 'side' ? -right : right, -down, (REACH * weight) / camera.scale);
  }

  pointAt(x: number, y: number): void {
    const pointed = this.#spotUnder(x, y) ?? null;
    if (pointed || this.#map.pointed) this.#map.pointed = pointed;
  }

  leave(): void {
    if (this.#map.pointed) this.#map.pointed = null;
  }

  /** Sends the box to the spot under a place of the board; false off the map. */
  tap(x: number, y: number): boolean {
    const spot = this.#spotUnder(x, y);
    if (spot) this.#map.moveTo(spot);
    return spot !== undefined;
  }

  /** Where a spot stands on the board, px. */
  onBoard(spot: MapSpot): readonly [number, number] {
    const { view } = this.#map;
    return this.#view.onBoard(view, [view === 'side' ? -spot.across : spot.across, -spot.up]);
  }
}
