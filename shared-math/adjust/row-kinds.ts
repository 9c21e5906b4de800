import type { Side } from '../layout/index.ts';
import { toDegrees } from '../units/index.ts';
import type { SurveyRow } from './survey.ts';
import { coordinateAt, type PointPlace, type UnknownTable } from './unknowns.ts';

const DEGREES = toDegrees(1);

/** What a row computes from the points' places, without a pose. mm and degrees. */
export interface GeometricRow {
  /** The points that it looks at. */
  readonly places: readonly PointPlace[];
  /** Its value at the unknowns; not a number where points that it needs apart lie on one spot. */
  value(x: Float64Array): number;
  /** Adds its derivatives by the unknowns to a row of a Jacobian (which starts at `offset`). */
  addSlopes(x: Float64Array, jacobian: Float64Array, offset: number): void;
  /** Subtracts pull times its second derivatives from a matrix's lower triangle, size by size; a linear row has none. */
  subtractCurvature?(x: Float64Array, pull: number, hessian: Float64Array, size: number): void;
}

type Axis = 0 | 1 | 2;
const AXES = [0, 1, 2] as const;

/** A sum of coordinates with fixed factors: heights, distances along and across the car, differences. */
function linearRow(terms: readonly { place: PointPlace; axis: Axis; factor: number }[]): GeometricRow {
  return {
    places: terms.map(({ place }) => place),
    value: (x) =>
      terms.reduce((sum, { place, axis, factor }) => sum + factor * coordinateAt(place, axis, x), 0),
    addSlopes(_x, jacobian, offset) {
      for (const { place, axis, factor } of terms) addTo(jacobian, offset, place, axis, factor);
    },
  };
}

function addTo(jacobian: Float64Array, offset: number, place: PointPlace, axis: Axis, slope: number): void {
  const index = place.index[axis];
  if (index >= 0) jacobian[offset + index] = (jacobian[offset + index] as number) + place.sign[axis] * slope;
}

/** Subtracts from a symmetric matrix's lower triangle the entry of two coordinates. */
function subtractAt(
  hessian: Float64Array,
  size: number,
  a: PointPlace,
  axisA: Axis,
  b: PointPlace,
  axisB: Axis,
  amount: number,
): void {
  const [i, j] = [a.index[axisA], b.index[axisB]];
  // Callers pass every ordered pair of coordinates; the upper triangle's share is dropped here.
  if (i < 0 || j < 0 || j > i) return;
  hessian[i * size + j] = (hessian[i * size + j] as number) - a.sign[axisA] * b.sign[axisB] * amount;
}

/** Subtracts from a symmetric matrix's lower triangle the entries of a figure that depends on how far apart two points are. */
function subtractApart(
  hessian: Float64Array,
  size: number,
  from: PointPlace,
  to: PointPlace,
  a: Axis,
  b: Axis,
  amount: number,
): void {
  subtractAt(hessian, size, to, a, to, b, amount);
  subtractAt(hessian, size, to, a, from, b, -amount);
  subtractAt(hessian, size, from, a, to, b, -amount);
  subtractAt(hessian, size, from, a, from, b, amount);
}

/**
 * Distance of two points over some axes: all three in space, x and y on the floor. With e the unit vector from one to
 * the other and L the distance, the derivative by the far end is e, the second derivative (1 - e eᵀ)/L.
 */
function distanceRow(from: PointPlace, to: PointPlace, axes: readonly Axis[]): GeometricRow {
  const apart = (x: Float64Array, axis: Axis) => coordinateAt(to, axis, x) - coordinateAt(from, axis, x);
  const length = (x: Float64Array) => Math.hypot(...axes.map((axis) => apart(x, axis)));
  return {
    places: [from, to],
    value: (x) => {
      const found = length(x);
      return found > 1e-9 ? found : Number.NaN;
    },
    addSlopes(x, jacobian, offset) {
      const whole = length(x);
      for (const axis of axes) {
        const slope = apart(x, axis) / whole;
        addTo(jacobian, offset, to, axis, slope);
        addTo(jacobian, offset, from, axis, -slope);
      }
    },
    subtractCurvature(x, pull, hessian, size) {
      const whole = length(x);
      for (const a of axes)
        for (const b of axes) {
          const second = ((a === b ? 1 : 0) - (apart(x, a) * apart(x, b)) / whole ** 2) / whole;
          subtractApart(hessian, size, from, to, a, b, pull * second);
        }
    },
  };
}

