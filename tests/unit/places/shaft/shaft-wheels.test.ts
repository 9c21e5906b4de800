import { describe, test } from 'vitest';
import { resolveLayout } from '../../../../shared-math/layout/index.ts';
import { createState, poseAxle, prepareFrontEnd, steerAxle } from '../../../../shared-math/linkage/index.ts';
import { boxHandwheel, evenColumnYoke, routeOf, turningOf } from '../../../../shared-math/shaft/index.ts';
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
    const told = wheelsThroughShaft(turn, motion);
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
      const [straight, through] = [steer(rim), steer(boxHandwheel(motion, yoke, rim))];
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
