import {
  type HeldTravel,
  holdWheels,
  type MapKernel,
  PLACE_HIT_FROM,
  PLACE_OK,
  placeOf,
  prepareMapKernel,
  worstAt,
} from '../../../../shared-math/aim/index.ts';
import { judgedView } from '../../../../shared-math/detail/index.ts';
import { limitInForce } from '../../../../shared-math/findings/index.ts';
import type { Point } from '../../../../shared-math/geometry/points.ts';
import type { LayoutDocument } from '../../../../shared-math/layout/index.ts';
import { toRadians } from '../../../../shared-math/units/index.ts';
import { whenever } from '../../../controls/whenever.svelte.ts';
import type { OpenLayout } from '../../../document/open-layout.svelte.ts';
import type { JobClient } from '../../../jobs/job-client.ts';
import { Latest } from '../../../jobs/latest.ts';
import { shiftWords, withBallAt } from './box-move.ts';
import type { MapAnswer, MapHits, MapQuestion } from './map-job.ts';
import { mapScale } from './map-scale.ts';
import { drawnTo, nearestOnRidge, reasonAt } from './map-spots.ts';
import { bumpWords, NOTHING_TO_MAP, reasonWords } from './map-words.ts';

/** ms without a change after which the map is worked out finely. */
const RESTS_AFTER = 170;

/** ms between two coarse maps. */
const SPACING = 100;

/** A place of the map that the box can go to. */
export interface MapSpot {
  /** Where the pitman ball would be. */
  readonly point: Point;
  readonly across: number;
  readonly up: number;
  /** rad; infinity where it is out of reach. */
  readonly worst: number;
  readonly reason: number;
  /** What of the map it was drawn to. */
  readonly on: 'best' | 'ridge' | undefined;
}

/** A place worth naming, with what the box would have to do. */
export interface NamedSpot {
  readonly id: 'best' | 'clear' | 'beside';
  readonly words: string;
  readonly spot: MapSpot;
}

/**
 * The map of where the pitman ball can go, while it is shown: asked of the worker coarsely at every change and finely
 * once it rests. Figures at single places are worked out here and exactly, from the same axle's poses.
 */
export class BoxMap {
  readonly #openLayout: OpenLayout;
  readonly #latest: Latest<MapQuestion, MapAnswer, MapAnswer | undefined>;
  #resting: ReturnType<typeof setTimeout> | undefined;
  /** The variant that the answer is of. */
  #of: string | undefined;
  #enlarged = false;
  /** Whether the fine map of what is on the board was asked for: nothing has changed since. */
  #fineAsked = false;
  /** When a coarse map was asked for last, ms. */
  #asked = Number.NEGATIVE_INFINITY;

  shown = $state(false);
  /** Whether places are judged with each wheel anywhere in its own travel, not over heave alone. */
  eachWheel = $state(false);
  /** Whether the fine map of what is on the board, with what is hit, is still to come. */
  working = $state(false);
  answer: MapAnswer | null = $state.raw(null);
  hits: MapHits | null = $state.raw(null);
  trouble = $state('');
  /** Where the pointer is on the map. */
  pointed: MapSpot | null = $state.raw(null);
  /** Place on the ridge that is looked at, as a share of its length; undefined if none is. */
  slid: number | null = $state(null);

