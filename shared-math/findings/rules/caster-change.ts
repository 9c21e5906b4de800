import { ROW_OK } from '../../sweep/index.ts';
import { toRadians } from '../../units/index.ts';
import { type Finding, locationPart, type Rule } from '../finding.ts';

/** How far the links tip the axle over the travel. */
export const casterChange: Rule = {
  name: 'caster-change',
  measures: 'Caster change over the travel',
  judge({ heave, layout }, speak): Finding[] {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < heave.count; i += 1) {
      if (heave.status[i] !== ROW_OK) continue;
      low = Math.min(low, heave.leftCaster[i] as number);
      high = Math.max(high, heave.leftCaster[i] as number);
    }
    if (high < low) return [];
    const { kingpinTop: top, kingpinBottom: bottom } = layout.axle.left;
    const drawn = Math.atan2(bottom[0] - top[0], top[2] - bottom[2]);
    const change = Math.max(high - drawn, drawn - low);
    const { value, source } = speak.limit('casterChange');
    const over = change > toRadians(value);
    return [
      {
        rule: 'caster-change',
        severity: over ? 'attention' : 'info',
        part: locationPart(layout),
        sentence: `Caster changes ${speak.angle(change)} over the travel (${speak.angle(low)} to ${speak.angle(high)})`,
        limit: `limit ${speak.number(value, 1)}° either way`,
        source,
        advice: over ? 'Longer rods tip the axle less; equal parallel bars do not tip it.' : '',
      },
    ];
  },
};
