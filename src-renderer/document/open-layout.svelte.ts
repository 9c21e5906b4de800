import { createContext } from 'svelte';
import { USUAL_INSTRUMENTS } from '../../shared-math/adjust/list/index.ts';
import { type AimOutcome, findAim, type HeldTravel, holdTravel } from '../../shared-math/aim/index.ts';
import type { BrakingRow } from '../../shared-math/brake/index.ts';
import { jointLimits } from '../../shared-math/findings/index.ts';
import type { Point } from '../../shared-math/geometry/points.ts';
import {
  bodyAt,
  bodyPoints,
  type CarBody,
  carBodies,
  type Hardpoint,
  hardpoints,
  holdOf,
  type Layout,
  type LayoutDocument,
  movePoint,
  originOf,
  PLAIN_LAYOUT,
  pointNumbers,
  resolveLayout,
  type ShaftDocument,
} from '../../shared-math/layout/index.ts';
import { type FrontEnd, prepareFrontEnd } from '../../shared-math/linkage/index.ts';
import { type Route, routeOf, type Turning, turningOf } from '../../shared-math/shaft/index.ts';
import {
  type OneWheel,
  summariseTravel,
  sweepTravel,
  sweepTurn,
  type TravelSummary,
  type TravelSweep,
  type TurnSweep,
  worstOneWheel,
} from '../../shared-math/sweep/index.ts';
import {
  formatDegrees,
  formatLength,
  type LengthStyle,
  lengthBeside,
  toRadians,
} from '../../shared-math/units/index.ts';
import type { Call, CallHost, Reply, Request, Settings } from '../../src-main/api/contract.ts';
import { brakingSweepOf } from './braked-car.ts';
import { CarPose } from './car-pose.svelte.ts';
import type { ShownGap } from './clearances.svelte.ts';
import { Edits } from './edits.ts';
import { EMPTY_HISTORY, type History } from './history.ts';
import { KeptUndo } from './kept-undo.ts';
import { withArmHeld } from './known-lengths.ts';
import { type Arrow, nudged, nudgeStep, type ShownView, type ViewName } from './nudge.ts';
import { SaveQueue, type SaveState } from './save-queue.ts';

export type OpenVariant = Reply<'variant.open'>;

/** Poses of a sweep over the travel, each way included. */
const SWEEP_COUNT = 31;

/**
 * The open layout and everything that follows from it. The board, the curves and the panels read from here and
 * change the document only through its `edits`; what is derived is worked out when
 * somebody looks. Documents are immutable: a change is a new document.
 */
export class OpenLayout {
  readonly call: CallHost;
  readonly saving: SaveQueue;
  /** Where the car stands. */
  readonly carPose: CarPose;
  /** Every change of the document goes through these. */
  readonly edits: Edits;
  /** What can be undone in each variant, over a reload of the page and a look at another one. */
  readonly keptUndo = new KeptUndo<LayoutDocument>(sessionStorage);
  #clearing: ReturnType<typeof setTimeout> | undefined;
  #fitted: (() => void) | undefined;
  #spotted: OpenLayout['spotOf'] | undefined;

  /** The variant that is open: its names and where it belongs. Its document is `document`. */
  variant: Omit<OpenVariant, 'document'> | null = $state.raw(null);
  document: LayoutDocument | null = $state.raw(null);

  settings: Settings = $state({
    unit: 'in',
    fraction: 16,
    snap: true,
    lastVariant: null,
    limits: {},
    tolerance: 3.175,
    instruments: { ...USUAL_INSTRUMENTS },
    drawnBy: '',
    driverSide: null,
    asked: false,
    walk: { step: 0, shown: false },
    arcsDetail: true,
    folded: { sliders: false, curves: false },
    ground: 'as-computer',
  });
  lengthStyle: LengthStyle = $derived({ unit: this.settings.unit, fraction: this.settings.fraction });

