import type { Point } from '../../../shared-math/geometry/points.ts';
import type { Layout, Rail } from '../../../shared-math/layout/index.ts';

/** What a builder measures from: the frame's top and the outer faces of its rails, where the layout has rails. */
export interface RailDatum {
  /** Height above ground of the level line through the frame's top at the axle, mm; nothing without rails. */
  readonly top: number | undefined;
  /** The frame's top above ground at a station x, mm; undefined if no rail runs there. */
  topAt(x: number): number | undefined;
  /** The outermost rail's section at x, on the side of y's sign: distances from the centre plane and heights, mm. */
  sectionAt(x: number, y: number): { inner: number; outer: number; top: number; bottom: number } | undefined;
  /** How far the outer face of a rail stands from the car's centre plane at x, on the side of y's sign, mm. */
  faceAt(x: number, y: number): number | undefined;
}

/** The rail's middle line at a station, or nothing beyond its ends. */
function middleAt({ path }: Rail, x: number): { y: number; z: number } | undefined {
  for (let i = 1; i < path.length; i += 1) {
    const [a, b] = [path[i - 1] as Point, path[i] as Point];
    if ((x - a[0]) * (x - b[0]) > 0 || a[0] === b[0]) continue;
    const share = (x - a[0]) / (b[0] - a[0]);
    return { y: a[1] + share * (b[1] - a[1]), z: a[2] + share * (b[2] - a[2]) };
  }
  return undefined;
}

/** A rail's section stands upright: half its height above the middle line, along the slope of the rail. */
function topOf(rail: Rail, x: number): number | undefined {
  const middle = middleAt(rail, x);
  if (!middle) return undefined;
  const step = 0.5;
  const [ahead, behind] = [middleAt(rail, x + step), middleAt(rail, x - step)];
  const rise = ahead && behind ? (ahead.z - behind.z) / (2 * step) : 0;
  return middle.z + (rail.height / 2) * Math.hypot(1, rise);
}

function faceOf(rail: Rail, x: number): number | undefined {
  const middle = middleAt(rail, x);
  return middle && Math.abs(middle.y) + rail.width / 2;
}

/**
 * Datums of a layout's rails. The highest rail at a station counts as the frame's top, the outermost as its face; a
 * mirrored rail stands on both sides. Frame: vehicle. Units: mm.
 */
export function railDatum({ rails, axle }: Layout): RailDatum {
  const most = (values: (number | undefined)[]) => {
    const known = values.filter((value) => value !== undefined);
    return known.length > 0 ? Math.max(...known) : undefined;
  };
  const onSide = (y: number) =>
    rails.filter((rail) => rail.mirrored || Math.sign((rail.path[0] as Point)[1]) === (Math.sign(y) || 1));
  const topAt = (x: number) => most(rails.map((rail) => topOf(rail, x)));
  return {
    top: topAt(axle.left.wheelCentre[0]),
    topAt,
    faceAt: (x, y) => most(onSide(y).map((rail) => faceOf(rail, x))),
    sectionAt: (x, y) => {
      const outer = most(onSide(y).map((rail) => faceOf(rail, x)));
      const rail = onSide(y).find((entry) => faceOf(entry, x) === outer);
      const middle = rail && middleAt(rail, x);
      if (outer === undefined || !rail || !middle) return undefined;
      return {
        inner: outer - rail.width,
        outer,
        top: middle.z + rail.height / 2,
        bottom: middle.z - rail.height / 2,
      };
    },
  };
}
