import type { Point } from '../geometry/points.ts';
import { add, scaled, subtract, unit } from '../geometry/vectors.ts';
import type { Lateral, Layout } from '../layout/index.ts';
import { prepareFrontEnd } from '../linkage/index.ts';
import { kingpinAt, sectorAxisForLeft, squareTo, turnedAbout } from './arms.ts';
import { type Car, limitOf } from './car.ts';
import { boxesFor, choice, stopChoice, stopsAt, ZeroSlope } from './choices.ts';
import { boxedAt } from './choose-box.ts';
import { hasCrossmember, impliedFrontCrossmember } from './crossmembers.ts';
import type { Choice, Idea } from './idea.ts';
import { sectorTiltOf } from './mounts.ts';
import { once } from './once.ts';
import { railFacesNear, railStretch } from './rail-faces.ts';
import { ARM, BODY, LEAN, OFF_LINE, PLATE } from './sizes.ts';

// Cross steer: the box beside the left rail or on a crossmember, its sector shaft nearly upright, square to an input that runs
// back to the driver; the arm lies flat, under the box or over it, and the drag link runs over to the right wheel. A lateral bar
// beside the link, parallel and of its length, moves the axle across as the link moves its ball.
//
// Not tried: on top of the rail, as an upright sector shaft would have to pass the rail's whole depth down to a link at the
// wheels' height. Outside the rail with a bar beside the link, as the bar's frame end would stand outboard of the rail too. On
// a crossmember with the arm over the box, as the link would lie in the crossmember. On the right rail, as the shaft would have
// to turn across the car between a column that points along it and the box: more than three joints do within their limits, and
// through the engine wherever the box is behind the axle.

/** mm along the sector shaft from the arm to the middle of a box that stands on it, or hangs under it. */
const BOX_FROM_ARM = 62;
/** mm from the axle at which a bar runs. */
const BAR_FROM_AXLE = { least: 58, most: 115 } as const;

/** Whether a lateral bar is laid with the steering: not where it is held, nor where leaves hold the axle sideways. */
function laysBar({ layout, held }: Car): boolean {
  if (held.has('lateral')) return false;
  const onLeaves = layout.location.kind === 'parallel-leaf' || layout.location.kind === 'quarter-elliptic';
  return layout.lateral.kind === 'bar' || !onLeaves;
}

type CrossMount = 'inside' | 'outside' | 'crossmember';

/** What an idea of cross steer is, before the rails are looked at. */
interface CrossWay {
  readonly mount: CrossMount;
  readonly armWay: Idea['arm'];
  readonly ahead: boolean;
  readonly assist: 'manual' | 'power';
}

/** What holds the box, as far as the car has it: its layout, with a crossmember that has to be taken for granted. */
interface Held {
  readonly layout: Layout;
  readonly where: string;
  readonly assumes?: string;
}

/** The car with what the box is bolted to; undefined where it has nothing of the kind in reach of the link. */
function heldBy(car: Car, mount: CrossMount, ahead: boolean): Held | undefined {
  const { layout } = car;
  if (mount !== 'crossmember') return { layout, where: `${mount} the RAIL` };
  const side = ahead ? 1 : -1;
  const { kingpinTop, kingpinBottom } = layout.axle.right;
  const ends = [2 * ARM.least, 2 * ARM.most + 10].map(
    (arms) => (kingpinTop[0] + kingpinBottom[0]) / 2 + side * arms,
  );
  const [from, to] = [Math.min(...ends), Math.max(...ends)];
  const reach = PLATE.most + BODY.radius * BODY.assisted;
  if (hasCrossmember(layout, from, to, reach)) return { layout, where: 'on the crossmember' };
  const implied = ahead ? impliedFrontCrossmember(layout) : undefined;
  if (!implied) return undefined;
  const withIt = { ...layout, obstacles: [...layout.obstacles, implied] };
  if (!hasCrossmember(withIt, from, to, reach)) return undefined;
  return {
    layout: withIt,
    where: 'on the front crossmember',
    assumes:
      'No front crossmember is drawn: one from rail to rail at the rails’ front ends, as deep as they are, is taken for granted. Draw the real one and look again.',
  };
}

