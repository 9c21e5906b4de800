import type { Point } from '../geometry/points.ts';
import type { Layout } from '../layout/index.ts';

/** Where the left rail stands at a place along the car, mm. */
export interface RailFaces {
  /** y of the face toward the wheel and of the one toward the engine. */
  readonly outer: number;
  readonly inner: number;
  /** z of the upper and lower edge. */
  readonly top: number;
  readonly bottom: number;
}

/** mm. Rails of a car of which none is drawn: common practice, no published source. */
const ASSUMED: RailFaces = { outer: 365, inner: 315, top: 500, bottom: 410 };

/** The outermost rail on the left at x; undefined where none runs there. */
export function railFacesAt({ rails }: Layout, x: number): RailFaces | undefined {
  let found: RailFaces | undefined;
  for (const { path, width, height, mirrored } of rails)
    for (let i = 1; i < path.length; i += 1) {
      const [a, b] = [path[i - 1] as Point, path[i] as Point];
      if (a[0] === b[0] || (x - a[0]) * (x - b[0]) > 0) continue;
      const share = (x - a[0]) / (b[0] - a[0]);
      const at = a[1] + share * (b[1] - a[1]);
      const y = mirrored ? Math.abs(at) : at;
      const z = a[2] + share * (b[2] - a[2]);
      const outer = y + width / 2;
      if (y <= 0 || (found && found.outer >= outer)) continue;
      found = { outer, inner: y - width / 2, top: z + height / 2, bottom: z - height / 2 };
    }
  return found;
}

/** mm: half a usual sector shaft with its sleeve; common practice, no published source. */
const SLEEVED = 19;

/** How a level sector shaft passes the rail beside it: clear over or under it, through it, or through an edge of it. */
export function passesRail(layout: Layout): 'over' | 'under' | 'through' | 'upper edge' | 'lower edge' {
  const [x, , z] = layout.steering.box.sectorCentre;
  const { top, bottom } = railFacesNear(layout, x);
  if (z - SLEEVED >= top) return 'over';
  if (z + SLEEVED <= bottom) return 'under';
  if (z + SLEEVED > top) return 'upper edge';
  return z - SLEEVED < bottom ? 'lower edge' : 'through';
}

export function hasRails({ rails }: Layout): boolean {
  return rails.length > 0;
}

/** The same, of a car without rails an assumed one; where the rails have ended, that at their end. */
export function railFacesNear(layout: Layout, x: number): RailFaces {
  const here = railFacesAt(layout, x);
  if (here) return here;
  const ends = layout.rails
    .flatMap(({ path }) => [path[0] as Point, path[path.length - 1] as Point])
    .map((point) => point[0])
    .sort((a, b) => Math.abs(a - x) - Math.abs(b - x));
  for (const end of ends) {
    const there = railFacesAt(layout, end);
    if (there) return there;
  }
  return ASSUMED;
}

/** x from the hindmost to the foremost place of any rail on the left; wide where none is drawn. */
export function railStretch({ rails }: Layout): readonly [from: number, to: number] {
  const xs = rails.flatMap(({ path }) => path.map((point) => point[0]));
  return xs.length > 0 ? [Math.min(...xs), Math.max(...xs)] : [-1500, 500];
}
