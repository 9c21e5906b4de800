import { formatDecimal, formatDegrees } from '../../../shared-math/units/index.ts';
import { handwheelWords, turnsWords } from '../../../shared-math/words/index.ts';
import { DOTTED } from '../../curves/curve-ink.ts';
import { rungs, STEER_LADDER } from '../../curves/ranges.ts';
import { besideCurves, type Curve, type CurvePlot, type Strip } from '../../curves/strip.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import ShaftFigures from './ShaftFigures.svelte';
import { MOTION_AT, MOTION_SPAN, type MotionCurve, type ShaftPlace } from './shaft-place.svelte.ts';

/** Output to input, about 1. */
const SHARE_LADDER = rungs([0.05, 0.02], [0.1, 0.05], [0.2, 0.1], [0.5, 0.2], [1, 0.5], [3, 1], [10, 5]);

const degrees = (value: number) => formatDegrees(value, 2);
const share = (value: number) => formatDecimal(value, 3);

const says = (name: string, column: readonly number[], words: (value: number) => string) =>
  `${name}: from ${words(Math.min(...column))} to ${words(Math.max(...column))} over a turn.`;

/** How the box's input follows the handwheel over a turn either way, as clocked and at the best clocking. */
export function shaftStrip(openLayout: OpenLayout, place: ShaftPlace): Strip {
  const pose = $derived(openLayout.carPose.pose.handwheel);

  /** The curve's value where the handwheel stands. */
  function at(column: readonly number[]): number | undefined {
    const along = (pose + MOTION_SPAN) / 5;
    const row = Math.floor(along);
    const [a, b] = [column[row], column[row + 1] ?? column[row]];
    return a === undefined || b === undefined ? undefined : a + (along - row) * (b - a);
  }
  const curve = (name: string, ink: Curve['ink'], column: readonly number[]): Curve => ({
    name,
    ink,
    column,
    get now() {
      return at(column);
    },
  });
  /** A column as clocked, and at the best clocking where that is another. */
  function curvesOf(column: keyof MotionCurve): readonly Curve[] {
    const clocked = curve('as clocked', { token: 'steel', width: 2.2 }, place.now?.[column] ?? []);
    if (place.clockedBest) return [clocked];
    const ink = { token: 'good', width: 1.6, dash: DOTTED } as const;
    return [clocked, curve('best clocked', ink, place.best?.[column] ?? [])];
  }
  const offCurves = $derived(curvesOf('off'));
  const ratioCurves = $derived(curvesOf('ratio'));

  const off: CurvePlot = {
    title: 'Box input against the handwheel',
    unitWords: 'degrees ahead of it or behind',
    get curves() {
      return offCurves;
    },
    middle: 0,
    ladder: STEER_LADDER,
    wanted: 0,
    get summary() {
      return says('The box’s input less the handwheel', place.now?.off ?? [], degrees);
    },
    words: degrees,
  };
  const ratio: CurvePlot = {
    title: 'Ratio through the joints',
    unitWords: 'box input to handwheel',
    get curves() {
      return ratioCurves;
    },
    middle: 1,
    ladder: SHARE_LADDER,
    wanted: 1,
    get summary() {
      return says('The ratio through the joints', place.now?.ratio ?? [], share);
    },
    words: share,
  };

  return {
    axis: {
      along: 'handwheel',
      at: MOTION_AT,
      mirrored: true,
      onCurve: true,
      ends: [`left ${turnsWords(MOTION_SPAN)}`, `right ${turnsWords(-MOTION_SPAN)}`],
      step: 5,
      get pose() {
        return pose;
      },
      get poseWords() {
        return handwheelWords(pose);
      },
      move: (to) => {
        const [least, most] = openLayout.carPose.limits.handwheel;
        openLayout.carPose.set({ handwheel: Math.min(most, Math.max(least, to)) });
      },
    },
    plots: [off, ratio],
    beside: besideCurves('21rem', ShaftFigures, { openLayout, place }),
    get missing() {
      if (openLayout.turning && place.now && place.best) return undefined;
      return openLayout.shaft
        ? 'A joint is folded so far that it passes nothing on: there is no motion to draw.'
        : 'How the box’s input follows the handwheel is drawn here once there is a shaft.';
    },
  };
}
