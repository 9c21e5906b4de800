import { describe, expect, test } from 'vitest';
import { bodiesOf } from '../../../shared-math/clearance/index.ts';
import { drawLayout } from '../../../shared-math/drawing/index.ts';
import { hardpoints, LATERAL_FACTS, readLayout, resolveLayout } from '../../../shared-math/layout/index.ts';
import { createState, poseAxle } from '../../../shared-math/linkage/index.ts';
import { BIND_SHOWN_FROM } from '../../../shared-math/tolerances.ts';
import { freedomNamed } from '../../../shared-math/tune/freedoms.ts';
import { pointGroups } from '../../../src-renderer/panels/points/point-groups.ts';
import { DEGREE } from '../../support/close.ts';
import { documentOf, frontEndOf, LATERALS, rawLayout } from '../../support/layouts.ts';

const SPRING = LATERALS['fixed-spring'];
const document = documentOf(rawLayout({ lateral: SPRING }));

describe('a spring across with one eye fixed', () => {
  test('has its points: the eye with the half of the axle on its side, the clamp on the frame', () => {
    const points = hardpoints(document).filter(({ id }) => id.startsWith('lateral.'));
    expect(points.map(({ id, carrier }) => [id, carrier])).toEqual([
      ['lateral.eye', 'axle-right'],
      ['lateral.clamp', 'frame'],
    ]);
    const group = pointGroups(hardpoints(document)).find(({ title }) => title === 'Transverse spring');
    expect(group?.rows).toHaveLength(2);
    expect(pointGroups(hardpoints(document)).map(({ title }) => title)).not.toContain('Lateral bar');
  });

  test('draws the axle to its own side in bump, off it in droop, and binds nowhere', () => {
    const frontEnd = frontEndOf({ lateral: SPRING });
    const state = createState();
    poseAxle(frontEnd, 60, 0, state);
    expect(state.axle.y).toBeLessThan(-8);
    expect(state.bind).toBeLessThan(BIND_SHOWN_FROM);
    poseAxle(frontEnd, -60, 0, state);
    expect(state.axle.y).toBeGreaterThan(8);
    poseAxle(frontEnd, 0, 3 * DEGREE, state);
    expect(state.bind).toBeLessThan(BIND_SHOWN_FROM);
  });

  test('is drawn once, and judged for room with both of its halves', () => {
    const layout = resolveLayout(document);
    const drawn = drawLayout(layout).parts.filter(({ id }) => id === 'transverse-spring');
    expect(drawn).toHaveLength(1);
    const body = bodiesOf(layout).find(({ id }) => id === 'transverse-spring');
    expect(body?.parts).toHaveLength(2);
    expect(body?.hardpoint).toBe('lateral.eye');
  });

  test('steeper than it is wide is refused, by its place', () => {
    const steep = readLayout(rawLayout({ lateral: { ...SPRING, eye: [0, -100, 380] } }));
    expect(steep.ok ? '' : `${steep.failure.path}: ${steep.failure.reason}`).toBe(
      'lateral.eye: must stand further out from clamp than above or below it: the spring lies across the car',
    );
    const none = readLayout(rawLayout({ lateral: { ...SPRING, eye: SPRING['clamp'] } }));
    expect(none.ok ? '' : none.failure.path).toBe('lateral.clamp');
  });

  test('leaves a tune no bar to move, and says why', () => {
    expect(freedomNamed('bar-axle-up')?.absent(document)).toBe(
      'the fixed eye of the spring holds the axle sideways: there is no lateral bar to move',
    );
    expect(Object.keys(LATERAL_FACTS)).toContain('fixed-spring');
  });
});
