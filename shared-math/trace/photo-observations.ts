import {
  DRAWN_DOUBT,
  type Further,
  type FurtherRow,
  type FurtherUnknown,
  type PointPlace,
  pointsNamed,
  type SurveyRow,
  type UnknownTable,
} from '../adjust/index.ts';
import { VIEW_AXES } from '../drawing/index.ts';
import type { Point } from '../geometry/points.ts';
import { type Hardpoint, originOf, type Photo } from '../layout/index.ts';
import { CAMERA_UNKNOWNS } from './camera-model.ts';
import { type CameraStart, cameraStart, knownPlaces, wayOf } from './photo-camera.ts';
import {
  ASKEW_DOUBT,
  clickDoubt,
  distanceDoubt,
  FOCAL_OPEN,
  HELD_LEVEL_DOUBT,
  LENS_DOUBT,
  LENS_NO_TERM,
  LENS_UNSEEN_DOUBT,
  LEVEL_DOUBT,
  LINE_OPEN,
  PLACE_OPEN,
  PLANE_DOUBT,
  STOOD_SQUARE_DOUBT,
  TAPE_DOUBT,
  TURN_OPEN,
} from './photo-doubts.ts';
import { type PhotoRow, pointAt, prepareRows } from './photo-rows.ts';
import { cameraSide } from './planes.ts';
import { placeRectangle, RECTANGLE_UNKNOWNS } from './rectangle-pose.ts';

/** What of a photo a row of the adjustment is. `photo` is its place among the document's. */
export type Observed =
  /** The click that shows a point, and the depth that was typed of it. */
  | { readonly kind: 'mark' | 'depth'; readonly photo: number; readonly point: string }
  /** The click on the known point that places the photo, and where the drawing has that. */
  | { readonly kind: 'anchor'; readonly photo: number; readonly point: string }
  | { readonly kind: 'stands'; readonly photo: number; readonly point: string; readonly axis: 0 | 1 | 2 }
  /** A corner or another known point of the rectangle, an end of the scale. */
  | { readonly kind: 'corner'; readonly photo: number; readonly at: number }
  | { readonly kind: 'lens' | 'level' | 'distance'; readonly photo: number }
  /** A length by the tape, held against this photo. */
  | { readonly kind: 'length'; readonly photo: number; readonly from: string; readonly to: string };

export interface PhotoObservations extends Further {
  /** What each row is, by its id. */
  readonly observed: ReadonlyMap<string, Observed>;
  /** The photos whose cameras are adjusted, by their place among the document's: in the order of the unknowns. */
  readonly photos: readonly number[];
}

const ENDS = [1e-7, 1e-7, 1e-7, 1e-7, 1e-3, 1e-3, 1e-3, 1e-7, 1e-7];
const AXES = [0, 1, 2] as const;

/** The photos that can be adjusted: those to scale whose camera's distance or focal length is given. */
export function adjustedPhotos(photos: readonly Photo[]): number[] {
  return photos.flatMap((photo, i) => (cameraStart(photo) ? [i] : []));
}

/**
 * Which hardpoint a photo shows by a mark: of a mirrored pair, which the list asks for by its left one, taken from the right
 * side of the car the right one.
 */
export function shownPoint(table: UnknownTable, photo: Photo, id: string): PointPlace | undefined {
  const place = table.places.get(id);
  const twin = place?.point.twin;
  return twin !== undefined && fromRight(photo) && place && place.drawn[1] > 0
    ? table.places.get(twin)
    : place;
}

const fromRight = ({ view, flipped }: Photo) => view === 'side' && flipped === true;

const looksAt = (row: SurveyRow, { id, twin }: Hardpoint) =>
  'of' in row && (row.of === id || row.of === twin);
/** Whether a survey looks at a point, or at its mirror image. */
export const isNamed = (survey: readonly SurveyRow[], { id, twin }: Pick<Hardpoint, 'id' | 'twin'>) =>
  survey.some((row) => pointsNamed(row).some((each) => each === id || each === twin));
const DIRECT: Partial<Record<SurveyRow['kind'], 0 | 1 | 2>> = { back: 0, out: 1, up: 2 };

