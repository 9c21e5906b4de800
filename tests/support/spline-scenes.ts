import type { Point } from '../../shared-math/geometry/points.ts';
import type { GreyImage } from '../../shared-math/splines/index.ts';

// Invented photos of splined shafts' ends as a camera sees them, with the clicks of a hand that is no machine. Nothing of
// the counting is used: the face is a plane in space, seen through a pinhole, and what lies behind it is ray-traced.

export const SCENE_KINDS = ['clean', 'missing', 'filled', 'blur', 'glare', 'dirt'] as const;
export type SceneKind = (typeof SCENE_KINDS)[number];

/** One photo: the end, where the camera stands, what spoils it, and where the hand clicked. */
export interface SplineScene {
  readonly seed: number;
  readonly kind: SceneKind;
  readonly teeth: number;
  /** rad. The camera's way off square, and toward where on the picture. */
  readonly tilt: number;
  readonly toward: number;
  /** px: crest circle seen square on. */
  readonly radius: number;
  readonly image: GreyImage;
  readonly centre: readonly [number, number];
  /** Clicks over the teeth: the three that are asked for, spread around as a hand does it. */
  readonly rim: readonly (readonly [number, number])[];
  /** rad about the shaft, clockwise as seen: the middle of the tooth or space that is not as it should be. */
  readonly blankAt: number | undefined;
}

/** The same numbers each time: Mulberry's 32-bit mix of a counter, in the public domain. */
export function drawsOf(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

interface Blob {
  readonly angle: number;
  readonly at: number;
  readonly size: number;
  readonly grey: number;
}

/** Everything of a scene that is drawn by lot, once. */
function lot(seed: number, kind: SceneKind, draw: () => number) {
  const between = (least: number, most: number) => least + (most - least) * draw();
  const teeth = Math.floor(between(17, 49));
  const dark = draw() < 0.2;
  const sized = (least: number, most: number, grey: () => number): Blob => ({
    angle: between(0, 2 * Math.PI),
    at: between(0.86, 1),
    size: between(least, most),
    grey: grey(),
  });
  return {
    teeth,
    tilt: (between(0, 15) * Math.PI) / 180,
    toward: between(0, 2 * Math.PI),
    away: between(9, 22),
    radius: between(95, 150),
    turn: between(0, 2 * Math.PI),
    // Crest (N + 1)/P and fillet root (N - 1.8)/P of the inch standard.
    root: (teeth - 1.8) / (teeth + 1),
    metal: dark ? between(50, 85) : between(140, 205),
    ground: dark ? between(170, 215) : between(20, 85),
    shade: between(0, 0.45),
    light: between(0, 2 * Math.PI),
    sides: between(0.3, 0.85),
    long: between(1, 4),
    // A turned chamfer darkens or brightens the tips a little.
    chamfer: between(0, 0.02),
    tips: between(-35, 25),
    hole: between(0.08, 0.22),
    noise: between(3, 12),
    blur: kind === 'blur' ? between(1, 2.6) : between(0.4, 0.9),
    odd: Math.floor(draw() * teeth),
    glare: kind === 'glare' ? [sized(0.08, 0.3, () => between(110, 260))] : [],
    dirt:
      kind === 'dirt'
        ? Array.from({ length: 1 + Math.floor(draw() * 3) }, () => sized(0.04, 0.16, () => between(15, 130)))
        : [],
    seed,
  };
}
type Lot = ReturnType<typeof lot>;

/** 1 on a tooth, 0 in a space, for a place on the face in shares of the crest's radius. */
function solid(cast: Lot, kind: SceneKind, x: number, y: number): number {
  const r = Math.hypot(x, y);
  if (r > 1) return 0;
  if (r < cast.root) return 1;
  const step = (2 * Math.PI) / cast.teeth;
  const phase = (((Math.atan2(y, x) - cast.turn) / step) % cast.teeth) + cast.teeth;
  const tooth = Math.round(phase) % cast.teeth;
  const off = Math.abs(phase - Math.round(phase));
  const depth = (r - cast.root) / (1 - cast.root);
  // An involute's flank, near enough: half the pitch in the middle of its depth, narrower to the crest.
  if (kind === 'filled' && (Math.floor(phase) + cast.teeth) % cast.teeth === cast.odd) return 1;
  if (off >= 0.36 - 0.22 * depth) return 0;
  return kind === 'missing' && tooth === cast.odd ? 0 : 1;
}

/** Where a pixel's line of sight meets the plane at a depth behind the face; shares of the radius. */
type Sight = (px: number, py: number, behind: number) => readonly [number, number];

function sightOf(
  cast: Lot,
  size: number,
): { sight: Sight; project: (at: readonly [number, number]) => readonly [number, number] } {
  const [c, s] = [Math.cos(cast.toward), Math.sin(cast.toward)];
  const [ct, st] = [Math.cos(cast.tilt), Math.sin(cast.tilt)];
  // The camera looks at the face's middle; its axes in the face's frame, z out of the shaft toward the camera.
  const back: Point = [st * c, st * s, ct];
  const right: Point = [ct * c * c + s * s, (ct - 1) * c * s, -st * c];
  const down: Point = [(ct - 1) * c * s, ct * s * s + c * c, -st * s];
  const eye: Point = [back[0] * cast.away, back[1] * cast.away, back[2] * cast.away];
  const focal = cast.radius * cast.away;
  const middle = size / 2;
  const sight: Sight = (px, py, behind) => {
    const u = (px - middle) / focal;
    const v = (py - middle) / focal;
    const dx = u * right[0] + v * down[0] - back[0];
    const dy = u * right[1] + v * down[1] - back[1];
    const dz = u * right[2] + v * down[2] - back[2];
    const t = (-behind - eye[2]) / dz;
    return [eye[0] + t * dx, eye[1] + t * dy];
  };
  const project = ([x, y]: readonly [number, number]) => {
    const from: Point = [x - eye[0], y - eye[1], -eye[2]];
    const along = (axis: Point) => from[0] * axis[0] + from[1] * axis[1] + from[2] * axis[2];
    const depth = -along(back);
    return [middle + (focal * along(right)) / depth, middle + (focal * along(down)) / depth] as const;
  };
  return { sight, project };
}

/** Slices in which what lies behind the face is looked for, shares of the radius. */
const SLICES = [0.02, 0.05, 0.1, 0.17, 0.25, 0.35, 0.5, 0.7, 1, 1.4, 2, 2.8, 4];

function greyOf(cast: Lot, kind: SceneKind, sight: Sight, px: number, py: number): number {
  const [x, y] = sight(px, py, 0);
  const r = Math.hypot(x, y);
  const [lx, ly] = [Math.cos(cast.light), Math.sin(cast.light)];
  const lit = 1 - cast.shade * (0.5 + 0.5 * (x * lx + y * ly));
  let grey = cast.ground;
  if (solid(cast, kind, x, y) === 1) {
    grey = cast.metal * lit;
    if (r > 1 - cast.chamfer) grey += cast.tips;
    if (r < cast.hole) grey *= 0.35;
  } else if (r < 1.05 + cast.long * Math.tan(cast.tilt)) {
    for (const behind of SLICES) {
      if (behind > cast.long) break;
      const [sx, sy] = sight(px, py, behind);
      if (solid(cast, kind, sx, sy) === 0) continue;
      // A flank, or the space's floor: darker with depth, brighter where it turns to the light.
      const facing = 0.75 + (0.25 * (sx * lx + sy * ly)) / Math.hypot(sx, sy);
      grey = cast.metal * cast.sides * facing * (1 - 0.12 * Math.min(behind, 3));
      break;
    }
  }
  for (const { angle, at, size, grey: dirt } of cast.dirt) {
    const [dx, dy] = [x - at * Math.cos(angle), y - at * Math.sin(angle)];
    // A ragged edge.
    const edge = size * (1 + 0.3 * Math.sin(3 * Math.atan2(dy, dx) + angle * 7));
    if (Math.hypot(dx, dy) < edge && r < 1.04) grey = dirt;
  }
  for (const { angle, at, size, grey: more } of cast.glare) {
    const [dx, dy] = [x - at * Math.cos(angle), y - at * Math.sin(angle)];
    grey += more * Math.exp(-(dx * dx + dy * dy) / (2 * size * size));
  }
  return grey;
}

/** A blur of so many px (standard deviation), along one axis and then the other. */
function blurred(plane: Float64Array, size: number, sigma: number): Float64Array {
  const reach = Math.ceil(3 * sigma);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, i) =>
    Math.exp(-((i - reach) ** 2) / (2 * sigma * sigma)),
  );
  const total = weights.reduce((sum, each) => sum + each, 0);
  const pass = (from: Float64Array, stride: number, across: number) => {
    const to = new Float64Array(from.length);
    for (let line = 0; line < size; line += 1)
      for (let i = 0; i < size; i += 1) {
        let sum = 0;
        for (let j = -reach; j <= reach; j += 1)
          sum +=
            (weights[j + reach] as number) *
            (from[line * across + Math.min(Math.max(i + j, 0), size - 1) * stride] as number);
        to[line * across + i * stride] = sum / total;
      }
    return to;
  };
  return pass(pass(plane, 1, size), size, 1);
}

