import { type AimOutcome, findAim } from '../../shared-math/aim/index.ts';
import {
  type Carrier,
  type Hardpoint,
  hardpoints,
  type Layout,
  type LayoutDocument,
  moveHardpoint,
  type Point,
  readLayout,
  resolveLayout,
} from '../../shared-math/layout/index.ts';
import {
  carryPoint,
  type FrontEnd,
  type FrontEndState,
  prepareFrontEnd,
} from '../../shared-math/linkage/index.ts';
import {
  summariseTravel,
  sweepTravel,
  type TravelSummary,
  type TravelSweep,
} from '../../shared-math/sweep/index.ts';
import { formatDegrees, formatLength, type LengthStyle, toRadians } from '../../shared-math/units/index.ts';
import type { CallHost, Reply, Settings } from '../../src-main/api/contract.ts';
import { refusalSentence } from '../words/refusal-sentences.ts';
import { PLAIN_LAYOUT } from './blank-layout.ts';
import { CarPose } from './car-pose.svelte.ts';
import { EMPTY_HISTORY, type History, recorded, steppedBack, steppedForward } from './history.ts';
import { type Arrow, nudged, nudgeStep, type ViewName } from './nudge.ts';
import type { Pose } from './reach.ts';
import { SAVE_AFTER, SAVE_AFTER_DRAGGING, SaveQueue, type SaveState } from './save-queue.ts';

export type OpenVariant = Reply<'variant.open'>;

/** A drag in progress: any number of moves, one step of undo. */
export interface DragEdit {
  /** Takes the document as dragged so far; one that would be refused is not taken, and the notice says why. */
  move(document: LayoutDocument): boolean;
  commit(): void;
  /** As if the drag had never been. */
  cancel(): void;
}

/** Poses of a sweep over the travel, each way included. */
const SWEEP_COUNT = 31;

/** A name for one edit, unlike that of any other window or session. */
const newStep = () => crypto.randomUUID();

/**
 * The open layout and everything that follows from it. The board, the curves and the panels read from here and
 * change the document only through `beginDrag`, `change`, `undo` and `redo`; what is derived is worked out when
 * somebody looks. Documents are immutable: a change is a new document.
 */
export class Workbench {
  readonly call: CallHost;
  readonly saving: SaveQueue;
  readonly #pose: CarPose;
  #clearing: ReturnType<typeof setTimeout> | undefined;
  #history: History<LayoutDocument> = $state.raw(EMPTY_HISTORY);

  /** The variant that is open: its names and where it belongs. Its document is `document`. */
  variant: Omit<OpenVariant, 'document'> | null = $state.raw(null);
  document: LayoutDocument | null = $state.raw(null);

  settings: Settings = $state({ unit: 'in', fraction: 16, snap: true, lastVariant: null });
  lengthStyle: LengthStyle = $derived({ unit: this.settings.unit, fraction: this.settings.fraction });

  /** With nothing open these stand for a plain car, so that what is derived always exists; nobody shows it. */
  layout: Layout = $derived(resolveLayout(this.document ?? PLAIN_LAYOUT));
  points: Hardpoint[] = $derived(hardpoints(this.document ?? PLAIN_LAYOUT));
  frontEnd: FrontEnd = $derived(prepareFrontEnd(this.layout));

