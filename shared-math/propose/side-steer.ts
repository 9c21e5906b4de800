import { findAim } from '../aim/index.ts';
import type { Point } from '../geometry/points.ts';
import { scaled, subtract } from '../geometry/vectors.ts';
import type { Layout } from '../layout/index.ts';
import { prepareFrontEnd } from '../linkage/index.ts';
import { kingpinAt, sectorAxisForLeft, squareTo, turnedAbout } from './arms.ts';
import { type Car, limitOf } from './car.ts';
import { boxesFor, choice, stopChoice, stopsAt, ZeroSlope } from './choices.ts';
import { boxedAt } from './choose-box.ts';
import type { Choice, Idea } from './idea.ts';
import { railFacesNear, railStretch } from './rail-faces.ts';
import { ARM, BODY, LEAN, OFF_LINE, PLATE } from './sizes.ts';

// Side steer: the pitman ball outside the left rail, the drag link along it to the left wheel. The ball's height is not
// chosen but follows from its place and the steering arm's ball: that of the zero-slope line, and a little either way.

/** mm from the middle of the box along its sector shaft to the arm: outboard beside the rail, and through it. */
const TO_ARM = { outside: 20, through: 0 } as const;
/** mm from the column's end to a box that it reaches. */
const AHEAD_OF_COLUMN = 260;

type Mount = 'outside' | 'through';

function clampToChoice(value: number, { from, to }: Choice): number {
  return Math.min(to, Math.max(from, value));
}

/** How far along the car a pitman ball beside the rail may stand, by the side of the axle; undefined if there is no room. */
export function alongRail(layout: Layout, ahead: boolean): readonly [number, number] | undefined {
  const [back, front] = railStretch(layout);
  if (ahead) return front > 200 ? [190, Math.min(front + 40, 650)] : undefined;
  const column = layout.shaft ? layout.shaft.column.end[0] + AHEAD_OF_COLUMN : -1100;
  const from = Math.max(back, column, -1200);
  return from < -280 ? [from, -240] : undefined;
}

