import type { LayoutDocument } from '../../shared-math/layout/index.ts';
import { shownText } from '../../shared-math/outside/index.ts';
import type { Bench } from './database.ts';
import { storedDocument } from './documents.ts';
import type { PhotoUse } from './photo-use.ts';
import type { States, StoredText } from './states.ts';
import { StoreError } from './store-error.ts';
import { thinnedOut } from './thinning.ts';

export interface HistoryState {
  readonly id: number;
  readonly at: number;
  readonly label: string;
}

/** Which edit a state comes from: `step` names the edit, `label` tells a person what it was. */
export interface Edit {
  readonly step: string;
  readonly label: string;
}

/** Characters of a label, as in the contract and in the file of a whole shop: it may name a thing of a name as long. */
export const LABEL_MOST = 200;

interface StateRow extends HistoryState, Edit, StoredText {
  readonly variant_id: string;
}

interface Putting {
  readonly variant: string;
  readonly id: number | null;
  readonly step: string;
  readonly label: string;
  readonly at: number;
  readonly base: number | null;
  readonly packed: Buffer;
  readonly sum: number;
}

/** The states of each variant, oldest first in the table. The newest is always the variant's present document. */
export function historyIn({ db, now }: Pick<Bench, 'db' | 'now'>, states: States, uses: PhotoUse) {
  const latest = db.prepare<[string], Pick<StateRow, 'id' | 'step'>>(
    'SELECT id, step FROM history WHERE variant_id = ? ORDER BY id DESC LIMIT 1',
  );
  const put = db.prepare<[Putting]>(`
    INSERT INTO history (id, variant_id, step, label, at, document, base, packed, sum)
      VALUES (@id, @variant, @step, @label, @at, '', @base, @packed, @sum)
      ON CONFLICT (id) DO UPDATE SET label = @label, at = @at, document = '', base = @base, packed = @packed, sum = @sum`);
  const remove = db.prepare<[number]>('DELETE FROM history WHERE id = ?');
  const list = db.prepare<[string], HistoryState>(
    'SELECT id, at, label FROM history WHERE variant_id = ? ORDER BY id DESC',
  );
  const byId = db.prepare<[number], StateRow>('SELECT * FROM history WHERE id = ?');

  function state(id: number): StateRow {
    const row = byId.get(id);
    if (!row) throw new StoreError('not-found', 'this state is no longer in the history');
    return row;
  }

  function document(row: StateRow): LayoutDocument {
    return storedDocument(states.text(row) ?? '', 'this state');
  }

  function thin(variantId: string): void {
    const gone = thinnedOut(list.all(variantId), now());
    for (const id of gone) remove.run(id);
    if (gone.length > 0) states.dropUnusedBases(variantId);
  }

  /** Puts a state into a row of its own, or into that of the state `id`, which it takes the place of. */
  function set(variant: string, { step, label }: Edit, at: number, text: string, id: number | null): void {
    const { base, packed, sum } = states.packed(variant, text);
    const shown = shownText(label, LABEL_MOST);
    const { lastInsertRowid } = put.run({ variant, id, step, label: shown, at, base, packed, sum });
    uses.note(variant, text, id ?? Number(lastInsertRowid));
  }

  return {
    /** Keeps a state. One that `continues` the latest edit takes its place. */
    record(variantId: string, edit: Edit, text: string, continues: boolean): void {
      const last = latest.get(variantId);
      const id = continues && last?.step === edit.step ? last.id : null;
      set(variantId, edit, now(), text, id);
      if (id === null) thin(variantId);
    },

    /** Adds a state of another time behind those that are there. */
    add: (variantId: string, edit: Edit, at: number, text: string): void =>
      set(variantId, edit, at, text, null),

    latestStep: (variantId: string): string | undefined => latest.get(variantId)?.step,

    /** Newest first. */
    list: (variantId: string): HistoryState[] => list.all(variantId),

    /** As it was saved, byte for byte; undefined if it is damaged. */
    text: (id: number): string | undefined => states.text(state(id)),

    read: (id: number): LayoutDocument => document(state(id)),

    readOf(variantId: string, id: number): { label: string; document: LayoutDocument } {
      const row = state(id);
      if (row.variant_id !== variantId)
        throw new StoreError('not-found', 'this state is not in the history of this variant');
      return { label: row.label, document: document(row) };
    },
  };
}

export type History = ReturnType<typeof historyIn>;
