import type { LayoutDocument, Refusal } from '../../../shared-math/layout/index.ts';
import type { RideRun, RoadProfile, RunOptions } from '../../../shared-math/ride/index.ts';

// What page and ride worker say to one another. Plain data that a structured clone carries.

/** What a hand can take hold of: the axle by its beam, or one of its tyres. */
export type Held = 'axle' | 'left' | 'right';

/** Where the hand took hold, at ride height: y to the left and z above the ground, mm. */
export interface Hold {
  readonly held: Held;
  readonly y: number;
  readonly z: number;
  /** Whether the hand minds where the point goes sideways: only where it is pulled from ahead. */
  readonly sideways: boolean;
}

/** An answer to a pull: where springs and tyres have brought the axle against the frame, mm and degrees. */
export interface Moved {
  readonly kind: 'moved';
  readonly turn: number;
  readonly heave: number;
  readonly roll: number;
  /** s that have been stepped. */
  readonly seconds: number;
  /** N with which the hand pulls, whichever way. */
  readonly force: number;
  /** Back at ride height and still. */
  readonly rests: boolean;
}

export type ToRideWorker =
  /** Drives a car over a road. A newer order of the same `key` takes the place of one before. */
  | {
      readonly kind: 'run';
      readonly id: number;
      readonly key: string;
      readonly document: LayoutDocument;
      readonly road: RoadProfile;
      readonly options: RunOptions;
    }
  /** Takes hold of a car that stands at this pose (mm, degrees). `turn` comes back with every answer. */
  | {
      readonly kind: 'take';
      readonly turn: number;
      readonly document: LayoutDocument;
      readonly hold: Hold;
      readonly heave: number;
      readonly roll: number;
    }
  /** Holds the hand so many mm up and to the left of where it took hold, or opens it, and steps on by so many s. */
  | {
      readonly kind: 'pull';
      readonly turn: number;
      readonly to: { readonly up: number; readonly over: number } | null;
      readonly seconds: number;
      /** Only where it comes to rest is wanted, not the way there. */
      readonly still: boolean;
    };

export type FromRideWorker =
  | { readonly kind: 'ran'; readonly id: number; readonly key: string; readonly run: RideRun }
  | { readonly kind: 'not-run'; readonly id: number; readonly key: string; readonly refusal: Refusal }
  | Moved
  | { readonly kind: 'not-held'; readonly turn: number; readonly reason: string };
