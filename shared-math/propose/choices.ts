import { zeroSlopeHeight, zeroSlopeLine } from '../aim/index.ts';
import type { Layout } from '../layout/index.ts';
import { type FrontEnd, prepareMoved } from '../linkage/index.ts';
import { judgeEnds } from '../shaft/index.ts';
import { type BoxKind, boxKinds, drawnBox } from './boxes.ts';
import { type Car, limitOf } from './car.ts';
import type { Choice } from './idea.ts';
import { isInRoom } from './rooms.ts';

// What the ideas have in common: what is left open, and what follows from what was chosen.

export const choice = (words: string, from: number, to: number): Choice => ({ words, from, to });

/** Where the axle's stops may end the turn; as drawn where they are held. */
export function stopChoice(car: Car): Choice {
  const [least, most] = [limitOf(car, 'lockLeast') + 0.4, limitOf(car, 'lockMost') - 0.5];
  return car.held.has('stops')
    ? choice('the stops', least, least)
    : choice('the stops', least, Math.max(least, most));
}

export function stopsAt(car: Car, stop: number): { readonly stopAngle?: number } {
  if (!car.held.has('stops')) return { stopAngle: stop };
  const { stopAngle } = car.layout.steering;
  return stopAngle === undefined ? {} : { stopAngle };
}

/** Whether a box's input goes into the last joint of a shaft that stands, as far as both are known. */
function fitsHeldShaft(car: Car, { shelved }: BoxKind): boolean {
  const into = car.held.has('shaft') ? car.document.shaft?.joints.at(-1)?.boxSide : undefined;
  const input = shelved?.part.kind === 'box' ? shelved.part.input : undefined;
  return !into || !input || judgeEnds({ kind: 'spline', ...input }, into, car.style).status !== 'mismatch';
}

/** Boxes that may be taken; the drawn one alone where it is held. */
export function boxesFor(car: Car, way: 'side' | 'cross', assist: 'manual' | 'power'): BoxKind[] {
  if (!car.held.has('box-kind')) {
    const kinds = boxKinds(way, assist, car.shelf, car.driver === 'right').filter(({ ratio }) =>
      isInRoom(car.rooms, 'box-kind', ratio),
    );
    const fitting = kinds.filter((kind) => fitsHeldShaft(car, kind));
    // Where none fits the verdict says so.
    return fitting.length > 0 ? fitting : kinds;
  }
  return car.layout.steering.box.assist === assist ? [drawnBox(car.layout, way)] : [];
}

/** The height at which a frame end of the drag link gives no bump steer slope, for laid layouts one after another. */
export class ZeroSlope {
  private readonly drawn: FrontEnd;

  constructor(drawn: FrontEnd) {
    this.drawn = drawn;
  }

  /** z of the line in the ball's own plane; undefined if the axle has no pose or the arm cannot hold the wheels. */
  heightAt(layout: Layout, movesAxle: boolean): number | undefined {
    const line = zeroSlopeLine(prepareMoved(this.drawn, layout, movesAxle));
    if (!line) return undefined;
    const at = layout.steering.box.pitmanBall[line.plane.axis === 1 ? 0 : 1];
    const z = zeroSlopeHeight(line, at);
    return Number.isFinite(z) && Math.abs(z) < 3000 ? z : undefined;
  }
}
