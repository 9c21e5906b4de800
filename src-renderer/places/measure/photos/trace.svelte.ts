import { VIEW_AXES } from '../../../../shared-math/drawing/index.ts';
import type { Hardpoint, LayoutDocument, Photo } from '../../../../shared-math/layout/index.ts';
import type { Outcome } from '../../../../shared-math/outcome.ts';
import { shownText } from '../../../../shared-math/outside/index.ts';
import type {
  FlatPlace,
  Observed,
  PhotoPlane,
  PhotoSpot,
  SightGap,
  TraceFailure,
} from '../../../../shared-math/trace/index.ts';
import { distanceQuestion, planeOf, sightGaps } from '../../../../shared-math/trace/index.ts';
import type { Measuring } from '../../../document/measuring.svelte.ts';
import type { OpenLayout } from '../../../document/open-layout.svelte.ts';
import type { OriginalsLine } from '../../../pictures/index.ts';
import { isGiven, isKnown, otherSideOf } from './asked-points.ts';
import { likelyView, pictureName, takeIn } from './incoming-picture.ts';
import { PhotoPictures } from './photo-pictures.svelte.ts';
import { loosePlane, tracedPoint, withLooseTraced, withPhoto, withTraced } from './photo-planes.ts';
import { spotsOf, type Tool, toolOf, WANTED, withSpots } from './photo-tools.ts';
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

/** Corners of a rectangle that has not been given its sides yet, mm. */
export interface RectangleSize {
  readonly width: number;
  readonly height: number;
}

/** Tracing over the open layout's photos: which one is worked at, what a click means, and what follows from it. */
export class Trace {
  readonly #openLayout: OpenLayout;
  readonly #measuring: Measuring;
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
  /** The file that is being read, for as long as it takes. */
  reading = $state('');
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
  /** What the photo may show of the other side besides; nobody has to click it. */
  otherSide: readonly Hardpoint[] = $derived.by(() => otherSideOf(this.photo, this.#openLayout.points));
  /** How far the sights of points that two photos show miss each other. */
  gaps: readonly SightGap[] = $derived(sightGaps(this.photos));
  point: Hardpoint | undefined = $derived(
    [...this.points, ...this.otherSide].find(({ id }) => id === this.pointId) ?? this.#firstOpen(),
  );

  constructor(
    openLayout: OpenLayout,
    measuring: Measuring,
    start: () => PhotoWorkerLine,
    startOriginals: () => OriginalsLine,
  ) {
    this.#openLayout = openLayout;
    this.#measuring = measuring;
    this.pictures = new PhotoPictures(start, startOriginals);
  }

  /** The plane in which a photo is shown. */
  planeShown(photo: Photo): PhotoPlane {
    const asTaken = this.open && photo === this.photo && (this.tool === 'straighten' || this.tool === 'lens');
    const plane = asTaken ? undefined : planeOf(photo);
    return plane?.ok ? plane.value : loosePlane(photo);
  }

  /** Whether a point need not be clicked on this photo: it places the photo, or a tape has it. */
  isGiven(point: Hardpoint): boolean {
    const { document } = this.#openLayout;
    return this.photo !== undefined && document !== null && isGiven(document, this.photo, point);
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
    return this.points.find((point) => !this.isMarked(point) && !this.isGiven(point));
  }

  // Bringing in ------------------------------------------------------------------------------------------------

  /** Brings photos in one after another; each that is refused is reported by its name and the others still come. */
  async bring(files: Iterable<File>): Promise<void> {
    for (const file of files) {
      this.reading = pictureName(file);
      const incoming = await takeIn(file, this.pictures);
      this.reading = '';
      if (!incoming.ok) {
        this.#openLayout.tell(incoming.failure);
        continue;
      }
      const document = this.#openLayout.document;
      if (!document) return;
      const { name } = incoming.value;
      const view = likelyView(name, this.photos);
      const photo: Photo = {
        ...incoming.value,
        view,
        opacity: 0.8,
        shown: true,
        marks: [],
        notes: [],
        lengths: [],
      };
      if (this.#change(`Add ${shownText(name)}`, { ...document, photos: [...document.photos, photo] })) {
        this.choose(this.photos.length - 1);
        this.#openLayout.enlarge(view);
        this.look();
      }
    }
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

  /**
   * Sets a step of the calibration if the photo can still be prepared with it; else tells why and keeps what stood. What was
   * traced by the photo goes along, in the same step of undo.
   */
  calibrate(label: string, change: Partial<Photo>): boolean {
    const { document } = this.#openLayout;
    if (!this.photo || !document) return false;
    const changed = { ...this.photo, ...change };
    const plane = planeOf(changed);
    if (!plane.ok) {
      const meant = distanceQuestion(changed)?.meant;
      const asks = meant === undefined ? '' : ` Did you mean ${this.#openLayout.length(meant)}?`;
      this.#openLayout.tell(traceTrouble(plane.failure) + asks);
      return false;
    }
    return this.#change(label, this.#traced(withPhoto(document, this.index, change)));
  }

  /** The document with what its photos show where they show it now. */
  #traced(document: LayoutDocument, dragging = false): LayoutDocument {
    const loose = withLooseTraced(document, this.index);
    return this.#measuring.withPhotosAdjusted(loose, { dragging });
  }

  /** Lays the photo over the others of its view, or no longer. */
  putInFront(front: boolean): void {
    const { document } = this.#openLayout;
    const photo = this.photo;
    if (!document || !photo) return;
    const photos = document.photos.map((each) => {
      if (each.view !== photo.view) return each;
      const { front: _, ...behind } = each;
      return each === photo && front ? { ...behind, front: true as const } : behind;
    });
    this.#change(front ? `Put ${shownText(photo.name)} in front` : 'Lay the photos as they came', {
      ...document,
      photos,
    });
  }

