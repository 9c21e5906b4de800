import type { Point } from '../../geometry/points.ts';
import type { LayoutDocument, Side } from '../../layout/index.ts';
import { length } from './dimensions.ts';
import type { Dimension, EntryWay, Instrument, ListView, Observation } from './list-row.ts';
import { byLean, plainWay, RAIL_OUTER, RAIL_TOP } from './ways.ts';

const HEIGHT = plainWay('up from the floor');
const OUT = plainWay('out from the centre line');

/** Takes one row into the list, in its group. */
export type Add = (
  id: string,
  name: string,
  how: string,
  instrument: Instrument,
  observes: Observation | undefined,
  dimension: Dimension,
  view: ListView,
  ways: readonly EntryWay[],
  side?: Side,
) => unknown;

/** The rail's outer face and top edge, from which other figures can be counted. */
export function addRails(document: LayoutDocument, add: Add, box: Point) {
  const [rail] = document.rails;
  const middle = rail ? railAt(rail.path, box[0]) : ([box[0], 380, box[2]] as Point);
  const outer = Math.abs(middle[1]) + (rail?.width ?? 0) / 2;
  const top = middle[2] + (rail?.height ?? 0) / 2;
  add(
    RAIL_OUTER,
    'Rail, outer face out from the centre line',
    "From the car's centre line out to the rail's outer face, beside the points that are counted from it.",
    'tape',
    undefined,
    length([middle[0], 0, top], [middle[0], outer, top]),
    'top',
    [OUT],
  );
  add(
    RAIL_TOP,
    'Rail, top edge up from the floor',
    "From the floor up to the rail's top edge, beside the points that are counted from it.",
    'tape',
    undefined,
    length([middle[0], outer, 0], [middle[0], outer, top]),
    'side',
    [HEIGHT],
  );
}

/** The middle of a rail as far back as x, mm; its nearer end where it does not reach so far. */
function railAt(path: readonly Point[], x: number): Point {
  for (const [i, to] of path.entries()) {
    const from = path[i - 1];
    if (!from || (from[0] - x) * (to[0] - x) > 0 || from[0] === to[0]) continue;
    const share = (x - from[0]) / (to[0] - from[0]);
    return [x, from[1] + share * (to[1] - from[1]), from[2] + share * (to[2] - from[2])];
  }
  const ends = [path[0], path.at(-1)] as [Point, Point];
  return Math.abs(ends[0][0] - x) < Math.abs(ends[1][0] - x) ? ends[0] : ends[1];
}

/** How far the arm leans from plumb; only where it swings in an upright plane. */
export function addLean(document: LayoutDocument, add: Add, at: (id: string) => Point) {
  const [x, y, z] = document.steering.box.sectorAxis.map(Math.abs) as [number, number, number];
  const sector = at('steering.box.sectorCentre');
  const ball = at('steering.box.pitmanBall');
  if (z > x && z > y) return;
  const ends = { from: 'steering.box.sectorCentre', to: 'steering.box.pitmanBall' };
  const foreAndAft = y >= x;
  add(
    'pitman-lean',
    'Pitman arm, lean from plumb',
    foreAndAft
      ? 'Angle finder along the arm, wheels straight ahead: the ball behind the shaft counts as plus, ahead of it as minus.'
      : "Angle finder along the arm, wheels straight ahead: the ball toward the car's left of the shaft counts as plus, to its right as minus.",
    'angle-finder',
    foreAndAft ? { kind: 'behind', ...ends } : { kind: 'across', ...ends },
    { kind: 'angle', at: sector, along: ball },
    foreAndAft ? 'side' : 'front',
    [byLean('from plumb'), plainWay(foreAndAft ? 'ball behind the shaft' : 'ball to the left of the shaft')],
  );
}
