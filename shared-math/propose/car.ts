import { type LimitName, limitInForce, type ShopLimits } from '../findings/index.ts';
import { driverSideOf, type Layout, type LayoutDocument, resolveLayout, type Side } from '../layout/index.ts';
import type { Shelved } from '../shelf/index.ts';
import type { LengthStyle } from '../units/index.ts';
import { carInTheMirror } from './left-hand.ts';
import { type HoldName, heldAsMeasured, openRooms, type ProposeQuestion } from './question.ts';
import type { Rooms } from './rooms.ts';

/** The car that proposals are laid on, its driver on the left, and what was asked. */
export interface Car {
  /** In the mirror where the driver sits on the right. */
  readonly document: LayoutDocument;
  readonly layout: Layout;
  readonly asked: LayoutDocument;
  readonly driver: Side;
  readonly held: ReadonlySet<HoldName>;
  readonly rooms: Rooms;
  readonly shelf: readonly Shelved[];
  readonly limits: ShopLimits;
  readonly style: LengthStyle;
  readonly seed: number;
}

export function carOf(question: ProposeQuestion): Car {
  const {
    document: asked,
    held = heldAsMeasured(asked),
    rooms = {},
    shelf = [],
    limits = {},
    style,
    seed = 1,
  } = question;
  const driver = driverSideOf(asked);
  // Mirrored twice where the driver sits on the left: a pair is then described alike in both.
  const document = driver === 'left' ? carInTheMirror(carInTheMirror(asked)) : carInTheMirror(asked);
  return {
    document,
    layout: resolveLayout(document),
    asked,
    driver,
    held: new Set(held),
    rooms: openRooms(rooms, held),
    shelf,
    limits,
    style,
    seed,
  };
}

/** A laid document as the car that was asked about has it: back from the mirror, rails and obstacles as they were written. */
export function asAsked(car: Car, laid: LayoutDocument): LayoutDocument {
  const { rails, obstacles } = car.asked;
  const back = car.driver === 'left' ? laid : carInTheMirror(laid);
  return { ...back, car: car.asked.car, rails, obstacles };
}

/** A limit of the shop, in its own unit. */
export function limitOf(car: Car, name: LimitName): number {
  return limitInForce(name, car.limits).value;
}
