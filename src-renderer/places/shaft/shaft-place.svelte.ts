import { resolveLayout, type ShaftDocument } from '../../../shared-math/layout/index.ts';
import { type FrontEnd, prepareFrontEnd } from '../../../shared-math/linkage/index.ts';
import {
  bestClocked,
  checkMeetings,
  evenColumnYoke,
  type Meeting,
  outputOf,
  ratioOf,
  type ShaftMotion,
  type Suggestion,
} from '../../../shared-math/shaft/index.ts';
import type { SplineCandidate } from '../../../shared-math/splines/index.ts';
import { toDegrees, toRadians } from '../../../shared-math/units/index.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import type { JobClient } from '../../jobs/job-client.ts';
import type { RouteQuestion } from './route-job.ts';
import { withEnd, withShaft } from './shaft-edits.ts';

export const SHAFT_PAGES = [
  ['route', 'Route'],
  ['ends', 'Ends'],
  ['splines', 'Splines'],
  ['make', 'Make'],
] as const;
export type ShaftPage = (typeof SHAFT_PAGES)[number][0];

/** Output and ratio over one turn of the handwheel either way. Degrees. */
export interface MotionCurve {
  /** Output less input. */
  readonly off: readonly number[];
  /** Output turn over input turn. */
  readonly ratio: readonly number[];
}

/** Degrees of handwheel at which the motion is drawn: two turns, as the ripple comes twice in each. */
export const MOTION_SPAN = 360;
export const MOTION_AT: readonly number[] = Array.from({ length: 145 }, (_, i) => -MOTION_SPAN + 5 * i);

/**
 * A motion over the handwheel, counter-clockwise for the driver positive, with the first yoke so that left and right are alike.
 * Handwheel and chain turn opposite ways about their axes, so both are taken negative.
 */
export function motionCurve(motion: ShaftMotion): MotionCurve {
  const yoke = evenColumnYoke(motion, 'slowest');
  const off: number[] = [];
  const ratio: number[] = [];
  for (const degrees of MOTION_AT) {
    const input = toRadians(-degrees);
    off.push(toDegrees(-outputOf(motion, yoke, input)) - degrees + 0);
    ratio.push(ratioOf(motion, yoke, input));
  }
  return { off, ratio };
}

/** What is known of a splined end by caliper and eye, as typed. */
export interface SplineFields {
  /** mm. */
  readonly outsideDiameter: number | undefined;
  readonly counted: number | undefined;
  readonly over: 'circle' | 'half';
  /** Counted over the other half, to be sure. */
  readonly otherHalf: number | undefined;
  readonly missing: number;
}

/** The place where the steering shaft is laid out: which page shows, what was suggested, what a spline may be. */
export class ShaftPlace {
  readonly #openLayout: OpenLayout;
  readonly #client: JobClient;
  #stop: (() => void) | null = null;
  /** Of which shaft's ends and what else the suggestions are. */
  #askedOf: unknown;

  open = $state(false);
  page: ShaftPage = $state('route');
  /** A shaft that is looked at on the board before it is taken, with the layout around it. */
  onBoard: FrontEnd | undefined = $state.raw();
  searching = $state(false);
  suggestions: readonly Suggestion[] | null = $state.raw(null);
  /** Number of joints of the suggestion that is looked at on the board. */
  looked: number | null = $state(null);
  trouble = $state('');
  spline: SplineFields = $state.raw({
    outsideDiameter: undefined,
    counted: undefined,
    over: 'half',
    otherHalf: undefined,
    missing: 0,
  });

  meetings: readonly Meeting[] = $derived.by(() => {
    const { shaft, route, lengthStyle } = this.#openLayout;
    return shaft && route ? checkMeetings(shaft, route, lengthStyle) : [];
  });
  now: MotionCurve | undefined = $derived.by(() => {
    const { turning } = this.#openLayout;
    return turning && motionCurve(turning.motion);
  });
  best: MotionCurve | undefined = $derived.by(() => {
    const { turning } = this.#openLayout;
    return turning && motionCurve(turning.best);
  });

  /** The car with the shaft that is looked at. */
  tried: FrontEnd | undefined = $derived.by(() => {
    const { document } = this.#openLayout;
    const outcome = this.suggestions?.find(({ joints }) => joints === this.looked)?.outcome;
    return document && outcome?.ok
      ? prepareFrontEnd(resolveLayout(withShaft(document, outcome.value.shaft)))
      : undefined;
  });

