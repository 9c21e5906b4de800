import type { UnknownTable } from './unknowns.ts';

// What else was observed of a car than a survey's rows, and what is unknown of whatever observed it: photos and their cameras. The
// adjustment weighs it with the rows and knows nothing more of it.

/** Something unknown beside the points' coordinates, in its own unit. */
export interface FurtherUnknown {
  /** Where the search begins. */
  readonly start: number;
  /** What it is known to be beforehand, and one standard deviation of that; above 0. */
  readonly known: number;
  readonly doubt: number;
  /** A step below this is the search's end. */
  readonly end: number;
}

/** One or more numbers that were observed together: they are left out together. */
export interface FurtherRow {
  readonly id: string;
  readonly observed: readonly number[];
  /** One standard deviation of each. */
  readonly doubts: readonly number[];
  /** Writes what they would be from `at` on; returns false if that cannot be computed. */
  compute(computed: Float64Array, at: number): boolean;
  /** Adds each derivative by an unknown: those of the table first, then its own. */
  addSlopes(at: number, add: (row: number, unknown: number, slope: number) => void): void;
}

export interface Further {
  readonly unknowns: readonly FurtherUnknown[];
  readonly rows: readonly FurtherRow[];
  /** The points, by their ids in the document, that each row looks at. */
  readonly seen: ReadonlyMap<string, readonly string[]>;
  /** Takes all unknowns, the table's first, for the rows to be computed at. */
  take(x: Float64Array): void;
}

/** What was observed further, of the points of a table. */
export type FurtherOf = (table: UnknownTable) => Further;

export const NOTHING_FURTHER: Further = {
  unknowns: [],
  rows: [],
  seen: new Map(),
  take: () => {},
};
