import { Matrix, solve } from 'ml-matrix';

// Beams in a plane by finite elements: an independent peer for what the program has in closed form. Elements of Euler and
// Bernoulli with stretch, Hermite cubics, as any text on the method gives them; solved by ml-matrix, a registry library.

/** mm along x and up; of each element what its middle has of E I (N·mm²) and E A (N). */
export interface Beam {
  readonly nodes: readonly (readonly [x: number, z: number])[];
  readonly bending: readonly number[];
  readonly stretch: readonly number[];
}

/** Displacements x, z (mm) and turn (rad, counter-clockwise in the plane of x and z) of each node, in one row. */
export type Displacements = readonly number[];

/** K of one element in the plane's axes, 6 by 6. */
function elementStiffness(dx: number, dz: number, bending: number, stretch: number): Matrix {
  const l = Math.hypot(dx, dz);
  const [c, s] = [dx / l, dz / l];
  const a = stretch / l;
  const b = (12 * bending) / l ** 3;
  const d = (6 * bending) / l ** 2;
  const e = (4 * bending) / l;
  const own = new Matrix([
    [a, 0, 0, -a, 0, 0],
    [0, b, d, 0, -b, d],
    [0, d, e, 0, -d, e / 2],
    [-a, 0, 0, a, 0, 0],
    [0, -b, -d, 0, b, -d],
    [0, d, e / 2, 0, -d, e],
  ]);
  const turn = Matrix.zeros(6, 6);
  for (const at of [0, 3]) {
    turn.set(at, at, c);
    turn.set(at, at + 1, s);
    turn.set(at + 1, at, -s);
    turn.set(at + 1, at + 1, c);
    turn.set(at + 2, at + 2, 1);
  }
  return turn.transpose().mmul(own).mmul(turn);
}

/** Displacements of a beam under loads by freedom, with some freedoms held. Freedom 3 i is x of node i, then z, then turn. */
export function displacements(
  { nodes, bending, stretch }: Beam,
  loads: ReadonlyMap<number, number>,
  held: readonly number[],
): Displacements {
  const size = 3 * nodes.length;
  const k = Matrix.zeros(size, size);
  for (let i = 0; i + 1 < nodes.length; i += 1) {
    const [from, to] = [nodes[i], nodes[i + 1]] as [readonly [number, number], readonly [number, number]];
    const element = elementStiffness(
      to[0] - from[0],
      to[1] - from[1],
      bending[i] as number,
      stretch[i] as number,
    );
    for (let row = 0; row < 6; row += 1)
      for (let column = 0; column < 6; column += 1)
        k.set(3 * i + row, 3 * i + column, k.get(3 * i + row, 3 * i + column) + element.get(row, column));
  }
  const free = Array.from({ length: size }, (_, i) => i).filter((i) => !held.includes(i));
  const right = Matrix.columnVector(free.map((i) => loads.get(i) ?? 0));
  const found = solve(k.selection(free, free), right).to1DArray();
  const all = new Array<number>(size).fill(0);
  free.forEach((i, at) => {
    all[i] = found[at] as number;
  });
  return all;
}
