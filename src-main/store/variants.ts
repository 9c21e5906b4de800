import { randomUUID } from 'node:crypto';
import type { LayoutDocument } from '../../shared-math/layout/index.ts';
import type { Bench } from './database.ts';
import { storedDocument, storedText } from './documents.ts';
import type { Edit, History, HistoryState } from './history.ts';
import { copyName, distinctName } from './names.ts';
import { readableName, readableTime, shownName } from './readable.ts';
import { StoreError } from './store-error.ts';

export interface OpenVariant {
  readonly id: string;
  readonly carId: string;
  readonly carName: string;
  readonly customerName: string;
  readonly document: LayoutDocument;
  readonly revision: number;
  readonly savedAt: number;
}

export interface Saved {
  readonly revision: number;
  readonly savedAt: number;
}

export interface Save extends Edit {
  readonly id: string;
  readonly document: LayoutDocument;
  /** The revision that the document was made from. */
  readonly revision: number;
  /** Saves even if another window has saved since. */
  readonly force: boolean;
}

interface VariantRow {
  readonly id: string;
  readonly car_id: string;
  readonly name: string;
  readonly document: string;
  readonly revision: number;
  readonly saved_at: number;
  readonly sheet_revision: number;
  readonly sheet_mark: string;
}

type ShownRow = VariantRow & { readonly car_name: string; readonly customer_name: string };

function ownEdit(label: string): Edit {
  return { step: randomUUID(), label };
}