/** Rows and slots of one document's photos, while they are gathered. */
class Gathered {
  readonly rows: PhotoRow[] = [];
  readonly observed = new Map<string, Observed>();
  readonly seen = new Map<string, string[]>();
  /** Of every point that rows name: the hardpoint that it is, or where it stands fast, or a rectangle's that is placed by itself. */
  readonly slots = new Map<string, PointPlace | Point | undefined>();

  add(row: PhotoRow, observed: Observed, points: readonly PointPlace[] = []): void {
    this.rows.push(row);
    this.observed.set(row.id, observed);
    this.seen.set(
      row.id,
      points.map(({ point }) => point.id),
    );
  }

  hardpoint(place: PointPlace): string {
    this.slots.set(place.point.id, place);
    return place.point.id;
  }
}

interface Joined {
  readonly photo: Photo;
  readonly index: number;
  readonly start: CameraStart;
}

const middleOf = (index: number) => `photo ${index} middle`;
const cornerOf = (index: number, at: number) => `photo ${index} corner ${at}`;

function gatherCalibration(all: Gathered, { photo, index, start }: Joined, camera: number): void {
  const doubt = clickDoubt(photo);
  const known = knownPlaces(photo);
  for (const [at, { at: spot }] of known.entries()) {
    const id = cornerOf(index, at);
    all.slots.set(id, undefined);
    all.add({ kind: 'click', id, camera, point: id, at: spot, doubt }, { kind: 'corner', photo: index, at });
  }
  all.slots.set(middleOf(index), undefined);
  const line = (kind: 'lens' | 'level', spots: Photo['marks'][number]['at'][], toward?: Point) =>
    all.add(
      {
        kind: 'line',
        id: `photo ${index} ${kind}`,
        camera,
        spots,
        doubt,
        along: toward && { toward, doubt: LEVEL_DOUBT },
      },
      { kind, photo: index },
    );
  if (photo.lens) line('lens', photo.lens.line);
  if (photo.level) line('level', [photo.level.from, photo.level.to], start.rectangle.right);
  if (photo.distance !== undefined) {
    const [x, y, z] = wayOf(photo.view, 'toward');
    const side = cameraSide(photo);
    all.add(
      {
        kind: 'distance',
        id: `photo ${index} distance`,
        camera,
        through: middleOf(index),
        normal: [side * x, side * y, side * z],
        distance: photo.distance,
        doubt: distanceDoubt(photo),
      },
      { kind: 'distance', photo: index },
    );
  }
}

/** The known point that places a photo: where the drawing has it, as well as a tape has, but for what a survey says of it. */
function gatherAnchor(
  all: Gathered,
  table: UnknownTable,
  survey: readonly SurveyRow[],
  { photo, index }: Joined,
  camera: number,
): void {
  const { anchor } = photo;
  const place = anchor && table.places.get(anchor.point);
  if (!anchor || !place) return;
  const id = `photo ${index} known point`;
  const point = place.planned ? `${id} stands` : all.hardpoint(place);
  if (place.planned) all.slots.set(point, anchor.stands);
  all.add(
    { kind: 'click', id, camera, point, at: anchor.at, doubt: clickDoubt(photo) },
    { kind: 'anchor', photo: index, point: anchor.point },
    place.planned ? [] : [place],
  );
  for (const axis of place.planned ? [] : AXES) {
    const measured = survey.some((row) => looksAt(row, place.point) && DIRECT[row.kind] === axis);
    const again = `${place.point.id} stands ${axis}`;
    if (measured || place.index[axis] < 0 || all.observed.has(again)) continue;
    all.add(
      { kind: 'coordinate', id: again, of: point, axis, value: anchor.stands[axis], doubt: TAPE_DOUBT },
      { kind: 'stands', photo: index, point: anchor.point, axis },
      [place],
    );
  }
}

/** A point that a tape measured of whose rows none is at hand stands where it is drawn, as well as a tape has it. */
function gatherKnown(
  all: Gathered,
  { document }: UnknownTable,
  survey: readonly SurveyRow[],
  index: number,
  place: PointPlace,
): void {
  const { point } = place;
  if (originOf(document, point) !== 'tape' || isNamed(survey, point)) return;
  for (const axis of AXES) {
    const id = `${point.id} stands ${axis}`;
    if (place.index[axis] < 0 || all.observed.has(id)) continue;
    all.add(
      { kind: 'coordinate', id, of: point.id, axis, value: place.drawn[axis], doubt: TAPE_DOUBT },
      { kind: 'stands', photo: index, point: point.id, axis },
      [place],
    );
  }
}

