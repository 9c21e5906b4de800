import { toeLength } from '../../sweep/index.ts';
import { formatToe, formatToeLength, toRadians } from '../../units/index.ts';
import { type Finding, type Rule, sourceOf } from '../finding.ts';

/** Total toe-in as drawn, as a length over the tyres' diameter. */
export const toeStatic: Rule = {
  name: 'toe-static',
  measures: 'Total toe-in at ride height',
  judge({ layout }, speak): Finding[] {
    const { axle, car } = layout;
    const total = [axle.left.toeIn, axle.right.toeIn].reduce(
      (sum, degrees) => sum + toeLength(toRadians(degrees), car.tyreRadius),
      0,
    );
    const least = speak.limit('toeLeast');
    const most = speak.limit('toeMost');
    const band = (mm: number) =>
      `${mm < 0 ? 'toe-out ' : ''}${formatToeLength(Math.abs(mm), speak.style.unit)}`;
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
        sentence: `${total < 0 ? 'Toe-out' : 'Toe-in'} ${formatToe(Math.abs(total), Math.abs(axle.left.toeIn + axle.right.toeIn), speak.style.unit, [least.value, most.value].map(Math.abs))}, front to rear of the tyres`,
        limit: `usual ${band(least.value)} to ${band(most.value)}`,
        source: sourceOf(least, most),
        advice: out,
      },
    ];
  },
};
