import { JUDGED_GRIP } from '../brake/index.ts';
import { type ClearanceLimit, type Clearances, nearerOfBothSides } from '../clearance/index.ts';
import { assistedRimForce } from '../sweep/index.ts';
import {
  degreesBeside,
  formatDecimal,
  formatDegrees,
  formatForce,
  formatLength,
  formatRimForce,
  formatSpan,
  type LengthStyle,
} from '../units/index.ts';
import type { ArrangementFigures, CarFacts } from './propose.ts';

export const DRIVEN_WORDS: readonly (readonly [CarFacts['driven'], string])[] = [
  ['town', 'in town'],
  ['open-road', 'on the open road'],
  ['show', 'to shows'],
];

export const ENGINE_WORDS: readonly (readonly ['free' | 'in the way', string])[] = [
  ['free', 'leaves room'],
  ['in the way', 'is in the way'],
];

/** "2 to 7 lb": what an assisted box leaves to the driver. */
export function assistedWords(handwheelRadius: number, unit: LengthStyle['unit']): string {
  const { least, most } = assistedRimForce(handwheelRadius);
  return `${formatForce(least, unit).replace(/ \w+$/, '')} to ${formatForce(most, unit)}`;
}

/** "14 lb, at the most 20 lb": parking by hand, straight ahead and on the way to lock. */
export function parkingWords(
  { rimForce, rimForceMost }: Pick<ArrangementFigures, 'rimForce' | 'rimForceMost'>,
  unit: LengthStyle['unit'],
): string {
  const [centre, most] = [rimForce, rimForceMost].map((force) => formatRimForce(force, unit));
  return most === centre ? `${centre}` : `${centre}, at the most ${most}`;
}

/** Roll steer with its sense in words: "0.02° understeer". */
export function rollSteerWords(rollSteer: number): string {
  const size = degreesBeside(Math.abs(rollSteer), [0], 2);
  if (size === formatDegrees(0, 2)) return 'none';
  return `${size} ${rollSteer > 0 ? 'understeer' : 'oversteer'}`;
}

export interface ArrangementRow {
  readonly what: string;
  readonly words: (figures: ArrangementFigures) => string;
}

/** What the arrangements are held against each other by, in the reader's unit. */
export function arrangementRows(style: LengthStyle): ArrangementRow[] {
  return [
    {
      what: 'Worst bump steer',
      words: ({ worstBumpSteer }) => degreesBeside(worstBumpSteer, [0], 2),
    },
    {
      what: 'One wheel over a bump',
      words: ({ oneWheel }) => (oneWheel === undefined ? 'not known' : degreesBeside(oneWheel, [0], 2)),
    },
    { what: 'Roll steer, per degree of roll', words: ({ rollSteer }) => rollSteerWords(rollSteer) },
    {
      what: `Steers by itself, braking at ${JUDGED_GRIP} g`,
      words: ({ brakeSteer }) => (brakeSteer === undefined ? 'not known' : degreesBeside(brakeSteer, [0], 2)),
    },
    {
      what: 'Overall ratio',
      words: ({ overallRatio }) => `${formatDecimal(overallRatio, 1)} to 1`,
    },
    {
      what: 'Lock to lock',
      words: ({ turnsLockToLock }) => `${formatDecimal(turnsLockToLock, 2)} turns`,
    },
    { what: 'Inner wheel at lock', words: ({ innerLock }) => formatDegrees(innerLock, 1) },
    {
      what: 'Circle between kerbs',
      words: ({ circleBetweenKerbs }) => formatSpan(circleBetweenKerbs, style.unit),
    },
  ];
}

/** What of an arrangement comes nearer than the shop's limits, in a few words: "pitman arm hits the left rail, 1 more". */
export function tooNearWords(
  clearances: Clearances,
  limits: Record<ClearanceLimit, number>,
  length: (mm: number) => string,
): string {
  const under = nearerOfBothSides(clearances.pairs).filter(({ limit, distance }) => distance < limits[limit]);
  const [worst, ...others] = under;
  if (!worst) return 'nothing';
  const gap = worst.distance <= 0 ? 'hits' : `comes within ${length(worst.distance)} of`;
  const more = others.length > 0 ? `, ${others.length} more` : '';
  return `${worst.nameOfA} ${gap} the ${worst.nameOfB}${more}`;
}

/** What a laid layout remembers of how it came about. */
export function laidNotes(facts: CarFacts, style: LengthStyle): string {
  const driven = DRIVEN_WORDS.find(([value]) => value === facts.driven)?.[1] ?? '';
  return [
    `Laid for a frame ${formatLength(facts.frameWidth, style)} wide beside the axle, where the engine`,
    `${facts.engineFillsFrame ? 'is in the way' : 'leaves room'} behind the axle, driven ${driven}.`,
    'Arms, ratios and places are usual ones: a place to begin, to be measured on the car.',
  ].join(' ');
}
