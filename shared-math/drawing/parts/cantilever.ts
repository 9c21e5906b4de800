import type { Band } from '../drawing.ts';
import type { Pen } from '../pen.ts';
import type { View } from '../views.ts';
import type { LeafPack } from './leaf.ts';

/** Stretches of a leaf from its clamp to its end. */
const NODES = 6;

/**
 * Half a spring from its clamp to its eye. Its leaves lie on the clamp's line at the clamp and bend away from it as the
 * square of the way out, which is a circle but for higher powers: `flat` is where the eye would be with the leaf straight.
 * Points by their number; `pack.shares` are of the way from clamp to eye, main leaf first.
 */
export function halfPack(
  pen: Pen,
  at: { readonly clamp: number; readonly flat: number; readonly eye: number },
  pack: Omit<LeafPack, 'clamp'>,
): Band[] {
  const endOn: readonly View[] = pack.wide === 1 ? ['front'] : ['side'];
  return pack.shares.flatMap((share, layer): Band[] => {
    const drop = pack.stack * layer * 2 * pack.halfThickness;
    const sections = Array.from({ length: NODES + 1 }, (_, i) => {
      const s = (share * i) / NODES;
      const of = [
        [at.clamp, 1 - s],
        [at.flat, s - s * s],
        [at.eye, s * s],
      ] as const;
      const wide = pack.halfWidth;
      return {
        centre: pen.blend(of, [0, 0, drop]),
        up: pen.blend(of, [0, 0, drop + pack.halfThickness]),
        out: pen.blend(of, [pack.wide === 0 ? wide : 0, pack.wide === 1 ? wide : 0, drop]),
      };
    });
    const leaf = { kind: 'band', sections, endOn } as const;
    const covering: Band = { ...leaf, ink: layer === 0 ? 'outline' : 'fine', fill: 'paper' };
    return layer === 0 ? [covering] : [{ ...covering, views: ['side', 'front'], pictorial: true }];
  });
}
