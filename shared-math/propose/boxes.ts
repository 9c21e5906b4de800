import type { Layout } from '../layout/index.ts';
import type { Shelved } from '../shelf/index.ts';

/** A steering box that may be taken: one of the shelf, or a usual one. */
export interface BoxKind {
  readonly mounting: 'side' | 'cross';
  readonly assist: 'manual' | 'power';
  readonly ratio: number;
  /** Degrees each way. */
  readonly sectorTravel: number;
  /** Degrees between input and sector shaft, where the box says. */
  readonly inputAngle?: number | undefined;
  /** How the sector turns, seen on the arm's end, for a handwheel turned left; undefined for a usual one, made either way. */
  readonly turns?: 'clockwise' | 'counter-clockwise';
  readonly shelved?: Shelved;
}

/** Common practice, no published source. */
const USUAL: readonly BoxKind[] = [
  { mounting: 'side', assist: 'manual', ratio: 16, sectorTravel: 36 },
  { mounting: 'side', assist: 'manual', ratio: 20, sectorTravel: 38 },
  { mounting: 'side', assist: 'power', ratio: 14, sectorTravel: 38 },
  { mounting: 'cross', assist: 'manual', ratio: 18, sectorTravel: 40 },
  { mounting: 'cross', assist: 'manual', ratio: 22, sectorTravel: 42 },
  { mounting: 'cross', assist: 'power', ratio: 16, sectorTravel: 40 },
];

/** In what the mirror makes of a box its sector turns the other way. */
const OTHER = { clockwise: 'counter-clockwise', 'counter-clockwise': 'clockwise' } as const;

/** Boxes for a way of steering: those that lie on the shelf before the usual ones. `inMirror` for a car laid in it. */
export function boxKinds(
  mounting: 'side' | 'cross',
  assist: 'manual' | 'power',
  shelf: readonly Shelved[],
  inMirror: boolean,
): BoxKind[] {
  const own = shelf.flatMap((shelved): BoxKind[] => {
    const { part } = shelved;
    if (part.kind !== 'box' || part.count < 1 || part.mounting !== mounting || part.assist !== assist)
      return [];
    const { ratio, sectorTravel, turns } = part;
    return [{ mounting, assist, ratio, sectorTravel, turns: inMirror ? OTHER[turns] : turns, shelved }];
  });
  return [...own, ...USUAL.filter((kind) => kind.mounting === mounting && kind.assist === assist)];
}

/** The box as the layout has it, as a kind to be taken. */
export function drawnBox({ steering }: Layout, mounting: 'side' | 'cross'): BoxKind {
  const { ratio, sectorTravel, assist, inputAngle } = steering.box;
  return { mounting, assist, ratio, sectorTravel, inputAngle };
}
