import type { Point } from '../geometry/points.ts';
import type { Carrier, Hardpoint } from './hardpoint.ts';
import type { Lateral, LateralKind } from './schema.ts';
import { halfOf, type Side } from './sides.ts';
import { valueAt } from './values.ts';

type LateralOf<Kind extends LateralKind> = Extract<Lateral, { kind: Kind }>;

/** A point of what holds the axle sideways: its place within `lateral`, its name, and what carries it. */
interface LateralPoint {
  readonly path: string;
  readonly name: string;
  /** `bearer` is what holds the rocker's bolt, `other` what the bars' far ends are on. */
  readonly carrier: 'frame' | 'axle' | 'rocker' | 'bearer' | 'other';
}

/** What is known of a kind without solving anything. */
export interface LateralFacts {
  /** As in "held sideways by …". */
  readonly words: string;
  /** What its points stand under in a list of the car's parts. */
  readonly title: string;
  readonly points: readonly LateralPoint[];
  /** Bars with a ball or bush at either end: an id and a name, and the paths of the ends. */
  readonly bars: readonly {
    readonly id: string;
    readonly name: string;
    readonly from: string;
    readonly to: string;
  }[];
}

/** The kinds in the order in which they are offered. A new kind is one entry; the compiler asks for the rest. */
export const LATERAL_FACTS: Readonly<Record<LateralKind, LateralFacts>> = {
  bar: {
    words: 'a lateral bar',
    title: 'Lateral bar',
    points: [
      { path: 'axle', name: 'Lateral bar, axle end', carrier: 'axle' },
      { path: 'frame', name: 'Lateral bar, frame end', carrier: 'frame' },
    ],
    bars: [{ id: 'lateral-bar', name: 'Lateral bar', from: 'axle', to: 'frame' }],
  },
  spring: { words: 'the spring itself', title: 'Transverse spring', points: [], bars: [] },
  'fixed-spring': {
    words: 'a fixed spring eye',
    title: 'Transverse spring',
    points: [
      { path: 'eye', name: 'Transverse spring, fixed eye', carrier: 'axle' },
      { path: 'clamp', name: 'Transverse spring, clamp', carrier: 'frame' },
    ],
    bars: [],
  },
  watt: {
    words: 'a Watt’s linkage',
    title: 'Watt’s linkage',
    points: [
      { path: 'pivot', name: 'Rocker bolt', carrier: 'bearer' },
      { path: 'upper.rocker', name: 'Upper Watt bar, rocker end', carrier: 'rocker' },
      { path: 'upper.end', name: 'Upper Watt bar, far end', carrier: 'other' },
      { path: 'lower.rocker', name: 'Lower Watt bar, rocker end', carrier: 'rocker' },
      { path: 'lower.end', name: 'Lower Watt bar, far end', carrier: 'other' },
    ],
    bars: [
      { id: 'watt-upper', name: 'Upper Watt bar', from: 'upper.rocker', to: 'upper.end' },
      { id: 'watt-lower', name: 'Lower Watt bar', from: 'lower.rocker', to: 'lower.end' },
    ],
  },
};

function carrierOf(lateral: Lateral, { carrier }: LateralPoint, at: Point): Carrier {
  if (carrier === 'frame' || carrier === 'rocker') return carrier;
  const onFrame = lateral.kind === 'watt' && (carrier === 'bearer') === (lateral.rockerOn === 'frame');
  return onFrame ? 'frame' : `axle-${halfOf(at)}`;
}

/** The points of what holds the axle sideways, as hardpoints: on the axle each with the half on whose side it stands. */
export function lateralPoints(lateral: Lateral): Hardpoint[] {
  return LATERAL_FACTS[lateral.kind].points.map((point) => {
    const at = valueAt(lateral, point.path) as Point;
    return { id: `lateral.${point.path}`, name: point.name, at, carrier: carrierOf(lateral, point, at) };
  });
}

/** A bar of what holds the axle sideways, its ends as hardpoints: that on the axle first. */
export interface LateralBar {
  readonly id: string;
  readonly name: string;
  readonly from: Hardpoint;
  readonly to: Hardpoint;
}

/** The bars of what holds the axle sideways; none where a spring does. */
export function lateralBars(lateral: Lateral): LateralBar[] {
  const points = new Map(lateralPoints(lateral).map((point) => [point.id, point]));
  const end = (path: string) => points.get(`lateral.${path}`) as Hardpoint;
  return LATERAL_FACTS[lateral.kind].bars.map(({ id, name, from, to }) => {
    const ends = [end(from), end(to)] as const;
    const [first, second] = ends[1].carrier.startsWith('axle') ? [ends[1], ends[0]] : ends;
    return { id, name, from: first, to: second };
  });
}

/** Ids of those of its points that go with a half of the axle: a rocker on the axle goes with the half of its bolt. */
export function lateralPointsOn(lateral: Lateral, half: Side): string[] {
  const rocks = lateral.kind === 'watt' && lateral.rockerOn === 'axle' && halfOf(lateral.pivot) === half;
  return lateralPoints(lateral)
    .filter(({ carrier }) => carrier === `axle-${half}` || (carrier === 'rocker' && rocks))
    .map(({ id }) => id);
}

/**
 * A spring across with one eye fixed, as the two halves of it are drawn and judged for room: that of the fixed eye as the
 * document has it, the other its mirror image, whose eye hangs on a shackle.
 */
export function halvesOfSpring(spring: LateralOf<'fixed-spring'>): { fixed: Side; shackled: Side } {
  const fixed = halfOf(spring.eye);
  return { fixed, shackled: fixed === 'left' ? 'right' : 'left' };
}