  scale = $derived.by(() => mapScale(limitInForce('bumpSteerWorst', this.#openLayout.settings.limits).value));
  view: 'side' | 'front' = $derived.by(() => judgedView(this.#openLayout.frontEnd));
  #held: HeldTravel = $derived.by(() =>
    this.eachWheel ? holdWheels(this.#openLayout.held) : this.#openLayout.held,
  );
  #kernel: MapKernel | undefined = $derived.by(() =>
    this.#held.status === 'ok' ? prepareMapKernel(this.#held) : undefined,
  );
  /** The spot on the ridge that the slider stands at. */
  slidSpot: MapSpot | undefined = $derived.by(() => {
    const ridge = this.answer?.ridge;
    if (this.slid === null || !ridge || ridge.length < 3) return undefined;
    const at = Math.round(this.slid * (ridge.length / 3 - 1));
    return this.#spot(ridge[3 * at] as number, ridge[3 * at + 1] as number, 'ridge');
  });
  named: readonly NamedSpot[] = $derived.by(() => this.#named());

  constructor(openLayout: OpenLayout, client: JobClient) {
    this.#openLayout = openLayout;
    this.#latest = new Latest(client, 'map', {
      news: (answer) => this.#take(answer),
      answer: (answer) => {
        this.#take(answer);
        if (this.#fineAsked && answer?.fine !== false) this.working = false;
      },
      broken: (reason) => {
        if (this.#fineAsked) this.working = false;
        this.trouble = `The map could not be worked out: ${reason}.`;
      },
    });
  }

  /** For the life of the page: asks for a map whenever what it depends on, which its answers are not, is another than before. */
  follow(): void {
    whenever(
      () => ({
        document: this.#openLayout.document,
        variant: this.#openLayout.variant,
        levels: this.scale.levels.map(toRadians),
        shown: this.shown,
        eachWheel: this.eachWheel,
      }),
      ({ document, variant, levels, shown, eachWheel }) =>
        this.#ask(shown ? document : null, variant?.id, levels, eachWheel),
    );
  }

  #ask(
    document: LayoutDocument | null,
    variant: string | undefined,
    levels: readonly number[],
    eachWheel: boolean,
  ): void {
    clearTimeout(this.#resting);
    this.#fineAsked = false;
    this.working = document !== null;
    if (!document) {
      this.#latest.forget();
      return;
    }
    if (this.#of !== variant) {
      this.#latest.forget();
      this.#clear();
    }
    this.#of = variant;
    const question = (fine: boolean): MapQuestion => ({
      document,
      fine,
      eachWheel,
      levels,
      before: this.answer?.window,
    });
    // Under a hand that drags, a map now and then is live enough, and the page has other things to draw.
    const now = performance.now();
    if (now - this.#asked >= SPACING) {
      this.#asked = now;
      this.#latest.ask(question(false));
    }
    this.#resting = setTimeout(() => {
      this.#fineAsked = true;
      this.#latest.ask(question(true), true);
    }, RESTS_AFTER);
  }

  toggle(): void {
    this.shown = !this.shown;
    if (this.shown) {
      this.#enlarged = this.#openLayout.enlarged === null;
      if (this.#enlarged) this.#openLayout.enlarge(this.view);
      return;
    }
    if (this.#enlarged && this.#openLayout.enlarged === this.view) this.#openLayout.enlarge(null);
    this.#clear();
  }

  #clear(): void {
    this.answer = null;
    this.hits = null;
    this.pointed = null;
    this.slid = null;
    this.trouble = '';
    this.#of = undefined;
  }

  #take(answer: MapAnswer | undefined): void {
    if (!this.shown) return;
    this.answer = answer ?? null;
    this.trouble = answer ? '' : NOTHING_TO_MAP;
    if (answer?.hits) this.hits = answer.hits;
  }

  #spot(across: number, up: number, on: MapSpot['on']): MapSpot | undefined {
    const { answer } = this;
    const kernel = this.#kernel;
    if (!answer || !kernel) return undefined;
    // The plane of the ball as it stands now; the answer may be of a moment ago.
    const kept = this.#openLayout.layout.steering.box.pitmanBall[answer.window.axes[0] === 0 ? 1 : 0];
    const point = placeOf({ ...answer.window, kept }, across, up);
    const worst = worstAt(kernel, point);
    const reach = reasonAt(answer.reach, across, up);
    const hit = this.hits ? reasonAt(this.hits, across, up) : PLACE_OK;
    const reason = Number.isFinite(worst) ? (hit >= PLACE_HIT_FROM ? hit : PLACE_OK) : reach;
    return { point, across, up, worst, reason, on };
  }

  /** The spot at a place of the map's plane, mm; drawn to the best spot and the ridge within `reach` of them. */
  spotAt(across: number, up: number, reach: number): MapSpot | undefined {
    const { answer } = this;
    if (!answer) return undefined;
    const { from, to } = answer.window;
    if (across < from[0] || across > to[0] || up < from[1] || up > to[1]) return undefined;
    const drawn = this.#openLayout.settings.snap ? drawnTo(answer, across, up, reach) : undefined;
    return this.#spot(drawn?.across ?? across, drawn?.up ?? up, drawn?.on);
  }

  #named(): NamedSpot[] {
    const { answer } = this;
    if (!answer) return [];
    const { pitmanBall } = this.#openLayout.layout.steering.box;
    const named: NamedSpot[] = [];
    const add = (id: NamedSpot['id'], words: string, at: { across: number; up: number } | undefined) => {
      const spot = at && this.#spot(at.across, at.up, id === 'best' ? 'best' : 'ridge');
      if (spot) named.push({ id, words, spot });
    };
    add('best', 'Best spot', answer.best);
    const { hits } = this;
    const best = named[0];
    if (hits && best && best.spot.reason !== PLACE_OK) {
      const clear = this.#leastClear();
      add('clear', 'Best spot that hits nothing', clear);
    }
    const beside = nearestOnRidge(answer.ridge, pitmanBall[answer.window.axes[0]]);
    if (beside)
      add('beside', `On the ridge, straight ${beside.up >= pitmanBall[2] ? 'up' : 'down'} from here`, beside);
    return named;
  }

  /** The least place of the ridge where nothing is hit. */
  #leastClear(): { across: number; up: number } | undefined {
    const { answer, hits } = this;
    if (!answer || !hits) return undefined;
    let best: { across: number; up: number; worst: number } | undefined;
    for (let i = 0; i + 2 < answer.ridge.length; i += 3) {
      const [across, up, worst] = [...answer.ridge.subarray(i, i + 3)] as [number, number, number];
      if (reasonAt(hits, across, up) !== PLACE_OK) continue;
      if (!best || worst < best.worst) best = { across, up, worst };
    }
    return best;
  }

