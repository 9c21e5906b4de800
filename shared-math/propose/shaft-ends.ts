import type { Layout, ShaftDocument, ShaftEnd, ShaftStock } from '../layout/index.ts';
import {
  endsAt,
  judgeEnds,
  meetingPlaces,
  ON_ITS_END,
  type Route,
  routeOf,
  type Stub,
  sideTaking,
  stubsOf,
  USUAL_DOUBLE_D,
} from '../shaft/index.ts';
import { type PartOf, partsAgainstShelf, type Shelved, shaftNeeds } from '../shelf/index.ts';
import { toDegrees } from '../units/index.ts';
import type { BoxKind } from './boxes.ts';
import type { Car } from './car.ts';

// The ends of a proposed shaft: the column's as it is given, the box's as its input is, joints of the shelf where they go onto
// both, else joints to be bought that do. What is not given stays not given.

type Side = NonNullable<ShaftDocument['joints'][number]['columnSide']>;
type ShelvedJoint = Shelved & { readonly part: PartOf<'joint'> };

/** mm of diameter that a route is led for: thicker stock would come nearer to what it passes. */
const LED_FOR = 19.2;
/** What a shaft is made from where the shelf has nothing: 3/4 in double-D, common practice, no published source. */
const USUAL_STOCK: ShaftStock = { kind: 'double-d', ...USUAL_DOUBLE_D };

/** The box that a layout was laid with, as the idea's boxes have it. */
export function boxKindOf({ steering }: Layout, boxes: readonly BoxKind[]): BoxKind | undefined {
  const { ratio, sectorTravel } = steering.box;
  return boxes.find((kind) => kind.ratio === ratio && kind.sectorTravel === sectorTravel);
}

/** The end of a box's input; undefined where nobody gave it. */
export function inputFit(car: Car, kind: BoxKind | undefined): ShaftEnd | undefined {
  if (car.held.has('box-kind')) return car.document.shaft?.box.fit;
  const { part } = kind?.shelved ?? {};
  return part?.kind === 'box' && part.input ? { kind: 'spline', ...part.input } : undefined;
}

const jointsOf = ({ shelf }: Car): ShelvedJoint[] =>
  shelf.filter((entry): entry is ShelvedJoint => entry.part.kind === 'joint' && entry.part.count > 0);

const goesInto = (car: Car, end: ShaftEnd, side: Side) => judgeEnds(end, side, car.style).status === 'fits';

/** mm from its face that an end has to reach into a joint's bore: its diameter, and past what crosses it. */
function leastSeat(side: Side): number {
  const across = 'bore' in side ? side.bore : side.diameter;
  const fixing = 'bolt' in side ? side.bolt : 'screw' in side ? side.screw : undefined;
  const crossed = fixing ? fixing.fromFace + fixing.diameter / 2 : 0;
  return Math.max(Math.min(across, side.depth ?? across), crossed);
}

/**
 * mm from a part's end within which the joint on it may stand: what a usual joint allows, and every joint of the shelf that
 * goes onto that end too, as long as that leaves anything.
 */
export function onEnd(car: Car, fit: ShaftEnd | undefined): readonly [number, number] {
  let [least, most] = ON_ITS_END;
  if (!fit) return ON_ITS_END;
  for (const side of jointsOf(car).flatMap(({ part }) => part.ends)) {
    if (side.depth === undefined || side.reach === undefined || !goesInto(car, fit, side)) continue;
    const own = [side.reach - side.depth, side.reach - leastSeat(side)] as const;
    if (Math.max(least, own[0]) + 1 > Math.min(most, own[1])) continue;
    [least, most] = [Math.max(least, own[0]), Math.min(most, own[1])];
  }
  return [least, most];
}

/** Kinds of stock that a shaft may be made from: the shelf's, then the usual one; what has to be welded last. */
function stocksFor({ shelf }: Car): ShaftStock[] {
  const own = shelf.flatMap(({ part }) =>
    part.kind === 'stock' && part.count > 0 && part.stock.diameter <= LED_FOR ? [part.stock] : [],
  );
  return [...own, USUAL_STOCK].sort((a, b) => Number(a.kind === 'round') - Number(b.kind === 'round'));
}

