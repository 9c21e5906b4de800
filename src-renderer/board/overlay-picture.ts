import type { View, ViewPoint } from '../../shared-math/drawing/index.ts';
import type { Hardpoint } from '../../shared-math/layout/index.ts';
import type { ScreenPoint } from './camera.ts';
import { type Handle, isOfBody, isSteering, standsBack } from './handles.ts';
import type { Rect } from './labels.ts';
import type { OverlayHandle, OverlayInk, OverlayLine } from './overlay.ts';
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

/** What the overlay is made from. Everything in px of the board. */
export interface OverlaySource {
  readonly shown: readonly View[];
  readonly handles: readonly Handle[];
  readonly points: readonly Hardpoint[];
  /** Points whose places are guesses, by id. */
  readonly guessed: ReadonlySet<string>;
  /** The number of each hardpoint, by id. */
  readonly numbers: ReadonlyMap<string, number>;
  readonly chosen: string | null;
  readonly hovered: string | null;
  /** The view in which the hovered and the chosen point are named. */
  readonly hoverView: View;
  readonly chosenView: View;
  readonly guides: readonly Guide[];
  readonly guideView: View;
  /** Rails and obstacles that are chosen or hovered, and where each is named. */
  readonly bodies: readonly {
    readonly id: string;
    readonly view: View;
    readonly at: ViewPoint;
    readonly name: string;
  }[];
  /** The board, and how many px on it are a mm. */
  readonly bounds: Rect;
  readonly scale: number;
  /** px of a line of weight 1. */
  readonly weight: number;
  onBoard(view: View, place: ViewPoint): ScreenPoint;
  /** How much room a text takes, px. */
  measure(text: string, strong: boolean): { readonly width: number; readonly height: number };
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

/** What each handle is numbered: points that a view shows on one spot have theirs together, at the first of them. */
export function numbersOf(handles: readonly Handle[], numbers: ReadonlyMap<string, number>): string[] {
  return handles.map((handle, i) => {
    const together = handles.filter(
      ({ view, x, y }) => view === handle.view && Math.hypot(x - handle.x, y - handle.y) < INTO_ONE,
    );
    if (together[0] !== handle && handles.indexOf(together[0] as Handle) < i) return '';
    const found = together.flatMap(({ point }) => numbers.get(point.id) ?? []);
    return [...new Set(found)].sort((a, b) => a - b).join(', ');
  });
}

type Corner = NonNullable<OverlayHandle['corner']>;
const CORNERS: readonly Corner[] = [
  [1, -1],
  [-1, -1],
  [1, 1],
  [-1, 1],
];
/** px of a number's letter and of its line, how far its middle stands off the handle, and half of a handle. */
const LETTER = 5.8;
const LINE = 11;
const OFF = 7;
const HALF = 4;

/**
 * The corner of its handle to which each number stands: the first that leaves the numbers before it and all handles free, else
 * the first that leaves those numbers free. Where there is none the number waits until somebody looks from closer by, unless it
 * is `wanted` (chosen, or under the pointer): it then stands to the first corner.
 */
export function cornersOf(
  handles: readonly Handle[],
  numbers: readonly string[],
  weight: number,
  wanted: (index: number) => boolean = () => false,
): (Corner | undefined)[] {
  const placed: { left: number; right: number; middle: number }[] = [];
  return handles.map(({ x, y }, i) => {
    const words = numbers[i];
    if (!words) return undefined;
    const wide = LETTER * words.length * weight;
    const boxAt = ([right, down]: Corner) => {
      const near = x + right * OFF * weight;
      const [left, end] = right === 1 ? [near, near + wide] : [near - wide, near];
      return { left, right: end, middle: y + down * OFF * weight };
    };
    const free = CORNERS.filter((each) => {
      const box = boxAt(each);
      return placed.every(
        (other) =>
          box.left > other.right ||
          box.right < other.left ||
          Math.abs(box.middle - other.middle) > LINE * weight,
      );
    });
    const offHandles = free.find((each) => {
      const box = boxAt(each);
      const half = HALF * weight;
      return handles.every(
        (other, j) =>
          j === i ||
          other.x + half < box.left ||
          other.x - half > box.right ||
          Math.abs(box.middle - other.y) > (LINE * weight) / 2 + half,
      );
    });
    const corner = offHandles ?? free[0] ?? (wanted(i) ? CORNERS[0] : undefined);
    if (corner) placed.push(boxAt(corner));
    return corner;
  });
}

/** What the number of each handle takes of the board, px. */
export function numberBoxes(handles: readonly OverlayHandle[], weight: number): Rect[] {
  return handles.flatMap(({ x, y, numbers, corner }) => {
    if (!numbers || !corner) return [];
    const wide = LETTER * numbers.length * weight;
    const near = x + corner[0] * OFF * weight;
    return [
      {
        x: corner[0] === 1 ? near : near - wide,
        y: y + (corner[1] * OFF - LINE / 2) * weight,
        width: wide,
        height: LINE * weight,
      },
    ];
  });
}

/** Handles, those at rest first so that what is chosen lies on top. */
export function handlesOf(source: OverlaySource): OverlayHandle[] {
  const shown = source.handles.filter(
    (handle) => stateOf(handle, source) !== 'rest' || !isBehindJoint(handle, source.handles),
  );
  const numbers = numbersOf(shown, source.numbers);
  const corners = cornersOf(
    shown,
    numbers,
    source.weight,
    (i) => stateOf(shown[i] as Handle, source) !== 'rest',
  );
  return shown
    .map((handle, i) => ({
      x: handle.x,
      y: handle.y,
      steering: isSteering(handle.point),
      guessed: source.guessed.has(handle.point.id),
      ...(isOfBody(handle.point) ? { square: true } : {}),
      ...(numbers[i] && corners[i] ? { numbers: numbers[i], corner: corners[i] } : {}),
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
  return notes;
}
