import type { Component } from 'svelte';
import type { CurveColumn } from './curve-column.ts';
import type { CurveInk } from './curve-ink.ts';
import type { Ladder } from './ranges.ts';

/** One curve of a plot. */
export interface Curve {
  readonly name: string;
  /** Of another variant: the letter that stands on the curve, and whose it is. */
  readonly letter?: string;
  readonly whose?: string;
  readonly ink: CurveInk;
  readonly column: CurveColumn;
  /** Its value in the pose that the car stands in, in the plot's unit. */
  readonly now: number | undefined;
}

/** One thing of a few that a plot is drawn by, as buttons beside its title. */
export interface PlotChoice {
  /** What is chosen, for those who cannot see it. */
  readonly legend: string;
  readonly options: readonly PlotOption[];
  readonly chosen: string;
  choose(id: string): void;
}

export interface PlotOption {
  readonly id: string;
  /** What stands on the button. */
  readonly words: string;
  /** What it is called where the words are too short to tell. */
  readonly name?: string;
  readonly title?: string;
}

/** One plot: what its curves are of, and how they are looked at. */
export interface CurvePlot {
  readonly title: string;
  /** The unit and what the figures mean: "degrees, handwheel held". */
  readonly unitWords: string;
  readonly curves: readonly Curve[];
  /** In the middle of the plot's height. */
  readonly middle: number;
  readonly ladder: Ladder;
  /** Where the dotted line of what is wanted lies. */
  readonly wanted?: number | undefined;
  /** Between these the plot is shaded. */
  readonly band?: { readonly lower: CurveColumn; readonly upper: CurveColumn } | undefined;
  readonly choice?: PlotChoice;
  /** The curves in sentences. */
  readonly summary: string;
  /** A value of the plot in words. */
  words(value: number): string;
}

/** The axis that all plots of a strip are drawn over, and along which the car is posed by them. */
export interface StripAxis {
  /** What it is, in a word. */
  readonly along: string;
  /** Where the rows of the curves stand on it. */
  readonly at: readonly number[];
  /** Its ends, where they are not the first and last of `at`. */
  readonly span?: readonly [number, number] | undefined;
  /** Runs from right to left. */
  readonly mirrored?: boolean;
  /** Where the car stands on it: the marker. */
  readonly pose: number;
  readonly poseWords: string;
  /** Whether it is the only axis that the car is posed along, so that the figures of now lie on the curves. */
  readonly onCurve: boolean;
  /** The left and the right end in words. */
  readonly ends: readonly [string, string];
  /** One step of an arrow key. */
  readonly step: number;
  move(to: number): void;
}

/** A component with its props. */
export interface BesideCurves {
  readonly component: Component<Record<string, unknown>>;
  readonly props: Record<string, unknown>;
  /** Its width, as CSS has it. */
  readonly width: string;
}

/** What stands beside the plots, from a component and its props. */
// biome-ignore lint/suspicious/noExplicitAny: Svelte itself names the props of a component so.
export function besideCurves<Props extends Record<string, any>>(
  width: string,
  component: Component<Props>,
  props: Props,
): BesideCurves {
  return { component: component as unknown as BesideCurves['component'], props, width };
}

/**
 * A strip of curves as a place hands it in: plain data, which `curves` draws without knowing whose it is. Every member may
 * be a getter and is then read in effects: what it reads draws that member anew and no other.
 */
export interface Strip {
  readonly axis: StripAxis;
  readonly plots: readonly CurvePlot[];
  /** How many times as wide the first plot is as each of the others; 1 unless given. */
  readonly first?: number;
  readonly beside?: BesideCurves;
  /** The figure that matters most of what stands beside the plots, with its name: said while the curves are folded. */
  readonly headline?: string | undefined;
  /** Why there are no curves, in a sentence that stands in their place. */
  readonly missing?: string | undefined;
}

/** Called once for each time that the strip comes on the page: what it keeps goes with it. It reads no state itself. */
export type StripMaker = () => Strip;