/** A joint that is bought for an end: its form is chosen, how deep it is bored is known when it lies there. */
function sideToBuy(end: ShaftEnd): Side {
  const { depth: _, reach: __, ...side } = sideTaking(end, undefined);
  if ('bolt' in side) {
    const { bolt: ___, ...bare } = side;
    return bare;
  }
  return side;
}

/** The shaft with its joints' ends for one stock, taking joints of the shelf as long as they last. */
function withStock(car: Car, shaft: ShaftDocument, route: Route, stock: ShaftStock): ShaftDocument {
  const left = jointsOf(car).map((entry) => ({ ...entry, count: entry.part.count }));
  const stubs = stubsOf(route).map(({ part }) => part);
  const stocked = { ...shaft, shafts: shaft.shafts.map((piece) => ({ ...piece, stock })) };
  const places = meetingPlaces(stocked);
  /** What goes into a side of a joint; undefined where it is not known, or is a stub that is still to be made. */
  const endAt = (joint: number, side: 'columnSide' | 'boxSide'): ShaftEnd | undefined => {
    const place = places.find((each) => each.joint === joint && each.side === side);
    if (!place || stubs.some((part) => part === place.part)) return undefined;
    return endsAt(stocked, place).end;
  };
  const joints = stocked.joints.map((joint, i) => {
    const [column, box] = [endAt(i, 'columnSide'), endAt(i, 'boxSide')];
    const bends = (route.joints[i] as Route['joints'][number]).angle;
    for (const entry of left) {
      const { part } = entry;
      const [one, two] = part.ends;
      if (entry.count < 1 || part.joint !== joint.kind || !column || !box) continue;
      if (part.limit !== undefined && toDegrees(bends) > part.limit) continue;
      const turned = (
        [
          [one, two],
          [two, one],
        ] as const
      ).find(([a, b]) => goesInto(car, column, a) && goesInto(car, box, b));
      if (!turned) continue;
      entry.count -= 1;
      const limit = part.limit === undefined ? {} : { limit: part.limit };
      return { ...joint, ...limit, columnSide: turned[0], boxSide: turned[1] };
    }
    return {
      ...joint,
      ...(column ? { columnSide: sideToBuy(column) } : {}),
      ...(box ? { boxSide: sideToBuy(box) } : {}),
    };
  });
  return { ...stocked, joints };
}

/** Pieces of a shaft that the shelf does not have. */
function toBuy(car: Car, shaft: ShaftDocument): number {
  const needs = shaftNeeds(shaft, car.style).filter(({ wanted }) => wanted.kind !== 'fixing');
  return partsAgainstShelf(needs, car.shelf).reduce((sum, { toOrder }) => sum + toOrder, 0);
}

/**
 * A routed shaft with the ends of its joints and what its pieces are made from: of the shelf's stock and the usual one, the
 * kind with which the fewest pieces have to be bought.
 * Shapes: the shaft as `suggestRoute` has it, with what is known of column and box in its ends.
 */
export function withEnds(car: Car, shaft: ShaftDocument): ShaftDocument {
  const route = routeOf(shaft);
  // A lone joint has no piece between.
  const stocks = shaft.shafts.length > 0 ? stocksFor(car) : [USUAL_STOCK];
  let best: { readonly shaft: ShaftDocument; readonly bought: number } | undefined;
  for (const stock of stocks) {
    const ended = withStock(car, shaft, route, stock);
    const bought = toBuy(car, ended);
    if (!best || bought < best.bought) best = { shaft: ended, bought };
  }
  return best?.shaft ?? shaft;
}

/** What of a shaft's ends nobody gave, and what has to be made longer: for the costs. */
interface EndsLeftOpen {
  readonly notGiven: readonly ('column' | 'box')[];
  readonly stubs: readonly Stub[];
}

export function endsLeftOpen(shaft: ShaftDocument): EndsLeftOpen {
  return {
    notGiven: (['column', 'box'] as const).filter((part) => shaft[part].fit === undefined),
    stubs: stubsOf(routeOf(shaft)),
  };
}
