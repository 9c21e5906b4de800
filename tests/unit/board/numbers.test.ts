import { expect, test } from 'vitest';
import { VIEWS } from '../../../shared-math/drawing/index.ts';
import { hardpoints, numberedPoints, pointNumbers } from '../../../shared-math/layout/index.ts';
import { sheetModelOf } from '../../../src-main/output/pages/sheet-model.ts';
import { type Handle, hasHandle } from '../../../src-renderer/board/handles.ts';
import { cornersOf, numbersOf } from '../../../src-renderer/board/overlay-picture.ts';
import { DEMONSTRATIONS } from '../../support/demonstration-files.ts';
import { jobOf } from '../../support/printed.ts';

test.each(DEMONSTRATIONS)('%s: the board numbers its points as the sheet does', (_, document) => {
  const onBoard = pointNumbers(document);
  for (const { id, number } of sheetModelOf(jobOf({ document })).points)
    expect(onBoard.get(id), id).toBe(number);
  // Far apart on the screen, each handle has its own.
  for (const view of VIEWS) {
    const shown = hardpoints(document).filter((point) => hasHandle(point, view));
    const handles: Handle[] = shown.map((point, i) => ({ view, point, x: 40 * i, y: 0 }));
    const numbers = new Map(numberedPoints(document).map(({ id, number }) => [id, String(number)]));
    expect(numbersOf(handles, onBoard)).toEqual(shown.map(({ id }) => numbers.get(id)));
  }
});

test('points on one spot of a view have their numbers together, once; in another view each its own', () => {
  const [, document] = DEMONSTRATIONS[0] as (typeof DEMONSTRATIONS)[number];
  const [a, b, c] = numberedPoints(document).filter(({ twin }) => !twin);
  if (!a || !b || !c) throw new Error('this car has fewer than three points that are not mirrored');
  const at = (point: Handle['point'], view: Handle['view'], x: number): Handle => ({ view, point, x, y: 0 });
  const numbers = pointNumbers(document);
  expect(
    numbersOf([at(b, 'side', 0), at(a, 'side', 1), at(c, 'side', 200), at(a, 'top', 0)], numbers),
  ).toEqual([[a.number, b.number].sort((p, q) => p - q).join(', '), '', String(c.number), String(a.number)]);
});

test('numbers of handles that lie close stand to corners that keep them apart, where there are enough', () => {
  const [, document] = DEMONSTRATIONS[0] as (typeof DEMONSTRATIONS)[number];
  const points = numberedPoints(document).slice(0, 4);
  const handles = points.map((point, i): Handle => ({ view: 'side', point, x: 9 * i, y: 0 }));
  const words = ['1', '2', '3', '4'];
  const corners = cornersOf(handles, words, 1);
  const boxes = corners.map((corner, i) => {
    const [right, down] = corner as readonly [number, number];
    const near = 9 * i + 7 * right;
    return {
      left: Math.min(near, near + 5.8 * right),
      right: Math.max(near, near + 5.8 * right),
      middle: 7 * down,
    };
  });
  boxes.forEach((a, i) => {
    for (const b of boxes.slice(i + 1))
      expect(a.left > b.right || a.right < b.left || Math.abs(a.middle - b.middle) > 11).toBe(true);
  });
  // A handle without a number takes no room.
  expect(cornersOf(handles, ['', '', '', '4'], 1)).toEqual([undefined, undefined, undefined, [1, -1]]);
});

test('a number without room for it waits until it is looked at from closer by, unless it is the chosen one’s', () => {
  const [, document] = DEMONSTRATIONS[0] as (typeof DEMONSTRATIONS)[number];
  const points = numberedPoints(document).slice(0, 9);
  const words = points.map(({ number }) => String(number));
  const heap = (apart: number) =>
    points.map(
      (point, i): Handle => ({ view: 'side', point, x: apart * (i % 3), y: apart * Math.floor(i / 3) }),
    );
  const close = cornersOf(heap(5), words, 1);
  expect(close.filter((corner) => corner === undefined).length).toBeGreaterThan(0);
  expect(cornersOf(heap(40), words, 1)).not.toContain(undefined);
  const hidden = close.indexOf(undefined);
  expect(cornersOf(heap(5), words, 1, (i) => i === hidden)[hidden]).toBeDefined();
});

test('a number stands off the other handles where a corner does', () => {
  const [, document] = DEMONSTRATIONS[0] as (typeof DEMONSTRATIONS)[number];
  const [point, other] = numberedPoints(document);
  // The usual corner, up to the right, is taken by another handle.
  const handles: Handle[] = [
    { view: 'side', point: point!, x: 0, y: 0 },
    { view: 'side', point: other!, x: 9, y: -7 },
  ];
  expect(cornersOf(handles, ['1', ''], 1)[0]).toEqual([-1, -1]);
});