/**
 * Distance of a point from a kingpin's axis, square to it. With k the kingpin's lower end, v the vector to its upper,
 * u = v/|v|, d the vector from k to the point, along = d·u, f = d - along u and r = |f|, e = f/r: the derivative by the
 * point is e; moving the upper end by δ turns u by δ⊥/|v| and so changes r by -(along/|v|) e·δ; moving the lower end
 * changes it by -(1 - along/|v|) e·δ, so that all moved alike change nothing.
 */
function armRow(of: PointPlace, top: PointPlace, bottom: PointPlace): GeometricRow {
  const parts = (x: Float64Array) => {
    const v = [0, 1, 2].map(
      (axis) => coordinateAt(top, axis as Axis, x) - coordinateAt(bottom, axis as Axis, x),
    );
    const d = [0, 1, 2].map(
      (axis) => coordinateAt(of, axis as Axis, x) - coordinateAt(bottom, axis as Axis, x),
    );
    const square = v.reduce((sum, entry) => sum + entry * entry, 0);
    const share = v.reduce((sum, entry, axis) => sum + entry * (d[axis] as number), 0) / square;
    const f = d.map((entry, axis) => entry - share * (v[axis] as number));
    return { share, f, r: Math.hypot(...f) };
  };
  return {
    places: [of, top, bottom],
    value: (x) => {
      const { r } = parts(x);
      return r > 1e-9 ? r : Number.NaN;
    },
    addSlopes(x, jacobian, offset) {
      const { share, f, r } = parts(x);
      for (const axis of [0, 1, 2] as const) {
        const e = (f[axis] as number) / r;
        addTo(jacobian, offset, of, axis, e);
        addTo(jacobian, offset, top, axis, -share * e);
        addTo(jacobian, offset, bottom, axis, -(1 - share) * e);
      }
    },
  };
}

/**
 * Distance of a point from the sector shaft's axis, square to it: an arm as a caliper has it, whatever its ball stands below
 * its hole. With u the axis, of length 1, d the vector from the shaft's centre to the point, f = d - (d·u) u, r = |f| and
 * e = f/r: the derivative by the point is e, by the centre -e, and the second derivative (1 - u uᵀ - e eᵀ)/r.
 */
function sectorArmRow(of: PointPlace, centre: PointPlace, axis: readonly number[]): GeometricRow {
  const u = axis.map((entry) => entry / Math.hypot(...axis));
  const parts = (x: Float64Array) => {
    const d = AXES.map((along) => coordinateAt(of, along, x) - coordinateAt(centre, along, x));
    const share = d.reduce((sum, entry, along) => sum + entry * (u[along] as number), 0);
    const f = d.map((entry, along) => entry - share * (u[along] as number));
    return { f, r: Math.hypot(...f) };
  };
  return {
    places: [of, centre],
    value: (x) => {
      const { r } = parts(x);
      return r > 1e-9 ? r : Number.NaN;
    },
    addSlopes(x, jacobian, offset) {
      const { f, r } = parts(x);
      for (const along of AXES) {
        const e = (f[along] as number) / r;
        addTo(jacobian, offset, of, along, e);
        addTo(jacobian, offset, centre, along, -e);
      }
    },
    subtractCurvature(x, pull, hessian, size) {
      const { f, r } = parts(x);
      for (const a of AXES)
        for (const b of AXES) {
          const uu = (u[a] as number) * (u[b] as number);
          const ee = ((f[a] as number) * (f[b] as number)) / r ** 2;
          subtractApart(hessian, size, centre, of, a, b, (pull * ((a === b ? 1 : 0) - uu - ee)) / r);
        }
    },
  };
}

/**
 * Lean of a kingpin in a view, degrees: atan2(-factor · v_axis, v_z) with v from its lower to its upper end, as
 * caster (axis x) and inclination (axis y, toward the centre plane) are defined.
 */
