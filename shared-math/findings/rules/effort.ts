import type { Finding, Rule } from '../finding.ts';

/** Parking effort at the rim by the published formula: a rough figure. */
export const effort: Rule = {
  name: 'effort',
  measures: 'Parking effort at the handwheel rim without assistance',
  judge({ effort: found, layout }, speak): Finding[] {
    if (!found) return [];
    const { value, source } = speak.limit('rimForce');
    const assisted = layout.steering.box.assist === 'power';
    const over = found.rimForce > value;
    return [
      {
        rule: 'effort',
        severity: over && !assisted ? 'attention' : 'info',
        part: 'steering.box.sectorCentre',
        sentence: `Parking takes about ${speak.force(found.rimForce)} at the rim${assisted ? ' if the assistance fails' : ''}`,
        limit: `limit ${speak.force(value)}`,
        source: `${source}; effort by a hydraulic steering handbook’s formula, good to a third either way`,
        advice:
          over && !assisted
            ? 'A slower box, a larger handwheel, less scrub, or assistance makes it lighter.'
            : '',
      },
    ];
  },
};
