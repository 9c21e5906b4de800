import { distance, type Point } from '../../geometry/points.ts';
import { hardpoints, type Layout, type LayoutDocument, lateralBars } from '../../layout/index.ts';
import { type LengthStyle, MM_PER_INCH } from '../../units/index.ts';
import type { Finding, Remedy, Rule, Speech } from '../finding.ts';

// Slips of the keyboard: a figure typed in one unit and taken in the other, which no part and no place of a car has.

const SOURCE = 'common practice, no published source: wider than any such car';

/** mm: how far from the origin a point of the front end and its shaft stands at most, ahead and back, out, and up. */
const PLACES: readonly (readonly [least: number, most: number])[] = [
  [-4000, 2000],
  [-1500, 1500],
  [-300, 2500],
];

/** What has a length, and between which ones, mm. */
interface Sized {
  readonly name: string;
  readonly part: string;
  readonly value: number;
  readonly range: readonly [least: number, most: number];
  /** The value of the document that it is, where it is one. */
  readonly path?: string;
}

const plainFields: readonly [name: string, key: keyof LayoutDocument['car'], least: number, most: number][] =
  [
    ['Wheelbase', 'wheelbase', 1500, 6000],
    ['Tyre radius', 'tyreRadius', 180, 700],
    ['Tyre width', 'tyreWidth', 50, 500],
    ['Handwheel radius', 'handwheelRadius', 100, 350],
  ];

/** The links and arms of a layout, and the sizes of its car. */
function sizes(layout: Layout): Sized[] {
  const { axle, car, lateral, location, steering } = layout;
  const between = (name: string, part: string, a: Point, b: Point, least: number, most: number): Sized => ({
    name,
    part,
    value: distance(a, b),
    range: [least, most],
  });
  const { box } = steering;
  return [
    ...plainFields.map(
      ([name, key, least, most]): Sized => ({
        name,
        part: 'axle.left.wheelCentre',
        value: car[key] as number,
        range: [least, most],
        path: `car.${key}`,
      }),
    ),
    between('Kingpin', 'axle.left.kingpinTop', axle.left.kingpinTop, axle.left.kingpinBottom, 40, 400),
    between('Tie rod', 'axle.left.tieRodBall', axle.left.tieRodBall, axle.right.tieRodBall, 500, 2200),
    between('Drag link', 'steering.dragLinkBall', steering.dragLinkBall, box.pitmanBall, 120, 2000),
    between('Pitman arm', 'steering.box.pitmanBall', box.pitmanBall, box.sectorCentre, 40, 500),
    ...lateralBars(lateral).map(({ name, from, to }) => between(name, to.id, from.at, to.at, 150, 2000)),
    ...(lateral.kind === 'fixed-spring'
      ? [between('Half of the transverse spring', 'lateral.eye', lateral.eye, lateral.clamp, 200, 1000)]
      : []),
    ...(location.kind === 'quarter-elliptic'
      ? [
          between(
            'Radius rod',
            'location.left.rod.frame',
            location.left.rod.axle,
            location.left.rod.frame,
            150,
            2000,
          ),
          between(
            'Quarter-elliptic spring',
            'location.left.eye',
            location.left.eye,
            location.left.clamp,
            200,
            1000,
          ),
        ]
      : []),
    ...(location.kind === 'four-bar'
      ? (['upper', 'lower'] as const).map((bar) =>
          between(
            `${bar === 'upper' ? 'Upper' : 'Lower'} bar`,
            `location.left.${bar}.frame`,
            location.left[bar].axle,
            location.left[bar].frame,
            150,
            2000,
          ),
        )
      : []),
  ];
}

/** What a value was meant to be if its unit was mistaken, in range; undefined if neither way makes it one. */
function meant(value: number, [least, most]: readonly [number, number]): number | undefined {
  return [value / MM_PER_INCH, value * MM_PER_INCH].find((other) => other >= least && other <= most);
}

/** "24 in or 610 mm": both units, as it is not known in which one was thought. */
function bothUnits(mm: number, length: Speech['length'], style: LengthStyle): string {
  const metric = `${Number(mm.toFixed(1))} mm`;
  const inches = style.unit === 'in' ? length(mm) : `${Number((mm / MM_PER_INCH).toFixed(2))} in`;
  return style.unit === 'in' ? `${inches} or ${metric}` : `${metric} or ${inches}`;
}

