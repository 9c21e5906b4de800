import { toDegrees } from '../../units/index.ts';
import type { Finding, Rule } from '../finding.ts';

/** Parking effort at the rim by the published formula: a rough figure. */
export const effort: Rule = {
  name: 'effort',
  measures: 'Parking effort at the handwheel rim without assistance',
  judge({ effort: found, layout }, speak): Finding[] {
    if (!found) return [];
    const { value, source } = speak.limit('rimForce');
    const assisted = layout.steering.box.assist === 'power';
    const { centre, worst } = found;
    const over = worst.rimForce > value;
    const where = `${speak.number(Math.abs(toDegrees(worst.handwheel)), 0)}° of handwheel ${worst.handwheel > 0 ? 'left' : 'right'}`;
    return [
      {
        rule: 'effort',
        severity: over && !assisted ? 'attention' : 'info',
        part: 'steering.box.sectorCentre',
        at: { heave: 0, roll: 0, handwheel: worst.handwheel },
        sentence: `Parking takes about ${speak.force(centre.rimForce, [value, worst.rimForce])} at the rim straight ahead${
          worst.handwheel === 0
            ? ', nowhere more'
            : `, at the most ${speak.rimForce(worst.rimForce, [value, centre.rimForce])}, ${where}`
        }${assisted ? ', if the assistance fails' : ''}`,
        limit: `limit ${speak.setForce(value)}`,
        source: `${source}; effort by a hydraulic steering handbook’s formula, good to a third either way`,
        advice:
          over && !assisted
            ? 'Fit a slower box, a larger handwheel or assistance, or take out scrub or trail.'
            : '',
      },
    ];
  },
};
