import { toRadians } from '../../units/index.ts';
import { type Finding, type Rule, sourceOf } from '../finding.ts';

/** Caster as drawn, the side further from the usual range. */
export const casterStatic: Rule = {
  name: 'caster-static',
  measures: 'Caster at ride height',
  judge({ layout }, speak): Finding[] {
    const least = speak.limit('casterLeast');
    const most = speak.limit('casterMost');
    const middle = toRadians((least.value + most.value) / 2);
    const of = (side: 'left' | 'right') => {
      const { kingpinTop, kingpinBottom } = layout.axle[side];
      return Math.atan2(kingpinBottom[0] - kingpinTop[0], kingpinTop[2] - kingpinBottom[2]);
    };
    const [left, right] = [of('left'), of('right')];
    const side = Math.abs(right - middle) > Math.abs(left - middle) ? 'right' : 'left';
    const caster = side === 'left' ? left : right;
    const low = caster < toRadians(least.value);
    const out = low || caster > toRadians(most.value);
    return [
      {
        rule: 'caster-static',
        severity: out ? 'attention' : 'info',
        part: `axle.${side}.kingpinTop`,
        sentence: `Caster ${speak.angle(caster, 1, [least.value, most.value].map(toRadians))}${Math.abs(left - right) > 1e-4 ? ` on the ${side}` : ''}`,
        limit: `usual ${speak.figure(least.value)}° to ${speak.figure(most.value)}°`,
        source: sourceOf(least, most),
        advice: out
          ? `Tip the axle ${low ? 'back' : 'forward'} at its links: the top of the kingpin goes ${low ? 'back' : 'ahead'}.`
          : '',
      },
    ];
  },
};
