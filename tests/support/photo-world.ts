import type { Point } from '../../shared-math/geometry/points.ts';
import {
  hardpoints,
  type LayoutDocument,
  moveHardpoint,
  type Photo,
} from '../../shared-math/layout/index.ts';
import { photographedCar } from './photo-scene.ts';
import { type Pinhole, photographed } from './pinhole.ts';

// The invented front end before any number of invented cameras, askew by any angle, and what a person would click and type of their
// photos. The lens bends by another formula than the program knows: from straight to bent, with a fourth power. All that
// is clicked, typed and taped is off by lot, each in its own doubt.

export const RADIANS = Math.PI / 180;

/** One standard deviation each; 0 is perfect. */
export interface Slips {
  /** px of every click. */
  readonly click: number;
  /** mm of the rectangle's sides and of taped lengths. */
  readonly tape: number;
  /** A share of the camera's distance. */
  readonly distance: number;
  /** mm, of where the rectangle's plane stands. */
  readonly plane: number;
  /** rad, of how the rectangle leans and stands askew, and of its level edge. */
  readonly askew: number;
  readonly level: number;
  /** mm, of where the drawing has the point that places the photo. */
  readonly known: number;
}

export const CLICKS_ONLY: Slips = {
  click: 1,
  tape: 0,
  distance: 0,
  plane: 0,
  askew: 0,
  level: 0,
  known: 0,
};

/** As well as the program takes it that people do these things. */
export const AS_DOUBTED: Slips = {
  click: 1,
  tape: 1.6,
  distance: 0.003,
  plane: 3.2,
  askew: 0.0035,
  level: 0.0017,
  known: 1.6,
};

/** Normal numbers by lot, the same for the same seed. */
export function lots(seed: number): (doubt: number) => number {
  let state = (seed * 7919 + 17) % 2147483647;
  const uniform = () => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647;
  };
  for (let i = 0; i < 5; i += 1) uniform();
  return (doubt) => doubt * Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

export interface Shooting {
  readonly view: 'side' | 'top' | 'front';
  /** mm from the middle of the rectangle. */
  readonly away: number;
  /** rad off square, around the car (toward the back, or from ahead the right) or, from above, toward the back. */
  readonly askew: number;
  /** mm, 35 mm equivalent by the picture's diagonal. */
  readonly focal: number;
  readonly size?: readonly [number, number];
}

const add = (a: Point, b: Point, by = 1): Point => [a[0] + by * b[0], a[1] + by * b[1], a[2] + by * b[2]];

/** A rectangle beside the car, or on the floor below it: its middle, its ways and half its sides, mm. */
const RECTANGLES = {
  side: { middle: [-400, 860, 450], right: [-1, 0, 0], down: [0, 0, -1], half: [700, 350] },
  top: { middle: [-450, 0, 0], right: [-1, 0, 0], down: [0, 1, 0], half: [900, 900] },
  front: { middle: [420, 0, 480], right: [0, 1, 0], down: [0, 0, -1], half: [700, 350] },
} as const satisfies Record<
  string,
  { middle: Point; right: Point; down: Point; half: readonly [number, number] }
>;

export function cameraOf({ view, away, askew, focal, size = [2400, 1600] }: Shooting): Pinhole {
  const [s, c] = [away * Math.sin(askew), away * Math.cos(askew)];
  const stands: Record<Shooting['view'], { readonly lookAt: Point; readonly at: Point }> = {
    side: { lookAt: [-420, 800, 450], at: [-420 - s, 860 + c, 640] },
    top: { lookAt: [-430, 0, 150], at: [-430 - s, 60, c] },
    front: { lookAt: [0, 0, 450], at: [420 + c, s, 560] },
  };
  const { lookAt, at } = stands[view];
  return {
    at,
    lookAt,
    up: view === 'top' ? [0, -1, 0] : [0, 0, 1],
    roll: 0.015,
    focal: (focal / 43.2666) * Math.hypot(...size),
    size,
    bend: 0,
  };
}

/** Bent by the camera's lens: with d in half diagonals, d (1 - 0.03 d² + 0.004 d⁴) from straight to bent. */
export function shown(camera: Pinhole, point: Point, bend = 1): readonly [number, number] {
  const [x, y] = photographed(camera, point);
  const [w, h] = camera.size;
  const [u, v] = [x - w / 2, y - h / 2];
  const square = (u * u + v * v) / (Math.hypot(w, h) / 2) ** 2;
  const share = 1 + bend * (-0.03 * square + 0.004 * square ** 2);
  return [w / 2 + u * share, h / 2 + v * share];
}

/** Turned about an axis of the car. */
function turned(v: Point, axis: 0 | 1 | 2, by: number): Point {
  const [a, b] = [(axis + 1) % 3, (axis + 2) % 3] as [number, number];
  const out: [number, number, number] = [...v];
  out[a] = v[a as 0] * Math.cos(by) - v[b as 0] * Math.sin(by);
  out[b] = v[a as 0] * Math.sin(by) + v[b as 0] * Math.cos(by);
  return out;
}

