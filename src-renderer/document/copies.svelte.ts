import { createContext } from 'svelte';
import { shownText } from '../../shared-math/outside/index.ts';
import type { Reply } from '../../src-main/api/contract.ts';
import { fetchWholeShop, handOverBlob, sendWholeShop } from '../host/outputs.ts';
import type { OpenLayout } from './open-layout.svelte.ts';
import type { Shop } from './shop.svelte.ts';

export type ShopCopy = Reply<'copies.list'>['copies'][number];
export type CopyContents = Reply<'copies.look'>;

/** Whole copies of the shop: those that the program keeps, and files of it that the person saves and brings back. */
export class Copies {
  readonly #openLayout: OpenLayout;
  readonly #shop: Shop;

  list: readonly ShopCopy[] = $state.raw([]);
  bytes = $state(0);
  /** Why the program could not make its last copy; empty if it could. */
  trouble = $state('');
  /** The copy that is looked into, and what is in it. */
  looked: { readonly name: string; readonly contents: CopyContents } | null = $state.raw(null);
  /** What is under way, as a person would say it; empty if nothing is. */
  busy = $state('');

  constructor(openLayout: OpenLayout, shop: Shop) {
    this.#openLayout = openLayout;
    this.#shop = shop;
  }

  async read(): Promise<void> {
    const list = await this.#openLayout.ask('The copies cannot be listed', 'copies.list', {});
    if (!list) return;
    this.list = list.copies;
    this.bytes = list.bytes;
    this.trouble = list.trouble;
  }

  /** Looks into a copy, or away from it if it is looked into already. */
  async look(name: string): Promise<void> {
    if (this.looked?.name === name) {
      this.looked = null;
      return;
    }
    const contents = await this.#openLayout.ask('The copy cannot be opened', 'copies.look', { name });
    if (contents) this.looked = { name, contents };
  }

  /** Puts a copy in the place of the shop; what the shop holds now becomes a copy itself. */
  async bringBack(name: string): Promise<void> {
    await this.#openLayout.saving.flush();
    await this.#during('Restoring it…', async () => {
      const back = await this.#openLayout.ask('Not restored', 'copies.restore', { name });
      if (!back) return;
      this.looked = null;
      const open = this.#openLayout.variant?.id;
      this.#openLayout.close();
      await Promise.all([this.read(), this.#shop.refresh()]);
      if (open && this.#shop.has(open)) await this.#shop.open(open);
      this.#openLayout.tell('The copy is back. What was here before it is kept as a copy too.');
    });
  }

  async saveToFile(history: 'none' | 'all' | number): Promise<void> {
    await this.#openLayout.saving.flush();
    await this.#during('Writing the file…', async () => {
      const file = await fetchWholeShop(history);
      if (!file.ok) this.#openLayout.tell(`The shop is not saved to a file: ${file.failure}.`);
      else {
        const day = new Date().toLocaleDateString('sv');
        handOverBlob(file.value, `Toeboard shop ${day}.toeboard-shop`);
      }
    });
  }

  /** Takes in the file of a whole shop: as a copy, to be looked into before it is put in the place of anything. */
  async bringFile(file: File): Promise<void> {
    await this.#during('Reading the file…', async () => {
      const taken = await sendWholeShop(file);
      if (!taken.ok) {
        this.#openLayout.tell(`${shownText(file.name)} cannot be imported: ${taken.failure}.`);
        return;
      }
      await this.read();
      this.looked = null;
      await this.look(taken.value);
    });
  }

  async #during(words: string, work: () => Promise<void>): Promise<void> {
    if (this.busy) return;
    this.busy = words;
    try {
      await work();
    } finally {
      this.busy = '';
    }
  }
}

/** The one of the page, for its components. */
export const [getCopies, setCopies] = createContext<Copies>();
