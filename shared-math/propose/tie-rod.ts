import type { Point } from '../geometry/points.ts';
import { mirrored } from '../geometry/points.ts';
import type { Layout } from '../layout/index.ts';
import { kingpinAt } from './arms.ts';
import type { Car } from './car.ts';
import { choice } from './choices.ts';
import type { Idea } from './idea.ts';
import { once } from './once.ts';

/** mm: tie rod arms as they are usually made; common practice, no published source. */
const ARM = { least: 120, usual: 150, most: 180 } as const;
/** mm: what a brake and the wheel's rim take up inboard of the tyre's middle, as the findings have it; from memory. */
const BESIDE_THE_WHEEL = 60;

/**
 * The tie rod's ball on the left where the arm's line from the kingpin meets the middle of the rear axle: full Ackermann as
 * far as a trapezoid goes. At a from the kingpin, y = y_kingpin (1 ± a / wheelbase): narrower behind, wider ahead.
 */
function ackermannBall(layout: Layout, arm: number, height: number, ahead: boolean): Point {
  const kingpin = kingpinAt(layout, 'left', height);
  const side = ahead ? 1 : -1;
  return [kingpin[0] + side * arm, kingpin[1] * (1 + (side * arm) / layout.car.wheelbase), height];
}

/** Whether arms ahead of the axle that splay for Ackermann clear wheel and brake. */
function clearsWheel(layout: Layout): boolean {
  const { wheelCentre } = layout.axle.left;
  const ball = ackermannBall(layout, ARM.least, wheelCentre[2], true);
  return ball[1] <= wheelCentre[1] - BESIDE_THE_WHEEL;
}

/** An idea with the tie rod laid as well, behind the axle or ahead of it, its balls for Ackermann; as it is where it is held. */
export function withTieRod(car: Car, idea: Idea): Idea[] {
  // A right side of its own was measured or made for itself.
  if (car.held.has('tie-rod') || car.document.axle.right !== 'mirror') return [idea];
  const { kingpinBottom } = car.layout.axle.left;
  const n = idea.choices.length;
  return (clearsWheel(car.layout) ? [false, true] : [false]).map((ahead): Idea => {
    const [low, high] = [kingpinBottom[2] - 110, kingpinBottom[2] + 20];
    return {
      ...idea,
      key: ahead ? idea.key.replace(' ', ' tie-ahead-') : idea.key,
      where: ahead ? `${idea.where}, tie rod ahead` : idea.where,
      movesTieRod: true,
      choices: [
        ...idea.choices,
        choice('the tie rod arms’ length', ARM.least, ARM.most),
        choice('the tie rod’s height', low, high),
      ],
      arms: { ...idea.arms, tieRod: n },
      starts: once(() =>
        idea
          .starts()
          .map((start, i) => [
            ...start,
            ARM.usual,
            i % 2 === 0 ? kingpinBottom[2] - 60 : kingpinBottom[2] - 20,
          ]),
      ),
      lay: (x) => {
        const laid = idea.lay(x.slice(0, n));
        if (!laid) return undefined;
        const ball = ackermannBall(laid, x[n] as number, x[n + 1] as number, ahead);
        const { left, right } = laid.axle;
        return {
          ...laid,
          axle: {
            ...laid.axle,
            left: { ...left, tieRodBall: ball },
            right: { ...right, tieRodBall: mirrored(ball) },
          },
        };
      },
    };
  });
}
