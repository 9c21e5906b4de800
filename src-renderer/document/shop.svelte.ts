import { createContext } from 'svelte';
import { type LayoutDocument, PLAIN_LAYOUT, withDriverSide } from '../../shared-math/layout/index.ts';
import { shownText } from '../../shared-math/outside/index.ts';
import type { Call, Reply, Request, Settings } from '../../src-main/api/contract.ts';
import { type Customer, isMissing, placeOf } from './find.ts';
import type { OpenLayout } from './open-layout.svelte.ts';

export type Kind = 'customer' | 'car' | 'variant';
export type Demonstration = Reply<'demonstration.list'>;

/** A layout of the demonstration shop, by the names that it has in the list of cars. */
export interface DemonstrationLayout {
  readonly customerName: string;
  readonly carName: string;
  readonly name: string;
}

/** A file on its way out, to be offered by the page as a download. */
export interface OutgoingFile {
  readonly fileName: string;
  readonly text: string;
}

/** Where an imported file goes; with neither, the host finds a place for it. */
export interface ImportPlace {
  readonly carId?: string;
  readonly customerId?: string;
}

const SEEN_KEY = 'toeboard-seen';

/** The host's sentences that were put away in this window, so that a reload does not bring them back. */
function seenBefore(): string[] {
  return JSON.parse(sessionStorage.getItem(SEEN_KEY) ?? '[]') as string[];
}

/**
 * Customers, their cars and variants, as the host keeps them. Every call that fails is
 * reported through the open layout's notice and leaves everything as it was.
 */
export class Shop {
  readonly #openLayout: OpenLayout;

  /** Whether the shop has been read at all; before that, an empty list means nothing. */
  ready = $state(false);
  /** Whether the settings are the shop's by now; until then they are those of a new one. */
  settingsRead = $state(false);
  customers: readonly Customer[] = $state.raw([]);
  binCount = $state(0);
  demonstration: Demonstration | null = $state.raw(null);
  /** What the host has to say once: that a damaged store was set aside, say. */
  notices: readonly string[] = $state.raw([]);
  /** Why the shop could not be read; empty when it could. */
  trouble = $state('');

  isEmpty = $derived(
    this.customers.every((customer) => customer.cars.every((car) => car.variants.length === 0)),
  );

  /** Whether anything of the demonstration is not in the shop, or no longer. */
  demonstrationMissing = $derived(
    this.demonstration !== null && isMissing(this.customers, this.demonstration.customers),
  );

  constructor(openLayout: OpenLayout) {
    this.#openLayout = openLayout;
  }

  /** Reads settings and shop and opens what was open last. */
  async start(): Promise<void> {
    // Asked at once: none of these waits for another's answer.
    const [settings, about] = await Promise.all([
      this.#openLayout.call('settings.get', {}),
      this.#openLayout.call('program.about', {}),
      this.refresh(),
      this.#readDemonstration(),
    ]);
    if (!settings.ok) {
      this.trouble = settings.failure.reason;
      return;
    }
    this.#openLayout.settings = settings.value;
    this.settingsRead = true;
    if (about.ok) {
      const unseen = about.value.notices.filter((sentence) => !seenBefore().includes(sentence));
      this.notices = [...unseen, ...this.notices];
    }
    const last = settings.value.lastVariant;
    if (last && placeOf(this.customers, last)) await this.open(last);
    // Only now, so that no empty sheet flashes up before the layout.
    this.ready = true;
  }

  async refresh(): Promise<void> {
    const shop = await this.#openLayout.call('shop.read', {});
    if (!shop.ok) {
      this.trouble = shop.failure.reason;
      return;
    }
    this.customers = shop.value.customers;
    this.binCount = shop.value.binCount;
    const known = [...this.notices, ...seenBefore()];
    this.notices = [...this.notices, ...shop.value.troubles.filter((sentence) => !known.includes(sentence))];
    this.trouble = '';
  }

