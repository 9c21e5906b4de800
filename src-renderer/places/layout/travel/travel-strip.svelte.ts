import type { FrontEndState } from '../../../../shared-math/linkage/index.ts';
import { summariseTravel } from '../../../../shared-math/sweep/index.ts';
import { formatDegrees, formatSteer, MM_PER_INCH, toDegrees } from '../../../../shared-math/units/index.ts';
import type { CurveColumn } from '../../../curves/curve-column.ts';
import { DASHED } from '../../../curves/curve-ink.ts';
import { otherCurve } from '../../../curves/others.ts';
import { STEER_LADDER, TOE_LADDERS } from '../../../curves/ranges.ts';
import { besideCurves, type Curve, type CurvePlot, type Strip } from '../../../curves/strip.ts';
import { toeWords } from '../../../curves/toe-words.ts';
import { brakingNote } from '../../../document/braked-car.ts';
import type { OpenLayout } from '../../../document/open-layout.svelte.ts';
import type { Comparison, OtherVariant } from '../../../panels/compare/comparison.svelte.ts';
import type { Studies } from '../studies.svelte.ts';
import { reachNote } from './reach-note.ts';
import TravelFigures from './TravelFigures.svelte';
import {
  type Along,
  atRide,
  brakingData,
  CASTER_LADDER,
  hasGaps,
  type TravelData,
  toeOf,
  travelData,
} from './travel-data.ts';
import { curveSentence, endWords, placeWords } from './travel-words.ts';

const degrees = (value: number) => formatDegrees(value, 2);

const ALONG = ['heave', 'roll', 'braking'] as const;

/** A variant's curves along an axis; none over braking where what its springs carry cannot be. */
function sweptAlong(
  along: Along,
  { heaveSweep, rollSweep, brakingSweep }: Pick<OtherVariant, 'heaveSweep' | 'rollSweep' | 'brakingSweep'>,
  tyreRadius: number,
  unit: 'in' | 'mm',
): TravelData {
  if (along === 'braking') return brakingData(brakingSweep, tyreRadius, unit);
  return travelData(along === 'heave' ? heaveSweep : rollSweep, tyreRadius, unit);
}

/**
 * Steer, toe and caster over the axle's heave or roll.
 *
 * @param keepTolerance keeps the shop's tolerance, mm
 */
