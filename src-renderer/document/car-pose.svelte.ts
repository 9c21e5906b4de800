import type { Point } from '../../shared-math/geometry/points.ts';
import type { Carrier, Layout } from '../../shared-math/layout/index.ts';
import { carryPoint, type FrontEnd, type FrontEndState } from '../../shared-math/linkage/index.ts';
import { formatDegrees } from '../../shared-math/units/index.ts';
import { brakedOf, brakingNote, brakingWords } from './braked-car.ts';
import { type FramePose, LEVEL, placeFrame } from './frame-pose.ts';
import { RETURNED_TO_RIDE, stopSentence, unsolvedSentence } from './pose-sentences.ts';
import {
  heaveReach,
  type Pose,
  poseLimits,
  RIDE_HEIGHT,
  reachToward,
  solvePose,
  withinLimits,
} from './reach.ts';

/** What the pose is taken of. Read anew each time, so that it follows the edits. */
export interface PoseSource {
  readonly layout: Layout;
  readonly frontEnd: FrontEnd;
  length(mm: number): string;
}

/** Milliseconds for the travel up and down again: a slow push on the bumper. */
const TRAVEL_TIME = 3600;

/** Where the car stands, and how it gets there. Holds only poses that were solved. */
export class CarPose {
  #source: PoseSource;
  #frame = 0;
  /** Heave in mm, roll and handwheel in degrees, braking as a share of g. Change it through `set`. */
  pose: { heave: number; roll: number; handwheel: number; braking: number } = $state({ ...RIDE_HEIGHT });
  notice = $state('');
  playing = $state(false);
  /** How the frame stands over the ground while springs carry it; level in every pose that is set by hand. */
  framePose: FramePose = $state.raw(LEVEL);
  /** Who moves the car by springs and tyres; called to stop as soon as anybody else poses it. */
  #carrier: (() => void) | undefined;
  carried = $state(false);

  /** Solved at the pose; a fresh object at every change. Not `ok` only where even ride height does not solve. */
  state: FrontEndState = $derived.by(() => solvePose(this.#source.frontEnd, this.pose));
  limits = $derived.by(() => poseLimits(this.#source.layout));
  /** The front end as its brakes leave it: what is swept from where the car stands. */
  standing: FrontEnd = $derived.by(() => brakedOf(this.#source.frontEnd, this.pose.braking));
  atRide = $derived(
    this.pose.heave === 0 && this.pose.roll === 0 && this.pose.handwheel === 0 && this.pose.braking === 0,
  );
  /** Why nothing can be posed, where even the car as drawn does not solve; empty otherwise. */
  trouble = $derived(this.state.status === 'ok' ? '' : unsolvedSentence(this.state.failure));

  /** One sentence: where the pose stopped and what stopped it, or that the car was returned to ride height. */
  sentence = $derived(this.trouble || this.notice);

  constructor(source: PoseSource) {
    this.#source = source;
  }

  /** From now on the car is carried by springs and tyres; `stopped` is called when a hand poses it otherwise. */
  beginCarrying(stopped: () => void): void {
    this.stop();
    this.#carrier = stopped;
    this.carried = true;
    this.notice = '';
  }

  /** Where springs and tyres have brought axle and frame. Not taken where the linkage does not reach; reported by `false`. */
  carry(pose: Pose, framePose: FramePose): boolean {
    if (!this.carried || solvePose(this.#source.frontEnd, pose).status !== 'ok') return false;
    this.#put(pose);
    this.framePose = framePose;
    return true;
  }

  /** Where a point drawn at ride height stands in the present pose; as drawn where the pose does not solve. */
  carryPoint(carrier: Carrier, at: Point, out: Float64Array): void {
    if (this.state.status === 'ok') carryPoint(this.#source.frontEnd, this.state, carrier, at, out);
    else out.set(at);
    placeFrame(out, this.framePose);
  }

  #endCarrying(): void {
    if (!this.carried) return;
    const stopped = this.#carrier;
    this.#carrier = undefined;
    this.carried = false;
    this.framePose = LEVEL;
    stopped?.();
  }

  /** Moves toward a pose and stops where the linkage does. */
  set(partial: Partial<Pose>): void {
    this.stop();
    this.#moveTo(partial);
  }

  toRide(): void {
    this.stop();
    this.#put(RIDE_HEIGHT);
    this.notice = '';
  }

  /** Before an edit: the layout is drawn at ride height, so a posed car goes back there, and it is said. */
  returnForEdit(): void {
    if (this.atRide) {
      this.stop();
      return;
    }
    this.toRide();
    this.notice = RETURNED_TO_RIDE;
  }

  play(): void {
    if (this.playing) return;
    if (this.trouble) {
      this.notice = this.trouble;
      return;
    }
    const [least, most] = heaveReach(this.#source.frontEnd, this.limits, this.pose);
    const middle = (least + most) / 2;
    const swing = (most - least) / 2;
    if (swing <= 0) {
      this.notice = 'The layout has no travel to run: type its bump and droop first.';
      return;
    }
    this.#endCarrying();
    this.playing = true;
    this.notice = '';
    // Begins where the car stands, going up.
    const phase = Math.asin(Math.min(1, Math.max(-1, (this.pose.heave - middle) / swing)));
    let begun: number | undefined;
    const tick = (now: number) => {
      if (!this.playing) return;
      begun ??= now;
      const turn = ((now - begun) / TRAVEL_TIME) * 2 * Math.PI;
      this.#moveTo({ heave: middle + swing * Math.sin(phase + turn) });
      this.#frame = requestAnimationFrame(tick);
    };
    this.#frame = requestAnimationFrame(tick);
  }

  stop(): void {
    this.#endCarrying();
    if (!this.playing) return;
    this.playing = false;
    cancelAnimationFrame(this.#frame);
  }

  #moveTo(partial: Partial<Pose>): void {
    if (this.trouble) {
      this.notice = this.trouble;
      return;
    }
    const { heave, roll, handwheel, braking } = this.pose;
    const from = { heave, roll, handwheel, braking };
    const to = withinLimits({ ...from, ...partial }, this.limits);
    const reached = reachToward(this.#source.frontEnd, from, to);
    this.#put(reached.pose);
    const nothingMoves =
      partial.braking === undefined || to.braking === 0 ? '' : brakingNote(this.#source.frontEnd);
    this.notice =
      reached.stoppedBy === '' ? nothingMoves : this.#stopped(reached.stoppedBy, reached.pose, from, to);
  }

  #put(pose: Pose): void {
    this.pose.heave = pose.heave;
    this.pose.roll = pose.roll;
    this.pose.handwheel = pose.handwheel;
    this.pose.braking = pose.braking ?? 0;
  }

  #stopped(failure: FrontEndState['failure'], at: Pose, from: Required<Pose>, to: Required<Pose>): string {
    const along =
      (['heave', 'roll', 'handwheel', 'braking'] as const).find((key) => to[key] !== from[key]) ?? 'heave';
    const value = at[along] ?? 0;
    const positive = value === 0 ? to[along] > from[along] : value > 0;
    const figure =
      along === 'heave'
        ? this.#source.length(Math.abs(value))
        : along === 'braking'
          ? brakingWords(value)
          : formatDegrees(Math.abs(value), 1);
    return stopSentence(failure, { along, figure, positive });
  }
}