  heaveSweep: TravelSweep = $derived.by(() => {
    const { bump, rebound } = this.layout.travel;
    return sweepTravel(this.frontEnd, 'heave', -rebound, bump, SWEEP_COUNT, this.#handwheel);
  });
  rollSweep: TravelSweep = $derived.by(() => {
    const roll = toRadians(this.layout.travel.roll);
    return sweepTravel(this.frontEnd, 'roll', -roll, roll, SWEEP_COUNT, this.#handwheel);
  });
  summary: TravelSummary = $derived(summariseTravel(this.heaveSweep));
  aim: AimOutcome = $derived(findAim(this.frontEnd));

  selection: string | null = $state(null);
  hover: string | null = $state(null);
  selected: Hardpoint | undefined = $derived(this.points.find((point) => point.id === this.selection));
  /** The view that was pointed at or dragged in last: arrow keys nudge along its axes. */
  lastView: ViewName = $state('side');

  /** Counts the wishes to see the whole sheet; the board fits itself whenever this changes. */
  fitWishes = $state(0);
  /** The view that fills the board, or nothing where all three stand on the sheet. */
  enlarged: ViewName | null = $state(null);

  notice = $state('');
  /** Why the last change that was not taken was not: one line, without its full stop. */
  refusal = '';
  saved: SaveState = $state('saved');

  canUndo = $derived(this.#history.done.length > 0);
  canRedo = $derived(this.#history.undone.length > 0);
  undoLabel = $derived(this.#history.done.at(-1)?.label ?? '');
  redoLabel = $derived(this.#history.undone.at(-1)?.label ?? '');

  constructor(call: CallHost) {
    this.call = call;
    this.saving = new SaveQueue(call, (state) => {
      this.saved = state;
    });
    this.#pose = new CarPose(this);
  }

  // Pose -----------------------------------------------------------------------------------------------------

  get #handwheel(): number {
    return toRadians(this.#pose.pose.handwheel);
  }
  /** Heave in mm, roll and handwheel in degrees. Change it through `setPose`. */
  get pose(): Pose {
    return this.#pose.pose;
  }
  /** Solved at the pose; a fresh object at every change. Not `ok` only where even ride height does not solve. */
  get poseState(): FrontEndState {
    return this.#pose.state;
  }
  get poseLimits() {
    return this.#pose.limits;
  }
  /** One sentence: where the pose stopped and what stopped it, or that the car was returned to ride height. */
  get poseNotice(): string {
    return this.#pose.trouble || this.#pose.notice;
  }
  get atRide(): boolean {
    return this.#pose.atRide;
  }
  get playing(): boolean {
    return this.#pose.playing;
  }
  setPose(partial: Partial<Pose>): void {
    this.#pose.set(partial);
  }
  toRide(): void {
    this.#pose.toRide();
  }
  play(): void {
    this.#pose.play();
  }
  stop(): void {
    this.#pose.stop();
  }
  /** Where a point drawn at ride height stands in the present pose; as drawn where the pose does not solve. */
  carry(carrier: Carrier, at: Point, out: Float64Array): void {
    if (this.poseState.status === 'ok') carryPoint(this.frontEnd, this.poseState, carrier, at, out);
    else out.set(at);
  }

  // Edits ----------------------------------------------------------------------------------------------------

  beginDrag(label: string): DragEdit {
    this.#pose.returnForEdit();
    const before = this.document;
    const step = newStep();
    let over = false;
    return {
      move: (document) => {
        if (over || !before) return false;
        const taken = this.#accept(document);
        if (!taken) return false;
        this.document = taken;
        this.saving.put({ document: taken, step, label }, SAVE_AFTER_DRAGGING);
        return true;
      },
      commit: () => {
        if (over || !before || !this.document) return;
        over = true;
        if (this.document === before) return;
        this.#record({ label, before, after: this.document });
        this.saving.put({ document: this.document, step, label }, 0);
      },
      cancel: () => {
        if (over || !before) return;
        over = true;
        if (this.document === before) return;
        this.document = before;
        if (this.saving.hasSent(step))
          this.saving.put({ document: before, step, label: 'Take back a drag' }, 0);
        else this.saving.withdraw(step);
      },
    };
  }

  /**
   * One step of undo. A document that would be refused is not taken: the notice says why and everything stays.
   * Changes with the same `merge` key that follow one another closely become one step.
   */
  change(label: string, document: LayoutDocument, merge?: string): boolean {
    this.#pose.returnForEdit();
    const before = this.document;
    if (!before) return false;
    const taken = this.#accept(document);
    if (!taken) return false;
    this.document = taken;
    this.#record({ label, before, after: taken, ...(merge ? { merge } : {}) });
    this.saving.put(
      { document: taken, step: merge ? this.#mergedStep(merge) : newStep(), label },
      SAVE_AFTER,
    );
    this.#forgetLostPoints();
    return true;
  }

  /** Moves the selected point one step along an arrow, in the view used last. */
  nudge(arrow: Arrow, large: boolean): void {
    const point = this.selected;
    if (!point || !this.document) return;
    const to = nudged(point.at, this.lastView, arrow, nudgeStep(this.settings.unit, large));
    this.change(`Nudge ${point.name}`, moveHardpoint(this.document, point.id, to), `nudge ${point.id}`);
  }

  undo(): void {
    const back = steppedBack(this.#history);
    if (back) this.#stepTo(back.history, back.edit.before, `Undo: ${back.edit.label}`);
  }
  redo(): void {
    const forward = steppedForward(this.#history);
    if (forward) this.#stepTo(forward.history, forward.edit.after, `Redo: ${forward.edit.label}`);
  }

  #stepTo(history: History<LayoutDocument>, document: LayoutDocument, label: string): void {
    this.#pose.returnForEdit();
    this.#history = history;
    this.document = document;
    this.saving.put({ document, step: newStep(), label }, SAVE_AFTER);
    this.#forgetLostPoints();
    this.tell(label);
  }

  #accept(document: LayoutDocument): LayoutDocument | undefined {
    const read = readLayout(document);
    if (read.ok) return read.value;
    this.refusal = refusalSentence(read.failure, this.points);
    this.tell(`Not changed. ${this.refusal}.`);
    return undefined;
  }

  #record(edit: { label: string; before: LayoutDocument; after: LayoutDocument; merge?: string }): void {
    this.#history = recorded(this.#history, { ...edit, at: performance.now() });
    this.tell('');
  }

  #merging = { key: '', step: '', at: 0 };
  #mergedStep(key: string): string {
    const now = performance.now();
    const joins = this.#merging.key === key && now - this.#merging.at < 1000;
    this.#merging = { key, step: joins ? this.#merging.step : newStep(), at: now };
    return this.#merging.step;
  }

  #forgetLostPoints(): void {
    if (!this.selected) this.selection = null;
    this.hover = null;
  }

  /** Fits the drawing to the board. */
  fit(): void {
    this.fitWishes += 1;
  }
  /** Lets one view fill the board, or puts all three back on the sheet; wholly in sight either way. */
  enlarge(view: ViewName | null): void {
    this.enlarged = view;
    this.fit();
  }

  // The open variant and the figures -------------------------------------------------------------------------

  /** Puts a variant on the board. What was there must have been saved before. */
  take(open: OpenVariant): void {
    const { document, ...variant } = open;
    this.#pose.toRide();
    this.saving.open(open.id, open.revision);
    this.#history = EMPTY_HISTORY;
    this.variant = variant;
    this.document = document;
    this.selection = null;
    this.hover = null;
  }

  /** Shows an earlier state that the store has made the present one; one step of undo like any other change. */
  restored(open: OpenVariant, label: string): void {
    const before = this.document;
    if (!before || this.variant?.id !== open.id) {
      this.take(open);
      return;
    }
    this.#pose.returnForEdit();
    this.saving.open(open.id, open.revision);
    this.document = open.document;
    this.#record({ label, before, after: open.document });
    this.#forgetLostPoints();
  }

  /** Clears the board: its variant was put in the bin. */
  close(): void {
    this.#pose.toRide();
    this.saving.open('', 0);
    this.#history = EMPTY_HISTORY;
    this.variant = null;
    this.document = null;
    this.selection = null;
    this.hover = null;
  }

  /** Shows a plain sentence for a while; an empty one clears it. */
  tell(sentence: string): void {
    clearTimeout(this.#clearing);
    this.notice = sentence;
    if (sentence)
      this.#clearing = setTimeout(() => {
        this.notice = '';
      }, 12_000);
  }

  /** A length in the reader's unit, with its unit. */
  length(mm: number): string {
    return formatLength(mm, this.lengthStyle);
  }
  degrees(degrees: number, decimals = 1): string {
    return formatDegrees(degrees, decimals);
  }
}
