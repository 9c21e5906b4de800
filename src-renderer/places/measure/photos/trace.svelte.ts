import type { View } from '../../../../shared-math/drawing/index.ts';
import type { Hardpoint, LayoutDocument, Photo } from '../../../../shared-math/layout/index.ts';
import type { Outcome } from '../../../../shared-math/outcome.ts';
import { shownText } from '../../../../shared-math/outside/index.ts';
import type {
  FlatPlace,
  PhotoPlane,
  PhotoSpot,
  SightGap,
  TraceFailure,
} from '../../../../shared-math/trace/index.ts';
import { planeOf, sightGaps } from '../../../../shared-math/trace/index.ts';
import type { OpenLayout } from '../../../document/open-layout.svelte.ts';
import { sendPhoto } from '../../../host/photos.ts';
import { PhotoPictures } from './photo-pictures.svelte.ts';
import { loosePlane, tracedPoint, withPhoto, withTraced } from './photo-planes.ts';
import type { PhotoWorkerLine } from './start-photo-worker.ts';
import {
  bodyDepth,
  bodyToTrace,
  depthAlong,
  type Existing,
  type Outlined,
  placedSpots,
  SPOTS_LEAST,
  withOutlined,
} from './trace-bodies.ts';
import { traceTrouble } from './trace-words.ts';

/** Characters that a photo's name in the document may have. */
const PHOTO_NAME_MOST = 200;

/** What a click on the photo means. */
export type Tool =
  | 'straighten'
  | 'lens'
  | 'scale'
  | 'level'
  | 'floor'
  | 'wheels'
  | 'anchor'
  | 'point'
  | 'outline'
  | 'note'
  | 'crop';

/** Corners of a rectangle that has not been given its sides yet, mm. */
export interface RectangleSize {
  readonly width: number;
  readonly height: number;
}

/** Spots that a step asks for; a line has no end. */
const WANTED: Record<Tool, number> = {
  straighten: 4,
  lens: 40,
  scale: 2,
  level: 2,
  floor: 2,
  wheels: 2,
  anchor: 1,
  point: 1,
  outline: 40,
  note: 2,
  crop: 2,
};

/** Tracing over the open layout's photos: which one is worked at, what a click means, and what follows from it. */
export class Trace {
  readonly #openLayout: OpenLayout;
  readonly pictures: PhotoPictures;
  /** Whether the place of tracing shows. */
  open = $state(false);
  active = $state(0);
  tool: Tool | null = $state(null);
  /** Spots clicked for a step that is not complete. */
  picks: readonly PhotoSpot[] = $state.raw([]);
  rectangle: RectangleSize | null = $state.raw(null);
  anchorPoint = $state('axle.left.wheelCentre');
  /** The hardpoint that the next click sets. */
  pointId = $state('');
  /** What the outline that is clicked becomes, and which one is traced again. */
  outlined: Outlined = $state('rail');
  existing: Existing = $state();
  /** Where it lies along the view, mm; undefined if it is as deep as the thing itself or a usual one. */
  outlineDepth: number | null = $state(null);
  #looks: (() => void) | undefined;
  /** Lets the person choose photos. The page puts it here, as only it can ask for files. */
  choosePhotos: () => void = () => {};

  photos: readonly Photo[] = $derived.by(() => this.#openLayout.document?.photos ?? []);
  photo: Photo | undefined = $derived(this.photos[this.active] ?? this.photos[0]);
  index = $derived(this.photo ? this.photos.indexOf(this.photo) : 0);
  prepared: Outcome<PhotoPlane, TraceFailure> | undefined = $derived(this.photo && planeOf(this.photo));
  /** As the board shows the photo that is worked at: as it was taken while it is being straightened. */
  plane: PhotoPlane | undefined = $derived(this.photo && this.planeShown(this.photo));
  trouble = $derived(this.prepared && !this.prepared.ok ? traceTrouble(this.prepared.failure) : '');
  /**
   * What is to be found on a photo: every hardpoint, of mirrored ones the left. The box before its arm. The shaft is
   * none of it: it is laid out when the car is on the board.
   */
  points: readonly Hardpoint[] = $derived.by(() =>
    this.#openLayout.points.filter(
      ({ id, twin }) => !(twin && id.split('.')[1] === 'right') && !id.startsWith('shaft.'),
    ),
  );
  /** How far the sights of points that two photos show miss each other. */
  gaps: readonly SightGap[] = $derived(sightGaps(this.photos));
  point: Hardpoint | undefined = $derived(
    this.points.find(({ id }) => id === this.pointId) ?? this.#firstOpen(),
  );

  constructor(openLayout: OpenLayout, start: () => PhotoWorkerLine) {
    this.#openLayout = openLayout;
    this.pictures = new PhotoPictures(start);
  }

