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
  readonly carrier: 'frame' | 'axle';
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
    words: 'a spring across, one eye fixed',
    title: 'Transverse spring',
    points: [
      { path: 'eye', name: 'Transverse spring, fixed eye', carrier: 'axle' },
      { path: 'clamp', name: 'Transverse spring, clamp', carrier: 'frame' },
    ],
    bars: [],
  },
};

/** The points of what holds the axle sideways, as hardpoints: on the axle each with the half on whose side it stands. */
export function lateralPoints(lateral: Lateral): Hardpoint[] {
  return LATERAL_FACTS[lateral.kind].points.map(({ path, name, carrier }) => {
    const at = valueAt(lateral, path) as Point;
    return { id: `lateral.${path}`, name, at, carrier: carrier === 'frame' ? carrier : `axle-${halfOf(at)}` };
  });
}

/** A bar of what holds the axle sideways, its ends as hardpoints. */
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
  return LATERAL_FACTS[lateral.kind].bars.map(({ id, name, from, to }) => ({
    id,
    name,
    from: end(from),
    to: end(to),
  }));
}

/** Ids of those of its points that a half of the axle carries. */
export function lateralPointsOn(lateral: Lateral, half: Side): string[] {
  return lateralPoints(lateral)
    .filter(({ carrier }) => carrier === (`axle-${half}` satisfies Carrier))
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
