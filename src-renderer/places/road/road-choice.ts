import { ROAD_KINDS, type RoadKind, type RoadProfile, roadKind } from '../../../shared-math/ride/index.ts';

/** The roads that can be chosen, in the order shown: those that the mathematics offer, and the one from a file. */
export const CHOSEN_KINDS = (Object.keys(ROAD_KINDS) as RoadKind[]).filter(
  (kind) => kind === 'measured' || roadKind(kind).board,
);

/** A road out of somebody's own file. */
export interface OwnRoad {
  readonly name: string;
  readonly profile: RoadProfile & { readonly kind: 'measured' };
}

/** What is given of the road and of the drive over it; mm, mm/s, s. Each kind keeps its own sizes. */
export interface RoadChoice {
  readonly kind: RoadKind;
  /** By kind of road, as its fields have it. */
  readonly figures: Readonly<Partial<Record<RoadKind, Readonly<Record<string, unknown>>>>>;
  readonly own: OwnRoad | null;
  readonly speed: number;
  /** How long it is driven, where somebody has said so. */
  readonly seconds: number | null;
}

export const FIRST_ROAD: RoadChoice = {
  kind: 'one-wheel',
  figures: Object.fromEntries(
    CHOSEN_KINDS.flatMap((kind) => {
      const { board } = roadKind(kind);
      return board ? [[kind, board.figures]] : [];
    }),
  ),
  own: null,
  // 25 miles an hour.
  speed: 11_176,
  seconds: null,
};

/** The choice with one figure of its road changed. */
export function withFigure({ kind, figures }: RoadChoice, key: string, value: unknown): Partial<RoadChoice> {
  return { figures: { ...figures, [kind]: { ...figures[kind], [key]: value } } };
}

/** s of level road before anything comes, and after a measured road has ended. */
const RUN_UP = 0.3;
const RUN_OUT = 1;

/** The most s that are driven at once: what is watched longer is watched in pieces. */
export const SECONDS_MOST = 30;

/** How long the road is driven, s. */
export function secondsOf(choice: RoadChoice): number {
  if (choice.seconds !== null) return choice.seconds;
  const { board } = roadKind(choice.kind);
  if (board) return board.seconds;
  const end = choice.own?.profile.distance.at(-1) ?? 0;
  return Math.min(SECONDS_MOST, end / choice.speed + RUN_OUT);
}

/** The road as the mathematics take it; undefined while no file of one's own is there. */
export function profileOf(choice: RoadChoice): RoadProfile | undefined {
  const { kind, figures, speed, own } = choice;
  if (kind === 'measured') return own?.profile;
  return { kind, ...figures[kind], start: RUN_UP * speed } as RoadProfile;
}
