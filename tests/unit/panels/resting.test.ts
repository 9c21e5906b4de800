import { expect, test } from 'vitest';
import { hardpoints, originOf } from '../../../shared-math/layout/index.ts';
import { restsOnGuesses } from '../../../src-renderer/panels/findings/resting.ts';
import { documentOf, rawLayout } from '../../support/layouts.ts';

function rests(origins: Record<string, string>, part: string): boolean {
  const document = documentOf(rawLayout({ origins }));
  const points = hardpoints(document);
  const guessed = new Set(
    points.flatMap((point) => (originOf(document, point) === 'guess' ? [point.id] : [])),
  );
  return restsOnGuesses(points, guessed)(part);
}

const TAPED = {
  'axle.left.kingpinTop': 'tape',
  'axle.left.kingpinBottom': 'tape',
  'axle.left.tieRodBall': 'tape',
  'location.left.framePivot': 'photo',
  'steering.dragLinkBall': 'plan',
};

test('a verdict waits while the point that it is about, or half of what decides the steering, is guessed', () => {
  expect(rests({}, 'steering.dragLinkBall')).toBe(true);
  // Five of seven known; box and pitman ball guessed.
  expect(rests(TAPED, 'steering.dragLinkBall')).toBe(false);
  expect(rests(TAPED, 'obstacles.0')).toBe(false);
  expect(rests(TAPED, 'steering.box.pitmanBall')).toBe(true);
  // The mirror image of a taped point is as well known.
  expect(rests(TAPED, 'axle.right.kingpinTop')).toBe(false);
  // Three of seven known.
  const { 'axle.left.kingpinTop': _, 'axle.left.kingpinBottom': __, ...fewer } = TAPED;
  expect(rests(fewer, 'obstacles.0')).toBe(true);
});
