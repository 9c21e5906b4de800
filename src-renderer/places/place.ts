import type { Component } from 'svelte';
import type { Contributor } from '../board/contributor.ts';
import type { Action, KeyUse } from '../controls/action.ts';

/** A component with its props. */
export interface PlacePiece {
  /** Undefined until it has come, of a piece that is loaded when it is first wanted. */
  readonly component: Component<Record<string, unknown>> | undefined;
  readonly props: Record<string, unknown>;
  /** Whether it was wanted and could not be loaded. */
  readonly failed?: boolean;
  /** Loads it if it is not there, or tries again; settles either way. */
  fetch?(): Promise<void>;
}

/** A piece of a place from a component and its props. */
// biome-ignore lint/suspicious/noExplicitAny: Svelte itself names the props of a component so.
export function placePiece<Props extends Record<string, any>>(
  component: Component<Props>,
  props: Props,
): PlacePiece {
  return { component: component as unknown as NonNullable<PlacePiece['component']>, props };
}

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
  /** Below the board: on the left, the pose's sliders if there is none; on the right, the home place's curves. */
  readonly pose?: PlacePiece;
  readonly strip?: PlacePiece;
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
