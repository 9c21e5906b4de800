import { project, VIEW_AXES, VIEWS, type View, type ViewPoint } from '../drawing/index.ts';
import { distance as apart } from '../geometry/points.ts';
import { type Hardpoint, hardpoints, type LayoutDocument, type Photo } from '../layout/index.ts';
import { cameraStart } from './photo-camera.ts';
import { planeOf, spotOf } from './planes.ts';
import { edgeAcross, type Standpoint, takenFrom } from './pretended-photo.ts';
import { stanceOf } from './stance.ts';

/** Something that a person could do for the points to be known better. */
export type Help =
  /** One more photo like that one, its camera so many mm to the photographer's right of where it stood (below 0 left). */
  | { readonly kind: 'beside'; readonly photo: number; readonly right: number }
  /** The first photo of another view, square to it, at that distance. */
  | { readonly kind: 'view'; readonly view: View; readonly distance: number }
  /** What nobody has given of some photos: how far they were taken from, where their plane stands, a straight edge. */
  | { readonly kind: 'distance' | 'plane' | 'edge'; readonly photos: readonly number[] }
  /** One more length by the tape. */
  | { readonly kind: 'length'; readonly from: string; readonly to: string };

export interface Wanted {
  /** Ids of the points that are traced, or to be traced. */
  readonly points: readonly string[];
}

/** What a document would be once a help was taken. */
export interface Helped {
  readonly help: Help;
  readonly document: LayoutDocument;
}

/** Angles off square, rad, from which one more photo of a view is tried. */
const BESIDE = [-0.45, -0.25, 0, 0.25, 0.45];
/** Of the distance: a photo that would stand nearer than this to another one is the same photo again. */
const SAME_STAND = 0.1;
/** mm: how high above the floor arms reach from a step ladder. Common practice, no published source. */
const LADDER = 2900;
/** How many of the points that are known worst are tried as ends of a taped length, and mm between two that are apart. */
const ENDS = 6;
const APART = 50;

const wantedOf = (document: LayoutDocument, { points }: Wanted): Hardpoint[] =>
  hardpoints(document).filter(({ id }) => points.includes(id));

const isInside = ([x, y]: readonly [number, number], [width, height]: readonly [number, number]) =>
  x >= 0 && y >= 0 && x <= width && y <= height;

/** A document whose photos show all wanted points: those that nobody has clicked yet where they would be seen. */
export function allTraced(document: LayoutDocument, wanted: Wanted): LayoutDocument {
  const points = wantedOf(document, wanted);
  const photos = document.photos.map((photo): Photo => {
    const plane = planeOf(photo);
    if (!cameraStart(photo) || !plane.ok) return photo;
    const more = points.flatMap(({ id, at }) => {
      if (photo.marks.some(({ point }) => point === id) || photo.anchor?.point === id) return [];
      const spot = spotOf(photo, plane.value, at);
      return spot && isInside(spot, photo.size) ? [{ point: id, at: spot }] : [];
    });
    return more.length > 0 ? { ...photo, marks: [...photo.marks, ...more] } : photo;
  });
  return { ...document, photos };
}

function withPhotoFrom(document: LayoutDocument, wanted: Wanted, help: Help, stand: Standpoint): Helped[] {
  const photo = takenFrom(stand, wantedOf(document, wanted));
  return photo ? [{ help, document: { ...document, photos: [...document.photos, photo] } }] : [];
}

/** One more photo of the same view as one that is there, from another place. */
function besideOf(document: LayoutDocument, wanted: Wanted, photo: number): Helped[] {
  const like = document.photos[photo] as Photo;
  const plane = planeOf(like);
  const stance = plane.ok ? stanceOf(like, plane.value) : undefined;
  if (!stance) return [];
  const { middle, distance } = stance;
  const side = like.flipped ? -1 : 1;
  const stood = document.photos.flatMap((other) => {
    const own = other.view === like.view && !other.flipped === !like.flipped ? planeOf(other) : undefined;
    const found = own?.ok ? stanceOf(other, own.value) : undefined;
    return found ? [found.right / found.distance] : [];
  });
  return BESIDE.filter((angle) =>
    stood.every((other) => Math.abs(Math.tan(angle) - other) > SAME_STAND),
  ).flatMap((angle) => {
    const right = Math.tan(angle) * distance;
    return withPhotoFrom(
      document,
      wanted,
      { kind: 'beside', photo, right: right - stance.right },
      {
        like,
        view: like.view,
        from: [middle[0] + side * right, middle[1] - stance.above],
        distance,
        toward: middle,
      },
    );
  });
}

