import type { Component } from 'svelte';
import type { View } from '../../shared-math/drawing/index.ts';
import type { FrontEnd, FrontEndState } from '../../shared-math/linkage/index.ts';
import type { Turn } from '../../shared-math/pictorial/index.ts';
import type { BoardView } from './board-view.svelte.ts';
import type { Graspable } from './gestures/index.ts';
import type { Palette } from './inks.ts';
import type { Rect } from './labels.ts';
import type { OtherCar } from './other-cars.ts';
import type { OverlayInk, OverlayLine, OverlayMark, OverlayText } from './overlay.ts';
import type { Note, OverlaySource } from './overlay-picture.ts';
import type { RoadPicture } from './road-ground.ts';
import type { SpotNear } from './snapping.ts';

/** What one contributor has lying over the drawing, in px of the board: plain data. */
export interface OverlayPart {
  readonly lines?: readonly OverlayLine[];
  readonly marks?: readonly OverlayMark[];
  /** Words that look for room, after the names of what is chosen; `firstNotes` before them. */
  readonly notes?: readonly Note[];
  readonly firstNotes?: readonly Note[];
  /** Words that stand where they are put, and what other words keep off. */
  readonly texts?: readonly OverlayText[];
  readonly rects?: readonly Rect[];
}

/** Paints something under the car, in px of the board. */
export type Underlay = (context: CanvasRenderingContext2D, palette: Palette) => void;

/** A curve in space, for the pictorial: what the axle asks of a ball, or what the linkage allows it. */
export interface CurveInSpace {
  readonly kind: 'asked' | 'allowed';
  /** 3 numbers for each of its points, mm, the car's axes at ride height. */
  readonly points: Float64Array;
}

/** A closed line of the pictorial as it is seen in one turn; in any other it does not show. */
export interface OutlineInTurn {
  readonly turn: Turn;
  /** x, y, x, y …, mm of paper from where the car's origin is seen. */
  readonly points: readonly number[];
  readonly ink: OverlayInk;
}

/** A layout that is proposed, drawn in broken lines over the car as it stands. */
export interface Proposed {
  readonly frontEnd: FrontEnd;
  readonly state: FrontEndState;
  /** Whether links of the axle moved too. */
  readonly links: boolean;
}

/** What the pointer does besides points and paper. px of the board. */
export interface BoardPointer {
  /** Over the board with nothing in the hand. */
  move(x: number, y: number): void;
  /** A press that moved nothing; true where it was meant for this contributor alone. */
  tap(x: number, y: number): boolean;
  leave(): void;
}

/** A component that lies over or under the canvas; it is given the board's view and `onwheel` besides its own props. */
export interface BoardPiece {
  readonly component: Component<Record<string, unknown>>;
  readonly props: Record<string, unknown>;
}

export interface PieceProps {
  readonly view: BoardView;
  readonly onwheel: (event: WheelEvent) => void;
}

/** A piece of the board from a component and those of its props that the board does not give. */
// biome-ignore lint/suspicious/noExplicitAny: Svelte itself names the props of a component so.
export function piece<Props extends Record<string, any>>(
  component: Component<Props>,
  props: Omit<Props, keyof PieceProps>,
): BoardPiece {
  return { component: component as unknown as BoardPiece['component'], props };
}

/**
 * What a place hands in to the board; the board itself knows no place. Every member is optional. Functions are read in
 * effects: whatever state they read redraws what they answer.
 */
export interface Contribution {
  readonly id: string;
  overlay?(source: OverlaySource): OverlayPart;
  /** Words look for room anew whenever this turns true. */
  settles?(): boolean;
  /** Under the car, which is then drawn so that it can be seen through. */
  underlay?(): Underlay | undefined;
  /** A road in the place of the level ground. */
  ground?(): RoadPicture | undefined;
  /** Variants beside the open one; of several contributors the last that answers. */
  otherCars?(): readonly OtherCar[] | undefined;
  proposed?(): Proposed | undefined;
  /** Curves in the pictorial. */
  curvesInSpace?(): readonly CurveInSpace[];
  /** Closed lines over the pictorial, each worked out for one turn of it. */
  outlinesInTurn?(): readonly OutlineInTurn[];
  /** Spots that draw a dragged point to themselves, beside other points and the grid. */
  readonly snaps?: SpotNear;
  /** What can be taken hold of though it is no point. */
  readonly graspable?: Graspable;
  readonly pointer?: BoardPointer;
  /** The pointer's shape while the hand is idle. */
  cursor?(): string | undefined;
  /** Whether the drawing is laid over something like ink on tracing paper. */
  traced?(): boolean;
  /** Whether arrow keys are for this contributor now, so that the board should have the focus. */
  wantsKeys?(): boolean;
  /** One sentence on its keys, for those who hear the board. */
  readonly help?: string;
  readonly below?: BoardPiece;
  readonly above?: BoardPiece;
  /** Beside the buttons of the views. */
  readonly button?: BoardPiece;
  /** Where something of it is on the board, for tests that drive the pointer: by the name that it is asked by. */
  readonly spots?: Readonly<
    Record<
      string,
      (
        ...asked: readonly never[]
      ) => { readonly view: View; readonly at: readonly [number, number] } | undefined
    >
  >;
}

/** Called once for a board, where effects may be made. */
export type Contributor = (view: BoardView) => Contribution;
