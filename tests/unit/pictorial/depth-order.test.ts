import { describe, expect, test } from 'vitest';
import type { Shape } from '../../../shared-math/drawing/drawing.ts';
import { drawLayout, placeAtRide, roomFor } from '../../../shared-math/drawing/index.ts';
import { resolveLayout } from '../../../shared-math/layout/index.ts';
import {
  axesOf,
  DIMETRIC,
  ISOMETRIC,
  Pictorial,
  STROKE_KINDS,
  type Strokes,
  type Turn,
} from '../../../shared-math/pictorial/index.ts';
import { inPictorial } from '../../../shared-math/pictorial/solids.ts';
import { DEMONSTRATIONS } from '../../support/demonstration-files.ts';
import { boundedSolids, stretchIn } from '../../support/ray-depth.ts';

/** What the picture fills: not the wheel's hub, which is a ring. */
const covers = (shape: Shape) => inPictorial(shape) && (shape.fill !== 'none' || 'opening' in shape);

const TURNS: readonly Turn[] = [
  ISOMETRIC,
  DIMETRIC,
  { azimuth: 2.4, elevation: 0.35 },
  { azimuth: -0.8, elevation: 0.9 },
];
/** mm: of two solids nearer to one another along a ray either may be drawn last, as joined ones are. */
const NEAR = 25;
/** mm of paper: nothing is judged so near to where something begins or ends, which half spaces know no better. */
const EDGE = 9;
const AROUND = [
  [0, 0],
  [EDGE, 0],
  [-EDGE, 0],
  [0, EDGE],
  [0, -EDGE],
] as const;

/** Whether a ring of places goes around a point: a ray to the right crosses it an odd number of times. */
function isAround(strokes: Strokes, from: number, to: number, x: number, y: number): boolean {
  let odd = false;
  for (let a = from, b = to - 2; a < to; b = a, a += 2) {
    const [ax, ay] = [strokes.places[a] as number, strokes.places[a + 1] as number];
    const [bx, by] = [strokes.places[b] as number, strokes.places[b + 1] as number];
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) odd = !odd;
  }
  return odd;
}

/** The part whose face was drawn last at a place of the paper; undefined if there is none. */
function seenAt(strokes: Strokes, x: number, y: number): number | undefined {
  for (let i = strokes.count - 1; i >= 0; i -= 1) {
    if (STROKE_KINDS[strokes.kinds[i] as number] !== 'face') continue;
    const [from, to, opening] = [strokes.from[i], strokes.to[i], strokes.opening[i]] as [
      number,
      number,
      number,
    ];
    const end = opening >= 0 ? opening : to;
    if (!isAround(strokes, from, end, x, y)) continue;
    if (opening >= 0 && isAround(strokes, opening, to, x, y)) continue;
    return strokes.parts[i];
  }
  return undefined;
}

describe('what is drawn last is what is nearest, by rays through the solids', () => {
  test.each(DEMONSTRATIONS)('%s', (_, document) => {
    const drawing = drawLayout(resolveLayout(document));
    const placed = roomFor(drawing);
    placeAtRide(drawing, placed);
    const solids = boundedSolids(drawing, placed, covers);
    const pictorial = new Pictorial(drawing);
    const wrong: string[] = [];
    let judged = 0;
    for (const turn of TURNS) {
      const strokes = pictorial.draw(placed, turn);
      const { right, down, toward } = axesOf(turn);
      /** The part that a ray meets first, if it does so well before it meets another. */
      const nearestAt = (x: number, y: number): number | undefined => {
        const origin = [0, 1, 2].map((axis) => x * (right[axis] as number) + y * (down[axis] as number)) as [
          number,
          number,
          number,
        ];
        const met = solids
          .flatMap((solid) => {
            const stretch = stretchIn(solid, origin, toward as [number, number, number]);
            return stretch ? [{ part: solid.part, to: stretch[1] }] : [];
          })
          .sort((a, b) => b.to - a.to);
        const [nearest] = met;
        const next = met.find(({ part }) => part !== nearest?.part);
        return nearest && (!next || nearest.to - next.to > NEAR) ? nearest.part : undefined;
      };
      for (let i = 0; i < 140; i += 1) {
        const x = -1300 + 2600 * ((i * 0.618034) % 1);
        const y = -1200 + 1800 * ((i * 0.754878) % 1);
        const [nearest, ...around] = AROUND.map(([dx, dy]) => nearestAt(x + dx, y + dy));
        if (nearest === undefined || around.some((part) => part !== nearest)) continue;
        judged += 1;
        const seen = seenAt(strokes, x, y);
        if (seen !== nearest)
          wrong.push(
            `at ${x.toFixed()}, ${y.toFixed()} of ${JSON.stringify(turn)}: ${drawing.parts[seen ?? -1]?.id} over ${drawing.parts[nearest]?.id}`,
          );
      }
    }
    expect(judged).toBeGreaterThan(100);
    expect(wrong).toEqual([]);
  });
});
