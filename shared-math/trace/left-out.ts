import { project, seenFrom, VIEW_AXES, type ViewPoint } from '../drawing/index.ts';
import type { Point } from '../geometry/points.ts';
import type { Photo } from '../layout/index.ts';
import type { Radians } from '../units/index.ts';
import type { PhotoPlane } from './photo-plane.ts';
import { beforeOf, eyeOf } from './planes.ts';

// What it costs to leave out how far a photo's camera stood, or where its plane stands in depth.

/**
 * Focal length of a phone's usual lens as a share of the picture's diagonal: 26 mm on a film of 36 by 24. Common practice,
 * no published source.
 */
export const USUAL_FOCAL = 26 / Math.hypot(36, 24);

/** A point of the car, by what it is called by. */
export interface Reached {
  readonly id: string;
  readonly at: Point;
}

/** What happens to the point that suffers most. */
export interface LeftOut {
  readonly point: string;
  /** mm that it stands behind the photo's plane; before it below 0. */
  readonly behind: number;
  /** How much too small what stands there comes out, as a share; too large below 0. */
  readonly share: number;
  /** mm by which the point comes out beside its place. */
  readonly off: number;
  /** mm from the plane at which the camera is taken to have stood. */
  readonly distance: number;
  /** By what: a phone's usual lens, the photo's own file with a share of it as one standard deviation, or as given. */
  readonly by: 'usual' | 'file' | 'given';
  readonly doubt: number;
}

/** mm from its plane at which a photo was taken if that was done with a phone's usual lens, as a first guess. */
export function usualDistance({ size }: Photo, { mmPerPixel }: PhotoPlane): number {
  return USUAL_FOCAL * Math.hypot(size[0], size[1]) * mmPerPixel;
}

const worstOf = (all: readonly LeftOut[]): LeftOut | undefined =>
  all.reduce<LeftOut | undefined>(
    (worst, each) => (worst && worst.off >= each.off ? worst : each),
    undefined,
  );

/**
 * What tracing without the camera's distance makes of the points, of these the worst. A point b behind the plane of a camera
 * D before it shows at D / (D + b) of its distance from the camera's foot; so does the point by which the photo is placed,
 * and what is traced is off by the difference of both. Without the distance neither D nor the foot is known: a usual lens
 * that looked straight at the picture's middle is assumed. Where the photo's own file has the focal length, all of that is
 * put right but for the share by which the file may be out.
 * Frame: vehicle. Units: mm. Outcomes: undefined if the distance is given, or the middle lies beyond the horizon.
 * Checked: tests/unit/trace/left-out.test.ts (an independent camera, traced without its distance).
 */
export function withoutDistance(
  photo: Photo,
  plane: PhotoPlane,
  points: readonly Reached[],
): LeftOut | undefined {
  const eye = eyeOf(photo, plane);
  const foot = eye?.foot ?? plane.toPlace([photo.size[0] / 2, photo.size[1] / 2]);
  if (photo.distance !== undefined || !foot) return undefined;
  const distance = eye ? Math.abs(eye.distance) : usualDistance(photo, plane);
  const doubt = eye ? (photo.focal?.share ?? 1) : 1;
  const { axis } = VIEW_AXES[photo.view].toward;
  const shift = (at: Point): ViewPoint => {
    const behind = -beforeOf(photo, at[axis]);
    const share = behind / (distance + behind);
    const place = project(photo.view, at);
    return [share * (foot[0] - place[0]), share * (foot[1] - place[1])];
  };
  const own = photo.anchor ? shift(photo.anchor.stands) : [0, 0];
  return worstOf(
    points.map(({ id, at }) => {
      const behind = -beforeOf(photo, at[axis]);
      const [x, y] = shift(at);
      return {
        point: id,
        behind,
        share: (doubt * behind) / (distance + behind),
        off: doubt * Math.hypot(x - (own[0] as number), y - (own[1] as number)),
        distance,
        by: eye ? 'file' : 'usual',
        doubt,
      };
    }),
  );
}

/**
 * What it makes of the points, of these the worst, if the plane stands `wrong` mm nearer to the camera or farther from it than
 * it is taken to: everything is put right for a depth that is off by as much, about the point that places the photo.
 * Frame: vehicle. Units: mm. Outcomes: undefined if it is not given how far the camera stood.
 * Checked: tests/unit/trace/left-out.test.ts.
 */
export function withPlaneOff(
  photo: Photo,
  plane: PhotoPlane,
  points: readonly Reached[],
  wrong: number,
): LeftOut | undefined {
  const eye = eyeOf(photo, plane);
  if (!eye) return undefined;
  const { axis } = VIEW_AXES[photo.view].toward;
  const distance = Math.abs(eye.distance);
  /** Where a point comes out whose sight is put right for a depth off by `wrong`. */
  const shift = (at: Point): ViewPoint | undefined => {
    const seen = seenFrom(eye, photo.view, at);
    const share = wrong / distance;
    return seen && [share * (eye.foot[0] - seen[0]), share * (eye.foot[1] - seen[1])];
  };
  const own = (photo.anchor && shift(photo.anchor.stands)) ?? [0, 0];
  return worstOf(
    points.flatMap(({ id, at }) => {
      const moved = shift(at);
      if (!moved) return [];
      const off = Math.hypot(moved[0] - own[0], moved[1] - own[1]);
      const behind = -beforeOf(photo, at[axis]);
      return [{ point: id, behind, share: wrong / distance, off, distance, by: 'given' as const, doubt: 0 }];
    }),
  );
}

/**
 * The point that a level puts off most which is out by an angle, and by how much: everything is turned about the point that
 * places the photo. Frame: vehicle. Units: mm. Outcomes: undefined if there is no point.
 */
export function withLevelOff(
  { view, anchor }: Photo,
  points: readonly Reached[],
  angle: Radians,
): Pick<LeftOut, 'point' | 'off'> | undefined {
  const fixed: ViewPoint = anchor ? project(view, anchor.stands) : [0, 0];
  let worst: Pick<LeftOut, 'point' | 'off'> | undefined;
  for (const { id, at } of points) {
    const [x, y] = project(view, at);
    const off = 2 * Math.abs(Math.sin(angle / 2)) * Math.hypot(x - fixed[0], y - fixed[1]);
    if (off > (worst?.off ?? 0)) worst = { point: id, off };
  }
  return worst;
}
