import { type Box, boxOf, joined, type Part, pointsOf } from '../../../shared-math/drawing/index.ts';
import { type HandPose, type MovedCar, RIDE_HEIGHT } from '../../../shared-math/moving/index.ts';
import { axesOf, onPaper, Pictorial, type Turn } from '../../../shared-math/pictorial/index.ts';
import { wheelPlaces } from '../../../shared-math/sweep/index.ts';
import { toRadians } from '../../../shared-math/units/index.ts';
import { FAINT, ROLE_PENS, STEEL, STOP } from './colours.ts';
import { type FrontWord, frontWord, ghostMarks, type Mark, marksOf } from './pictorial-marks.ts';

// The picture of a car that is moved about, and of the one that it is compared with: the car itself, and on the ground ahead of
// each front wheel where the driver points it and where it goes by itself.

/** How many times as large what the wheels do by themselves is drawn on the ground. */
export const DRAWN_LARGER = 5;

/** mm on the ground ahead of a tyre: where its pointing begins, in radii of the tyre, and how long it is. */
const POINTING = { from: 1.04, long: 950, head: 130, half: 55 } as const;
/** Steps of an arc on the ground. */
const ARC = 12;

/** The inks of the two cars where they are drawn together: the first solid, the second broken. */
export const CAR_INKS = [
  { colour: STEEL, wash: '#dfe8f2', dash: undefined },
  { colour: STOP, wash: '#f6e4dd', dash: [2.4, 1.4] },
] as const;

/** mm that two places of one point may lie apart before it shows in a picture. */
const ALIKE = 8;
const SIDES = ['left', 'right'] as const;

/** A car of the picture, and which of the two it is. */
export interface PicturedCar {
  readonly at: 0 | 1;
  readonly car: MovedCar;
}

/** Whether a part of a car stands elsewhere than the part of that name in the other, or the other has none. */
function differs(part: Part, car: MovedCar, other: MovedCar): boolean {
  const same = other.drawing.parts.find(({ id }) => id === part.id);
  if (!same) return true;
  const [own, others] = [pointsOf(part), pointsOf(same)];
  if (own.length !== others.length) return true;
  return own.some((point, i) =>
    [0, 1, 2].some(
      (axis) =>
        Math.abs(
          (car.placed[3 * point + axis] as number) -
            (other.placed[3 * (others[i] as number) + axis] as number),
        ) > ALIKE,
    ),
  );
}

/** The parts that a picture is framed by: rails, obstacles and the ground go on beyond it. */
const frames = ({ role }: Part) => role !== 'ground' && role !== 'frame' && role !== 'obstacle';

/** What a car covers on paper, mm at full size. A tyre, whose points lie on its axis, is within a ball of its radius. */
function coveredBy({ drawing, placed, layout }: MovedCar, turn: Turn): Box {
  const axes = axesOf(turn);
  const boxes = drawing.parts.filter(frames).map((part): Box => {
    const places = pointsOf(part).flatMap((point) =>
      onPaper(axes, [
        placed[3 * point] as number,
        placed[3 * point + 1] as number,
        placed[3 * point + 2] as number,
      ]),
    );
    const { left, top, right, bottom } = boxOf(places);
    const around = part.role === 'tyre' ? layout.car.tyreRadius : 0;
    return { left: left - around, top: top - around, right: right + around, bottom: bottom + around };
  });
  return boxes.reduce(joined);
}

/** The poses at the ends of a layout's travel, each by itself. */
function endPoses({ layout: { travel } }: MovedCar): HandPose[] {
  const roll = toRadians(travel.roll);
  return [
    { ...RIDE_HEIGHT, heave: travel.bump },
    { ...RIDE_HEIGHT, heave: -travel.rebound },
    { ...RIDE_HEIGHT, roll },
    { ...RIDE_HEIGHT, roll: -roll },
  ];
}

export class MovedPicture {
  readonly #cars: readonly MovedCar[];
  readonly #pictorials: readonly Pictorial[];
  #last = 0;

  constructor(cars: readonly MovedCar[]) {
    this.#cars = cars;
    this.#pictorials = cars.map(({ drawing }) => new Pictorial(drawing));
  }

