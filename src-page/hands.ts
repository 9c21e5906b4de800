import {
  bumpWords,
  type HandPose,
  type PageData,
  RIDE_HEIGHT,
  rollWords,
  steeringWords,
} from '../shared-math/moving/index.ts';
import { toRadians } from '../shared-math/units/index.ts';
import { element } from './page-parts.ts';

// The hands on the car: a slider each for bump, roll and steering, and the run over a bump.

/** Places of a slider to each side of its middle, which is exactly 0. */
const PLACES = 100;
/** ms that the axle takes through its whole travel and back. */
const RUN = 5000;

/** A slider about 0: what its ends stand for, and how its place is said. */
interface Hand {
  readonly input: HTMLInputElement;
  readonly output: HTMLElement;
  readonly least: number;
  readonly most: number;
  readonly words: (value: number) => string;
}

const CALM = matchMedia('(prefers-reduced-motion: reduce)');

export class Hands {
  readonly #put: (pose: HandPose) => HandPose;
  readonly #hands: Readonly<Record<keyof HandPose, Hand>>;
  readonly #run = element('run') as HTMLButtonElement;
  readonly #doing = element('doing');
  #pose: HandPose = RIDE_HEIGHT;
  #frame = 0;

  /** `put` puts the cars into a pose, and answers where they stand after it. */
  constructor({ cars, style }: PageData, put: (pose: HandPose) => HandPose) {
    this.#put = put;
    const layouts = cars.map(({ layout }) => layout);
    const most = (of: (layout: (typeof layouts)[number]) => number) => Math.max(...layouts.map(of));
    const hand = (id: string, least: number, upTo: number, words: Hand['words']): Hand => ({
      input: element(id) as HTMLInputElement,
      output: element(`${id}-words`),
      least,
      most: upTo,
      words,
    });
    const roll = toRadians(most(({ travel }) => travel.roll));
    // A slider's left is the car's left: handwheel to the left and left wheel up are above 0.
    this.#hands = {
      heave: hand(
        'bump',
        -most(({ travel }) => travel.rebound),
        most(({ travel }) => travel.bump),
        (heave) => bumpWords(heave, style),
      ),
      roll: hand('roll', roll, -roll, rollWords),
      handwheel: hand(
        'steering',
        Math.min(...cars.map(({ locks }) => locks[1])),
        Math.max(...cars.map(({ locks }) => locks[0])),
        steeringWords,
      ),
    };
    for (const key of Object.keys(this.#hands) as (keyof HandPose)[]) {
      const { input } = this.#hands[key];
      input.disabled = this.#hands[key].least === this.#hands[key].most;
      input.addEventListener('input', () => {
        this.#stop();
        this.set({ ...this.#pose, [key]: handValue(this.#hands[key]) });
      });
    }
    this.#run.addEventListener('click', () => (this.#frame ? this.#stop() : this.#start()));
    element('ride').addEventListener('click', () => {
      this.#stop();
      this.set(RIDE_HEIGHT);
    });
    this.#sayRun();
    CALM.addEventListener('change', () => this.#sayRun());
  }

  /** Puts the cars into a pose as far as they go, and the sliders where they then stand. */
  set(pose: HandPose): void {
    this.#pose = this.#put(pose);
    for (const key of Object.keys(this.#hands) as (keyof HandPose)[]) {
      const hand = this.#hands[key];
      const { input, output, words } = hand;
      const value = this.#pose[key];
      if (Math.abs(handValue(hand) - value) > 1e-9) input.value = String(placeOf(hand, value));
      input.setAttribute('aria-valuetext', words(value));
      output.textContent = words(value);
    }
  }

  /** Who wants no motion is shown the top of the bump at once. */
  #sayRun(): void {
    this.#run.textContent = this.#frame
      ? 'Stop'
      : CALM.matches
        ? 'Show the top of a bump'
        : 'Run it over a bump';
  }

  #start(): void {
    const { most, least } = this.#hands.heave;
    if (CALM.matches) {
      this.set({ ...this.#pose, heave: most });
      return;
    }
    // Who listens hears where the run ends, not every picture of it.
    this.#doing.setAttribute('aria-live', 'off');
    const begun = performance.now();
    const step = (now: number) => {
      const share = Math.min(1, (now - begun) / RUN);
      const swing = Math.sin(2 * Math.PI * share);
      this.set({ ...this.#pose, heave: share === 1 ? 0 : swing > 0 ? swing * most : -swing * least });
      if (share < 1) this.#frame = requestAnimationFrame(step);
      else this.#stop();
    };
    this.#frame = requestAnimationFrame(step);
    this.#sayRun();
  }

  #stop(): void {
    cancelAnimationFrame(this.#frame);
    this.#frame = 0;
    this.#doing.removeAttribute('aria-live');
    this.#sayRun();
  }
}

/** The value that a slider stands at: each half of its way is divided evenly. */
function handValue({ input, least, most }: Hand): number {
  const share = Number(input.value) / PLACES;
  return share < 0 ? -share * least : share * most;
}

/** The place of a value on a slider. */
function placeOf({ least, most }: Hand, value: number): number {
  const end = value < 0 === least < 0 ? least : most;
  if (end === 0) return 0;
  const share = value / end;
  return PLACES * (end === least ? -share : share);
}
