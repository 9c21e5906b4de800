import {
  type Box,
  boxOf,
  joined,
  type Outline,
  VIEWS,
  type View,
} from '../../../../shared-math/drawing/index.ts';
import { type LayoutDocument, resolveLayout } from '../../../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../../../shared-math/linkage/index.ts';
import { axesOf, type Turn } from '../../../../shared-math/pictorial/index.ts';
import { sweepTurn } from '../../../../shared-math/sweep/index.ts';
import {
  COARSE_OUTLINE,
  COARSE_SWEEP,
  FINE_OUTLINE,
  FINE_SWEEP,
  lookOf,
  roomOutlines,
  type SweptPart,
  type SweptRoom,
  sweepRooms,
} from '../../../../shared-math/swept/index.ts';

export interface RoomQuestion {
  readonly document: LayoutDocument;
  readonly parts: readonly SweptPart[];
  /** Coarse while a hand drags, fine when it rests. */
  readonly fine: boolean;
  /** From where the pictorial looks at the car; absent where it does not show. */
  readonly turn?: Turn | undefined;
  /** The turn in which the pictorial is fitted. */
  readonly square?: Turn | undefined;
}

/** The outlines of one part's room in each view's own plane, mm. */
export interface PartRoom {
  readonly part: SweptPart;
  readonly outlines: Readonly<Record<View, readonly Outline[]>>;
  /** As the pictorial shows it in the turn that was asked for: mm of paper from where the car's origin is seen; none without a turn. */
  readonly turned: readonly Outline[];
  /** What it covers so in the turn in which the pictorial is fitted. */
  readonly square?: Box | undefined;
}

export interface RoomAnswer {
  readonly rooms: readonly PartRoom[];
  /** As they were asked for. */
  readonly fine: boolean;
  readonly turn?: Turn | undefined;
  /** Whether some poses of the travel are out of reach, so that no room is known of them. */
  readonly partly: boolean;
}

/** What was worked out last: where only the turn is another, only that is outlined anew. */
interface Kept {
  readonly of: string;
  readonly rooms: readonly (SweptRoom & Pick<PartRoom, 'outlines' | 'square'>)[];
  readonly partly: boolean;
}
let kept: Kept | undefined;

/** The room that parts need over travel and turn; undefined if the layout cannot be steered at ride height. */
export function* roomJob(question: RoomQuestion): Generator<undefined, RoomAnswer | undefined> {
  const { document, parts, fine, turn, square } = question;
  const of = JSON.stringify([document, parts, fine, square]);
  if (kept?.of !== of) kept = yield* sweptAndOutlined(question, of);
  const known = kept;
  if (!known) return undefined;
  const axes = turn && axesOf(turn);
  const rooms: PartRoom[] = [];
  for (const room of known.rooms) {
    const turned = axes ? roomOutlines(room, axes, fine ? FINE_OUTLINE : COARSE_OUTLINE) : [];
    yield undefined;
    rooms.push({ part: room.part, outlines: room.outlines, turned, square: room.square });
  }
  return { rooms, fine, turn, partly: known.partly };
}

function* sweptAndOutlined(
  { document, parts, fine, square }: RoomQuestion,
  of: string,
): Generator<undefined, Kept | undefined> {
  const frontEnd = prepareFrontEnd(resolveLayout(document));
  const turn = sweepTurn(frontEnd, 0, 0, 2);
  if (turn.status !== 'ok' || turn.count < 2) return undefined;
  const ends = { right: turn.right.handwheel, left: turn.left.handwheel };
  const found = yield* sweepRooms(frontEnd, parts, ends, fine ? FINE_SWEEP : COARSE_SWEEP);
  const rooms: Kept['rooms'][number][] = [];
  for (const room of found.rooms) {
    const outlines: Record<View, Outline[]> = { side: [], top: [], front: [] };
    for (const view of VIEWS) {
      outlines[view] = roomOutlines(room, lookOf(view), fine ? FINE_OUTLINE : COARSE_OUTLINE);
      yield undefined;
    }
    // To within a step of the coarse grid, which the fitting rounds out.
    const boxes = square ? roomOutlines(room, axesOf(square), COARSE_OUTLINE).map(boxOf) : [];
    rooms.push({ ...room, outlines, square: boxes.length > 0 ? boxes.reduce(joined) : undefined });
  }
  return { of, rooms, partly: found.outOfReach > 0 };
}
