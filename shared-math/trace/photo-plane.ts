import type { ViewPoint } from '../drawing/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { type CameraPlace, facing, fitCamera, planeSeenBy, standing } from './camera-place.ts';
import {
  applied,
  composed,
  fitHomography,
  type Homography,
  type HomographyFailure,
  inverted,
  type Pair,
} from './homography.ts';
import { distorted, fitLens, type Lens, type LensFailure, undistorted } from './lens.ts';
import type { FlatPlace, PhotoSpot, Planar, UnbentSpot } from './photo-places.ts';

/** What a person has specified about a photo. Spots are px of the upright original; places mm right and down in the view. */
export interface PhotoCalibration {
  readonly size: PhotoSpot;
  /** Left and right swapped: taken from the other side than the view looks. */
  readonly flipped?: boolean | undefined;
  /** Points on a line known to be straight. */
  readonly lens?: { readonly line: readonly PhotoSpot[] } | undefined;
  /** Points of one plane whose places in it are known, in mm right and down of their own. */
  readonly straighten?:
    | { readonly points: readonly { readonly at: PhotoSpot; readonly place: FlatPlace }[] }
    | undefined;
  readonly scale?:
    | { readonly from: PhotoSpot; readonly to: PhotoSpot; readonly distance: number }
    | undefined;
  /** A level line, its left end first. */
  readonly level?: { readonly from: PhotoSpot; readonly to: PhotoSpot } | undefined;
  /** A spot that shows a known point, and how far that stands before the plane; mm. */
  readonly anchor?:
    | { readonly at: PhotoSpot; readonly place: ViewPoint; readonly before: number }
    | undefined;
  /** Of the camera from the plane, mm. */
  readonly distance?: number | undefined;
  /** The camera's focal length, px: where no distance is given, it gives one. With neither, nothing is corrected for depth. */
  readonly focal?: number | undefined;
}

/** Where a photo lies that nobody has calibrated yet: its middle, and the mm that its width stands for. */
export interface LooseStart {
  readonly middle: ViewPoint;
  readonly width: number;
}

export type TraceFailure =
  | { readonly step: 'lens'; readonly why: LensFailure }
  | { readonly step: 'straighten'; readonly why: HomographyFailure | 'no-camera' }
  | { readonly step: 'scale'; readonly why: 'zero-scale' }
  | { readonly step: 'level'; readonly why: 'zero-length' }
  | { readonly step: 'distance'; readonly why: 'no-camera' };

/** A calibrated photo: the ways between its px and the mm of its view. */
export interface PhotoPlane {
  readonly lens: Lens;
  /** From a place in the view to undistorted px. */
  readonly matrix: Homography<ViewPoint, UnbentSpot>;
  /** Where a spot lies if what it shows is in the calibrated plane. */
  toPlace(spot: PhotoSpot): ViewPoint | undefined;
  toPhoto(place: ViewPoint): PhotoSpot | undefined;
  /** The same for what stands `before` mm nearer to the camera than the plane. */
  placeBefore(spot: PhotoSpot, before: number): ViewPoint | undefined;
  readonly camera: (CameraPlace<ViewPoint> & { readonly focal: number }) | undefined;
  /** In the middle of what the scale was taken from. */
  readonly mmPerPixel: number;
  /** mm between the ends of what the scale rests on. */
  readonly scaleBase: number;
  /** mm by which one px of clicking error shifts the picture's far end, as it turns and stretches with the scale. */
  readonly farError: number;
  /** mm; of the straightening points: of a fifth and more, and of any four once the camera that saw them is known. */
  readonly residual: number;
}

/** Of two places of one plane. */
const apart = <Place extends Planar>(a: Place, b: NoInfer<Place>) => Math.hypot(a[0] - b[0], a[1] - b[1]);

function farthestCorner([width, height]: PhotoSpot, from: PhotoSpot): number {
  return Math.max(
    ...[
      [0, 0],
      [width, 0],
      [0, height],
      [width, height],
    ].map((c) => apart(from, c as unknown as PhotoSpot)),
  );
}

