import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { type LayoutDocument, parseLayout } from '../../shared-math/layout/index.ts';
import { seededRandom } from '../../shared-math/solve/random.ts';
import { DATABASE_FILE, type Store } from '../../src-main/store/index.ts';
import { MIGRATIONS } from '../../src-main/store/migrations/index.ts';

/** How large a shop is; `scale` 1 is a busy one after some years. */
export interface ShopSize {
  readonly customers: number;
  readonly cars: number;
  readonly variants: number;
  readonly states: number;
  readonly photos: number;
}

export function shopSize(scale: number): ShopSize {
  const of = (number: number) => Math.max(1, Math.round(number * scale));
  return { customers: of(500), cars: of(1500), variants: of(7500), states: 200, photos: of(3000) };
}

/** Ten evenings of twenty edits each, every tenth day, the last one today. */
export function momentOf(state: number, states: number, now: number): number {
  const back = states - 1 - state;
  return now - Math.floor(back / 20) * 10 * 86_400_000 - (back % 20) * 90_000;
}

const FILES = [
  'four-bar-cross-steer',
  'hairpins-box-too-low',
  'hairpins-side-steer',
  'parallel-leaf-cross-steer',
  'wishbone-side-steer',
];

/** The invented layouts that come with the program. */
export function demonstrationLayouts(root: string): LayoutDocument[] {
  return FILES.map((name) => {
    const read = parseLayout(readFileSync(join(root, 'projects', `${name}.json`), 'utf8'));
    if (!read.ok) throw new Error(name);
    return read.value;
  });
}

type Points = number[][];

function pointsIn(value: unknown, found: Points = []): Points {
  if (Array.isArray(value) && value.length === 3 && value.every((entry) => typeof entry === 'number'))
    found.push(value);
  else if (typeof value === 'object' && value !== null)
    for (const each of Object.values(value)) pointsIn(each, found);
  return found;
}

/** The texts of a layout's states: in each, one more point was dragged in a view, to a tenth of a millimetre. */
export function* draggedTexts(
  layout: LayoutDocument,
  states: number,
  random: () => number,
): Generator<string> {
  const copy = structuredClone(layout);
  const points = pointsIn({ axle: copy.axle, location: copy.location, steering: copy.steering });
  yield JSON.stringify(copy);
  for (let state = 1; state < states; state += 1) {
    const point = points[Math.floor(random() * points.length)] as number[];
    const [across, up] = random() < 0.5 ? [0, 2] : [1, 2];
    for (const axis of [across, up] as const)
      point[axis] = Math.round(((point[axis] as number) + (random() - 0.5) * 40) * 10) / 10;
    yield JSON.stringify(copy);
  }
}

/** Whatever stores the rows: the store itself, or the peer. */
export interface Rows {
  readonly customer: (name: string) => string;
  readonly car: (customer: string, name: string) => string;
  readonly variant: (car: string, layout: LayoutDocument) => string;
  readonly state: (variant: string, step: string, at: number, text: string) => void;
}

/** Puts the same shop into either, drawn by lot from the same seed. */
export function fillShop(
  rows: Rows,
  size: ShopSize,
  layouts: readonly LayoutDocument[],
  now: number,
  together: (work: () => void) => void,
): string[] {
  const random = seededRandom(20_260_312);
  const customers: string[] = [];
  const cars: string[] = [];
  together(() => {
    for (let number = 1; number <= size.customers; number += 1)
      customers.push(rows.customer(`Customer ${number}`));
    for (let number = 0; number < size.cars; number += 1)
      cars.push(rows.car(customers[number % size.customers] as string, `Car ${number + 1}`));
  });
  return Array.from({ length: size.variants }, (_, number) => {
    const layout = { ...(layouts[number % layouts.length] as LayoutDocument), name: `Layout ${number + 1}` };
    let id = '';
    together(() => {
      id = rows.variant(cars[number % size.cars] as string, layout);
      let state = 0;
      for (const text of draggedTexts(layout, size.states, random)) {
        const step = `${id.slice(0, 24)}${String(state).padStart(12, '0')}`;
        rows.state(id, step, momentOf(state, size.states, now), text);
        state += 1;
      }
    });
    return id;
  });
}

export function storeRows(store: Store): Rows {
  return {
    customer: (name) => store.customers.add(name, ''),
    car: (customer, name) => store.cars.add(customer, name, ''),
    variant: (car, layout) => store.variants.add(car, layout, 'Begun'),
    state: (variant, step, at, text) => store.history.add(variant, { step, label: 'Box moved' }, at, text),
  };
}

/** The peer: the same rows in the tables of the version before, every state's text as it is. */
export function plainRows(folder: string): {
  rows: Rows;
  together: (work: () => void) => void;
  close: () => void;
} {
  const db = new BetterSqlite3(join(folder, DATABASE_FILE));
  for (const { statements } of MIGRATIONS.slice(0, 5)) db.exec(statements);
  db.pragma('journal_mode = WAL');
  db.pragma('synchronous = OFF');
  const put = {
    customer: db.prepare("INSERT INTO customer (id, name, notes) VALUES (?, ?, '')"),
    car: db.prepare("INSERT INTO car (id, customer_id, name, notes) VALUES (?, ?, ?, '')"),
    variant: db.prepare(
      'INSERT INTO variant (id, car_id, name, document, revision, saved_at) VALUES (?, ?, ?, ?, 1, 1)',
    ),
    state: db.prepare(
      "INSERT INTO history (variant_id, step, label, at, document) VALUES (?, ?, 'Box moved', ?, ?)",
    ),
  };
  const id = () => crypto.randomUUID();
  return {
    rows: {
      customer: (name) => {
        const made = id();
        put.customer.run(made, name);
        return made;
      },
      car: (customer, name) => {
        const made = id();
        put.car.run(made, customer, name);
        return made;
      },
      variant: (car, layout) => {
        const made = id();
        put.variant.run(made, car, layout.name, JSON.stringify(layout));
        return made;
      },
      state: (variant, step, at, text) => void put.state.run(variant, step, at, text),
    },
    together: (work) => db.transaction(work)(),
    close: () => {
      db.pragma('wal_checkpoint(TRUNCATE)');
      db.close();
    },
  };
}
