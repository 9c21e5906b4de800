import type { JointSide, ShaftEnd, ShaftStock } from '../layout/index.ts';
import { MM_PER_INCH } from '../units/index.ts';

// Usual ends, and the mate that an end asks for: common practice, no published source, so the mate is measured before
// anything is ordered.

/** mm. A usual double-D of 3/4 in. */
export const USUAL_DOUBLE_D = { diameter: 19.05, acrossFlats: 14.22 } as const;
/** One form of the inch standard, as large as its formula has it: (36 + 1)/48 in. */
export const USUAL_TEETH = {
  form: 'involute-45',
  teeth: 36,
  pitch: 48,
  diameter: (37 / 48) * MM_PER_INCH,
} as const;
/** mm. How deep a joint's bore is, and how far its face stands from its centre. */
export const USUAL_SEAT = { depth: 32, reach: 44 } as const;
/**
 * mm from a part's end to the centre of the joint that sits on it: from one pushed home to one that still holds by the
 * diameter of a usual end. Farther out the end has to be made longer.
 */
export const ON_ITS_END: readonly [least: number, most: number] = [
  USUAL_SEAT.reach - USUAL_SEAT.depth,
  USUAL_SEAT.reach - 19.05,
];
/** mm. */
export const USUAL_BOLT = { diameter: 9.525, fromFace: 16, offset: 11.5 } as const;
/** mm. */
export const USUAL_SCREW = { diameter: 9.525, fromFace: 14 } as const;

/** mm. What a bore, and its flats, are over the shaft that goes in. */
export const BORE_OVER = 0.05;

/** The joint's end that takes a shaft's end: bored alike, with a usual fixing. Splines keep their teeth. */
export function sideTaking(end: ShaftEnd, was: JointSide | undefined): JointSide {
  const room = {
    ...USUAL_SEAT,
    ...(was?.depth ? { depth: was.depth } : {}),
    ...(was?.reach ? { reach: was.reach } : {}),
  };
  if (end.kind === 'round') return { kind: 'weld', bore: end.diameter + BORE_OVER, ...room };
  if (end.kind === 'double-d') {
    const size = { bore: end.diameter + BORE_OVER, acrossFlats: end.acrossFlats + BORE_OVER, ...room };
    return was?.kind === 'double-d-set-screw'
      ? { kind: 'double-d-set-screw', ...size, screw: was.screw ?? USUAL_SCREW }
      : { kind: 'double-d-pinch-bolt', ...size, bolt: (was && 'bolt' in was && was.bolt) || USUAL_BOLT };
  }
  const { form, teeth, pitch, module, diameter } = end;
  const bolt = (was && 'bolt' in was && was.bolt) || USUAL_BOLT;
  return {
    kind: 'spline-pinch-bolt',
    form,
    teeth,
    diameter,
    ...(pitch === undefined ? {} : { pitch }),
    ...(module === undefined ? {} : { module }),
    ...room,
    bolt,
  };
}

/** Stock whose end goes into a joint's end. */
export function stockFor(side: JointSide): ShaftStock {
  if (side.kind === 'weld') return { kind: 'round', diameter: side.bore - BORE_OVER };
  if ('acrossFlats' in side)
    return { kind: 'double-d', diameter: side.bore - BORE_OVER, acrossFlats: side.acrossFlats - BORE_OVER };
  const { form, teeth, pitch, module, diameter } = side;
  return {
    kind: 'splined',
    form,
    teeth,
    diameter,
    ...(pitch === undefined ? {} : { pitch }),
    ...(module === undefined ? {} : { module }),
    ends: 'both',
    formed: Math.max(45, side.depth ?? 0),
  };
}
