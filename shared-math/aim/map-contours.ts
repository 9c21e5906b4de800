import type { BumpSteerMap } from './map.ts';

/** One line of equal worst |bump steer|: 2 numbers for each point, across and up, mm. A closed one ends where it began. */
export interface Contour {
  /** rad. */
  readonly level: number;
  readonly points: Float64Array;
  readonly closed: boolean;
}

/** The edges of a grid's cells: those along a row come first, then those up a column. */
class Edges {
  readonly map: BumpSteerMap;
  private readonly along: number;

  constructor(map: BumpSteerMap) {
    this.map = map;
    this.along = (map.columns - 1) * map.rows;
  }

  row(column: number, row: number): number {
    return row * (this.map.columns - 1) + column;
  }

  column(column: number, row: number): number {
    return this.along + row * this.map.columns + column;
  }

  /** Where a level crosses an edge, by the straight line between its nodes. */
  crossing(edge: number, level: number): [number, number] {
    const { columns, across, up, worst } = this.map;
    const flat = edge < this.along;
    const index = flat ? edge : edge - this.along;
    const width = flat ? columns - 1 : columns;
    const column = index % width;
    const row = Math.floor(index / width);
    const near = worst[row * columns + column] as number;
    const far = worst[flat ? row * columns + column + 1 : (row + 1) * columns + column] as number;
    // One of the two lies below the level and the other does not, so they are not alike.
    const share = (level - near) / (far - near);
    const x = across[column] as number;
    const z = up[row] as number;
    return flat
      ? [x + share * ((across[column + 1] as number) - x), z]
      : [x, z + share * ((up[row + 1] as number) - z)];
  }
}

/** The pieces of a level's line through a grid cell, as pairs of edges; `inside` by corner: 1, 2, 4, 8 counter-clockwise. */
function piecesOf(
  inside: number,
  middleInside: boolean,
  bottom: number,
  right: number,
  top: number,
  left: number,
): [number, number][] {
  switch (inside) {
    case 1:
    case 14:
      return [[left, bottom]];
    case 2:
    case 13:
      return [[bottom, right]];
    case 3:
    case 12:
      return [[left, right]];
    case 4:
    case 11:
      return [[right, top]];
    case 6:
    case 9:
      return [[bottom, top]];
    case 7:
    case 8:
      return [[left, top]];
    case 5:
    case 10:
      // A saddle: the middle of the cell says which corners hang together.
      return (inside === 5) === middleInside
        ? [
            [left, top],
            [bottom, right],
          ]
        : [
            [left, bottom],
            [right, top],
          ];
    default:
      return [];
  }
}

/** Which edges a level's line joins to which, over all cells whose four nodes have a figure. */
function joinsOf(map: BumpSteerMap, edges: Edges, level: number): Map<number, number[]> {
  const { columns, rows, worst } = map;
  const joins = new Map<number, number[]>();
  const join = (from: number, to: number) => {
    const known = joins.get(from);
    if (known) known.push(to);
    else joins.set(from, [to]);
  };
  for (let row = 0; row < rows - 1; row += 1)
    for (let column = 0; column < columns - 1; column += 1) {
      const at = row * columns + column;
      const v0 = worst[at] as number;
      const v1 = worst[at + 1] as number;
      const v2 = worst[at + columns + 1] as number;
      const v3 = worst[at + columns] as number;
      const sum = v0 + v1 + v2 + v3;
      if (!Number.isFinite(sum)) continue;
      const inside =
        (v0 < level ? 1 : 0) + (v1 < level ? 2 : 0) + (v2 < level ? 4 : 0) + (v3 < level ? 8 : 0);
      if (inside === 0 || inside === 15) continue;
      const pieces = piecesOf(
        inside,
        sum / 4 < level,
        edges.row(column, row),
        edges.column(column + 1, row),
        edges.row(column, row + 1),
        edges.column(column, row),
      );
      for (const [a, b] of pieces) {
        join(a, b);
        join(b, a);
      }
    }
  return joins;
}

/**
 * Contour lines of a map at the levels given (rad), by marching squares: within a cell of the grid the figure is taken
 * as straight along its edges, and a saddle is settled by the mean of its corners. Cells with a corner out of reach
 * have no lines, so a contour may end there as at the window's edge. Each line is one polyline, in no order.
 * Source:   the method is public knowledge; own writing.
 * Checked:  tests/unit/map.test.ts (circles of a known radius; every point lies on its level).
 */
export function contourLines(map: BumpSteerMap, levels: readonly number[]): Contour[] {
  const edges = new Edges(map);
  return levels.flatMap((level) => {
    const joins = joinsOf(map, edges, level);
    const lines: Contour[] = [];
    const follow = (start: number, closed: boolean) => {
      const points: number[] = [];
      let at = start;
      for (;;) {
        points.push(...edges.crossing(at, level));
        const next = joins.get(at)?.pop();
        if (next === undefined) break;
        const back = joins.get(next) as number[];
        back.splice(back.indexOf(at), 1);
        at = next;
      }
      lines.push({ level, points: Float64Array.from(points), closed });
    };
    // Open lines first, from their loose ends; what is left is closed.
    for (const [edge, ends] of joins) if (ends.length === 1) follow(edge, false);
    for (const [edge, ends] of joins) if (ends.length > 0) follow(edge, true);
    return lines;
  });
}
