import type { Contributor } from '../board/contributor.ts';
import type { Action, KeyUse } from '../controls/action.ts';
import type { Place, PlacePiece, PlaceStrip } from './place.ts';

/** What all places together hand in, and what stands on the page while one of them is open. */
export class Composed {
  readonly places: readonly Place[];
  readonly home: Place;
  /** Where the work on a new car begins: the first place that says so, or the first of all. */
  readonly beginning: Place;
  readonly contributors: readonly Contributor[];
  readonly actions: readonly Action[];
  readonly keyUses: readonly KeyUse[];

  /** `home`: the id of the place that the board opens in; the first place if there is none of that id. */
  constructor(places: readonly Place[], home: string) {
    const [first] = places;
    if (!first) throw new Error('a page without places');
    this.places = places;
    this.home = places.find(({ id }) => id === home) ?? first;
    this.beginning = places.find(({ begins }) => begins) ?? first;
    this.contributors = places.flatMap((place) => place.contributors ?? []);
    this.actions = places.flatMap((place) => place.actions ?? []);
    this.keyUses = places.flatMap((place) => place.keyUses ?? []);
  }

  /** Returns undefined if no place has that id. */
  named(id: string): Place | undefined {
    return this.places.find((place) => place.id === id);
  }

  /** The right-hand column and the curves while a place is open; the home place's where it has none. */
  columnOf(place: Place): PlacePiece | undefined {
    return place.column ?? this.home.column;
  }
  stripOf(place: Place): PlaceStrip | undefined {
    return place.strip ?? this.home.strip;
  }

  /** Leaves one place for another; each hears of it, and what the other shows is loaded if it was not yet. */
  open(to: Place, from: Place): void {
    from.left?.();
    to.entered?.();
    for (const place of this.places) place.opened?.(to);
    void this.fetch(to);
  }

  /** Loads what a place shows, as far as it has not come; settles whether or not it comes. */
  async fetch(place: Place): Promise<void> {
    await Promise.all(
      [place.whole, place.pose, this.columnOf(place), this.stripOf(place)].map((piece) => piece?.fetch?.()),
    );
  }

  /** Loads all of a place, what is first shown within it too. */
  async fetchWhole(place: Place): Promise<void> {
    await this.fetch(place);
    for (const piece of place.within ?? []) await piece.fetch?.();
  }

  /** Which files belong to which place, each to the first that takes it, and what is left. */
  sorted(files: readonly File[]): {
    readonly own: ReadonlyMap<Place, readonly File[]>;
    readonly left: File[];
  } {
    const own = new Map<Place, File[]>();
    const left: File[] = [];
    for (const file of files) {
      const place = this.places.find((each) => each.files?.takes(file));
      if (place) own.set(place, [...(own.get(place) ?? []), file]);
      else left.push(file);
    }
    return { own, left };
  }

  /** Escape: returns whether some place had something to put away; the first that has does so. */
  escape(): boolean {
    return this.places.some((place) => place.escape?.());
  }
}
