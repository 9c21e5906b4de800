import type { GridPose } from '../joints/index.ts';
import type { Layout, Point } from '../layout/index.ts';
import {
  degreesBeside,
  formatDecimal,
  formatDegrees,
  formatForce,
  formatLength,
  formatLoad,
  type LengthStyle,
  lengthBeside,
  MM_PER_INCH,
  toDegrees,
} from '../units/index.ts';
import type { Analysis } from './analysis.ts';
import { type LimitName, limitInForce, type ShopLimits } from './limits.ts';

/** `info` is as it should be; `attention` wants a look; `stop` must not be driven. */
export type Severity = 'info' | 'attention' | 'stop';

/** One change of a layout that mends a finding: a hardpoint moved, or a value set. */
export type Remedy =
  | { readonly kind: 'move'; readonly id: string; readonly to: Point }
  | { readonly kind: 'set'; readonly path: string; readonly value: unknown };

/** One sentence of judgement with its measured value, its limit and the limit's source. */
export interface Finding {
  readonly rule: string;
  readonly severity: Severity;
  /** "Bump steer 2.6° over 3 in of bump". */
  readonly sentence: string;
  /** "limit 0.5°", or nothing where there is no figure to hold it to. */
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

/** Figures and limits in the reader's unit. */
export interface Speech {
  /** For words that are made where no rule is. */
  readonly style: LengthStyle;
  readonly length: (mm: number) => string;
  readonly angle: (radians: number, decimals?: number) => string;
  /** A length that does not read as one of the others unless it is that: its limit, or 0; mm. */
  readonly lengthBeside: (mm: number, others: readonly number[]) => string;
  /** An angle that does not read as one of the others unless it is that; rad. */
  readonly angleBeside: (radians: number, others: readonly number[], decimals?: number) => string;
  readonly perInch: (radiansPerMm: number) => string;
  readonly force: (newtons: number) => string;
  /** What a scale shows. */
  readonly load: (newtons: number) => string;
  readonly number: (value: number, decimals: number) => string;
  /** A limit's figure as it was set: no more decimals than it has, two at most. */
  readonly figure: (value: number) => string;
  /** A shop's limit in its own unit, and where it comes from. */
  readonly limit: (name: LimitName) => { value: number; source: string };
}

export function speech(style: LengthStyle, shop: ShopLimits): Speech {
  return {
    style,
    length: (mm) => formatLength(mm, style),
    angle: (radians, decimals = 1) => formatDegrees(toDegrees(radians), decimals),
    lengthBeside: (mm, others) => lengthBeside(mm, others, style),
    angleBeside: (radians, others, decimals = 1) =>
      degreesBeside(toDegrees(radians), others.map(toDegrees), decimals),
    perInch: (slope) =>
      style.unit === 'in'
        ? `${formatDecimal(toDegrees(slope) * MM_PER_INCH, 2)}° per inch`
        : `${formatDecimal(toDegrees(slope) * 25, 2)}° per 25 mm`,
    force: (newtons) => formatForce(newtons, style.unit),
    load: (newtons) => formatLoad(newtons, style.unit),
    number: formatDecimal,
    figure: (value) => String(Number(formatDecimal(value, 2))),
    limit: (name) => limitInForce(name, shop),
  };
}

/** Where the two ends of a range come from, told once where they share it. */
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
  return {
    hairpins: 'location.left.framePivot',
    wishbone: 'location.framePivot',
    'four-bar': 'location.left.upper.frame',
    'parallel-leaf': 'location.left.seat',
  }[layout.location.kind];
}