function gatherMarks(
  all: Gathered,
  table: UnknownTable,
  survey: readonly SurveyRow[],
  { photo, index }: Joined,
  camera: number,
): void {
  const { axis } = VIEW_AXES[photo.view].toward;
  for (const mark of photo.marks) {
    const place = shownPoint(table, photo, mark.point);
    // A planned point is not where the car has it, and the one that places the photo is clicked already.
    if (!place || place.planned || isAnchor(photo, place)) continue;
    const point = all.hardpoint(place);
    const id = `photo ${index} ${mark.point}`;
    all.add(
      { kind: 'click', id, camera, point, at: mark.at, doubt: clickDoubt(photo) },
      { kind: 'mark', photo: index, point: mark.point },
      [place],
    );
    gatherKnown(all, table, survey, index, place);
    if (mark.depth === undefined || place.index[axis] < 0) continue;
    // Typed of the one of the pair that the mark names.
    const value = place.point.id === mark.point ? mark.depth : -mark.depth;
    all.add(
      { kind: 'coordinate', id: `${id} depth`, of: point, axis, value, doubt: TAPE_DOUBT },
      { kind: 'depth', photo: index, point: mark.point },
      [place],
    );
  }
}

/** Whether a hardpoint is the one that places a photo: from the right side of the car, the left of a pair stands for the right one. */
export function isAnchor(
  photo: Photo,
  { point: { id, twin } }: { readonly point: Pick<Hardpoint, 'id' | 'twin'> },
): boolean {
  const { anchor } = photo;
  return anchor !== undefined && (anchor.point === id || (fromRight(photo) && anchor.point === twin));
}

function gatherLengths(
  all: Gathered,
  table: UnknownTable,
  survey: readonly SurveyRow[],
  { photo, index }: Joined,
): void {
  for (const [at, { from, to, tape }] of photo.lengths.entries()) {
    const [a, b] = [table.places.get(from), table.places.get(to)];
    const taken = survey.some(
      (row) =>
        row.kind === 'straight' &&
        ((row.from === from && row.to === to) || (row.from === to && row.to === from)),
    );
    if (!a || !b || a.planned || b.planned || from === to || taken) continue;
    all.add(
      {
        kind: 'length',
        id: `photo ${index} length ${at}`,
        from: all.hardpoint(a),
        to: all.hardpoint(b),
        length: tape,
        doubt: TAPE_DOUBT,
      },
      { kind: 'length', photo: index, from, to },
      [a, b],
    );
  }
}

/** Where among the further unknowns the place of the so manieth camera stands, x first. */
export const cameraUnknownAt = (camera: number): number => CAMERA_UNKNOWNS * camera + 4;

function cameraUnknowns({ photo, start }: Joined): FurtherUnknown[] {
  const square = photo.straighten ? TURN_OPEN : STOOD_SQUARE_DOUBT;
  const starts = [Math.log(start.focal), 0, 0, 0, ...start.at, start.plane.lens.k, 0];
  const doubts = [
    photo.focal?.share ?? FOCAL_OPEN,
    square,
    square,
    photo.straighten ? TURN_OPEN : HELD_LEVEL_DOUBT,
    PLACE_OPEN,
    PLACE_OPEN,
    PLACE_OPEN,
    photo.lens ? LENS_DOUBT : LENS_UNSEEN_DOUBT,
    photo.lens ? LENS_DOUBT : LENS_NO_TERM,
  ];
  return starts.map((value, j) => ({
    start: value,
    known: j === 0 && photo.focal ? Math.log(photo.focal.px) : j < CAMERA_UNKNOWNS - 2 ? value : 0,
    doubt: doubts[j] as number,
    end: ENDS[j] as number,
  }));
}

