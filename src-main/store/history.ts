import type { LayoutDocument } from '../../shared-math/layout/index.ts';
import type { Bench } from './database.ts';
import { storedDocument } from './documents.ts';
import { StoreError } from './store-error.ts';

/** States kept of each variant. An evening's work is some hundred edits; a state is a few kilobytes. */
export const HISTORY_MAX = 300;

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

interface StateRow extends HistoryState, Edit {
  readonly variant_id: string;
  readonly document: string;
}

/** The states of each variant, oldest first in the table. The newest is always the variant's present document. */
export function historyIn({ db, now }: Bench) {
  const latest = db.prepare<[string], Pick<StateRow, 'id' | 'step'>>(
    'SELECT id, step FROM history WHERE variant_id = ? ORDER BY id DESC LIMIT 1',
  );
  const insert = db.prepare<[string, string, string, number, string]>(
    'INSERT INTO history (variant_id, step, label, at, document) VALUES (?, ?, ?, ?, ?)',
  );
  const replace = db.prepare<[string, number, string, number]>(
    'UPDATE history SET label = ?, at = ?, document = ? WHERE id = ?',
  );
  const prune = db.prepare<[{ variant: string; kept: number }]>(`
    DELETE FROM history WHERE variant_id = @variant
      AND id > (SELECT min(id) FROM history WHERE variant_id = @variant)
      AND id <= (SELECT id FROM history WHERE variant_id = @variant ORDER BY id DESC LIMIT 1 OFFSET @kept)`);
  const list = db.prepare<[string], HistoryState>(
    'SELECT id, at, label FROM history WHERE variant_id = ? ORDER BY id DESC',
  );
  const byId = db.prepare<[number], StateRow>('SELECT * FROM history WHERE id = ?');

  function state(id: number): StateRow {
    const row = byId.get(id);
    if (!row) throw new StoreError('not-found', 'this state is no longer in the history');
    return row;
  }

  return {
    /** Keeps a state. One that `continues` the latest edit takes its place. */
    record(variantId: string, edit: Edit, text: string, continues: boolean): void {
      const last = latest.get(variantId);
      if (continues && last?.step === edit.step) replace.run(edit.label, now(), text, last.id);
      else insert.run(variantId, edit.step, edit.label, now(), text);
      prune.run({ variant: variantId, kept: HISTORY_MAX - 1 });
    },

    latestStep: (variantId: string): string | undefined => latest.get(variantId)?.step,

    /** Newest first. */
    list: (variantId: string): HistoryState[] => list.all(variantId),

    read: (id: number): LayoutDocument => storedDocument(state(id).document, 'this state'),

    readOf(variantId: string, id: number): { label: string; document: LayoutDocument } {
      const row = state(id);
      if (row.variant_id !== variantId)
        throw new StoreError('not-found', 'this state is not in the history of this variant');
      return { label: row.label, document: storedDocument(row.document, 'this state') };
    },
  };
}

export type History = ReturnType<typeof historyIn>;
