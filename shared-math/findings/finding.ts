import type { Point } from '../geometry/points.ts';
import type { GridPose } from '../joints/index.ts';
import { type Layout, LOCATION_FACTS } from '../layout/index.ts';
import {
  decimalBeside,
  degreesBeside,
  formatDecimal,
  formatLoad,
  formatRimForce,
  type LengthStyle,
  lengthBeside,
  MM_PER_INCH,
  NEWTONS_PER_POUND,
  setLength,
  TURNED_BY_NOBODY,
  toDegrees,
} from '../units/index.ts';
import type { Analysis } from './analysis.ts';
import { type LimitName, limitInForce, type ShopLimits } from './limits.ts';

/** `info` is as it should be; `attention` wants a look; `stop` must not be driven. */
export type Severity = 'info' | 'attention' | 'stop';

/**
 * One change of a layout that mends a finding: a hardpoint moved, which the advice itself says, or a value set. Of a value
 * the advice may name several ways out; `words` say the one that is taken, as a button does: "Use an I-beam".
 */
export type Remedy =
  | { readonly kind: 'move'; readonly id: string; readonly to: Point }
  | { readonly kind: 'set'; readonly path: string; readonly value: unknown; readonly words: string };

/** mm. A gap that no feeler tells from none. */
export const ALL_BUT_TOUCHES = 0.05;

/** One sentence of judgement with its measured value, its limit and the limit's source. */
export interface Finding {
  readonly rule: string;
  readonly severity: Severity;
  /** "Bump steer 2.6° over 3 in of bump". */
  readonly sentence: string;
  /** "limit 0.5°", or undefined if there is no figure to hold it to. */
  readonly limit: string;
  readonly source: string;
  /** The hardpoint, or the obstacle, that it is about, for the board: `steering.dragLinkBall`, `obstacles.2`. */
  readonly part: string;
  /** The pose in which it was measured, where it was in one. */
  readonly at?: GridPose;
  /** The two ends of a gap in that pose, in the car's frame, where it is one; mm. */
  readonly gap?: readonly [Point, Point];
  /** The two parts that the gap lies between: their ids in the drawing, what they are called, mm between them. */
  readonly between?: {
    readonly parts: readonly [string, string];
    readonly words: string;
    readonly distance: number;
  };
  /** What would mend it, as a sentence; empty where nothing is to be mended. */
  readonly advice: string;
  /** The advice as one step, where a single coordinate or value mends it. */
  readonly remedy?: Remedy;
}

/** A rule: what it measures, and its findings on a layout. */
export interface Rule {
  readonly name: string;
  readonly measures: string;
  judge(analysis: Analysis, speak: Speech): Finding[];
}

/**
 * Figures and limits in the reader's unit. No figure reads as 0 unless it is that; each takes the others that it is read
 * beside, its limit first of all, and reads as none of them unless it is that.
 */
export interface Speech {
  /** For words that are made where no rule is. */
  readonly style: LengthStyle;
  /** mm. */
  readonly length: (mm: number, others?: readonly number[]) => string;
  /** rad. */
  readonly angle: (radians: number, decimals?: number, others?: readonly number[]) => string;
  /** rad per mm. */
  readonly perInch: (slope: number, others?: readonly number[]) => string;
  /** A slope as it was set, rad per mm. */
  readonly setPerInch: (slope: number) => string;
  /** N. */
  readonly force: (newtons: number, others?: readonly number[]) => string;
  /** Likewise of a force at the handwheel's rim: beyond what anyone pulls its size is not said. */
  readonly rimForce: (newtons: number, others?: readonly number[]) => string;
  /** What a scale shows, N. */
  readonly load: (newtons: number) => string;
  readonly number: (value: number, decimals: number, others?: readonly number[]) => string;
  /** A figure as it was set, a limit's above all: no more decimals than it has, four at most. */
  readonly figure: (value: number) => string;
  /** A length as it was set, mm. */
  readonly setLength: (mm: number) => string;
  /** A force as it was set, N: to a tenth. */
  readonly setForce: (newtons: number) => string;
  /** A shop's limit in its own unit, and where it comes from. */
  readonly limit: (name: LimitName) => { value: number; source: string };
}

/** mm that a slope is reported over, to readers of millimetres. */
const METRIC_INCH = 25;

export function speech(style: LengthStyle, shop: ShopLimits): Speech {
  const inches = style.unit === 'in';
  const overInch = (slope: number) => toDegrees(slope) * (inches ? MM_PER_INCH : METRIC_INCH);
  const slopeWords = inches ? 'per inch' : 'per 25 mm';
  const figure = (value: number) => String(Number(formatDecimal(value, 4)));
  const perForce = inches ? NEWTONS_PER_POUND : 1;
  const force = (newtons: number, others: readonly number[] = []) =>
    `${decimalBeside(newtons / perForce, [...others.map((other) => other / perForce), 0], 0)} ${inches ? 'lb' : 'N'}`;
  return {
    style,
    length: (mm, others = []) => lengthBeside(mm, [...others, 0], style),
    angle: (radians, decimals = 1, others = []) =>
      degreesBeside(toDegrees(radians), [...others.map(toDegrees), 0], decimals),
    perInch: (slope, others = []) =>
      `${degreesBeside(overInch(slope), [...others.map(overInch), 0], 2)} ${slopeWords}`,
    setPerInch: (slope) => `${figure(overInch(slope))}° ${slopeWords}`,
    force,
    rimForce: (newtons, others) =>
      newtons > TURNED_BY_NOBODY ? formatRimForce(newtons, style.unit) : force(newtons, others),
    load: (newtons) => formatLoad(newtons, style.unit),
    number: (value, decimals, others = []) => decimalBeside(value, [...others, 0], decimals),
    figure,
    setForce: (newtons) => `${String(Number(formatDecimal(newtons / perForce, 1)))} ${inches ? 'lb' : 'N'}`,
    setLength: (mm) => setLength(mm, style),
    limit: (name) => limitInForce(name, shop),
  };
}

/** Where the two ends of a range come from, reported once where they share it. */
export function sourceOf(least: { readonly source: string }, most: { readonly source: string }): string {
  return least.source === most.source ? least.source : `${least.source}; ${most.source}`;
}

/** "Raise the pitman ball 3 1/8 in", "Move the pitman ball 1/2 in back". Only the largest change is spoken of. */
export function moveWords(what: string, from: Point, to: Point, length: Speech['length']): string {
  const change = [to[0] - from[0], to[1] - from[1], to[2] - from[2]] as const;
  const size = change.map(Math.abs) as [number, number, number];
  const axis = size.indexOf(Math.max(...size));
  const by = length(size[axis] as number);
  if (axis === 2) return `${change[2] > 0 ? 'Raise' : 'Lower'} the ${what} ${by}`;
  if (axis === 0) return `Move the ${what} ${by} ${change[0] > 0 ? 'ahead' : 'back'}`;
  const outward = change[1] * Math.sign(from[1] || 1) > 0;
  return `Move the ${what} ${by} ${outward ? 'outboard' : 'inboard'}`;
}

/** The hardpoint that stands for what locates the axle fore and aft. */
export function locationPart(layout: Layout): string {
  return LOCATION_FACTS[layout.location.kind].part;
}
