import type { FrontEnd } from '../../../shared-math/linkage/index.ts';
import { returnToStraight, type TurnSweep, turnsLockToLock } from '../../../shared-math/sweep/index.ts';
import { formatDegrees, toDegrees, toRadians } from '../../../shared-math/units/index.ts';
import { handwheelWords, ratioWords, turnsWords } from '../../../shared-math/words/index.ts';
import { formatQuantity, RIM_MOMENT } from '../../controls/quantities.ts';
import { type CurveColumn, endsOf } from '../../curves/curve-column.ts';
import { DASHED, DOTTED } from '../../curves/curve-ink.ts';
import { joined, otherCurve } from '../../curves/others.ts';
import { STEER_LADDER } from '../../curves/ranges.ts';
import { besideCurves, type Curve, type CurvePlot, type PlotChoice, type Strip } from '../../curves/strip.ts';
import { brakedOf } from '../../document/braked-car.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import type { Comparison } from '../../panels/compare/comparison.svelte.ts';
import TurnFigures from './TurnFigures.svelte';
import {
  PERCENT_LADDER,
  RATIO_LADDER,
  RETURN_LADDER,
  type TurnColumns,
  turnData,
  turnNow,
  WHEEL_LADDER,
} from './turn-data.ts';

/** Degrees of handwheel that an arrow key turns. */
const STEP = 5;

const degrees = (value: number) => formatDegrees(value, 2);
const perCent = (value: number) => `${Math.round(value)} %`;

function nearestToStraight(at: readonly number[], column: CurveColumn): number | undefined {
  let best: number | undefined;
  let least = Number.POSITIVE_INFINITY;
  at.forEach((place, row) => {
    const value = column[row];
    if (typeof value === 'number' && Math.abs(place) < least) {
      least = Math.abs(place);
      best = value;
    }
  });
  return best;
}

