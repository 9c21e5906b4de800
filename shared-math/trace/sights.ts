import { unproject, VIEW_AXES, type ViewPoint } from '../drawing/index.ts';
import type { Point } from '../geometry/points.ts';
import { cross, dot, subtract, unit } from '../geometry/vectors.ts';
import type { Photo } from '../layout/index.ts';
import { clickDoubt, distanceDoubt } from './photo-doubts.ts';
import type { PhotoSpot } from './photo-places.ts';
import type { PhotoPlane } from './photo-plane.ts';
import { depthOf, eyeOf, planeOf } from './planes.ts';
import type { SightLine } from './sight-lines.ts';

/** Two photos' lines of sight to one point that they both show. */
export interface SightGap {
  /** Of the hardpoint. */
  readonly point: string;
  /** Which photos of the layout. */
  readonly photos: readonly [number, number];
  /** Where each of them shows it. */
  readonly marks: readonly [PhotoSpot, PhotoSpot];
  /** mm by which the lines pass one another. */
  readonly gap: number;
}

/** Standard deviations that chance reaches once in a thousand times. */
export const CHANCE = 3.29;

/** The line along which a photo's camera sees a spot; undefined if it is not given where the camera stood. */
export function sightOf(photo: Photo, spot: PhotoSpot): SightLine | undefined {
  const plane = planeOf(photo);
  return plane.ok ? sightIn(photo, plane.value, spot) : undefined;
}

function sightIn(photo: Photo, plane: PhotoPlane, spot: PhotoSpot): SightLine | undefined {
  const place = plane.toPlace(spot);
  if (!place) return undefined;
  const { axis } = VIEW_AXES[photo.view].toward;
  const deep = (place: ViewPoint, depth: number): Point => {
    const keep: [number, number, number] = [0, 0, 0];
    keep[axis] = depth;
    return unproject(photo.view, place, keep);
  };
  const eye = eyeOf(photo, plane);
  const depth = depthOf(photo);
  return eye && { through: deep(eye.foot, depth + eye.distance), toward: deep(place, depth) };
}

/** How far b passes a, along the normal of both: above 0 on one side and below on the other; undefined alongside. */
function passing(a: SightLine | undefined, b: SightLine | undefined): number | undefined {
  if (!a || !b) return undefined;
  const n = cross(unit(subtract(a.toward, a.through)), unit(subtract(b.toward, b.through)));
  const size = Math.sqrt(dot(n, n));
  return size > 1e-2 ? dot(subtract(b.through, a.through), n) / size : undefined;
}

/** The photo once for each number that was clicked or taped for its calibration, with that one off by its doubt. */
function slipped(photo: Photo): Photo[] {
  const off = clickDoubt(photo);
  const { straighten, scale, level, anchor, lens, distance } = photo;
  const moves = ([x, y]: PhotoSpot): PhotoSpot[] => [
    [x + off, y],
    [x, y + off],
  ];
  const list: Photo[] = [];
  const add = (change: Partial<Photo>) => list.push({ ...photo, ...change });
  for (const [i, point] of (straighten?.points ?? []).entries())
    for (const at of moves(point.at))
      add({ straighten: { points: (straighten?.points ?? []).with(i, { ...point, at }) } });
  for (const [i, spot] of (lens?.line ?? []).entries())
    for (const at of moves(spot)) add({ lens: { line: (lens?.line ?? []).with(i, at) } });
  for (const end of ['from', 'to'] as const) {
    if (scale) for (const at of moves(scale[end])) add({ scale: { ...scale, [end]: at } });
    if (level) for (const at of moves(level[end])) add({ level: { ...level, [end]: at } });
  }
  if (anchor) for (const at of moves(anchor.at)) add({ anchor: { ...anchor, at } });
  if (distance !== undefined) add({ distance: distance + distanceDoubt(photo) });
  return list;
}

/** Photos of a document do not change, so what follows from one is worked out once. */
const SLIPPED = new WeakMap<Photo, readonly (PhotoPlane | undefined)[]>();
function slippedPlanes(photo: Photo): readonly (PhotoPlane | undefined)[] {
  const known = SLIPPED.get(photo);
  if (known) return known;
  const planes = slipped(photo).map((each) => {
    const plane = planeOf(each);
    return plane.ok ? plane.value : undefined;
  });
  SLIPPED.set(photo, planes);
  return planes;
}

