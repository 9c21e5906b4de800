import { ROW_OK } from '../../sweep/index.ts';
import { toRadians } from '../../units/index.ts';
import { type Finding, locationPart, type Rule } from '../finding.ts';

/** rad. A change too small for the tenth of a degree that caster is set to. */
const NO_CHANGE = toRadians(0.05);

/** How far the links tip the axle over the travel. */
export const casterChange: Rule = {
  name: 'caster-change',
  measures: 'Caster change over the travel',
  judge({ heave, layout }, speak): Finding[] {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    let lowAt = 0;
    let highAt = 0;
    for (let i = 0; i < heave.count; i += 1) {
      if (heave.status[i] !== ROW_OK) continue;
      const caster = heave.leftCaster[i] as number;
      if (caster < low) [low, lowAt] = [caster, heave.at[i] as number];
      if (caster > high) [high, highAt] = [caster, heave.at[i] as number];
    }
    if (high < low) return [];
    const { kingpinTop: top, kingpinBottom: bottom } = layout.axle.left;
    const drawn = Math.atan2(bottom[0] - top[0], top[2] - bottom[2]);
    const change = Math.max(high - drawn, drawn - low);
    const { value, source } = speak.limit('casterChange');
    const over = change > toRadians(value);
    const falls = drawn - low > high - drawn;
    const end = falls ? low : high;
    const where = falls ? lowAt : highAt;
    return [
      {
        rule: 'caster-change',
        severity: over ? 'attention' : 'info',
        part: locationPart(layout),
        at: { heave: high - drawn > drawn - low ? highAt : lowAt, roll: 0, handwheel: 0 },
        sentence:
          change < NO_CHANGE
            ? `Caster stays at ${speak.angle(drawn)} over the travel`
            : `Caster ${falls ? 'falls' : 'rises'} by ${speak.angle(change, 1, [toRadians(value)])}, from ${speak.angle(drawn)} at ride height to ${speak.angle(end)} at ${speak.length(Math.abs(where))} of ${where < 0 ? 'droop' : 'bump'}`,
        limit: `limit ${speak.figure(value)}° either way`,
        source,
        advice: over
          ? 'Make the rods longer, which tips the axle less; or fit equal parallel bars, which do not tip it.'
          : '',
      },
    ];
  },
};
