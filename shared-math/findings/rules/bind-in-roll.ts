import { hasRigidRods } from '../../layout/index.ts';
import { ROW_OK } from '../../sweep/index.ts';
import { BIND_SHOWN_FROM } from '../../tolerances.ts';
import { type Finding, locationPart, type Rule } from '../finding.ts';

/** What the links would have to give over heave and roll: a rigid tube on rods that are rigid with it binds in roll. */
export const bindInRoll: Rule = {
  name: 'bind-in-roll',
  measures: 'What bushings, rods or brackets would have to give',
  judge({ heave, roll, layout }, speak): Finding[] {
    let worst = 0;
    let at = { heave: 0, roll: 0, handwheel: 0 };
    let solved = 0;
    for (const sweep of [heave, roll])
      for (let i = 0; i < sweep.count; i += 1)
        if (sweep.status[i] === ROW_OK) {
          solved += 1;
          if ((sweep.bind[i] as number) <= worst) continue;
          worst = sweep.bind[i] as number;
          at = { heave: 0, roll: 0, handwheel: 0, [sweep.along]: sweep.at[i] as number };
        }
    if (solved === 0) return [];
    const { value, source } = speak.limit('bind');
    const over = worst > value;
    const tubeOnRods = hasRigidRods(layout) && layout.axle.beam === 'tube';
    return [
      {
        rule: 'bind-in-roll',
        severity: over ? (worst > 5 * value ? 'stop' : 'attention') : 'info',
        part: locationPart(layout),
        ...(worst < BIND_SHOWN_FROM ? {} : { at }),
        sentence:
          worst < BIND_SHOWN_FROM
            ? 'The links do not bind anywhere in travel and roll'
            : `The links bind by ${speak.length(worst, [value])} in ${speak.figure(layout.travel.roll)}° of roll or full travel`,
        limit: `limit ${speak.setLength(value)}`,
        source,
        advice: over
          ? tubeOnRods
            ? 'A tube does not twist: use an I-beam, four bars, or one central wishbone ball.'
            : 'Make the bars alike and parallel, or bush their ends softer.'
          : '',
        ...(over && tubeOnRods
          ? { remedy: { kind: 'set' as const, path: 'axle.beam', value: 'i-beam', words: 'Use an I-beam' } }
          : {}),
      },
    ];
  },
};