function sideIdea(car: Car, mount: Mount, ahead: boolean, assist: 'manual' | 'power'): Idea | undefined {
  const along = alongRail(car.layout, ahead);
  if (!along) return undefined;
  const { layout: drawn } = car;
  const { kingpinTop, kingpinBottom } = drawn.axle.left;
  const size = assist === 'power' ? BODY.assisted : 1;
  const cover = BODY.cover * size;
  // Between the rail's face and the ball: outside, the plate and the box; through the rail, the arm's own air.
  const off: readonly [number, number] =
    mount === 'outside'
      ? [cover + TO_ARM.outside + PLATE.least, cover + TO_ARM.outside + PLATE.most]
      : [limitOf(car, 'clearanceMoving') + 18, 90];
  const { steering: asDrawn } = drawn;
  const heldBall = car.held.has('steering-arm') ? asDrawn.dragLinkBall : undefined;
  const heldPitman = car.held.has('pitman-arm') ? asDrawn.box.pitmanBall : undefined;
  const still = (held: unknown, words: string, from: number, to: number) =>
    held === undefined ? choice(words, from, to) : choice(words, from, from);
  const choices: Choice[] = [
    still(heldPitman, 'the pitman ball along the car', ...along),
    still(heldPitman, 'the pitman ball out from the rail', ...off),
    still(heldPitman, 'the pitman ball off the zero-slope line', -OFF_LINE, OFF_LINE),
    choice('the pitman arm’s length', ARM.least, ARM.most),
    still(heldBall, 'the steering arm’s length', ARM.least, ARM.most + 10),
    still(heldBall, 'the steering arm ball’s height', kingpinBottom[2] - 40, kingpinTop[2] + 40),
    still(heldBall, 'the steering arm ball along the car', -40, 40),
    choice('the pitman arm’s lean', -LEAN, LEAN),
    stopChoice(car),
  ];
  const boxes = boxesFor(car, 'side', assist);
  if (boxes.length === 0) return undefined;
  const base = prepareFrontEnd(drawn);
  const line = new ZeroSlope(base);

  const lay = (x: readonly number[]): Layout | undefined => {
    const [px, out, dz, arm, steering, height, dx, lean, stop] = x as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    const kingpin = kingpinAt(drawn, 'left', height);
    const ball: Point = heldBall ?? [kingpin[0] + dx, kingpin[1] - steering, height];
    const faces = railFacesNear(drawn, heldPitman ? heldPitman[0] : px);
    const py = heldPitman ? heldPitman[1] : faces.outer + out;
    const provisional: Layout = {
      ...drawn,
      steering: {
        dragLinkTo: 'left',
        dragLinkBall: ball,
        box: {
          ...drawn.steering.box,
          sectorCentre: [px, py, height + arm],
          sectorAxis: [0, -1, 0],
          pitmanBall: [px, py, height],
        },
        ...stopsAt(car, stop),
      },
    };
    const z = heldPitman ? heldPitman[2] : line.heightAt(provisional, false);
    if (z === undefined) return undefined;
    const pitman: Point = heldPitman ?? [px, py, z + dz];
    const across: Point = [0, 1, 0];
    const down = squareTo(subtract(ball, pitman), across, [0, 0, -1]);
    const armWay = turnedAbout(across, lean, down);
    const inboard =
      mount === 'outside' ? TO_ARM.outside : py - (faces.inner - PLATE.least - BODY.face * size);
    const hub = subtract(pitman, scaled(armWay, arm));
    const centre: Point = [hub[0], hub[1] - inboard, hub[2]];
    const axis = sectorAxisForLeft(drawn, 'left', ball, pitman, centre, [0, -1, 0]);
    return boxedAt(car, provisional, boxes, { sectorCentre: centre, sectorAxis: axis, pitmanBall: pitman });
  };

  return {
    key: `side ${mount} ${ahead ? 'ahead' : 'behind'} ${assist}`,
    way: 'side',
    where: mount === 'outside' ? 'outside the RAIL' : 'inside the RAIL, its arm outside',
    ahead,
    assist,
    movesAxle: false,
    movesTieRod: false,
    boxes,
    choices,
    arms: { pitman: 3, steering: 4 },
    starts: startsOf(car, lay, choices),
    lay,
  };
}

/** Places along the car: at the aim point where that is in reach, then evenly; usual arms. */
function startsOf(car: Car, lay: Idea['lay'], choices: readonly Choice[]): number[][] {
  const [along, out, , , , height] = choices as [Choice, Choice, Choice, Choice, Choice, Choice];
  const top = car.layout.axle.left.kingpinTop[2];
  const at = (px: number, z: number): number[] =>
    [px, out.from + 8, 0, ARM.usual, ARM.usual, z, 0, 0, limitOf(car, 'lockLeast') + 0.5].map((value, i) =>
      clampToChoice(value, choices[i] as Choice),
    );
  const middle = (along.from + along.to) / 2;
  const laid = lay(at(middle, top));
  const aim = laid && findAim(prepareFrontEnd(laid));
  const places = [0.1, 0.3, 0.5, 0.7, 0.9].map((share) => along.from + share * (along.to - along.from));
  return [...(aim?.ok ? [aim.value.point[0]] : []), ...places].flatMap((px) => [
    at(px, top),
    at(px, height.from + 0.5 * (height.to - height.from)),
  ]);
}

/** Ways of steering the near wheel that there is room for on this car's rails. */
export function sideIdeas(car: Car): Idea[] {
  const ideas: Idea[] = [];
  for (const ahead of [false, true])
    for (const mount of ['outside', 'through'] as const)
      for (const assist of ['manual', 'power'] as const) {
        const idea = sideIdea(car, mount, ahead, assist);
        if (idea) ideas.push(idea);
      }
  return ideas;
}
