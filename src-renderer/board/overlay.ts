/** What lies over the drawing, in px of the board: plain data, made by `overlay-picture.ts` and painted here. */

/** What a line or text says; colour, weight and dash follow from it, never colour alone. */
export type OverlayInk =
  | 'guide'
  | 'snap'
  | 'asked'
  | 'allowed'
  | 'gap'
  | 'aim'
  | 'short'
  | 'clear'
  /** How far off a point may be. */
  | 'doubt'
  /** How far what moves goes: a tyre, and what steers. */
  | 'room'
  | 'steeringRoom'
  /** What is being measured. */
  | 'dimension'
  | 'steel'
  | 'ink'
  | 'soft';

export interface OverlayLine {
  /** x, y, x, y … */
  readonly points: readonly number[];
  readonly ink: OverlayInk;
  /** Bare paper within it, which covers the grid: a closed line. */
  readonly covers?: boolean;
}

export interface OverlayHandle {
  readonly x: number;
  readonly y: number;
  readonly steering: boolean;
  /** Of a rail or an obstacle: a small square. */
  readonly square?: boolean;
  /** Where it stands was guessed: drawn hollow. */
  readonly guessed: boolean;
  /** The numbers of the points on this spot, as on every page and drawing: "3, 5"; absent where another handle of it has them. */
  readonly numbers?: string;
  /** To which corner of the handle the numbers stand: off each other where there is room. */
  readonly corner?: readonly [right: 1 | -1, down: 1 | -1];
  /** `twin` is the mirror image of what is chosen. */
  readonly state: 'rest' | 'hover' | 'chosen' | 'twin';
}

export interface OverlayMark {
  readonly x: number;
  readonly y: number;
  /** `stop` is a larger cross, over a handle. */
  readonly kind: 'aim' | 'cross' | 'stop' | 'tick';
}

export interface OverlayText {
  readonly x: number;
  /** Middle of the line. */
  readonly y: number;
  readonly text: string;
  readonly ink: OverlayInk;
  readonly strong: boolean;
  readonly align: 'left' | 'right' | 'center';
}

export interface OverlayPicture {
  readonly lines: readonly OverlayLine[];
  readonly marks: readonly OverlayMark[];
  readonly handles: readonly OverlayHandle[];
  readonly texts: readonly OverlayText[];
}

export const EMPTY_PICTURE: OverlayPicture = { lines: [], marks: [], handles: [], texts: [] };
