import { createState, solveFrontEnd } from '../../linkage/index.ts';
import { toRadians } from '../../units/index.ts';
import { type Finding, locationPart, type Rule } from '../finding.ts';

/** How far rods rigid with the axle twist an I-beam in roll. */
export const beamTwist: Rule = {
  name: 'beam-twist',
  measures: 'Twist that full roll asks of an I-beam',
  judge({ layout, frontEnd }, speak): Finding[] {
    if (layout.axle.beam !== 'i-beam' || frontEnd.axle.unknowns === 4) return [];
    const state = createState();
    if (solveFrontEnd(frontEnd, 0, toRadians(layout.travel.roll), 0, state) !== 'ok') return [];
    const twist = Math.abs(state.axle.twist);
    if (twist < toRadians(0.05)) return [];
    const { value, source } = speak.limit('beamTwist');
    const over = twist > toRadians(value);
    return [
      {
        rule: 'beam-twist',
        severity: over ? 'attention' : 'info',
        part: locationPart(layout),
        at: { heave: 0, roll: toRadians(layout.travel.roll), handwheel: 0 },
        sentence: `A roll of ${speak.figure(layout.travel.roll)}° twists the I-beam ${speak.angle(twist, 1, [toRadians(value)])}`,
        limit: `limit ${speak.figure(value)}°`,
        source,
        advice: over ? 'Bring the rod pivots nearer to the middle of the car, or make the rods longer.' : '',
      },
    ];
  },
};
