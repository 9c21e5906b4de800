import { MM_PER_INCH } from '../../shared-math/units/index.ts';

export type Unit = 'in' | 'mm';

/** Steps of the grid in the unit, with the step of its stronger lines. */
const STEPS: Record<Unit, readonly (readonly [fine: number, strong: number])[]> = {
  in: [
    [1 / 16, 1 / 2],
    [1 / 8, 1],
    [1 / 4, 1],
    [1 / 2, 3],
    [1, 6],
    [3, 12],
    [6, 24],
    [12, 48],
  ],
  mm: [
    [1, 10],
    [2, 10],
    [5, 50],
    [10, 50],
    [20, 100],
    [50, 250],
    [100, 500],
    [200, 1000],
  ],
};

/** What snapping rounds to, in the unit. */
const SNAPS: Record<Unit, readonly number[]> = {
  in: [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1],
  mm: [1, 2, 5, 10, 20],
};

const UNIT_MM: Record<Unit, number> = { in: MM_PER_INCH, mm: 1 };

/** px between fine lines at least: closer ones would grey the paper. */
const FINE_APART = 13;
/** px that a snapped point moves at most from one place to the next, so that a drag still feels smooth. */
const SNAP_APART = 2.5;

/** mm. */
export interface GridSteps {
  readonly fine: number;
  readonly strong: number;
}

/** The grid of a zoom, px per mm: the finest whose lines stay apart. */
export function gridSteps(unit: Unit, scale: number): GridSteps {
  const size = UNIT_MM[unit];
  const list = STEPS[unit];
  const [fine, strong] =
    list.find(([step]) => step * size * scale >= FINE_APART) ?? (list.at(-1) as readonly [number, number]);
  return { fine: fine * size, strong: strong * size };
}

/** What a dragged point is rounded to at a zoom, mm: 1/16 in or 1 mm close by, more where that is less than a pixel. */
export function snapStep(unit: Unit, scale: number): number {
  const size = UNIT_MM[unit];
  const list = SNAPS[unit];
  let step = list[0] as number;
  for (const candidate of list) if (candidate * size * scale <= SNAP_APART) step = candidate;
  return step * size;
}

export interface GridLine {
  /** px along the board. */
  readonly at: number;
  readonly strong: boolean;
}

/** Lines between two places of the board, px, of a grid whose zero lies at `zero` px. */
export function gridLines(
  steps: GridSteps,
  scale: number,
  zero: number,
  from: number,
  to: number,
): GridLine[] {
  const apart = steps.fine * scale;
  const every = Math.round(steps.strong / steps.fine);
  const lines: GridLine[] = [];
  for (let i = Math.ceil((from - zero) / apart); i * apart + zero <= to; i += 1)
    lines.push({ at: zero + i * apart, strong: i % every === 0 });
  return lines;
}

/** A round length that measures between 90 and 240 px, for the scale bar; mm, and how many parts it has. */
export function scaleBar(unit: Unit, scale: number): { length: number; parts: number } {
  const size = UNIT_MM[unit];
  const lengths =
    unit === 'in'
      ? ([
          [1 / 2, 2],
          [1, 4],
          [2, 2],
          [4, 4],
          [6, 6],
          [12, 4],
          [24, 4],
          [48, 4],
          [96, 4],
        ] as const)
      : ([
          [10, 5],
          [20, 4],
          [50, 5],
          [100, 5],
          [200, 4],
          [500, 5],
          [1000, 5],
          [2000, 4],
        ] as const);
  const [length, parts] =
    lengths.find(([candidate]) => candidate * size * scale >= 90) ??
    (lengths.at(-1) as readonly [number, number]);
  return { length: length * size, parts };
}
