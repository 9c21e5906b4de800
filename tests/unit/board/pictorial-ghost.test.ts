import { expect, test } from 'vitest';
import { drawLayout, placeAtRide, roomFor } from '../../../shared-math/drawing/index.ts';
import { standsAlike } from '../../../src-renderer/board/pictorial/paint-strokes.ts';
import { layoutOf, SIDE_STEER } from '../../support/layouts.ts';

test('of another car only what stands elsewhere is drawn over the open one', () => {
  const own = drawLayout(layoutOf());
  const { box } = SIDE_STEER;
  const [x, y, z] = box.pitmanBall as unknown as [number, number, number];
  const other = drawLayout(
    layoutOf({ steering: { ...SIDE_STEER, box: { ...box, pitmanBall: [x, y, z - 30] } } }),
  );
  const placed = roomFor(own);
  placeAtRide(own, placed);
  const placedOther = roomFor(other);
  placeAtRide(other, placedOther);
  const elsewhere = other.parts
    .filter((part) => !standsAlike(part, placedOther, { drawing: own, placed }))
    .map(({ id }) => id);
  expect(elsewhere).toContain('drag-link');
  expect(elsewhere).toContain('pitman-arm');
  expect(elsewhere).not.toContain('tie-rod');
  expect(elsewhere).not.toContain('beam');
});
