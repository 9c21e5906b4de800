import { describe, expect, test } from 'vitest';
import { VIEWS } from '../../../shared-math/drawing/index.ts';
import { type Hardpoint, hardpoints } from '../../../shared-math/layout/index.ts';
import { type Handle, HIT_RADIUS, handleAt, hasHandle } from '../../../src-renderer/board/handles.ts';
import { documentOf, PLAIN_HALF, rawLayout } from '../../support/layouts.ts';

const mirrored = hardpoints(documentOf(rawLayout()));
const point = (id: string): Hardpoint => {
  const found = mirrored.find((candidate) => candidate.id === id);
  if (!found) throw new Error(`no point ${id}`);
  return found;
};
const handle = (id: string, x: number, y: number): Handle => ({ view: 'side', point: point(id), x, y });

describe('which points a view gives a handle', () => {
  test('all of them, but from the side a mirrored far point lies behind its twin', () => {
    for (const view of VIEWS)
      for (const candidate of mirrored)
        expect(hasHandle(candidate, view)).toBe(
          !(view === 'side' && candidate.id.startsWith('axle.right.')) &&
            !(view === 'side' && candidate.id.startsWith('location.right.')),
        );
  });

  test('a right side of its own has handles in every view', () => {
    const own = hardpoints(
      documentOf(
        rawLayout({
          axle: {
            beam: 'tube',
            left: PLAIN_HALF,
            right: {
              ...PLAIN_HALF,
              kingpinTop: [-7, -631, 395],
              kingpinBottom: [7, -649, 265],
              wheelCentre: [0, -712, 330],
              tieRodBall: [-150, -606, 292],
            },
          },
        }),
      ),
    );
    const right = own.find(({ id }) => id === 'axle.right.wheelCentre') as Hardpoint;
    expect(hasHandle(right, 'side')).toBe(true);
  });
});

describe('which handle a pointer hits', () => {
  const handles = [
    handle('axle.left.kingpinTop', 100, 100),
    handle('axle.left.kingpinBottom', 100, 118),
    handle('axle.left.tieRodBall', 160, 100),
  ];

  test('is at least twelve pixels wide to either side', () => {
    expect(HIT_RADIUS).toBeGreaterThanOrEqual(12);
    for (const [dx, dy] of [
      [12, 0],
      [-12, 0],
      [0, -12],
      [8, 8],
    ] as const)
      expect(handleAt(handles, [160 + dx, 100 + dy], HIT_RADIUS, null)?.point.id).toBe(
        'axle.left.tieRodBall',
      );
    expect(handleAt(handles, [160 + HIT_RADIUS + 1, 100], HIT_RADIUS, null)).toBeUndefined();
  });

  test('is the nearer of two whose reach overlaps', () => {
    expect(handleAt(handles, [100, 107], HIT_RADIUS, null)?.point.id).toBe('axle.left.kingpinTop');
    expect(handleAt(handles, [100, 112], HIT_RADIUS, null)?.point.id).toBe('axle.left.kingpinBottom');
  });

  test('is the steering’s where two lie at one spot, and the chosen one before that', () => {
    const both = [handle('axle.left.kingpinTop', 50, 50), handle('steering.dragLinkBall', 51, 50)];
    expect(handleAt(both, [50, 50], HIT_RADIUS, null)?.point.id).toBe('steering.dragLinkBall');
    expect(handleAt(both, [50, 50], HIT_RADIUS, 'axle.left.kingpinTop')?.point.id).toBe(
      'axle.left.kingpinTop',
    );
  });
});