  async #readDemonstration(): Promise<void> {
    const list = await this.#openLayout.call('demonstration.list', {});
    if (list.ok) this.demonstration = list.value;
  }

  async #askAndRefresh<Name extends Call>(
    wish: string,
    name: Name,
    input: Request<Name>,
  ): Promise<Reply<Name> | undefined> {
    const reply = await this.#openLayout.ask(wish, name, input);
    await this.refresh();
    return reply;
  }

  /** Puts away a sentence of the host that has been read. */
  seen(sentence: string): void {
    this.notices = this.notices.filter((each) => each !== sentence);
    sessionStorage.setItem(SEEN_KEY, JSON.stringify([...seenBefore(), sentence]));
  }

  // Opening ---------------------------------------------------------------------------------------------------

  /** Whether a variant stands in the shop. */
  has(id: string): boolean {
    return placeOf(this.customers, id) !== undefined;
  }

  /** Whether the board may be given to another variant: what is drawn on it must be in the store first. */
  async mayLeave(): Promise<boolean> {
    await this.#openLayout.saving.flush();
    if (!this.#openLayout.saving.pending) return true;
    this.#openLayout.tell('Not opened: the last changes of this layout are not in the store yet.');
    return false;
  }

  async open(id: string): Promise<boolean> {
    if (this.#openLayout.variant?.id === id) return true;
    if (!(await this.mayLeave())) return false;
    const opened = await this.#openLayout.ask('Not opened', 'variant.open', { id });
    if (!opened) return false;
    this.#openLayout.take(opened);
    await this.changeSettings({ lastVariant: id });
    return true;
  }

  /** After "changed elsewhere": shows what the store holds instead of what stands here. */
  async takeOther(): Promise<void> {
    const id = this.#openLayout.variant?.id;
    if (!id) return;
    const opened = await this.#openLayout.ask('Not opened', 'variant.open', { id });
    // As one step: what stood here until now is an undo away.
    if (opened) this.#openLayout.restored(opened, 'Take what the other window has');
  }

  /** What stands on the board as a variant of its own: for a layout that is gone from the store. */
  async keepAsNew(): Promise<void> {
    const { variant, document } = this.#openLayout;
    if (!variant || !document) return;
    const added = await this.#askAndRefresh('Not kept', 'variant.add', { carId: variant.carId, document });
    if (!added) return;
    this.#openLayout.close();
    await this.open(added.id);
  }

  async changeSettings(change: Partial<Settings>): Promise<void> {
    Object.assign(this.#openLayout.settings, change);
    await this.#openLayout.ask('The choice is not kept for the next start', 'settings.set', change);
  }

  // What other windows do -------------------------------------------------------------------------------------

  /**
   * Shows what another window has saved of the open variant. Where something is under way here it stays, and whether the one
   * or the other is kept is asked when it is saved.
   */
  async followOpen(): Promise<void> {
    const { variant, busy } = this.#openLayout;
    if (!variant || busy) return;
    const opened = await this.#openLayout.call('variant.open', { id: variant.id });
    if (opened.ok && !this.#openLayout.busy) this.#openLayout.followed(opened.value);
  }

  /** Reads the lists again, and the names above the board with them. */
  async followLists(): Promise<void> {
    if (!this.ready) return;
    const shop = await this.#openLayout.call('shop.read', {});
    if (!shop.ok) return;
    const open = this.#openLayout.variant;
    const stood = open !== null && this.has(open.id);
    this.customers = shop.value.customers;
    this.binCount = shop.value.binCount;
    await this.#reopenNames();
    if (open && stood && !this.has(open.id))
      this.#openLayout.tell(
        'Another window has put this variant in the bin. It still stands here, and what you change is kept there.',
      );
  }

  async followSettings(): Promise<void> {
    const settings = await this.#openLayout.call('settings.get', {});
    if (settings.ok) this.#openLayout.settings = settings.value;
  }

  // Adding and changing ---------------------------------------------------------------------------------------

  addCustomer(name: string): Promise<{ id: string } | undefined> {
    return this.#askAndRefresh('Customer not added', 'customer.add', { name });
  }

  addCar(customerId: string, name: string): Promise<{ id: string } | undefined> {
    return this.#askAndRefresh('Car not added', 'car.add', { customerId, name });
  }

  /** A plain car to begin with, its driver where the shop has said that its drivers sit. */
  plainCar(): LayoutDocument {
    const { driverSide } = this.#openLayout.settings;
    return driverSide === null ? PLAIN_LAYOUT : withDriverSide(PLAIN_LAYOUT, driverSide);
  }

  /** Adds a car with its customer, if that is a new one, and its first variant, and opens that. The car's id. */
  async beginCar(begin: Request<'car.begin'>): Promise<string | undefined> {
    if (!(await this.mayLeave())) return undefined;
    const begun = await this.#askAndRefresh('Car not added', 'car.begin', begin);
    return begun && (await this.open(begun.variantId)) ? begun.carId : undefined;
  }

  /** Adds a variant and opens it. */
  async addVariant(carId: string, document: LayoutDocument): Promise<boolean> {
    const added = await this.#askAndRefresh('Variant not added', 'variant.add', { carId, document });
    return added ? this.open(added.id) : false;
  }

  async rename(kind: Kind, id: string, name: string): Promise<boolean> {
    const open = this.#openLayout;
    if (kind === 'variant' && open.variant?.id === id && open.document) {
      // The open one is renamed on the board, so that it can be undone like any other change.
      const done = open.edits.change(`Rename to ${name}`, { ...open.document, name });
      await open.saving.flush();
      await this.refresh();
      return done;
    }
    const wish = 'Not renamed';
    const done =
      kind === 'variant'
        ? await this.#askAndRefresh(wish, 'variant.rename', { id, name })
        : kind === 'car'
          ? await this.#askAndRefresh(wish, 'car.change', { id, name })
          : await this.#askAndRefresh(wish, 'customer.change', { id, name });
    await this.#reopenNames();
    return done !== undefined;
  }

  async note(kind: 'customer' | 'car', id: string, notes: string): Promise<boolean> {
    const wish = 'The notes are not kept';
    const done =
      kind === 'car'
        ? await this.#askAndRefresh(wish, 'car.change', { id, notes })
        : await this.#askAndRefresh(wish, 'customer.change', { id, notes });
    return done !== undefined;
  }

  async duplicate(kind: 'car' | 'variant', id: string): Promise<{ id: string } | undefined> {
    await this.#openLayout.saving.flush();
    return kind === 'variant'
      ? this.#askAndRefresh('Not duplicated', 'variant.duplicate', { id })
      : this.#askAndRefresh('Not duplicated', 'car.duplicate', { id });
  }

  /** A car to another customer, a variant to another car. */
  async move(kind: 'car' | 'variant', id: string, to: string): Promise<boolean> {
    const done =
      kind === 'variant'
        ? await this.#askAndRefresh('Not moved', 'variant.move', { id, carId: to })
        : await this.#askAndRefresh('Not moved', 'car.move', { id, customerId: to });
    await this.#reopenNames();
    return done !== undefined;
  }

  /** The names above the board, after something above the open variant was renamed or moved. */
  async #reopenNames(): Promise<void> {
    const variant = this.#openLayout.variant;
    if (!variant) return;
    const place = placeOf(this.customers, variant.id);
    if (place)
      this.#openLayout.variant = {
        ...variant,
        carId: place.car.id,
        carName: place.car.name,
        customerName: place.customer.name,
      };
  }

  /** Hides a thing with all that is in it. The board is cleared if its variant went with it. */
  async putInBin(kind: Kind, id: string): Promise<boolean> {
    await this.#openLayout.saving.flush();
    const done = await this.#askAndRefresh('Not put in the bin', 'bin.put', { kind, id });
    const open = this.#openLayout.variant;
    if (done && open && !placeOf(this.customers, open.id)) {
      this.#openLayout.close();
      await this.changeSettings({ lastVariant: null });
    }
    return done !== undefined;
  }

  // Files -----------------------------------------------------------------------------------------------------

  /** Takes a file's text into the shop and opens what came with it. */
  async importText(text: string, fileName: string, place: ImportPlace = {}): Promise<boolean> {
    const reply = await this.#askAndRefresh('Not imported', 'file.import', {
      text,
      fileName: fileName.slice(0, 300),
      ...place,
    });
    const first = reply?.variantIds[0];
    return first ? this.open(first) : false;
  }

  async exported(kind: 'car' | 'variant', id: string): Promise<OutgoingFile | undefined> {
    await this.#openLayout.saving.flush();
    if (kind === 'variant') return this.#openLayout.ask('Not exported', 'file.exportVariant', { id });
    const file = await this.#openLayout.ask('Not exported', 'file.exportCar', { id });
    if (file?.damaged)
      this.#openLayout.tell(
        `Not in the file, because they are damaged in the store: ${file.damaged.map((name) => shownText(name)).join(', ')}.`,
      );
    return file;
  }

  /** Adds what of the demonstration shop is not there, and opens the layout that was asked for, or the first one. */
  async takeDemonstration(wanted?: DemonstrationLayout): Promise<boolean> {
    const taken = await this.#askAndRefresh('The demonstration shop is not added', 'demonstration.take', {});
    const car = this.customers
      .find((customer) => customer.name === wanted?.customerName)
      ?.cars.find((each) => each.name === wanted?.carName);
    // Straight away: another one opened before it would close what the user opens in the meantime.
    const id = car?.variants.find((variant) => variant.name === wanted?.name)?.id ?? taken?.variantIds[0];
    return id ? this.open(id) : false;
  }

  async demonstrationDocument(file: string): Promise<LayoutDocument | undefined> {
    return (await this.#openLayout.ask('Not read', 'demonstration.read', { file }))?.document;
  }
}

/** The one of the page, for its components. */
export const [getShop, setShop] = createContext<Shop>();
