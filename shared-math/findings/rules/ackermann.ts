import { lockAngles } from '../../sweep/index.ts';
import type { Finding, Rule } from '../finding.ts';

/** Whether the inner wheel turns further than the outer, as it must to roll freely. */
export const ackermann: Rule = {
  name: 'ackermann',
  measures: 'Inner and outer wheel at lock against the Ackermann ideal',
  judge({ turn, layout }, speak): Finding[] {
    if (turn.status !== 'ok' || turn.count === 0) return [];
    const [left, right] = [lockAngles(layout, turn.left).ackermann, lockAngles(layout, turn.right).ackermann];
    const toLeft = left.inner - left.outer < right.inner - right.outer;
    const worst = toLeft ? left : right;
    if (worst.percent === undefined) return [];
    const reversed = worst.inner < worst.outer;
    return [
      {
        rule: 'ackermann',
        severity: reversed ? 'attention' : 'info',
        part: 'axle.left.tieRodBall',
        at: { heave: 0, roll: 0, handwheel: (toLeft ? turn.left : turn.right).handwheel },
        sentence: reversed
          ? `At lock the outer wheel turns ${speak.angle(worst.outer - worst.inner)} further than the inner: Ackermann reversed`
          : `At lock the inner wheel turns ${speak.angle(worst.inner - worst.outer, 1, [worst.inner - worst.ideal])} further: ${speak.number(worst.percent, 0, [100])} per cent of Ackermann at equal inner angle`,
        limit: `ideal ${speak.angle(worst.inner - worst.ideal, 1, [worst.inner - worst.outer])} further`,
        source: 'Ackermann condition, as ISO 8855',
        advice: reversed
          ? 'Aim the tie rod arms so that their lines from the kingpins meet near the rear axle.'
          : '',
      },
    ];
  },
};
