import { groundGaps, type Layout, SIDES } from '../../layout/index.ts';
import type { Finding, Rule, Speech } from '../finding.ts';

/** mm: a sixteenth of an inch, as fine as a tape reads. */
const LIMIT = 1.5875;

/** "The tyres reach 3 in into the ground", for one tyre or both alike. */
function groundSentence(
  what: string,
  gap: number,
  height: number,
  radius: number,
  length: Speech['length'],
): string {
  const many = what.endsWith('s');
  const verb = gap > 0 ? (many ? 'reach' : 'reaches') : many ? 'hang' : 'hangs';
  const where = gap > 0 ? 'into the ground' : 'above the ground';
  return `${what} ${verb} ${length(Math.abs(gap), [LIMIT])} ${where}: wheel centre ${length(height, [radius])} up, tyre radius ${length(radius, [height])}`;
}

/** Whether the tyres stand on the ground from which every height of the drawing counts. */
export const tyreAndGround: Rule = {
  name: 'tyre-and-ground',
  measures: 'Whether the wheel centres stand one tyre radius above the ground',
  judge: ({ layout }, speak) => tyresOffGround(layout, speak),
};

/** A stop for each tyre that does not stand on the ground, or one for both where they are off alike. */
export function tyresOffGround(layout: Layout, speak: Speech): Finding[] {
  const { axle, car } = layout;
  const gaps = groundGaps(layout);
  const off = SIDES.filter((side) => Math.abs(gaps[side]) > LIMIT);
  if (off.length === 0) return [];
  const alike = off.length === 2 && Math.abs(gaps.left - gaps.right) < 0.05;
  return (alike ? (['left'] as const) : off).map((side): Finding => {
    const height = axle[side].wheelCentre[2];
    return {
      rule: 'tyre-and-ground',
      severity: 'stop',
      part: `axle.${side}.wheelCentre`,
      sentence: groundSentence(
        alike ? 'The tyres' : `The ${side} tyre`,
        gaps[side],
        height,
        car.tyreRadius,
        speak.length,
      ),
      limit: `limit ${speak.setLength(LIMIT)}`,
      source: 'geometry: every height is measured from the ground that the tyres stand on',
      advice: alike
        ? `If the height is right, set the tyre radius to ${speak.length(height)}; if the radius is right, type it again: the axle goes to it.`
        : 'Measure both wheel centres again: the two tyres are of one radius.',
      ...(alike
        ? {
            remedy: {
              kind: 'set' as const,
              path: 'car.tyreRadius',
              value: height,
              words: 'Set the tyre radius to the wheel centre’s height',
            },
          }
        : {}),
    };
  });
}
