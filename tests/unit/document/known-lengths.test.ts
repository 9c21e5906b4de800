import { describe, expect, test } from 'vitest';
import { resolveLayout } from '../../../shared-math/layout/index.ts';
import { knownLengths, withArmHeld } from '../../../src-renderer/document/known-lengths.ts';
import { CROSS_STEER, documentOf, PLAIN_HALF, rawLayout } from '../../support/layouts.ts';
import { plainValue } from '../../support/survey-peer.ts';
import { pointsOf } from '../../support/surveys.ts';

const CARS = {
  'side steer': documentOf(rawLayout()),
  'cross steer': documentOf(rawLayout({ steering: CROSS_STEER })),
  'sides apart': documentOf(
    rawLayout({
      axle: {
        beam: 'tube',
        left: PLAIN_HALF,
        right: {
          ...PLAIN_HALF,
          kingpinTop: [-9, -630, 396],
          kingpinBottom: [6, -648, 266],
          wheelCentre: [0, -712, 330],
          tieRodBall: [-148, -604, 293],
        },
      },
    }),
  ),
};

/** What the row of a survey that is the same length comes to, by the words of the contract. */
function byTheContract(document: (typeof CARS)[keyof typeof CARS], id: string): number | undefined {
  const points = pointsOf(document);
  const value = (row: object) => plainValue({ id: 'x', value: 1, ...row } as never, points, points);
  const side = document.steering.dragLinkTo;
  switch (id) {
    case 'drag-link':
      return value({ kind: 'straight', from: 'steering.dragLinkBall', to: 'steering.box.pitmanBall' });
    case 'tie-rod':
      return value({ kind: 'straight', from: 'axle.left.tieRodBall', to: 'axle.right.tieRodBall' });
    case 'pitman-arm':
      return value({ kind: 'sector-arm', of: 'steering.box.pitmanBall' });
    case 'steering-arm':
      return value({ kind: 'arm', of: 'steering.dragLinkBall', side });
    case 'caster-left':
    case 'caster-right':
      return value({ kind: 'caster', side: id.endsWith('left') ? 'left' : 'right' });
    case 'inclination-left':
    case 'inclination-right':
      return value({ kind: 'inclination', side: id.endsWith('left') ? 'left' : 'right' });
  }
  return undefined;
}

describe.each(Object.entries(CARS))('%s', (_, document) => {
  test.each(knownLengths(document).map((known) => [known.id, known] as const))(
    '%s reads what the tape would and takes what is typed',
    (id, known) => {
      const drawn = known.read(resolveLayout(document));
      const contract = byTheContract(document, id);
      if (contract !== undefined) expect(drawn).toBeCloseTo(contract, 6);
      const wanted = drawn + (known.unit === 'length' ? 12.5 : 1.25);
      const changed = documentOf(known.withValue(document, wanted));
      expect(known.read(resolveLayout(changed))).toBeCloseTo(wanted, 6);
      const again = byTheContract(changed, id);
      if (again !== undefined) expect(again).toBeCloseTo(wanted, 6);
      // No other known length changes with the arms and rods themselves.
      if (known.unit === 'length')
        for (const other of knownLengths(document).filter(({ unit }) => unit === 'angle'))
          expect(other.read(resolveLayout(changed))).toBeCloseTo(other.read(resolveLayout(document)), 9);
    },
  );

  test('the pitman ball, moved with its arm held, takes the box along', () => {
    const arm = knownLengths(document).find(({ id }) => id === 'pitman-arm')!;
    const moved = withArmHeld(document, [-790, 470, 400]);
    expect(moved.steering.box.pitmanBall).toEqual([-790, 470, 400]);
    expect(arm.read(resolveLayout(moved))).toBeCloseTo(arm.read(resolveLayout(document)), 9);
  });
});
