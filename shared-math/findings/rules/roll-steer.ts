import type { Layout } from '../../layout/index.ts';
import { prepareFrontEnd } from '../../linkage/index.ts';
import { summariseTravel, sweepTravel } from '../../sweep/index.ts';
import { toRadians } from '../../units/index.ts';
import type { Finding, Rule } from '../finding.ts';

/** mm by which the pitman ball is tried higher, to see which way lessens the roll steer. */
const TRIED = 10;

/** Slope of the mean steer over roll with the pitman ball that much higher, all else as drawn. */
function slopeRaised(layout: Layout, by: number): number {
  const { steering } = layout;
  const [x, y, z] = steering.box.pitmanBall;
  const box = { ...steering.box, pitmanBall: [x, y, z + by] as const };
  const raised = prepareFrontEnd({ ...layout, steering: { ...steering, box } });
  const full = toRadians(layout.travel.roll);
  return summariseTravel(sweepTravel(raised, 'roll', -full, full, 5, 0)).slopeAtRide;
}

/**
 * Which way the wheels steer as the car leans. In a left turn the frame leans right: against it the right wheel is up,
 * which is negative roll. Wheels that then steer right (negative) turn less than asked: roll understeer, slope above 0.
 */
export const rollSteer: Rule = {
  name: 'roll-steer',
  measures: 'Steer of the wheels for each degree of roll, and whether it adds to the turn',
  judge({ rollSummary, layout }, speak): Finding[] {
    if (rollSummary.okCount < 2 || layout.travel.roll === 0) return [];
    const { value, source } = speak.limit('rollOversteer');
    const slope = rollSummary.slopeAtRide;
    const over = slope < -toRadians(value) / toRadians(1);
    const raise = over && slopeRaised(layout, TRIED) > slopeRaised(layout, -TRIED);
    const size = `${speak.number(Math.abs(slope), 2, [value])}° for each degree`;
    const kind = Math.abs(slope) < 0.005 ? 'neutral' : slope > 0 ? 'understeer' : 'oversteer';
    return [
      {
        rule: 'roll-steer',
        severity: over ? 'attention' : 'info',
        part: 'steering.box.pitmanBall',
        sentence: kind === 'neutral' ? 'Leaning hardly steers the wheels' : `Roll ${kind} ${size}`,
        limit: `limit ${speak.figure(value)}° of roll oversteer for each degree`,
        source: `${source}; terms as ISO 8855`,
        advice: over
          ? `${raise ? 'Raise' : 'Lower'} the pitman ball: leaning then turns the wheels less far in. Check the bump steer again afterwards.`
          : '',
      },
    ];
  },
};
