/**
 * Undo and redo as plain data: every edit is its label and the documents before and after it. Documents are
 * immutable, so keeping both costs a reference each. Nothing here knows what a document is.
 */
export interface Edit<Document> {
  /** What was done, as a person would say it: "Move pitman ball". */
  readonly label: string;
  readonly before: Document;
  readonly after: Document;
  /** Edits that follow one another closely with the same key become one step, as held arrow keys do. */
  readonly merge?: string;
  /** Milliseconds of any steady clock. */
  readonly at: number;
}

export interface History<Document> {
  /** Oldest first. */
  readonly done: readonly Edit<Document>[];
  /** The next one to redo last. */
  readonly undone: readonly Edit<Document>[];
}

export const EMPTY_HISTORY: History<never> = { done: [], undone: [] };

/** Steps kept. A long evening's work, and a few megabytes at most. */
export const HISTORY_MAX = 300;
/** Milliseconds within which equal edits run together. */
export const MERGE_WITHIN = 1000;

/** The history with one more edit. What had been undone is gone; an edit that changed nothing is not recorded. */
export function recorded<Document>(history: History<Document>, edit: Edit<Document>): History<Document> {
  if (edit.before === edit.after) return history;
  const last = history.done.at(-1);
  const joins =
    last !== undefined &&
    history.undone.length === 0 &&
    edit.merge !== undefined &&
    edit.merge === last.merge &&
    edit.before === last.after &&
    edit.at - last.at <= MERGE_WITHIN;
  const done = joins
    ? [...history.done.slice(0, -1), { ...edit, before: last.before }]
    : [...history.done, edit].slice(-HISTORY_MAX);
  return { done, undone: [] };
}

/** One step back: the history after it and the edit taken back. Undefined if there is none. */
export function steppedBack<Document>(
  history: History<Document>,
): { readonly history: History<Document>; readonly edit: Edit<Document> } | undefined {
  const edit = history.done.at(-1);
  if (!edit) return undefined;
  return { history: { done: history.done.slice(0, -1), undone: [...history.undone, edit] }, edit };
}

/** One step forward again. */
export function steppedForward<Document>(
  history: History<Document>,
): { readonly history: History<Document>; readonly edit: Edit<Document> } | undefined {
  const edit = history.undone.at(-1);
  if (!edit) return undefined;
  // Without its key, so that the next nudge does not run together with one that was undone and redone.
  const { merge: _, ...plain } = edit;
  return { history: { done: [...history.done, plain], undone: history.undone.slice(0, -1) }, edit };
}