  /** With nothing open these stand for a plain car, so that what is derived always exists; nobody shows it. */
  layout: Layout = $derived(resolveLayout(this.document ?? PLAIN_LAYOUT));
  points: Hardpoint[] = $derived(hardpoints(this.document ?? PLAIN_LAYOUT));
  /** The number of each point, by id: the same on the board, on every page and in every drawing. */
  numbers: ReadonlyMap<string, number> = $derived(pointNumbers(this.document ?? PLAIN_LAYOUT));
  /** The pitman arm's length was measured on the car. */
  armKnown = $state(false);
  /** Whether a known arm stays as it is while its ball is dragged; not while the arm is being chosen. */
  holdsArm = $state(true);
  /** Ids of the hardpoints whose places are guesses: nobody measured, traced or planned them. */
  guessed: ReadonlySet<string> = $derived.by(() => {
    const document = this.document ?? PLAIN_LAYOUT;
    return new Set(this.points.flatMap((point) => (originOf(document, point) === 'guess' ? [point.id] : [])));
  });
  frontEnd: FrontEnd = $derived(prepareFrontEnd(this.layout));

  heaveSweep: TravelSweep = $derived.by(() => {
    const { bump, rebound: droop } = this.layout.travel;
    return sweepTravel(
      this.frontEnd,
      'heave',
      -droop,
      bump,
      SWEEP_COUNT,
      toRadians(this.carPose.pose.handwheel),
    );
  });
  rollSweep: TravelSweep = $derived.by(() => {
    const roll = toRadians(this.layout.travel.roll);
    return sweepTravel(
      this.frontEnd,
      'roll',
      -roll,
      roll,
      SWEEP_COUNT,
      toRadians(this.carPose.pose.handwheel),
    );
  });
  /** Over how hard the car brakes, at ride height; none where the layout's masses cannot be. */
  brakingSweep: readonly BrakingRow[] = $derived.by(() =>
    brakingSweepOf(this.frontEnd, toRadians(this.carPose.pose.handwheel)),
  );
  /** The whole turn at the pose's heave, roll and braking; the handwheel may move without it being swept again. */
  turn: TurnSweep = $derived.by(() => {
    const { heave, roll } = this.carPose.pose;
    return sweepTurn(this.carPose.standing, heave, toRadians(roll));
  });
  summary: TravelSummary = $derived(summariseTravel(this.heaveSweep));
  /** Largest bump steer with each wheel anywhere in its own travel, at the handwheel as it stands. */
  oneWheel: OneWheel = $derived.by(() =>
    worstOneWheel(this.frontEnd, toRadians(this.carPose.pose.handwheel)),
  );
  /** The axle's poses over the travel, for whatever is tried on them: the aim, the arcs, the figure at the aim. */
  held: HeldTravel = $derived(holdTravel(this.frontEnd));
  aim: AimOutcome = $derived(findAim(this.frontEnd, this.held));

  /** The same object for as long as no edit touches it, so that what follows from it stays too. */
  shaft: ShaftDocument | null = $derived(this.document?.shaft ?? null);
  /** The steering shaft as it lies, by the shop's limits; undefined if the layout has none. */
  route: Route | undefined = $derived(
    this.shaft ? routeOf(this.shaft, jointLimits(this.settings.limits)) : undefined,
  );
  /** How it turns; undefined if there is none, or where a joint is folded so far that it passes nothing on. */
  turning: Turning | undefined = $derived.by(() => {
    const turning = this.shaft && this.route ? turningOf(this.shaft, this.route) : undefined;
    return turning?.ok ? turning.value : undefined;
  });