/** mm from the left rail's face to the box's middle, least and most. */
function offRail(mount: CrossMount, radius: number, inner: number): readonly [number, number] {
  // On a crossmember as far as the car's middle: beyond it the shaft would have to cross the car.
  return [radius + PLATE.least, mount === 'crossmember' ? inner : radius + PLATE.most];
}

function crossIdea(car: Car, way: CrossWay, bar: boolean): Idea | undefined {
  const { mount, armWay, ahead, assist } = way;
  const holder = heldBy(car, mount, ahead);
  if (!holder) return undefined;
  const { layout: drawn, where, assumes } = holder;
  const side = ahead ? 1 : -1;
  // The box stands over its arm, or hangs under it.
  const over = armWay === 'down' ? BOX_FROM_ARM : -BOX_FROM_ARM;
  const [, front] = railStretch(drawn);
  if (ahead && front < 150) return undefined;
  const { kingpinTop, kingpinBottom } = drawn.axle.right;
  const size = assist === 'power' ? BODY.assisted : 1;
  const radius = BODY.radius * size;
  const { steering: asDrawn } = drawn;
  const heldBall = car.held.has('steering-arm') ? asDrawn.dragLinkBall : undefined;
  const heldPitman = car.held.has('pitman-arm') ? asDrawn.box.pitmanBall : undefined;
  const still = (held: unknown, words: string, from: number, to: number) =>
    held === undefined ? choice(words, from, to) : choice(words, from, from);
  const choices: Choice[] = [
    still(
      heldPitman,
      mount === 'outside' ? 'the box out from the rail' : 'the box in from the rail',
      ...offRail(mount, radius, railFacesNear(drawn, side * 2 * ARM.usual).inner),
    ),
    still(heldPitman, 'the pitman ball off the zero-slope line', -OFF_LINE, OFF_LINE),
    choice('the pitman arm’s length', ARM.least, ARM.most),
    still(heldBall, 'the steering arm’s length', ARM.least, ARM.most + 10),
    still(heldBall, 'the steering arm ball’s height', kingpinBottom[2] - 20, kingpinTop[2] + 60),
    still(heldBall, 'the steering arm ball across the car', -40, 40),
    choice('the pitman arm’s lean', -LEAN, LEAN),
    tiltChoice(car),
    stopChoice(car),
    ...(bar
      ? [
          choice('the lateral bar from the axle', -1, 1),
          choice('the lateral bar’s axle end in from the kingpin', 60, 230),
          choice('the lateral bar’s height over the steering arm ball', -70, 60),
          choice('the lateral bar’s rise', -5, 40),
        ]
      : []),
  ];
  const boxes = boxesFor(car, 'cross', assist);
  if (boxes.length === 0) return undefined;
  const start = bar ? withBar(drawn, [0, -500, 350], [0, 300, 360]) : drawn;
  const base = prepareFrontEnd(start);
  const line = new ZeroSlope(base);

  const lay = (x: readonly number[]): Layout | undefined => {
    const [off, dz, arm, steering, height, dy, lean, tilt, stop] = x as unknown as readonly [
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
    const kingpin = kingpinAt(drawn, 'right', height);
    const ball: Point = heldBall ?? [kingpin[0] + side * steering, kingpin[1] + dy, height];
    const faces = railFacesNear(drawn, ball[0] + side * arm);
    const px = heldPitman ? heldPitman[0] : ball[0];
    const py = heldPitman ? heldPitman[1] : mount === 'outside' ? faces.outer + off : faces.inner - off;
    let lateral: Lateral = start.lateral;
    if (bar) {
      const [u, inboard, above, rise] = x.slice(9) as [number, number, number, number];
      const share = BAR_FROM_AXLE.least + Math.abs(u) * (BAR_FROM_AXLE.most - BAR_FROM_AXLE.least);
      const bx = Math.sign(u || 1) * share;
      const z = ball[2] + above;
      const end = kingpinAt(drawn, 'right', z)[1] + inboard;
      lateral = { kind: 'bar', axle: [bx, end, z], frame: [bx, end + (py - ball[1]), z + rise] };
    }
    const provisional: Layout = {
      ...drawn,
      lateral,
      steering: {
        dragLinkTo: 'right',
        dragLinkBall: ball,
        box: {
          ...drawn.steering.box,
          sectorCentre: [px + side * arm, py, ball[2] + over],
          sectorAxis: [-tilt, 0, -1],
          pitmanBall: [px, py, ball[2]],
        },
        ...stopsAt(car, stop),
      },
    };
    const z = heldPitman ? heldPitman[2] : line.heightAt(provisional, bar);
    if (z === undefined) return undefined;
    const pitman: Point = heldPitman ?? [px, py, z + dz];
    const up = unit([tilt, 0, 1]);
    const flat = squareTo(subtract(ball, pitman), up, [-side, 0, 0]);
    const armWay = turnedAbout(up, lean, flat);
    const centre = add(subtract(pitman, scaled(armWay, arm)), scaled(up, over));
    const axis = sectorAxisForLeft(drawn, 'right', ball, pitman, centre, scaled(up, -1));
    return boxedAt(car, provisional, boxes, { sectorCentre: centre, sectorAxis: axis, pitmanBall: pitman });
  };

  return {
    key: `cross ${mount}${armWay === 'up' ? '-up' : ''} ${ahead ? 'ahead' : 'behind'} ${assist}`,
    way: 'cross',
    where,
    mount,
    arm: armWay,
    ahead,
    uncommon: mount !== 'inside' || armWay === 'up',
    joints: 3,
    ...(assumes === undefined ? {} : { assumes }),
    assist,
    movesAxle: bar,
    movesTieRod: false,
    boxes,
    choices,
    arms: { pitman: 2, steering: 3 },
    starts: once(() => startsOf(car, choices, bar)),
    lay,
  };
}

/** How far the sector shaft's upper end leans back from upright; as drawn where that is held. */
function tiltChoice(car: Car): Choice {
  const words = 'the sector shaft’s tilt';
  if (!car.held.has('box-turn')) return choice(words, 0.06, 0.6);
  const tilt = sectorTiltOf(car.layout);
  return choice(words, tilt, tilt);
}

function withBar(layout: Layout, axle: Point, frame: Point): Layout {
  return layout.lateral.kind === 'bar' ? layout : { ...layout, lateral: { kind: 'bar', axle, frame } };
}

/** Usual arms, the link a little above the wheel centres; the bar on either side of the axle. */
function startsOf(car: Car, choices: readonly Choice[], bar: boolean): number[][] {
  const wheel = car.layout.axle.right.wheelCentre[2];
  const stop = limitOf(car, 'lockLeast') + 0.5;
  const first = (choices[0] as Choice).from;
  const heights = [wheel + 12, wheel + 45, wheel - 30];
  return heights.flatMap((height) =>
    (bar ? [-0.3, 0.3] : [0]).flatMap((u) =>
      [first + 14, first + 35].map((off) =>
        [off, 0, ARM.usual, ARM.usual, height, 10, 0, 0.2, stop, u, 80, 0, 8]
          .slice(0, choices.length)
          .map((value, i) => {
            const { from, to } = choices[i] as Choice;
            return Math.min(to, Math.max(from, value));
          }),
      ),
    ),
  );
}

/** Every way of steering the far wheel that there is room for on this car's rails. */
export function crossIdeas(car: Car): Idea[] {
  const bar = laysBar(car);
  const ideas: Idea[] = [];
  for (const ahead of [false, true])
    for (const mount of ['inside', 'outside', 'crossmember'] as const)
      for (const armWay of ['down', 'up'] as const)
        for (const assist of ['manual', 'power'] as const) {
          if (mount === 'outside' && (bar || car.layout.lateral.kind === 'bar')) continue;
          if (mount === 'crossmember' && armWay === 'up') continue;
          const idea = crossIdea(car, { mount, armWay, ahead, assist }, bar);
          if (idea) ideas.push(idea);
        }
  return ideas;
}
