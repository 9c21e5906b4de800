import type { CarSurvey } from '../../shared-math/adjust/list/index.ts';
import type { LayoutDocument } from '../../shared-math/layout/index.ts';
import type { History } from './history.ts';
import type { Cupboard } from './kept-undo.ts';
import { markOf } from './patches.ts';

/** Characters kept of one car's measurements, and cars kept: what else a window keeps needs room in its storage too. */
const TEXT_MOST = 200_000;
const CARS_MOST = 4;

const LIST_KEY = 'toeboard-surveys';
const keyOf = (carId: string) => `${LIST_KEY}-${carId}`;

type Kept = readonly (readonly [mark: string, survey: CarSurvey])[];

/**
 * What had been measured of a car while each of its drawings was on the board, so that a step of undo brings both back; over
 * a reload by the drawing's mark (`markOf`), beside the steps of undo. It is this window's own and goes with it.
 */
export class KeptSurveys {
  readonly #cupboard: Cupboard;
  #then = new WeakMap<LayoutDocument, CarSurvey>();

  constructor(cupboard: Cupboard) {
    this.#cupboard = cupboard;
  }

  /** What had been measured while a drawing was on the board; undefined if that is not known. */
  with(document: LayoutDocument): CarSurvey | undefined {
    return this.#then.get(document);
  }

  remember(carId: string | null, document: LayoutDocument, survey: CarSurvey): void {
    this.#then.set(document, survey);
    if (carId !== null) this.note(carId, markOf(document), survey);
  }

  /** Another car is on the board: what is known of the drawings of this one is known by their marks alone. */
  leave(): void {
    this.#then = new WeakMap();
  }

  /**
   * Finds again what was measured with the drawings that undo and redo lead to, as after a reload. The one that is on the board
   * stands with what the store holds, whoever has changed that meanwhile.
   */
  recall(
    carId: string,
    { done, undone }: History<LayoutDocument>,
    present: LayoutDocument,
    stored: CarSurvey,
  ): void {
    const kept = this.of(carId);
    if (kept.size === 0) return;
    for (const { before, after } of [...done, ...undone])
      for (const each of [before, after]) {
        const survey = this.#then.has(each) ? undefined : kept.get(markOf(each));
        if (survey) this.#then.set(each, survey);
      }
    this.#then.set(present, stored);
  }

  /** Takes note of what is measured with a drawing of that mark; the oldest notes go where all are too long. */
  note(carId: string, mark: string, survey: CarSurvey): void {
    let kept: Kept = [...this.#kept(carId).filter(([of]) => of !== mark), [mark, survey]];
    let text = JSON.stringify(kept);
    while (text.length > TEXT_MOST && kept.length > 1) {
      kept = kept.slice(Math.ceil(kept.length / 4));
      text = JSON.stringify(kept);
    }
    const others = this.#read<readonly string[]>(LIST_KEY, []).filter((each) => each !== carId);
    const cars = [...others, carId].slice(-CARS_MOST);
    for (const gone of others) if (!cars.includes(gone)) this.#cupboard.removeItem(keyOf(gone));
    try {
      this.#cupboard.setItem(LIST_KEY, JSON.stringify(cars));
      this.#cupboard.setItem(keyOf(carId), text);
    } catch {
      // The storage is full: better none than those of an older state.
      this.#cupboard.removeItem(keyOf(carId));
    }
  }

  /** What was measured of a car with each of its drawings, by their marks. */
  of(carId: string): ReadonlyMap<string, CarSurvey> {
    return new Map(this.#kept(carId));
  }

  #kept(carId: string): Kept {
    return this.#read<Kept>(keyOf(carId), []);
  }

  /** What stands under a key, if it is a list; what is not as it was put away is of no use. */
  #read<List>(key: string, otherwise: List): List {
    try {
      const read: unknown = JSON.parse(this.#cupboard.getItem(key) ?? '[]');
      return Array.isArray(read) ? (read as List) : otherwise;
    } catch {
      return otherwise;
    }
  }
}
