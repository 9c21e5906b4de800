import { createContext } from 'svelte';
import { shownText } from '../../../shared-math/outside/index.ts';
import { type ShelfPart, type Shelved, wordOf } from '../../../shared-math/shelf/index.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import type { OutgoingFile } from '../../document/shop.svelte.ts';

/** Characters. A table file above this is no shelf. */
const FILE_MAX = 4_000_000;

/** One step that can be taken back: its words, and what takes it back. */
interface Step {
  readonly label: string;
  readonly back: () => Promise<boolean>;
}

/** A table file that waits for the word whether it adds to the shelf or takes its place. */
export interface OfferedFile {
  readonly name: string;
  readonly text: string;
}

/** The shop's own stock, as the host keeps it. What is done to it can be undone here, step by step, in this window. */
export class Shelf {
  readonly #openLayout: OpenLayout;

  entries: readonly Shelved[] = $state.raw([]);
  ready = $state(false);
  #steps: readonly Step[] = $state.raw([]);
  undoLabel = $derived(this.#steps.at(-1)?.label ?? '');
  offered: OfferedFile | null = $state.raw(null);
  /** Why the last file was not taken in; empty when it was. */
  trouble = $state('');

  constructor(openLayout: OpenLayout) {
    this.#openLayout = openLayout;
  }

  async read(): Promise<void> {
    const list = await this.#openLayout.ask('The shelf cannot be read', 'shelf.list', {});
    if (!list) return;
    this.entries = list.entries;
    this.ready = true;
  }

  async #done(label: string, back: Step['back']): Promise<void> {
    this.#steps = [...this.#steps, { label, back }];
    await this.read();
  }

  async undo(): Promise<void> {
    const step = this.#steps.at(-1);
    if (!step) return;
    // Off the list at once, so that another press means the step before it; one that was refused can be tried again.
    this.#steps = this.#steps.slice(0, -1);
    if (!(await step.back())) this.#steps = [...this.#steps, step];
    await this.read();
  }

  async #remove(ids: readonly string[]): Promise<boolean> {
    return (
      (await this.#openLayout.ask('Not removed from the shelf', 'shelf.remove', { ids: [...ids] })) !==
      undefined
    );
  }

  async #restore(ids: readonly string[]): Promise<boolean> {
    return (await this.#openLayout.ask('Not put back', 'shelf.restore', { ids: [...ids] })) !== undefined;
  }

  async add(part: ShelfPart): Promise<boolean> {
    const added = await this.#openLayout.ask('Not put on the shelf', 'shelf.add', { part });
    if (!added) return false;
    await this.#done(`Put ${part.name} on the shelf`, () => this.#remove([added.id]));
    return true;
  }

  async change(entry: Shelved, part: ShelfPart): Promise<boolean> {
    const put = async (to: ShelfPart) =>
      (await this.#openLayout.ask('Not changed', 'shelf.change', { id: entry.id, part: to })) !== undefined;
    if (!(await put(part))) return false;
    await this.#done(`Change ${entry.part.name}`, () => put(entry.part));
    return true;
  }

  async remove({ id, part }: Shelved): Promise<void> {
    if (await this.#remove([id]))
      await this.#done(`Remove ${part.name} from the shelf`, () => this.#restore([id]));
  }

  /** Reads a table file; an empty shelf takes it at once, another asks first what is meant. */
  async offer(file: File): Promise<void> {
    this.trouble = '';
    this.offered = null;
    if (file.size > FILE_MAX) {
      this.trouble = `${shownText(file.name)}: too large to be a shelf`;
      return;
    }
    try {
      this.offered = { name: shownText(file.name), text: await file.text() };
    } catch {
      this.trouble = `${shownText(file.name)}: cannot be read`;
      return;
    }
    if (this.entries.length === 0) await this.takeOffered(false);
  }

  /** Takes the waiting file in, all of it or nothing. */
  async takeOffered(replace: boolean): Promise<void> {
    const file = this.offered;
    if (!file) return;
    this.offered = null;
    const reply = await this.#openLayout.call('shelf.importCsv', {
      text: file.text,
      fileName: file.name,
      replace,
    });
    if (!reply.ok) {
      this.trouble = reply.failure.reason;
      return;
    }
    const { added, removed } = reply.value;
    await this.#done(
      `Import ${file.name}, ${added.length} ${added.length === 1 ? 'entry' : 'entries'}`,
      async () => (await this.#remove(added)) && this.#restore(removed),
    );
  }

  exported(): Promise<OutgoingFile | undefined> {
    return this.#openLayout.ask('Not exported', 'shelf.exportCsv', { unit: this.#openLayout.settings.unit });
  }
}

/** Entries whose name, note or kind holds every word that is looked for. */
export function foundOn(
  entries: readonly Shelved[],
  find: string,
  words: (part: ShelfPart) => string,
): Shelved[] {
  const wanted = find.toLowerCase().split(/\s+/).filter(Boolean);
  if (wanted.length === 0) return [...entries];
  return entries.filter(({ part }) => {
    const text = `${part.name} ${part.note} ${wordOf(part.kind)} ${words(part)}`.toLowerCase();
    return wanted.every((word) => text.includes(word));
  });
}

/** The one of the page, for its components. */
export const [getShelf, setShelf] = createContext<Shelf>();
