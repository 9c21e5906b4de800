import { distance, type Point } from '../geometry/points.ts';
import { cross, norm, subtract, unit } from '../geometry/vectors.ts';
import { ballJoints } from '../joints/index.ts';
import {
  type JointSide,
  type Layout,
  LOCATION_FACTS,
  lateralBars,
  type ShaftDocument,
  type ShaftEnd,
  type ShaftStock,
  type Side,
} from '../layout/index.ts';
import { arrangementOf } from '../linkage/index.ts';
import { linkMaking } from '../links/index.ts';
import { partsList, routeOf, type ShaftPart, sizeWords, splineWords } from '../shaft/index.ts';
import { type Degrees, formatDegrees, type LengthStyle } from '../units/index.ts';
import type { PartOf } from './part-schema.ts';

type SplineEnd = Extract<ShaftEnd, { kind: 'spline' }>;

/** What is wanted, by dimension; a figure that is not known yet is left out. mm, degrees. */
export type Wanted =
  | (Pick<PartOf<'box'>, 'kind' | 'mounting' | 'assist' | 'ratio' | 'sectorTravel'> & {
      readonly input: SplineEnd | undefined;
    })
  | {
      readonly kind: 'joint';
      readonly joint: PartOf<'joint'>['joint'];
      readonly ends: readonly [JointSide | undefined, JointSide | undefined];
    }
  | { readonly kind: 'stock'; readonly stock: ShaftStock; readonly length: number | undefined }
  | { readonly kind: 'support'; readonly bore: number | undefined }
  | {
      readonly kind: 'rod-end';
      readonly hand: PartOf<'rod-end'>['hand'] | undefined;
      /** Outside diameter of the tube that its thread goes into. */
      readonly tube: number;
      readonly ballAngle: Degrees | undefined;
    }
  | { readonly kind: 'arm'; readonly arm: PartOf<'arm'>['arm']; readonly length: number }
  /** No shelf keeps these: tube is cut, bolts and screws are bought. */
  | { readonly kind: 'tube'; readonly diameter: number; readonly length: number }
  | { readonly kind: 'fixing' };

/** A line of what a car needs. */
export interface PartNeed {
  readonly wanted: Wanted;
  readonly count: number;
  /** "Steering box, side steer, manual, 16 to 1, sector 35.0° each way". */
  readonly words: string;
}

function fromLine(point: Point, a: Point, along: Point): number {
  return norm(cross(subtract(point, a), unit(along)));
}

/** The most that each ball tilts over travel and turn, by hardpoint; undefined if it has not been worked out. */
export type Tilts = (hardpoint: string) => Degrees | undefined;

function largest(tilts: readonly (Degrees | undefined)[]): Degrees | undefined {
  const known = tilts.filter((tilt) => tilt !== undefined);
  return known.length === tilts.length ? Math.max(...known) : undefined;
}

function boxNeed(layout: Layout, style: LengthStyle): PartNeed {
  const { assist, ratio, sectorTravel } = layout.steering.box;
  const mounting = arrangementOf(layout);
  const fit = layout.shaft?.box.fit;
  const input = fit?.kind === 'spline' ? fit : undefined;
  return {
    wanted: { kind: 'box', mounting, assist, ratio, sectorTravel, input },
    count: 1,
    words: `Steering box, ${mounting} steer, ${assist}, ${ratio} to 1, sector ${formatDegrees(sectorTravel)} each way${
      input ? `, input ${splineWords(input, style)}` : ''
    }`,
  };
}

function armNeeds({ axle, steering }: Layout, style: LengthStyle): PartNeed[] {
  const { box, dragLinkTo, dragLinkBall } = steering;
  const fromKingpin = (side: Side, ball: Point) =>
    fromLine(ball, axle[side].kingpinBottom, subtract(axle[side].kingpinTop, axle[side].kingpinBottom));
  const arm = (kind: PartOf<'arm'>['arm'], name: string, length: number): PartNeed => ({
    wanted: { kind: 'arm', arm: kind, length },
    count: 1,
    words: `${name}, ${sizeWords(length, style)} to the ball`,
  });
  return [
    arm('pitman', 'Pitman arm', fromLine(box.pitmanBall, box.sectorCentre, box.sectorAxis)),
    arm('steering', 'Steering arm for the drag link', fromKingpin(dragLinkTo, dragLinkBall)),
    arm('steering', 'Steering arm for the tie rod', fromKingpin('left', axle.left.tieRodBall)),
    arm('steering', 'Steering arm for the tie rod', fromKingpin('right', axle.right.tieRodBall)),
  ];
}

