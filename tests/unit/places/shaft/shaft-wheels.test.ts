import { describe, expect, test } from 'vitest';
import { PLAIN_LAYOUT, resolveLayout } from '../../../../shared-math/layout/index.ts';
import { createState, poseAxle, prepareFrontEnd, steerAxle } from '../../../../shared-math/linkage/index.ts';
import {
  boxHandwheel,
  evenColumnYoke,
  firstShaft,
  routeOf,
  turningOf,
} from '../../../../shared-math/shaft/index.ts';
import { sweepTurn } from '../../../../shared-math/sweep/index.ts';
import { toDegrees } from '../../../../shared-math/units/index.ts';
import { wheelsThroughShaft } from '../../../../src-renderer/places/shaft/shaft-wheels.ts';
import { expectClose } from '../../../support/close.ts';
import { DEMONSTRATIONS } from '../../../support/demonstration-files.ts';

const SHAFTS = DEMONSTRATIONS.filter(([, { shaft }]) => shaft !== null);

describe.each(SHAFTS)('%s: the wheels through the shaft', (_, document) => {
  const layout = resolveLayout(document);
  const frontEnd = prepareFrontEnd(layout);
  const turn = sweepTurn(frontEnd, 0, 0);
  const { shaft } = document;
  if (!shaft) throw new Error('it has a shaft');
  // A quarter turn out of its best: a ripple that is felt.
  const clumsy = { ...shaft, shafts: shaft.shafts.map((piece) => ({ ...piece, clock: 55 })) };

  test.each([
    ['as drawn', shaft],
    ['clocked badly', clumsy],
  ])('%s, as the steering solved at the angle that the box sees', (_, each) => {
    const turning = turningOf(each, routeOf(each));
    if (!turning.ok) throw new Error('it turns');
    const { motion } = turning.value;
    const told = wheelsThroughShaft(frontEnd, turn, 0, 0, motion);
    if (!told) throw new Error('the wheels turn');
    const yoke = evenColumnYoke(motion, 'slowest');
    const state = createState();
    const steer = (handwheel: number) => {
      poseAxle(frontEnd, 0, 0, state);
      return steerAxle(frontEnd, handwheel, state) === 'ok' ? state.meanSteer : undefined;
    };
    let most = 0;
    const [right, left] = [turn.right.handwheel, turn.left.handwheel];
    for (let i = 0; i <= 2000; i += 1) {
      const rim = right + ((left - right) * i) / 2000;
      const box = boxHandwheel(motion, yoke, rim);
      // Past a lock there is no turn: an arm over its dead centre comes back on its other branch.
      if (box < Math.min(right, left) || box > Math.max(right, left)) continue;
      const [straight, through] = [steer(rim), steer(box)];
      if (straight !== undefined && through !== undefined)
        most = Math.max(most, Math.abs(through - straight));
    }
    expectClose(
      toDegrees(told.most),
      toDegrees(most),
      0.004 + 0.03 * toDegrees(most),
      'degrees at the wheels',
    );
    // Handwheel over steer straight ahead, by central differences.
    const h = 1e-3;
    const rate =
      ((steer(boxHandwheel(motion, yoke, h)) as number) - (steer(boxHandwheel(motion, yoke, -h)) as number)) /
      (2 * h);
    expectClose(told.ratio * rate, 1, 2e-3, 'overall ratio at the rim');
  });
});

describe('where the linkage ends before the turn', () => {
  const document = PLAIN_LAYOUT;
  const shaft = firstShaft(document);
  const turning = turningOf(shaft, routeOf(shaft));
  if (!turning.ok) throw new Error('it turns');
  const { motion } = turning.value;

  test('the plain car with a shaft begun: the wheels are off by what they can turn at most, and by no rate run on', () => {
    const frontEnd = prepareFrontEnd(resolveLayout(document));
    const turn = sweepTurn(frontEnd, 0, 0);
    const told = wheelsThroughShaft(frontEnd, turn, 0, 0, motion);
    if (!told) throw new Error('the wheels turn');
    // No more than the box is off times the quickest that any wheel turns within the solved turn, whole turn at most.
    const [first, last] = [turn.meanSteer[0] as number, turn.meanSteer[turn.count - 1] as number];
    expect(told.most).toBeGreaterThan(0);
    expect(told.most).toBeLessThan(Math.abs(last - first));
    expect(toDegrees(told.most)).toBeLessThan(15);
  });

  test('nothing where no turn is left: the linkage does not reach', () => {
    const { box } = document.steering;
    const far: typeof document = {
      ...document,
      // The link lies on the arm's line: at ride height it is at its end already.
      steering: { ...document.steering, box: { ...box, sectorTravel: 1e-9 } },
    };
    const frontEnd = prepareFrontEnd(resolveLayout(far));
    const turn = sweepTurn(frontEnd, 0, 0);
    expect(wheelsThroughShaft(frontEnd, { ...turn, count: 0 }, 0, 0, motion)).toBeUndefined();
    expect(wheelsThroughShaft(frontEnd, turn, 0, 0, motion)).toBeUndefined();
  });
});
