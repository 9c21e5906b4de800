import { createContext } from 'svelte';
import type { Clearance, Clearances } from '../../shared-math/clearance/index.ts';
import type { Point } from '../../shared-math/geometry/points.ts';
import type { LayoutDocument } from '../../shared-math/layout/index.ts';
import { toDegrees } from '../../shared-math/units/index.ts';
import { FAILED } from '../jobs/worker-line.ts';
import type { ClearanceAnswer } from './clearance-worker.ts';
import { type Measurer, pageMeasurer } from './measurer.ts';
import type { OpenLayout } from './open-layout.svelte.ts';
import type { Pose } from './reach.ts';

/** ms that the layout has to rest before it is measured: a hand that drags is not followed. */
const RESTED = 140;

/** A gap between two parts in one pose of one document, to be drawn on the board. */
export interface ShownGap {
  readonly document: LayoutDocument;
  readonly pose: Pose;
  /** The nearest points of the two surfaces, mm, in the car's frame. */
  readonly from: Point;
  readonly to: Point;
  /** mm; 0 or less where the two hit. */
  readonly distance: number;
  /** "drag link to header tube". */
  readonly words: string;
  /** Ids of the two parts in the drawing; of a pair of rods, what both begin with. */
  readonly parts: readonly [string, string];
  /** Whether it is less than the limit. */
  readonly under: boolean;
}

/** The pose of a clearance as the controls have it. */
export function poseOf({ at }: Clearance): Pose {
  return { heave: at.heave, roll: toDegrees(at.roll), handwheel: toDegrees(at.handwheel) };
}

const samePoint = (a: Point, b: Point) => a.every((value, axis) => value === b[axis]);

interface Asked {
  readonly number: number;
  readonly document: LayoutDocument;
  readonly variant: string | undefined;
}

/**
 * How near the parts of the open layout come to one another, measured beside the page whenever the layout has come to
 * rest. While one is being worked out, those of a moment ago stand.
 */
export class CarClearances {
  readonly #openLayout: OpenLayout;
  readonly #measurer: Measurer;
  #waiting: ReturnType<typeof setTimeout> | undefined;
  #asked: Asked | null = null;
  #numbers = 0;

  #found: Clearances | null = $state.raw(null);
  /** What they were measured of. */
  #of: LayoutDocument | null = $state.raw(null);
  #ofVariant: string | undefined;
  /** Nothing until the first were measured, and where the layout does not steer. */
  now: Clearances | null = $derived.by(() => {
    const { document } = this.#openLayout;
    const of = this.#of;
    // Of another car, or of one with other things around it, the figures would speak of the wrong parts.
    const same =
      document !== null &&
      of !== null &&
      this.#openLayout.variant?.id === this.#ofVariant &&
      document.rails.length === of.rails.length &&
      document.obstacles.length === of.obstacles.length;
    return same ? this.#found : null;
  });
  /** Whether they are of the layout as it stands. */
  fresh: boolean = $derived.by(() => this.#of !== null && this.#of === this.#openLayout.document);

  constructor(openLayout: OpenLayout, measurer: Measurer = pageMeasurer()) {
    this.#openLayout = openLayout;
    this.#measurer = measurer;
    measurer.onanswer = (answer) => this.#take(answer);
    measurer.onfailure = (number) => this.#failed(number);
  }

  /** Run as an effect: measures whenever the open layout is another than before and rests. */
  follow(): void {
    const { document, variant } = this.#openLayout;
    clearTimeout(this.#waiting);
    if (document === this.#asked?.document && variant?.id === this.#asked?.variant) return;
    this.#waiting = setTimeout(() => this.#ask(), RESTED);
  }

  #ask(): void {
    const { document, variant } = this.#openLayout;
    this.#asked = null;
    if (!document) return;
    this.#numbers += 1;
    this.#asked = { number: this.#numbers, document, variant: variant?.id };
    this.#measurer.ask({ number: this.#numbers, document });
  }

  #failed(number: number): void {
    if (number === this.#asked?.number)
      this.#openLayout.tell(`The clearances of this layout could not be measured: ${FAILED}.`);
  }

  #take({ number, clearances }: ClearanceAnswer): void {
    // An answer to what was asked before the layout changed again.
    if (number !== this.#asked?.number) return;
    this.#ofVariant = this.#asked.variant;
    this.#of = this.#asked.document;
    this.#found = clearances;
  }

  /** Puts the car where two parts are nearest and has the gap drawn; where it stands there, back to ride height. */
  show(pair: Clearance, under: boolean): void {
    const document = this.#of;
    if (!document || document !== this.#openLayout.document) return;
    if (this.isShown(pair)) {
      this.#openLayout.carPose.toRide();
      return;
    }
    this.#openLayout.showGap({
      document,
      pose: poseOf(pair),
      from: pair.onA,
      to: pair.onB,
      distance: pair.distance,
      words: `${pair.nameOfA} to ${pair.nameOfB}`,
      parts: [pair.a, pair.b],
      under,
    });
  }

  isShown(pair: Clearance): boolean {
    const gap = this.#openLayout.shownGap;
    return gap !== undefined && samePoint(gap.from, pair.onA) && samePoint(gap.to, pair.onB);
  }
}

/** The one of the page, for its components. */
export const [getCarClearances, setCarClearances] = createContext<CarClearances>();
