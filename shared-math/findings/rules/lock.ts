import { lockAngles } from '../../sweep/index.ts';
import { toDegrees, toRadians } from '../../units/index.ts';
import { type Finding, type Remedy, type Rule, sourceOf } from '../finding.ts';

/** Degrees of either wheel. */
function stopsAt(degrees: number): Remedy {
  return {
    kind: 'set',
    path: 'steering.stopAngle',
    value: degrees,
    words: `Set stops at ${degrees}° of either wheel`,
  };
}

/** How far the wheels turn, and whether the axle's stops or the box end the turn. */
export const lock: Rule = {
  name: 'lock',
  measures: 'Inner wheel angle at full lock, and what ends the turn',
  judge({ turn, layout }, speak): Finding[] {
    if (turn.status !== 'ok' || turn.count === 0) return [];
    const inner = [turn.left, turn.right].map((side) => lockAngles(layout, side).inner);
    const [least, most] = [Math.min(...inner), Math.max(...inner)];
    const [few, many] = [speak.limit('lockLeast'), speak.limit('lockMost')];
    const low = least < toRadians(few.value);
    const high = most > toRadians(many.value);
    const bounds = [few.value, many.value].map(toRadians);
    // One lock too short and the other too long: the arm stands askew, and more or less of both mends neither.
    const askew = low && high;
    const shown = (angle: number) => speak.angle(angle, 1, bounds);
    const findings: Finding[] = [
      {
        rule: 'lock',
        severity: low || high ? 'attention' : 'info',
        part: 'axle.left.wheelCentre',
        at: {
          heave: 0,
          roll: 0,
          handwheel: (inner[0] === (high ? most : least) ? turn.left : turn.right).handwheel,
        },
        sentence: `Inner wheel turns ${shown(inner[0]!)} to the left, ${shown(inner[1]!)} to the right`,
        limit: `usual ${speak.figure(few.value)}° to ${speak.figure(many.value)}°`,
        source: sourceOf(few, many),
        advice: askew
          ? 'Stand the pitman arm square to the drag link with the wheels straight: it turns further one way than the other.'
          : low
            ? 'Fit a longer pitman arm or a shorter steering arm: either gives more lock.'
            : high
              ? 'Set stops at the axle.'
              : '',
        ...(high && !low ? { remedy: stopsAt(Math.round(many.value - 4)) } : {}),
      },
    ];
    const causes = [turn.left.cause, turn.right.cause];
    if (causes.some((cause) => cause !== 'stop')) {
      const linkage = causes.find(
        (cause) => cause === 'drag-link' || cause === 'tie-rod' || cause === 'dead-centre',
      );
      findings.push({
        rule: 'lock',
        severity: linkage ? 'stop' : 'attention',
        part: 'steering.box.sectorCentre',
        sentence: linkage
          ? linkage === 'dead-centre'
            ? 'The turn ends with an arm at its dead centre'
            : `The turn ends where the ${linkage === 'drag-link' ? 'drag link' : 'tie rod'} does not reach`
          : 'The box comes to its own end before any stop',
        limit: 'stops at the axle should end the turn',
        source: 'common practice, no published source',
        advice: 'Set stops at the axle so that neither the box nor a link ends the turn.',
        ...(layout.steering.stopAngle === undefined && !high
          ? { remedy: stopsAt(Math.max(Math.floor(toDegrees(least) - 1), 5)) }
          : {}),
      });
    }
    return findings;
  },
};