function rectangleUnknowns({ photo, start: { rectangle } }: Joined): FurtherUnknown[] {
  const { axis } = VIEW_AXES[photo.view].toward;
  const spread = (along: 0 | 1) => {
    const values = rectangle.places.map((place) => place[along]);
    return Math.max(1, Math.max(...values) - Math.min(...values));
  };
  // A turn in the plane is one about the way out of it: from right toward down, against the axis that both make.
  const out = ([rx, ry, rz]: Point, [dx, dy, dz]: Point): number =>
    [ry * dz - rz * dy, rz * dx - rx * dz, rx * dy - ry * dx][axis] as number;
  const about = out(rectangle.right, rectangle.down);
  const levelled = photo.level !== undefined || !photo.straighten;
  const unknowns: FurtherUnknown[] = [];
  for (const each of AXES) {
    const doubt = each === axis ? (photo.depth === undefined ? DRAWN_DOUBT : PLANE_DOUBT) : PLACE_OPEN;
    unknowns.push({ start: rectangle.middle[each], known: rectangle.middle[each], doubt, end: 1e-3 });
  }
  for (const each of AXES) {
    const doubt = each !== axis ? ASKEW_DOUBT : levelled ? TURN_OPEN : LEVEL_DOUBT;
    const start = each === axis && levelled ? about * rectangle.turned : 0;
    unknowns.push({ start, known: start, doubt, end: 1e-7 });
  }
  for (const along of [0, 1, 1] as const)
    unknowns.push({ start: 0, known: 0, doubt: TAPE_DOUBT / spread(along), end: 1e-7 });
  return unknowns;
}

/**
 * What a document's photos observe of its points, and what is unknown of their cameras and of the rectangles that stand in
 * them: observations of the same adjustment as the survey's rows.
 *
 * Each click is where its camera sees its point (`camera-model.ts`), in a pixel's doubt or what a photo that is worked
 * with reduced leaves of one. The corners belong to one rectangle whose sides, squareness, level, plumb and depth are
 * known within their doubts (`photo-doubts.ts`) and whose place in its plane is not. The point that places the photo stands
 * where the drawing had it, within the tape's doubt, unless the survey says where it stands. A plane whose depth nobody
 * gave is known as weakly as a point that nobody measured, and a lens without a straight line within what cameras leave
 * unmended. Clicks on planned points were made on the car and not on the plan: they are left out.
 * Frame:    vehicle, at ride height. Units: px, mm, rad.
 * Outcomes: rows and unknowns; of photos that are not to scale, or of whose camera neither distance nor focal length is
 *           given, nothing.
 * Source:   bundle adjustment as B. Triggs, P. McLauchlan, R. Hartley and A. Fitzgibbon, Bundle Adjustment: A Modern
 *           Synthesis, 2000, have it, from memory.
 * Checked:  tests/unit/trace/photo-observations.test.ts, tests/thorough/trace/photos-adjusted.test.ts (an independent
 *           camera with another lens, many times by lot).
 */
export function photoObservations(
  table: UnknownTable,
  survey: readonly SurveyRow[],
  photos: readonly Photo[],
): PhotoObservations {
  const joined = photos.flatMap((photo, index): Joined[] => {
    const start = cameraStart(photo);
    return start ? [{ photo, index, start }] : [];
  });
  const all = new Gathered();
  for (const [camera, each] of joined.entries()) {
    gatherCalibration(all, each, camera);
    gatherAnchor(all, table, survey, each, camera);
    gatherMarks(all, table, survey, each, camera);
    gatherLengths(all, table, survey, each);
  }
  return {
    ...prepared(table, joined, all),
    observed: all.observed,
    photos: joined.map(({ index }) => index),
    seen: all.seen,
  };
}

/**
 * The cameras that an adjustment has found, by their photo's place among the document's: CAMERA_UNKNOWNS each, for the frame of
 * its `cameraStart`. Empty if what was found belongs to other photos than these.
 */
export function adjustedCameras(
  photos: readonly Photo[],
  found: readonly { readonly value: number }[],
): Map<number, Float64Array> {
  const cameras = new Map<number, Float64Array>();
  let next = 0;
  let others = 0;
  for (const [index, photo] of photos.entries()) {
    const start = cameraStart(photo);
    if (!start) continue;
    const values = cameraUnknowns({ photo, index, start }).map(({ start: known, doubt }) =>
      doubt > 0 ? (found[next++]?.value ?? Number.NaN) : known,
    );
    cameras.set(index, Float64Array.from(values));
    others +=
      rectangleUnknowns({ photo, index, start }).length + (photo.lens ? 2 : 0) + (photo.level ? 2 : 0);
  }
  return next + others === found.length ? cameras : new Map();
}

