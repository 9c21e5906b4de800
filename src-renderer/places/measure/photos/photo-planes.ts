import { type Box, unproject, VIEW_AXES, type ViewPoint } from '../../../../shared-math/drawing/index.ts';
import { mirrored, type Point } from '../../../../shared-math/geometry/points.ts';
import type { Hardpoint, LayoutDocument, Photo } from '../../../../shared-math/layout/index.ts';
import {
  hardpoints,
  originOf,
  placeHardpoint,
  withOrigin,
  withValue,
} from '../../../../shared-math/layout/index.ts';
import {
  beforeOf,
  cameraSide,
  cameraStart,
  composed,
  type Homography,
  LOOSE,
  meeting,
  type PhotoPlane,
  type PhotoSpot,
  planeOf,
  preparePhoto,
  type ShownSpot,
  sightOf,
  type WarpOrder,
} from '../../../../shared-math/trace/index.ts';

// Photos of a layout as planes of its views.

/** The photo as it was taken, lying loosely in its view: for clicking corners and lines that are to be straightened. */
export function loosePlane({ view, size }: Photo): PhotoPlane {
  const plane = preparePhoto({ size }, LOOSE[view]);
  if (!plane.ok) throw new Error('an uncalibrated photo has nothing that could fail');
  return plane.value;
}

/** mm that a photo may reach from where one would lie: a horizon in the picture is no reason to fill the workshop. */
const REACH = 5000;

/** The box of the view's plane that a photo covers, and the order for its picture there. */
export function pictureOrder(photo: Photo, plane: PhotoPlane, most: number): Laid {
  const [width, height] = photo.size;
  const [left, top, right, bottom] = photo.crop ?? [0, 0, width, height];
  const { middle } = LOOSE[photo.view];
  const places: ViewPoint[] = [];
  for (let i = 0; i <= 12; i += 1) {
    const x = left + ((right - left) * i) / 12;
    const y = top + ((bottom - top) * i) / 12;
    for (const spot of [
      [x, top],
      [x, bottom],
      [left, y],
      [right, y],
    ] as PhotoSpot[]) {
      const place = plane.toPlace(spot);
      if (place)
        places.push([
          Math.min(Math.max(place[0], middle[0] - REACH), middle[0] + REACH),
          Math.min(Math.max(place[1], middle[1] - REACH), middle[1] + REACH),
        ]);
    }
  }
  const xs = places.map(([x]) => x);
  const ys = places.map(([, y]) => y);
  const box = {
    left: Math.min(...xs),
    top: Math.min(...ys),
    right: Math.max(...xs),
    bottom: Math.max(...ys),
  };
  const span = Math.max(box.right - box.left, box.bottom - box.top, 1);
  const step = Math.max(span / most, plane.mmPerPixel / 2, 0.05);
  return orderIn(photo, plane, box, step);
}

/** Where a picture of a photo lies: the view's mm of its upper left corner, and of one of its px. */
export interface Laid {
  readonly at: ViewPoint;
  readonly step: number;
  readonly order: WarpOrder;
}

/** The order for a photo's picture in a box of the view's plane, mm, at so many mm to the px. */
export function orderIn(photo: Photo, plane: PhotoPlane, box: Box, step: number): Laid {
  const inView: Homography<ShownSpot, ViewPoint> = [step, 0, box.left, 0, step, box.top, 0, 0, 1];
  const order: WarpOrder = {
    matrix: composed(plane.matrix, inView),
    lens: plane.lens,
    width: Math.max(1, Math.ceil((box.right - box.left) / step)),
    height: Math.max(1, Math.ceil((box.bottom - box.top) / step)),
    crop: photo.crop,
  };
  return { at: [box.left, box.top], step, order };
}

/** What of a view's plane is seen on the board: mm, and px of the screen for a mm. */
export interface Sight {
  readonly box: Box;
  readonly pxPerMm: number;
}

/** Beyond what is seen, so that a small move shows nothing coarse: shares of its width and height. */
const SEEN_AROUND = 0.25;
/** px of a picture from close by, whatever the screen. */
const CLOSE_MOST = 6e6;
/** px of the screen that one px of a picture may cover before it is looked at more closely. */
const COARSE_FROM = 1.1;

function common(a: Box, b: Box): Box | undefined {
  const box = {
    left: Math.max(a.left, b.left),
    top: Math.max(a.top, b.top),
    right: Math.min(a.right, b.right),
    bottom: Math.min(a.bottom, b.bottom),
  };
  return box.right > box.left && box.bottom > box.top ? box : undefined;
}

