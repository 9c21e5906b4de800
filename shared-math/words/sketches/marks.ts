// What a small drawing of the page of words is made of. The same marks are drawn on the screen and on paper, so they
// know neither: a field of 160 by 100, x to the right and y down, and inks by what they mean (`look/tokens.css`).

import { toRadians } from '../../units/index.ts';

/** Width and height of the field that every sketch is drawn in. */
export const FIELD = { width: 160, height: 100 } as const;

/** What an ink means; each has the second sign that the board gives it: weight, dash or dots. */
export type SketchInk = 'ink' | 'soft' | 'rule' | 'steel' | 'stop' | 'attention' | 'good';

/** Flat list of x, y, x, y …, in the field. */
export type SketchPoints = readonly number[];

export type Dash = 'dashed' | 'dotted' | 'centre';

export type Mark =
  | {
      readonly kind: 'line';
      readonly at: SketchPoints;
      readonly ink: SketchInk;
      readonly width: number;
      readonly dash?: Dash;
      readonly closed?: boolean;
      readonly fill?: SketchInk | 'paper';
    }
  | {
      readonly kind: 'circle';
      readonly x: number;
      readonly y: number;
      readonly radius: number;
      readonly ink: SketchInk;
      readonly width: number;
      readonly dash?: Dash;
      readonly fill?: SketchInk | 'paper';
    }
  | {
      readonly kind: 'text';
      readonly x: number;
      readonly y: number;
      readonly words: string;
      readonly ink: SketchInk;
      readonly align: 'left' | 'centre' | 'right';
      readonly strong?: boolean;
    };

/** A small drawing, and what it shows to whoever cannot see it. */
export interface Sketch {
  readonly alt: string;
  readonly marks: readonly Mark[];
}

/** Lengths of line and gap of each dash, in the field. */
export const DASHES: Readonly<Record<Dash, readonly number[]>> = {
  dashed: [3, 2],
  dotted: [0.6, 2],
  centre: [7, 2, 1.5, 2],
};

/** Height of the letters in the field. */
export const LETTERS = 7;

export const THIN = 0.6;
export const LINE = 1.1;
export const HEAVY = 1.9;

interface LineStyle {
  readonly width?: number;
  readonly dash?: Dash;
  readonly closed?: boolean;
  readonly fill?: SketchInk | 'paper';
}

export function line(ink: SketchInk, at: SketchPoints, style: LineStyle = {}): Mark {
  return { kind: 'line', at, ink, width: LINE, ...style };
}

export function circle(
  ink: SketchInk,
  x: number,
  y: number,
  radius: number,
  style: Omit<LineStyle, 'closed'> = {},
): Mark {
  return { kind: 'circle', x, y, radius, ink, width: LINE, ...style };
}

export function text(
  x: number,
  y: number,
  words: string,
  ink: SketchInk = 'soft',
  align: 'left' | 'centre' | 'right' = 'left',
): Mark {
  return { kind: 'text', x, y, words, ink, align };
}

/** Points of an arc about a centre; degrees clockwise from the right, as the field runs down. */
export function arcPoints(x: number, y: number, radius: number, from: number, to: number): number[] {
  const steps = Math.max(6, Math.ceil(Math.abs(to - from) / 6));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = toRadians(from + ((to - from) * i) / steps);
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  }).flat();
}

export function arc(
  ink: SketchInk,
  [x, y, radius]: readonly [x: number, y: number, radius: number],
  [from, to]: readonly [from: number, to: number],
  style: LineStyle = {},
): Mark {
  return line(ink, arcPoints(x, y, radius, from, to), style);
}

/** The two strokes of an arrow's head at the end of a line that comes from `from`. */
function head(
  ink: SketchInk,
  [fromX, fromY]: readonly [number, number],
  [x, y]: readonly [number, number],
): Mark {
  const way = Math.atan2(y - fromY, x - fromX);
  const barb = (turn: number) => [x - 4.2 * Math.cos(way + turn), y - 4.2 * Math.sin(way + turn)];
  return line(ink, [...barb(0.42), x, y, ...barb(-0.42)], { width: LINE });
}