/** The rows as functions of all unknowns: those of the table, then of each camera, each rectangle, each line. */
function prepared(
  table: UnknownTable,
  joined: readonly Joined[],
  { rows, slots }: Gathered,
): Pick<Further, 'unknowns' | 'rows' | 'take'> {
  const cameras = joined.length;
  const points = [...slots.keys()];
  const lines = rows.filter(({ kind }) => kind === 'line').length;
  const values = new Float64Array(pointAt(cameras, points.length) + 2 * lines);
  // Of each value: the unknown that it is, and by what factor; -1 where it is known or comes from a rectangle.
  const columns = new Int32Array(values.length).fill(-1);
  const factors = new Float64Array(values.length).fill(1);
  const unknowns: FurtherUnknown[] = [];
  const first = table.unknowns.length;
  for (const [camera, each] of joined.entries())
    for (const [j, unknown] of cameraUnknowns(each).entries()) {
      const at = CAMERA_UNKNOWNS * camera + j;
      values[at] = unknown.start;
      columns[at] = first + unknowns.push(unknown) - 1;
    }
  for (const [i, slot] of [...slots.values()].entries())
    for (const axis of AXES) {
      const at = pointAt(cameras, i) + axis;
      if (slot && 'index' in slot) {
        values[at] = slot.drawn[axis];
        columns[at] = slot.index[axis];
        factors[at] = slot.sign[axis];
      } else if (slot) values[at] = slot[axis];
    }
  const rectangles = joined.map((each) => {
    const { places } = each.start.rectangle;
    const own = rectangleUnknowns(each);
    const column = first + unknowns.length;
    unknowns.push(...own);
    const middle = points.indexOf(middleOf(each.index));
    return {
      rectangle: each.start.rectangle,
      column,
      middle: pointAt(cameras, middle),
      corners: pointAt(cameras, points.indexOf(cornerOf(each.index, 0))),
      slopes: new Float64Array(3 * places.length * RECTANGLE_UNKNOWNS),
    };
  });
  for (let line = 0; line < 2 * lines; line += 1) {
    const at = pointAt(cameras, points.length) + line;
    columns[at] = first + unknowns.push({ start: 0, known: 0, doubt: LINE_OPEN, end: 1e-4 }) - 1;
  }
  const take = (x: Float64Array) => {
    for (let j = 0; j < values.length; j += 1) {
      const column = columns[j] as number;
      if (column >= 0) values[j] = (factors[j] as number) * (x[column] as number);
    }
    for (const { rectangle, column, middle, corners, slopes } of rectangles) {
      for (let axis = 0; axis < 3; axis += 1) values[middle + axis] = x[column + axis] as number;
      placeRectangle(rectangle, x, column, values, corners, slopes);
    }
  };
  /** Hands a slope by a value on to the unknowns that it follows from. */
  const handOn = (
    row: number,
    value: number,
    slope: number,
    add: (row: number, unknown: number, slope: number) => void,
  ): void => {
    const column = columns[value] as number;
    if (column >= 0) {
      add(row, column, slope * (factors[value] as number));
      return;
    }
    for (const { rectangle, column: own, middle, corners, slopes } of rectangles) {
      if (value >= middle && value < middle + 3) add(row, own + value - middle, slope);
      const k = value - corners;
      if (k < 0 || k >= 3 * rectangle.places.length) continue;
      for (let j = 0; j < RECTANGLE_UNKNOWNS; j += 1)
        add(row, own + j, slope * (slopes[k * RECTANGLE_UNKNOWNS + j] as number));
    }
  };
  const start = new Float64Array(first + unknowns.length);
  for (const [j, { drawn }] of table.unknowns.entries()) start[j] = drawn;
  for (const [j, unknown] of unknowns.entries()) start[first + j] = unknown.start;
  take(start);
  const frames = joined.map(({ photo, start: { turn } }) => ({ size: photo.size, turn }));
  return {
    unknowns,
    take,
    rows: prepareRows(rows, { cameras: frames, points }, values).map(
      (row): FurtherRow => ({
        id: row.id,
        observed: row.observed,
        doubts: row.doubts,
        compute: (computed, at) => row.compute(values, computed, at),
        addSlopes: (at, add) => row.slopes(values, at, (i, value, slope) => handOn(i, value, slope, add)),
      }),
    ),
  };
}
