import { createContext } from 'svelte';
import type { TermId } from '../../shared-math/words/terms/index.ts';

/** ms that a pointer rests on a word before it is explained, and after it left before that goes away. */
const REST = 350;
const LEAVE = 250;

/** The one word of the page that is being explained, and where it stands. */
export class Explained {
  id: TermId | null = $state(null);
  /** The button over the word; the card stands beside it. */
  anchor: HTMLElement | null = $state.raw(null);
  /** Stays until it is closed, as somebody asked for it by a click or a key. */
  kept = $state(false);
  #timer: ReturnType<typeof setTimeout> | undefined;
  /** Opens the page of words at a word. The page puts it here, as it alone has that page. */
  readonly openPage: (id: TermId) => void;

  constructor(openPage: (id: TermId) => void) {
    this.openPage = openPage;
  }

  show(id: TermId, anchor: HTMLElement, kept = false): void {
    clearTimeout(this.#timer);
    this.id = id;
    this.anchor = anchor;
    this.kept = kept;
  }

  close(): void {
    clearTimeout(this.#timer);
    this.id = null;
    this.anchor = null;
    this.kept = false;
  }

  /** A pointer came onto a word: it is explained if the pointer rests there. */
  rest(id: TermId, anchor: HTMLElement): void {
    if (this.kept) return;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.show(id, anchor), REST);
  }

  /** The pointer left word or card; it may come back at once. */
  leave(): void {
    if (this.kept) return;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.close(), LEAVE);
  }

  /** The pointer came onto the card itself. */
  stay(): void {
    clearTimeout(this.#timer);
  }
}

/** The one of the page, for its words. */
export const [getExplained, setExplained] = createContext<Explained>();
