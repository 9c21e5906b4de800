import { findAim } from '../aim/index.ts';
import { clamp } from '../clamp.ts';
import type { Point } from '../geometry/points.ts';
import { scaled, subtract } from '../geometry/vectors.ts';
import type { Layout } from '../layout/index.ts';
import { prepareFrontEnd } from '../linkage/index.ts';
import { kingpinAt, sectorAxisForLeft, squareTo, turnedAbout } from './arms.ts';
import { type Car, limitOf } from './car.ts';
import { boxesFor, choice, stopChoice, stopsAt, ZeroSlope } from './choices.ts';
import { boxedAt } from './choose-box.ts';
import type { Choice, Idea } from './idea.ts';
import { armOf, planTurnOf } from './mounts.ts';
import { once } from './once.ts';
import { railFacesNear, railStretch } from './rail-faces.ts';
import { boxLine } from './room.ts';
import {
  ballAcross,
  ballOffRail,
  boxInboard,
  SIDE_WHERE,
  type SideMount,
  towardColumn,
} from './side-mounts.ts';
import { ARM, BODY, LEAN, OFF_LINE, PLATE, TURNED } from './sizes.ts';

// Side steer: the pitman ball beside the left rail, the drag link along it to the left wheel. The ball's height is not
// chosen but follows from its place and the steering arm's ball: that of the zero-slope line, and a little either way.

/** mm from the column's end to a box that it reaches. */
const AHEAD_OF_COLUMN = 260;

const withinChoice = (value: number, { from, to }: Choice) => clamp(value, from, to);

/** How far along the car a pitman ball beside the rail may stand, by the side of the axle; undefined if there is no room. */
export function alongRail(layout: Layout, ahead: boolean): readonly [number, number] | undefined {
  const [back, front] = railStretch(layout);
  if (ahead) return front > 200 ? [190, Math.min(front + 40, 650)] : undefined;
  const column = layout.shaft ? layout.shaft.column.end[0] + AHEAD_OF_COLUMN : -1100;
  const from = Math.max(back, column, -1200);
  return from < -280 ? [from, -240] : undefined;
}

/** What an idea of side steer is, before the rails are looked at. */
interface SideWay {
  readonly mount: SideMount;
  readonly armWay: Idea['arm'];
  readonly ahead: boolean;
  readonly assist: 'manual' | 'power';
}

/**
 * rad in plan that the box may be turned at the most: to where its input leaves straight toward the column, as far as its plate
 * can be made for it; 0 where its turn is held.
 */
function mostTurn(car: Car, along: readonly [number, number], y: number): number {
  if (car.held.has('box-turn')) return 0;
  const toward = towardColumn(car.layout, (along[0] + along[1]) / 2, y);
  return Math.max(-TURNED, Math.min(TURNED, toward));
}

