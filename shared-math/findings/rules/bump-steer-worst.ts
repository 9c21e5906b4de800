import { aimAtPlane, judgedPlane, worstBumpSteerAt } from '../../aim/index.ts';
import { toRadians } from '../../units/index.ts';
import type { Analysis } from '../analysis.ts';
import { ballMove } from '../ball-move.ts';
import type { Finding, Rule } from '../finding.ts';
import { bestHeight } from '../height-search.ts';
import { steerWay } from '../steer-way.ts';

const PART = 'steering.box.pitmanBall';

/** rad. Less than this no reading of the angle shows. */
const NONE = toRadians(0.005);

/** Share of the way to the aim point that is tried, to see whether going there helps. */
const STEP = 0.1;

/** What is left to do where no height of the pitman ball mends it. */
function elsewhere({ aim, frontEnd, layout, travel }: Analysis, worst: number): string {
  const { dragLinkBall, box } = layout.steering;
  const { free, kept } = judgedPlane(frontEnd);
  const ball = box.pitmanBall;
  const spot = aim.ok ? aimAtPlane(aim.value, kept, ball[kept]) : undefined;
  if (spot) {
    const along = free[0];
    if ((spot[along] - dragLinkBall[along]) * (ball[along] - dragLinkBall[along]) < 0)
      return 'Put the box on the other side of the steering arm ball, where the aim point lies, or run the drag link the other way.';
    const step: [number, number, number] = [ball[0], ball[1], ball[2]];
    for (const axis of free) step[axis] += STEP * (spot[axis] - ball[axis]);
    if (worstBumpSteerAt(travel, step) < worst) return 'Bring the pitman ball nearer to the aim point.';
  }
  return 'Use Tune to move the box up and along together: the height of the pitman ball alone does not bring it down.';
}

/** The largest steer of the wheels over the travel with the handwheel held. */
export const bumpSteerWorst: Rule = {
  name: 'bump-steer-worst',
  measures: 'Largest steer of the wheels over the travel with the handwheel held',
  judge(analysis, speak): Finding[] {
    const { heaveSummary, layout, travel } = analysis;
    if (heaveSummary.okCount === 0) return [];
    const { value, source } = speak.limit('bumpSteerWorst');
    const worst = heaveSummary.worstBumpSteer;
    const limit = toRadians(value);
    const where = heaveSummary.worstAt >= 0 ? 'bump' : 'droop';
    const base = {
      rule: 'bump-steer-worst',
      part: PART,
      sentence:
        worst < NONE
          ? 'The wheels do not steer themselves over the travel'
          : `Bump steer ${speak.angle(worst, 2, [limit])} ${steerWay(heaveSummary.worstSteer)} at ${speak.length(Math.abs(heaveSummary.worstAt))} of ${where}`,
      at: { heave: heaveSummary.worstAt, roll: 0, handwheel: 0 },
      limit: `limit ${speak.figure(value)}°`,
      source,
    };
    if (worst <= limit) return [{ ...base, severity: 'info', advice: '' }];
    const ball = layout.steering.box.pitmanBall;
    const mended = travel.status === 'ok' ? bestHeight(travel, ball) : undefined;
    const severity = worst > 2 * limit ? 'stop' : 'attention';
    if (!mended || mended.worst > 0.9 * worst)
      return [{ ...base, severity, advice: elsewhere(analysis, worst) }];
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
