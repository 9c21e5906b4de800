import {
  type Answer,
  newQuestion,
  type Question,
  type QuestionKind,
  saysAnything,
} from '../../../shared-math/counter/index.ts';
import type { Reply } from '../../../src-main/api/contract.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import type { CounterWish } from '../../document/shell.svelte.ts';
import type { Shop } from '../../document/shop.svelte.ts';
import type { JobClient } from '../../jobs/job-client.ts';
import { Latest } from '../../jobs/latest.ts';
import type { Answered, Asked } from './counter-job.ts';

export type Ticket = Reply<'ticket.list'>['tickets'][number];

/** ms after the last letter until a ticket is kept, and until a refused keeping is tried again. */
const KEEP_AFTER = 400;
const TRY_AGAIN_AFTER = 3000;

/** How it stands with the ticket: nothing said yet, being kept, kept, or why it is not. */
export type Kept = 'empty' | 'keeping' | 'kept' | { readonly trouble: string };

/**
 * The question at hand: what was said, what it comes to, and the ticket that it is kept as. It is kept by itself a moment
 * after each change, as soon as anything was said.
 */
export class CounterDesk {
  readonly #openLayout: OpenLayout;
  readonly #shop: Shop;
  readonly #answers: Latest<Asked, undefined, Answered>;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #underWay: Promise<void> = Promise.resolve();

  /** Counts the questions and tickets that were opened: each has fields of its own, in which nothing is typed yet. */
  page = $state(0);
  question: Question = $state.raw(newQuestion('shaft'));
  customer = $state('');
  note = $state('');
  /** The ticket as it is stored; null before anything was kept. */
  ticket: Ticket | null = $state.raw(null);
  kept: Kept = $state.raw('empty');
  /** Of what was said last; of a moment before while `stale`. */
  answer: Answer | null = $state.raw(null);
  /** What that was asked of. */
  #asked: Question | null = $state.raw(null);
  #whenAnswered: (() => void)[] = [];
  tickets: readonly Ticket[] = $state.raw([]);

