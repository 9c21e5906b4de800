import { FLAT_ROAD, type RoadKindOf } from './road-kind.ts';

/** Nothing under the wheels but level ground. */
export interface FlatRoad {
  readonly kind: 'flat';
}

export const flat: RoadKindOf<FlatRoad> = {
  usual: { kind: 'flat' },
  fields: [],
  problem: () => undefined,
  prepare: () => FLAT_ROAD,
};
