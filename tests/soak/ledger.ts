import { isDeepStrictEqual } from 'node:util';
import type { Page } from 'playwright-core';
import { openStore, type Store } from '../../src-main/store/index.ts';

interface Acknowledged {
  readonly revision: number;
  readonly step: string;
  readonly document: unknown;
}

/** Steps of each variant that are looked for in the history; the store promises more. */
const STEPS_HELD = 20;

/** Every save that the program has acknowledged to a page, as the page sent it; and whether the store still has it. */
export class Ledger {
  /** By variant, newest last; of one step only its last state. */
  readonly #saves = new Map<string, Acknowledged[]>();
  count = 0;

  listenTo(page: Page): void {
    page.on('response', async (response) => {
      const request = response.request();
      if (request.method() !== 'POST' || !response.url().endsWith('/rpc')) return;
      const call = request.postDataJSON() as { name?: string; input?: Record<string, unknown> } | null;
      if (call?.name !== 'variant.save') return;
      // A page that is closed or a program that is killed before its answer is read has acknowledged nothing.
      const result = (await response.json().catch(() => undefined)) as
        | { ok: boolean; value?: { revision: number } }
        | undefined;
      if (!result?.ok || !result.value) return;
      const { id, step, document } = call.input as { id: string; step: string; document: unknown };
      this.#note(id, { revision: result.value.revision, step, document });
    });
  }

  #note(id: string, save: Acknowledged): void {
    this.count += 1;
    const earlier = (this.#saves.get(id) ?? []).filter(({ step }) => step !== save.step);
    const saves = [...earlier, save].sort((a, b) => a.revision - b.revision).slice(-STEPS_HELD);
    this.#saves.set(id, saves);
  }

  /** For a variant that was thrown away for good. */
  forget(id: string): void {
    this.#saves.delete(id);
  }

  /** Opens the store and looks for everything; gives how many saves were found. Throws with what is lost. */
  check(folder: string): number {
    const store = openStore({ folder });
    try {
      let found = 0;
      for (const [id, saves] of this.#saves) found += this.#checkOne(store, id, saves);
      return found;
    } finally {
      store.close();
    }
  }

  #checkOne(store: Store, id: string, saves: readonly Acknowledged[]): number {
    const last = saves.at(-1);
    if (!last) return 0;
    const { revision, document } = store.variants.open(id);
    if (revision < last.revision)
      throw new Error(`lost: ${id} stands at save ${revision}, acknowledged was ${last.revision}`);
    if (revision === last.revision && !isDeepStrictEqual(document, last.document))
      throw new Error(`lost: save ${revision} of ${id} is not what was sent`);
    const held = store.variants.states(id).map((state) => store.history.read(state.id));
    // The newest step may have gone on without its answer being seen.
    const due = revision === last.revision ? saves : saves.slice(0, -1);
    for (const save of due)
      if (!held.some((state) => isDeepStrictEqual(state, save.document)))
        throw new Error(`lost: the history of ${id} does not have save ${save.revision}`);
    return due.length;
  }
}
