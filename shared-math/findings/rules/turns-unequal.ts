import { lockAngles } from '../../sweep/index.ts';
import { toRadians } from '../../units/index.ts';
import type { Finding, Rule } from '../finding.ts';

/** Whether the car turns as tightly one way as the other. */
export const turnsUnequal: Rule = {
  name: 'turns-unequal',
  measures: 'Left lock against right lock',
  judge({ turn, layout }, speak): Finding[] {
    if (turn.status !== 'ok' || turn.count === 0) return [];
    const [left, right] = [turn.left, turn.right].map((side) => lockAngles(layout, side).inner) as [
      number,
      number,
    ];
    const { value, source } = speak.limit('lockApart');
    const over = Math.abs(left - right) > toRadians(value);
    return [
      {
        rule: 'turns-unequal',
        severity: over ? 'attention' : 'info',
        part: 'steering.box.pitmanBall',
        at: { heave: 0, roll: 0, handwheel: (left < right ? turn.left : turn.right).handwheel },
        sentence: `Left lock ${speak.angle(left, 1, [right])}, right lock ${speak.angle(right, 1, [left])}: ${speak.angle(Math.abs(left - right), 1, [toRadians(value)])} apart`,
        limit: `limit ${speak.figure(value)}° apart`,
        source,
        advice: over
          ? 'Stand the pitman arm square to the drag link with the wheels straight, or set equal stops at the axle.'
          : '',
      },
    ];
  },
};