/** The ends, px, of what the scale rests on. */
function baseOf({ scale, straighten, size }: PhotoCalibration): readonly [PhotoSpot, PhotoSpot] {
  if (scale) return [scale.from, scale.to];
  const [a, b] = straighten?.points ?? [];
  return a && b
    ? [a.at, b.at]
    : [
        [0, size[1] / 2],
        [size[0], size[1] / 2],
      ];
}

/** What a plane has to be multiplied and turned by (rad) to be in mm and level. */
function scaledAndLevel(
  { size, scale, level, straighten }: PhotoCalibration,
  lens: Lens,
  flat: Homography<UnbentSpot, FlatPlace>,
  start: LooseStart,
): Outcome<{ factor: number; turn: number }, TraceFailure> {
  const onFlat = (spot: PhotoSpot) => applied(flat, undistorted(lens, spot));
  let factor = straighten ? 1 : start.width / size[0];
  if (scale) {
    const [a, b] = [onFlat(scale.from), onFlat(scale.to)];
    const length = a && b ? apart(a, b) : 0;
    if (!(apart(scale.from, scale.to) > 0.5 && length > 0 && scale.distance > 0))
      return failed({ step: 'scale', why: 'zero-scale' });
    factor = scale.distance / length;
  }
  let turn = 0;
  if (level) {
    const [a, b] = [onFlat(level.from), onFlat(level.to)];
    if (!(a && b && apart(level.from, level.to) > 0.5)) return failed({ step: 'level', why: 'zero-length' });
    turn = -Math.atan2(b[1] - a[1], b[0] - a[0]);
  }
  return succeeded({ factor, turn });
}

const middleOf = (spots: readonly UnbentSpot[]): UnbentSpot => [
  spots.reduce((sum, [x]) => sum + x, 0) / spots.length,
  spots.reduce((sum, [, y]) => sum + y, 0) / spots.length,
];

function picturesCorners(
  [width, height]: PhotoSpot,
  flat: Homography<UnbentSpot, FlatPlace>,
): Pair<UnbentSpot, FlatPlace>[] {
  const corners: UnbentSpot[] = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ];
  return corners.map((from) => ({ from, to: applied(flat, from) as FlatPlace }));
}

/**
 * Puts together what was specified about a photo: px → without the lens's bending → the plane in mm → turned level, scaled and
 * moved to the view's place. Where the camera's distance is given, the plane is the one that a camera there sees, by least
 * squares of all corners, in place of the four corners' own mapping, which no camera need show.
 * Frame:    photo px and the view's own plane, both right and down. Units: px, mm.
 * Outcomes: ok; the step that cannot be and why.
 * Source:   own composition. Checked: tests/unit/trace/photo-plane.test.ts (an independent camera).
 */