  takeAway(): void {
    const { document } = this.#openLayout;
    const photo = this.photo;
    if (!document || !photo) return;
    this.#change(`Remove ${shownText(photo.name)} from the board`, {
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
    return spotsOf(photo, tool);
  });

  /** A spot that was clicked is moved while its step goes on. */
  moveSpot(at: number, to: PhotoSpot): void {
    const moved = this.spots.with(at, to);
    if (this.picks.length > 0) {
      this.picks = moved;
      return;
    }
    const { photo, tool } = this;
    const { document } = this.#openLayout;
    const change = photo && tool && withSpots(photo, tool, moved, at);
    if (!document || !change || !planeOf({ ...photo, ...change }).ok) return;
    const next = this.#traced(withPhoto(document, this.index, change), true);
    this.#change('Move a spot of the photo', next, `move a spot ${tool} ${at}`);
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
    const before = photo.marks.find((mark) => mark.point === point.id);
    const depth = before?.depth ?? this.#typedDepth(photo, point);
    const mark = { point: point.id, at, ...(depth === undefined ? {} : { depth }) };
    const marks = [...photo.marks.filter((each) => each !== before), mark];
    // Where the sights of two photos meet is where the adjustment begins.
    const stands = isKnown(document, point) ? document : withTraced(document, point, to);
    const begun = withPhoto(stands, this.index, { marks });
    const next = this.#measuring.withPhotosAdjusted(begun);
    if (!this.#change(`Trace the ${point.name.toLowerCase()}`, next)) return;
    this.#openLayout.selection = point.id;
    this.#openLayout.lastView = photo.view;
    this.pointId = this.#following(point)?.id ?? '';
  }

  /** A depth along the photo's view that was typed before the point was clicked: it stands so. */
  readonly #depths = new Map<string, number>();
  #typedDepth({ hash, view }: Photo, { id }: Hardpoint): number | undefined {
    return this.#depths.get(`${hash} ${view} ${id}`);
  }

  /** Takes how deep a point stands along the view, mm. Tells whether it was taken. */
  setDepth(point: Hardpoint, depth: number): boolean {
    const { document } = this.#openLayout;
    const { photo } = this;
    if (!document || !photo) return false;
    const { axis } = VIEW_AXES[photo.view].toward;
    const to: [number, number, number] = [...point.at];
    to[axis] = depth;
    this.#depths.set(`${photo.hash} ${photo.view} ${point.id}`, depth);
    const marks = photo.marks.map((mark) => (mark.point === point.id ? { ...mark, depth } : mark));
    const next = withPhoto(withTraced(document, point, to), this.index, { marks });
    return this.#change(`Set the depth of the ${point.name.toLowerCase()}`, this.#traced(next));
  }

  /** Goes to what was observed on a photo: the photo, and the step in which it is clicked or typed. */
  goTo(observed: Observed): void {
    this.choose(observed.photo);
    this.use(toolOf(observed, this.photo?.straighten !== undefined));
    if (this.tool !== 'point' || !('point' in observed)) return;
    this.pointId = observed.point;
    this.#openLayout.selection = observed.point;
  }

  /** The next point down the list that this photo does not show yet. */
  #following(point: Hardpoint): Hardpoint | undefined {
    const from = this.points.findIndex(({ id }) => id === point.id);
    const turned = [...this.points.slice(from + 1), ...this.points.slice(0, from)];
    return turned.find((each) => !this.isMarked(each) && !this.isGiven(each));
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

export type { Tool } from './photo-tools.ts';

/** The sides of a photo's known rectangle, mm. */
export function sizeOf(photo: Photo): RectangleSize | undefined {
  const far = photo.straighten?.points[2]?.place;
  return far && { width: far[0], height: far[1] };
}
