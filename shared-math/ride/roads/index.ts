import type { Refusal } from '../../layout/index.ts';
import { bump, oneWheel } from './bump.ts';
import { flat } from './flat.ts';
import { kerb } from './kerb.ts';
import { measured } from './measured.ts';
import { random } from './random.ts';
import type { Road, RoadField, RoadKindOf } from './road-kind.ts';
import { washboard } from './washboard.ts';

/** The kinds of road, in the order in which they are offered. A new one is one file and one line here. */
export const ROAD_KINDS = {
  flat,
  'one-wheel': oneWheel,
  bump,
  kerb,
  washboard,
  random,
  measured,
};

export type RoadKind = keyof typeof ROAD_KINDS;

/** A road under the front wheels as plain data; mm. `start` is how far the wheels roll before they meet it. */
export type RoadProfile = (typeof ROAD_KINDS)[RoadKind]['usual'];

/** A kind of road whatever its figures: for whoever reads them by name. */
export type AnyRoadKind = Omit<RoadKindOf<RoadProfile>, 'fields' | 'board'> & {
  readonly fields: readonly RoadField<Readonly<Record<string, unknown>>>[];
  readonly board?: {
    readonly words: string;
    readonly figures: Readonly<Record<string, unknown>>;
    readonly seconds: number;
  };
};

/** A kind by its name, as whoever reads figures by name sees it. */
export function roadKind(kind: RoadKind): AnyRoadKind {
  return ROAD_KINDS[kind] as unknown as AnyRoadKind;
}

/** What is wrong with a road for wheels of a radius (mm), by the name of the figure; undefined if it can be driven over. */
export function roadProblem(profile: RoadProfile, tyreRadius: number): Refusal | undefined {
  return roadKind(profile.kind).problem(profile, tyreRadius);
}

/** Makes a road without a problem ready for wheels of a radius (mm). */
export function prepareRoad(profile: RoadProfile, tyreRadius: number): Road {
  return roadKind(profile.kind).prepare(profile, tyreRadius);
}

export { type MeasuredRoad, parseRoadTable, ROAD_TEXT_MAX } from './measured.ts';
export {
  BAND,
  likeness,
  ROAD_CLASSES,
  type RoadClass,
  roughness,
  spectralDensity,
} from './random.ts';
export { FLAT_ROAD, type Road, type RoadField } from './road-kind.ts';
