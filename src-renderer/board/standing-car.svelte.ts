import { type Drawing, placeAtRide, placeInPose, roomFor } from '../../shared-math/drawing/index.ts';
import { placeFrame } from '../document/frame-pose.ts';
import type { OpenLayout } from '../document/open-layout.svelte.ts';

/** A drawing and where its points stand: 3 numbers each, mm, over the ground. */
export interface Standing {
  readonly drawing: Drawing;
  readonly placed: Float64Array;
}

/** The open car as it stands, placed once for all who draw it; the array is the same, what holds it is new at every change. */
export class StandingCar {
  #placed: Float64Array = new Float64Array(0);
  readonly #openLayout: OpenLayout;
  readonly #drawn: () => Drawing;
  now: Standing = $derived.by(() => this.#place());

  constructor(openLayout: OpenLayout, drawn: () => Drawing) {
    this.#openLayout = openLayout;
    this.#drawn = drawn;
  }

  #place(): Standing {
    const drawing = this.#drawn();
    const { frontEnd, carPose } = this.#openLayout;
    const { state, framePose } = carPose;
    if (this.#placed.length !== 3 * drawing.points.length) this.#placed = roomFor(drawing);
    if (state.status === 'ok') placeInPose(drawing, frontEnd, state, this.#placed);
    else placeAtRide(drawing, this.#placed);
    placeFrame(this.#placed, framePose);
    return { drawing, placed: this.#placed };
  }
}
