import { createContext, untrack } from 'svelte';
import type { GaugeReadings } from '../../shared-math/adjust/gauge/index.ts';
import {
  type Adjustment,
  type BumpSteerDoubt,
  findMisfits,
  type SurveyRow,
} from '../../shared-math/adjust/index.ts';
import {
  type CarSurvey,
  EMPTY_CAR_SURVEY,
  freeCoordinates,
  type ListRow,
  rowsFor,
  sideDifferences,
  surveyList,
  type Taken,
  withFurther,
  withTaken,
} from '../../shared-math/adjust/list/index.ts';
import type { Point } from '../../shared-math/geometry/points.ts';
import {
  hardpoints,
  isOtherOfPair,
  type LayoutDocument,
  type OriginCounts,
  originCounts,
  originOf,
  PLAIN_LAYOUT,
  withValue,
} from '../../shared-math/layout/index.ts';
import { failed, type Outcome, succeeded } from '../../shared-math/outcome.ts';
import { adjustedPhotos, photosFurther } from '../../shared-math/trace/index.ts';
import type { CallFailure } from '../../src-main/api/contract.ts';
import { KeptSurveys } from './kept-surveys.ts';
import { type Measured, withLostGuessed } from './measured.ts';
import { questionsOf } from './measured-questions.ts';
import type { OpenLayout } from './open-layout.svelte.ts';
import { adjustedByPhotos, type PhotosFound, photosFound, takenWithPhotos } from './photos-measured.ts';

/** ms of quiet after a change of the drawing before it is adjusted anew: an adjustment has no place inside a drag. */
const QUIET = 120;
/** ms that a hand with a point in it rests before what is measured is adjusted to where it holds the point. */
const HAND_RESTS = 480;
/** ms to the next try after a save that was not taken. */
const RETRY_AFTER = 2000;
/** mm. A measured point that stands further from where the measurements have it waits to be taken. */
const WAITS_FROM = 0.5;

/** The row of the list that is the pitman arm's length. */
const PITMAN_ARM = 'pitman-arm';

/** mm from the centre plane within which a point may be on either side of it. */
const OFF_CENTRE = 20;

/**
 * What was measured on the open layout's car. It belongs to the car and is saved apart from its variants; the open
 * variant takes what it comes to as it is typed, any other one by a button.
 */
export class Measuring {
  readonly #openLayout: OpenLayout;
  car: CarSurvey = $state.raw(EMPTY_CAR_SURVEY);
  /** Whether the car's measurements have been read; until then nothing is typed into them. */
  ready = $state(false);
  /** Why they could not be read or saved: one line, empty if they were. */
  trouble = $state('');
  /** Changed in another window: the person decides. */
  conflict = $state(false);
  /** Undefined until adjusted; why not, where it cannot be. */
  found: Measured | undefined = $state.raw();
  failure: 'out-of-reach' | 'no-minimum' | undefined = $state.raw();
  /** Whether photos that are to scale cannot be adjusted together with what is measured; they are then left out. */
  photosFail = $state(false);

  #carId: string | null = null;
  #revision = 0;
  #saving: Promise<void> = Promise.resolve();
  #unsaved = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;
  /** Where points stood before the first measurement was taken, so that typing does not move what it is counted from. */
  #before = new Map<string, Point>();
  /** What was adjusted last: taking it moves the drawing to where it has been adjusted to. */
  #adjusted: { readonly document?: LayoutDocument; readonly car?: CarSurvey } = {};
  /** What `found` was adjusted from. */
  #foundFor: { readonly document?: LayoutDocument; readonly car?: CarSurvey } | undefined;
  /** What had been measured while a document was on the board: undo brings both back. */
  readonly #then = new KeptSurveys(sessionStorage);
  #variantId: string | null = null;

  /** The worst bump steer and its doubt from measuring; undefined where nothing is taped, or where it cannot be worked out. */
  bumpSteer: BumpSteerDoubt | undefined = $derived(
    this.car.survey.rows.length > 0 || (this.found?.photos?.moved.size ?? 0) > 0
      ? (this.found?.clean.bumpSteer ?? undefined)
      : undefined,
  );

