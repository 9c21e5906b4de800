import { type Outline, VIEWS, type View } from '../../../../shared-math/drawing/index.ts';
import { type LayoutDocument, resolveLayout } from '../../../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../../../shared-math/linkage/index.ts';
import { sweepTurn } from '../../../../shared-math/sweep/index.ts';
import {
  COARSE_OUTLINE,
  COARSE_SWEEP,
  FINE_OUTLINE,
  FINE_SWEEP,
  lookOf,
  roomOutlines,
  type SweptPart,
  sweepRooms,
} from '../../../../shared-math/swept/index.ts';

export interface RoomQuestion {
  readonly document: LayoutDocument;
  readonly parts: readonly SweptPart[];
  /** Coarse while a hand drags, fine when it rests. */
  readonly fine: boolean;
}

/** The outlines of one part's room in each view's own plane, mm. */
export interface PartRoom {
  readonly part: SweptPart;
  readonly outlines: Readonly<Record<View, readonly Outline[]>>;
}

export interface RoomAnswer {
  readonly rooms: readonly PartRoom[];
  /** Whether some poses of the travel are out of reach, so that no room is known of them. */
  readonly partly: boolean;
}

/** The room that parts need over travel and turn; undefined if the layout cannot be steered at ride height. */
export function* roomJob({
  document,
  parts,
  fine,
}: RoomQuestion): Generator<undefined, RoomAnswer | undefined> {
  const frontEnd = prepareFrontEnd(resolveLayout(document));
  const turn = sweepTurn(frontEnd, 0, 0, 2);
  if (turn.status !== 'ok' || turn.count < 2) return undefined;
  const ends = { right: turn.right.handwheel, left: turn.left.handwheel };
  const found = yield* sweepRooms(frontEnd, parts, ends, fine ? FINE_SWEEP : COARSE_SWEEP);
  const rooms: PartRoom[] = [];
  for (const room of found.rooms) {
    const outlines: Record<View, Outline[]> = { side: [], top: [], front: [] };
    for (const view of VIEWS) {
      outlines[view] = roomOutlines(room, lookOf(view), fine ? FINE_OUTLINE : COARSE_OUTLINE);
      yield undefined;
    }
    rooms.push({ part: room.part, outlines });
  }
  return { rooms, partly: found.outOfReach > 0 };
}
