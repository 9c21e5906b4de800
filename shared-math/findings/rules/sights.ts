import { hardpoints } from '../../layout/index.ts';
import { contradiction, sightGaps } from '../../trace/index.ts';
import type { Finding, Rule } from '../finding.ts';

/** Two photos that contradict each other: of one point the later click alone would stand, and nobody would know. */
export const sights: Rule = {
  name: 'sights',
  measures: 'How far two photos’ lines of sight to one point miss each other',
  judge({ layout }, speak): Finding[] {
    const { photos } = layout;
    const names = new Map(hardpoints(layout).map(({ id, name }) => [id, name]));
    return sightGaps(photos).flatMap((missed): Finding[] => {
      const explained = contradiction(photos, missed);
      if (explained === undefined) return [];
      const {
        point,
        photos: [a, b],
        gap,
      } = missed;
      const name = (names.get(point) ?? point).replace(/^./, (letter) => letter.toLowerCase());
      return [
        {
          rule: 'sights',
          severity: 'attention',
          part: point,
          sentence: `The sights of the ${name} on ${photos[a]?.name} and ${photos[b]?.name} miss each other by ${speak.length(gap, [explained])}`,
          limit: `clicking explains ${speak.length(explained, [gap])}`,
          source:
            'a pixel off at each click and 0.3 % of each camera’s distance, by chance once in a thousand',
          advice: 'Click it again in both photos, or look at their corners, planes and distances again',
        },
      ];
    });
  },
};
