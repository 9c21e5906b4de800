import { formatDegrees, formatLength, MM_PER_INCH } from '../../../shared-math/units/index.ts';
import type { CurveColumn } from '../../curves/curve-column.ts';
import { otherCurve } from '../../curves/others.ts';
import { STEER_LADDER, TOE_LADDERS } from '../../curves/ranges.ts';
import { besideCurves, type Curve, type CurvePlot, type PlotChoice, type Strip } from '../../curves/strip.ts';
import { toeWords } from '../../curves/toe-words.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import type { Comparison } from '../../panels/compare/comparison.svelte.ts';
import RoadPeaks from './RoadPeaks.svelte';
import { farthest, HEAVE_LADDERS, KICK_LADDER, type RoadColumns, roadData, roadNow } from './road-data.ts';
import { type RoadRun, STEP } from './road-run.svelte.ts';
import { momentWords } from './road-words.ts';

const NOTHING = { at: [0, 1], columns: { steer: [], heave: [], roll: [], toe: [], kick: [] } };

const degrees = (value: number) => formatDegrees(value, 2);

/** What the road does to the steering, over the time of the drive. */
export function roadStrip(openLayout: OpenLayout, comparison: Comparison, road: RoadRun): Strip {
  let travel: 'heave' | 'roll' = $state('heave');
  const unit = $derived(openLayout.settings.unit);
  const tyre = $derived(openLayout.layout.car.tyreRadius);
  const run = $derived(road.own?.run);
  const data = $derived(run ? roadData(run, tyre, unit) : NOTHING);
  const others = $derived(
    road.others.map(({ other, driven }) => ({
      other,
      driven,
      whose: comparison.nameOf(other.id),
      data: roadData(driven.run, other.layout.car.tyreRadius, unit),
    })),
  );
  const now = $derived(run ? roadNow(run, tyre, unit, road.time) : undefined);
  const othersNow = $derived(
    others.map(({ other, driven }) => roadNow(driven.run, other.layout.car.tyreRadius, unit, road.time)),
  );

  /** The curves of one figure. What they are now is asked for as it moves, so that the plots are not drawn anew for it. */
  function curvesOf(name: keyof RoadColumns, words: string): readonly Curve[] {
    return [
      {
        name: words,
        ink: { token: 'steel', width: 2.2 },
        column: data.columns[name],
        get now() {
          return now?.[name];
        },
      },
      ...others.map(({ other, whose, data: of }, i) => ({
        ...otherCurve(other, whose, of.columns[name], undefined),
        get now() {
          return othersNow[i]?.[name];
        },
      })),
    ];
  }
  const steerCurves = $derived(curvesOf('steer', 'both wheels'));
  const kickCurves = $derived(curvesOf('kick', 'handwheel'));
  const heaveCurves = $derived(curvesOf('heave', 'heave'));
  const rollCurves = $derived(curvesOf('roll', 'roll'));
  const toeCurves = $derived(curvesOf('toe', 'total toe-in'));

  const length = (value: number) =>
    formatLength(unit === 'in' ? value * MM_PER_INCH : value, openLayout.lengthStyle);

  /** A curve in one sentence, for those who do not see it. */
  function sentence(name: string, column: CurveColumn, words: (value: number) => string): string {
    const found = farthest(data, column);
    return found
      ? `${name}: at most ${words(found.value)}, ${found.at.toFixed(2)} s on.`
      : `${name}: not known.`;
  }

  const steer: CurvePlot = {
    title: 'Steered by the road',
    unitWords: 'degrees, + left',
    get curves() {
      return steerCurves;
    },
    middle: 0,
    ladder: STEER_LADDER,
    wanted: 0,
    get summary() {
      return sentence('Both wheels', data.columns.steer, degrees);
    },
    words: degrees,
  };
  const kickWords = (value: number) => formatDegrees(value, 1);
  const kick: CurvePlot = {
    title: 'Kick at the handwheel',
    unitWords: 'degrees',
    get curves() {
      return kickCurves;
    },
    middle: 0,
    ladder: KICK_LADDER,
    wanted: 0,
    get summary() {
      return sentence('Kick', data.columns.kick, kickWords);
    },
    words: kickWords,
  };
  const choice: PlotChoice = {
    legend: 'The axle’s travel',
    options: [
      { id: 'heave', words: 'heave', title: 'Up and down' },
      { id: 'roll', words: 'roll', title: 'One wheel higher than the other' },
    ],
    get chosen() {
      return travel;
    },
    choose: (id) => {
      travel = id === 'heave' ? 'heave' : 'roll';
    },
  };
  const heave: CurvePlot = {
    title: 'Axle',
    choice,
    unitWords: '',
    get curves() {
      return heaveCurves;
    },
    middle: 0,
    get ladder() {
      return HEAVE_LADDERS[unit];
    },
    get summary() {
      return sentence('Heave', data.columns.heave, length);
    },
    words: length,
  };
  const roll: CurvePlot = {
    title: 'Axle',
    choice,
    unitWords: '',
    get curves() {
      return rollCurves;
    },
    middle: 0,
    ladder: STEER_LADDER,
    get summary() {
      return sentence('Roll', data.columns.roll, degrees);
    },
    words: degrees,
  };
  const toe: CurvePlot = {
    title: 'Toe, both wheels',
    get unitWords() {
      return unit === 'in' ? 'inches' : 'mm';
    },
    get curves() {
      return toeCurves;
    },
    get middle() {
      return data.columns.toe[0] ?? 0;
    },
    get ladder() {
      return TOE_LADDERS[unit];
    },
    get summary() {
      return sentence('Toe-in', data.columns.toe, (value) => toeWords(value, unit));
    },
    words: (value) => toeWords(value, unit),
  };

  return {
    axis: {
      along: 'time',
      onCurve: true,
      step: STEP,
      get at() {
        return data.at;
      },
      get pose() {
        return road.time;
      },
      get ends() {
        return ['0 s', `${road.seconds.toFixed(1)} s`] as const;
      },
      get poseWords() {
        return momentWords(road.time, openLayout.length(road.distance));
      },
      move: (to) => road.goTo(to),
    },
    get plots() {
      return [steer, kick, travel === 'heave' ? heave : roll, toe];
    },
    first: 1.35,
    beside: besideCurves('19rem', RoadPeaks, { openLayout, comparison, road }),
  };
}
