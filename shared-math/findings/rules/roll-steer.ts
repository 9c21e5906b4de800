import { toRadians } from '../../units/index.ts';
import type { Finding, Rule } from '../finding.ts';

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
    const size = `${speak.number(Math.abs(slope), 2)}° for each degree`;
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
          ? 'Leaning turns the wheels further in. Lower bars or a shorter drag link end change it.'
          : '',
      },
    ];
  },
};
