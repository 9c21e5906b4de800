import { createContext } from 'svelte';
import type { BrakingRow } from '../../../shared-math/brake/index.ts';
import { type Layout, type LayoutDocument, resolveLayout } from '../../../shared-math/layout/index.ts';
import { type FrontEnd, type FrontEndState, prepareFrontEnd } from '../../../shared-math/linkage/index.ts';
import {
  sweepTravel,
  sweepTurn,
  type TravelSweep,
  type TurnSweep,
} from '../../../shared-math/sweep/index.ts';
import { toRadians } from '../../../shared-math/units/index.ts';
import { brakedOf, brakingSweepOf } from '../../document/braked-car.ts';
import { placeOf, type VariantSummary } from '../../document/find.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import { type Pose, solvePose } from '../../document/reach.ts';
import type { Shop } from '../../document/shop.svelte.ts';
import { type VariantFigures, variantFigures } from './variant-figures.ts';

/** What the variants beside the open one are called on curves and board; each has its own dash. */
export const LETTERS = ['B', 'C', 'D'] as const;
export type Letter = (typeof LETTERS)[number];

const ROWS = 31;

/** Where the open car stands and how far it is swept: what all variants are shown at. Read as it changes. */
interface Stage {
  readonly pose: Pose;
  readonly bump: number;
  readonly droop: number;
  /** Degrees. */
  readonly rollEnd: number;
}

/** A variant beside the open one: as the store has it, in the pose of the open one, swept over the open one's travel. */
export class OtherVariant {
  readonly id: string;
  readonly letter: Letter;
  readonly document: LayoutDocument;
  readonly layout: Layout;
  readonly frontEnd: FrontEnd;
  readonly #stage: Stage;

  readonly state: FrontEndState = $derived.by(() => solvePose(this.frontEnd, this.#stage.pose));
  readonly heaveSweep: TravelSweep = $derived.by(() => {
    const { droop, bump, pose } = this.#stage;
    return sweepTravel(this.frontEnd, 'heave', -droop, bump, ROWS, toRadians(pose.handwheel));
  });
  readonly rollSweep: TravelSweep = $derived.by(() => {
    const roll = toRadians(this.#stage.rollEnd);
    return sweepTravel(this.frontEnd, 'roll', -roll, roll, ROWS, toRadians(this.#stage.pose.handwheel));
  });
  readonly brakingSweep: readonly BrakingRow[] = $derived.by(() =>
    brakingSweepOf(this.frontEnd, toRadians(this.#stage.pose.handwheel)),
  );
  readonly turn: TurnSweep = $derived.by(() => {
    const { heave, roll, braking = 0 } = this.#stage.pose;
    return sweepTurn(brakedOf(this.frontEnd, braking), heave, toRadians(roll));
  });
  readonly figures: VariantFigures = $derived.by(() => variantFigures(this.layout, this.frontEnd));

  constructor(id: string, letter: Letter, document: LayoutDocument, stage: Stage) {
    this.id = id;
    this.letter = letter;
    this.document = document;
    this.layout = resolveLayout(document);
    this.frontEnd = prepareFrontEnd(this.layout);
    this.#stage = stage;
  }
}

/** The variants of the same car that are looked at beside the open one. Reads them from the store and never writes. */
export class Comparison implements Stage {
  readonly #openLayout: OpenLayout;
  readonly #shop: Shop;
  #read: readonly OtherVariant[] = $state.raw([]);

  // Of the open layout, but distinguished from it: while a point is dragged they stay, and so does all that hangs on them.
  readonly bump = $derived.by(() => this.#openLayout.layout.travel.bump);
  readonly droop = $derived.by(() => this.#openLayout.layout.travel.rebound);
  readonly rollEnd = $derived.by(() => this.#openLayout.layout.travel.roll);
  readonly #openId = $derived.by(() => this.#openLayout.variant?.id);

  /** Whether the others' linkages are drawn on the board. */
  ghosts = $state(true);

  /** The other variants of the open car. */
  readonly choices: readonly VariantSummary[] = $derived.by(() => {
    const open = this.#openId;
    const car = open && placeOf(this.#shop.customers, open)?.car;
    return car ? car.variants.filter(({ id }) => id !== open) : [];
  });
  /** Those that are shown. One that is opened, moved or put in the bin is none of them. */
  readonly others: readonly OtherVariant[] = $derived.by(() =>
    this.#read.filter(({ id }) => this.choices.some((choice) => choice.id === id)),
  );
  /** Of the open variant, as it is drawn now. */
  readonly figures: VariantFigures = $derived.by(() => {
    const { layout, frontEnd, carPose } = this.#openLayout;
    const { pose } = carPose;
    const straight = pose.handwheel === 0;
    const level = pose.heave === 0 && pose.roll === 0 && pose.braking === 0;
    // While a point is dragged the car stands at ride height, and all of it has been swept for the curves.
    return variantFigures(layout, frontEnd, {
      heave: straight ? this.#openLayout.heaveSweep : undefined,
      roll: straight ? this.#openLayout.rollSweep : undefined,
      turn: level ? this.#openLayout.turn : undefined,
    });
  });

  constructor(openLayout: OpenLayout, shop: Shop) {
    this.#openLayout = openLayout;
    this.#shop = shop;
  }

  get pose(): Pose {
    return this.#openLayout.carPose.pose;
  }

  get isFull(): boolean {
    return this.others.length === LETTERS.length;
  }

  shows(id: string): boolean {
    return this.others.some((other) => other.id === id);
  }

  nameOf(id: string): string {
    return this.choices.find((choice) => choice.id === id)?.name ?? '';
  }

  /** Puts a variant beside the open one, if there is room for one more. */
  async add(id: string): Promise<void> {
    const letter = LETTERS.find((free) => !this.others.some((other) => other.letter === free));
    if (!letter || this.shows(id)) return;
    const opened = await this.#openLayout.ask('Not compared', 'variant.open', { id });
    // Meanwhile it may have been put there, or another may have taken the letter.
    if (!opened || this.shows(id) || this.others.some((other) => other.letter === letter)) return;
    this.#read = [...this.others, new OtherVariant(id, letter, opened.document, this)].sort((a, b) =>
      a.letter.localeCompare(b.letter),
    );
  }

  remove(id: string): void {
    this.#read = this.others.filter((other) => other.id !== id);
  }

  clear(): void {
    this.#read = [];
  }

  /** Run as an effect: what was read may have been changed on the board since, once another variant is opened. */
  async readAgain(): Promise<void> {
    const before = this.#read;
    const again = await Promise.all(
      before.map(async (other) => {
        const result = await this.#openLayout.call('variant.open', { id: other.id });
        if (!result.ok) return other;
        const { document } = result.value;
        return JSON.stringify(document) === JSON.stringify(other.document)
          ? other
          : new OtherVariant(other.id, other.letter, document, this);
      }),
    );
    if (this.#read === before) this.#read = again;
  }
}

/** The one of the page, for its components. */
export const [getComparison, setComparison] = createContext<Comparison>();
