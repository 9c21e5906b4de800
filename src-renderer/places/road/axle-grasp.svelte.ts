import {
  type Drawing,
  placeAtRide,
  placeInPose,
  roomFor,
  type View,
  type ViewPoint,
} from '../../../shared-math/drawing/index.ts';
import type { Graspable, Grip, Hold } from '../../board/gestures/index.ts';
import { type FramePose, placeFrame } from '../../document/frame-pose.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import type { AxlePull } from './axle-pull.svelte.ts';
import { type DrawnHold, drawnHolds, type HeldIn, holdOf, holdUnder } from './holds.ts';

/** A tyre or the beam under the pointer, as the board's hand takes hold of it. */
interface AxleHold extends Hold {
  readonly of: HeldIn;
}

/** Tyres and beam as things that the hand on the board can pull. */
export class AxleGrasp implements Graspable {
  readonly #openLayout: OpenLayout;
  readonly #pull: AxlePull;
  /** The outlines found last, and of what: they are looked for at every move of the pointer. */
  #found: readonly DrawnHold[] = [];
  #of: { drawing: Drawing; state: unknown; framePose: FramePose } | undefined;
  /** What the pointer pulls, and the pose (mm, degrees) in which it took hold. */
  grip: (HeldIn & { readonly heave: number; readonly roll: number }) | undefined = $state.raw();

  constructor(openLayout: OpenLayout, pull: AxlePull) {
    this.#openLayout = openLayout;
    this.#pull = pull;
  }

  #holds(drawing: Drawing): readonly DrawnHold[] {
    const { frontEnd, carPose } = this.#openLayout;
    const { state, framePose } = carPose;
    const { drawing: was, state: wasState, framePose: wasFramePose } = this.#of ?? {};
    if (was === drawing && wasState === state && wasFramePose === framePose) return this.#found;
    const placed = roomFor(drawing);
    if (state.status === 'ok') placeInPose(drawing, frontEnd, state, placed);
    else placeAtRide(drawing, placed);
    placeFrame(placed, framePose);
    this.#found = drawnHolds(drawing, placed);
    this.#of = { drawing, state, framePose };
    return this.#found;
  }

  at(drawing: Drawing, view: View, place: ViewPoint): AxleHold | undefined {
    const held = holdUnder(this.#holds(drawing), view, place);
    if (!held) return undefined;
    const of = holdOf(held, view, place, this.#openLayout.layout);
    return { of, take: (scale) => this.#take(of, scale) };
  }

  offer(hold: AxleHold | undefined): void {
    const offered = hold?.of.held ?? null;
    if (this.#pull.offered !== offered) this.#pull.offered = offered;
  }

  /** Up is up on the sheet in every view: seen from above there is no other way to show it. Over shows from ahead. */
  #take(hold: HeldIn, scale: number): Grip | undefined {
    const { heave, roll } = this.#openLayout.carPose.pose;
    if (!this.#pull.take(hold)) return undefined;
    this.grip = { ...hold, heave, roll };
    const across = hold.view === 'front' ? 1 / scale : 0;
    return {
      moveTo: (right, down) => this.#pull.pull(-down / scale, right * across),
      putDown: () => this.#pull.letGo(),
      giveBack: () => this.#pull.giveBack(),
    };
  }
}