  /** Id of the chosen hardpoint, rail or obstacle, or of a point of the latter two. */
  selection: string | null = $state(null);
  hover: string | null = $state(null);
  /** The rail or obstacle that is chosen, itself or by one of its points. */
  chosenBody: CarBody | undefined = $derived(
    this.document && this.selection !== null ? bodyAt(this.document, this.selection) : undefined,
  );
  selected: Hardpoint | undefined = $derived(
    (this.chosenBody ? bodyPoints(this.chosenBody) : this.points).find(
      (point) => point.id === this.selection,
    ),
  );
  /** What arrow keys move: the chosen point, or the whole of a chosen obstacle. */
  inHand: Hardpoint | undefined = $derived(this.selected ?? (this.chosenBody && holdOf(this.chosenBody)));
  /** While the page of obstacles shows, every obstacle can be taken hold of. */
  bodiesOpen = $state(false);
  /** Points of rails and obstacles that can be taken hold of now: those of the chosen one, and what the page adds. */
  bodyPoints: Hardpoint[] = $derived.by(() => {
    const chosen = this.chosenBody;
    const others = this.bodiesOpen && this.document ? carBodies(this.document) : [];
    return [
      ...(chosen ? bodyPoints(chosen) : []),
      ...others.flatMap((body) => (body.id === chosen?.id ? [] : (holdOf(body) ?? []))),
    ];
  });
  #gap: ShownGap | null = $state.raw(null);
  /** A gap to be drawn between two parts, while the car stands as it was measured. */
  shownGap: ShownGap | undefined = $derived.by(() => {
    const gap = this.#gap;
    if (!gap || gap.document !== this.document) return undefined;
    const { heave, roll, handwheel, braking } = this.carPose.pose;
    const stands =
      braking === 0 &&
      Math.abs(heave - gap.pose.heave) < 0.01 &&
      Math.abs(roll - gap.pose.roll) < 0.001 &&
      Math.abs(handwheel - gap.pose.handwheel) < 0.01;
    return stands ? gap : undefined;
  });
  /** The view that was pointed at or dragged in last: arrow keys nudge along its axes. */
  lastView: ViewName = $state('side');

  /** What fills the board, or null if all stand on the sheet. */
  enlarged: ShownView | null = $state(null);
  /** The same if it is one of the three views, in which points are worked at. */
  enlargedView: ViewName | null = $derived(this.enlarged === 'pictorial' ? null : this.enlarged);

  /** Written by the edits. */
  history: History<LayoutDocument> = $state.raw(EMPTY_HISTORY);
  canUndo = $derived(this.history.done.length > 0);
  canRedo = $derived(this.history.undone.length > 0);
  undoLabel = $derived(this.history.done.at(-1)?.label ?? '');
  redoLabel = $derived(this.history.undone.at(-1)?.label ?? '');

  notice = $state('');
  saved: SaveState = $state('saved');
  /** Whether the host has been without an answer for some seconds. */
  silent = $state(false);

  constructor(call: CallHost) {
    this.call = call;
    this.saving = new SaveQueue(call, (state) => {
      this.saved = state;
    });
    this.carPose = new CarPose(this);
    this.edits = new Edits(this);
  }

  forgetLostPoints(): void {
    if (!this.selected && !this.chosenBody) this.selection = null;
    this.hover = null;
  }

  /** Poses the car where a gap was measured, and has the gap drawn there. */
  showGap(gap: ShownGap): void {
    this.carPose.set({ braking: 0, ...gap.pose });
    this.#gap = gap;
  }

  /** The document with a point moved by hand; a pitman ball whose arm is held takes its box along. */
  moved(document: LayoutDocument, id: string, to: Point): LayoutDocument {
    return id === 'steering.box.pitmanBall' && this.armKnown && this.holdsArm
      ? withArmHeld(document, to)
      : movePoint(document, id, to);
  }

  /** Moves what is chosen one step along an arrow, in the view used last. */
  nudge(arrow: Arrow, large: boolean): void {
    const point = this.inHand;
    if (!point || !this.document) return;
    const to = nudged(point.at, this.lastView, arrow, nudgeStep(this.settings.unit, large));
    this.edits.change(`Nudge ${point.name}`, this.moved(this.document, point.id, to), `nudge ${point.id}`);
  }

