import { toeLength } from '../../sweep/index.ts';
import { type Finding, type Rule, sourceOf } from '../finding.ts';

/** Total toe-in as drawn, as a length over the tyres' diameter. */
export const toeStatic: Rule = {
  name: 'toe-static',
  measures: 'Total toe-in at ride height',
  judge({ layout }, speak): Finding[] {
    const { axle, car } = layout;
    const total = [axle.left.toeIn, axle.right.toeIn].reduce(
      (sum, degrees) => sum + toeLength((degrees * Math.PI) / 180, car.tyreRadius),
      0,
    );
    const least = speak.limit('toeLeast');
    const most = speak.limit('toeMost');
    const out =
      total < least.value
        ? 'Add toe-in at the tie rod.'
        : total > most.value
          ? 'Take toe-in off at the tie rod.'
          : '';
    return [
      {
        rule: 'toe-static',
        severity: out ? 'attention' : 'info',
        part: 'axle.left.tieRodBall',
        sentence:
          total < 0
            ? `Toe-out ${speak.length(-total)} at the tyres`
            : `Toe-in ${speak.length(total)} at the tyres`,
        limit: `usual ${speak.length(least.value)} to ${speak.length(most.value)}`,
        source: sourceOf(least, most),
        advice: out,
      },
    ];
  },
};
