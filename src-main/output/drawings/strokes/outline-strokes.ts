import {
  isClosed,
  type Outline,
  outline,
  type Shape,
  VIEW_AXES,
  type View,
} from '../../../../shared-math/drawing/index.ts';
import type { Curve, Spot, Stroke } from './stroke.ts';

type Hull = Extract<Shape, { kind: 'body' }>;

/**
 * mm. What is seen so nearly end on, or so nearly square, that it looks round, or straight, to within this is drawn as
 * circle or straight line: a wheel with a degree of camber is a circle to whoever drills its centre.
 */
export const ROUND_WITHIN = 0.05;

/** Directions in which the outermost disc is asked for, before the turning points between them are found exactly. */
const DIRECTIONS = 720;
/** mm by which another disc must reach further to take over, so that two alike do not take turns. */
const FURTHER = 1e-9;
/** mm. Strokes shorter than this are none. */
const NONE = 1e-6;

const apart = (a: Spot, b: Spot) => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** A rounded disc as a view sees it: centre, axis and radii; right and up, mm. `axis` is as long as it is not seen end on. */
interface SeenDisc {
  readonly centre: Spot;
  readonly axis: Spot;
  readonly radius: number;
  readonly round: number;
}

function seenDiscs(shape: Hull, placed: Float64Array, view: View): SeenDisc[] {
  const { right, down } = VIEW_AXES[view];
  return shape.discs.map(({ at, tip, radius, round }) => {
    const d = [0, 1, 2].map((i) => (placed[3 * tip + i] as number) - (placed[3 * at + i] as number));
    const length = Math.hypot(...d) || 1;
    const axis: Spot = [
      (right.sign * (d[right.axis] as number)) / length,
      (-down.sign * (d[down.axis] as number)) / length,
    ];
    const centre: Spot = [
      right.sign * (placed[3 * at + right.axis] as number),
      -down.sign * (placed[3 * at + down.axis] as number),
    ];
    const tilt = Math.hypot(...axis);
    // A ball, or a disc seen end on, is as round as it is large.
    const flat = radius * (1 - Math.sqrt(Math.max(0, 1 - tilt * tilt)));
    if (radius === 0 || flat < ROUND_WITHIN)
      return { centre, axis: [0, 0], radius: 0, round: radius + round };
    // Seen edge on to within the same, it is a line.
    if (radius - flat < ROUND_WITHIN)
      return { centre, axis: [axis[0] / tilt, axis[1] / tilt], radius, round };
    return { centre, axis, radius, round };
  });
}

/** How far a disc reaches in a direction: c·d + s + r √(1 - (a·d)²). */
function reach({ centre, axis, radius, round }: SeenDisc, angle: number): number {
  const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
  const along = axis[0] * dx + axis[1] * dy;
  return centre[0] * dx + centre[1] * dy + round + radius * Math.sqrt(Math.max(0, 1 - along * along));
}

/** A stretch of the compass in which one disc is the outermost. */
interface Run {
  readonly disc: SeenDisc;
  readonly from: number;
  readonly to: number;
}

function outermost(discs: readonly SeenDisc[], angle: number, before: SeenDisc): SeenDisc {
  let best = before;
  let most = reach(before, angle) + FURTHER;
  for (const disc of discs) {
    const reached = reach(disc, angle);
    if (reached > most) [best, most] = [disc, reached];
  }
  return best;
}

/** Which disc is outermost around the compass: asked by steps, the direction of each change then halved out. */
function runsOf(discs: readonly SeenDisc[]): Run[] {
  const step = (2 * Math.PI) / DIRECTIONS;
  const first = discs[0] as SeenDisc;
  let disc = outermost(discs, 0, outermost(discs, -step, first));
  const runs: Run[] = [];
  let from = 0;
  for (let i = 1; i <= DIRECTIONS; i += 1) {
    const next = outermost(discs, i * step, disc);
    if (next === disc) continue;
    let [low, high] = [(i - 1) * step, i * step];
    for (let halving = 0; halving < 50; halving += 1) {
      const middle = (low + high) / 2;
      if (reach(next, middle) > reach(disc, middle)) high = middle;
      else low = middle;
    }
    runs.push({ disc, from, to: high });
    [disc, from] = [next, high];
  }
  const last = runs[0];
  // The compass closes: what is outermost at its end is what was so at its beginning.
  if (last && last.disc === disc) return [{ disc, from: from - 2 * Math.PI, to: last.to }, ...runs.slice(1)];
  return [...runs, { disc, from, to: 2 * Math.PI }];
}

const arc = (centre: Spot, radius: number, from: number, to: number): Curve => ({
  kind: 'curve',
  centre,
  u: [radius, 0],
  v: [0, radius],
  from,
  sweep: to - from,
});

/**
 * Chords for the rim of a rounded disc seen askew, which is the curve at a distance from an ellipse and has no name. Its
 * tips turn fast and its sides hardly, so that steps are taken by direction and by the ellipse's own angle both.
 */