function doubted(
  sentence: string,
  part: string,
  range: string,
  other: number | undefined,
  remedy: (value: number) => Remedy,
  speak: Speech,
): Finding {
  return {
    rule: 'plausible',
    severity: 'attention',
    part,
    sentence,
    limit: range,
    source: SOURCE,
    advice:
      other === undefined
        ? 'Measure it again, and look at the unit.'
        : `Was ${bothUnits(Math.abs(other), speak.length, speak.style)} meant? Set it to that.`,
    ...(other === undefined ? {} : { remedy: remedy(other) }),
  };
}

const WAYS = [
  ['ahead', 'behind'],
  ['left', 'right'],
  ['up', 'below the ground'],
] as const;

function placesOff(layout: Layout, speak: Speech): Finding[] {
  const list: Finding[] = [];
  const seen = new Set<string>();
  for (const { id, name, at, twin, brings } of hardpoints(layout as LayoutDocument)) {
    if (twin !== undefined && seen.has(twin)) continue;
    seen.add(id);
    for (const axis of [0, 1, 2] as const) {
      const value = at[axis];
      const range = PLACES[axis] as readonly [number, number];
      if (value >= range[0] && value <= range[1]) continue;
      // A place near the origin may be anything: only a figure that is too large says which slip it was.
      const other = value / MM_PER_INCH;
      const to = at.map((each, i) => (i === axis ? other : each)) as unknown as Point;
      const [plus, minus] = WAYS[axis];
      list.push(
        doubted(
          `${name} stands ${speak.length(Math.abs(value), range.map(Math.abs))} ${value > 0 ? plus : minus}: no part of a front end is there`,
          id,
          `usual ${speak.length(-range[0])} ${minus} to ${speak.length(range[1])} ${plus}`,
          other >= range[0] && other <= range[1] ? other : undefined,
          () => ({ kind: 'move', id, to }),
          speak,
        ),
      );
    }
    // What is carried by a point that is off is off with it: once is enough.
    if (list.some(({ part }) => part === id)) for (const other of brings ?? []) seen.add(other);
  }
  return list;
}

function sizesOff(layout: Layout, speak: Speech): Finding[] {
  return sizes(layout).flatMap(({ name, part, value, range, path }) => {
    if (value >= range[0] && value <= range[1]) return [];
    const long = value > range[1];
    const what = path
      ? `too ${long ? 'large' : 'small'} for any such car`
      : `too ${long ? 'long' : 'short'} for such a part`;
    return [
      doubted(
        `${name} ${speak.length(value, range)}: ${what}`,
        part,
        `usual ${speak.length(range[0])} to ${speak.length(range[1])}`,
        path ? meant(value, range) : undefined,
        (other) => ({
          kind: 'set',
          path: path as string,
          value: other,
          words: `Set it to ${bothUnits(other, speak.length, speak.style)}`,
        }),
        speak,
      ),
    ];
  });
}

/** N on the front axle, from a light car of this kind to a loaded truck. */
const LOADS: readonly [least: number, most: number] = [1500, 40_000];
/** N in a pound-force, and in the weight of a kilogram. */
const UNITS_OF_LOAD = [4.4482216152605, 9.80665] as const;

function loadOff({ car }: Layout, speak: Speech): Finding[] {
  const load = car.frontAxleLoad;
  if (load >= LOADS[0] && load <= LOADS[1]) return [];
  const others = UNITS_OF_LOAD.flatMap((unit) => [load * unit, load / unit]);
  const other = others.find((each) => each >= LOADS[0] && each <= LOADS[1]);
  return [
    {
      rule: 'plausible',
      severity: 'attention',
      part: 'axle.left.wheelCentre',
      sentence: `Load on the front axle ${speak.load(load)}: too ${load < LOADS[0] ? 'little' : 'much'} for any such car`,
      limit: `usual ${speak.load(LOADS[0])} to ${speak.load(LOADS[1])}`,
      source: SOURCE,
      advice:
        other === undefined
          ? 'Weigh it again, and look at the unit.'
          : `Was ${speak.load(other)} meant? Set it to that.`,
      ...(other === undefined
        ? {}
        : {
            remedy: {
              kind: 'set' as const,
              path: 'car.frontAxleLoad',
              value: other,
              words: `Set it to ${speak.load(other)}`,
            },
          }),
    },
  ];
}

/** Lengths, places and loads that no such part or car has: a slip of the hand, or the other unit. */
export const plausible: Rule = {
  name: 'plausible',
  measures: 'Whether lengths, places and the load are ones that such cars have',
  judge({ layout }, speak): Finding[] {
    const places = placesOff(layout, speak);
    // A link to a place that is wrong is wrong for that reason alone.
    return [...places, ...(places.length > 0 ? [] : sizesOff(layout, speak)), ...loadOff(layout, speak)];
  },
};
