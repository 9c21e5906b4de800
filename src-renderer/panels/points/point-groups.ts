import { capitalised } from '../../../shared-math/capitalised.ts';
import { type Hardpoint, LATERAL_FACTS } from '../../../shared-math/layout/index.ts';

/** A part of the car in the list of points: what it is called, and its points. */
export interface PointGroup {
  readonly title: string;
  readonly rows: readonly PointRow[];
}

/** One line of the list: a point alone, or the same point of both sides. */
export interface PointRow {
  readonly name: string;
  readonly alone?: Hardpoint;
  readonly left?: Hardpoint;
  readonly right?: Hardpoint;
}

const PARTS: readonly [title: string, has: string | readonly string[]][] = [
  ['Steering', 'steering.'],
  ['Axle and wheels', 'axle.'],
  ['Axle location', 'location.'],
  ...Object.values(LATERAL_FACTS).map(({ title, points }): [string, string[]] => [
    title,
    points.map(({ path }) => `lateral.${path}`),
  ]),
  ['Steering shaft', 'shaft.'],
];

const SIDED = /^(axle|location)\.(left|right)\.(.+)$/;

function unsidedName(name: string): string {
  const rest = name.replace(/^(Left|Right) /, '');
  return capitalised(rest);
}

/** The points by part, the two sides of one point on one line; the part that is worked at most comes first. */
export function pointGroups(points: readonly Hardpoint[]): PointGroup[] {
  return PARTS.flatMap(([title, has]) => {
    const rows = new Map<string, PointRow>();
    for (const point of points) {
      if (!(typeof has === 'string' ? point.id.startsWith(has) : has.includes(point.id))) continue;
      const sided = SIDED.exec(point.id);
      if (!sided) rows.set(point.id, { name: point.name, alone: point });
      else {
        const [, , side, rest] = sided as unknown as [string, string, 'left' | 'right', string];
        const row = rows.get(rest) ?? { name: unsidedName(point.name) };
        rows.set(rest, { ...row, [side]: point });
      }
    }
    return rows.size > 0 ? [{ title, rows: [...rows.values()] }] : [];
  });
}