  /** The plane in which a photo is shown. */
  planeShown(photo: Photo): PhotoPlane {
    const asTaken = this.open && photo === this.photo && (this.tool === 'straighten' || this.tool === 'lens');
    const plane = asTaken ? undefined : planeOf(photo);
    return plane?.ok ? plane.value : loosePlane(photo);
  }

  isMarked(point: Hardpoint): boolean {
    return this.photo?.marks.some((mark) => mark.point === point.id) ?? false;
  }

  /** The worst gap of a point between the photo that is worked at and another one. */
  gapOf(point: Hardpoint): SightGap | undefined {
    const own = this.gaps.filter((each) => each.point === point.id && each.photos.includes(this.index));
    return own.sort((a, b) => b.gap - a.gap)[0];
  }

  #firstOpen(): Hardpoint | undefined {
    return this.points.find((point) => !this.isMarked(point));
  }

  // Bringing in ------------------------------------------------------------------------------------------------

  /** Brings photos in one after another; each that is refused is reported by its name and the others still come. */
  async bring(files: Iterable<File>): Promise<void> {
    for (const file of files) {
      const name = shownText(file.name, PHOTO_NAME_MOST) || 'Pasted photo';
      const sent = await sendPhoto(file);
      if (!sent.ok) {
        this.#openLayout.tell(`${shownText(name)} is not brought in: ${sent.failure}.`);
        continue;
      }
      const { hash, width, height } = sent.value;
      const view = this.#likelyView(name);
      // Decoded before it is kept, so that a file that only looks like a photo leaves the layout as it was.
      const brought = await this.pictures.want({ hash }, width && height ? [width, height] : undefined);
      if (!brought.ok) {
        this.#openLayout.tell(`${shownText(name)} is not brought in: ${brought.failure}.`);
        continue;
      }
      const document = this.#openLayout.document;
      if (!document) return;
      const photo: Photo = {
        view,
        hash,
        name,
        size: brought.value,
        opacity: 0.8,
        shown: true,
        marks: [],
        notes: [],
        lengths: [],
      };
      if (this.#change(`Bring in ${shownText(name)}`, { ...document, photos: [...document.photos, photo] })) {
        this.choose(this.photos.length - 1);
        this.#openLayout.enlarge(view);
        this.look();
      }
    }
  }

  /** By the file's name, else the first view that has no photo yet. */
  #likelyView(name: string): View {
    const named = (['side', 'top', 'front'] as const).find((view) => name.toLowerCase().includes(view));
    const free = (['side', 'top', 'front'] as const).find(
      (view) => !this.photos.some((photo) => photo.view === view),
    );
    return named ?? free ?? 'side';
  }

  // The photo that is worked at --------------------------------------------------------------------------------

  choose(index: number): void {
    this.active = index;
    this.use(null);
    if (this.photo && this.#openLayout.enlarged) this.#openLayout.enlarge(this.photo.view);
    if (this.photo) this.look();
  }

  /** The whole photo comes in sight. */
  look(): void {
    this.#looks?.();
  }
  /** The board's own way to look there; gives back how to take it away again. */
  onLook(look: () => void): () => void {
    this.#looks = look;
    return () => {
      if (this.#looks === look) this.#looks = undefined;
    };
  }

  use(tool: Tool | null): void {
    const was = this.plane;
    this.tool = tool;
    // While it is straightened a photo lies as it was taken, elsewhere than where it belongs.
    if (was && this.plane && this.photo && movedBetween(was, this.plane, this.photo.size)) this.look();
    this.picks = [];
    this.rectangle = null;
  }

  #change(label: string, document: LayoutDocument, merge?: string): boolean {
    const taken = this.#openLayout.edits.change(label, document, merge);
    if (!taken) this.#openLayout.tell(`Not taken: ${this.#openLayout.edits.refusal}.`);
    return taken;
  }

  set(label: string, change: Partial<Photo>, merge?: string): boolean {
    const { document } = this.#openLayout;
    return document !== null && this.#change(label, withPhoto(document, this.index, change), merge);
  }

  /** Sets a step of the calibration if the photo can still be prepared with it; else tells why and keeps what stood. */
  calibrate(label: string, change: Partial<Photo>): boolean {
    if (!this.photo) return false;
    const plane = planeOf({ ...this.photo, ...change });
    if (!plane.ok) {
      this.#openLayout.tell(traceTrouble(plane.failure));
      return false;
    }
    return this.set(label, change);
  }

  takeAway(): void {
    const { document } = this.#openLayout;
    const photo = this.photo;
    if (!document || !photo) return;
    this.#change(`Take ${shownText(photo.name)} off the board`, {
      ...document,
      photos: document.photos.filter((each) => each !== photo),
    });
    this.choose(0);
  }

  // Clicks ------------------------------------------------------------------------------------------------------

  /** A click on the photo: one more spot of the step that goes on. */
  pick(spot: PhotoSpot): void {
    const { tool, photo } = this;
    if (!tool || !photo) return;
    const picks = this.picks.length >= WANTED[tool] ? [spot] : [...this.picks, spot];
    this.picks = picks;
    const [a, b] = picks;
    if (!a) return;
    if (tool === 'anchor') this.#pickAnchor(a);
    else if (tool === 'point') this.#pickPoint(a);
    else if (tool === 'lens' && picks.length >= 3)
      this.calibrate('Straighten a line', { lens: { line: [...picks] } });
    else if (tool === 'straighten') this.straighten();
    else if (b && tool === 'level') {
      if (this.calibrate('Level the photo', { level: { from: a, to: b } })) this.use(null);
      else this.picks = [];
    } else if (b && (tool === 'floor' || tool === 'wheels')) {
      if (this.set('Check the level', { levelCheck: { by: tool, from: a, to: b } })) this.use('level');
      else this.picks = [];
    } else if (b && tool === 'note') {
      if (this.set('Add a dimension', { notes: [...photo.notes, { from: a, to: b, text: '' }] }))
        this.picks = [];
    } else if (b && tool === 'crop') {
      const crop = [
        Math.min(a[0], b[0]),
        Math.min(a[1], b[1]),
        Math.max(a[0], b[0]),
        Math.max(a[1], b[1]),
      ] as const;
      if (crop[2] - crop[0] > 10 && crop[3] - crop[1] > 10) this.set('Crop the photo', { crop });
      this.use(null);
    }
  }

  /** The spots that a step has: those of the document, or what has been clicked so far. */
  spots: readonly PhotoSpot[] = $derived.by(() => {
    const { photo, tool } = this;
    if (!photo || !tool) return [];
    if (this.picks.length > 0) return this.picks;
    if (tool === 'straighten') return photo.straighten?.points.map(({ at }) => at) ?? [];
    if (tool === 'lens') return photo.lens?.line ?? [];
    if (tool === 'scale' && photo.scale) return [photo.scale.from, photo.scale.to];
    if (tool === 'level' && photo.level) return [photo.level.from, photo.level.to];
    if (photo.levelCheck?.by === tool) return [photo.levelCheck.from, photo.levelCheck.to];
    if (tool === 'anchor' && photo.anchor) return [photo.anchor.at];
    return [];
  });

  /** A spot that was clicked is moved while its step goes on. */
  moveSpot(at: number, to: PhotoSpot): void {
    const moved = this.spots.with(at, to);
    if (this.picks.length > 0) {
      this.picks = moved;
      return;
    }
    const { photo, tool } = this;
    const key = `move a spot ${tool} ${at}`;
    const [a, b] = moved;
    if (!photo || !a) return;
    let change: Partial<Photo> | undefined;
    if (tool === 'straighten' && photo.straighten)
      change = {
        straighten: {
          points: photo.straighten.points.with(at, {
            at: to,
            place: photo.straighten.points[at]?.place ?? [0, 0],
          }),
        },
      };
    else if (tool === 'lens') change = { lens: { line: [...moved] } };
    else if (tool === 'scale' && photo.scale && b) change = { scale: { ...photo.scale, from: a, to: b } };
    else if (tool === 'level' && b) change = { level: { from: a, to: b } };
    else if (b && photo.levelCheck && (tool === 'floor' || tool === 'wheels'))
      change = { levelCheck: { by: tool, from: a, to: b } };
    else if (tool === 'anchor' && photo.anchor) change = { anchor: { ...photo.anchor, at: a } };
    if (change && planeOf({ ...photo, ...change }).ok) this.set('Move a spot of the photo', change, key);
  }

  setRectangle(width: number, height: number): void {
    this.rectangle = { width, height };
    this.straighten();
  }

  /** Straightens once four corners and both sides are known. */
  straighten(): void {
    const { photo, rectangle } = this;
    const kept = photo?.straighten?.points.map(({ at }) => at) ?? [];
    const corners = this.picks.length > 0 ? this.picks : kept.slice(0, 4);
    if (!photo || corners.length < 4) return;
    const size = rectangle ?? sizeOf(photo);
    if (!size) return;
    const { width, height } = size;
    const places: FlatPlace[] = [
      [0, 0],
      [width, 0],
      [width, height],
      [0, height],
    ];
    const points = corners.map((at, i) => ({ at, place: places[i] as FlatPlace }));
    if (this.calibrate('Straighten the photo', { straighten: { points } })) this.picks = [];
  }

  /** One more point of the rectangle's plane, at mm across and down from its first corner. */
  addKnown(at: PhotoSpot, place: FlatPlace): void {
    const points = this.photo?.straighten?.points;
    if (points) this.calibrate('Add a known point', { straighten: { points: [...points, { at, place }] } });
  }

  setScale(distance: number): boolean {
    const { photo } = this;
    const [from, to] =
      this.picks.length === 2 ? this.picks : photo?.scale ? [photo.scale.from, photo.scale.to] : [];
    if (!from || !to) return false;
    const taken = this.calibrate('Set the scale', { scale: { from, to, distance } });
    if (taken) this.use(null);
    else this.picks = [];
    return taken;
  }

  #pickAnchor(at: PhotoSpot): void {
    const point = this.#openLayout.points.find(({ id }) => id === this.anchorPoint);
    if (!point) return;
    const anchor = { at, point: point.id, stands: point.at };
    if (this.calibrate(`Put the photo to the ${point.name.toLowerCase()}`, { anchor })) this.use(null);
    else this.picks = [];
  }

  #pickPoint(at: PhotoSpot): void {
    const { document } = this.#openLayout;
    const { point, photo } = this;
    this.picks = [];
    if (!point || !photo || !document) return;
    const to = tracedPoint(this.photos, this.index, point, at);
    if (!to) {
      this.#openLayout.tell('This spot lies beyond the horizon of the photo.');
      return;
    }
    const marks = [...photo.marks.filter((mark) => mark.point !== point.id), { point: point.id, at }];
    const next = withPhoto(withTraced(document, point, to), this.index, { marks });
    if (!this.#change(`Trace the ${point.name.toLowerCase()}`, next)) return;
    this.#openLayout.selection = point.id;
    this.#openLayout.lastView = photo.view;
    this.pointId = this.#following(point)?.id ?? '';
  }

  /** The next point down the list that this photo does not show yet. */
  #following(point: Hardpoint): Hardpoint | undefined {
    const from = this.points.findIndex(({ id }) => id === point.id);
    const turned = [...this.points.slice(from + 1), ...this.points.slice(0, from)];
    return turned.find((each) => !this.isMarked(each));
  }

  /** What is outlined as it stands before it is traced, and how deep it lies in the photo. */
  get outlineAt(): number {
    const { document } = this.#openLayout;
    if (!document || !this.photo) return 0;
    return (
      this.outlineDepth ?? bodyDepth(bodyToTrace(document, this.outlined, this.existing), this.photo.view)
    );
  }

  outline(what: Outlined, existing: Existing): void {
    this.outlined = what;
    this.existing = existing;
    this.outlineDepth = null;
  }

  /** Takes the last spot of an outline back. */
  takeBack(): void {
    this.picks = this.picks.slice(0, -1);
  }

  get outlineWhole(): boolean {
    return this.tool === 'outline' && this.picks.length >= SPOTS_LEAST;
  }

  /** The clicked outline becomes a rail or an obstacle; one step of undo. */
  finishOutline(): boolean {
    const { document } = this.#openLayout;
    const { photo, prepared } = this;
    if (!document || !photo || !prepared?.ok || !this.outlineWhole) return false;
    const { existing, outlined } = this;
    const own =
      existing === undefined ? undefined : depthAlong(bodyToTrace(document, outlined, existing), photo.view);
    const points = placedSpots(photo, prepared.value, this.picks, this.outlineAt, own);
    if (!points) {
      this.#openLayout.tell('One of these spots lies beyond the horizon of the photo.');
      return false;
    }
    const next = withOutlined(document, outlined, existing, points, photo.view);
    if (!this.#change(`Trace the ${next.name.toLowerCase()}`, next.document)) return false;
    this.#openLayout.selection = next.id;
    this.#openLayout.lastView = photo.view;
    this.picks = [];
    this.outline(this.outlined, undefined);
    return true;
  }

  skip(): void {
    if (this.point) this.pointId = this.#following(this.point)?.id ?? '';
  }
}

/** Whether a photo lies elsewhere in one plane than in another, by more than a hand's breadth. */
function movedBetween(a: PhotoPlane, b: PhotoPlane, [width, height]: PhotoSpot): boolean {
  return [
    [0, 0],
    [width, height],
  ].some((corner) => {
    const [p, q] = [a.toPlace(corner as unknown as PhotoSpot), b.toPlace(corner as unknown as PhotoSpot)];
    return !p || !q || Math.hypot(p[0] - q[0], p[1] - q[1]) > 100;
  });
}

/** The sides of a photo's known rectangle, mm. */
export function sizeOf(photo: Photo): RectangleSize | undefined {
  const far = photo.straighten?.points[2]?.place;
  return far && { width: far[0], height: far[1] };
}