/**
 * How far the sights of every point that two photos show pass one another, unless they run alongside; mm. One for each point and
 * pair of photos, empty where no camera's place is known.
 */
export function sightGaps(photos: readonly Photo[]): SightGap[] {
  const gaps: SightGap[] = [];
  for (const [i, a] of photos.entries())
    for (const [j, b] of photos.entries())
      for (const { point, at } of j > i ? a.marks : []) {
        const other = b.marks.find((each) => each.point === point);
        const gap = other && passing(sightOf(a, at), sightOf(b, other.at));
        if (other && gap !== undefined)
          gaps.push({ point, photos: [i, j], marks: [at, other.at], gap: Math.abs(gap) });
      }
  return gaps;
}

/** One standard deviation of a gap by some of what it rests on, squared; undefined if one of that cannot be off. */
function squareOf(gap: number, others: readonly (number | undefined)[]): number | undefined {
  let square = 0;
  for (const other of others) {
    if (other === undefined) return undefined;
    square += (other - gap) ** 2;
  }
  return square;
}

function ownSquare(
  photos: readonly Photo[],
  { photos: [i, j], marks: [onA, onB] }: SightGap,
): number | undefined {
  const [a, b] = [photos[i] as Photo, photos[j] as Photo];
  const [lineA, lineB] = [sightOf(a, onA), sightOf(b, onB)];
  const [offA, offB] = [clickDoubt(a), clickDoubt(b)];
  return squareOf(passing(lineA, lineB) ?? 0, [
    passing(sightOf(a, [onA[0] + offA, onA[1]]), lineB),
    passing(sightOf(a, [onA[0], onA[1] + offA]), lineB),
    passing(lineA, sightOf(b, [onB[0] + offB, onB[1]])),
    passing(lineA, sightOf(b, [onB[0], onB[1] + offB])),
  ]);
}

/**
 * How much of a gap clicking and the cameras' distances explain, so that chance goes beyond it once in a thousand times; mm.
 *
 * Each number that was clicked for either photo (corners, straight edge, scale, level, known point, the point's own two
 * marks: a pixel) and each camera's distance (as given, or 0.3 %) is put off by itself; the changes of the gap have
 * nothing to do with one another, so their squares add to one standard deviation's. What the car itself is off by at the
 * known points and planes is not in it.
 * Frame:    vehicle. Units: mm. Shapes: a gap of `photos`, as `sightGaps` gives it.
 * Outcomes: undefined if a photo that is put off so cannot be put to scale.
 * Source:   propagation of independent errors, as in any text on adjustment.
 * Checked:  tests/unit/trace/sights.test.ts (an independent camera, by lot).
 */
export function explainedGap(photos: readonly Photo[], gap: SightGap): number | undefined {
  const {
    photos: [i, j],
    marks: [onA, onB],
  } = gap;
  const [a, b] = [photos[i] as Photo, photos[j] as Photo];
  const [lineA, lineB] = [sightOf(a, onA), sightOf(b, onB)];
  const own = ownSquare(photos, gap);
  const given = squareOf(passing(lineA, lineB) ?? 0, [
    ...slippedPlanes(a).map((plane) => passing(plane && sightIn(a, plane, onA), lineB)),
    ...slippedPlanes(b).map((plane) => passing(lineA, plane && sightIn(b, plane, onB))),
  ]);
  return own === undefined || given === undefined ? undefined : CHANCE * Math.sqrt(own + given);
}

/**
 * How far two photos contradict each other in a point: what clicking explains of its gap, mm, where the gap is more than
 * that; undefined if they agree. Most gaps are within what their own two clicks explain, and nothing more is asked. Of a photo
 * whose calibration a pixel would break, only the two clicks count.
 */
export function contradiction(photos: readonly Photo[], gap: SightGap): number | undefined {
  const own = ownSquare(photos, gap);
  if (own !== undefined && gap.gap <= CHANCE * Math.sqrt(own)) return undefined;
  const explained = explainedGap(photos, gap) ?? (own === undefined ? undefined : CHANCE * Math.sqrt(own));
  return explained !== undefined && gap.gap > explained ? explained : undefined;
}
