import { capitalised } from '../../capitalised.ts';
import { type Clearance, nearerOfBothSides } from '../../clearance/index.ts';
import { bodyOfPart } from '../../layout/index.ts';
import { ALL_BUT_TOUCHES, type Finding, type Rule, type Speech } from '../finding.ts';

/** Where it happens, as a person would put the car to see it: "at 3 in of bump, 2.0° of roll, 1.2 turns to the left". */
function placeWords({ at }: Clearance, speak: Speech): string {
  const { heave, roll, handwheel } = at;
  const words = [
    Math.abs(heave) < 0.05
      ? 'ride height'
      : `${speak.length(Math.abs(heave))} of ${heave > 0 ? 'bump' : 'droop'}`,
  ];
  if (Math.abs(roll) > 1e-6) words.push(`${speak.angle(Math.abs(roll))} of roll`);
  const turns = Math.abs(handwheel) / (2 * Math.PI);
  if (turns >= 0.05)
    words.push(`the handwheel ${speak.number(turns, 1)} turns to the ${handwheel > 0 ? 'left' : 'right'}`);
  return words.join(', ');
}

/** What a pair of parts gives to a finding: where it is on the board, and what the gap lies between. */
function placeOf(pair: Clearance): Pick<Finding, 'part' | 'at' | 'gap' | 'between'> {
  // An obstacle can be moved here as well as the part that comes near it, and is the one to be named.
  const body = pair.b.startsWith('obstacle') ? bodyOfPart(pair.b) : undefined;
  return {
    part: body ?? pair.part,
    at: pair.at,
    gap: [pair.onA, pair.onB],
    between: {
      parts: [pair.a, pair.b],
      words: `${pair.nameOfA} to ${pair.nameOfB}`,
      distance: pair.distance,
    },
  };
}

/** How near moving parts and tyres come to anything over travel and turn. */
export const clearance: Rule = {
  name: 'clearance',
  measures: 'Least distance of every pair of parts that can meet, over travel and turn',
  judge({ clearances }, speak): Finding[] {
    if (!clearances || clearances.poses === 0) return [];
    const limits = { moving: speak.limit('clearanceMoving'), tyre: speak.limit('clearanceTyre') };
    const under = nearerOfBothSides(clearances.pairs).filter(
      ({ limit, distance }) => distance < limits[limit].value,
    );
    const [nearest] = clearances.pairs;
    if (under.length === 0)
      return [
        {
          rule: 'clearance',
          severity: 'info',
          part: 'steering.dragLinkBall',
          ...(nearest ? placeOf(nearest) : {}),
          sentence: nearest
            ? `Nothing comes too close: the ${nearest.nameOfA} clears the ${nearest.nameOfB} by ${speak.length(nearest.distance, [limits[nearest.limit].value])}`
            : `Nothing that moves comes within ${speak.length(clearances.within)} of anything`,
          limit: `limit ${speak.setLength(limits[nearest?.limit ?? 'moving'].value)}`,
          source: limits[nearest?.limit ?? 'moving'].source,
          advice: '',
        },
      ];
    return under.map((pair) => {
      const hits = pair.distance <= 0;
      const words = speak.length(pair.distance, [limits[pair.limit].value]);
      const near = pair.distance < ALL_BUT_TOUCHES ? 'all but touches' : `comes within ${words} of`;
      const gap = hits ? 'hits' : near;
      return {
        rule: 'clearance',
        severity: hits && !pair.assumed ? 'stop' : 'attention',
        ...placeOf(pair),
        sentence: `${capitalised(pair.nameOfA)} ${gap} the ${pair.nameOfB} at ${placeWords(pair, speak)}`,
        limit: `limit ${speak.setLength(limits[pair.limit].value)}`,
        source: limits[pair.limit].source,
        advice: pair.assumed
          ? 'Measure it on the car: one of the two is drawn as such parts are usually made.'
          : 'Move one of the two, or set stops that end the turn or the travel sooner.',
      };
    });
  },
};
