import type { Side } from '../../../shared-math/layout/index.ts';
import type { RoadClass, RoadProfile } from '../../../shared-math/ride/index.ts';

/** The roads that can be chosen, in the order shown. */
export const ROAD_KINDS = ['one-wheel', 'bump', 'kerb', 'washboard', 'random', 'measured'] as const;
export type ChosenKind = (typeof ROAD_KINDS)[number];

export const ROAD_CLASSES: readonly RoadClass[] = ['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H'];

/** A road out of somebody's own file. */
export interface OwnRoad {
  readonly name: string;
  readonly profile: RoadProfile & { readonly kind: 'measured' };
}

/** What is given of the road and of the drive over it; mm, mm/s, s. Each kind keeps its own sizes. */
export interface RoadChoice {
  readonly kind: ChosenKind;
  readonly heights: Readonly<Record<'one-wheel' | 'bump' | 'kerb' | 'washboard', number>>;
  readonly lengths: Readonly<Record<'one-wheel' | 'bump' | 'washboard', number>>;
  /** The wheel that meets the bump. */
  readonly side: Side;
  readonly kerbSide: Side | 'both';
  /** How far the right track's waves lie behind the left's. */
  readonly shift: number;
  readonly roadClass: RoadClass;
  readonly seed: number;
  readonly own: OwnRoad | null;
  readonly speed: number;
  /** How long it is driven, where somebody has said so. */
  readonly seconds: number | null;
}

export const FIRST_ROAD: RoadChoice = {
  kind: 'one-wheel',
  heights: { 'one-wheel': 50.8, bump: 50.8, kerb: 38.1, washboard: 19.05 },
  lengths: { 'one-wheel': 1219.2, bump: 1219.2, washboard: 914.4 },
  side: 'left',
  kerbSide: 'both',
  shift: 0,
  roadClass: 'C',
  seed: 1,
  own: null,
  // 25 miles an hour.
  speed: 11_176,
  seconds: null,
};

/** s of level road before anything comes, and after a measured road has ended. */
const RUN_UP = 0.3;
const RUN_OUT = 1;

/** s that a road is driven unless specified: until a single bump has died away, or long enough to see a manner. */
const USUAL_SECONDS: Record<Exclude<ChosenKind, 'measured'>, number> = {
  'one-wheel': 2.5,
  bump: 2.5,
  kerb: 2.5,
  washboard: 4,
  random: 6,
};

/** The most s that are driven at once: what is watched longer is watched in pieces. */
export const SECONDS_MOST = 30;

/** How long the road is driven, s. */
export function secondsOf(choice: RoadChoice): number {
  if (choice.seconds !== null) return choice.seconds;
  if (choice.kind !== 'measured') return USUAL_SECONDS[choice.kind];
  const end = choice.own?.profile.distance.at(-1) ?? 0;
  return Math.min(SECONDS_MOST, end / choice.speed + RUN_OUT);
}

/** The road as the mathematics take it; nothing while no file of one's own is there. */
export function profileOf(choice: RoadChoice): RoadProfile | undefined {
  const { kind, heights, lengths, speed } = choice;
  const start = RUN_UP * speed;
  switch (kind) {
    case 'one-wheel':
      return { kind, side: choice.side, height: heights[kind], length: lengths[kind], start };
    case 'bump':
      return { kind, height: heights[kind], length: lengths[kind], start };
    case 'kerb':
      return { kind, side: choice.kerbSide, height: heights[kind], start };
    case 'washboard':
      return { kind, height: heights[kind], length: lengths[kind], shift: choice.shift, start };
    case 'random':
      return { kind, roadClass: choice.roadClass, seed: choice.seed, start };
    case 'measured':
      return choice.own?.profile;
  }
}
