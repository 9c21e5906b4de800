import type { Place, View } from '../../shared-math/drawing/index.ts';
import type { Hardpoint } from '../../shared-math/layout/index.ts';
import type { Arcs, Gap } from '../places/layout/travel/arcs.ts';
import { type Handle, isOfBody, isSteering, standsBack } from './handles.ts';
import type { Rect } from './labels.ts';
import type { OverlayHandle, OverlayInk, OverlayLine, OverlayMark } from './overlay.ts';
import type { Guide } from './snapping.ts';

/** A text to be placed beside a spot, in px; which way it would rather stand, degrees clockwise from the right. */
export interface Note {
  readonly id: string;
  readonly view: View;
  readonly x: number;
  readonly y: number;
  readonly clear: number;
  readonly toward: number;
  readonly lines: readonly { readonly text: string; readonly ink: OverlayInk; readonly strong: boolean }[];
}

/** What the overlay is made from. Everything in px of the board but for the arcs, whose places `onBoard` takes. */
export interface OverlaySource {
  readonly shown: readonly View[];
  readonly handles: readonly Handle[];
  readonly points: readonly Hardpoint[];
  readonly chosen: string | null;
  readonly hovered: string | null;
  /** The view in which the hovered and the chosen point are named. */
  readonly hoverView: View;
  readonly chosenView: View;
  readonly guides: readonly Guide[];
  readonly guideView: View;
  readonly arcs: Arcs;
  readonly gap: Gap | undefined;
  /** What other variants on the board are called, each beside its pitman ball. */
  readonly others: readonly { readonly view: View; readonly at: Place; readonly name: string }[];
  /** Rails and obstacles that are chosen or hovered, and where each is named. */
  readonly bodies: readonly {
    readonly id: string;
    readonly view: View;
    readonly at: Place;
    readonly name: string;
  }[];
  /** The board, and how many px on it are a mm. */
  readonly bounds: Rect;
  readonly scale: number;
  onBoard(view: View, place: Place): Place;
  length(mm: number): string;
  /** For small lengths, which the reader's own fraction might round away. */
  fineLength(mm: number): string;
  /** Where a point is as a view shows it, in words: "34 1/4 in back · 16 in above". */
  whereIs(point: Hardpoint, view: View): string;
}

function stateOf(handle: Handle, source: OverlaySource): OverlayHandle['state'] {
  const { id, twin } = handle.point;
  if (id === source.chosen) return 'chosen';
  if (id === source.hovered) return 'hover';
  if (twin !== undefined && (twin === source.chosen || twin === source.hovered)) return 'twin';
  return 'rest';
}

/** px within which two handles at rest would be drawn into one another. */
const INTO_ONE = 10;

/** Column end and box input lie just behind the joints on them: drawn on their own where there is room for both. */
function isBehindJoint(handle: Handle, handles: readonly Handle[]): boolean {
  if (!standsBack(handle.point)) return false;
  return (handle.point.brings ?? []).some((id) => {
    const joint = handles.find(({ point, view }) => point.id === id && view === handle.view);
    return joint && Math.hypot(joint.x - handle.x, joint.y - handle.y) < INTO_ONE;
  });
}

/** Handles, those at rest first so that what is chosen lies on top. */
export function handlesOf(source: OverlaySource): OverlayHandle[] {
  return source.handles
    .filter((handle) => stateOf(handle, source) !== 'rest' || !isBehindJoint(handle, source.handles))
    .map((handle) => ({
      x: handle.x,
      y: handle.y,
      steering: isSteering(handle.point),
      ...(isOfBody(handle.point) ? { square: true } : {}),
      state: stateOf(handle, source),
    }))
    .sort((a, b) => rank(a) - rank(b));
}

const RANK = { rest: 0, twin: 2, hover: 3, chosen: 4 } as const;
const rank = (handle: OverlayHandle) => RANK[handle.state] + (handle.steering ? 0.5 : 0);

/** Thin lines from a point's place in one view to its place in the next, as a draughtsman carries it over. */
export function projectionLines(source: OverlaySource): OverlayLine[] {
  const lines: OverlayLine[] = [];
  for (const id of new Set([source.hovered, source.chosen])) {
    if (id === null) continue;
    const at = (view: View) =>
      source.handles.find((handle) => handle.point.id === id && handle.view === view);
    const side = at('side') ?? sideOfTwin(source, id);
    for (const other of [at('top'), at('front')])
      if (side && other) lines.push({ points: [side.x, side.y, other.x, other.y], ink: 'guide' });
  }
  return lines;
}

