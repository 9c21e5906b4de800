import type { Point } from '../geometry/points.ts';
import { cross, norm, subtract, unit } from '../geometry/vectors.ts';
import type { Layout, ShaftDocument, Side } from '../layout/index.ts';
import { arrangementOf } from '../linkage/index.ts';
import { partsList, routeOf, type ShaftPart, splineWords } from '../shaft/index.ts';
import { formatDegrees, type LengthStyle } from '../units/index.ts';
import { linkNeeds, rockerNeeds, rodNeeds, tapeWords } from './link-needs.ts';
import type { PartNeed, Tilts, Wanted } from './part-need.ts';
import type { PartOf } from './part-schema.ts';
import { springNeeds } from './spring-needs.ts';

function fromLine(point: Point, a: Point, along: Point): number {
  return norm(cross(subtract(point, a), unit(along)));
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
    words: `${name}, ${tapeWords(length, style)} to the ball`,
  });
  return [
    arm('pitman', 'Pitman arm', fromLine(box.pitmanBall, box.sectorCentre, box.sectorAxis)),
    arm('steering', 'Steering arm for the drag link', fromKingpin(dragLinkTo, dragLinkBall)),
    arm('steering', 'Steering arm for the tie rod', fromKingpin('left', axle.left.tieRodBall)),
    arm('steering', 'Steering arm for the tie rod', fromKingpin('right', axle.right.tieRodBall)),
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

/** What stops the turn at the axle, where something does. */
function stopNeeds({ steering: { stopAngle } }: Layout): PartNeed[] {
  if (stopAngle === undefined) return [];
  return [
    {
      wanted: { kind: 'fixing' },
      count: 2,
      words: `Steering stop with lock nut, one each side, set to ${formatDegrees(stopAngle)} of wheel`,
    },
  ];
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
 * What a car needs for axle and steering, on the shelf's page and on the sheet alike: box, arms, stops, links with tubes,
 * ends and jam nuts, rods, springs, and all of the steering shaft that is drawn. Sizes that nobody gave say that they are
 * assumed.
 * Units: mm and degrees in the data, `style` in the words. `tilts` adds what each ball has to allow.
 * Checked: tests/unit/shelf.test.ts.
 */
export function needsOf(layout: Layout, style: LengthStyle, tilts: Tilts = () => undefined): PartNeed[] {
  return gathered([
    boxNeed(layout, style),
    ...armNeeds(layout, style),
    ...stopNeeds(layout),
    ...linkNeeds(layout, tilts, style),
    ...rodNeeds(layout, tilts, style),
    ...rockerNeeds(layout, style),
    ...springNeeds(layout, style),
    ...(layout.shaft ? shaftNeeds(layout.shaft, style) : []),
  ]);
}
