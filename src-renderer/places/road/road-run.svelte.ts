import { createContext } from 'svelte';
import { capitalised } from '../../../shared-math/capitalised.ts';
import type { LayoutDocument, Refusal } from '../../../shared-math/layout/index.ts';
import { shownText } from '../../../shared-math/outside/index.ts';
import {
  FLAT_ROAD,
  parseRoadTable,
  prepareRoad,
  type RideRun,
  ROAD_TEXT_MAX,
  type Road,
  type RoadProfile,
  type RunOptions,
  roadProblem,
} from '../../../shared-math/ride/index.ts';
import { toRadians } from '../../../shared-math/units/index.ts';
import { whenever } from '../../controls/whenever.svelte.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import { solvePose } from '../../document/reach.ts';
import type { Comparison, OtherVariant } from '../../panels/compare/comparison.svelte.ts';
import type { RideLine } from './ride-line.ts';
import { FIRST_ROAD, profileOf, type RoadChoice, secondsOf } from './road-choice.ts';
import { peaksOf, type RunPeaks, standAt } from './run-rows.ts';

/** How fast a run is played: 1 is as the car drives. */
export const RATES = [1, 0.25, 0.1] as const;
export type Rate = (typeof RATES)[number];

/** s of the road that a key steps. */
export const STEP = 0.01;
/** ms. After a page was not drawn for longer it goes on from where it stood. */
const FRAME_MOST = 100;

/** The key of the open variant's run; others go by their ids. */
const OWN = '';

/** How a variant came over the road. */
export interface Driven {
  readonly run: RideRun;
  readonly peaks: RunPeaks;
}

interface Asked {
  readonly id: number;
  readonly document: LayoutDocument;
  readonly road: RoadProfile;
  readonly options: RunOptions;
}

/**
 * The drive over a road: what road, how fast, what the worker answers for the open variant and for those beside it, and
 * the moment that is looked at. The board shows the car where that moment has it, solved exactly; nothing of the drive
 * but the car's springs and masses stands in the document.
 */
export class RoadRun {
  readonly #openLayout: OpenLayout;
  readonly #comparison: Comparison;
  readonly #line: RideLine;
  readonly #asked = new Map<string, Asked>();
  #ids = 0;
  #frame = 0;

  /** Whether the place for the road is the one shown. */
  open = $state(false);
  choice: RoadChoice = $state.raw(FIRST_ROAD);
  rate: Rate = $state(1);
  playing = $state(false);
  /** s since the drive began. */
  time = $state(0);
  #driven: ReadonlyMap<string, Driven> = $state.raw(new Map());
  refusal: Refusal | null = $state.raw(null);
  /** Why a file was not taken as a road; empty once something else was chosen. */
  trouble = $state('');