  /** Of some tens of degrees a doubt says no more than that nothing is known: the figure is one of guesses. */
  onGuesses: boolean = $derived(
    this.bumpSteer !== undefined && this.bumpSteer.doubt > Math.max(5, 2 * this.bumpSteer.worst),
  );

  /** The rows that the drawing stands adjusted to; none where it waits for them, or where nothing is measured. */
  takenRows: readonly SurveyRow[] = $derived.by(() => {
    const { found } = this;
    if (!found || found.waiting.length > 0) return [];
    const aside = new Set([...found.misfits, ...found.questions].map(({ id }) => id));
    return rowsFor(this.#document, this.car).rows.filter(({ id }) => !aside.has(id));
  });
  /** What of the photos the drawing stands adjusted without; undefined where it waits, or where no photo is adjusted. */
  takenPhotosAside: readonly string[] | undefined = $derived.by(() => {
    const { found } = this;
    return found?.photos && found.waiting.length === 0 ? [...found.photos.aside] : undefined;
  });
  /** Whether the right side is listed too, where the sides are taken as alike. */
  bothSides = $state(false);
  list: ListRow[] = $derived(surveyList(this.#document, { bothSides: this.bothSides }));

  constructor(openLayout: OpenLayout) {
    this.#openLayout = openLayout;
  }

  get #document(): LayoutDocument {
    return this.#openLayout.document ?? PLAIN_LAYOUT;
  }

  /** Whether something measured is not in the store yet. */
  get pending(): boolean {
    return this.#unsaved > 0;
  }

  /** The points that are measured by tape or photo, of those that can be: mirrored pairs once. */
  counts: OriginCounts = $derived(originCounts(this.#document));
  /** Nothing of the open layout was measured, traced or planned. */
  allGuessed: boolean = $derived(this.counts.guessed === this.counts.all);

  /** Run as an effect: reads the measurements of whatever car comes on the board. */
  followCar(): void {
    const { variant } = this.#openLayout;
    if (variant?.id !== this.#variantId) {
      this.#variantId = variant?.id ?? null;
      this.#before = new Map();
      this.found = undefined;
    }
    const carId = variant?.carId ?? null;
    if (carId === this.#carId) {
      if (this.ready) untrack(() => this.#recall());
      return;
    }
    this.#carId = carId;
    void this.#read();
  }

  #recall(): void {
    const { document, history } = this.#openLayout;
    if (document && this.#carId !== null) this.#then.recall(this.#carId, history, document, this.car);
  }

  /** Run as an effect: adjusts anew in a quiet moment, and goes along with undo and redo. */
  followDocument(): void {
    const { document } = this.#openLayout;
    this.#openLayout.armKnown = this.car.survey.rows.some(({ id }) => id === PITMAN_ARM);
    clearTimeout(this.#timer);
    if (!document || !this.ready) return;
    const then = this.#then.with(document);
    if (then && then !== this.car) this.#keep(then);
    if (this.#adjusted.document === document && this.#adjusted.car === this.car) return;
    this.#timer = setTimeout(() => this.#adjustAtRest(QUIET), QUIET);
  }

  /**
   * Adjusts, unless a hand is dragging: that is waited out, or, where something is measured whose figures would be those of
   * another place, until it rests. A slow machine has pauses between the steps of one drag in which no hand rests.
   */
  #adjustAtRest(rested: number): void {
    const measured = this.car.survey.rows.length > 0 || adjustedPhotos(this.#document.photos).length > 0;
    if (this.#openLayout.edits.dragging && !(measured && rested >= HAND_RESTS))
      this.#timer = setTimeout(() => this.#adjustAtRest(rested + QUIET), QUIET);
    else this.#adjust();
  }

  async #read(): Promise<void> {
    const carId = this.#carId;
    this.ready = false;
    this.conflict = false;
    this.trouble = '';
    this.found = undefined;
    this.#then.leave();
    this.#before = new Map();
    this.car = EMPTY_CAR_SURVEY;
    if (carId === null) return;
    const read = await this.#openLayout.call('survey.read', { carId });
    if (carId !== this.#carId) return;
    if (!read.ok) {
      this.trouble = read.failure.reason;
      return;
    }
    this.car = read.value.survey;
    this.#revision = read.value.revision;
    this.#recall();
    this.ready = true;
  }

  /** Reads what another window has measured of the open car, unless something measured here is still on its way. */
  async followStore(): Promise<void> {
    const carId = this.#carId;
    if (carId === null || !this.ready || this.pending || this.conflict) return;
    const read = await this.#openLayout.call('survey.read', { carId });
    if (!read.ok || carId !== this.#carId || this.pending || read.value.revision <= this.#revision) return;
    this.#revision = read.value.revision;
    // What stands on the board stands with this from now on: it is no undo that brings the former back.
    if (this.#openLayout.document)
      this.#then.remember(this.#carId, this.#openLayout.document, read.value.survey);
    this.car = read.value.survey;
  }

  // Adjusting ------------------------------------------------------------------------------------------------

  /** The open document with its taped points where they stood before this window took measurements. */
  #base(): LayoutDocument {
    return this.#baseOf(this.#document);
  }

  #baseOf(document: LayoutDocument): LayoutDocument {
    let base = document;
    const marked = new Set(document.photos.flatMap(({ marks }) => marks.map(({ point }) => point)));
    for (const point of hardpoints(document)) {
      const at = this.#before.get(point.id);
      // What photos alone show stays as deep as it stands now.
      const traced = marked.has(point.id) && originOf(base, point) === 'photo';
      if (at && !traced && originOf(base, point) !== 'plan') base = withValue(base, point.id, at);
    }
    return base;
  }

  #adjust(): void {
    const document = this.#document;
    this.#foundFor = { document, car: this.car };
    const base = this.#base();
    const { rows, elsewhere } = rowsFor(base, this.car);
    const questions = questionsOf(base, rows, this.car);
    const aside = new Set(questions.map(({ id }) => id));
    const used = rows.filter(({ id }) => !aside.has(id));
    const hasPhotos = adjustedPhotos(base.photos).length > 0;
    const together = hasPhotos ? findMisfits(base, used, { further: photosFurther(used) }) : undefined;
    this.photosFail = together?.ok === false;
    const outcome = together?.ok ? together : findMisfits(base, used);
    this.failure = outcome.ok ? undefined : outcome.failure.kind;
    if (!outcome.ok) {
      this.found = undefined;
      return;
    }
    const { clean, misfits } = outcome.value;
    const photos = together?.ok ? photosFound(base, used, together.value) : undefined;
    this.found = {
      clean,
      misfits,
      photos,
      questions,
      free: freeCoordinates(base, clean.points),
      differences: sideDifferences(base, rows),
      elsewhere,
      waiting: this.#waitingIn(document, clean, photos),
    };
  }

  /**
   * A document that an edit of its photos would make, with its points where photos and survey together have them then; as it
   * is where they cannot be adjusted. What does not fit is looked for anew, unless a drag leaves no time for it.
   */
  withPhotosAdjusted(next: LayoutDocument, { dragging = false } = {}): LayoutDocument {
    if (adjustedPhotos(next.photos).length === 0) return next;
    const base = this.#baseOf(next);
    const questions = new Set(this.found?.questions.map(({ id }) => id));
    const rows = rowsFor(base, this.car).rows.filter(({ id }) => !questions.has(id));
    const known = dragging ? this.found?.photos?.aside : undefined;
    return adjustedByPhotos(next, this.#document, base, rows, new Set(this.found?.waiting), known);
  }

  #waitingIn(
    document: LayoutDocument,
    { document: adjusted, points }: Adjustment,
    photos: PhotosFound | undefined,
  ): string[] {
    return this.#openLayout.points.flatMap((point) => {
      const to = points.get(point.id);
      const traced = photos?.moved.has(point.id) === true;
      if (!to || isOtherOfPair(point) || (originOf(adjusted, point) !== 'tape' && !traced)) return [];
      const at = photos?.places.get(point.id) ?? to.at;
      const away = Math.hypot(...at.map((value, axis) => value - (point.at[axis] as number)));
      return away > WAITS_FROM || (!traced && originOf(document, point) !== 'tape') ? [point.id] : [];
    });
  }

  /** Puts the points of the open variant where the measurements have them: one step of undo. Tells whether it was taken. */
  take(label = 'Use the measured points'): boolean {
    const gave = this.found?.clean.points;
    this.#adjust();
    const { found } = this;
    const document = this.#openLayout.document;
    if (!found || !document) return false;
    for (const point of this.#openLayout.points)
      if (point.twin === undefined || !isOtherOfPair(point))
        if (originOf(document, point) !== 'plan' && !this.#before.has(point.id))
          this.#before.set(point.id, point.at);
    const crossing = this.#crossing(found.clean);
    if (crossing) {
      this.#openLayout.tell(
        `Not taken: the ${crossing} would stand on the other side of the car's centre line.`,
      );
      return false;
    }
    const adjusted = withLostGuessed(found.clean.document, gave, found.clean.points);
    const taken = { ...adjusted, name: document.name, origins: { ...adjusted.origins } };
    const { rows } = rowsFor(document, this.car);
    const next = found.photos ? takenWithPhotos(document, taken, rows, found.photos.places) : taken;
    const changed = this.#openLayout.edits.change(label, next);
    if (changed && this.#openLayout.document) {
      this.found = { ...found, waiting: [] };
      this.#adjusted = { document: this.#openLayout.document, car: this.car };
      this.#foundFor = this.#adjusted;
    }
    return changed;
  }

  /** What a builder calls the point that the measurements would bring across the centre line; undefined if none. */
  #crossing({ points }: Adjustment): string | undefined {
    const across = this.#openLayout.points.find(({ id, at }) => {
      const to = points.get(id);
      return to && Math.abs(at[1]) > OFF_CENTRE && Math.abs(to.at[1]) > OFF_CENTRE && at[1] * to.at[1] < 0;
    });
    return across?.name.toLowerCase();
  }

  // Typing ---------------------------------------------------------------------------------------------------

  /** Takes what was typed into a row of the list, or leaves the row open; the drawing follows. */
  enter(row: ListRow, entry: Taken | undefined): Outcome<CarSurvey, string> {
    if (!this.ready) return failed(this.trouble || 'the measurements of this car are being read');
    const next = withTaken(this.list, this.car, row.id, entry, this.#openLayout.settings.instruments);
    if (!next.ok) return next;
    this.#change(next.value, entry ? `Measure ${row.name}` : `Leave open: ${row.name}`);
    return succeeded(next.value);
  }

  /**
   * Takes many rows at once, as one step of undo. Rows that are refused stay as they were: they are answered by their
   * place in `entries`, each with the reason.
   */
  enterAll(entries: readonly (readonly [row: ListRow, entry: Taken])[], label: string): Map<number, string> {
    const refused = new Map<number, string>();
    let next = this.car;
    const order = new Map(this.list.map((row, at) => [row.id, at]));
    // Rows that others count from stand before them in the list.
    const inOrder = entries
      .map(([row, entry], at) => ({ row, entry, at }))
      .sort((a, b) => (order.get(a.row.id) ?? 0) - (order.get(b.row.id) ?? 0));
    for (const { row, entry, at } of inOrder) {
      const outcome = withTaken(this.list, next, row.id, entry, this.#openLayout.settings.instruments);
      if (outcome.ok) next = outcome.value;
      else refused.set(at, outcome.failure);
    }
    if (refused.size < entries.length) this.#change(next, label);
    return refused;
  }

  /** Takes a further measurement between two points, or takes it out. */
  enterFurther(id: string, row: SurveyRow | undefined, typed?: Taken): void {
    this.#change(
      withFurther(this.car, id, row, typed),
      row ? 'Measure between two points' : 'Remove a measurement',
    );
  }

  /** Takes a row as it would read without its slip. */
  mendSlip(row: SurveyRow): void {
    const list = this.list.find(({ id }) => id === row.id);
    const taken = this.car.taken[row.id];
    const others = new Map(Object.entries(this.car.taken).map(([id, { figure }]) => [id, figure]));
    const way = list?.ways.find(({ id }) => id === taken?.way) ?? list?.ways[0];
    const figure = way?.typed(row.value, others);
    if (list && way && figure !== undefined && sameObserved(list, row)) {
      const typed = this.#openLayout.length(figure);
      this.enter(list, {
        ...taken,
        way: way.id,
        typed: way.unit === 'length' ? typed : `${figure}°`,
        figure,
      });
    } else this.enterFurther(row.id, row);
  }

  /** Keeps a row that was asked about as it is. */
  confirm(row: SurveyRow, words: string): void {
    const entry = this.car.taken[row.id] ?? { way: 'plain', typed: words, figure: row.value };
    const next = { ...this.car, taken: { ...this.car.taken, [row.id]: { ...entry, sure: true } } };
    this.#change(next, `Keep ${words} as it is`);
  }

  setAlike(alike: boolean): void {
    this.#keep({ ...this.car, alike });
    if (this.#openLayout.document) this.#then.remember(this.#carId, this.#openLayout.document, this.car);
  }

  /** Keeps what was read with a gauge on the finished car. It moves nothing of the drawing. */
  setGauge(gauge: GaugeReadings): void {
    if (!this.ready) {
      this.#openLayout.tell(`Not taken: ${this.trouble || 'the measurements of this car are being read'}.`);
      return;
    }
    this.#keep({ ...this.car, gauge });
    if (this.#openLayout.document) this.#then.remember(this.#carId, this.#openLayout.document, this.car);
  }

  #change(next: CarSurvey, label: string): void {
    const { document } = this.#openLayout;
    const before = this.car;
    // What these measurements gave until now is known only if they were adjusted since the last step of undo or redo: else a
    // point that goes unmeasured would not be missed.
    if (document && (this.#foundFor?.document !== document || this.#foundFor.car !== before)) this.#adjust();
    this.#keep(next);
    this.take(label);
    const after = this.#openLayout.document;
    if (!document || !after) return;
    // Undone, the drawing comes back with what had been measured then.
    if (after !== document) this.#then.remember(this.#carId, document, before);
    this.#then.remember(this.#carId, after, next);
  }

  // Saving ---------------------------------------------------------------------------------------------------

  #keep(next: CarSurvey): void {
    this.car = next;
    this.#save(false);
  }

  /** One save after the other; each of what stands then. */
  #save(force: boolean): void {
    const carId = this.#carId;
    if (carId === null) return;
    this.#unsaved += 1;
    this.#saving = this.#saving.then(async () => {
      if (carId === this.#carId && !(this.conflict && !force)) await this.#send(carId, force);
      this.#unsaved -= 1;
    });
  }

  async #send(carId: string, force: boolean): Promise<void> {
    const survey = this.car;
    const saved = await this.#openLayout.call('survey.save', {
      carId,
      survey,
      revision: this.#revision,
      force,
    });
    if (carId !== this.#carId) return;
    if (saved.ok) {
      this.#revision = saved.value.revision;
      this.trouble = '';
      this.conflict = false;
    } else this.#refused(saved.failure);
  }

  #refused({ code, reason }: CallFailure): void {
    this.trouble = reason;
    this.conflict = code === 'changed-elsewhere';
    if (code === 'no-answer' || code === 'storage-failed')
      setTimeout(() => {
        if (this.#unsaved === 0) this.#save(false);
      }, RETRY_AFTER);
  }

  /** After "changed elsewhere": what stands here replaces what the other window saved. */
  keepMine(): void {
    this.#save(true);
  }
  /** After "changed elsewhere", or to try again: what the store holds replaces what stands here. */
  takeTheirs(): void {
    void this.#read();
  }
  /** Where what is stored is damaged: begins anew, in its place. */
  beginAnew(): void {
    this.car = EMPTY_CAR_SURVEY;
    this.ready = true;
    this.#save(true);
  }
}

/** Whether a row of the survey still looks at what its row of the list looks at. */
function sameObserved(list: ListRow, row: SurveyRow): boolean {
  const { id: _, value: _value, doubt: _doubt, ...observes } = row;
  return list.observes !== undefined && JSON.stringify(list.observes) === JSON.stringify(observes);
}

/** The one of the page, for its components. */
export const [getMeasuring, setMeasuring] = createContext<Measuring>();