function leanRow(top: PointPlace, bottom: PointPlace, axis: 0 | 1, factor: number): GeometricRow {
  const apart = (x: Float64Array, of: Axis) => coordinateAt(top, of, x) - coordinateAt(bottom, of, x);
  return {
    places: [top, bottom],
    value: (x) => DEGREES * Math.atan2(factor * apart(x, axis), apart(x, 2)),
    addSlopes(x, jacobian, offset) {
      const a = factor * apart(x, axis);
      const z = apart(x, 2);
      const square = a * a + z * z;
      const byA = (DEGREES * factor * z) / square;
      const byZ = (-DEGREES * a) / square;
      addTo(jacobian, offset, top, axis, byA);
      addTo(jacobian, offset, bottom, axis, -byA);
      addTo(jacobian, offset, top, 2, byZ);
      addTo(jacobian, offset, bottom, 2, -byZ);
    },
  };
}

/** mm. The step of second derivatives by differences of the first: they only guide the search, whose end stays. */
const CURVATURE_STEP = 0.01;

/** A row with its second derivatives by central differences of its first ones. */
function withCurvature(row: GeometricRow): GeometricRow {
  const indices = [...new Set(row.places.flatMap(({ index }) => index))].filter((index) => index >= 0);
  let scratch = { x: new Float64Array(0), further: new Float64Array(0), back: new Float64Array(0) };
  return {
    ...row,
    subtractCurvature(x, pull, hessian, size) {
      if (scratch.x.length !== size)
        scratch = {
          x: new Float64Array(size),
          further: new Float64Array(size),
          back: new Float64Array(size),
        };
      const { x: beside, further, back } = scratch;
      beside.set(x);
      for (const i of indices) {
        further.fill(0);
        back.fill(0);
        beside[i] = (x[i] as number) + CURVATURE_STEP;
        row.addSlopes(beside, further, 0);
        beside[i] = (x[i] as number) - CURVATURE_STEP;
        row.addSlopes(beside, back, 0);
        beside[i] = x[i] as number;
        for (const j of indices) {
          if (j > i) continue;
          const second = ((further[j] as number) - (back[j] as number)) / (2 * CURVATURE_STEP);
          hessian[i * size + j] = (hessian[i * size + j] as number) - pull * second;
        }
      }
    },
  };
}

const X = 0;
const Y = 1;
const Z = 2;

/** What a row computes and from which points; undefined if it needs the posed linkage. */
export function geometricRow(table: UnknownTable, row: SurveyRow): GeometricRow | undefined {
  const at = (id: string) => table.places.get(id) as PointPlace;
  const kingpin = (side: Side) => [at(`axle.${side}.kingpinTop`), at(`axle.${side}.kingpinBottom`)] as const;
  switch (row.kind) {
    case 'back':
      return linearRow([{ place: at(row.of), axis: X, factor: -1 }]);
    case 'out': {
      const place = at(row.of);
      return linearRow([{ place, axis: Y, factor: place.drawn[1] < 0 ? -1 : 1 }]);
    }
    case 'up':
      return linearRow([{ place: at(row.of), axis: Z, factor: 1 }]);
    case 'level':
    case 'across':
    case 'behind': {
      const axis = row.kind === 'level' ? Z : row.kind === 'across' ? Y : X;
      const factor = row.kind === 'behind' ? -1 : 1;
      return linearRow([
        { place: at(row.to), axis, factor },
        { place: at(row.from), axis, factor: -factor },
      ]);
    }
    case 'straight':
      return distanceRow(at(row.from), at(row.to), [X, Y, Z]);
    case 'plumb':
      return distanceRow(at(row.from), at(row.to), [X, Y]);
    case 'arm':
      return withCurvature(armRow(at(row.of), ...kingpin(row.side)));
    case 'sector-arm':
      return sectorArmRow(
        at(row.of),
        at('steering.box.sectorCentre'),
        table.document.steering.box.sectorAxis,
      );
    case 'caster':
      return withCurvature(leanRow(...kingpin(row.side), X, -1));
    case 'inclination':
      return withCurvature(leanRow(...kingpin(row.side), Y, row.side === 'left' ? -1 : 1));
    case 'steer-change':
      return undefined;
  }
}
