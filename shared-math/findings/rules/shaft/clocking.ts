import { CLOCK_NOTICED, halfTurn, type Turning, turningOf } from '../../../shaft/index.ts';
import { type Radians, toDegrees, toRadians } from '../../../units/index.ts';
import type { Finding, Rule } from '../../finding.ts';
import { jointPart, judgedShaft, PRACTICE, piecePart } from './judged.ts';

/** rad. What is lost by less than this nobody feels, however far off the clock is. */
const SWING_REPORTED: Radians = toRadians(0.2);

/** rad. Less than this no reading of the angle shows. */
const EVEN: Radians = toRadians(0.005);

/** The shaft whose clock is farthest from the best, and how far; ears are the same after half a turn. */
function farthest({ clocks, bestClocks }: Turning): { readonly index: number; readonly off: Radians } {
  let index = 0;
  let off: Radians = 0;
  for (let i = 0; i < clocks.length; i += 1) {
    const away = Math.abs(halfTurn((clocks[i] as number) - (bestClocks[i] as number)));
    if (away > off) [index, off] = [i, away];
  }
  return { index, off };
}

/** How unevenly the box turns with the handwheel, and what better clocking of the yokes would leave. */
export const shaftClocking: Rule = {
  name: 'shaft-clocking',
  measures: 'Swing of the box’s input over a turn, as clocked and as clocked best',
  judge(analysis, speak): Finding[] {
    const judged = judgedShaft(analysis, speak);
    if (!judged) return [];
    const { shaft, route } = judged;
    const turning = turningOf(shaft, route);
    if (!turning.ok) {
      const { joint } = turning.failure;
      return [
        {
          rule: 'shaft-clocking',
          severity: 'stop',
          part: jointPart(joint),
          sentence: `Joint ${joint + 1} is folded so far that the shaft does not turn`,
          limit: '',
          source: 'kinematics of the joint: at a right angle it passes nothing on',
          advice: 'Move it so that its shafts run straighter.',
        },
      ];
    }
    const { motion, best, bestClocks } = turning.value;
    const { index, off } = farthest(turning.value);
    const wrong = off > CLOCK_NOTICED && motion.swing - best.swing > SWING_REPORTED;
    const left = best.swing < EVEN ? 'nothing' : speak.angle(best.swing, 1, [motion.swing]);
    const swing = speak.angle(motion.swing, 1, [best.swing]);
    return [
      {
        rule: 'shaft-clocking',
        severity: wrong ? 'attention' : 'info',
        part: piecePart(index),
        sentence: wrong
          ? `Shaft ${index + 1} is clocked ${speak.angle(off, 0, [CLOCK_NOTICED])} off its best: the box swings ${swing} over a turn, where ${left} would be left`
          : motion.swing < EVEN
            ? 'The box’s input turns evenly with the handwheel'
            : `The box’s input swings ${swing} over a turn of the handwheel`,
        limit: wrong ? `noticed from ${speak.angle(CLOCK_NOTICED, 0)} off` : '',
        source: PRACTICE,
        advice: wrong ? `Set the best clocking: ${left} of swing.` : '',
        ...(wrong
          ? {
              remedy: {
                kind: 'set' as const,
                path: 'shaft.shafts',
                value: shaft.shafts.map((piece, i) => ({
                  ...piece,
                  clock: halfTurned(toDegrees(bestClocks[i] as number)),
                })),
                words: 'Set the best clocking',
              },
            }
          : {}),
      },
    ];
  },
};

/** Degrees to a tenth, no yoke is set finer; -90 is 90. */
function halfTurned(degrees: number): number {
  const tenth = Math.round(degrees * 10) / 10 + 0;
  return tenth <= -90 ? tenth + 180 : tenth;
}