/** The box of the view's plane that a picture lies in, mm. */
export function boxOf({ at: [left, top], step, order: { width, height } }: Laid): Box {
  return { left, top, right: left + width * step, bottom: top + height * step };
}

/**
 * The order for what is seen of a photo from close by, no finer than screen or original; undefined where the whole picture
 * that lies there is as fine, or `close`, the one that was made last, still does.
 */
export function closeOrder(
  photo: Photo,
  plane: PhotoPlane,
  whole: Laid,
  { box, pxPerMm }: Sight,
  close: Laid | null,
): Laid | undefined {
  const finest = plane.mmPerPixel / 2;
  if (whole.step * pxPerMm <= COARSE_FROM) return undefined;
  const seen = common(box, boxOf(whole));
  if (!seen) return undefined;
  const [right, down] = [(box.right - box.left) * SEEN_AROUND, (box.bottom - box.top) * SEEN_AROUND];
  const around = common(
    { left: box.left - right, top: box.top - down, right: box.right + right, bottom: box.bottom + down },
    boxOf(whole),
  );
  if (!around) return undefined;
  const area = (around.right - around.left) * (around.bottom - around.top);
  const step = Math.max(1 / pxPerMm, finest, Math.sqrt(area / CLOSE_MOST));
  // As fine as one would be made now is fine enough, or a large screen would be asked for without end.
  const shown = close && close.step <= step * COARSE_FROM ? common(seen, boxOf(close)) : undefined;
  const all = shown && Object.entries(seen).every(([side, mm]) => shown[side as keyof Box] === mm);
  return all ? undefined : orderIn(photo, plane, around, step);
}

/**
 * Where a spot of a photo puts a hardpoint: where its sight meets that of the other photo that shows the point most nearly
 * from the side, where both cameras' places are known; else at the depth at which it stands now.
 */
export function tracedPoint(
  photos: readonly Photo[],
  index: number,
  point: Hardpoint,
  spot: PhotoSpot,
): Point | undefined {
  const photo = photos[index] as Photo;
  const own = sightOf(photo, spot);
  const others = photos.flatMap((other) => {
    const mark = other === photo ? undefined : other.marks.find((each) => each.point === point.id);
    return (mark && sightOf(other, mark.at)) ?? [];
  });
  const [met] = others
    .flatMap((sight) => (own ? (meeting(own, sight) ?? []) : []))
    .sort((a, b) => b.across - a.across);
  if (met) return met.at;
  const plane = planeOf(photo);
  if (!plane.ok) return undefined;
  // Of a pair that has one mark for both, the photo shows the one on the camera's side.
  const far = photo.view === 'side' && point.twin !== undefined && point.at[1] * cameraSide(photo) < 0;
  const seen = far ? mirrored(point.at) : point.at;
  const place = plane.value.placeBefore(spot, beforeOf(photo, seen[VIEW_AXES[photo.view].toward.axis]));
  const at = place && unproject(photo.view, place, seen);
  return at && far ? mirrored(at) : at;
}

/** The document with a photo changed. */
export function withPhoto(document: LayoutDocument, index: number, change: Partial<Photo>): LayoutDocument {
  const photos = document.photos.map((photo, i) => {
    if (i !== index) return photo;
    const next: Record<string, unknown> = { ...photo, ...change };
    // A part that is set to nothing is taken away.
    for (const [key, value] of Object.entries(next)) if (value === undefined) delete next[key];
    return next as Photo;
  });
  return { ...document, photos };
}

/** The document with a hardpoint where it was traced. Box and wheel take nothing along: each point was seen by itself. */
export function withTraced(document: LayoutDocument, point: Hardpoint, to: Point): LayoutDocument {
  const placed =
    point.id === 'steering.box.sectorCentre'
      ? withValue(document, point.id, to)
      : placeHardpoint(document, point.id, to);
  return { ...placed, origins: withOrigin(document.origins ?? {}, point, 'photo') };
}

/**
 * The document with the points that a photo alone shows where it shows them, at the depth at which they stand: of a photo whose
 * camera is not known, and which no adjustment can take. Points that something else measured or planned stay.
 */
export function withLooseTraced(document: LayoutDocument, index: number): LayoutDocument {
  const photo = document.photos[index];
  if (!photo || cameraStart(photo)) return document;
  let next = document;
  for (const mark of photo.marks) {
    const point = hardpoints(document).find(({ id }) => id === mark.point);
    const elsewhere = document.photos.some(
      (other) => other !== photo && other.marks.some((each) => each.point === mark.point),
    );
    if (!point || elsewhere || originOf(document, point) !== 'photo') continue;
    const to = tracedPoint(document.photos, index, point, mark.at);
    if (to) next = withTraced(next, point, to);
  }
  return next;
}
