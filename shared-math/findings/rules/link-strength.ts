import { CASE_WORDS, leastMargin, linkForces, linkMargins } from '../../forces/index.ts';
import { toDegrees } from '../../units/index.ts';
import type { Finding, Rule } from '../finding.ts';

const BY = {
  push: {
    euler: 'bows out (Euler)',
    johnson: 'yields as it bows (J. B. Johnson)',
    bend: 'yields at its bend',
  },
  pull: { yield: 'yields along its length', bend: 'yields at its bend' },
} as const;

/** Rough bounds of links that the layout says the making of; links of assumed sizes are shown and not judged. */
export const linkStrength: Rule = {
  name: 'link-strength',
  measures: 'Push and pull in each link of known making beside what it bears as a strut and pulled',
  judge({ layout, frontEnd }, speak): Finding[] {
    const { links } = layout;
    if (!links || Object.keys(links).length === 0) return [];
    const forces = linkForces(frontEnd);
    if (!forces.ok) return [];
    const { value, source } = speak.limit('linkMarginLeast');
    return linkMargins(layout, forces.value).flatMap((margins): Finding[] => {
      const { figure, bears } = margins;
      const least = leastMargin(margins);
      if (bears.assumed || least?.margin.times === undefined) return [];
      const { by, times, force, handwheel } = least.margin;
      const over = times < value;
      const way = by === 'push' ? BY.push[bears.pushBy] : BY.pull[bears.pullBy];
      return [
        {
          rule: 'link-strength',
          severity: over ? 'attention' : 'info',
          part: figure.part,
          at: { heave: 0, roll: 0, handwheel },
          sentence: `${figure.name} ${way} at ${speak.number(times, 1, [value])} times the ${by} of ${speak.force(
            force,
          )} that it takes (${CASE_WORDS[least.id].toLowerCase()}${
            handwheel === 0
              ? ''
              : `, ${speak.number(Math.abs(toDegrees(handwheel)), 0)}° of handwheel ${handwheel > 0 ? 'left' : 'right'}`
          })`,
          limit: `limit ${speak.figure(value)} times`,
          source: `${source}; statics, and a column’s load by textbook formulas: a rough bound, no proof, for a qualified person`,
          advice: over
            ? `Use a larger or thicker tube${bears.pushBy === 'bend' ? ', or a straighter one' : ''}.`
            : '',
        },
      ];
    });
  },
};