export function travelStrip(
  openLayout: OpenLayout,
  comparison: Comparison,
  studies: Studies,
  keepTolerance: (tolerance: number) => void,
): Strip {
  let along: Along = $state('heave');

  const unit = $derived(openLayout.settings.unit);
  const style = $derived(openLayout.lengthStyle);
  const tyre = $derived(openLayout.layout.car.tyreRadius);
  const data = $derived(sweptAlong(along, openLayout, tyre, unit));
  const pose = $derived(openLayout.carPose.pose[along]);
  /** Along one axis the curves hold with the others at nothing. */
  const onCurve = $derived(ALONG.every((axis) => axis === along || openLayout.carPose.pose[axis] === 0));
  const car = $derived(openLayout.carPose.state.status === 'ok' ? openLayout.carPose.state : undefined);
  const note = $derived(hasGaps(data) ? reachNote(openLayout, along) : '');
  const wanted = $derived(atRide(data, data.meanSteer));
  /** With the handwheel turned, steer and toe are looked at about what that turn asks, not about straight ahead. */
  const turned = $derived(openLayout.carPose.pose.handwheel !== 0);
  const steerMiddle = $derived(turned ? Math.round(wanted ?? 0) : 0);
  const toeMiddle = $derived(turned ? Math.round((atRide(data, data.toe) ?? 0) * 4) / 4 : 0);
  /** Caster is looked at about what it is at ride height, to the whole degree. */
  const casterMiddle = $derived(Math.round(atRide(data, data.leftCaster) ?? 0));

  /** The other variants' curves over the same travel, one of each for every plot. */
  const others = $derived(
    comparison.others.map((other) => ({
      other,
      whose: comparison.nameOf(other.id),
      data: sweptAlong(along, other, other.layout.car.tyreRadius, unit),
      state: other.state.status === 'ok' ? other.state : undefined,
    })),
  );
  type Now = (state: FrontEndState, of: Pick<OtherVariant, 'layout'>) => number;
  const otherCurves = (column: (data: TravelData) => CurveColumn, now: Now) =>
    others.map(({ other, whose, data: of, state }) =>
      otherCurve(other, whose, column(of), state && now(state, other)),
    );
  /** What a curve is now is asked for as the car moves, so that the plots are not drawn anew for it. */
  const own = (name: string, ink: Curve['ink'], column: CurveColumn, now: Now): Curve => ({
    name,
    ink,
    column,
    get now() {
      return car && now(car, openLayout);
    },
  });

  /** The spread of bump steer about what the handwheel asks; known straight ahead and over heave alone. */
  const band = $derived.by(() => {
    const found = studies.tolerance.band;
    if (!found || along !== 'heave' || turned || found.heave.length !== data.at.length) return undefined;
    const column = (edge: Float64Array): CurveColumn =>
      Array.from(edge, (angle) => toDegrees(angle) + (wanted ?? 0));
    return { lower: column(found.lower), upper: column(found.upper) };
  });

  const meanSteer: Now = (state) => toDegrees(state.meanSteer);
  const toeIn: Now = ({ left, right }, { layout }) =>
    toeOf(left.steer, right.steer, layout.car.tyreRadius, unit);
  const leftCaster: Now = ({ left }) => toDegrees(left.caster);
  const thick = { token: 'steel', width: 2.2 } as const;
  const dashed = { token: 'ink', width: 1.2, dash: DASHED } as const;
  const steerCurves = $derived([
    own('left', { token: 'ink', width: 1.2 }, data.leftSteer, ({ left }) => toDegrees(left.steer)),
    own('right', dashed, data.rightSteer, ({ right }) => toDegrees(right.steer)),
    own('mean', { token: 'steel', width: 2.4 }, data.meanSteer, meanSteer),
    ...otherCurves((of) => of.meanSteer, meanSteer),
  ]);
  const toeCurves = $derived([own('toe-in', thick, data.toe, toeIn), ...otherCurves((of) => of.toe, toeIn)]);
  const casterCurves = $derived([
    own('left', thick, data.leftCaster, leftCaster),
    own('right', dashed, data.rightCaster, ({ right }) => toDegrees(right.caster)),
    ...otherCurves((of) => of.leftCaster, leftCaster),
  ]);

  const steer: CurvePlot = {
    title: 'Steer of the wheels',
    choice: {
      legend: 'Curves are drawn over',
      options: [
        { id: 'heave', words: 'over heave' },
        { id: 'roll', words: 'over roll' },
        { id: 'braking', words: 'over braking' },
      ],
      get chosen() {
        return along;
      },
      choose: (id) => {
        along = ALONG.find((axis) => axis === id) ?? 'heave';
      },
    },
    unitWords: 'degrees, + left',
    get curves() {
      return steerCurves;
    },
    get middle() {
      return steerMiddle;
    },
    get band() {
      return band;
    },
    ladder: STEER_LADDER,
    get wanted() {
      return wanted;
    },
    get summary() {
      return curveSentence('Mean steer of the wheels', data, data.meanSteer, degrees, style);
    },
    words: degrees,
  };
  const toeWordsNow = (value: number) => toeWords(value, unit);
  const toe: CurvePlot = {
    title: 'Toe, both wheels',
    get unitWords() {
      return unit === 'in' ? 'in, front to rear' : 'mm, front to rear';
    },
    get curves() {
      return toeCurves;
    },
    get middle() {
      return toeMiddle;
    },
    get ladder() {
      return TOE_LADDERS[unit];
    },
    get summary() {
      return curveSentence('Toe-in of both wheels', data, data.toe, toeWordsNow, style);
    },
    words: toeWordsNow,
  };
  const caster: CurvePlot = {
    title: 'Caster',
    unitWords: 'degrees',
    get curves() {
      return casterCurves;
    },
    get middle() {
      return casterMiddle;
    },
    ladder: CASTER_LADDER,
    get summary() {
      return `${curveSentence('Left caster', data, data.leftCaster, degrees, style)} ${curveSentence('Right caster', data, data.rightCaster, degrees, style)}`;
    },
    words: degrees,
  };

  return {
    axis: {
      get along() {
        return along;
      },
      get at() {
        return data.at;
      },
      get pose() {
        return pose;
      },
      get onCurve() {
        return onCurve;
      },
      get ends() {
        return [
          endWords(along, data.at[0] ?? 0, style),
          endWords(along, data.at.at(-1) ?? 0, style),
        ] as const;
      },
      get poseWords() {
        return placeWords(along, pose, style);
      },
      get step() {
        if (along === 'braking') return 0.01;
        return along === 'roll' ? 0.1 : unit === 'in' ? MM_PER_INCH / 16 : 1;
      },
      move: (to) => openLayout.carPose.set({ heave: 0, roll: 0, braking: 0, [along]: to }),
    },
    plots: [steer, toe, caster],
    first: 1.7,
    get headline() {
      if (along === 'braking') return undefined;
      const { okCount, worstBumpSteer } =
        along === 'heave' ? openLayout.summary : summariseTravel(openLayout.rollSweep);
      if (okCount === 0) return 'No pose of the travel can be solved';
      const guessed = [...openLayout.guessed].some((id) => !id.startsWith('shaft.'));
      const what = along === 'heave' ? 'Worst bump steer' : 'Worst steer in roll';
      return `${what} ${formatSteer(worstBumpSteer)}${guessed ? ', based on guesses' : ''}`;
    },
    get missing() {
      return along === 'braking' && data.at.length === 0 ? brakingNote(openLayout.frontEnd) : undefined;
    },
    beside: besideCurves('16.5rem', TravelFigures, {
      openLayout,
      comparison,
      studies,
      keepTolerance,
      get along() {
        return along;
      },
      get reachNote() {
        return note;
      },
    }),
  };
}
