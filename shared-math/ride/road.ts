import type { Refusal, Side } from '../layout/index.ts';

/** Classes of road roughness of ISO 8608, from very good to what is no road any more. */
export type RoadClass = 'A' | 'B' | 'C' | 'D' | 'E' | 'F' | 'G' | 'H';

/** A road under the front wheels as plain data; mm. `start` is how far the wheels roll on the flat before it begins. */
export type RoadProfile =
  | { readonly kind: 'flat' }
  /** One wave, the upper half of a sine, under both wheels or under one. */
  | { readonly kind: 'bump'; readonly height: number; readonly length: number; readonly start: number }
  | {
      readonly kind: 'one-wheel';
      readonly side: Side;
      readonly height: number;
      readonly length: number;
      readonly start: number;
    }
  /** A square edge that a stiff wheel of the tyre's radius rolls up, by both wheels or one. */
  | {
      readonly kind: 'kerb';
      readonly side: Side | 'both';
      readonly height: number;
      readonly start: number;
    }
  /** Waves one after another, `height` from trough to crest; `shift` is how far the right track's lie behind the left's. */
  | {
      readonly kind: 'washboard';
      readonly height: number;
      readonly length: number;
      readonly shift: number;
      readonly start: number;
    }
  /** A rough road that looks random and is the same for the same seed. */
  | { readonly kind: 'random'; readonly roadClass: RoadClass; readonly seed: number; readonly start: number }
  /** Measured: heights at distances that grow, straight lines between. */
  | {
      readonly kind: 'measured';
      readonly distance: readonly number[];
      readonly left: readonly number[];
      readonly right: readonly number[];
    };

export type RoadKind = RoadProfile['kind'];

/** A road made ready: heights in mm at a distance in mm. Allocates nothing. */
export interface Road {
  leftAt(distance: number): number;
  rightAt(distance: number): number;
}

const flatHeight = () => 0;
export const FLAT_ROAD: Road = { leftAt: flatHeight, rightAt: flatHeight };

function halfSine(height: number, length: number, start: number) {
  return (distance: number) => {
    const share = (distance - start) / length;
    return share > 0 && share < 1 ? height * Math.sin(Math.PI * share) : 0;
  };
}

/** Makes a road ready for wheels of a radius (mm). */
export function prepareRoad(profile: RoadProfile, tyreRadius: number): Road {
  switch (profile.kind) {
    case 'bump': {
      const at = halfSine(profile.height, profile.length, profile.start);
      return { leftAt: at, rightAt: at };
    }
    case 'one-wheel': {
      const at = halfSine(profile.height, profile.length, profile.start);
      return profile.side === 'left'
        ? { leftAt: at, rightAt: flatHeight }
        : { leftAt: flatHeight, rightAt: at };
    }
    default:
      void tyreRadius;
      return FLAT_ROAD;
  }
}

/** What is wrong with a road, told by the name of its part; nothing if it can be driven over. */
export function roadProblem(profile: RoadProfile): Refusal | undefined {
  void profile;
  return undefined;
}
