import type { Point } from '../geometry/points.ts';
import { add, dot, norm, scaled, subtract, unit } from '../geometry/vectors.ts';
import type { Layout } from '../layout/index.ts';
import { arrangementOf } from '../linkage/index.ts';
import { kingpinAt, turnedAbout } from './arms.ts';
import type { Car } from './car.ts';
import { boxesFor, choice, stopChoice, stopsAt } from './choices.ts';
import { boxedAt } from './choose-box.ts';
import type { Choice, Idea } from './idea.ts';
import { armOf } from './mounts.ts';
import { once } from './once.ts';
import { ARM } from './sizes.ts';

/** rad that the arm of a box which stands still may be splined on to either side of where it is drawn. */
const SPLINED = 0.6;

/**
 * The box stands where it is, its sector shaft with it: what is left is the arm on it, the steering arm and the stops. The
 * direction in which its sector turns is the box's own and stays.
 */
export function heldBoxIdeas(car: Car): Idea[] {
  return (['manual', 'power'] as const).flatMap((assist) => heldBoxIdea(car, assist) ?? []);
}

function heldBoxIdea(car: Car, assist: 'manual' | 'power'): Idea | undefined {
  const { layout: drawn, held } = car;
  const { steering } = drawn;
  const { box, dragLinkTo } = steering;
  const way = arrangementOf(drawn);
  const boxes = boxesFor(car, way, assist);
  if (boxes.length === 0) return undefined;
  const axis = unit(box.sectorAxis);
  const along = dot(subtract(box.pitmanBall, box.sectorCentre), axis);
  const hub = add(box.sectorCentre, scaled(axis, along));
  const arm = subtract(box.pitmanBall, hub);
  const length = norm(arm);
  const heldBall = held.has('steering-arm');
  const heldPitman = held.has('pitman-arm');
  const { kingpinTop, kingpinBottom } = drawn.axle[dragLinkTo];
  const behind = steering.dragLinkBall[0] < kingpinBottom[0] ? -1 : 1;
  const inboard = dragLinkTo === 'left' ? -1 : 1;
  const range = (still: boolean, words: string, from: number, to: number): Choice =>
    choice(words, from, still ? from : to);
  const choices: Choice[] = [
    range(heldPitman, 'the pitman arm’s length', ARM.least, ARM.most),
    range(heldPitman, 'the pitman arm’s place on its splines', -SPLINED, SPLINED),
    range(heldBall, 'the steering arm’s length', ARM.least, ARM.most + 10),
    range(heldBall, 'the steering arm ball’s height', kingpinBottom[2] - 40, kingpinTop[2] + 60),
    range(heldBall, 'the steering arm ball off square', -40, 40),
    stopChoice(car),
  ];
  const lay = (x: readonly number[]): Layout | undefined => {
    const [long, turned, steers, height, aside, stop] = x as unknown as readonly [
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    const kingpin = kingpinAt(drawn, dragLinkTo, height);
    const ball: Point = heldBall
      ? steering.dragLinkBall
      : way === 'side'
        ? [kingpin[0] + aside, kingpin[1] + inboard * steers, height]
        : [kingpin[0] + behind * steers, kingpin[1] + aside, height];
    const pitman: Point = heldPitman
      ? box.pitmanBall
      : add(hub, scaled(turnedAbout(axis, turned, scaled(arm, 1 / length)), long));
    const { stopAngle: _, ...others } = steering;
    const laid: Layout = {
      ...drawn,
      steering: { ...others, dragLinkBall: ball, box: { ...box, pitmanBall: pitman }, ...stopsAt(car, stop) },
    };
    return boxedAt(car, laid, boxes);
  };
  const asDrawn = [
    length,
    0,
    norm(subtract(steering.dragLinkBall, kingpinAt(drawn, dragLinkTo, steering.dragLinkBall[2]))),
    steering.dragLinkBall[2],
    0,
    steering.stopAngle ?? 0,
  ];
  const inside = (at: readonly number[]) =>
    at.map((value, i) => {
      const { from, to } = choices[i] as Choice;
      return Math.min(to, Math.max(from, value));
    });
  return {
    key: `${way} held ${box.sectorCentre[0] > kingpinBottom[0] ? 'ahead' : 'behind'} ${assist}`,
    way,
    where: 'where it stands',
    mount: 'held',
    arm: armOf(drawn),
    uncommon: false,
    joints: 3,
    ahead: box.sectorCentre[0] > kingpinBottom[0],
    assist,
    movesAxle: false,
    movesTieRod: false,
    boxes,
    choices,
    arms: { pitman: 0, steering: 2 },
    starts: once(() => [inside(asDrawn), inside([ARM.usual, 0, ARM.usual, kingpinTop[2], 0, 0])]),
    lay,
  };
}
