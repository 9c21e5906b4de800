import type { Point } from '../../shared-math/geometry/points.ts';
import { hardpoints, type Photo } from '../../shared-math/layout/index.ts';
import { photographedCar } from './photo-scene.ts';
import { type Pinhole, photographed } from './pinhole.ts';

/** The board that stands beside the car in a photo from its left: how far across, mm of the car. */
export const BOARD = { ahead: 300, behind: -1100, top: 1000, bottom: 100 } as const;

const PLACES = [
  [0, 0],
  [1400, 0],
  [1400, 900],
  [0, 900],
] as const;

export interface BoardPhotoOptions {
  /** Moves each click, px; the same list of clicks in the same order each time. */
  readonly slip?: () => readonly [number, number];
  /** Ids of hardpoints that are clicked on the photo. */
  readonly marks?: readonly string[];
  readonly change?: Partial<Photo>;
}

/**
 * What a builder specifies about a photo that an independent camera took of the demonstration car from its left, with a board
 * of 1400 by 900 mm that stands at `plane` mm left of the centre: corners, straight edge, known point, depth and distance.
 */
export function boardPhoto(
  camera: Pinhole,
  plane: number,
  { slip = () => [0, 0] as const, marks = [], change = {} }: BoardPhotoOptions = {},
): Photo {
  const { ahead, behind, top, bottom } = BOARD;
  const corners: readonly Point[] = [
    [ahead, plane, top],
    [behind, plane, top],
    [behind, plane, bottom],
    [ahead, plane, bottom],
  ];
  const click = (at: Point) => {
    const [x, y] = photographed(camera, at);
    const [dx, dy] = slip();
    return [x + dx, y + dy] as const;
  };
  const points = hardpoints(photographedCar());
  const named = (id: string): Point => {
    const point = points.find((each) => each.id === id);
    if (!point) throw new Error(`the car has no ${id}`);
    return point.at;
  };
  const wheel = 'axle.left.wheelCentre';
  return {
    view: 'side',
    hash: '0'.repeat(64),
    name: 'by an independent camera',
    size: camera.size,
    opacity: 1,
    shown: true,
    lens: { line: [600, 200, -200, -700, -1200, -1500].map((x) => click([x, plane, 1200])) },
    straighten: {
      points: corners.map((corner, i) => ({
        at: click(corner),
        place: PLACES[i] as (typeof PLACES)[number],
      })),
    },
    anchor: { at: click(named(wheel)), point: wheel, stands: named(wheel) },
    depth: plane,
    distance: camera.at[1] - plane,
    marks: marks.map((id) => ({ point: id, at: click(named(id)) })),
    notes: [],
    lengths: [],
    ...change,
  };
}
