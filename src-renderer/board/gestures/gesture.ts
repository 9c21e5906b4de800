import type { Drawing, View, ViewPoint } from '../../../shared-math/drawing/index.ts';
import type { Handle } from '../handles.ts';

/** A pointer's news, in px of the board. */
export interface PointerNews {
  readonly id: number;
  readonly x: number;
  readonly y: number;
  /** 0 the main button, 1 the middle one, as browsers count. */
  readonly button: number;
  readonly kind: 'mouse' | 'pen' | 'touch';
  readonly shift: boolean;
  readonly alt: boolean;
}

export type Signal =
  | { readonly type: 'down' | 'move' | 'up'; readonly pointer: PointerNews }
  /** The system took the pointer away. */
  | { readonly type: 'lost'; readonly id: number }
  | { readonly type: 'escape' }
  /** Shift or Alt went down or up while nothing moved. */
  | { readonly type: 'keys'; readonly shift: boolean; readonly alt: boolean };

/** A point or the axle in the hand, from being taken up to being put down. */
export interface Grip {
  /** px from where it was taken up. */
  moveTo(right: number, down: number, keys: { readonly shift: boolean; readonly alt: boolean }): void;
  putDown(): void;
  /** As if it had never been taken up. */
  giveBack(): void;
}

/** Something of the drawing under the pointer that a hand can take hold of. */
export interface Hold {
  /** Undefined if it cannot be taken after all. `scale`: px per mm. */
  take(scale: number): Grip | undefined;
}

/** Finds what can be taken hold of though it is no point. */
export interface Graspable {
  /** At a place of a view's own plane, mm. */
  at(drawing: Drawing, view: View, place: ViewPoint): Hold | undefined;
  /** What a pointer at rest could take; nothing once there is nothing. */
  offer(hold: Hold | undefined): void;
}

/** What gestures do to the board. */
export interface Hands {
  handleAt(x: number, y: number, kind: PointerNews['kind']): Handle | undefined;
  hover(handle: Handle | undefined): void;
  select(handle: Handle | undefined): void;
  /** Undefined if the point cannot be moved. */
  takeUp(handle: Handle): Grip | undefined;
  /** What can be taken hold of at a place that has no handle. */
  holdAt(x: number, y: number): Hold | undefined;
  takeHold(hold: Hold): Grip | undefined;
  panBy(right: number, down: number): void;
  zoomAt(x: number, y: number, factor: number): void;
}

/** One state of the hand. Every state answers every signal, with itself or with the state that follows. */
export interface Gesture {
  readonly name: 'idle' | 'pointing' | 'panning' | 'dragging' | 'pinching';
  on(signal: Signal, hands: Hands): Gesture;
}
