import type { Point } from '../../shared-math/geometry/points.ts';
import {
  type LayoutDocument,
  moveHardpoint,
  readLayout,
  resolveLayout,
  withValue,
} from '../../shared-math/layout/index.ts';

// What a builder does to a layout who takes an advice at its word: each gives the changed document.

export type Edit = (document: LayoutDocument) => LayoutDocument;

/** The value at a path of the document, its mirrored sides spelled out. */
export function valueAt(document: LayoutDocument, path: string): unknown {
  let value: unknown = resolveLayout(document);
  for (const key of path.split('.')) value = (value as Record<string, unknown>)[key];
  return value;
}
export const pointAt = (document: LayoutDocument, id: string) => valueAt(document, id) as Point;

/** The document with a value set; refused as the program would refuse it. */
export function set(path: string, value: unknown): Edit {
  return (document) => {
    const outcome = readLayout(withValue(document, path, value));
    if (!outcome.ok) throw new Error(`${outcome.failure.path}: ${outcome.failure.reason}`);
    return outcome.value;
  };
}

/** A hardpoint put elsewhere; what is bolted to it comes along. */
export function move(id: string, to: (at: Point, document: LayoutDocument) => Point): Edit {
  return (document) => moveHardpoint(document, id, to(pointAt(document, id), document));
}

export const shift = (id: string, by: Point) => move(id, ([x, y, z]) => [x + by[0], y + by[1], z + by[2]]);

export const all =
  (...edits: Edit[]): Edit =>
  (document) =>
    edits.reduce((so, edit) => edit(so), document);

/** A point of the way from `a` on to `b`. */
export const between = (a: Point, b: Point, share: number): Point => [
  a[0] + share * (b[0] - a[0]),
  a[1] + share * (b[1] - a[1]),
  a[2] + share * (b[2] - a[2]),
];

const BALL = 'steering.box.pitmanBall';

/** The pitman arm made `times` as long, its ball where it is: the box comes nearer or goes further. */
export const pitmanArm = (times: number): Edit =>
  all((document) => {
    const { sectorCentre, pitmanBall } = document.steering.box;
    return set('steering.box.sectorCentre', between(pitmanBall, sectorCentre, times))(document);
  });

/** The steering arm made `times` as long, the drag link carried along at its length and slope. */
export const steeringArm =
  (times: number): Edit =>
  (document) => {
    const { dragLinkTo, dragLinkBall, box } = document.steering;
    const bottom = pointAt(document, `axle.${dragLinkTo}.kingpinBottom`);
    const top = pointAt(document, `axle.${dragLinkTo}.kingpinTop`);
    const foot = between(bottom, top, (dragLinkBall[2] - bottom[2]) / (top[2] - bottom[2]));
    const ball = between(foot, dragLinkBall, times);
    const by: Point = [ball[0] - dragLinkBall[0], ball[1] - dragLinkBall[1], ball[2] - dragLinkBall[2]];
    const { sectorCentre } = box;
    return all(
      set('steering.dragLinkBall', ball),
      set('steering.box.sectorCentre', [sectorCentre[0] + by[0], sectorCentre[1] + by[1], sectorCentre[2]]),
      set(BALL, [box.pitmanBall[0] + by[0], box.pitmanBall[1] + by[1], box.pitmanBall[2]]),
    )(document);
  };

/** The whole axle tipped about the line through its wheel centres, the tops going back by `degrees`. */
export const tipBack =
  (degrees: number): Edit =>
  (document) => {
    const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    const tipped = ([x, y, z]: Point, [cx, , cz]: Point): Point => [
      cx + (x - cx) * cos - (z - cz) * sin,
      y,
      cz + (x - cx) * sin + (z - cz) * cos,
    ];
    const { left, right } = document.axle;
    const half = (one: typeof left) => ({
      ...one,
      kingpinTop: tipped(one.kingpinTop, one.wheelCentre),
      kingpinBottom: tipped(one.kingpinBottom, one.wheelCentre),
      tieRodBall: tipped(one.tieRodBall, one.wheelCentre),
    });
    const { dragLinkBall, dragLinkTo } = document.steering;
    return all(
      set('axle', { ...document.axle, left: half(left), right: right === 'mirror' ? right : half(right) }),
      set('steering.dragLinkBall', tipped(dragLinkBall, pointAt(document, `axle.${dragLinkTo}.wheelCentre`))),
    )(document);
  };
