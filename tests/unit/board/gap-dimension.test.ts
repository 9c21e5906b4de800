import { describe, expect, test } from 'vitest';
import { drawLayout, project, VIEWS, type View } from '../../../shared-math/drawing/index.ts';
import type { Point } from '../../../shared-math/geometry/points.ts';
import { resolveLayout } from '../../../shared-math/layout/index.ts';
import { bodyUnder, drawnBodies, isWithin, nameSpot } from '../../../src-renderer/board/body-spots.ts';
import { gapDimension, viewsOfGap } from '../../../src-renderer/board/gap-dimension.ts';
import type { ShownGap } from '../../../src-renderer/document/clearances.svelte.ts';
import { documentOf, rawLayout } from '../../support/layouts.ts';

const ENGINE = {
  kind: 'box',
  name: 'Engine',
  role: 'engine',
  centre: [-560, 0, 640],
  size: [600, 440, 400],
  mirrored: false,
};
const document = documentOf(rawLayout({ obstacles: [ENGINE] }));

const gapFrom = (from: Point, to: Point, over: Partial<ShownGap> = {}): ShownGap => ({
  document,
  pose: { heave: 0, roll: 0, handwheel: 0 },
  from,
  to,
  distance: Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]),
  words: 'drag link to engine',
  parts: ['drag-link', 'obstacle-0'],
  under: true,
  ...over,
});

function drawn(gap: ShownGap | undefined, scale = 1, shown: readonly View[] = VIEWS) {
  return gapDimension({
    gap,
    shown,
    weight: 1,
    onBoard: (_, [right, down]) => [right * scale, down * scale],
    length: (mm) => `${mm.toFixed(1)} mm`,
  });
}

describe('the gap between two parts', () => {
  test('is drawn in the views that show its true length', () => {
    expect(viewsOfGap(gapFrom([0, 0, 0], [0, 0, 10]), VIEWS)).toEqual(['side', 'front']);
    expect(viewsOfGap(gapFrom([0, 0, 0], [10, 0, 0]), VIEWS)).toEqual(['side', 'top']);
    expect(viewsOfGap(gapFrom([0, 0, 0], [0, 10, 0]), VIEWS)).toEqual(['top', 'front']);
  });

  test('askew in all views, is drawn in the one that shows most of it', () => {
    expect(viewsOfGap(gapFrom([0, 0, 0], [10, 9, 8]), VIEWS)).toEqual(['top']);
    expect(viewsOfGap(gapFrom([0, 0, 0], [10, 0, 0]), ['front'])).toEqual(['front']);
  });

  test('has its arrows outside where it is too small for them, both pointing at it', () => {
    const { lines, marks, notes } = drawn(gapFrom([-500, 0, 600], [-500, 0, 610]), 1, ['side']);
    expect(lines).toHaveLength(4);
    const tails = [lines[0], lines[2]].map((line) => (line?.points ?? []).slice(0, 2));
    const [, from] = project('side', [-500, 0, 600]);
    const [, to] = project('side', [-500, 0, 610]);
    expect(tails[0]?.[1]).toBeCloseTo(from + 22, 6);
    expect(tails[1]?.[1]).toBeCloseTo(to - 22, 6);
    expect(marks).toHaveLength(2);
    expect(notes.map(({ lines: text }) => text.map((each) => each.text))).toEqual([
      ['10.0 mm', 'drag link to engine'],
    ]);
  });

  test('has its arrows inside where there is room', () => {
    const { lines } = drawn(gapFrom([-500, 0, 600], [-500, 0, 700]), 1, ['side']);
    const ends = lines.flatMap(({ points }) => [...points].filter((_, i) => i % 2 === 1));
    expect(Math.min(...ends)).toBeGreaterThanOrEqual(-700);
    expect(Math.max(...ends)).toBeLessThanOrEqual(-600);
  });

  test('that is none is a cross and a word, and a gap in order is told in another ink', () => {
    const hit = drawn(gapFrom([0, 0, 100], [0, 0, 100], { distance: -4 }));
    expect(hit.lines).toEqual([]);
    expect(new Set(hit.marks.map(({ kind }) => kind))).toEqual(new Set(['cross']));
    expect(hit.notes[0]?.lines[0]?.text).toBe('hits');
    const twice = drawn(gapFrom([0, 0, 0], [0, 0, 10]));
    expect(twice.notes.map(({ lines }) => lines.map(({ text }) => text))).toEqual([
      ['10.0 mm', 'drag link to engine'],
      ['10.0 mm'],
    ]);
    expect(drawn(gapFrom([0, 0, 0], [0, 0, 0.01])).notes[0]?.lines[0]?.text).toBe('touches');
    const clear = drawn(gapFrom([0, 0, 0], [0, 0, 50], { under: false }));
    expect(new Set(clear.lines.map(({ ink }) => ink))).toEqual(new Set(['clear']));
    expect(drawn(undefined)).toEqual({ lines: [], marks: [], notes: [] });
  });
});

describe('what the pointer is over', () => {
  const bodies = drawnBodies(drawLayout(resolveLayout(document)));

  test('is the body whose outline holds the place, in each view', () => {
    for (const view of VIEWS) {
      expect(bodyUnder(bodies, view, project(view, [-560, 0, 640]))).toBe('obstacles.0');
      expect(bodyUnder(bodies, view, project(view, [-200, 300, 900]))).toBeUndefined();
    }
    expect(nameSpot(bodies, 'obstacles.0', 'side')).toEqual([560, -840]);
    expect(nameSpot(bodies, 'obstacles.1', 'side')).toBeUndefined();
  });

  test('by the even-odd rule, notched outlines too', () => {
    const notched = [0, 0, 10, 0, 10, 10, 5, 4, 0, 10];
    expect(isWithin(notched, [5, 2])).toBe(true);
    expect(isWithin(notched, [5, 8])).toBe(false);
    expect(isWithin([], [0, 0])).toBe(false);
  });
});
