import { expect, test } from 'vitest';
import { VIEWS } from '../../../shared-math/drawing/index.ts';
import { hardpoints, numberedPoints, pointNumbers } from '../../../shared-math/layout/index.ts';
import { sheetModelOf } from '../../../src-main/output/pages/sheet-model.ts';
import { type Handle, hasHandle } from '../../../src-renderer/board/handles.ts';
import { numbersOf } from '../../../src-renderer/board/overlay-picture.ts';
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
