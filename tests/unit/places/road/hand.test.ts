import { describe, expect, test } from 'vitest';
import { type LayoutDocument, withValue } from '../../../../shared-math/layout/index.ts';
import { HandOnAxle } from '../../../../src-renderer/places/road/hand.ts';
import type { FromRideWorker, Hold, Moved } from '../../../../src-renderer/places/road/ride-messages.ts';
import { documentOf, rawLayout } from '../../../support/layouts.ts';

const DOCUMENT = documentOf(rawLayout({}));
const AXLE: Hold = { held: 'axle', y: 0, z: 330, sideways: false };
const LEFT: Hold = { held: 'left', y: 700, z: 330, sideways: false };

function moved(message: FromRideWorker | undefined): Moved {
  if (message?.kind !== 'moved') throw new Error(`not moved: ${JSON.stringify(message)}`);
  return message;
}

function taken(hold: Hold, document: LayoutDocument = DOCUMENT, heave = 0): HandOnAxle {
  const hand = new HandOnAxle();
  expect(hand.take({ kind: 'take', turn: 1, document, hold, heave, roll: 0 })).toBeUndefined();
  return hand;
}

/** Holds the hand so far up, or opens it, for some s at so many frames a second. */
function hold(hand: HandOnAxle, up: number | null, seconds: number, pace = 60, still = false): Moved {
  let last: FromRideWorker | undefined;
  const to = up === null ? null : { up, over: 0 };
  for (let frame = 0; frame < Math.round(seconds * pace); frame += 1)
    last = hand.pull({ kind: 'pull', turn: 1, to, seconds: 1 / pace, still });
  return moved(last);
}

describe('a hand on the axle', () => {
  test('raises it, less than the hand goes; a stiffer spring holds back more', () => {
    const stiff = withValue(DOCUMENT, 'ride', { spring: { kind: 'rate', rate: 60 } });
    const soft = withValue(DOCUMENT, 'ride', { spring: { kind: 'rate', rate: 12 } });
    const [rise, held] = [soft, stiff].map((document) => hold(taken(AXLE, document), 20, 3).heave) as [
      number,
      number,
    ];
    // Springs in a row: an arm of 90 N/mm on twice the rate of a side.
    expect(rise).toBeCloseTo((20 * 90) / (90 + 2 * 12), 1);
    expect(held).toBeCloseTo((20 * 90) / (90 + 2 * 60), 1);
  });

  test('on one tyre rolls it, that wheel up', () => {
    const { heave, roll } = hold(taken(LEFT), 20, 3);
    expect(heave).toBeGreaterThan(1);
    expect(roll).toBeGreaterThan(0.3);
  });

  test('lets go, and the car comes to rest at ride height', () => {
    const hand = taken(LEFT);
    hold(hand, 30, 1);
    expect(hold(hand, null, 0.1).rests).toBe(false);
    const { rests, heave, roll } = hold(hand, null, 8);
    expect(rests).toBe(true);
    expect(Math.abs(heave)).toBeLessThan(0.02);
    expect(Math.abs(roll)).toBeLessThan(0.002);
  });

  test('makes the same way at any pace of the page', () => {
    const ways = [30, 60, 144].map((pace) => hold(taken(LEFT), 25, 0.5, pace));
    for (const way of ways) {
      // The engine's step is the same; the last one may not be due yet.
      expect(way.heave).toBeCloseTo((ways[0] as Moved).heave, 1);
      expect(way.roll).toBeCloseTo((ways[0] as Moved).roll, 2);
    }
    const again = hold(taken(LEFT), 25, 0.5, 60);
    expect(again).toEqual(ways[1]);
  });

  test('takes hold of a posed car where it stands', () => {
    expect(hold(taken(AXLE, DOCUMENT, 25), 0, 1 / 60).heave).toBeGreaterThan(18);
  });

  test('goes to the rest at once where only that is wanted', () => {
    const hand = taken(AXLE);
    const { heave } = hold(hand, 20, 1 / 60, 60, true);
    expect(heave).toBeCloseTo(hold(taken(AXLE), 20, 5).heave, 1);
    expect(hold(hand, null, 1 / 60, 60, true).rests).toBe(true);
  });

  test('says why a car cannot be pulled, and passes over what belongs to another hold', () => {
    const heavy = withValue(DOCUMENT, 'ride', { unsprungMass: 9000 });
    const hand = new HandOnAxle();
    const refused = hand.take({
      kind: 'take',
      turn: 1,
      document: heavy,
      hold: AXLE,
      heave: 0,
      roll: 0,
    });
    expect(refused?.kind).toBe('not-held');
    expect(refused?.kind === 'not-held' && refused.reason).toMatch(/nothing is left for the springs/);
    expect(taken(AXLE).pull({ kind: 'pull', turn: 2, to: null, seconds: 0.1, still: false })).toBeUndefined();
  });
});
