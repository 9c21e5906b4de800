import { MM_PER_INCH, toRadians } from '../../units/index.ts';
import type { Finding, Rule } from '../finding.ts';
import { steerWay } from '../steer-way.ts';

/** rad per mm. Less is left over from rounding, and has no direction. */
const NONE = toRadians(1e-6) / MM_PER_INCH;

/** How fast the wheels begin to steer as the axle leaves ride height. */
export const bumpSteerSlope: Rule = {
  name: 'bump-steer-slope',
  measures: 'Steer of the wheels for each inch of travel at ride height',
  judge({ heaveSummary }, speak): Finding[] {
    if (heaveSummary.okCount < 2) return [];
    const { value, source } = speak.limit('bumpSteerSlope');
    const limit = toRadians(value) / MM_PER_INCH;
    const slope = Math.abs(heaveSummary.slopeAtRide);
    const over = slope > limit;
    const way = slope < NONE ? '' : steerWay(heaveSummary.slopeAtRide);
    return [
      {
        rule: 'bump-steer-slope',
        severity: over ? (slope > 3 * limit ? 'stop' : 'attention') : 'info',
        part: 'steering.box.pitmanBall',
        sentence: `Bump steer starts at ${speak.perInch(slope, [limit])}${way && ` ${way} in bump`}`,
        limit: `limit ${speak.setPerInch(limit)}`,
        source,
        advice: over ? 'Bring the pitman ball onto the zero-slope line.' : '',
      },
    ];
  },
};