/** The far point of a mirrored pair has no handle from the side; it lies behind its twin's. */
function sideOfTwin(source: OverlaySource, id: string): Handle | undefined {
  const twin = source.points.find((point) => point.id === id)?.twin;
  return source.handles.find((handle) => handle.point.id === twin && handle.view === 'side');
}

/** Lines from the neighbours whose coordinates were taken over. */
export function snapLines(source: OverlaySource): OverlayLine[] {
  const dragged = source.handles.find(
    (handle) => handle.point.id === source.chosen && handle.view === source.guideView,
  );
  if (!dragged) return [];
  return source.guides.flatMap(({ from }) => {
    const neighbour =
      source.handles.find((handle) => handle.point.id === from.id && handle.view === source.guideView) ??
      source.handles.find((handle) => handle.point.id === from.twin && handle.view === source.guideView);
    return neighbour
      ? [{ points: [neighbour.x, neighbour.y, dragged.x, dragged.y], ink: 'snap' as const }]
      : [];
  });
}

const flat = (places: readonly Place[]) => places.flatMap((place) => [place[0], place[1]]);

/** px that the zero-slope line is drawn on beyond the aim point. */
const BEYOND_AIM = 46;

/** The arcs, the gap between them, and the aim with its line. */
export function arcMarks(source: OverlaySource): { lines: OverlayLine[]; marks: OverlayMark[] } {
  const { arcs, gap, shown } = source;
  if (!shown.includes(arcs.view)) return { lines: [], marks: [] };
  const onBoard = (place: Place) => source.onBoard(arcs.view, place);
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

function gapWords(source: OverlaySource, size: number): string {
  const words = source.fineLength(size);
  return words === source.fineLength(0) ? NO_GAP : `gap ${words}`;
}

/** What the arcs are called, and the gap as a figure. */
export function arcNotes(source: OverlaySource): Note[] {
  const { arcs, gap, shown } = source;
  if (!shown.includes(arcs.view) || arcs.asked.length === 0) return [];
  const nothing = gap ? gapWords(source, gap.size) === NO_GAP : false;
  const onBoard = (place: Place) => source.onBoard(arcs.view, place);
  const note = (
    id: string,
    at: Place,
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
    const middle: Place = [(gap.asked[0] + gap.allowed[0]) / 2, (gap.asked[1] + gap.allowed[1]) / 2];
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
  const low = arcs.asked.at(0) as Place;
  const high = arcs.allowed.at(-1) as Place;
  notes.push(note('asked', low, 150, 'axle asks', 'asked', false));
  notes.push(note('allowed', high, 210, 'link allows', 'allowed', false));
  if (arcs.aim)
    notes.push(aimNote(source, onBoard(arcs.zeroSlope?.from ?? arcs.aim.at), onBoard(arcs.aim.at)));
  return notes;
}

/** px from the board's edge at which a line that leaves it is spoken of. */
const EDGE = 26;

/** The aim's name, beside it; where it lies off the board, where its line leaves, and how much further it is. */
function aimNote(source: OverlaySource, from: Place, at: Place): Note {
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

/** What is written over the drawing: names of what is chosen and hovered first, then what else is on the board. */
export function notesOf(source: OverlaySource): Note[] {
  const notes: Note[] = [];
  const name = (id: string | null, view: View, key: string) => {
    const own = source.handles.filter(({ point }) => point.id === id);
    // A point chosen in the list may have no handle in the view used last.
    const handle = own.find((candidate) => candidate.view === view) ?? own[0];
    if (!handle) return;
    notes.push({
      id: `${key} ${handle.point.id} ${handle.view}`,
      view: handle.view,
      x: handle.x,
      y: handle.y,
      clear: 11,
      toward: -40,
      lines: [
        { text: handle.point.name, ink: 'steel', strong: true },
        { text: source.whereIs(handle.point, handle.view), ink: 'soft', strong: false },
      ],
    });
  };
  name(source.chosen, source.chosenView, 'name');
  if (source.hovered !== source.chosen) name(source.hovered, source.hoverView, 'name');
  for (const { id, view, at, name: called } of source.bodies) {
    const [x, y] = source.onBoard(view, at);
    const ink = id === source.chosen ? 'steel' : 'ink';
    notes.push({
      id: `body ${id} ${view}`,
      view,
      x,
      y,
      clear: 3,
      toward: -60,
      lines: [{ text: called, ink, strong: true }],
    });
  }
  for (const { view, at, name: called } of source.others) {
    const [x, y] = source.onBoard(view, at);
    notes.push({
      id: `other ${called}`,
      view,
      x,
      y,
      clear: 7,
      toward: 40,
      lines: [{ text: called, ink: 'soft', strong: true }],
    });
  }
  return notes;
}