function sideIdea(car: Car, { mount, armWay, ahead, assist }: SideWay): Idea | undefined {
  const along = alongRail(car.layout, ahead);
  if (!along) return undefined;
  const { layout: drawn } = car;
  const { kingpinTop, kingpinBottom } = drawn.axle.left;
  const size = assist === 'power' ? BODY.assisted : 1;
  const midway = railFacesNear(drawn, (along[0] + along[1]) / 2);
  const off = ballOffRail(mount, midway, size, limitOf(car, 'clearanceMoving'));
  if (!off) return undefined;
  const { steering: asDrawn } = drawn;
  const heldBall = car.held.has('steering-arm') ? asDrawn.dragLinkBall : undefined;
  const heldPitman = car.held.has('pitman-arm') ? asDrawn.box.pitmanBall : undefined;
  const still = (held: unknown, words: string, from: number, to: number) =>
    held === undefined ? choice(words, from, to) : choice(words, from, from);
  // Square across the car unless it is held turned; the shaft is asked last.
  const square = car.held.has('box-turn') ? planTurnOf(drawn) : 0;
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
    choice('the box’s turn in plan', square, square),
  ];
  const boxes = boxesFor(car, 'side', assist);
  if (boxes.length === 0) return undefined;
  const up = armWay === 'up' ? 1 : -1;
  const base = prepareFrontEnd(drawn);
  const line = new ZeroSlope(base);

  const lay = (x: readonly number[]): Layout | undefined => {
    const [px, out, dz, arm, steering, height, dx, lean, stop, turn] = x as [
      number,
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
    const py = heldPitman ? heldPitman[1] : ballAcross(mount, faces, out);
    const provisional: Layout = {
      ...drawn,
      steering: {
        dragLinkTo: 'left',
        dragLinkBall: ball,
        box: {
          ...drawn.steering.box,
          sectorCentre: [px, py, height - up * arm],
          sectorAxis: [0, -1, 0],
          pitmanBall: [px, py, height],
        },
        ...stopsAt(car, stop),
      },
    };
    const z = heldPitman ? heldPitman[2] : line.heightAt(provisional, false);
    if (z === undefined) return undefined;
    const pitman: Point = heldPitman ?? [px, py, z + dz];
    const across: Point = [-Math.sin(turn), Math.cos(turn), 0];
    const standing = squareTo(subtract(ball, pitman), across, [0, 0, up]);
    const hub = subtract(pitman, scaled(turnedAbout(across, lean, standing), arm));
    const centre = subtract(hub, scaled(across, boxInboard(mount, faces, py, size)));
    const axis = sectorAxisForLeft(drawn, 'left', ball, pitman, centre, scaled(across, -1));
    return boxedAt(car, provisional, boxes, { sectorCentre: centre, sectorAxis: axis, pitmanBall: pitman });
  };

  return {
    key: `side ${mount}${armWay === 'up' ? '-up' : ''} ${ahead ? 'ahead' : 'behind'} ${assist}`,
    way: 'side',
    where: SIDE_WHERE[mount],
    mount,
    arm: armWay,
    ahead,
    uncommon: mount === 'inside' || armWay === 'up',
    // What is seldom built beside a rail is worth its trouble only where two joints lead there.
    joints: mount === 'inside' || armWay === 'up' ? 2 : 3,
    assist,
    movesAxle: false,
    movesTieRod: false,
    boxes,
    choices,
    arms: { pitman: 3, steering: 4 },
    turn: {
      choice: choices.length - 1,
      most: mostTurn(car, along, ballAcross(mount, midway, off[0])),
    },
    starts: once(() => startsOf(car, mount, lay, choices)),
    lay,
  };
}

/** Places along the car: at the aim point where that is in reach, then evenly; usual arms. */
function startsOf(car: Car, mount: SideMount, lay: Idea['lay'], choices: readonly Choice[]): number[][] {
  const [along, out, , , , height] = choices as [Choice, Choice, Choice, Choice, Choice, Choice];
  const top = car.layout.axle.left.kingpinTop[2];
  const at = (px: number, z: number): number[] =>
    [px, out.from + 8, 0, ARM.usual, ARM.usual, z, 0, 0, limitOf(car, 'lockLeast') + 0.5, 0].map(
      (value, i) => {
        const { from, to } = choices[i] as Choice;
        return clamp(value, from, to);
      },
    );
  const middle = (along.from + along.to) / 2;
  const laid = lay(at(middle, top));
  const aim = laid && findAim(prepareFrontEnd(laid));
  const places = [0.1, 0.3, 0.5, 0.7, 0.9].map((share) => along.from + share * (along.to - along.from));
  const starts = [...(aim?.ok ? [aim.value.point[0]] : []), ...places].flatMap((px) => [
    at(px, top),
    at(px, height.from + 0.5 * (height.to - height.from)),
  ]);
  return mount === 'top' ? starts.map((x) => onTheRail(x, lay, choices)) : starts;
}

/** The same place with the arm just so long that the box lies on the rail, as far as arms are made. */
function onTheRail(x: readonly number[], lay: Idea['lay'], choices: readonly Choice[]): number[] {
  const laid = lay(x);
  if (!laid) return [...x];
  const { from, to, radius } = boxLine(laid);
  const { top } = railFacesNear(laid, laid.steering.box.sectorCentre[0]);
  const tooHigh = Math.min(from[2], to[2]) - radius - top - (PLATE.least + 8);
  const down = armOf(laid) === 'down' ? 1 : -1;
  return x.with(3, withinChoice((x[3] as number) - down * tooHigh, choices[3] as Choice));
}

/** Every way of steering the near wheel that there is room for on this car's rails. */
export function sideIdeas(car: Car): Idea[] {
  const ideas: Idea[] = [];
  for (const ahead of [false, true])
    for (const mount of ['outside', 'through', 'top', 'inside'] as const)
      for (const armWay of ['down', 'up'] as const)
        for (const assist of ['manual', 'power'] as const) {
          const idea = sideIdea(car, { mount, armWay, ahead, assist });
          if (idea) ideas.push(idea);
        }
  return ideas;
}
