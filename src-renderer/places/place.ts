import type { Contributor } from '../board/contributor.ts';
import type { Action, KeyUse } from '../controls/action.ts';
import type { Handed, Shown } from '../controls/late.svelte.ts';
import type { StripMaker } from '../curves/strip.ts';

export type PlacePiece = Handed<Shown>;

/** A strip of curves as plain data; `curves` draws it. */
export type PlaceStrip = Handed<StripMaker>;

/** A place of the job and all that it hands in. Only `id` and `name` must be there. */
export interface Place {
  readonly id: string;
  /** As the row of places says it. */
  readonly name: string;
  /** Where the work on a new car begins, as long as nothing is known of it. */
  readonly begins?: boolean;
  /** In the place of board, column and strip: a place without a board. */
  readonly whole?: PlacePiece;
  /** The right-hand column; the home place's if there is none. */
  readonly column?: PlacePiece;
  /** Below the board on the left; the pose's sliders if there is none. */
  readonly pose?: PlacePiece;
  /** Its curves, below the board on the right; the home place's if there are none. */
  readonly strip?: PlaceStrip;
  /** What stands within any of these and comes when it is first shown: all of it is loaded once nothing else is to be done. */
  readonly within?: readonly PlacePiece[];
  /** What it has on the board, in whatever place the person is. */
  readonly contributors?: readonly Contributor[];
  /** While it is open, what the home place says of the travel gives way to what it has on the board itself. */
  readonly ownMarks?: boolean;
  readonly actions?: readonly Action[];
  readonly keyUses?: readonly KeyUse[];
  /** Files let go over the page that are this place's; it is opened for them. */
  readonly files?: { takes(file: File): boolean; take(files: readonly File[]): void };
  /** Escape: returns whether there was something to be put away. */
  escape?(): boolean;
  entered?(): void;
  left?(): void;
  /** A place was opened: this or another. */
  opened?(place: Place): void;
}

/** Makes a place once for the page, while the page is set up: it may read contexts, give some, and make effects. */
export type PlaceMaker = () => Place;
