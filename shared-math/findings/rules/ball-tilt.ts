import { toRadians } from '../../units/index.ts';
import type { Finding, Rule } from '../finding.ts';

/** The ball or rod end that is tilted most over travel and turn. */
export const ballTilt: Rule = {
  name: 'ball-tilt',
  measures: 'Tilt of every ball and rod end against its stud over travel and turn',
  judge({ extremes }, speak): Finding[] {
    if (!extremes || extremes.tilts.length === 0) return [];
    const { value, source } = speak.limit('ballTilt');
    const limit = toRadians(value);
    const ordered = [...extremes.tilts].sort((a, b) => b.tilt - a.tilt);
    const over = ordered.filter(({ tilt }) => tilt > limit);
    const reported = over.length > 0 ? over : ordered.slice(0, 1);
    return reported.map(({ joint, tilt, at }) => ({
      rule: 'ball-tilt',
      severity: tilt > limit ? 'stop' : 'info',
      part: joint.id,
      at,
      sentence:
        tilt > limit
          ? `${joint.name} tilts ${speak.angle(tilt, 1, [limit])}`
          : `Balls tilt ${speak.angle(tilt, 1, [limit])} at most (${joint.name.toLowerCase()})`,
      limit: `limit ${speak.figure(value)}°`,
      source,
      advice: tilt > limit ? 'Turn its stud square to the link, or use a ball with more room.' : '',
    }));
  },
};
