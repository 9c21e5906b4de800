import type { Layout } from '../layout/index.ts';
import type { BoxKind } from './boxes.ts';

/** One thing that a search may choose within an idea, and how far. mm, or rad of a lean. */
export interface Choice {
  /** "pitman ball along the car". */
  readonly words: string;
  readonly from: number;
  readonly to: number;
}

/** Which of an idea's choices are the arms' lengths, by their places. */
export interface ArmChoices {
  readonly pitman: number;
  readonly steering: number;
  /** Absent where the tie rod stands. */
  readonly tieRod?: number;
}

/**
 * A way of steering this car, unlike every other in words: side or cross, where the box is bolted, on which side
 * of the axle, by which boxes. What is left open are a few numbers.
 */
export interface Idea {
  readonly key: string;
  readonly way: 'side' | 'cross';
  /** "outside the RAIL": the rail is named when it is known on which side of the asked car it stands. */
  readonly where: string;
  readonly ahead: boolean;
  readonly assist: 'manual' | 'power';
  /** Whether the axle's own path changes with the choices. */
  readonly movesAxle: boolean;
  /** Whether the tie rod's balls change with them. */
  readonly movesTieRod: boolean;
  readonly boxes: readonly BoxKind[];
  readonly choices: readonly Choice[];
  /** Which of the choices are the lengths of arms. */
  readonly arms: ArmChoices;
  /** Places that the analysis by parts finds likely. */
  readonly starts: readonly (readonly number[])[];
  /** The layout with the choices made; undefined where they make none. */
  lay(x: readonly number[]): Layout | undefined;
}
