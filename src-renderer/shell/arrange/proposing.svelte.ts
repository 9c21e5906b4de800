import { createContext } from 'svelte';
import { type LayoutDocument, resolveLayout } from '../../../shared-math/layout/index.ts';
import { type FrontEnd, prepareFrontEnd } from '../../../shared-math/linkage/index.ts';
import { failed, type Outcome, succeeded } from '../../../shared-math/outcome.ts';
import type {
  gatherProposals,
  HOLDS,
  HoldName,
  heldAsMeasured,
  openRooms,
  ProposalFigures,
  ProposeAnswer,
  ProposeNews,
  ProposeQuestion,
  ProposeTask,
  ROOMS_IN_WORDS,
  RoomName,
  Rooms,
  readRoom,
  readWordedRoom,
  TaskResult,
  WhyNone,
  WordedRoomName,
} from '../../../shared-math/propose/index.ts';
import type { Shelved } from '../../../shared-math/shelf/index.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import type { ArrangedCar } from '../../document/shell.svelte.ts';
import type { Shop } from '../../document/shop.svelte.ts';
import { Crew } from '../../jobs/crew.ts';
import type { Asked, proposalNotes } from './proposal-notes.ts';
import type { ProposeInput, WhyInput } from './propose-worker.ts';
import { startProposeWorker } from './start-propose-worker.ts';

/** What the search shares out and gathers by. The sheet that begins it brings that along: the page loads without it. */
export interface Search {
  readonly gatherProposals: typeof gatherProposals;
  readonly HOLDS: typeof HOLDS;
  readonly heldAsMeasured: typeof heldAsMeasured;
  readonly openRooms: typeof openRooms;
  readonly proposalNotes: typeof proposalNotes;
  readonly readRoom: typeof readRoom;
  readonly readWordedRoom: typeof readWordedRoom;
  readonly ROOMS_IN_WORDS: typeof ROOMS_IN_WORDS;
}

/** What lies on the board over the drawing: a proposal, or the nearest that there is to one. */
export interface Ghost {
  readonly name: string;
  readonly layout: LayoutDocument;
}

/**
 * The search for arrangements that fit a car: what is held, the workers at it, what they have found, and which of it lies on
 * the board. It outlives the sheet that it is begun on, so that a proposal can be looked at on the board meanwhile.
 */
export class Proposing {
  readonly #openLayout: OpenLayout;
  readonly #shop: Shop;
  #search: Search | undefined;
  #crew: Crew | undefined;
  #stop: (() => void) | null = null;
  #results: readonly TaskResult[] = [];

  held: ReadonlySet<HoldName> = $state.raw(new Set());
  /** How far what is not held may go, where somebody typed it. */
  rooms: Rooms = $state.raw({});
  seed = $state(1);
  /** What the shop has of its own; empty until it has been read. */
  shelf: readonly Shelved[] = $state.raw([]);
  /** Undefined until something was asked. */
  asked: Asked | undefined = $state.raw(undefined);
  running = $state(false);
  /** Whether it was called off before it came to its end. */
  calledOff = $state(false);
  /** What it is at, as a sentence; how far it has come, 0 to 1; arrangements tried. */
  doing = $state('');
  share = $state(0);
  tried = $state(0);
  /** What has been found so far, and at the end all that came of it. */
  answer: ProposeAnswer | undefined = $state.raw(undefined);
  /** Of the layout that was asked about; undefined until they are known, and where it does not steer. */
  drawn: ProposalFigures | undefined = $state.raw(undefined);
  trouble = $state('');
  ghost: Ghost | undefined = $state.raw(undefined);
  ghostEnd: FrontEnd | undefined = $derived.by(() =>
    this.ghost ? prepareFrontEnd(resolveLayout(this.ghost.layout)) : undefined,
  );

  /** Whether the drawing that was asked about is another by now: on the board, as far as the board shows that car. */
  stale: boolean = $derived.by(() => {
    const { variant, document } = this.#openLayout;
    const { asked } = this;
    return (
      asked !== undefined &&
      variant?.id === asked.car.variantId &&
      document !== null &&
      document !== asked.car.document
    );
  });

  /** A proposal can lie on the board where the car that it is for lies there. */
  onBoard: boolean = $derived.by(
    () => this.asked !== undefined && this.#openLayout.variant?.carId === this.asked.car.carId,
  );