export interface PhotoChoices {
  readonly slips?: Slips;
  /** Points that are clicked; all that have a mark on the demonstration's photos unless given. */
  readonly marks?: readonly string[];
  /** Whether the far wheel's centre is clicked too. */
  readonly farWheel?: boolean;
  /** Whether a straight edge is clicked, and how strongly the lens bends. */
  readonly edge?: boolean;
  readonly bend?: number;
}

/** A photo as a person clicks and types of it. */
export function photoOf(
  shooting: Shooting,
  off: (doubt: number) => number,
  choices: PhotoChoices = {},
): Photo {
  const { slips = CLICKS_ONLY, edge = true, bend = 1 } = choices;
  const truth = photographedCar();
  const points = new Map(hardpoints(truth).map(({ id, at }) => [id, at]));
  const { view } = shooting;
  const camera = cameraOf(shooting);
  const { middle, right, down, half } = RECTANGLES[view];
  const out = { side: 1, top: 2, front: 0 }[view] as 0 | 1 | 2;
  // The rectangle as it stands: moved out of its plane, leaning, and its sides not as long as the tape says.
  const stood: [number, number, number] = [...middle];
  stood[out] += off(slips.plane);
  const turns = ([0, 1, 2] as const).map((axis) => off(axis === out ? slips.level : slips.askew));
  const way = (v: Point): Point =>
    ([0, 1, 2] as const).reduce((sum: Point, axis) => turned(sum, axis, turns[axis] as number), v);
  const [wide, high, lean] = [off(slips.tape), off(slips.tape), off(slips.tape)];
  const corner = (x: number, y: number): Point => {
    const across = x * (half[0] + wide / 2) + (y * lean) / 2;
    return add(add(stood, way(right), across), way(down), y * (half[1] + high / 2));
  };
  const click = (point: Point) => {
    const [x, y] = shown(camera, point, bend);
    return [x + off(slips.click), y + off(slips.click)] as const;
  };
  const places = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ] as const;
  const known = points.get('axle.left.wheelCentre') as Point;
  const farWheel = 'axle.right.wheelCentre';
  const seen = [...points.keys()].filter(
    (id) => !id.includes('.right.') && !id.startsWith('shaft.') && id !== 'axle.left.wheelCentre',
  );
  const marks = [...(choices.marks ?? seen), ...(choices.farWheel ? [farWheel] : [])];
  const reach = 0.46 * camera.size[0];
  const line = Array.from({ length: 9 }, (_, i) => {
    // Along a border of the picture: a straight edge somewhere of the world, as a straight line without the lens.
    const x = camera.size[0] / 2 + (2 * (i / 8) - 1) * reach;
    return bentSpot(camera, [x, 0.06 * camera.size[1]], bend, off, slips.click);
  });
  return {
    view,
    hash: 'a'.repeat(64),
    name: `${view} at ${(shooting.askew / RADIANS).toFixed(0)}`,
    size: [...camera.size],
    opacity: 0.8,
    shown: true,
    ...(edge ? { lens: { line } } : {}),
    straighten: {
      points: places.map(([x, y]) => ({
        at: click(corner(x, y)),
        place: [half[0] * (1 + x), half[1] * (1 + y)] as const,
      })),
    },
    anchor: {
      at: click(known),
      point: 'axle.left.wheelCentre',
      stands: [known[0], known[1] + off(slips.known), known[2] + off(slips.known)],
    },
    depth: middle[out],
    distance: (camera.at[out] - stood[out]) * (1 + off(slips.distance)),
    marks: marks.map((id) => ({ point: id, at: click(points.get(id) as Point) })),
    notes: [],
    lengths: [],
  };
}

function bentSpot(
  camera: Pinhole,
  [x, y]: readonly [number, number],
  bend: number,
  off: (doubt: number) => number,
  doubt: number,
): readonly [number, number] {
  const [w, h] = camera.size;
  const [u, v] = [x - w / 2, y - h / 2];
  const square = (u * u + v * v) / (Math.hypot(w, h) / 2) ** 2;
  const share = 1 + bend * (-0.03 * square + 0.004 * square ** 2);
  return [w / 2 + u * share + off(doubt), h / 2 + v * share + off(doubt)];
}

/** The photographed car as far as a glance at it tells: everything to be traced is out of place, nothing measured. */
export function guessedCar(): LayoutDocument {
  const truth = photographedCar();
  const off: Record<string, Point> = {
    'axle.left.kingpinTop': [25, -20, 15],
    'axle.left.kingpinBottom': [-20, 15, -20],
    'axle.left.tieRodBall': [30, 20, 25],
    'location.left.framePivot': [120, 40, -60],
    'steering.dragLinkBall': [-30, 40, -25],
    'steering.box.sectorCentre': [-140, 30, 60],
    'steering.box.pitmanBall': [60, -30, 40],
  };
  let document: LayoutDocument = {
    ...truth,
    name: 'From photos',
    obstacles: [],
    rails: [],
    photos: [],
    origins: {},
  };
  for (const [id, by] of Object.entries(off)) {
    const at = hardpoints(document).find((point) => point.id === id)?.at as Point;
    document = moveHardpoint(document, id, add(at, by));
  }
  return document;
}
