import type { NumberedPoint } from '../../../../shared-math/layout/index.ts';
import { toeLength } from '../../../../shared-math/sweep/index.ts';
import {
  armEffect,
  dragLinkEffect,
  fourBarEffect,
  type LengthEffect,
  lateralBarEffect,
  oneSideEffect,
  type PlaceEffect,
  placeEffects,
  tieRodArmEffect,
  tieRodEffect,
} from '../../../../shared-math/tune/index.ts';
import {
  formatDecimal,
  formatToeLength,
  MM_PER_INCH,
  type Radians,
  toRadians,
} from '../../../../shared-math/units/index.ts';
import { type Block, heading, paragraph } from '../../flow/block.ts';
import { table } from '../../flow/table.ts';
import { BODY, BODY_BOLD, SMALL } from '../../pens/styles.ts';
import { angle } from '../figures.ts';
import { onePerNumber, pointName } from '../points.ts';
import type { SheetModel } from '../sheet-model.ts';

// What a sixteenth of an inch does: a shop's own error, beside each length and at each point.

/** mm: a sixteenth of an inch, what a careful shop is off by with tape and square. */
export const SIXTEENTH = MM_PER_INCH / 16;

/** "1/16 in", "1.6 mm". */
export const sixteenthWords = ({ style }: SheetModel) => (style.unit === 'in' ? '1/16 in' : '1.6 mm');

const AXIS_WORDS = ['fore and aft', 'across', 'up and down'] as const;

/** An effect in words: "steer 0.57°", "toe 0.126 in (0.28°)"; what does nothing that shows is said to. */
export function effectWords(model: SheetModel, effect: LengthEffect | undefined): string {
  if (!effect) return 'not known';
  const { steer = 0, toe = 0, caster, square, ratio, lock } = effect;
  const { car } = model.layout;
  const words = [
    steer >= SHOWN ? `wheels steer ${angle(steer as Radians, 2)}` : '',
    toe >= SHOWN
      ? `toe ${formatToeLength(2 * toeLength((toe / 2) as Radians, car.tyreRadius), model.style.unit)}, ${angle(toe as Radians, 2)}`
      : '',
    caster ? `caster ${angle(caster, 2)} on that side` : '',
    square ? `axle ${angle(square, 2)} out of square` : '',
    ratio ? `ratio ${formatDecimal(100 * ratio, 1)} per cent` : '',
    lock !== undefined && lock >= SHOWN ? `outer wheel ${angle(lock, 2)} at lock` : '',
  ].filter(Boolean);
  return words.length > 0 ? words.join('; ') : `less than ${angle(SHOWN as Radians, 2)}`;
}

/** rad: below this nothing shows in the figures' two decimals of a degree. */
const SHOWN = toRadians(0.005);

/** What a length of this name that is off by a sixteenth does; undefined where that is not known. */
export function lengthEffectOf(model: SheetModel, key: string, length = 0): LengthEffect | undefined {
  const { frontEnd, layout } = model;
  switch (key) {
    case 'dragLink':
      return dragLinkEffect(frontEnd, SIXTEENTH);
    case 'tieRod':
      return tieRodEffect(frontEnd, SIXTEENTH);
    case 'lateralBar':
      return lateralBarEffect(frontEnd, SIXTEENTH);
    case 'fourBar':
      return fourBarEffect(layout, SIXTEENTH);
    case 'side':
      return oneSideEffect(layout, SIXTEENTH);
    case 'tieRodArm':
      return tieRodArmEffect(layout, SIXTEENTH);
    default:
      return armEffect(length, SIXTEENTH);
  }
}

const known = new WeakMap<SheetModel, ReturnType<typeof placeEffects>>();

/** What a sixteenth at each point adds to the worst bump steer, worked out once for a sheet. */
function placesOf(model: SheetModel): ReturnType<typeof placeEffects> {
  const found = known.get(model) ?? placeEffects(model.job.document, SIXTEENTH);
  known.set(model, found);
  return found;
}

interface Tight {
  readonly point: NumberedPoint;
  readonly effect: PlaceEffect & { readonly adds: Radians };
}

/** The points where a sixteenth adds most to the worst bump steer, each by its tightest axis, the tightest first. */
function tightest(model: SheetModel, count: number): Tight[] {
  const places = placesOf(model);
  if (!places.ok) return [];
  return (
    places.value
      .flatMap((effect): Tight[] => {
        const point = model.points.find(({ id }) => id === effect.id);
        return point && effect.adds !== undefined && effect.adds > 0
          ? [{ point, effect: { ...effect, adds: effect.adds } }]
          : [];
      })
      .sort((a, b) => b.effect.adds - a.effect.adds)
      .filter(({ point }, i, all) => all.findIndex((one) => one.point.id === point.id) === i)
      // The box brings its pitman ball along: it is that ball's place that counts.
      .filter(({ point }) => point.id !== 'steering.box.sectorCentre')
      .slice(0, count)
  );
}

/** What a sixteenth at each point does to the worst bump steer, and the three places where it does most. */
export function toleranceBlocks(model: SheetModel): Block[] {
  const places = placesOf(model);
  const step = sixteenthWords(model);
  const head = heading(`What ${step} does at each point`);
  if (!places.ok)
    return [head, paragraph('Not known: the linkage as drawn does not reach over its own travel.')];
  const adds = (id: string, axis: 0 | 1 | 2) => {
    const effect = places.value.find((one) => one.id === id && one.axis === axis);
    if (effect?.adds === undefined) return 'does not reach';
    return effect.adds < SHOWN ? '–' : angle(effect.adds, 2);
  };
  const first = tightest(model, 3);
  const worst = new Set(first.map(({ effect }) => `${effect.id} ${effect.axis}`));
  const asked = new Set(places.value.map(({ id }) => id));
  return [
    heading('The tightest three'),
    ...(first.length > 0
      ? first.map(({ point, effect }, i) =>
          paragraph(
            `${i + 1}. ${pointName(point)} (${point.number}), ${AXIS_WORDS[effect.axis]}: ${step} off adds ${angle(effect.adds, 2)} to the worst bump steer.`,
            BODY_BOLD,
            0.6,
          ),
        )
      : [paragraph(`Nowhere does ${step} add to the worst bump steer.`)]),
    head,
    table(
      [
        { head: '', width: 0.5, align: 'right' },
        { head: 'Added to the worst bump steer', width: 2.7 },
        { head: 'Fore and aft', width: 1, align: 'right' },
        { head: 'Across', width: 1, align: 'right' },
        { head: 'Up, down', width: 1, align: 'right' },
      ],
      onePerNumber(model)
        .filter(({ id }) => asked.has(id))
        .map((point) => [
          [[String(point.number), BODY_BOLD]] as const,
          pointName(point),
          ...([0, 1, 2] as const).map(
            (axis) => [[adds(point.id, axis), worst.has(`${point.id} ${axis}`) ? BODY_BOLD : BODY]] as const,
          ),
        ]),
    ),
    paragraph(
      '–: less than half a hundredth of a degree. Either way, the worse of both, each link made to fit and both sides alike. Kingpins, wheel centres and links can be measured again once the car stands; a bracket that is welded cannot be moved.',
      SMALL,
    ),
  ];
}