  constructor(openLayout: OpenLayout, shop: Shop) {
    this.#openLayout = openLayout;
    this.#shop = shop;
  }

  /** Takes up a car. Of another one than before nothing is known; of the same all stays. */
  begin(car: ArrangedCar, search: Search): void {
    this.#search = search;
    if (this.asked?.car.carId === car.carId) return;
    this.forget();
    this.held = new Set(search.heldAsMeasured(car.document));
    this.rooms = {};
    void this.#readShelf();
  }

  async #readShelf(): Promise<void> {
    const list = await this.#openLayout.call('shelf.list', {});
    if (list.ok) this.shelf = list.value.entries;
  }

  forget(): void {
    this.cancel();
    this.asked = undefined;
    this.answer = undefined;
    this.ghost = undefined;
    this.trouble = '';
    this.calledOff = false;
  }

  hold(name: HoldName, stands: boolean): void {
    const all = this.#search?.HOLDS ?? [];
    this.held = new Set(all.filter((each) => (each === name ? stands : this.held.has(each))));
  }

  /** Takes what was typed as the room of a freedom; nothing typed is as far as is usual. */
  takeRoom(name: RoomName, typed: string): Outcome<Rooms, string> {
    const { [name]: _, ...others } = this.rooms;
    const search = this.#search;
    if (!search) throw new Error('a room of a search that no car was taken up for');
    if (typed.trim() === '') {
      this.rooms = others;
      return succeeded(this.rooms);
    }
    const { unit, fraction } = this.#openLayout.settings;
    const read = search.readRoom(name, typed, { unit, fraction });
    if (!read.ok) return read;
    this.rooms = { ...others, [name]: read.value };
    return succeeded(this.rooms);
  }

  /**
   * Lets one of several ways be tried, or not. All of them are as many as is usual, none of them is refused: that would be
   * to look for nothing.
   */
  openWay(name: WordedRoomName, way: string, open: boolean): Outcome<Rooms, string> {
    const { [name]: before, ...others } = this.rooms;
    const search = this.#search;
    if (!search) throw new Error('a way of a search that no car was taken up for');
    const all: readonly string[] = search.ROOMS_IN_WORDS[name];
    const were: readonly string[] = before ?? all;
    const ways = all.filter((each) => (each === way ? open : were.includes(each)));
    if (ways.length === 0) return failed('one of these has to be left to try');
    if (ways.length === all.length) {
      this.rooms = others;
      return succeeded(this.rooms);
    }
    const read = search.readWordedRoom(name, ways);
    if (!read.ok) return read;
    this.rooms = { ...others, [name]: read.value };
    return succeeded(this.rooms);
  }

  holdNothing(): void {
    this.held = new Set();
  }

  /** What would be asked of this drawing. */
  questionOf(document: LayoutDocument): ProposeQuestion {
    const { limits, unit, fraction } = this.#openLayout.settings;
    const held = [...this.held];
    return {
      document,
      held,
      // What was given to something that stands by now says nothing.
      rooms: this.#search?.openRooms(this.rooms, held) ?? {},
      shelf: this.shelf,
      limits: $state.snapshot(limits),
      style: { unit, fraction },
      seed: this.seed,
    };
  }

  run(car: ArrangedCar, document: LayoutDocument): void {
    this.cancel();
    const question = this.questionOf(document);
    this.asked = { car, question };
    this.ghost = undefined;
    this.answer = undefined;
    this.calledOff = false;
    this.trouble = '';
    this.doing = 'Looking over the car.';
    this.share = 0;
    this.tried = 0;
    this.running = true;
    this.drawn = undefined;
    const crew = this.#crew ?? new Crew(startProposeWorker);
    this.#crew = crew;
    // What there is to look through takes some tenths of a second to find: the page does not wait for it.
    this.#stop = crew.begin<ProposeQuestion, undefined, readonly ProposeTask[]>('tasks', [question], {
      answer: (_, tasks) => this.#lookThrough(crew, question, tasks),
      done: () => {},
      broken: (reason) => this.#breakOff(`The search broke off: ${reason}.`),
    });
  }

  #lookThrough(crew: Crew, question: ProposeQuestion, tasks: readonly ProposeTask[]): void {
    const search = this.#search;
    if (!search) throw new Error('a search that no car was taken up for');
    const shares = tasks.map(() => 0);
    const trials = tasks.map(() => 0);
    const results: (TaskResult | undefined)[] = tasks.map(() => undefined);
    const count = () => {
      this.share = shares.reduce((sum, each) => sum + each, 0) / Math.max(1, tasks.length);
      this.tried = trials.reduce((sum, each) => sum + each, 0);
    };
    const show = () => {
      this.#results = results.filter((each) => each !== undefined);
      this.answer = search.gatherProposals(this.#results);
    };
    const stopDrawn = crew.begin<ProposeQuestion, undefined, ProposalFigures | undefined>(
      'drawn',
      [question],
      {
        answer: (_, figures) => {
          this.drawn = figures;
        },
        done: () => {},
        // Without them the proposals stand alone.
        broken: () => {},
      },
    );
    const stopSearch = crew.begin<ProposeInput, ProposeNews, TaskResult>(
      'propose',
      tasks.map(({ task }) => ({ question, task })),
      {
        news: (at, { doing, share, evaluations, found }) => {
          this.doing = `${doing}.`;
          shares[at] = share;
          trials[at] = evaluations;
          count();
          if (found.length === 0) return;
          results[at] = { task: tasks[at]?.task ?? at, found, noFit: undefined, evaluations };
          show();
        },
        answer: (at, result) => {
          shares[at] = 1;
          trials[at] = result.evaluations;
          results[at] = result;
          count();
          show();
        },
        done: () => {
          // Where no idea is left there was no answer that would have shown anything.
          if (tasks.length === 0) show();
          if (this.answer?.proposals.length === 0) this.#askWhy(crew, question);
          else this.#end();
        },
        broken: (reason) => this.#breakOff(`The search broke off: ${reason}.`),
      },
    );
    const stopBoth = () => {
      stopSearch();
      stopDrawn();
    };
    if (tasks.length > 0) this.#stop = stopBoth;
  }

  /** Nothing fits: what excludes one another is worked out as a job of its own, and can be called off as the search can. */
  #askWhy(crew: Crew, question: ProposeQuestion): void {
    this.#stop = crew.begin<WhyInput, ProposeNews, WhyNone>('why', [{ question, results: this.#results }], {
      news: (_, { doing, share }) => {
        this.doing = `${doing}.`;
        this.share = share;
      },
      answer: (_, why) => {
        if (this.answer) this.answer = { ...this.answer, why };
      },
      done: () => this.#end(),
      broken: (reason) => this.#breakOff(`The search for the reason broke off: ${reason}.`),
    });
  }

  #breakOff(trouble: string): void {
    this.#end();
    this.trouble = trouble;
  }

  #end(): void {
    this.running = false;
    this.#stop = null;
    this.doing = '';
  }

  /** Ends the search at once; what was found until then stays. */
  cancel(): void {
    if (!this.running) return;
    this.#stop?.();
    this.calledOff = true;
    this.#end();
  }

  show(ghost: Ghost): void {
    this.ghost = ghost;
  }

  hide(): void {
    this.ghost = undefined;
  }

  /**
   * Lays a proposal as a new variant: one that begins as the drawing that was asked about, with all of the proposal as its
   * one step of undo. Nothing of the other variants changes.
   *
   * @returns Whether it lies on the board.
   */
  async lay({ name, layout }: Ghost): Promise<boolean> {
    const { asked } = this;
    const search = this.#search;
    if (!asked || !search) return false;
    const { car } = asked;
    if (!(await this.#shop.addVariant(car.carId, { ...car.document, name }))) return false;
    this.ghost = undefined;
    const { origins: _, ...rest } = layout;
    const { origins } = this.#openLayout.document ?? {};
    // What it moves is planned from now on: the edit sees to that, from what was known before.
    const laid = { ...rest, ...(origins ? { origins } : {}), name, notes: search.proposalNotes(asked) };
    if (!this.#openLayout.edits.change(`Lay ${name}`, laid)) return false;
    this.#openLayout.tell(`${name}: a new variant of ${car.carName}. The others stay as they were.`, 6000);
    return true;
  }
}

/** The one of the page, for its components. */
export const [getProposing, setProposing] = createContext<Proposing>();
