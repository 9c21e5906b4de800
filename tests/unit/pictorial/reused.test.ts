import { expect, test } from 'vitest';
import { drawLayout, placeInPose, roomFor } from '../../../shared-math/drawing/index.ts';
import { resolveLayout } from '../../../shared-math/layout/index.ts';
import { createState, prepareFrontEnd, solveFrontEnd } from '../../../shared-math/linkage/index.ts';
import { ISOMETRIC, Pictorial, STROKE_KINDS, type Strokes } from '../../../shared-math/pictorial/index.ts';
import { DEMONSTRATIONS } from '../../support/demonstration-files.ts';

/** All strokes that stand by themselves, in no order: which of two unordered ones comes first goes by the picture before. */
function strokesOf(strokes: Strokes): string[] {
  return Array.from({ length: strokes.count }, (_, i) => {
    const kind = STROKE_KINDS[strokes.kinds[i] as number] as string;
    const places = Array.from(strokes.places.subarray(strokes.from[i], strokes.to[i]), (each) =>
      each.toFixed(2),
    );
    return kind === 'behind' ? '' : `${kind} ${strokes.parts[i]} ${places.join(' ')}`;
  })
    .filter(Boolean)
    .sort();
}

test.each(DEMONSTRATIONS)('%s: a picture drawn again and again is the one drawn anew', (_, document) => {
  const layout = resolveLayout(document);
  const frontEnd = prepareFrontEnd(layout);
  const drawing = drawLayout(layout);
  const kept = new Pictorial(drawing);
  const state = createState();
  for (const [heave, roll, handwheel, azimuth] of [
    [0, 0, 0, 0],
    [40, 0, 0, 0],
    [40, 0, 2.5, 0],
    [40, 0.03, 2.5, 0],
    [0, 0.03, 2.5, 0.9],
    [0, 0, 0, 0.9],
  ] as const) {
    solveFrontEnd(frontEnd, heave, roll, handwheel, state);
    expect(state.status).toBe('ok');
    const placed = roomFor(drawing);
    placeInPose(drawing, frontEnd, state, placed);
    // A little off square, where no edge lies just along a direction that outlines are asked in.
    const turn = { azimuth: ISOMETRIC.azimuth + 0.013 + azimuth, elevation: 0.62 };
    expect(strokesOf(kept.draw(placed, turn))).toEqual(strokesOf(new Pictorial(drawing).draw(placed, turn)));
  }
});

test('a drawing of other sizes is taken over, one of another structure is not', () => {
  const [, document] = DEMONSTRATIONS[0] as (typeof DEMONSTRATIONS)[number];
  const layout = resolveLayout(document);
  const kept = new Pictorial(drawLayout(layout));
  const wider = resolveLayout({
    ...document,
    car: { ...document.car, tyreRadius: document.car.tyreRadius + 20 },
  });
  const drawing = drawLayout(wider);
  const placed = roomFor(drawing);
  const state = createState();
  const frontEnd = prepareFrontEnd(wider);
  solveFrontEnd(frontEnd, 0, 0, 0, state);
  placeInPose(drawing, frontEnd, state, placed);
  expect(kept.take(drawing)).toBe(true);
  expect(strokesOf(kept.draw(placed, ISOMETRIC))).toEqual(
    strokesOf(new Pictorial(drawing).draw(placed, ISOMETRIC)),
  );
  expect(kept.take(drawLayout(resolveLayout({ ...document, obstacles: [] })))).toBe(false);
});
