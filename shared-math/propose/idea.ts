import type { Layout } from '../layout/index.ts';
import type { BoxKind } from './boxes.ts';

/** One thing that a search may choose within an idea, and how far. mm, or rad of a lean. */
export interface Choice {
  /** "pitman ball along the car". */
  readonly words: string;
  readonly from: number;
  readonly to: number;
  /** Whether a person said so: then no usual length beside it will do. */
  readonly sharp?: boolean;
}

/** Which of an idea's choices are the arms' lengths, by their places. */
export interface ArmChoices {
  readonly pitman: number;
  readonly steering: number;
  /** Absent where the tie rod stands. */
  readonly tieRod?: number;
}

/**
 * Where on the frame a box is bolted. `through`: inside the rail, its sector shaft passing the rail to an arm outside; `inside`:
 * the arm is inside as well.
 */
export type Mount = 'outside' | 'top' | 'through' | 'inside' | 'crossmember';

/**
 * A way of steering this car, unlike every other in words: side or cross, where the box is bolted, on which side
 * of the axle, by which boxes. What is left open are a few numbers.
 */
export interface Idea {
  readonly key: string;
  readonly way: 'side' | 'cross';
  /** "outside the RAIL": the rail is named when it is known on which side of the asked car it stands. */
  readonly where: string;
  /** `held`: where it stands. */
  readonly mount: Mount | 'held';
  /** Whether the pitman arm hangs from its sector shaft or stands up on it; in cross steer, lies under its box or over it. */
  readonly arm: 'down' | 'up';
  readonly ahead: boolean;
  /** Seldom built: one place that keeps bump steer low is sought, none that is light and tight, and its shaft takes no double joint. */
  readonly uncommon: boolean;
  /** Joints that its steering shaft may have at the most. */
  readonly joints: 2 | 3;
  /** What no document says and the idea takes for granted, as a sentence; absent where there is nothing of the kind. */
  readonly assumes?: string;
  readonly assist: 'manual' | 'power';
  /** Whether the axle's own path changes with the choices. */
  readonly movesAxle: boolean;
  /** Whether the tie rod's balls change with them. */
  readonly movesTieRod: boolean;
  readonly boxes: readonly BoxKind[];
  readonly choices: readonly Choice[];
  /** Which of the choices are the lengths of arms. */
  readonly arms: ArmChoices;
  /** Which of the choices is the box's turn in plan, and how far toward the column it may go, rad: turned only where the shaft asks for it. */
  readonly turn?: { readonly choice: number; readonly most: number };
  /** Places that the analysis by parts finds likely: worked out when they are first asked for, as most ideas are not searched here. */
  starts(): readonly (readonly number[])[];
  /** The layout with the choices made; undefined where they make none. */
  lay(x: readonly number[]): Layout | undefined;
}
