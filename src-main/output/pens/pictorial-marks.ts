import type { Drawing } from '../../../shared-math/drawing/index.ts';
import { type Pictorial, STROKE_KINDS, type Strokes } from '../../../shared-math/pictorial/index.ts';
import { ROLE_PENS, type RolePen, STOP, WHITE } from './colours.ts';
import type { Align } from './print-pen.ts';

// The strokes of a pictorial with the sheet's inks: the same on paper, in a picture file, in a film and on a page that moves.

/** One mark of a picture: an outline to be filled, stroked, or both. Right and down by turns. */
export interface Mark {
  readonly points: readonly number[];
  readonly closed: boolean;
  readonly fill?: string;
  readonly line?: { readonly colour: string; readonly width: number; readonly dash?: readonly number[] };
}

/** A car of which only what differs from the other one is drawn, finely and broken, over it. */
const GHOST = { colour: STOP, width: 0.3, dash: [1.6, 1] } as const;
/** Share of a role's width that its pieces behind others have. */
const BEHIND = 0.4;
const GROUND_DASH = [2.2, 1.4] as const;

/** How far the side of a solid that is turned from the light is darkened, of 1. */
const DARKEST = 0.16;

/** A colour, "#rrggbb", darkened by a share. */
function darkened(colour: string, share: number): string {
  const channel = (at: number) =>
    Math.round(Number.parseInt(colour.slice(at, at + 2), 16) * (1 - share))
      .toString(16)
      .padStart(2, '0');
  return `#${channel(1)}${channel(3)}${channel(5)}`;
}

/** Colours of shades are few and asked for over and over. */
const SHADES = new Map<string, string>();

function shaded(colour: string, shade: number): string {
  const step = Math.round(16 * shade);
  const key = `${colour}${step}`;
  let known = SHADES.get(key);
  if (known === undefined) {
    known = darkened(colour, (DARKEST * step) / 16);
    SHADES.set(key, known);
  }
  return known;
}

function lineOf(kind: string, ink: RolePen): NonNullable<Mark['line']> {
  if (kind === 'edge') return { colour: ink.fineLine, width: ink.fineWidth };
  if (kind === 'behind') return { colour: ink.line, width: BEHIND * ink.width };
  if (kind === 'broken') return { colour: ink.line, width: ink.width, dash: GROUND_DASH };
  return { colour: ink.line, width: ink.width };
}

function placesOf(strokes: Strokes, from: number, to: number): number[] {
  return Array.from(strokes.places.subarray(from, to));
}

/** A ring with another in it that is left open, as one outline: out along the first, in along the second and back. */
function keyhole(outer: readonly number[], inner: readonly number[]): number[] {
  const first = outer.slice(0, 2);
  const start = inner.slice(0, 2);
  const back: number[] = [];
  for (let i = inner.length - 2; i >= 0; i -= 2) back.push(inner[i] as number, inner[i + 1] as number);
  return [...outer, ...first, ...start, ...back, ...first];
}

/** The marks of a picture's strokes, in drawing order. `drawing` is the one that they were drawn from. */
export function marksOf(strokes: Strokes, drawing: Drawing): Mark[] {
  const marks: Mark[] = [];
  for (let i = 0; i < strokes.count; i += 1) {
    const kind = STROKE_KINDS[strokes.kinds[i] as number];
    const part = drawing.parts[strokes.parts[i] as number];
    if (!kind || !part || kind === 'curve') continue;
    const ink = ROLE_PENS[part.role];
    const [from, to, open] = [
      strokes.from[i] as number,
      strokes.to[i] as number,
      strokes.opening[i] as number,
    ];
    const closed = strokes.closed[i] === 1;
    if (kind === 'face') {
      const fill = shaded(
        part.role === 'axle' || part.role === 'link' ? WHITE : ink.tint,
        strokes.shades[i] as number,
      );
      const opened = open >= 0 && open < to;
      const outer = placesOf(strokes, from, opened ? open : to);
      marks.push({
        points: opened ? keyhole(outer, placesOf(strokes, open, to)) : outer,
        closed: true,
        fill,
      });
    } else marks.push({ points: placesOf(strokes, from, to), closed, line: lineOf(kind, ink) });
  }
  return marks;
}

/** Of a second car's strokes the outlines of those parts that `differs` names, to be drawn over the first. */
export function ghostMarks(strokes: Strokes, differs: readonly boolean[]): Mark[] {
  const marks: Mark[] = [];
  for (let i = 0; i < strokes.count; i += 1) {
    if (STROKE_KINDS[strokes.kinds[i] as number] !== 'outline' || !differs[strokes.parts[i] as number])
      continue;
    const points = placesOf(strokes, strokes.from[i] as number, strokes.to[i] as number);
    marks.push({ points, closed: strokes.closed[i] === 1, line: GHOST });
  }
  return marks;
}

/** Where the word at the front end of the ground's middle line stands, mm at full size, and by which end it is set. */
export interface FrontWord {
  readonly right: number;
  readonly down: number;
  readonly align: Align;
}

/** How much of the way to the front goes to the side before the word is set by its end. */
const ASIDE = 0.3;

/** Of the picture that was drawn last. */
export function frontWord({ front }: Pick<Pictorial, 'front'>): FrontWord {
  const { right, down, wayRight } = front;
  return { right, down, align: wayRight < -ASIDE ? 'right' : wayRight > ASIDE ? 'left' : 'centre' };
}
