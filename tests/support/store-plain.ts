import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import type { LayoutDocument } from '../../shared-math/layout/index.ts';
import { APPLICATION_ID } from '../../src-main/store/database.ts';
import { DATABASE_FILE } from '../../src-main/store/index.ts';
import { MIGRATIONS } from '../../src-main/store/migrations/index.ts';
import { sampleLayout } from './host-sample.ts';

/** The version before which states stood in the database as plain text. */
const PLAIN = 5;

/** An id of the form that the store uses, by number. */
export function numberedId(number: number): string {
  return `00000000-0000-4000-8000-${String(number).padStart(12, '0')}`;
}

/** The layout of a state, under a name in signs of several bytes. */
export function plainLayout(variant: number, state: number): LayoutDocument {
  const layout = sampleLayout(`Größe ${variant} – 3½″ ✓`, 200 + state);
  return { ...layout, notes: `${layout.notes} State ${state}. ${'Chained at the frame. '.repeat(20)}` };
}

/** A database as the version before packed states left it: one car with layouts of so many states each. */
export function plainShop(folder: string, variants: number, states: number): void {
  const db = new BetterSqlite3(join(folder, DATABASE_FILE));
  for (const { statements } of MIGRATIONS.slice(0, PLAIN)) db.exec(statements);
  db.transaction(() => {
    db.prepare("INSERT INTO customer (id, name, notes) VALUES (?, 'Odd Fellow', '')").run(numberedId(1));
    db.prepare("INSERT INTO car (id, customer_id, name, notes) VALUES (?, ?, 'Roadster', '')").run(
      numberedId(2),
      numberedId(1),
    );
    const variant = db.prepare(
      'INSERT INTO variant (id, car_id, name, document, revision, saved_at) VALUES (?, ?, ?, ?, ?, 1)',
    );
    const state = db.prepare(
      "INSERT INTO history (variant_id, step, label, at, document) VALUES (?, ?, 'Drag', 1, ?)",
    );
    for (let number = 1; number <= variants; number += 1) {
      const last = plainLayout(number, states);
      variant.run(numberedId(100 + number), numberedId(2), last.name, JSON.stringify(last), states);
      for (let edit = 1; edit <= states; edit += 1)
        state.run(numberedId(100 + number), `edit ${edit}`, JSON.stringify(plainLayout(number, edit)));
    }
  })();
  db.pragma(`application_id = ${APPLICATION_ID}`);
  db.pragma(`user_version = ${PLAIN}`);
  db.close();
}
