import { createContext } from 'svelte';
import type { Reply } from '../../src-main/api/contract.ts';
import type { OpenLayout } from './open-layout.svelte.ts';
import type { Shop } from './shop.svelte.ts';

export type BinEntry = Reply<'bin.list'>['entries'][number];
export type HistoryState = Reply<'history.list'>['states'][number];

/** What can be brought back: things in the bin, and earlier states of the open variant. */
export class Archive {
  readonly #openLayout: OpenLayout;
  readonly #shop: Shop;

  bin: readonly BinEntry[] = $state.raw([]);
  /** Of the open variant, newest first; the newest is the present state. */
  history: readonly HistoryState[] = $state.raw([]);

  constructor(openLayout: OpenLayout, shop: Shop) {
    this.#openLayout = openLayout;
    this.#shop = shop;
  }

  async readBin(): Promise<void> {
    const list = await this.#openLayout.ask('The bin cannot be read', 'bin.list', {});
    if (list) this.bin = list.entries;
  }

  async restoreFromBin(entry: BinEntry): Promise<void> {
    await this.#openLayout.ask('Not restored', 'bin.restore', { kind: entry.kind, id: entry.id });
    await Promise.all([this.readBin(), this.#shop.refresh()]);
  }

  async emptyBin(): Promise<void> {
    await this.#openLayout.ask('Not emptied', 'bin.empty', {});
    await Promise.all([this.readBin(), this.#shop.refresh()]);
  }

  async readHistory(): Promise<void> {
    const variantId = this.#openLayout.variant?.id;
    if (!variantId) {
      this.history = [];
      return;
    }
    await this.#openLayout.saving.flush();
    const list = await this.#openLayout.ask('The history cannot be read', 'history.list', { variantId });
    // Another variant may have been opened while the host was answering.
    if (list && this.#openLayout.variant?.id === variantId) this.history = list.states;
  }

  async restoreState(state: HistoryState): Promise<void> {
    const variantId = this.#openLayout.variant?.id;
    if (!variantId || !(await this.#shop.mayLeave())) return;
    const opened = await this.#openLayout.ask('Not restored', 'history.restore', { variantId, id: state.id });
    if (!opened) return;
    this.#openLayout.restored(opened, `Restore: ${state.label}`);
    await Promise.all([this.readHistory(), this.#shop.refresh()]);
  }
}

/** The one of the page, for its components. */
export const [getArchive, setArchive] = createContext<Archive>();
