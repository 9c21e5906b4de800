import type { LayoutDocument } from '../layout/index.ts';

/** What a proposal comes to. Degrees, mm, N. */
export interface ProposalFigures {
  /** Worst |bump steer| over heave. */
  readonly bumpSteer: number;
  /** The same with each wheel anywhere in its own travel; undefined if that is not reached everywhere. */
  readonly oneWheel: number | undefined;
  /** Degrees of steer for each degree of roll; above 0 is understeer. */
  readonly rollSteer: number;
  /** Steer by itself in a hard stop; undefined where the links resist, or masses cannot be. */
  readonly brakeSteer: number | undefined;
  readonly overallRatio: number;
  readonly turns: number;
  readonly innerLock: number;
  /** Between kerbs, the larger of both. */
  readonly circle: number;
  /** At the rim, parking, without assistance: straight ahead, and at the worst. */
  readonly rimForce: number;
  readonly rimForceMost: number;
  /** Least angle between drag link and arm over travel and turn. */
  readonly pitmanTransmission: number;
  readonly armTransmission: number;
  readonly ballTilt: number;
  /** The pair of parts that has least to spare over its limit; undefined if none comes near. */
  readonly nearest: { readonly words: string; readonly distance: number; readonly limit: number } | undefined;
  /** True angle of each joint of the steering shaft, from the column; none where no shaft is laid. */
  readonly shaftJoints: readonly number[];
  /** Support bearings of the steering shaft. */
  readonly supports: number;
  /** Worst |bump steer| that nineteen cars of twenty stay under, every point off by up to an eighth of an inch. */
  readonly band: number | undefined;
}

/** How near a figure comes to its limit. */
export interface NearestLimit {
  readonly sentence: string;
  /** Share of the limit that is used up; over 1 is past it. */
  readonly share: number;
}

/** A part that the proposal asks for beyond what the car has. */
export interface NewPart {
  readonly words: string;
  readonly count: number;
  /** How many of them lie on the shelf. */
  readonly onShelf: number;
}

/** A whole arrangement that fits: no finding on it is a stop. */
export interface Proposal {
  /** What it is, for keeping proposals apart: the same for the same idea in a mirrored car. */
  readonly key: string;
  /** "Side steer outside the left rail, arm down, manual". */
  readonly name: string;
  readonly layout: LayoutDocument;
  readonly figures: ProposalFigures;
  readonly good: readonly string[];
  readonly costs: readonly string[];
  /** What is not drawn and taken for granted by it, as a sentence; null where there is nothing of the kind. */
  readonly assumes: string | null;
  /** How many of the shop's limits it passes without a stop; 0 where it keeps all that the steering has a part in. */
  readonly pastLimits: number;
  readonly nearestLimit: NearestLimit | undefined;
  readonly newParts: readonly NewPart[];
}

/** What a search says while it works. */
export interface ProposeNews {
  /** "Side steer, box outside the left rail: trying places". */
  readonly doing: string;
  /** How much of this task is done, 0 to 1. */
  readonly share: number;
  /** Arrangements tried so far in this task. */
  readonly evaluations: number;
  /** What this task has found so far; a later one of the same key stands in place of the earlier. */
  readonly found: readonly Proposal[];
}

/** Why an idea came to nothing. */
export interface NoFit {
  readonly idea: string;
  readonly sentences: readonly string[];
  /** By how much limits are missed together, each in its own unit: the smallest is the nearest. */
  readonly missing: number;
  /** The nearest arrangement of this idea, which breaks them; undefined where none could be laid at all. */
  readonly layout: LayoutDocument | undefined;
}

/** What came of one task. Plain data. */
export interface TaskResult {
  readonly task: number;
  readonly found: readonly Proposal[];
  /** Undefined where something was found. */
  readonly noFit: NoFit | undefined;
  readonly evaluations: number;
}

/** One change, or two together, with which something would fit. */
export interface WayOut {
  /** "the sump 1 1/2 in higher". */
  readonly words: string;
  /** What would then fit. */
  readonly name: string;
  /** Laid on the car as it would then be. */
  readonly layout: LayoutDocument;
}

/** Why nothing fits a car. */
export interface WhyNone {
  /** "Cross steer, box inside the left rail …, would fit with the sump 1 1/2 in higher, or with a bump travel of 2 in." */
  readonly sentence: string;
  /** What excludes one another: with any one of these otherwise (or several together, where no single one does) something fits. */
  readonly excluding: readonly string[];
  /** Whether each of `excluding` frees by itself; else it takes several of them, two where there are two. */
  readonly single: boolean;
  readonly ways: readonly WayOut[];
  /** The nearest arrangement, and what it breaks. */
  readonly nearest: NoFit | undefined;
}

export interface ProposeAnswer {
  /** Three to six really different ones where there are so many, best first; none where nothing fits. */
  readonly proposals: readonly Proposal[];
  /** Why there is none: the ideas by how near they come. Empty where there are proposals. */
  readonly noFits: readonly NoFit[];
  /** Where nothing fits, what excludes one another; worked out by `whyNothingFits`. */
  readonly why?: WhyNone;
  readonly evaluations: number;
}