function chords({ centre, axis, radius, round }: SeenDisc, from: number, to: number): Spot[] {
  const tilt = Math.hypot(...axis);
  const short = Math.sqrt(1 - tilt * tilt);
  const square = Math.atan2(axis[0], -axis[1]);
  const step = 2 * Math.acos(1 - ROUND_WITHIN / (radius + round));
  const angles = [from, to];
  for (let angle = from + step; angle < to; angle += step) angles.push(angle);
  for (let own = 0; own < 2 * Math.PI; own += step) {
    const angle = square + Math.atan2(Math.sin(own) / short, Math.cos(own));
    const first = angle + 2 * Math.PI * Math.ceil((from - angle) / (2 * Math.PI));
    if (first < to) angles.push(first);
  }
  return angles
    .sort((a, b) => a - b)
    .map((angle): Spot => {
      const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
      const along = dx * axis[0] + dy * axis[1];
      const flat = Math.sqrt(1 - along * along);
      return [
        centre[0] + round * dx + (radius * (dx - along * axis[0])) / flat,
        centre[1] + round * dy + (radius * (dy - along * axis[1])) / flat,
      ];
    })
    .filter((spot, i, all) => i === 0 || i === all.length - 1 || apart(spot, all[i - 1] as Spot) > 0.01);
}

/** The strokes of a run, joined by straight ones where it has corners. */
function strokesOfRun({ disc, from, to }: Run): (Curve | Spot[])[] {
  const { centre, axis, radius, round } = disc;
  const tilt = Math.hypot(...axis);
  if (radius === 0) return [round < NONE ? [centre] : arc(centre, round, from, to)];
  if (tilt > 1 - 1e-12) {
    // Edge on: a straight edge, from whose ends the rounding runs. It changes ends where the direction is the axis.
    const along = Math.atan2(axis[1], axis[0]);
    const strokes: (Curve | Spot[])[] = [];
    let start = from;
    while (start < to - 1e-12) {
      const next = along + Math.PI * (Math.floor((start + 1e-12 - along) / Math.PI) + 1);
      const stop = Math.min(next, to);
      const middle = (start + stop) / 2;
      const side = Math.sign(-axis[1] * Math.cos(middle) + axis[0] * Math.sin(middle)) || 1;
      const edge: Spot = [centre[0] - side * axis[1] * radius, centre[1] + side * axis[0] * radius];
      strokes.push(round < NONE ? [edge] : arc(edge, round, start, stop));
      start = stop;
    }
    return strokes;
  }
  if (round >= NONE) return [chords(disc, from, to)];
  // An ellipse: its long half axis square to the axis as seen, its short one along it.
  const n: Spot = [-axis[1] / tilt, axis[0] / tilt];
  const a: Spot = [axis[0] / tilt, axis[1] / tilt];
  const short = Math.sqrt(1 - tilt * tilt);
  // A direction turned by β from n touches at the ellipse's own angle φ: tan φ = short · tan β, in the same quadrant.
  const own = (angle: number) => {
    const beta = angle - Math.atan2(n[1], n[0]);
    const turns = Math.round(beta / (2 * Math.PI));
    const within = beta - 2 * Math.PI * turns;
    return Math.atan2(short * Math.sin(within), Math.cos(within)) + 2 * Math.PI * turns;
  };
  // n turned by a quarter is -a.
  const v: Spot = [-a[0] * radius * short, -a[1] * radius * short];
  const u: Spot = [n[0] * radius, n[1] * radius];
  return [{ kind: 'curve', centre, u, v, from: own(from), sweep: own(to) - own(from) }];
}

const startAndEnd = (piece: Curve | Spot[]): [Spot, Spot] => {
  if (Array.isArray(piece)) return [piece[0] as Spot, piece.at(-1) as Spot];
  const at = (t: number): Spot => [
    piece.centre[0] + piece.u[0] * Math.cos(t) + piece.v[0] * Math.sin(t),
    piece.centre[1] + piece.u[1] * Math.cos(t) + piece.v[1] * Math.sin(t),
  ];
  return [at(piece.from), at(piece.from + piece.sweep)];
};

function hullStrokes(shape: Hull, placed: Float64Array, view: View): Stroke[] {
  const pieces = runsOf(seenDiscs(shape, placed, view)).flatMap(strokesOfRun);
  const strokes: Stroke[] = [];
  pieces.forEach((piece, i) => {
    if (Array.isArray(piece))
      for (let j = 1; j < piece.length; j += 1)
        strokes.push({ kind: 'line', a: piece[j - 1] as Spot, b: piece[j] as Spot });
    else if (Math.abs(piece.sweep) * Math.hypot(...piece.u) > NONE) strokes.push(piece);
    const end = startAndEnd(piece)[1];
    const start = startAndEnd(pieces[(i + 1) % pieces.length] as Curve | Spot[])[0];
    if (apart(end, start) > NONE) strokes.push({ kind: 'line', a: end, b: start });
  });
  return strokes;
}

/**
 * The outline of a shape in a view as lines and arcs, one after another around it; a closed one ends where it begins.
 * Balls and ends seen end on are circles, ends seen askew ellipses; what is neither is drawn by chords within the same.
 * Frame: the view's own plane, right and up. Units: mm. Shapes: `placed` holds 3 numbers for each point of the drawing.
 */
export function outlineStrokes(shape: Shape, placed: Float64Array, view: View): Stroke[] {
  if (shape.kind === 'body') return hullStrokes(shape, placed, view);
  const line: Outline = [];
  outline(shape, placed, view, line);
  const spots: Spot[] = [];
  for (let i = 0; i < line.length; i += 2) spots.push([line[i] as number, -(line[i + 1] as number) + 0]);
  if (isClosed(shape) && spots.length > 2) spots.push(spots[0] as Spot);
  return spots.slice(1).flatMap((b, i): Stroke[] => {
    const a = spots[i] as Spot;
    return apart(a, b) > NONE ? [{ kind: 'line', a, b }] : [];
  });
}
