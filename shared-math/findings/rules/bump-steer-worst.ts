import { toRadians } from '../../units/index.ts';
import { ballMove } from '../ball-move.ts';
import type { Finding, Rule } from '../finding.ts';
import { bestHeight } from '../height-search.ts';

const PART = 'steering.box.pitmanBall';

/** The largest steer of the wheels over the travel with the handwheel held. */
export const bumpSteerWorst: Rule = {
  name: 'bump-steer-worst',
  measures: 'Largest steer of the wheels over the travel with the handwheel held',
  judge({ heaveSummary, layout, travel }, speak): Finding[] {
    if (heaveSummary.okCount === 0) return [];
    const { value, source } = speak.limit('bumpSteerWorst');
    const worst = heaveSummary.worstBumpSteer;
    const limit = toRadians(value);
    const where = heaveSummary.worstAt >= 0 ? 'bump' : 'droop';
    const base = {
      rule: 'bump-steer-worst',
      part: PART,
      sentence: `Bump steer ${speak.angle(worst, worst < 0.0035 ? 2 : 1)} at ${speak.length(Math.abs(heaveSummary.worstAt))} of ${where}`,
      at: { heave: heaveSummary.worstAt, roll: 0, handwheel: 0 },
      limit: `limit ${speak.figure(value)}°`,
      source,
    };
    if (worst <= limit) return [{ ...base, severity: 'info', advice: '' }];
    const ball = layout.steering.box.pitmanBall;
    const mended = travel.status === 'ok' ? bestHeight(travel, ball) : undefined;
    const severity = worst > 2 * limit ? 'stop' : 'attention';
    if (!mended || mended.worst > 0.9 * worst)
      return [{ ...base, severity, advice: 'Bring the pitman ball nearer to the aim point.' }];
    const move = ballMove(layout, mended.to, speak.length);
    return [
      {
        ...base,
        severity,
        advice: `${move.words}: bump steer ${speak.angle(mended.worst, 2)}`,
        remedy: move.remedy,
      },
    ];
  },
};