  /** Fits the drawing to the board. */
  fit(): void {
    this.#fitted?.();
  }
  /** The board's own way to fit the drawing; gives back how to take it away again. */
  onFit(fit: () => void): () => void {
    this.#fitted = fit;
    return () => {
      if (this.#fitted === fit) this.#fitted = undefined;
    };
  }
  /** Where a view shows a point's handle, page px; undefined if it shows none now. */
  spotOf(view: ViewName, point: string): { readonly x: number; readonly y: number } | undefined {
    return this.#spotted?.(view, point);
  }
  /** The board's own way to say where its handles are; gives back how to take it away again. */
  onSpot(spotted: OpenLayout['spotOf']): () => void {
    this.#spotted = spotted;
    return () => {
      if (this.#spotted === spotted) this.#spotted = undefined;
    };
  }
  /** Lets one view or the pictorial fill the board, or puts all back on the sheet; wholly in sight either way. */
  enlarge(view: ShownView | null): void {
    this.enlarged = view;
    if (view && view !== 'pictorial') this.lastView = view;
    this.fit();
  }

  // The open variant and the figures -------------------------------------------------------------------------

  /** Puts a variant on the board. What was there must have been saved before. */
  take(open: OpenVariant): void {
    const { document, ...variant } = open;
    this.carPose.toRide();
    this.keptUndo.flush();
    this.saving.open(open.id, open.revision);
    const known = this.keptUndo.read(open.id, document);
    this.edits.forget(known === 'other' ? undefined : known);
    this.variant = variant;
    this.document = document;
    this.selection = null;
    this.hover = null;
    if (known === 'other')
      this.tell(
        'This variant was changed elsewhere since it stood in this window: undo begins anew here. Its history has all that was before.',
      );
  }

  /** Takes note of the steps of the open variant, as the edits make them. */
  keepHistory(history: History<LayoutDocument>): void {
    if (this.variant && this.document) this.keptUndo.note(this.variant.id, history, this.document);
  }

  /** Shows an earlier state that the store has made the present one; one step of undo like any other change. */
  restored(open: OpenVariant, label: string): void {
    const before = this.document;
    if (!before || this.variant?.id !== open.id) {
      this.take(open);
      return;
    }
    this.carPose.returnForEdit();
    this.saving.open(open.id, open.revision);
    this.document = open.document;
    this.edits.record(label, before, open.document);
    this.forgetLostPoints();
  }

  /** Whether something of the open variant is under way here: dragged, or not in the store yet. */
  get busy(): boolean {
    return this.edits.dragging || this.saving.pending;
  }

  /** Shows what another window has made of the open variant: a step that can be undone, of the changes of one moment one. */
  followed(open: OpenVariant): void {
    const before = this.document;
    if (!before || this.variant?.id !== open.id || open.revision <= this.saving.revision) return;
    const { document, ...variant } = open;
    this.carPose.returnForEdit();
    this.saving.open(open.id, open.revision);
    this.variant = variant;
    this.document = document;
    this.edits.record('What was changed in another window', before, document, 'elsewhere');
    this.forgetLostPoints();
  }

  /** Clears the board: its variant was put in the bin. */
  close(): void {
    this.carPose.toRide();
    this.keptUndo.flush();
    this.saving.open('', 0);
    this.edits.forget();
    this.variant = null;
    this.document = null;
    this.selection = null;
    this.hover = null;
  }

  /** Shows a plain sentence for a while; an empty one clears it. */
  tell(sentence: string, milliseconds = 12_000): void {
    clearTimeout(this.#clearing);
    this.notice = sentence;
    if (sentence)
      this.#clearing = setTimeout(() => {
        this.notice = '';
      }, milliseconds);
  }

  /** One call of the host. A failure is reported as a plain sentence that begins with what was wanted. */
  async ask<Name extends Call>(
    wish: string,
    name: Name,
    input: Request<Name>,
  ): Promise<Reply<Name> | undefined> {
    const result = await this.call(name, input);
    if (result.ok) return result.value;
    this.tell(`${wish}: ${result.failure.reason}.`);
    return undefined;
  }

  /** A length in the reader's unit, with its unit; finer where it would read as 0 and is not. */
  length(mm: number): string {
    return lengthBeside(mm, [0], this.lengthStyle);
  }
  /** The same to a finer fraction: sixteenths are too coarse for a gap between arcs. */
  fineLength(mm: number): string {
    const { fraction } = this.lengthStyle;
    return formatLength(mm, fraction === 16 ? { ...this.lengthStyle, fraction: 32 } : this.lengthStyle);
  }
  degrees(degrees: number, decimals = 1): string {
    return formatDegrees(degrees, decimals);
  }
}

/** The one of the page, for its components. */
export const [getOpenLayout, setOpenLayout] = createContext<OpenLayout>();
