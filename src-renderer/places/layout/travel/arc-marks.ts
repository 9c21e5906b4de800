import type { ViewPoint } from '../../../../shared-math/drawing/index.ts';
import type { ScreenPoint } from '../../../board/camera.ts';
import type { OverlayInk, OverlayLine, OverlayMark } from '../../../board/overlay.ts';
import type { Note, OverlaySource } from '../../../board/overlay-picture.ts';
import type { Arcs, Gap } from './arcs.ts';
import { gapSize } from './gap-size.ts';

/** The arcs, whose places `onBoard` takes, and what the board gives. */
export interface ArcSource
  extends Pick<OverlaySource, 'shown' | 'onBoard' | 'fineLength' | 'length' | 'bounds' | 'scale'> {
  readonly arcs: Arcs;
  readonly gap: Gap | undefined;
}

const flat = (places: readonly ScreenPoint[]) => places.flatMap((place) => [place[0], place[1]]);

/** px that the zero-slope line is drawn on beyond the aim point. */
const BEYOND_AIM = 46;

/** The arcs, the gap between them, and the aim with its line. */
export function arcMarks(source: ArcSource): { lines: OverlayLine[]; marks: OverlayMark[] } {
  const { arcs, gap, shown } = source;
  if (!shown.includes(arcs.view)) return { lines: [], marks: [] };
  const onBoard = (place: ViewPoint) => source.onBoard(arcs.view, place);
  const lines: OverlayLine[] = [];
  const marks: OverlayMark[] = [];
  if (arcs.zeroSlope) {
    const [from, to] = [onBoard(arcs.zeroSlope.from), onBoard(arcs.zeroSlope.to)];
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const on = length > 0 ? BEYOND_AIM / length : 0;
    lines.push({
      points: [from[0], from[1], to[0] + on * (to[0] - from[0]), to[1] + on * (to[1] - from[1])],
      ink: 'aim',
    });
  }
  if (arcs.aim) {
    const at = onBoard(arcs.aim.at);
    marks.push({ x: at[0], y: at[1], kind: 'aim' });
  }
  lines.push({ points: flat(arcs.asked.map(onBoard)), ink: 'asked' });
  lines.push({ points: flat(arcs.allowed.map(onBoard)), ink: 'allowed' });
  if (gap) {
    const [asked, allowed] = [onBoard(gap.asked), onBoard(gap.allowed)];
    lines.push({ points: [asked[0], asked[1], allowed[0], allowed[1]], ink: 'gap' });
    marks.push({ x: asked[0], y: asked[1], kind: 'tick' }, { x: allowed[0], y: allowed[1], kind: 'cross' });
  }
  return { lines, marks };
}

const NO_GAP = 'no gap';

function gapWords(source: ArcSource, size: number): string {
  const words = gapSize(size, source.fineLength);
  return words === undefined ? NO_GAP : `gap ${words}`;
}

/** What the arcs are called, and the gap as a figure. */
export function arcNotes(source: ArcSource): Note[] {
  const { arcs, gap, shown } = source;
  if (!shown.includes(arcs.view) || arcs.asked.length === 0) return [];
  const nothing = gap ? /no gap|under/.test(gapWords(source, gap.size)) : false;
  const onBoard = (place: ViewPoint) => source.onBoard(arcs.view, place);
  const note = (
    id: string,
    at: ViewPoint,
    toward: number,
    text: string,
    ink: OverlayInk,
    strong: boolean,
  ): Note => {
    const [x, y] = onBoard(at);
    return { id, view: arcs.view, x, y, clear: 5, toward, lines: [{ text, ink, strong }] };
  };
  const notes: Note[] = [];
  if (gap) {
    const middle: ViewPoint = [(gap.asked[0] + gap.allowed[0]) / 2, (gap.asked[1] + gap.allowed[1]) / 2];
    notes.push(
      note(
        'gap',
        middle,
        gap.heave > 0 ? -30 : 30,
        `${gapWords(source, gap.size)}${gap.elsewhere ? ` at ${source.length(Math.abs(gap.heave))} ${gap.heave > 0 ? 'bump' : 'droop'}` : ''}`,
        nothing ? 'aim' : 'allowed',
        true,
      ),
    );
  }
  const low = arcs.asked.at(0) as ViewPoint;
  const high = arcs.allowed.at(-1) as ViewPoint;
  notes.push(note('asked', low, 150, 'axle asks', 'asked', false));
  notes.push(note('allowed', high, 210, 'link allows', 'allowed', false));
  if (arcs.aim)
    notes.push(aimNote(source, onBoard(arcs.zeroSlope?.from ?? arcs.aim.at), onBoard(arcs.aim.at)));
  return notes;
}

/** px from the board's edge at which a line that leaves it is spoken of. */
const EDGE = 26;

/** The aim's name, beside it; where it lies off the board, where its line leaves, and how much further it is. */
function aimNote(source: ArcSource, from: ScreenPoint, at: ScreenPoint): Note {
  const { x, y, width, height } = source.bounds;
  // The share of the way from the ball to the aim that is still on the board.
  let share = 1;
  for (const [start, way, least, most] of [
    [from[0], at[0] - from[0], x + EDGE, x + width - EDGE],
    [from[1], at[1] - from[1], y + EDGE, y + height - EDGE],
  ] as const) {
    if (start + way > most && way > 0) share = Math.min(share, Math.max(0, (most - start) / way));
    if (start + way < least && way < 0) share = Math.min(share, Math.max(0, (least - start) / way));
  }
  const away = (1 - share) * Math.hypot(at[0] - from[0], at[1] - from[1]);
  return {
    id: share < 1 ? 'aim off the board' : 'aim',
    view: source.arcs.view,
    x: from[0] + share * (at[0] - from[0]),
    y: from[1] + share * (at[1] - from[1]),
    clear: share < 1 ? 4 : 12,
    toward: 60,
    lines: [
      {
        text: share < 1 ? `aim point ${source.length(away / source.scale)} further on` : 'aim point',
        ink: 'aim',
        strong: false,
      },
    ],
  };
}
