import { createContext } from 'svelte';
import type { QuestionKind } from '../../shared-math/counter/question-words.ts';
import type { LayoutDocument } from '../../shared-math/layout/index.ts';
import type { TermId } from '../../shared-math/words/terms/index.ts';
import type { ImportPlace, Kind } from './shop.svelte.ts';

/** What lies open around the board. None of it is modal: the board stays in reach. */
export type DrawerPage =
  | 'find'
  | 'cars'
  | 'new-car'
  | 'history'
  | 'bin'
  | 'limits'
  | 'settings'
  | 'shelf'
  | 'copies';

/** The one form that may stand open in the drawer's list. */
export interface DrawerForm {
  readonly doing: 'rename' | 'move' | 'add' | 'notes';
  readonly kind: Kind;
  readonly id: string;
}

/** What stands in the form for a new car: kept while the drawer shows something else, so that nothing typed is lost. */
export interface CarDraft {
  customer: string;
  /** The customer whose row the form was asked for at, as long as the name is left as it is. */
  readonly customerId: string | null;
  car: string;
  /** `plain`, `open`, `arrangement` or a demonstration's file. */
  from: string;
}

const EMPTY_DRAFT: CarDraft = { customer: '', customerId: null, car: '', from: 'plain' };

export type ColumnPage = 'verdict' | 'points' | 'around' | 'car' | 'links' | 'compare' | 'tune';

const COLUMN_KEY = 'toeboard-column';

/** The page of the right column that this window showed last; the verdict at first. */
function columnBefore(): ColumnPage {
  const page = sessionStorage.getItem(COLUMN_KEY);
  return page === 'points' || page === 'around' || page === 'car' || page === 'links' ? page : 'verdict';
}

/** The car that an arrangement is chosen for, and the layout that tells what it is. */
export interface ArrangedCar {
  readonly carId: string;
  readonly carName: string;
  readonly document: LayoutDocument;
  /** The variant that this is the document of; absent where no variant of the car is there yet. */
  readonly variantId?: string;
  /** Whether the board's own search is what was asked for, not the usual ones. */
  readonly find?: boolean;
}

/** The pages of the help, by the words of their tabs. */
export const HELP_PAGES = [
  ['words', 'Words'],
  ['keys', 'Keys'],
  ['handbook', 'Handbook'],
] as const;
export type HelpPage = (typeof HELP_PAGES)[number][0];

/** What the counter opens with: a new question of a kind, a ticket, or neither. */
export interface CounterWish {
  readonly kind?: QuestionKind;
  readonly ticket?: string;
}

export class Shell {
  #column: ColumnPage = $state(columnBefore());
  #arranged: ArrangedCar | null = $state.raw(null);
  drawer: DrawerPage | null = $state(null);
  /** Letters typed while the drawer's file was on its way, for the field that they were meant for. */
  #ahead = '';
  form: DrawerForm | null = $state.raw(null);
  /** What was typed into that form so far; null before the first letter. Kept while the drawer is closed. */
  formText: string | null = $state(null);
  carDraft: CarDraft = $state({ ...EMPTY_DRAFT });
  /** The page of the help that lies open. */
  help: HelpPage | null = $state(null);
  /** The word that the help was asked for; null where none was. */
  word: TermId | null = $state(null);
  /** Opens the place where a new car begins. The page puts it here, as it alone has the places. */
  openBeginning: () => void = () => {};
  /** Opens the place whose right column has the pages, to show one of them. */
  openHome: () => void = () => {};
  /** While the counter is open it has the place of the board; null while it is not. */
  counter: CounterWish | null = $state.raw(null);
  /** Whether something that was said at the counter is not in the store yet. The counter puts it here. */
  counterPending: () => boolean = () => false;
  /** Lets the person choose files to take in. The page puts it here, as only it can ask for files. */
  chooseFiles: (place: ImportPlace) => void = () => {};

  /** While an arrangement is being chosen it has the place of the board; whoever wants the board back sets it to null. */
  get arranged(): ArrangedCar | null {
    return this.#arranged;
  }
  set arranged(car: ArrangedCar | null) {
    this.#arranged = car;
    this.counter = null;
  }

  /** Which page of the right column shows; kept over a reload of the window. */
  get column(): ColumnPage {
    return this.#column;
  }
  set column(page: ColumnPage) {
    this.#column = page;
    sessionStorage.setItem(COLUMN_KEY, page);
  }

  arrange(car: ArrangedCar): void {
    this.drawer = null;
    this.form = null;
    this.arranged = car;
  }

  /** Opens the form for a new car, with what was typed in it before; at a customer's row with that customer in it. */
  beginCar(customer?: { readonly id: string; readonly name: string }): void {
    if (customer) this.carDraft = { ...this.carDraft, customer: customer.name, customerId: customer.id };
    this.form = null;
    this.drawer = 'new-car';
  }

  /** Whether a form of the drawer holds what was typed and is not taken yet. */
  get holdsDraft(): boolean {
    const { customer, customerId, car } = this.carDraft;
    return this.formText !== null || car.trim() !== '' || (customer.trim() !== '' && customerId === null);
  }

  /** The form has done its work, or is given up. */
  forgetCarDraft(): void {
    this.carDraft = { ...EMPTY_DRAFT };
  }

  /** Something was chosen that is on the board now: a page of the drawer to choose from gives the board its room back. */
  choiceMade(): void {
    this.counter = null;
    if (this.drawer !== 'find' && this.drawer !== 'cars' && this.drawer !== 'new-car') return;
    this.drawer = null;
    if (this.formText === null) this.form = null;
  }

  /** Opens the page of words, at one of them where it is named. */
  showWord(id: TermId | null = null): void {
    this.word = id;
    this.help = 'words';
  }

  /** Opens the counter, where questions are answered without a car on the board. */
  openCounter(wish: CounterWish = {}): void {
    this.drawer = null;
    this.form = null;
    this.arranged = null;
    this.counter = wish;
  }

  /** Keeps a letter for the drawer's first field. */
  typeAhead(letter: string): void {
    this.#ahead += letter;
  }

  /** Hands over what was typed ahead, once. */
  takeAhead(): string {
    const ahead = this.#ahead;
    this.#ahead = '';
    return ahead;
  }

  toggleDrawer(page: DrawerPage = 'cars'): void {
    this.#ahead = '';
    this.drawer = this.drawer === page ? null : page;
    if (this.formText === null) this.form = null;
  }

  showForm(doing: DrawerForm['doing'], kind: Kind, id: string): void {
    this.drawer = 'cars';
    if (!this.isForm(doing, kind, id)) this.formText = null;
    this.form = { doing, kind, id };
  }

  isForm(doing: DrawerForm['doing'], kind: Kind, id: string): boolean {
    return this.form?.doing === doing && this.form.kind === kind && this.form.id === id;
  }

  /** Puts the form away and the keyboard back on the row that it belonged to. */
  closeForm(): void {
    const { kind, id } = this.form ?? {};
    this.form = null;
    this.formText = null;
    requestAnimationFrame(() => document.querySelector<HTMLElement>(`[data-row="${kind}-${id}"]`)?.focus());
  }
}

/** The one of the page, for its components. */
export const [getShell, setShell] = createContext<Shell>();