  /** How the box would have to be moved for the ball to come to a spot. */
  wayTo(spot: MapSpot): string {
    return shiftWords(this.#shift(spot), (mm) => this.#openLayout.length(mm));
  }

  #shift({ point }: MapSpot): Point {
    const { pitmanBall } = this.#openLayout.layout.steering.box;
    return [point[0] - pitmanBall[0], point[1] - pitmanBall[1], point[2] - pitmanBall[2]];
  }

  /** What a spot comes to, in words: its figure, and what it hits. */
  reading(spot: MapSpot): string {
    const why = reasonWords(spot.reason, this.hits?.hits ?? []);
    if (!Number.isFinite(spot.worst))
      return `Out of reach: ${why || 'a link does not reach over the travel'}`;
    const where = spot.on === 'best' ? 'Best spot' : spot.on === 'ridge' ? 'On the ridge' : 'Here';
    return `${where}: ${bumpWords(spot.worst)} of bump steer${why ? `, but ${why}` : ''}`;
  }

  /** Moves the box so that the pitman ball comes to a spot; one step of undo. Tells whether it was moved. */
  moveTo(spot: MapSpot): boolean {
    const { document } = this.#openLayout;
    if (!document) return false;
    if (!Number.isFinite(spot.worst)) {
      this.#openLayout.tell(`${this.reading(spot)}. The box stays where it is.`);
      return false;
    }
    const way = this.wayTo(spot);
    if (!way) return false;
    const taken = this.#openLayout.edits.change(`Move the box ${way}`, withBallAt(document, spot.point));
    if (taken) {
      this.#openLayout.selection = 'steering.box.pitmanBall';
      this.#openLayout.lastView = this.view;
    }
    return taken;
  }
}
