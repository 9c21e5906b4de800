import { type Edit, EMPTY_HISTORY, type History } from './history.ts';
import { markOf, type Patch, patched, patchesBetween } from './patches.ts';

/** The part of the browser's storage that is needed; a plain object in tests. */
export type Cupboard = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

interface PackedEdit {
  readonly label: string;
  /** What makes the document before it of the one after it, and the other way round. */
  readonly back: readonly Patch[];
  readonly forth: readonly Patch[];
}

interface PackedHistory {
  /** The mark of the document that the steps begin at. */
  readonly at: string;
  readonly done: readonly PackedEdit[];
  readonly undone: readonly PackedEdit[];
}

/** Characters kept of one variant's steps, and variants kept: a few megabytes are all that a window's storage holds. */
const TEXT_MOST = 250_000;
const VARIANTS_MOST = 12;
/** ms that a change may wait before it is put away: held arrow keys make many. */
const PUT_AWAY_AFTER = 400;

const LIST_KEY = 'toeboard-undo';
const keyOf = (id: string) => `${LIST_KEY}-${id}`;

/**
 * The steps of undo of each variant that was on the board, as this window keeps them over a reload and over a look at
 * another variant: as the differences that each step made, counted from the document that stands. They are this window's
 * own and go with it; what the store keeps of a variant is its history.
 */
export class KeptUndo<Document> {
  readonly #cupboard: Cupboard;
  readonly #packed = new WeakMap<Edit<Document>, PackedEdit>();
  #waiting: { readonly id: string; readonly history: History<Document>; readonly present: Document } | null =
    null;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(cupboard: Cupboard) {
    this.#cupboard = cupboard;
  }

  /** Takes note of a variant's steps and the document that they begin at; soon put away. */
  note(id: string, history: History<Document>, present: Document): void {
    if (this.#waiting && this.#waiting.id !== id) this.flush();
    this.#waiting = { id, history, present };
    this.#timer ??= setTimeout(() => this.flush(), PUT_AWAY_AFTER);
  }

  /** Puts away what waits: the page is left, or the board goes to another variant. */
  flush(): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    const waiting = this.#waiting;
    this.#waiting = null;
    if (waiting) this.#putAway(waiting.id, waiting.history, waiting.present);
  }

  /**
   * A variant's steps, if the document is the one that they begin at; `other` if it is another one by now, as after a
   * change in another window: steps back from there would be steps to somewhere else, and are let go.
   */
  read(id: string, present: Document): History<Document> | 'other' {
    const text = this.#cupboard.getItem(keyOf(id));
    if (text === null) return EMPTY_HISTORY;
    try {
      const packed = JSON.parse(text) as PackedHistory;
      if (packed.at === markOf(present)) return this.#unpacked(packed, present);
    } catch {
      // Not as it was put away: of no use.
    }
    this.#cupboard.removeItem(keyOf(id));
    return 'other';
  }

  #putAway(id: string, history: History<Document>, present: Document): void {
    let text = '';
    // The oldest steps go first where all of them are too long.
    for (let from = 0; from <= history.done.length; from = Math.ceil((from + history.done.length + 1) / 2)) {
      text = JSON.stringify(this.#pack(history, present, from));
      if (text.length <= TEXT_MOST) break;
      text = '';
    }
    const others = this.#list().filter((each) => each !== id);
    const kept = [...others, id].slice(-VARIANTS_MOST);
    for (const gone of others.slice(0, Math.max(0, others.length + 1 - VARIANTS_MOST)))
      this.#cupboard.removeItem(keyOf(gone));
    try {
      if (text === '') this.#cupboard.removeItem(keyOf(id));
      else this.#cupboard.setItem(keyOf(id), text);
      this.#cupboard.setItem(LIST_KEY, JSON.stringify(kept));
    } catch {
      // The storage is full: better none than those of an older state.
      this.#cupboard.removeItem(keyOf(id));
    }
  }

  /** The variants whose steps are kept, those put away last at the end. */
  #list(): string[] {
    try {
      const list: unknown = JSON.parse(this.#cupboard.getItem(LIST_KEY) ?? '[]');
      return Array.isArray(list) ? list.filter((each) => typeof each === 'string') : [];
    } catch {
      return [];
    }
  }

  #packedEdit(edit: Edit<Document>): PackedEdit {
    const known = this.#packed.get(edit);
    if (known) return known;
    const packed = {
      label: edit.label,
      back: patchesBetween(edit.after, edit.before),
      forth: patchesBetween(edit.before, edit.after),
    };
    this.#packed.set(edit, packed);
    return packed;
  }

  #pack({ done, undone }: History<Document>, present: Document, from: number): PackedHistory {
    return {
      at: markOf(present),
      done: done.slice(from).map((edit) => this.#packedEdit(edit)),
      undone: undone.map((edit) => this.#packedEdit(edit)),
    };
  }

  #unpacked({ done, undone }: PackedHistory, present: Document): History<Document> {
    const at = performance.now();
    let after = present;
    const back = done.toReversed().map(({ label, back }) => {
      const before = patched(after, back) as Document;
      const edit: Edit<Document> = { label, before, after, at };
      after = before;
      return edit;
    });
    let before = present;
    const forth = undone.toReversed().map(({ label, forth }) => {
      const after = patched(before, forth) as Document;
      const edit: Edit<Document> = { label, before, after, at };
      before = after;
      return edit;
    });
    return { done: back.toReversed(), undone: forth.toReversed() };
  }
}
