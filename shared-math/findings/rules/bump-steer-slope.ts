import { MM_PER_INCH, toRadians } from '../../units/index.ts';
import type { Finding, Rule } from '../finding.ts';

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
    return [
      {
        rule: 'bump-steer-slope',
        severity: over ? (slope > 3 * limit ? 'stop' : 'attention') : 'info',
        part: 'steering.box.pitmanBall',
        sentence: `Bump steer starts at ${speak.perInch(slope, [limit])}`,
        limit: `limit ${speak.setPerInch(limit)}`,
        source,
        advice: over ? 'Bring the pitman ball onto the zero-slope line.' : '',
      },
    ];
  },
};
