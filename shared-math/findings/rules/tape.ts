import { hardpoints } from '../../layout/index.ts';
import { planeOf, standsAsTraced, tapeRows } from '../../trace/index.ts';
import type { Finding, Rule } from '../finding.ts';

/**
 * What was traced is as good as the tape says. Lengths whose ends were moved since are the builder's plan and not judged;
 * dimensions that lie on the photo itself always are.
 */
export const tape: Rule = {
  name: 'tape',
  measures: 'Lengths by the tape against the same lengths on the photos',
  judge({ layout }, speak): Finding[] {
    const { photos } = layout;
    if (photos.every(({ notes, lengths }) => notes.length + lengths.length === 0)) return [];
    const points = hardpoints(layout);
    const stands = new Set(points.filter((point) => standsAsTraced(photos, point)).map(({ id }) => id));
    const findings: Finding[] = [];
    let agreed = 0;
    for (const photo of photos) {
      const plane = planeOf(photo);
      if (!plane.ok) continue;
      for (const row of tapeRows(photo, plane.value, points)) {
        const { check } = row;
        const ends = row.kind === 'length' ? photo.lengths[row.at] : undefined;
        if (!check || (ends && !(stands.has(ends.from) && stands.has(ends.to)))) continue;
        if (check.agrees) {
          agreed += 1;
          continue;
        }
        findings.push({
          rule: 'tape',
          severity: 'attention',
          part: ends?.from ?? photo.anchor?.point ?? 'axle.left.wheelCentre',
          sentence: `${row.words} is ${speak.length(check.tape, [check.traced])} by the tape and ${speak.length(check.traced, [check.tape])} on ${photo.name}`,
          limit: `off by ${speak.length(Math.abs(check.difference), [check.explained])}; clicking explains ${speak.length(check.explained, [Math.abs(check.difference)])}`,
          source: 'a pixel off at each end of the length and of what the scale rests on',
          advice: 'Look at the photo’s scale and straightening again, or measure again',
        });
      }
    }
    if (findings.length > 0 || agreed === 0) return findings;
    return [
      {
        rule: 'tape',
        severity: 'info',
        part: 'axle.left.wheelCentre',
        sentence:
          agreed === 1
            ? 'The length by the tape agrees with the photo'
            : `All ${agreed} lengths by the tape agree with the photos`,
        limit: 'within what clicking explains',
        source: 'a pixel off at each end of the length and of what the scale rests on',
        advice: '',
      },
    ];
  },
};
