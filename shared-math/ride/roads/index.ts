import type { Refusal } from '../../layout/index.ts';
import { type BumpRoad, bump, type OneWheelRoad, oneWheel } from './bump.ts';
import { type KerbRoad, kerb } from './kerb.ts';
import { type MeasuredRoad, measured } from './measured.ts';
import { type RandomRoad, random } from './random.ts';
import { FLAT_ROAD, type Road, type RoadKindOf } from './road-kind.ts';
import { type WashboardRoad, washboard } from './washboard.ts';

/** A road under the front wheels as plain data; mm. `start` is how far the wheels roll before they meet it. */
export type RoadProfile =
  | { readonly kind: 'flat' }
  | BumpRoad
  | OneWheelRoad
  | KerbRoad
  | WashboardRoad
  | RandomRoad
  | MeasuredRoad;

export type RoadKind = RoadProfile['kind'];

/** The kinds of road. A new one is one file and one line here. */
const ROAD_KINDS: { [Kind in RoadKind]: RoadKindOf<Extract<RoadProfile, { kind: Kind }>> } = {
  flat: { problem: () => undefined, prepare: () => FLAT_ROAD },
  bump,
  'one-wheel': oneWheel,
  kerb,
  washboard,
  random,
  measured,
};

/** What is wrong with a road for wheels of a radius (mm), by the name of the figure; nothing if it can be driven over. */
export function roadProblem(profile: RoadProfile, tyreRadius: number): Refusal | undefined {
  return (ROAD_KINDS[profile.kind] as RoadKindOf<RoadProfile>).problem(profile, tyreRadius);
}

/** Makes a road without a problem ready for wheels of a radius (mm). */
export function prepareRoad(profile: RoadProfile, tyreRadius: number): Road {
  return (ROAD_KINDS[profile.kind] as RoadKindOf<RoadProfile>).prepare(profile, tyreRadius);
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
export { FLAT_ROAD, type Road } from './road-kind.ts';
export { USUAL_ROADS } from './usual.ts';
