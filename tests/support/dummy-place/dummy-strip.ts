import type { Strip } from '../../../src-renderer/curves/strip.ts';

/** One plot of a straight line; what it is moved to is passed on. */
export function dummyStrip(move: (to: number) => void): Strip {
  return {
    axis: {
      along: 'dummy way',
      at: [0, 5, 10],
      pose: 2,
      poseWords: 'at two',
      onCurve: true,
      ends: ['the left end', 'the right end'],
      step: 1,
      move,
    },
    plots: [
      {
        title: 'Dummy plot',
        unitWords: 'in dummies',
        curves: [{ name: 'straight', ink: { token: 'steel', width: 2 }, column: [0, 1, 2], now: 0.4 }],
        middle: 1,
        ladder: [{ half: 2, tick: 1 }],
        summary: 'Straight: from 0 to 2.',
        words: (value) => `${value} dummies`,
      },
    ],
  };
}