  readonly profile: RoadProfile | undefined = $derived(profileOf(this.choice));
  readonly seconds = $derived(secondsOf(this.choice));
  readonly #tyreRadius = $derived.by(() => this.#openLayout.layout.car.tyreRadius);
  readonly road: Road = $derived.by(() => {
    const { profile } = this;
    return profile && !roadProblem(profile, this.#tyreRadius)
      ? prepareRoad(profile, this.#tyreRadius)
      : FLAT_ROAD;
  });
  readonly own: Driven | undefined = $derived(this.#driven.get(OWN));
  /** mm that the wheels have rolled. */
  readonly distance = $derived(this.time * this.choice.speed);
  /** Those beside it that have come over the same road, each with where it stands at this moment. */
  readonly others = $derived.by(() => {
    const count = this.own?.run.count;
    return this.#comparison.others.flatMap((other) => {
      const driven = this.#driven.get(other.id);
      return driven && driven.run.count === count ? [{ other, driven }] : [];
    });
  });

  constructor(openLayout: OpenLayout, comparison: Comparison, line: RideLine) {
    this.#openLayout = openLayout;
    this.#comparison = comparison;
    this.#line = line;
    line.onRun((message) => {
      if (this.#asked.get(message.key)?.id !== message.id) return;
      if (message.kind === 'ran') {
        this.#keep(message.key, { run: message.run, peaks: peaksOf(message.run) });
        if (message.key === OWN) this.refusal = null;
      } else {
        this.#keep(message.key, undefined);
        if (message.key === OWN) this.refusal = message.refusal;
      }
    });
  }

  #keep(key: string, driven: Driven | undefined): void {
    const kept = new Map(this.#driven);
    if (driven) kept.set(key, driven);
    else kept.delete(key);
    this.#driven = kept;
  }

  /** Changes what is given of the road; the drive begins anew. */
  choose(change: Partial<RoadChoice>): void {
    this.toStart();
    this.trouble = '';
    this.choice = { ...this.choice, ...change };
  }

  /** Takes a table of distances and heights as the road; one that is refused is reported by its line, and the road stays. */
  async bring(file: File): Promise<void> {
    if (file.size > ROAD_TEXT_MAX) {
      this.trouble = `${shownText(file.name)} is not imported: it is too large to be a road`;
      return;
    }
    let text: string;
    try {
      text = await file.text();
    } catch {
      this.trouble = `${shownText(file.name)} cannot be read`;
      return;
    }
    const read = parseRoadTable(text);
    if (!read.ok) {
      const { path, reason } = read.failure;
      this.trouble = `${shownText(file.name)} is not taken. ${path ? `${capitalised(path)}: ` : 'It '}${reason}`;
      return;
    }
    this.choose({
      kind: 'measured',
      own: { name: shownText(file.name), profile: read.value },
      seconds: null,
    });
  }

  /** For the life of the page: has the worker drive whatever of road, car and cars beside it has changed. */
  follow(): void {
    whenever(
      () => this.#wanted(),
      (wanted) => {
        if (!wanted) return;
        const { road, cars, options } = wanted;
        if (road) {
          for (const [key, of] of cars) this.#ask(key, of, road, options);
          return;
        }
        this.#asked.clear();
        this.#driven = new Map();
        this.refusal = null;
      },
    );
  }

  /** What there is to drive; undefined while this is not the place shown, or no layout is open. */
  #wanted() {
    const { document, carPose } = this.#openLayout;
    const { profile: road, seconds, choice } = this;
    if (!this.open || !document) return undefined;
    const options = { speed: choice.speed, seconds, handwheel: toRadians(carPose.pose.handwheel) };
    const cars: [string, LayoutDocument][] = [
      [OWN, document],
      ...this.#comparison.others.map(({ id, document: of }): [string, LayoutDocument] => [id, of]),
    ];
    return { road, cars, options };
  }

  #ask(key: string, document: LayoutDocument, road: RoadProfile, options: RunOptions): void {
    const before = this.#asked.get(key);
    const same =
      before?.document === document &&
      before.road === road &&
      before.options.speed === options.speed &&
      before.options.seconds === options.seconds &&
      before.options.handwheel === options.handwheel;
    if (same) return;
    this.#ids += 1;
    this.#asked.set(key, { id: this.#ids, document, road, options });
    this.#line.send({ kind: 'run', id: this.#ids, key, document, road, options });
  }

  /** Where another variant stands at this moment of its own drive, and its linkage there. */
  standOf({ frontEnd }: OtherVariant, { run }: Driven) {
    const { pose, framePose } = standAt(run, this.time, this.#openLayout.carPose.pose.handwheel);
    return { state: solvePose(frontEnd, pose), framePose };
  }

  /** Goes to a moment of the drive, and stops there. */
  goTo(time: number): void {
    this.pause();
    this.#show(time);
  }

  play(): void {
    if (this.playing || !this.own) return;
    this.playing = true;
    if (this.time >= this.seconds - 1e-9) this.time = 0;
    let before: number | undefined;
    const tick = (now: number) => {
      if (!this.playing) return;
      const passed = Math.min(FRAME_MOST, before === undefined ? 0 : now - before) / 1000;
      before = now;
      this.#show(this.time + passed * this.rate);
      if (this.time >= this.seconds) this.playing = false;
      else if (this.playing) this.#frame = requestAnimationFrame(tick);
    };
    this.#frame = requestAnimationFrame(tick);
  }

  pause(): void {
    this.playing = false;
    cancelAnimationFrame(this.#frame);
  }

  toggle(): void {
    if (this.playing) this.pause();
    else this.play();
  }

  /** Back to where the car stands at rest, before the road begins. */
  toStart(): void {
    this.pause();
    this.time = 0;
    if (this.#carries) this.#openLayout.carPose.set({ heave: 0, roll: 0 });
  }

  /** Whether it is this drive that carries the car. */
  #carries = false;

  #show(time: number): void {
    const { own } = this;
    if (!own) return;
    this.time = Math.min(this.seconds, Math.max(0, time));
    if (!this.#carries) {
      this.#openLayout.carPose.beginCarrying(() => {
        this.#carries = false;
        this.pause();
        this.time = 0;
      });
      this.#carries = true;
    }
    const { pose, framePose } = standAt(own.run, this.time, this.#openLayout.carPose.pose.handwheel);
    this.#openLayout.carPose.carry(pose, framePose);
  }

  /** Leaves the place: the car goes back to ride height. */
  leave(): void {
    this.toStart();
    this.open = false;
  }
}

/** The one of the page, for its components. */
export const [getRoadRun, setRoadRun] = createContext<RoadRun>();
