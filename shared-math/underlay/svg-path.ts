import { toRadians } from '../units/index.ts';

type Conic = readonly [cx: number, cy: number, ux: number, uy: number, vx: number, vy: number];

/** Where the stretches of a path go. */
export interface PathSink {
  line(points: readonly number[], closed: boolean, curved: boolean): void;
  /** centre + u cos t + v sin t, from t on by `sweep`. */
  arc(conic: Conic, from: number, sweep: number): void;
}

const TOKEN = /([MmLlHhVvCcSsQqTtAaZz])|([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)/g;
/** How many figures each command takes. */
const TAKES: Readonly<Record<string, number>> = {
  M: 2,
  L: 2,
  H: 1,
  V: 1,
  C: 6,
  S: 4,
  Q: 4,
  T: 2,
  A: 7,
  Z: 0,
};
/** Chords of one curve. */
const CHORDS = 16;

/**
 * The centre of an elliptic arc from its two ends, as SVG 1.1, appendix F.6.5, derives it; undefined if it is no arc.
 */
function arcOf(
  x1: number,
  y1: number,
  [a, b, degrees, large, sweepFlag, x2, y2]: readonly [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ],
): { conic: Conic; from: number; sweep: number } | undefined {
  let [rx, ry] = [Math.abs(a), Math.abs(b)];
  if (rx === 0 || ry === 0 || (x1 === x2 && y1 === y2)) return undefined;
  const turn = toRadians(degrees);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const [mx, my] = [(x1 - x2) / 2, (y1 - y2) / 2];
  const [px, py] = [c * mx + s * my, -s * mx + c * my];
  const over = (px / rx) ** 2 + (py / ry) ** 2;
  if (over > 1) [rx, ry] = [rx * Math.sqrt(over), ry * Math.sqrt(over)];
  const under = (rx * py) ** 2 + (ry * px) ** 2;
  const root = Math.sqrt(Math.max(0, ((rx * ry) ** 2 - under) / under)) * (large === sweepFlag ? -1 : 1);
  const [qx, qy] = [(root * rx * py) / ry, (-root * ry * px) / rx];
  const [cx, cy] = [c * qx - s * qy + (x1 + x2) / 2, s * qx + c * qy + (y1 + y2) / 2];
  const from = Math.atan2((py - qy) / ry, (px - qx) / rx);
  const to = Math.atan2((-py - qy) / ry, (-px - qx) / rx);
  let sweep = (to - from) % (2 * Math.PI);
  if (sweepFlag && sweep < 0) sweep += 2 * Math.PI;
  if (!sweepFlag && sweep > 0) sweep -= 2 * Math.PI;
  return { conic: [cx, cy, rx * c, rx * s, -ry * s, ry * c], from, sweep };
}

/** Chords of a Bézier curve of three or four points, its first left out. */
function curvePlaces(p: readonly number[]): number[] {
  const places: number[] = [];
  for (let i = 1; i <= CHORDS; i += 1) {
    const t = i / CHORDS;
    const u = 1 - t;
    const w = p.length === 8 ? [u ** 3, 3 * u * u * t, 3 * u * t * t, t ** 3] : [u * u, 2 * u * t, t * t];
    let [x, y] = [0, 0];
    w.forEach((share, at) => {
      x += share * (p[2 * at] as number);
      y += share * (p[2 * at + 1] as number);
    });
    places.push(x, y);
  }
  return places;
}

/** Reads the `d` of an SVG path, up to where it is wrong, and hands on its stretches. */
export function pathInto(d: string, sink: PathSink): void {
  const tokens = [...d.matchAll(TOKEN)].map(([, letter, number]) => letter ?? Number(number));
  let at = 0;
  let command = '';
  let [x, y, sx, sy, hx, hy] = [0, 0, 0, 0, 0, 0];
  let line: number[] = [];
  let before = '';
  const flush = (closed: boolean) => {
    if (line.length >= 4) sink.line(line, closed, false);
    line = [];
  };
  while (at < tokens.length) {
    const token = tokens[at];
    if (typeof token === 'string') {
      command = token;
      at += 1;
    } else if (command === '' || command === 'Z' || command === 'z') return;
    const upper = command.toUpperCase();
    const figures = tokens.slice(at, at + (TAKES[upper] as number));
    if (figures.length < (TAKES[upper] as number) || figures.some((each) => typeof each === 'string')) break;
    at += figures.length;
    const f = figures as number[];
    const relative = command !== upper;
    const rel = (index: number) => (f[index] as number) + (relative ? (index % 2 === 0 ? x : y) : 0);
    if (upper === 'Z') {
      // Closed by a straight line to where it began; a curve before it stands by itself already.
      if (line.length >= 4 && line[0] === sx && line[1] === sy) flush(true);
      else {
        if (x !== sx || y !== sy) line.push(...(line.length ? [] : [x, y]), sx, sy);
        flush(false);
      }
      [x, y] = [sx, sy];
    } else if (upper === 'M') {
      flush(false);
      [x, y] = [rel(0), rel(1)];
      [sx, sy] = [x, y];
      line = [x, y];
      command = relative ? 'l' : 'L';
    } else if (upper === 'L' || upper === 'H' || upper === 'V') {
      if (line.length === 0) line = [x, y];
      if (upper === 'L') [x, y] = [rel(0), rel(1)];
      else if (upper === 'H') x = (f[0] as number) + (relative ? x : 0);
      else y = (f[0] as number) + (relative ? y : 0);
      line.push(x, y);
    } else if (upper === 'A') {
      const end: [number, number] = [
        (f[5] as number) + (relative ? x : 0),
        (f[6] as number) + (relative ? y : 0),
      ];
      flush(false);
      const arc = arcOf(x, y, [f[0], f[1], f[2], f[3], f[4], ...end] as [
        number,
        number,
        number,
        number,
        number,
        number,
        number,
      ]);
      if (arc) sink.arc(arc.conic, arc.from, arc.sweep);
      else sink.line([x, y, ...end], false, false);
      [x, y] = end;
      line = [x, y];
    } else {
      const p = f.map((_, index) => rel(index));
      const smooth = upper === 'S' ? 'CS' : 'QT';
      const handle = smooth.includes(before) && before !== '' ? [2 * x - hx, 2 * y - hy] : [x, y];
      const points = upper === 'S' || upper === 'T' ? [x, y, ...handle, ...p] : [x, y, ...p];
      flush(false);
      sink.line([x, y, ...curvePlaces(points)], false, true);
      [hx, hy] = points.slice(-4, -2) as [number, number];
      [x, y] = points.slice(-2) as [number, number];
      line = [x, y];
    }
    before = upper;
  }
  flush(false);
}
