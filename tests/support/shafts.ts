import { readLayout, refusalLine, type ShaftDocument } from '../../shared-math/layout/index.ts';
import { rawLayout } from './layouts.ts';

type Json = Record<string, unknown>;

/** A plain steering shaft of two joints, invented: column down and forward, box input level. mm, degrees. */
export function rawShaft(over: Json = {}): Json {
  return {
    column: { end: [-1390, 330, 760], axis: [0.87, 0.05, -0.49] },
    box: { end: [-960, 452, 486], axis: [1, 0, 0] },
    joints: [
      { kind: 'single', centre: [-1346.5, 332.5, 735.5] },
      { kind: 'single', centre: [-1020, 452, 486] },
    ],
    shafts: [{ clock: 0 }],
    supports: [],
    ...over,
  };
}

/** The shaft as the program takes it in. */
export function shaftOf(over: Json = {}): ShaftDocument {
  const outcome = readLayout(rawLayout({ shaft: rawShaft(over) }));
  if (!outcome.ok) throw new Error(refusalLine(outcome.failure));
  return outcome.value.shaft as ShaftDocument;
}

/** Why a shaft is refused, in one line; "accepted" where it is not. */
export function shaftRefusal(shaft: unknown): string {
  const outcome = readLayout(rawLayout({ shaft }));
  return outcome.ok ? 'accepted' : refusalLine(outcome.failure);
}

/** A joint's ends and stock that go together, 3/4 in: double-D with pinch bolts, and a round bore to weld. */
export const DOUBLE_D_SIDE = {
  kind: 'double-d-pinch-bolt',
  bore: 19.1,
  acrossFlats: 14.3,
  depth: 32,
  reach: 45,
  bolt: { diameter: 9.525, fromFace: 16, offset: 11.5 },
} as const;
export const SCREW_SIDE = {
  kind: 'double-d-set-screw',
  bore: 19.1,
  acrossFlats: 14.3,
  depth: 32,
  reach: 45,
  screw: { diameter: 9.525, fromFace: 14 },
} as const;
export const WELD_SIDE = { kind: 'weld', bore: 19.1, depth: 25, reach: 40 } as const;
export const SPLINE = { form: 'involute-45', teeth: 36, pitch: 48, diameter: 19.58 } as const;
export const SPLINE_SIDE = {
  kind: 'spline-pinch-bolt',
  ...SPLINE,
  depth: 28,
  reach: 42,
  bolt: { diameter: 9.525, fromFace: 14, offset: 12 },
} as const;
