import {
  type Hardpoint,
  type LayoutDocument,
  readEdited,
  readLayout,
  withMovedPlanned,
} from '../../shared-math/layout/index.ts';
import type { LengthStyle } from '../../shared-math/units/index.ts';
import {
  EMPTY_HISTORY,
  type History,
  MERGE_WITHIN,
  recorded,
  steppedBack,
  steppedForward,
} from './history.ts';
import { refusalSentence } from './refusal-sentences.ts';
import { SAVE_AFTER, SAVE_AFTER_DRAGGING, type SaveJob } from './save-queue.ts';

/** A drag in progress: any number of moves, one step of undo. */
export interface DragEdit {
  /** Takes the document as dragged so far; one that would be refused is not taken, and the notice says why. */
  move(document: LayoutDocument): boolean;
  commit(): void;
  /** As if the drag had never been. */
  cancel(): void;
}

/** What edits are made on: the open document, and what has to follow when it changes. */
export interface EditedBoard {
  document: LayoutDocument | null;
  /** Written at every step, for those who show what can be undone. */
  history: History<LayoutDocument>;
  /** Hears of the steps after each that was made, undone or redone; the document is the one that they begin at. */
  keepHistory?(history: History<LayoutDocument>): void;
  readonly points: readonly Hardpoint[];
  /** The unit in which refusals are reported; absent, the document's own. */
  readonly lengthStyle?: LengthStyle;
  readonly saving: {
    put(job: SaveJob, delay?: number): void;
    hasSent(step: string): boolean;
    withdraw(step: string): void;
  };
  /** The layout is drawn at ride height: a posed car goes back there before it is changed. */
  readonly carPose: { returnForEdit(): void };
  /** Points may have gone with the change. */
  forgetLostPoints(): void;
  tell(sentence: string, milliseconds?: number): void;
}

/** A name for one edit, unlike that of any other window or session. */
const newStep = () => crypto.randomUUID();

/** ms. What was just undone is plain to see; the words only say what it was. */
const UNDO_SHOWN = 4000;

/** Every change of the open document, as steps that can be undone, each on its way to the store as it is made. */
export class Edits {
  readonly #board: EditedBoard;
  #history: History<LayoutDocument> = EMPTY_HISTORY;
  /** The drag that goes on; a drag that is not this one has no say any more. */
  #drag: DragEdit | null = null;
  #merging = { key: '', step: '', at: Number.NEGATIVE_INFINITY };

  /** Why the last change that was not taken was not: one line, without its full stop. */
  refusal = '';

  constructor(board: EditedBoard) {
    this.#board = board;
  }

  /** Another document is on the board: nothing of the last one can be undone on it, but what is known of its own steps. */
  forget(known: History<LayoutDocument> = EMPTY_HISTORY): void {
    this.#drag = null;
    this.#history = known;
    this.#board.history = known;
  }

  get dragging(): boolean {
    return this.#drag !== null;
  }

  /** Any other edit ends a drag that is still going on, as if the hand had let go just before; so does leaving the page. */
  finishDrag(): void {
    this.#drag?.commit();
    this.#drag = null;
  }

  beginDrag(label: string): DragEdit {
    const board = this.#board;
    this.finishDrag();
    board.carPose.returnForEdit();
    const before = board.document;
    const step = newStep();
    const goesOn = () => before !== null && this.#drag === edit;
    const edit: DragEdit = {
      move: (document) => {
        // Seen from where the drag began: what it moved on the way is planned.
        const taken = goesOn() && before ? this.#accepted(document, before) : undefined;
        if (!taken) return false;
        board.document = taken;
        board.saving.put({ document: taken, step, label }, SAVE_AFTER_DRAGGING);
        return true;
      },
      commit: () => {
        const after = board.document;
        if (!goesOn() || !before || !after) return;
        this.#drag = null;
        if (after === before) return;
        this.record(label, before, after);
        board.saving.put({ document: after, step, label }, 0);
      },
      cancel: () => {
        if (!goesOn() || !before) return;
        this.#drag = null;
        if (board.document === before) return;
        board.document = before;
        board.tell('');
        // What was saved of it meanwhile is saved over, in the same place of the history.
        if (board.saving.hasSent(step))
          board.saving.put({ document: before, step, label: 'Cancel a drag' }, 0);
        else board.saving.withdraw(step);
      },
    };
    this.#drag = edit;
    return edit;
  }

  /**
   * One step of undo. A document that would be refused is not taken: the notice says why and everything stays.
   * Changes with the same `merge` key that follow one another closely become one step.
   */
  change(label: string, document: LayoutDocument, merge?: string): boolean {
    const board = this.#board;
    this.finishDrag();
    board.carPose.returnForEdit();
    const before = board.document;
    const taken = before ? this.#accepted(document) : undefined;
    if (!before || !taken) return false;
    board.document = taken;
    this.record(label, before, taken, merge);
    board.saving.put({ document: taken, step: this.#stepOf(merge), label }, SAVE_AFTER);
    board.forgetLostPoints();
    return true;
  }

  undo(): void {
    this.finishDrag();
    const back = steppedBack(this.#history);
    if (back) this.#stepTo(back.history, back.edit.before, `Undo: ${back.edit.label}`);
  }

  redo(): void {
    this.finishDrag();
    const forward = steppedForward(this.#history);
    if (forward) this.#stepTo(forward.history, forward.edit.after, `Redo: ${forward.edit.label}`);
  }

  /** Keeps a change that has been made as a step that can be undone. */
  record(label: string, before: LayoutDocument, after: LayoutDocument, merge?: string): void {
    const edit = { label, before, after, at: performance.now(), ...(merge ? { merge } : {}) };
    this.#keep(recorded(this.#history, edit));
    this.#board.tell('');
  }

  #stepTo(history: History<LayoutDocument>, document: LayoutDocument, label: string): void {
    this.#board.carPose.returnForEdit();
    this.#board.document = document;
    this.#keep(history);
    this.#board.saving.put({ document, step: newStep(), label }, SAVE_AFTER);
    this.#board.forgetLostPoints();
    this.#board.tell(label, UNDO_SHOWN);
  }

  #keep(history: History<LayoutDocument>): void {
    this.#history = history;
    this.#board.history = history;
    this.#board.keepHistory?.(history);
  }

  /** An edited document as it can be taken; `before` is the one that the edit was made on. */
  #accepted(document: LayoutDocument, before = this.#board.document): LayoutDocument | undefined {
    const { document: taken } = this.#board;
    const read =
      taken && before ? readEdited(taken, withMovedPlanned(before, document)) : readLayout(document);
    if (read.ok) return read.value;
    this.refusal = refusalSentence(
      read.failure,
      this.#board.points,
      this.#board.document ?? undefined,
      this.#board.lengthStyle,
    );
    this.#board.tell(`Not changed. ${this.refusal}.`);
    return undefined;
  }

  /** Nudges that run together in the undo share one place in the stored history too. */
  #stepOf(key: string | undefined): string {
    if (key === undefined) return newStep();
    const at = performance.now();
    const joins = this.#merging.key === key && at - this.#merging.at <= MERGE_WITHIN;
    this.#merging = { key, step: joins ? this.#merging.step : newStep(), at };
    return this.#merging.step;
  }
}
