import { describe, expect, test } from 'vitest';
import { hardpoints, numberedPoints, pointNumbers } from '../../shared-math/layout/index.ts';
import { DEMONSTRATIONS } from '../support/demonstration-files.ts';
import { documentOf, rawLayout } from '../support/layouts.ts';

describe('every point has one number, wherever it is drawn', () => {
  test.each(DEMONSTRATIONS)('%s: numbers from 1 without a gap, in the order of the car', (_, document) => {
    const points = numberedPoints(document);
    expect(points.map(({ id }) => id)).toEqual(hardpoints(document).map(({ id }) => id));
    const once = [...new Set(points.map(({ number }) => number))];
    expect(once).toEqual(once.map((_number, i) => i + 1));
    expect(pointNumbers(document).size).toBe(points.length);
  });

  test.each(DEMONSTRATIONS)(
    '%s: two points share a number where they mirror one another, and only there',
    (_, document) => {
      const points = numberedPoints(document);
      for (const a of points)
        for (const b of points)
          if (a.id !== b.id) expect(a.number === b.number, `${a.id} and ${b.id}`).toBe(a.twin === b.id);
    },
  );

  test('a shaft drawn later leaves the other numbers as they were', () => {
    for (const [, document] of DEMONSTRATIONS) {
      const bare = pointNumbers({ ...document, shaft: null });
      const drawn = pointNumbers(document);
      for (const [id, number] of bare) expect(drawn.get(id), id).toBe(number);
    }
  });

  test('sides that are not mirror images are numbered one by one', () => {
    const document = documentOf(rawLayout());
    const { left } = document.axle;
    const [x, y, z] = left.kingpinTop;
    const right = { ...left, kingpinTop: [x, -y, z] };
    const points = numberedPoints({
      ...document,
      axle: { ...document.axle, right },
    } as unknown as typeof document);
    const [a, b] = ['axle.left.kingpinTop', 'axle.right.kingpinTop'].map(
      (id) => points.find((point) => point.id === id)?.number,
    );
    expect([a, b]).toEqual([1, 2]);
  });
});
