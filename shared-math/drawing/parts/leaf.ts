import type { Band } from '../drawing.ts';
import type { Pen } from '../pen.ts';
import type { View } from '../views.ts';

/** Where leaves stand across their pack: how thick and how wide one is, which way the pack grows, the wide side. */
export interface LeafPack {
  /** Shares of the main leaf that each leaf of the pack covers about the middle, main leaf first. */
  readonly shares: readonly number[];
  /** mm. */
  readonly halfThickness: number;
  readonly halfWidth: number;
  /** -1 where the shorter leaves lie below the main one, 1 above. */
  readonly stack: 1 | -1;
  /** The axis of the car along which leaves are wide. */
  readonly wide: 0 | 1;
  /** Share of the main leaf at which it is clamped. */
  readonly clamp: number;
}

/** Stretches of a leaf on either side of its clamp. */
const NODES = 6;

/** Weights of the parabola through the ends and the clamp at share `s`: 1 at its own place and 0 at the others. */
function weights(s: number, clamp: number): [number, number, number] {
  return [
    ((s - clamp) * (s - 1)) / clamp,
    (s * (s - 1)) / (clamp * (clamp - 1)),
    (s * (s - clamp)) / (1 - clamp),
  ];
}

/**
 * A pack of leaves bent through three carried points: its two ends and where it is clamped. Wherever the pose puts
 * them the leaves are drawn along the parabola through them.
 */
export function leafPack(pen: Pen, ends: readonly [number, number], seat: number, pack: LeafPack): Band[] {
  return pack.shares.flatMap((share, layer): Band[] => {
    const drop = pack.stack * layer * 2 * pack.halfThickness;
    const nodeAt = (s: number) => {
      const [first, middle, last] = weights(s, pack.clamp);
      const of = [
        [ends[0], first],
        [seat, middle],
        [ends[1], last],
      ] as const;
      const wide = pack.halfWidth;
      return {
        centre: pen.blend(of, [0, 0, drop]),
        up: pen.blend(of, [0, 0, drop + pack.halfThickness]),
        out: pen.blend(of, [pack.wide === 0 ? wide : 0, pack.wide === 1 ? wide : 0, drop]),
      };
    };
    const side = (end: number, i: number) => pack.clamp + ((end - pack.clamp) * share * i) / NODES;
    const stretches = Array.from({ length: NODES }, (_, i) => i);
    const sections = [
      ...stretches.map((i) => nodeAt(side(0, NODES - i))),
      nodeAt(pack.clamp),
      ...stretches.map((i) => nodeAt(side(1, i + 1))),
    ];
    const endOn: readonly View[] = pack.wide === 1 ? ['front'] : ['side'];
    const leaf = { kind: 'band', sections, endOn } as const;
    const covering: Band = { ...leaf, ink: layer === 0 ? 'outline' : 'fine', fill: 'paper' };
    // From above only the main leaf shows; along a rail it lies under it and is drawn through it.
    if (layer > 0) return [{ ...covering, views: ['side', 'front'], pictorial: true }];
    if (pack.wide === 0) return [covering];
    return [
      { ...covering, views: ['side', 'front'], pictorial: true },
      { ...leaf, ink: 'fine', fill: 'none', views: ['top'] },
    ];
  });
}
