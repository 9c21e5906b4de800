import type { Component } from 'svelte';
import type { Contributor } from '../board/contributor.ts';
import type { Action, KeyUse } from '../controls/action.ts';
import type { StripMaker } from '../curves/strip.ts';

/** Something that a place hands in, at once or when it is first wanted. */
export interface Handed<Value> {
  /** Undefined until it has come. */
  readonly value: Value | undefined;
  /** Whether it was wanted and could not be loaded. */
  readonly failed?: boolean;
  /** Loads it if it is not there, or tries again; settles either way. */
  fetch?(): Promise<void>;
}

/** A component with its props. */
export interface Shown {
  readonly component: Component<Record<string, unknown>>;
  readonly props: Record<string, unknown>;
}

export type PlacePiece = Handed<Shown>;

/** A component with its props, whatever they are. */
// biome-ignore lint/suspicious/noExplicitAny: Svelte itself names the props of a component so.
export function shown<Props extends Record<string, any>>(component: Component<Props>, props: Props): Shown {
  return { component: component as unknown as Shown['component'], props };
}

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
