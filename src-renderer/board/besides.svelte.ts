import type { Box, View } from '../../shared-math/drawing/index.ts';

/** What stands on the sheet beside a view and is fitted with it; mm of the sheet. */
export interface Beside {
  readonly view: View;
  readonly box: Box;
}

function isSame(a: Beside | undefined, b: Beside | undefined): boolean {
  if (!a || !b) return a === b;
  return (
    a.view === b.view &&
    (['left', 'top', 'right', 'bottom'] as const).every((edge) => a.box[edge] === b.box[edge])
  );
}

/** What stands beside the views, by who put it there. */
export class Besides {
  #all: ReadonlyMap<string, Beside> = $state.raw(new Map());
  /** On what occasion it was put there last. */
  readonly #occasions = new Map<string, string>();

  /**
   * Puts something beside a view, or takes it away. Returns whether the sheet should be fitted anew: something came or went, or
   * the occasion is another than before.
   */
  put(id: string, beside: Beside | undefined, occasion: string): boolean {
    const another = this.#occasions.get(id) !== occasion;
    // Of what stays where it is too: else its next move, by a drag, would be taken for this occasion's.
    this.#occasions.set(id, occasion);
    if (isSame(this.#all.get(id), beside)) return false;
    const fits = !this.#all.has(id) || !beside || another;
    const all = new Map(this.#all);
    all.delete(id);
    if (beside) all.set(id, beside);
    this.#all = all;
    return fits;
  }

  /** The boxes of what stands beside these views, without what `id` put there. */
  boxesOf(views: readonly View[], id?: string): Box[] {
    return [...this.#all].flatMap(([other, { view, box }]) =>
      other !== id && views.includes(view) ? [box] : [],
    );
  }
}