/** A first photo of a view that has none, square to the middle of the points. */
function viewsNotTaken(document: LayoutDocument, wanted: Wanted, photo: number): Helped[] {
  const like = document.photos[photo] as Photo;
  const start = cameraStart(like);
  const points = wantedOf(document, wanted);
  if (!start || points.length === 0) return [];
  const { axis } = VIEW_AXES[like.view].toward;
  const stood = Math.abs(start.at[axis] - start.rectangle.middle[axis]);
  return VIEWS.filter((view) => !document.photos.some((other) => other.view === view)).flatMap((view) => {
    const places = points.map(({ at }) => project(view, at));
    const middleAlong = (along: 0 | 1) => {
      const values = places.map((place) => place[along]);
      return (Math.min(...values) + Math.max(...values)) / 2;
    };
    const middle: ViewPoint = [middleAlong(0), middleAlong(1)];
    const distance = view === 'top' ? Math.min(stood, LADDER) : stood;
    return withPhotoFrom(
      document,
      wanted,
      { kind: 'view', view, distance },
      { like, view, from: middle, distance, toward: middle },
    );
  });
}

/** What nobody has given of some of the photos, as if it were. */
function withGiven(document: LayoutDocument): Helped[] {
  const kinds = {
    distance: (photo: Photo) => {
      const start = cameraStart(photo);
      const { axis } = VIEW_AXES[photo.view].toward;
      return start && { distance: Math.abs(start.at[axis] - start.rectangle.middle[axis]) };
    },
    plane: (photo: Photo) => {
      const start = cameraStart(photo);
      return start && { depth: start.rectangle.middle[VIEW_AXES[photo.view].toward.axis] };
    },
    edge: (photo: Photo) => {
      const start = cameraStart(photo);
      return start && { lens: { line: edgeAcross(start.plane.lens) } };
    },
  };
  const lacks = { distance: 'distance', plane: 'depth', edge: 'lens' } as const;
  return (['distance', 'plane', 'edge'] as const).flatMap((kind) => {
    const lacking = document.photos.flatMap((photo, i) =>
      photo[lacks[kind]] === undefined && cameraStart(photo) ? [i] : [],
    );
    if (lacking.length === 0) return [];
    const photos = document.photos.map((photo, i) =>
      lacking.includes(i) ? { ...photo, ...kinds[kind](photo) } : photo,
    );
    return [{ help: { kind, photos: lacking }, document: { ...document, photos } }];
  });
}

/** One more length between two of the points that are known worst. */
function withLengths(document: LayoutDocument, photo: number, doubts: ReadonlyMap<string, number>): Helped[] {
  const worst = [...doubts].sort((a, b) => b[1] - a[1]).slice(0, ENDS);
  const places = new Map(hardpoints(document).map(({ id, at }) => [id, at]));
  const like = document.photos[photo] as Photo;
  return worst.flatMap(([from], i) =>
    worst.slice(i + 1).flatMap(([to]) => {
      const [a, b] = [places.get(from), places.get(to)];
      const taken = document.photos.some(({ lengths }) =>
        lengths.some((each) => [each.from, each.to].includes(from) && [each.from, each.to].includes(to)),
      );
      if (!a || !b || taken || apart(a, b) < APART) return [];
      const lengths = [...like.lengths, { from, to, tape: apart(a, b) }];
      const photos = document.photos.with(photo, { ...like, lengths });
      return [{ help: { kind: 'length', from, to } as const, document: { ...document, photos } }];
    }),
  );
}

/** All that a person could do, each with the document as it would come out; `doubts` of the points, mm. */
export function helpsIn(
  document: LayoutDocument,
  wanted: Wanted,
  doubts: ReadonlyMap<string, number>,
): Helped[] {
  const worked = document.photos.flatMap((photo, i) => (cameraStart(photo) ? [i] : []));
  const [first] = worked;
  if (first === undefined) return [];
  return [
    ...worked.flatMap((i) => besideOf(document, wanted, i)),
    ...viewsNotTaken(document, wanted, first),
    ...withGiven(document),
    ...withLengths(document, first, doubts),
  ];
}
