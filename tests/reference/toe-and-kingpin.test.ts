import { describe, expect, test } from 'vitest';
import {
  createState,
  groundOffsets,
  prepareFrontEnd,
  solveFrontEnd,
} from '../../shared-math/linkage/index.ts';
import { toeLength } from '../../shared-math/sweep/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { layoutOf } from '../support/layouts.ts';
import { camberAtHeading } from './scripts/kingpin-camber.ts';

describe('toe as a length at the tyre', () => {
  // Workshop geometry, computed: a total toe length T at diameter D is twice asin(T / 2D). Inches and degrees.
  test.each([
    [1 / 8, 26, 0.1377],
    [1 / 16, 26, 0.0689],
    [1 / 8, 28, 0.1279],
    [3 / 32, 27, 0.0995],
  ])('%d in over %d in is %d° each wheel', (total, diameter, each) => {
    // 1e-4 of a degree is 5e-5 in over 28 in.
    expectClose((2 * toeLength(each * DEGREE, (diameter / 2) * 25.4)) / 25.4, total, 1e-4);
  });

  test('one wheel at 0.15° on 24 in is 0.0628 in', () => {
    expectClose(toeLength(0.15 * DEGREE, 12), 0.0628, 1e-4);
  });
});

/** A kingpin by its angles in degrees, through (x, y) at the height of the spindle. mm. */
function half(caster: number, inclination: number, offset: number, radius: number) {
  const y = 640;
  const [tanC, tanI] = [Math.tan(caster * DEGREE), Math.tan(inclination * DEGREE)];
  return {
    kingpinTop: [-60 * tanC, y - 60 * tanI, radius + 60],
    kingpinBottom: [60 * tanC, y + 60 * tanI, radius - 60],
    wheelCentre: [0, y + offset, radius],
    camber: 0,
    toeIn: 0,
    tieRodBall: [-150, 606, radius - 40],
  };
}

const withHalf = (left: ReturnType<typeof half>) =>
  layoutOf({
    axle: { beam: 'i-beam', left, right: 'mirror' },
    steering: {
      dragLinkTo: 'left',
      dragLinkBall: [0, 484, 395],
      box: {
        sectorCentre: [-800, 484, 545],
        sectorAxis: [0, -1, 0],
        pitmanBall: [-800, 484, 395],
        ratio: 16,
        sectorTravel: 35,
        assist: 'manual',
      },
    },
  });

describe('where the kingpin meets the ground (ISO 8855 terms; values computed, inches)', () => {
  test.each([
    [13, 5, 1.1374],
    [13, 6, 1.3664],
    [13.5, 7, 1.6576],
  ])('radius %d in, caster %d°: trail %d in', (radius, caster, trail) => {
    const layout = withHalf(half(caster, 0, 70, radius * 25.4));
    expectClose(groundOffsets(layout, 'left').mechanicalTrail / 25.4, trail, 1e-4);
    expectClose(groundOffsets(layout, 'right').mechanicalTrail / 25.4, trail, 1e-4);
  });

  test.each([
    [3.5, 13, 8, 1.673],
    [3, 13, 7.25, 1.3462],
    [4, 13.5, 9, 1.8618],
  ])(
    'offset %d in, radius %d in, inclination %d°: scrub radius %d in',
    (offset, radius, inclination, scrub) => {
      const layout = withHalf(half(0, inclination, offset * 25.4, radius * 25.4));
      expectClose(groundOffsets(layout, 'left').scrubRadius / 25.4, scrub, 1e-4);
      expectClose(groundOffsets(layout, 'right').scrubRadius / 25.4, scrub, 1e-4);
    },
  );
});

describe('camber gained by steering (the spin axis turned as a vector: scripts/kingpin-camber.ts)', () => {
  /** Camber of the left wheel at a heading, degrees, by bisection on the handwheel. */
  function camberAt(caster: number, inclination: number, heading: number) {
    const frontEnd = prepareFrontEnd(withHalf(half(caster, inclination, 70, 330)));
    const state = createState();
    let [low, high] = [-700, 700];
    for (let i = 0; i < 80; i += 1) {
      const middle = (low + high) / 2;
      solveFrontEnd(frontEnd, 0, 0, middle * DEGREE, state);
      if (state.left.steer / DEGREE < heading) low = middle;
      else high = middle;
    }
    expect(state.status).toBe('ok');
    const turn = Math.atan2(state.work.turns[1] as number, state.work.turns[0] as number);
    return { camber: state.left.camber / DEGREE, turn: turn / DEGREE };
  }

  // The left wheel is the inner one in a left turn (positive heading).
  test.each([
    [6, 8, 20, 2.552],
    [6, 8, -20, -1.571],
    [6, 8, 30, 4.104],
    [6, 8, -30, -1.927],
    [6, 0, 20, 2.059],
    [0, 8, 20, 0.486],
    [0, 8, -20, 0.486],
  ])('caster %d°, inclination %d°, heading %d°: %d°', (caster, inclination, heading, camber) => {
    const found = camberAt(caster, inclination, heading);
    const scripted = camberAtHeading(caster * DEGREE, inclination * DEGREE, heading * DEGREE);
    expectClose(found.camber, scripted.camber / DEGREE, 1e-9, 'script');
    expectClose(found.turn, scripted.turn / DEGREE, 1e-9, 'script, turn');
    expectClose(found.camber, camber, 1e-3);
  });

  test('turning about the kingpin is not heading: 20.354° and 20.256° for 20° left and right', () => {
    expectClose(camberAt(6, 8, 20).turn, 20.354, 1e-3);
    expectClose(camberAt(6, 8, -20).turn, -20.256, 1e-3);
  });
});
