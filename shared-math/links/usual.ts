import { type LengthUnit, MM_PER_INCH } from '../units/index.ts';

// Usual figures of links, mm. All are common practice, no published source, and whoever shows one says that it is assumed;
// what the shop's own parts measure rules.

/** As documents keep them: 3/4 in is 19.05 mm, not 19.049999999999997. */
const inches = (value: number) => Math.round(value * MM_PER_INCH * 1e9) / 1e9;

/** Said beside every figure of this file wherever it is shown. */
export const USUAL_SOURCE = 'common practice, no published source';

/** Outside of a link's tube: 7/8 in; hairpins are made of thinner rod. */
export const USUAL_OUTSIDE = 22;
export const USUAL_HAIRPIN_OUTSIDE = 19;
/** A radius rod stands alone where a hairpin is two: 1 1/4 in. */
export const USUAL_RADIUS_ROD_OUTSIDE = 32;

/** Wall: 5/32 in, which leaves the tapping drill of a 5/8 in fine thread in a 7/8 in tube. Of hairpins 1/8 in, of radius rods 3/16 in. */
export const USUAL_WALL = 4;
export const USUAL_HAIRPIN_WALL = 3.2;
export const USUAL_RADIUS_ROD_WALL = 4.8;

/** By what inch size a shop that buys in inches knows the usual ones, which are kept in round millimetres: common practice, no published source. */
const TRADE_INCHES: ReadonlyMap<number, number> = new Map([
  [USUAL_OUTSIDE, 7 / 8],
  [USUAL_HAIRPIN_OUTSIDE, 3 / 4],
  [USUAL_RADIUS_ROD_OUTSIDE, 1 + 1 / 4],
  [USUAL_WALL, 5 / 32],
  [USUAL_HAIRPIN_WALL, 1 / 8],
  [USUAL_RADIUS_ROD_WALL, 3 / 16],
]);

/** mm by which a size of this file is called where sizes are in inches: 22.225 of 22, a tube of 7/8 in. One of no such name stays as it is. */
export const tradeSize = (mm: number, unit: LengthUnit): number =>
  unit === 'in' ? inches(TRADE_INCHES.get(mm) ?? mm / MM_PER_INCH) : mm;

/** Of steel drawn over a mandrel, which is what a careful shop buys for links. */
export const USUAL_MATERIAL = 'drawn-steel' as const;

/** A threaded end as such ends are sold, in one thread. */
export interface UsualEnd {
  readonly words: string;
  readonly diameter: number;
  readonly pitch: number;
  /** From the ball's centre to the thread's tip. */
  readonly reach: number;
  readonly threadLength: number;
  readonly jamNut: number;
}

/**
 * Inch threads are the fine ones (UNF; 11/16-18 is a special that link ends come with), with jam nuts as thick as ASME
 * B18.2.2 has them; metric ones as ISO 12240-4 has male ends and ISO 4035 has thin nuts. All of it from memory.
 */
export const USUAL_ENDS: readonly UsualEnd[] = [
  usualEnd('1/2-20', inches(1 / 2), 20, [2 + 7 / 16, 1 + 1 / 2, 5 / 16]),
  usualEnd('5/8-18', inches(5 / 8), 18, [2 + 5 / 8, 1 + 5 / 8, 3 / 8]),
  usualEnd('11/16-18', inches(11 / 16), 18, [3 + 1 / 8, 1 + 3 / 4, 25 / 64]),
  usualEnd('3/4-16', inches(3 / 4), 16, [2 + 7 / 8, 1 + 3 / 4, 27 / 64]),
  { words: 'M12 × 1.75', diameter: 12, pitch: 1.75, reach: 54, threadLength: 33, jamNut: 6 },
  { words: 'M14 × 2', diameter: 14, pitch: 2, reach: 60, threadLength: 36, jamNut: 7 },
  { words: 'M16 × 2', diameter: 16, pitch: 2, reach: 66, threadLength: 40, jamNut: 8 },
  { words: 'M20 × 2.5', diameter: 20, pitch: 2.5, reach: 78, threadLength: 47, jamNut: 10 },
];

function usualEnd(
  words: string,
  diameter: number,
  threadsPerInch: number,
  [reach, threadLength, jamNut]: readonly [number, number, number],
): UsualEnd {
  return {
    words,
    diameter,
    pitch: MM_PER_INCH / threadsPerInch,
    reach: inches(reach),
    threadLength: inches(threadLength),
    jamNut: inches(jamNut),
  };
}

/** The thread that is assumed where none is given: 5/8 in fine. */
export const USUAL_THREAD = USUAL_ENDS[1] as UsualEnd;

/** The usual end whose thread is nearest in diameter. */
export function usualEndFor(diameter: number): UsualEnd {
  return USUAL_ENDS.reduce((best, end) =>
    Math.abs(end.diameter - diameter) < Math.abs(best.diameter - diameter) ? end : best,
  );
}

/** What of a link a sleeve or eye takes off at a welded end: its outside radius, of a bushing's sleeve 1 1/4 in across. */
export const USUAL_SLEEVE = inches(5 / 8);

/** Thread engaged, in diameters: what builders take on links that steer or locate. In steel one is the least. */
export const ENGAGEMENT_WANTED = 1.5;

/** How far an end is to go in and out from where it is set, so that the link can be set at all: 1/8 in. */
export const USUAL_ADJUSTER = inches(1 / 8);

/** An arm forged or cut from plate at its boss: 1 1/2 in along its swing, 3/4 in thick. */
export const USUAL_ARM = { width: inches(1.5), thickness: inches(0.75) } as const;