/** Wheels, ratio and Ackermann over the turn of the handwheel, from lock to lock. */
export function turnStrip(openLayout: OpenLayout, comparison: Comparison): Strip {
  let measure: 'degrees' | 'per cent' = $state('degrees');
  let beside: 'ratio' | 'return' = $state('ratio');
  const turn = $derived(openLayout.turn);
  const stand = $derived({
    heave: openLayout.carPose.pose.heave,
    roll: toRadians(openLayout.carPose.pose.roll),
    braking: openLayout.carPose.pose.braking,
  });
  const backOf = (frontEnd: FrontEnd, of: TurnSweep) =>
    returnToStraight(brakedOf(frontEnd, stand.braking), of, stand.heave, stand.roll);
  const back = $derived(backOf(openLayout.frontEnd, turn));
  const own = $derived(turnData(openLayout.layout, turn, back));
  const others = $derived(
    comparison.others.map((other) => ({
      other,
      whose: comparison.nameOf(other.id),
      data: turnData(other.layout, other.turn, backOf(other.frontEnd, other.turn)),
      now: turnNow(other.frontEnd, other.state, other.turn.straightRatio),
    })),
  );
  /** Each variant has its own locks, and with them its own places on the axis: they are brought onto one. */
  const table = $derived(joined([own, ...others.map(({ data: of }) => of)]));
  const data = $derived({ ...(table.columns[0] as TurnColumns), at: table.at });
  const now = $derived(turnNow(openLayout.frontEnd, openLayout.carPose.state, turn.straightRatio));
  const span = $derived(openLayout.carPose.limits.handwheel);
  const pose = $derived(openLayout.carPose.pose.handwheel);
  /** Looked at about what it is straight ahead, to the whole number. */
  const ratioMiddle = $derived(Math.round(nearestToStraight(data.at, data.ratio) ?? 16));

  const curve = (name: string, ink: Curve['ink'], of: keyof TurnColumns): Curve => ({
    name,
    ink,
    column: data[of],
    get now() {
      return now?.[of];
    },
  });
  const otherCurves = (of: keyof TurnColumns) =>
    others.map(({ other, whose, now: at }, i) =>
      otherCurve(other, whose, (table.columns[i + 1] as TurnColumns)[of], at?.[of]),
    );
  /** A curve in one sentence, for those who do not see it. */
  function sentence(name: string, column: CurveColumn, words: (value: number) => string): string {
    const ends = endsOf(column);
    if (!ends) return `${name}: nowhere in reach.`;
    const tell = (row: number) => `${words(column[row] as number)} ${handwheelWords(data.at[row] as number)}`;
    return `${name}: from ${tell(ends.first)} to ${tell(ends.last)}.`;
  }

  const wheelCurves = $derived([
    curve('left', { token: 'steel', width: 2 }, 'leftSteer'),
    curve('right', { token: 'ink', width: 1.6, dash: DASHED }, 'rightSteer'),
    curve('outer, ideal', { token: 'good', width: 1.6, dash: DOTTED }, 'idealOuter'),
    ...(others.length > 0 ? [curve('mean', { token: 'steel', width: 1 }, 'meanSteer')] : []),
    ...otherCurves('meanSteer'),
  ]);
  const alone = { token: 'steel', width: 2.2 } as const;
  const ratioCurves = $derived([curve('ratio', alone, 'ratio'), ...otherCurves('ratio')]);
  const unit = $derived(openLayout.settings.unit);
  /** N·m for one of what the reader turns bolts by. */
  const momentUnit = $derived(RIM_MOMENT[unit][1]);
  const inReadersMoments = (of: Curve): Curve => ({
    ...of,
    column: of.column.map((value) => (typeof value === 'number' ? value / momentUnit : value)),
    get now() {
      return typeof of.now === 'number' ? of.now / momentUnit : of.now;
    },
  });
  const returnCurves = $derived(
    [
      curve('both', alone, 'both'),
      curve('side', { token: 'ink', width: 1.6, dash: DASHED }, 'bySideForce'),
      curve('weight', { token: 'good', width: 1.6, dash: DOTTED }, 'byWeight'),
      ...otherCurves('both'),
    ].map(inReadersMoments),
  );
  const errorCurves = $derived([curve('outer wheel beyond ideal', alone, 'error'), ...otherCurves('error')]);
  const percentCurves = $derived([
    curve('at equal inner angle', alone, 'percent'),
    ...otherCurves('percent'),
  ]);

  const wheels: CurvePlot = {
    title: 'Wheels through the turn',
    unitWords: 'degrees, + to the left',
    get curves() {
      return wheelCurves;
    },
    middle: 0,
    ladder: WHEEL_LADDER,
    get summary() {
      return `${sentence('Left wheel', data.leftSteer, degrees)} ${sentence('Right wheel', data.rightSteer, degrees)} ${sentence('Outer wheel by Ackermann', data.idealOuter, degrees)}`;
    },
    words: (value) => formatDegrees(value, 1),
  };
  const besideChoice: PlotChoice = {
    legend: 'Shown beside the wheels',
    options: [
      { id: 'ratio', words: 'ratio', name: 'Overall ratio' },
      { id: 'return', words: 'return', name: 'Return to straight' },
    ],
    get chosen() {
      return beside;
    },
    choose: (id) => {
      beside = id === 'return' ? 'return' : 'ratio';
    },
  };
  const moment = (value: number) => formatQuantity(RIM_MOMENT, value, unit);
  const returns: CurvePlot = {
    title: 'Return to straight',
    choice: besideChoice,
    get unitWords() {
      return `${RIM_MOMENT[unit][0]}, + back to straight`;
    },
    get curves() {
      return returnCurves;
    },
    middle: 0,
    ladder: RETURN_LADDER,
    wanted: 0,
    get summary() {
      return `${sentence('Moment at the handwheel back to straight, of side force and weight together', data.both, moment)} ${sentence('Of the side force', data.bySideForce, moment)} ${sentence('Of the weight', data.byWeight, moment)}`;
    },
    words: (value) => moment(value * momentUnit),
  };
  const ratio: CurvePlot = {
    title: 'Overall ratio',
    choice: besideChoice,
    unitWords: 'handwheel to wheels',
    get curves() {
      return ratioCurves;
    },
    get middle() {
      return ratioMiddle;
    },
    ladder: RATIO_LADDER,
    get summary() {
      return sentence('Overall ratio', data.ratio, ratioWords);
    },
    words: ratioWords,
  };
  const choice: PlotChoice = {
    legend: 'Ackermann shown in',
    options: [
      { id: 'degrees', words: '°', name: 'Ackermann in degrees', title: 'In degrees' },
      {
        id: 'per cent',
        words: '%',
        name: 'Ackermann in per cent',
        title: 'In per cent of the ideal difference, at equal inner angle',
      },
    ],
    get chosen() {
      return measure;
    },
    choose: (id) => {
      measure = id === 'degrees' ? 'degrees' : 'per cent';
    },
  };
  const inDegrees: CurvePlot = {
    title: 'Ackermann error',
    choice,
    unitWords: '',
    get curves() {
      return errorCurves;
    },
    middle: 0,
    ladder: STEER_LADDER,
    wanted: 0,
    get summary() {
      return sentence('Outer wheel beyond its ideal', data.error, degrees);
    },
    words: degrees,
  };
  const inPerCent: CurvePlot = {
    title: 'Ackermann',
    choice,
    unitWords: '',
    get curves() {
      return percentCurves;
    },
    middle: 100,
    ladder: PERCENT_LADDER,
    wanted: 100,
    get summary() {
      return sentence(
        'Ackermann, inner less outer over inner less ideal outer at equal inner angle',
        data.percent,
        perCent,
      );
    },
    words: perCent,
  };

  return {
    axis: {
      along: 'handwheel',
      mirrored: true,
      onCurve: true,
      step: STEP,
      get at() {
        return data.at;
      },
      get span() {
        return span;
      },
      get pose() {
        return pose;
      },
      get ends() {
        return [`left ${turnsWords(span[1])}`, `right ${turnsWords(span[0])}`] as const;
      },
      get poseWords() {
        return handwheelWords(pose);
      },
      /** Beyond a lock there is nothing to pose. */
      move: (to) => {
        const [least, most] =
          turn.count > 0 ? [toDegrees(turn.right.handwheel), toDegrees(turn.left.handwheel)] : span;
        openLayout.carPose.set({ handwheel: Math.min(most, Math.max(least, to)) });
      },
    },
    get plots() {
      return [wheels, beside === 'ratio' ? ratio : returns, measure === 'degrees' ? inDegrees : inPerCent];
    },
    first: 1.5,
    get headline() {
      return turn.count < 2 ? undefined : `${turnsLockToLock(turn).toFixed(2)} turns lock to lock`;
    },
    beside: besideCurves('25rem', TurnFigures, {
      openLayout,
      get turn() {
        return turn;
      },
      get back() {
        return back;
      },
      get heave() {
        return openLayout.carPose.pose.heave;
      },
      get roll() {
        return toRadians(openLayout.carPose.pose.roll);
      },
    }),
  };
}
