import { expect, test } from 'vitest';
import { resolveLayout } from '../../../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../../../shared-math/linkage/index.ts';
import { sweepTravel } from '../../../../shared-math/sweep/index.ts';
import { toDegrees } from '../../../../shared-math/units/index.ts';
import { DEMONSTRATIONS, demonstration, jobOf, printed } from '../../../support/printed.ts';

test.each(DEMONSTRATIONS)(
  '%s: the sheet has a row for each gauge station, with its toe and its way',
  async (name) => {
    const document = demonstration(name);
    const { texts } = await printed(jobOf({ document }));
    const page = texts.find(({ text }) => text === 'Read with a gauge')?.page;
    const lines = texts.filter((each) => each.page === page).map(({ text }) => text);
    const layout = resolveLayout(document);
    const { bump, rebound } = layout.travel;
    // Both ends of the travel, from the sweep: toe-in is negative steer on the left, positive on the right.
    const sweep = sweepTravel(prepareFrontEnd(layout), 'heave', -rebound, bump, 3, 0);
    const ride = sweepTravel(prepareFrontEnd(layout), 'heave', 0, 0.001, 2, 0);
    for (const row of [0, 2])
      for (const [sign, steer, straight] of [
        [-1, sweep.leftSteer, ride.leftSteer],
        [1, sweep.rightSteer, ride.rightSteer],
      ] as const) {
        const gained = sign * toDegrees((steer[row] as number) - (straight[0] as number));
        const size = Math.abs(gained).toFixed(2);
        const words = Number(size) === 0 ? `${size}°` : `${size}° ${gained > 0 ? 'toe-in' : 'toe-out'}`;
        expect(lines).toContain(words);
      }
    expect(lines).toContain('ride height');
    expect(lines.filter((line) => line === 'read')).toHaveLength(4);
    expect(lines).toContain('Turning plates');
  },
);