  /** What the cars cover on paper in these poses, the ends of their travel if none are given, with the pointing on the ground; mm. */
  box(turn: Turn, poses?: readonly HandPose[]): Box {
    const boxes = this.#cars.flatMap((car) => {
      const before = car.pose;
      const covered = [coveredBy(car, turn)];
      for (const pose of [RIDE_HEIGHT, ...(poses ?? endPoses(car))])
        if (car.put(pose) === undefined)
          covered.push(
            coveredBy(car, turn),
            boxOf(pointing({ at: 0, car }, turn).flatMap(({ points }) => points)),
          );
      car.put(before);
      return covered;
    });
    const all = boxes.reduce(joined);
    const edge = 0.02 * (all.right - all.left);
    return { left: all.left - edge, right: all.right + edge, top: all.top - edge, bottom: all.bottom + edge };
  }

  /** Where the word FRONT stands on paper, mm; after `marks`. */
  get front(): FrontWord {
    return frontWord(this.#pictorials[this.#last] as Pictorial);
  }

  /** The marks of the shown cars: the first in full, of a second one what differs over it. mm at full size. */
  marks(shown: readonly PicturedCar[], turn: Turn): Mark[] {
    const [first, second] = shown;
    if (!first) return [];
    this.#last = first.at;
    const strokes = (this.#pictorials[first.at] as Pictorial).draw(first.car.placed, turn);
    const body = marksOf(strokes, first.car.drawing);
    // What is on the ground lies under all but the ground's own lines.
    const ground = body.findIndex(({ fill }) => fill !== undefined);
    const road = SIDES.flatMap((side) => underWheel(first.car, side, turn));
    const marks = [
      ...body.slice(0, ground),
      ...road,
      ...shown.flatMap((each) => pointing(each, turn)),
      ...body.slice(ground),
    ];
    if (!second) return marks;
    const apart = second.car.drawing.parts.map(
      (part) => frames(part) && differs(part, second.car, first.car),
    );
    return [
      ...marks,
      ...ghostMarks((this.#pictorials[second.at] as Pictorial).draw(second.car.placed, turn), apart),
    ];
  }
}

/** A stretch on the ground ahead of a wheel in a direction (rad from the car's own, left above 0): paper places from share to share. */
function onGround(
  car: MovedCar,
  side: 'left' | 'right',
  turn: Turn,
  angle: number,
  share: number,
  aside = 0,
): number[] {
  const axes = axesOf(turn);
  const { wheelCentre } = car.layout.axle[side];
  const { tyreRadius } = car.layout.car;
  const reach = POINTING.from * tyreRadius + share * POINTING.long;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return [
    ...onPaper(axes, [wheelCentre[0] + reach * c - aside * s, wheelCentre[1] + reach * s + aside * c, 0]),
  ];
}

/** Where each front wheel of a car is pointed, and where it goes by itself, drawn larger, on the ground ahead of it. */
function pointing({ at, car }: PicturedCar, turn: Turn): Mark[] {
  const { asked, byItself } = car.wheels;
  const { colour, wash, dash } = CAR_INKS[at];
  return SIDES.flatMap((side): Mark[] => {
    const straight = asked[side];
    const own = straight + DRAWN_LARGER * byItself[side];
    const line = (angle: number, from: number, to: number) => [
      ...onGround(car, side, turn, angle, from),
      ...onGround(car, side, turn, angle, to),
    ];
    const arc = Array.from({ length: ARC + 1 }, (_, i) => straight + ((own - straight) * i) / ARC);
    const wedge = [
      ...arc.flatMap((angle) => onGround(car, side, turn, angle, 1)),
      ...arc.reverse().flatMap((angle) => onGround(car, side, turn, angle, 0)),
    ];
    const head = 1 - POINTING.head / POINTING.long;
    const tip = [
      ...onGround(car, side, turn, own, 1),
      ...onGround(car, side, turn, own, head, POINTING.half),
      ...onGround(car, side, turn, own, head, -POINTING.half),
    ];
    return [
      ...(at === 0 ? [{ points: wedge, closed: true, fill: wash }] : []),
      {
        points: line(straight, 0, 1),
        closed: false,
        line: { colour: FAINT, width: ROLE_PENS.axle.width, dash: [2, 1.6] },
      },
      { points: line(own, 0, head), closed: false, line: { colour, width: 0.5, ...(dash ? { dash } : {}) } },
      { points: tip, closed: true, fill: colour },
    ];
  });
}

/** mm of the piece of road under a wheel: along the car, and beyond the tyre to each side. */
const ROAD = { long: 620, beside: 60 } as const;
const ROAD_INK = { colour: '#8a9298', width: 0.2 } as const;
const ROAD_TOP = '#efeade';
const ROAD_SIDE = '#dcd5c4';

/** The piece of road that a wheel stands on, as high or as low as the wheel: what it has just hit. None at ride height. */
function underWheel(car: MovedCar, side: 'left' | 'right', turn: Turn): Mark[] {
  const rise = wheelPlaces(car.layout, car.pose)[side];
  if (Math.abs(rise) < 1) return [];
  const axes = axesOf(turn);
  const { wheelCentre } = car.layout.axle[side];
  const half = car.layout.car.tyreWidth / 2 + ROAD.beside;
  const corners = [1, -1].flatMap((x) => [x, -x].map((y) => [x, y] as const));
  const at = ([x, y]: readonly [number, number], z: number) =>
    onPaper(axes, [wheelCentre[0] + (x * ROAD.long) / 2, wheelCentre[1] + y * half, z]);
  const top: Mark = {
    points: corners.flatMap((corner) => at(corner, rise)),
    closed: true,
    fill: ROAD_TOP,
    line: ROAD_INK,
  };
  const sides = corners.flatMap((corner, i): Mark[] => {
    const next = corners[(i + 1) % corners.length] as (typeof corners)[number];
    const outward = [corner[0] + next[0], corner[1] + next[1]] as const;
    // Of a rise the sides toward the eye are seen, of a hollow those away from it.
    const toward = outward[0] * axes.toward[0] + outward[1] * axes.toward[1];
    if (toward * rise <= 0) return [];
    const points = [...at(corner, 0), ...at(next, 0), ...at(next, rise), ...at(corner, rise)];
    return [{ points, closed: true, fill: ROAD_SIDE, line: ROAD_INK }];
  });
  return [top, ...sides];
}