/** A photo of a kind, everything else by lot from its seed. */
export function splineScene(seed: number, kind: SceneKind): SplineScene {
  const draw = drawsOf(seed);
  const cast = lot(seed, kind, draw);
  const size = Math.ceil(cast.radius * 2.7);
  const { sight, project } = sightOf(cast, size);
  const plane = new Float64Array(size * size);
  for (let y = 0; y < size; y += 1)
    for (let x = 0; x < size; x += 1) {
      let sum = 0;
      for (const [i, j] of [
        [-0.25, -0.25],
        [0.25, -0.25],
        [-0.25, 0.25],
        [0.25, 0.25],
      ] as const)
        sum += greyOf(cast, kind, sight, x + i, y + j);
      plane[y * size + x] = sum / 4;
    }
  const soft = blurred(plane, size, cast.blur);
  const bell = () => {
    let sum = -6;
    for (let i = 0; i < 12; i += 1) sum += draw();
    return sum;
  };
  const data = Uint8Array.from(soft, (grey) =>
    Math.min(Math.max(Math.round(grey + cast.noise * bell()), 0), 255),
  );
  // A hand clicks to a hundredth of the radius or so.
  const hand = ([x, y]: readonly [number, number]) =>
    [x + 0.01 * cast.radius * bell(), y + 0.01 * cast.radius * bell()] as const;
  const first = 2 * Math.PI * draw();
  const rim = Array.from({ length: 3 }, (_, i) => {
    const angle = first + (2 * Math.PI * (i + 0.5 * (draw() - 0.5))) / 3;
    return hand(project([Math.cos(angle), Math.sin(angle)]));
  });
  const step = (2 * Math.PI) / cast.teeth;
  const off = kind === 'missing' ? 0 : kind === 'filled' ? 0.5 : undefined;
  return {
    seed,
    kind,
    teeth: cast.teeth,
    tilt: cast.tilt,
    toward: cast.toward,
    radius: cast.radius,
    image: { data, width: size, height: size },
    centre: hand(project([0, 0])),
    rim,
    blankAt: off === undefined ? undefined : cast.turn + (cast.odd + off) * step,
  };
}
