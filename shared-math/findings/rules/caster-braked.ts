import { brakingChanges, type JudgedBraking, leastCaster } from '../../brake/index.ts';
import { toRadians } from '../../units/index.ts';
import { type Finding, locationPart, type Rule, type Speech } from '../finding.ts';

/** rad. Changes that leave less more caster than this are not worth the work. */
const WORTH_IT = toRadians(0.5);

/** "at 0.7 g". */
export const hardWords = ({ hard }: JudgedBraking, speak: Speech): string =>
  `at ${speak.figure(hard.grip)} g`;

/** What nobody gave of the car, for those who weigh the figure; empty where all of it was given. */
export function assumedWords({ car }: JudgedBraking, speak: Speech): string {
  const { origin, frontShare, gravityHeight } = car;
  const assumed = [
    ...(origin.frontShare === 'usual'
      ? [`${speak.figure(100 * frontShare)} per cent of the weight in front`]
      : []),
    ...(origin.gravityHeight === 'usual' ? [`the centre of gravity ${speak.length(gravityHeight)} up`] : []),
    ...(origin.stiffness === 'usual' ? ['springs of a usual rate'] : []),
  ];
  return assumed.length === 0 ? '' : `, with ${assumed.join(' and ')} assumed`;
}

/** How much caster winding up on its springs leaves an axle in a hard stop. */
export const casterBraked: Rule = {
  name: 'caster-braked',
  measures: 'Caster under braking, as the axle winds up on its springs',
  judge({ braking, layout }, speak): Finding[] {
    if (!braking) return [];
    const { value, source } = speak.limit('casterBrakedLeast');
    const shared = {
      rule: 'caster-braked',
      part: locationPart(layout),
      limit: `limit ${speak.figure(value)}°`,
      source: `${source}; wind-up by the bending of beams`,
    };
    const { off, hard, car } = braking;
    const left = leastCaster(hard);
    const over = left < toRadians(value);
    if (car.by === 'links')
      return [
        {
          ...shared,
          // A caster that is too little with the brakes off is another rule's to tell.
          severity: 'info',
          sentence: `Links hold the axle under braking: its caster stays at ${speak.angle(leastCaster(off))}`,
          advice: '',
        },
      ];
    const windUp = Math.max(hard.windUp.left, hard.windUp.right);
    const helps = over
      ? brakingChanges(layout).filter(({ id, caster }) => id !== 'as-it-is' && caster > left + WORTH_IT)
      : [];
    return [
      {
        ...shared,
        severity: over ? 'attention' : 'info',
        sentence: `Braking ${hardWords(braking, speak)} winds the axle up by ${speak.angle(windUp)}: caster goes from ${speak.angle(leastCaster(off))} to ${speak.angle(left, 1, [toRadians(value)])}${assumedWords(braking, speak)}`,
        advice: !over
          ? ''
          : helps.length === 0
            ? 'Fit a radius rod each side, which holds the axle; or stiffer springs, or set more caster with the brakes off.'
            : `What helps, most first: ${helps
                .map(
                  ({ words, caster }) =>
                    `${lowered(words((mm) => speak.length(mm)))} (${speak.angle(caster)} left)`,
                )
                .join('; ')}.`,
      },
    ];
  },
};

const lowered = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);