  constructor(openLayout: OpenLayout, client: JobClient) {
    this.#openLayout = openLayout;
    this.#client = client;
  }

  /** Run as an effect: suggestions for a layout that has changed since are no longer worth taking. */
  follow(): void {
    const { document } = this.#openLayout;
    if (this.#askedOf === undefined || document === this.#askedOf) return;
    this.cancel();
    this.suggestions = null;
    this.looked = null;
  }

  /** One edit of the shaft, one step of undo. */
  change(label: string, shaft: ShaftDocument | null | undefined, merge?: string): boolean {
    const { document } = this.#openLayout;
    if (!document || shaft === undefined) return false;
    const taken = this.#openLayout.edits.change(label, withShaft(document, shaft), merge);
    if (!taken) this.#openLayout.tell(`Not changed: ${this.#openLayout.edits.refusal}.`);
    return taken;
  }

  /** How far each clock is from the one that leaves least, rad; undefined if all stand so within a tenth of a degree. */
  get clockedBest(): boolean {
    const { turning } = this.#openLayout;
    if (!turning) return true;
    return turning.motion.swing - turning.best.swing < toRadians(0.02);
  }

  setBestClocking(): void {
    const { shaft } = this.#openLayout;
    if (shaft) this.change('Set the best clocking', bestClocked(shaft));
  }

  suggest(): void {
    const { document, settings } = this.#openLayout;
    if (!document?.shaft) return;
    this.cancel();
    this.trouble = '';
    this.suggestions = null;
    this.looked = null;
    this.searching = true;
    this.#askedOf = document;
    this.#stop = this.#client.begin<RouteQuestion, undefined, Suggestion[]>(
      'route',
      { document, limits: $state.snapshot(settings.limits) },
      {
        answer: (suggestions) => {
          this.searching = false;
          this.suggestions = suggestions;
        },
        broken: (reason) => {
          this.searching = false;
          this.trouble = `The search broke off: ${reason}.`;
        },
      },
    );
  }

  cancel(): void {
    this.#stop?.();
    this.#stop = null;
    this.searching = false;
  }

  /** A suggested route becomes the shaft; ends and stock that were chosen stay where a joint or shaft of that number still is. */
  take({ joints, outcome }: Suggestion): boolean {
    const { shaft } = this.#openLayout;
    if (!outcome.ok || !shaft) return false;
    const next = outcome.value.shaft;
    return this.change(`Use the route of ${joints} ${joints === 1 ? 'joint' : 'joints'}`, {
      ...next,
      joints: next.joints.map((joint, i) => {
        // The last joint has the box's side, whatever its number.
        const first = shaft.joints[i];
        const last = shaft.joints[shaft.joints.length - 1];
        const columnSide = first?.columnSide;
        const boxSide = i === next.joints.length - 1 ? last?.boxSide : first?.boxSide;
        return {
          ...joint,
          ...(columnSide ? { columnSide } : {}),
          ...(boxSide ? { boxSide } : {}),
        };
      }),
      shafts: next.shafts.map((piece, i) => {
        const stock = shaft.shafts[i]?.stock ?? shaft.shafts[0]?.stock;
        return stock ? { ...piece, stock } : piece;
      }),
    });
  }

  /** What was found becomes the column's or the box's end; with as many teeth as were counted where no form was. */
  useSpline(part: 'column' | 'box', found: SplineCandidate | undefined, counted: number): boolean {
    const { shaft } = this.#openLayout;
    const { outsideDiameter } = this.spline;
    if (!shaft || outsideDiameter === undefined) return false;
    return this.change(
      part === 'column' ? 'Set the column’s spline' : 'Set the box’s spline',
      withEnd(shaft, part, {
        kind: 'spline',
        form: found?.form ?? 'unidentified',
        teeth: found?.teeth ?? counted,
        ...(found?.pitch === undefined ? {} : { pitch: found.pitch }),
        ...(found?.module === undefined ? {} : { module: found.module }),
        diameter: Math.round(outsideDiameter * 1000) / 1000,
        ...(shaft[part].fit?.length === undefined ? {} : { length: shaft[part].fit?.length }),
      }),
    );
  }
}