export function preparePhoto(given: PhotoCalibration, start: LooseStart): Outcome<PhotoPlane, TraceFailure> {
  const { size, anchor, straighten, distance } = given;
  let lens: Lens = { k: 0, size };
  if (given.lens) {
    const fit = fitLens(given.lens.line, size);
    if (!fit.ok) return failed({ step: 'lens', why: fit.failure });
    lens = fit.value;
  }
  const mirror: Homography<UnbentSpot, FlatPlace> = given.flipped
    ? [-1, 0, size[0], 0, 1, 0, 0, 0, 1]
    : [1, 0, 0, 0, 1, 0, 0, 0, 1];
  const pairs = straighten?.points.map(
    ({ at, place: [right, down] }): Pair<UnbentSpot, FlatPlace> => ({
      from: undistorted(lens, at),
      to: given.flipped ? [-right, down] : [right, down],
    }),
  );
  let flat = mirror;
  if (pairs) {
    const fit = fitHomography(pairs);
    if (!fit.ok) return failed({ step: 'straighten', why: fit.failure });
    flat = fit.value.matrix;
  }
  const first = scaledAndLevel(given, lens, flat, start);
  if (!first.ok) return first;
  let { factor, turn } = first.value;
  let found: (CameraPlace<FlatPlace> & { readonly focal: number }) | undefined;
  if (distance === undefined && given.focal !== undefined && (pairs || given.scale)) {
    const toPhoto = inverted(flat) as Homography<FlatPlace, UnbentSpot>;
    const middle: UnbentSpot = [size[0] / 2, size[1] / 2];
    const { at, focal } = standing(facing(toPhoto, applied(flat, middle) ?? [0, 0]), middle, given.focal);
    found = { foot: [at[0], at[1]], distance: Math.abs(at[2]), focal };
  } else if (distance !== undefined) {
    // Without a rectangle the plane is taken to be seen square, and what the camera sees is the picture's own corners.
    const shown = pairs ?? picturesCorners(size, flat);
    const fit = fitCamera(
      shown,
      inverted(flat) as Homography<FlatPlace, UnbentSpot>,
      size,
      distance / factor,
    );
    if (!fit.ok && fit.failure === 'not-this-shape' && pairs)
      return failed({ step: 'straighten', why: 'no-camera' });
    if (!fit.ok) return failed({ step: 'distance', why: 'no-camera' });
    found = fit.value;
    const seen = pairs && planeSeenBy(fit.value, middleOf(pairs.map(({ from }) => from)));
    const again = seen && scaledAndLevel(given, lens, seen, start);
    if (seen && again?.ok) {
      flat = seen;
      ({ factor, turn } = again.value);
    }
  }
  const residual = Math.max(
    0,
    ...(pairs ?? []).map(({ from, to }) => factor * apart(applied(flat, from) ?? to, to)),
  );
  const onFlat = (spot: PhotoSpot) => applied(flat, undistorted(lens, spot));
  const c = factor * Math.cos(turn);
  const s = factor * Math.sin(turn);
  // Level and in the view's mm, before it is moved to its place in the view.
  const turned = ([x, y]: FlatPlace): ViewPoint => [c * x - s * y, s * x + c * y];

  let camera = found && {
    foot: turned(found.foot),
    distance: factor * found.distance,
    focal: found.focal,
  };
  const lean = (place: ViewPoint, foot: ViewPoint, before: number): ViewPoint => {
    const share = camera ? before / camera.distance : 0;
    return [place[0] + (foot[0] - place[0]) * share, place[1] + (foot[1] - place[1]) * share];
  };
  const seen = onFlat(anchor?.at ?? [size[0] / 2, size[1] / 2]) ?? [0, 0];
  const stands = lean(turned(seen), camera?.foot ?? [0, 0], anchor?.before ?? 0);
  const wanted = anchor?.place ?? start.middle;
  const [tx, ty] = [wanted[0] - stands[0], wanted[1] - stands[1]];
  if (camera) camera = { ...camera, foot: [camera.foot[0] + tx, camera.foot[1] + ty] };

  const placed: Homography<FlatPlace, ViewPoint> = [c, -s, tx, s, c, ty, 0, 0, 1];
  const whole = composed(placed, flat);
  const matrix = inverted(whole) as Homography<ViewPoint, UnbentSpot>;
  const toPlace = (spot: PhotoSpot): ViewPoint | undefined => applied(whole, undistorted(lens, spot));
  // Places beyond the horizon have no picture: the side of it that the photo's middle lies on is the front.
  const middle = toPlace([size[0] / 2, size[1] / 2]) ?? [0, 0];
  const w = (matrix[6] as number) * middle[0] + (matrix[7] as number) * middle[1] + (matrix[8] as number);
  const base = baseOf(given);
  const length = apart(...base);
  const half: PhotoSpot = [(base[0][0] + base[1][0]) / 2, (base[0][1] + base[1][1]) / 2];
  const side = (dx: number, dy: number) =>
    apart(toPlace([half[0] - dx, half[1] - dy]) ?? [0, 0], toPlace([half[0] + dx, half[1] + dy]) ?? [0, 0]);
  const mmPerPixel = (side(0.5, 0) + side(0, 0.5)) / 2;
  return succeeded({
    lens,
    matrix,
    toPlace,
    toPhoto: (place) => {
      const flatSpot = applied(matrix, place, Math.sign(w));
      return flatSpot && distorted(lens, flatSpot);
    },
    placeBefore: (spot, before) => {
      const place = toPlace(spot);
      return place && camera ? lean(place, camera.foot, before) : place;
    },
    camera,
    mmPerPixel,
    scaleBase: Math.max(length, 1) * mmPerPixel,
    farError: (farthestCorner(size, base[0]) / Math.max(length, 1)) * mmPerPixel,
    residual,
  });
}