  constructor(openLayout: OpenLayout, shop: Shop, client: JobClient) {
    this.#openLayout = openLayout;
    this.#shop = shop;
    this.#answers = new Latest(client, 'answer', {
      answer: ({ asked, answer }) => {
        this.answer = answer;
        this.#settle(asked.question);
      },
      broken: (reason) => {
        this.answer = {
          tone: 'stop',
          headline: `This could not be worked out: ${reason}.`,
          parts: [],
          assumed: [],
          cautions: [],
        };
        this.#settle(this.question);
      },
    });
  }

  #settle(question: Question): void {
    this.#asked = question;
    if (this.stale) return;
    for (const done of this.#whenAnswered.splice(0)) done();
    this.#keepSoon();
  }

  /** Whether the answer is one to what was said before, while that to what was said last is worked out. */
  get stale(): boolean {
    return JSON.stringify(this.#asked) !== JSON.stringify(this.question);
  }

  /** Resolves once what was said last is answered. */
  #answered(): Promise<void> {
    return this.stale ? new Promise((done) => this.#whenAnswered.push(done)) : Promise.resolve();
  }

  /** Run as an effect: the answer follows the question, the reader's unit and the shop's limits. */
  follow(): void {
    const { lengthStyle: style, settings } = this.#openLayout;
    this.#answers.ask({
      question: $state.snapshot(this.question) as Question,
      style: $state.snapshot(style),
      limits: $state.snapshot(settings.limits),
    });
  }

  get saysAnything(): boolean {
    return saysAnything(this.question) || this.customer.trim() !== '' || this.note.trim() !== '';
  }

  /** Whether something that was said is not in the store. */
  get pending(): boolean {
    return this.#timer !== undefined || this.kept === 'keeping' || typeof this.kept === 'object';
  }

  /** What was said anew; the fields that are left out stay. */
  say(change: Partial<Question>): void {
    this.question = { ...this.question, ...change } as Question;
    this.#changed();
  }

  setCustomer(customer: string): void {
    this.customer = customer;
    this.#changed();
    this.#keepSoon();
  }

  setNote(note: string): void {
    this.note = note;
    this.#changed();
    this.#keepSoon();
  }

  #changed(): void {
    if (this.saysAnything || this.ticket) this.kept = 'keeping';
  }

  #keepSoon(after = KEEP_AFTER): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    if (this.kept === 'empty' || this.kept === 'kept') return;
    this.#timer = setTimeout(() => {
      this.#timer = undefined;
      void this.keep();
    }, after);
  }

  /** Keeps what was said now. One after another, so that each names the revision of the one before. */
  keep(): Promise<void> {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    this.#underWay = this.#underWay.then(() => this.#keepNow());
    return this.#underWay;
  }

  async #keepNow(): Promise<void> {
    if (this.kept === 'empty' || this.kept === 'kept') return;
    await this.#answered();
    const { ticket } = this;
    const text = {
      customer: this.customer.trim(),
      note: this.note,
      question: $state.snapshot(this.question) as Question,
      headline: (this.answer?.headline ?? '').slice(0, 400),
    };
    const { call } = this.#openLayout;
    const said = JSON.stringify(text);
    const saved = ticket
      ? await call('ticket.save', { id: ticket.id, revision: ticket.revision, ...text })
      : await call('ticket.add', text);
    if (!saved.ok) {
      if (ticket && ['changed-elsewhere', 'not-found'].includes(saved.failure.code)) {
        // Nothing that was typed here is lost, and nothing there: what stands here becomes a ticket of its own.
        this.ticket = null;
        this.#openLayout.tell(
          saved.failure.code === 'not-found'
            ? 'This ticket was thrown away elsewhere: what stands here is kept as a new one.'
            : 'This ticket was changed in another window: what stands here is kept as a second one.',
        );
        return this.#keepNow();
      }
      this.kept = { trouble: saved.failure.reason };
      this.#keepSoon(TRY_AGAIN_AFTER);
      return;
    }
    this.ticket = { ...(ticket as Ticket), ...text, ...saved.value } as Ticket;
    const now = JSON.stringify({
      ...text,
      customer: this.customer.trim(),
      note: this.note,
      question: this.question,
      headline: (this.answer?.headline ?? '').slice(0, 400),
    });
    if (now === said) this.kept = 'kept';
    else this.#keepSoon();
    await this.readTickets();
  }

  async readTickets(): Promise<void> {
    const list = await this.#openLayout.ask('The tickets cannot be read', 'ticket.list', {});
    if (list) this.tickets = list.tickets;
  }

  /** Another window has changed tickets: the one that stands here is taken over anew where nothing is typed into it. */
  async followStore(): Promise<void> {
    await this.readTickets();
    const { ticket } = this;
    const stored = ticket && this.tickets.find(({ id }) => id === ticket.id);
    if (stored && stored.revision > ticket.revision && this.kept === 'kept') await this.open(stored);
  }

  /** What the counter was opened for. */
  async takeWish({ kind, ticket }: CounterWish): Promise<void> {
    await this.readTickets();
    const found = this.tickets.find(({ id }) => id === ticket);
    if (found) await this.open(found);
    else if (kind) await this.begin(kind);
  }

  /** Another ticket or question: what stands here is kept first. */
  async begin(kind: QuestionKind): Promise<void> {
    await this.keep();
    this.ticket = null;
    this.customer = '';
    this.note = '';
    this.answer = null;
    this.#asked = null;
    this.question = newQuestion(kind);
    this.kept = 'empty';
    this.page += 1;
  }

  async open(ticket: Ticket): Promise<void> {
    await this.keep();
    this.ticket = ticket;
    this.customer = ticket.customer;
    this.note = ticket.note;
    this.answer = null;
    this.#asked = null;
    this.question = ticket.question;
    this.kept = 'kept';
    this.page += 1;
  }

  /** Throws a ticket away, into the bin. */
  async throwAway({ id }: Ticket): Promise<boolean> {
    if (this.ticket?.id === id) await this.begin(this.question.kind);
    const done = await this.#openLayout.ask('Not thrown away', 'bin.put', { kind: 'ticket', id });
    await Promise.all([this.readTickets(), this.#shop.refresh()]);
    return done !== undefined;
  }

  async putBack(id: string): Promise<void> {
    await this.#openLayout.ask('Not put back', 'bin.restore', { kind: 'ticket', id });
    await Promise.all([this.readTickets(), this.#shop.refresh()]);
  }

  /** Makes a car of the ticket; gives the layout's id, or undefined if it was not made. */
  async makeCar(carName: string): Promise<string | undefined> {
    await this.keep();
    if (!this.ticket) return undefined;
    const { unit, fraction } = this.#openLayout.settings;
    const made = await this.#openLayout.ask('No car was made', 'ticket.makeCar', {
      id: this.ticket.id,
      carName,
      unit,
      fraction,
    });
    await this.#shop.refresh();
    return made?.variantId;
  }
}
