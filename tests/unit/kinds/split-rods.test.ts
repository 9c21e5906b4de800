import { describe, expect, test } from 'vitest';
import { bodiesOf } from '../../../shared-math/clearance/index.ts';
import { drawLayout } from '../../../shared-math/drawing/index.ts';
import { analyse, findings } from '../../../shared-math/findings/index.ts';
import { resolveLayout } from '../../../shared-math/layout/index.ts';
import { createState, poseAxle, prepareFrontEnd } from '../../../shared-math/linkage/index.ts';
import { needsOf } from '../../../shared-math/shelf/index.ts';
import { BIND_SHOWN_FROM } from '../../../shared-math/tolerances.ts';
import { DEGREE, expectClose } from '../../support/close.ts';
import { documentOf, LOCATIONS, layoutOf, PLAIN_HALF, rawLayout } from '../../support/layouts.ts';

const SPLIT = LOCATIONS['split-rods'];
const TUBE = { axle: { beam: 'tube', left: PLAIN_HALF, right: 'mirror' } };
const pivot = [-1040, 330, 320] as const;

describe('split radius rods', () => {
  test('swing the axle about their balls: the path of a stiff triangle, by trigonometry', () => {
    // Seen from the side the ball stands still and the axle's centre runs a circle about it. Closed form.
    const layout = layoutOf({ location: SPLIT });
    const state = createState();
    const [back, low] = [-pivot[0], 330 - pivot[2]];
    for (const heave of [-75, 40, 75]) {
      expect(poseAxle(prepareFrontEnd(layout), heave, 0, state)).toBe(true);
      const radius = Math.hypot(back, low);
      expectClose(state.axle.x, Math.sqrt(radius ** 2 - (low + heave) ** 2) - back, 1e-9, `x at ${heave}`);
      const turned = Math.asin((low + heave) / radius) - Math.asin(low / radius);
      expectClose(state.axle.pitch, -turned, 1e-12, `pitch at ${heave}`);
    }
  });

  test('twist an I-beam in roll, and a tube makes them give: about y · sin(roll) at the balls', () => {
    const state = createState();
    poseAxle(prepareFrontEnd(layoutOf({ location: SPLIT })), 0, 3 * DEGREE, state);
    expect(state.bind, 'an I-beam').toBeLessThan(BIND_SHOWN_FROM);
    expectClose(
      Math.abs(state.axle.twist),
      2 * Math.asin((330 / 1040) * Math.sin(3 * DEGREE)),
      2e-4,
      'twist',
    );
    poseAxle(prepareFrontEnd(layoutOf({ location: SPLIT, ...TUBE })), 0, 3 * DEGREE, state);
    expectClose(state.bind, 330 * Math.sin(3 * DEGREE), 0.5, 'a tube');
  });

  test('on a tube are found to bind, with what helps', () => {
    const found = (over: object) =>
      findings(analyse(layoutOf({ location: SPLIT, ...over })), { unit: 'mm', fraction: 16 }).find(
        ({ rule }) => rule === 'bind-in-roll',
      );
    expect(found(TUBE)?.severity).toBe('stop');
    expect(found(TUBE)?.advice).toMatch(/^A tube does not twist: use an I-beam/);
    expect(found({})?.severity).toBe('info');
  });

  test('are drawn, judged for room and listed as one stout rod each side', () => {
    const layout = resolveLayout(documentOf(rawLayout({ location: SPLIT })));
    const drawn = drawLayout(layout).parts.filter(({ id }) => id.startsWith('radius-rod'));
    expect(drawn.map(({ name }) => name)).toEqual(['Left radius rod', 'Right radius rod']);
    const rods = bodiesOf(layout).filter(({ id }) => id.startsWith('radius-rod'));
    expect(rods.map(({ hardpoint }) => hardpoint)).toEqual([
      'location.left.framePivot',
      'location.right.framePivot',
    ]);
    // Usual 32 mm outside (common practice, no published source), and as given.
    const need = (over: object) =>
      needsOf(layoutOf({ location: SPLIT, ...over }), { unit: 'mm', fraction: 16 }).find(({ words }) =>
        words.startsWith('Radius rod end'),
      );
    expect(need({})).toMatchObject({ count: 2, wanted: { kind: 'rod-end', tube: 32 } });
    expect(need({ diameters: { rods: 38 } })).toMatchObject({ wanted: { tube: 38 } });
  });
});