/** A line with a head at its last point. */
export function arrow(ink: SketchInk, at: SketchPoints, style: LineStyle = {}): Mark[] {
  const end = at.length;
  const last = [at[end - 2] as number, at[end - 1] as number] as const;
  const before = [at[end - 4] as number, at[end - 3] as number] as const;
  return [line(ink, at, style), head(ink, before, last)];
}

/** An arrow bent about a centre. */
export function turnArrow(
  ink: SketchInk,
  place: readonly [x: number, y: number, radius: number],
  [from, to]: readonly [from: number, to: number],
): Mark[] {
  return arrow(ink, arcPoints(...place, from, to), { width: LINE });
}

/** A dimension between two points: a thin line with a head at each end, and its words beside its middle. */
export function dimension(
  [x1, y1, x2, y2]: readonly [number, number, number, number],
  words: string,
  [dx, dy]: readonly [number, number] = [0, -2.5],
  align: 'left' | 'centre' | 'right' = 'centre',
  ink: SketchInk = 'attention',
): Mark[] {
  return [
    line(ink, [x1, y1, x2, y2], { width: THIN }),
    head(ink, [x2, y2], [x1, y1]),
    head(ink, [x1, y1], [x2, y2]),
    text((x1 + x2) / 2 + dx, (y1 + y2) / 2 + dy, words, ink, align),
  ];
}

/** An angle between two directions at a point, with its words at the arc's middle. */
export function angle(
  [x, y, radius]: readonly [number, number, number],
  [from, to]: readonly [number, number],
  words: string,
  [dx, dy]: readonly [number, number] = [0, 0],
  align: 'left' | 'centre' | 'right' = 'centre',
): Mark[] {
  const middle = toRadians((from + to) / 2);
  return [
    arc('attention', [x, y, radius], [from, to]),
    text(
      x + (radius + 3) * Math.cos(middle) + dx,
      y + (radius + 3) * Math.sin(middle) + dy,
      words,
      'attention',
      align,
    ),
  ];
}

/** A ball joint or pivot. */
export function ball(x: number, y: number, ink: SketchInk = 'steel', radius = 2.6): Mark {
  return circle(ink, x, y, radius, { fill: 'paper', width: LINE });
}

/** A pivot bolted to the frame: a ball with a short hatch below it. */
export function fixedPivot(x: number, y: number): Mark[] {
  return [
    line('ink', [x, y, x - 5, y + 8, x + 5, y + 8], { closed: true, width: LINE, fill: 'paper' }),
    circle('ink', x, y, 2.6, { fill: 'paper' }),
  ];
}

export const ground = (y: number, from = 4, to = 156): Mark =>
  line('soft', [from, y, to, y], { width: THIN });

/** A tyre from the side: ground is one radius below. */
export function wheelSide(x: number, y: number, radius: number): Mark[] {
  return [circle('ink', x, y, radius), circle('ink', x, y, radius * 0.62, { width: THIN })];
}

/** A rectangle with its middle at a place, leaned clockwise by degrees: a tyre from ahead or from above. */
export function block(
  [x, y]: readonly [number, number],
  [wide, high]: readonly [number, number],
  lean = 0,
  style: LineStyle = {},
  ink: SketchInk = 'ink',
): Mark {
  const t = toRadians(lean);
  const corner = (u: number, v: number) => [
    x + (u * wide * Math.cos(t)) / 2 - (v * high * Math.sin(t)) / 2,
    y + (u * wide * Math.sin(t)) / 2 + (v * high * Math.cos(t)) / 2,
  ];
  return line(ink, [...corner(-1, -1), ...corner(1, -1), ...corner(1, 1), ...corner(-1, 1)], {
    closed: true,
    fill: 'paper',
    ...style,
  });
}