/** Each car's variants. A variant's name is its document's name, kept in a column as well for the drawer. */
export function variantsIn({ db, now, write }: Bench, history: History) {
  const stored = db.prepare<[string], VariantRow>('SELECT * FROM variant WHERE id = ?');
  const shown = db.prepare<[string], ShownRow>('SELECT * FROM shown_variant WHERE id = ?');
  const ofCar = db.prepare<[string], ShownRow>('SELECT * FROM shown_variant WHERE car_id = ? ORDER BY made');
  const shownCar = db.prepare<[string]>('SELECT 1 FROM shown_car WHERE id = ?');
  const insert = db.prepare<[string, string, string, string, number]>(
    'INSERT INTO variant (id, car_id, name, document, revision, saved_at) VALUES (?, ?, ?, ?, 1, ?)',
  );
  const update = db.prepare<[string, string, number, number, string]>(
    'UPDATE variant SET name = ?, document = ?, revision = ?, saved_at = ? WHERE id = ?',
  );
  const issue = db.prepare<[number, string, string]>(
    'UPDATE variant SET sheet_revision = ?, sheet_mark = ? WHERE id = ?',
  );
  const moveTo = db.prepare<[string, string]>('UPDATE variant SET car_id = ? WHERE id = ?');

  function storedVariant(id: string): VariantRow {
    const row = stored.get(id);
    if (!row) throw new StoreError('not-found', 'this variant no longer exists');
    return row;
  }

  function shownVariant(id: string): ShownRow {
    const row = shown.get(storedVariant(id).id);
    if (!row) throw new StoreError('not-found', 'this variant lies in the bin');
    return row;
  }

  function requireCar(id: string): void {
    if (!shownCar.get(id)) throw new StoreError('not-found', 'this car is not in the shop');
  }

  function insertNamed(carId: string, document: LayoutDocument, name: string, label: string): string {
    requireCar(carId);
    const id = randomUUID();
    const text = storedText({ ...document, name });
    insert.run(id, carId, name, text, now());
    history.record(id, ownEdit(label), text, false);
    return id;
  }

  /** The one way in which a variant's document changes: row and history together. */
  function change(row: VariantRow, document: LayoutDocument, edit: Edit, continues: boolean): Saved {
    const text = storedText(document);
    const saved = { revision: row.revision + 1, savedAt: now() };
    update.run(document.name, text, saved.revision, saved.savedAt, row.id);
    history.record(row.id, edit, text, continues);
    return saved;
  }

  function opened(row: ShownRow, document = storedDocument(row.document, row.name)): OpenVariant {
    return {
      id: row.id,
      carId: row.car_id,
      carName: readableName(row.car_name),
      customerName: readableName(row.customer_name),
      document,
      revision: row.revision,
      savedAt: readableTime(row.saved_at),
    };
  }

  return {
    namesIn: (carId: string): string[] => ofCar.all(carId).map((row) => row.name),
    /** As `documentsIn`, but without those that are damaged, whose names are reported. */
    readableIn: (carId: string): { documents: LayoutDocument[]; damaged: string[] } => {
      const documents: LayoutDocument[] = [];
      const damaged: string[] = [];
      for (const row of ofCar.all(carId)) {
        try {
          documents.push(storedDocument(row.document, row.name));
        } catch {
          damaged.push(readableName(row.name));
        }
      }
      return { documents, damaged };
    },
    documentsIn: (carId: string): LayoutDocument[] =>
      ofCar.all(carId).map((row) => storedDocument(row.document, row.name)),

    /** The variant of that name in a car, if there is one. */
    named: (carId: string, name: string): string | undefined =>
      ofCar.all(carId).find((row) => row.name === name)?.id,

    open: (id: string): OpenVariant => opened(shownVariant(id)),

    /** Its history, newest first; also of a variant in the bin. */
    states: (id: string): HistoryState[] => history.list(storedVariant(id).id),

    isShown: (id: string): boolean => shown.get(id) !== undefined,

    /** Adds a layout to a car, under a name that the car does not have yet. */
    add: (carId: string, document: LayoutDocument, label: string): string =>
      write(() => {
        const taken = ofCar.all(carId).map((row) => row.name);
        return insertNamed(carId, document, distinctName(document.name, taken), label);
      }),

    save: ({ id, document, revision, force, ...edit }: Save): Saved =>
      write(() => {
        const row = storedVariant(id);
        const current = row.revision === revision;
        if (!current && !force) {
          // The same save sent again, because its reply was lost on the way: it stands already.
          if (history.latestStep(id) === edit.step && row.document === storedText(document))
            return { revision: row.revision, savedAt: row.saved_at };
          throw new StoreError(
            'changed-elsewhere',
            `${shownName(row.name)} has been changed in another window`,
          );
        }
        // A forced save never continues an edit, so that the other window's state keeps its place in the history.
        return change(row, document, edit, current);
      }),

    rename: (id: string, name: string): Saved =>
      write(() => {
        const row = shownVariant(id);
        const document = { ...storedDocument(row.document, row.name), name };
        return change(row, document, ownEdit(`Renamed to ${name}`), false);
      }),

    duplicate: (id: string): string =>
      write(() => {
        const row = shownVariant(id);
        const taken = ofCar.all(row.car_id).map((other) => other.name);
        const document = storedDocument(row.document, row.name);
        return insertNamed(row.car_id, document, copyName(row.name, taken), `Copied from ${row.name}`);
      }),

    /** The revision that a sheet made from what `mark` stands for has: that of the last one out where nothing has changed since. */
    sheetRevision: (id: string, mark: string): number => {
      const { sheet_revision: last, sheet_mark: before } = storedVariant(id);
      return mark === before ? last : last + 1;
    },

    /** Counts a sheet that went out. */
    sheetWentOut: (id: string, mark: string): void =>
      write(() => {
        const { sheet_revision: last, sheet_mark: before } = storedVariant(id);
        if (mark !== before) issue.run(last + 1, mark, id);
      }),

    move: (id: string, carId: string): void =>
      write(() => {
        requireCar(carId);
        moveTo.run(carId, shownVariant(id).id);
      }),

    restore: (id: string, stateId: number): OpenVariant =>
      write(() => {
        const row = shownVariant(id);
        const { label, document: earlier } = history.readOf(id, stateId);
        const document = { ...earlier, name: row.name };
        return { ...opened(row, document), ...change(row, document, ownEdit(`Restore: ${label}`), false) };
      }),
  };
}

export type Variants = ReturnType<typeof variantsIn>;