/** A link's tube by its length between ball centres, and its two ends. */
function linkNeeds(
  name: string,
  ends: readonly [string, string],
  between: readonly [Point, Point],
  diameter: number,
  tilts: Tilts,
  style: LengthStyle,
): PartNeed[] {
  const length = distance(...between);
  const ballAngle = largest(ends.map(tilts));
  const tilting = ballAngle === undefined ? '' : `, ball tilts up to ${formatDegrees(ballAngle, 0)}`;
  const size = (mm: number) => sizeWords(mm, style);
  return [
    {
      wanted: { kind: 'tube', diameter, length },
      count: 1,
      words: `${name}, ${size(length)} between ball centres, of tube ${size(diameter)} outside`,
    },
    // One of each hand, so that the link is set by turning it (common practice, no published source).
    ...(['right', 'left'] as const).map(
      (hand): PartNeed => ({
        wanted: { kind: 'rod-end', hand, tube: diameter, ballAngle },
        count: 1,
        words: `${name} end, ${hand}-hand thread, into tube ${size(diameter)} outside${tilting}`,
      }),
    ),
  ];
}

/** The balls of the axle's rods; leaves have bushings. */
function rodNeeds(layout: Layout, tilts: Tilts, style: LengthStyle): PartNeed[] {
  const balls = ballJoints(layout).filter(({ id }) => id.startsWith('location.'));
  if (balls.length === 0) return [];
  const tube = linkMaking(layout, 'rods').outside.value;
  const ballAngle = largest(balls.map(({ id }) => tilts(id)));
  const tilting = ballAngle === undefined ? '' : `, ball tilts up to ${formatDegrees(ballAngle, 0)}`;
  return [
    {
      wanted: { kind: 'rod-end', hand: undefined, tube, ballAngle },
      count: balls.length,
      words: `${LOCATION_FACTS[layout.location.kind].rodEnd}, into tube ${sizeWords(tube, style)} outside${tilting}`,
    },
  ];
}

function shaftWanted(part: ShaftPart): Wanted {
  switch (part.kind) {
    case 'joint':
      return { kind: 'joint', joint: part.joint, ends: [part.columnSide, part.boxSide] };
    case 'stock':
    case 'support':
      return part;
    default:
      return { kind: 'fixing' };
  }
}

/** What a steering shaft needs: its parts list, as needs. */
export function shaftNeeds(shaft: ShaftDocument, style: LengthStyle): PartNeed[] {
  return partsList(shaft, routeOf(shaft), style).map(({ part, count, words }) => ({
    wanted: shaftWanted(part),
    count,
    words,
  }));
}

/** Needs that read alike are one line with their count. */
function gathered(needs: readonly PartNeed[]): PartNeed[] {
  const found = new Map<string, PartNeed>();
  for (const need of needs) {
    const same = found.get(need.words);
    found.set(need.words, same ? { ...same, count: same.count + need.count } : need);
  }
  return [...found.values()];
}

/**
 * What a car needs for its steering: box, arms, drag link, tie rod and their ends, the ends of lateral bar and rods, and
 * all of the steering shaft that is drawn.
 * Units: mm and degrees in the data, `style` in the words. `tilts` adds what each ball has to allow.
 * Checked: tests/unit/shelf.test.ts.
 */
export function needsOf(layout: Layout, style: LengthStyle, tilts: Tilts = () => undefined): PartNeed[] {
  const { steering, axle, lateral } = layout;
  return gathered([
    boxNeed(layout, style),
    ...armNeeds(layout, style),
    ...linkNeeds(
      'Drag link',
      ['steering.box.pitmanBall', 'steering.dragLinkBall'],
      [steering.box.pitmanBall, steering.dragLinkBall],
      linkMaking(layout, 'dragLink').outside.value,
      tilts,
      style,
    ),
    ...linkNeeds(
      'Tie rod',
      ['axle.left.tieRodBall', 'axle.right.tieRodBall'],
      [axle.left.tieRodBall, axle.right.tieRodBall],
      linkMaking(layout, 'tieRod').outside.value,
      tilts,
      style,
    ),
    ...lateralBars(lateral).flatMap(({ name, from, to }) =>
      linkNeeds(
        name,
        [from.id, to.id],
        [from.at, to.at],
        linkMaking(layout, 'lateralBar').outside.value,
        tilts,
        style,
      ),
    ),
    ...rodNeeds(layout, tilts, style),
    ...(layout.shaft ? shaftNeeds(layout.shaft, style) : []),
  ]);
}
