import type { ViewPoint } from '../../shared-math/drawing/index.ts';
import type { ScreenPoint } from './camera.ts';
import { type Obstacles, type PlacedLabel, placeLabels, type Rect } from './labels.ts';
import type { OverlayLine, OverlayText } from './overlay.ts';
import type { Note } from './overlay-picture.ts';

export type Measure = (text: string, strong: boolean) => { width: number; height: number };

/** A note's place relative to its spot. */
interface Settled {
  readonly dx: number;
  readonly dy: number;
  readonly leader: readonly [number, number, number, number];
}

/** px kept between what is written and what is drawn. */
const AIR = 2;

interface Sized {
  readonly note: Note;
  readonly width: number;
  readonly height: number;
}

function sized(note: Note, measure: Measure): Sized {
  let width = 0;
  let height = 0;
  for (const line of note.lines) {
    const size = measure(line.text, line.strong);
    width = Math.max(width, size.width);
    height += size.height;
  }
  return { note, width, height };
}

/**
 * Finds room for notes and remembers it: while the drawing moves a note goes along with its spot, and only when things
 * are at rest, or for a note that is new, is the room looked for again. Words that hop about cannot be read.
 */
export class NotePlacing {
  #settled = new Map<string, Settled>();

  #rest = 0;

  /** `rest` counts how often things have come to rest: with another than before, room is looked for again for all. */
  place(
    rest: number,
    notes: readonly Note[],
    measure: Measure,
    obstacles: () => Obstacles,
  ): { lines: OverlayLine[]; texts: OverlayText[] } {
    if (rest !== this.#rest) this.#settled.clear();
    this.#rest = rest;
    const kept = new Map<string, Settled>();
    const all = notes.map((note) => sized(note, measure));
    const fresh = all.filter(({ note }) => !this.#settled.has(note.id));
    for (const { note } of all) {
      const settled = this.#settled.get(note.id);
      if (settled) kept.set(note.id, settled);
    }
    if (fresh.length > 0) {
      const around = obstacles();
      const standing: Rect[] = all.flatMap(({ note, width, height }) => {
        const settled = kept.get(note.id);
        return settled ? [{ x: note.x + settled.dx, y: note.y + settled.dy, width, height }] : [];
      });
      const placed = placeLabels(
        fresh.map(({ note, width, height }) => ({
          x: note.x,
          y: note.y,
          width: width + 2 * AIR,
          height: height + 2 * AIR,
          clear: note.clear,
          toward: note.toward,
        })),
        { ...around, words: [...around.words, ...standing] },
      );
      fresh.forEach(({ note }, i) => {
        kept.set(note.id, relative(note, placed[i] as PlacedLabel));
      });
    }
    this.#settled = kept;
    return written(all, kept, measure);
  }
}

function relative(note: Note, label: PlacedLabel): Settled {
  const [x1, y1, x2, y2] = label.leader;
  return {
    dx: label.x + AIR - note.x,
    dy: label.y + AIR - note.y,
    leader: [x1 - note.x, y1 - note.y, x2 - note.x, y2 - note.y],
  };
}

function written(
  all: readonly Sized[],
  settled: ReadonlyMap<string, Settled>,
  measure: Measure,
): { lines: OverlayLine[]; texts: OverlayText[] } {
  const lines: OverlayLine[] = [];
  const texts: OverlayText[] = [];
  for (const { note, width } of all) {
    const place = settled.get(note.id);
    if (!place) continue;
    const [x1, y1, x2, y2] = place.leader;
    lines.push({ points: [note.x + x1, note.y + y1, note.x + x2, note.y + y2], ink: 'soft' });
    // Text left of its spot ends there, so that a figure of changing width keeps its distance.
    const leftward = place.dx + width / 2 < 0;
    let y = note.y + place.dy;
    for (const { text, ink, strong } of note.lines) {
      const { height } = measure(text, strong);
      texts.push({
        text,
        ink,
        strong,
        align: leftward ? 'right' : 'left',
        x: note.x + place.dx + (leftward ? width : 0),
        y: y + height / 2,
      });
      y += height;
    }
  }
  return { lines, texts };
}

/** Outlines of the drawing as line segments on the board, four numbers each. */
export function segmentsOf(
  outlines: readonly (readonly number[])[],
  onBoard: (place: ViewPoint) => ScreenPoint,
): number[] {
  const segments: number[] = [];
  for (const line of outlines) {
    let last: ScreenPoint | undefined;
    for (let i = 0; i + 1 < line.length; i += 2) {
      const next = onBoard([line[i] as number, line[i + 1] as number]);
      if (last) segments.push(last[0], last[1], next[0], next[1]);
      last = next;
    }
  }
  return segments;
}
