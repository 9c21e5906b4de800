import {
  arrangeSheet,
  type Box,
  type Drawing,
  drawLayout,
  type Eyes,
  joined,
  moved,
  placeAtRide,
  project,
  roomFor,
  type Sheet,
  seenFrom,
  stretchAt,
  structureOf,
  unproject,
  VIEW_AXES,
  VIEWS,
  type View,
  type ViewPoint,
  viewBoxes,
} from '../../shared-math/drawing/index.ts';
import type { Point } from '../../shared-math/geometry/points.ts';
import { bodyAt, type Hardpoint } from '../../shared-math/layout/index.ts';
import type { OpenLayout } from '../document/open-layout.svelte.ts';
import { type Beside, Besides } from './besides.svelte.ts';
import { bodyUnder, type DrawnBody, drawnBodies } from './body-spots.ts';
import {
  between,
  type Camera,
  fitted,
  type Margins,
  panned,
  type ScreenPoint,
  type Size,
  toScreen,
  zoomedAt,
} from './camera.ts';
import {
  type Gesture,
  type Graspable,
  type Grip,
  type Hands,
  type Hold,
  idle,
  type Signal,
} from './gestures/index.ts';
import { snapStep } from './grid.ts';
import { type Handle, HIT_RADIUS, HIT_RADIUS_TOUCH, handleAt, hasHandle } from './handles.ts';
import { PictorialView } from './pictorial/pictorial-view.svelte.ts';
import { type Guide, heldAxis, neighboursOf, type SpotNear, snapped, unsnapped } from './snapping.ts';
import { type Standing, StandingCar } from './standing-car.svelte.ts';

/** Between the views there is room for their names: px when fitted, and within what mm. */
const GAP_PX = 30;
const GAP_LEAST = 60;
const GAP_MOST = 420;
/** mm that a car may outgrow its place on the sheet before the sheet is laid out anew. */
const OUTGROWN = 50;
/** mm right and down by whose multiples the views stand apart, so that the grid runs through. */
const RASTER: Record<'in' | 'mm', ViewPoint> = { in: [609.6, 76.2], mm: [500, 50] };
/** px within which a neighbour's coordinate draws a dragged point. */
const SNAP_REACH = 5;
/** Milliseconds of a flight from one sight of the sheet to another. */
const FLIGHT = 190;

const MARGINS: Margins = { left: 34, top: 62, right: 34, bottom: 46 };
/** Every view seen square, from far off. */
const SQUARE: Eyes = {};
const NO_SHEET: Sheet = { origin: { side: [0, 0], top: [0, 0], front: [0, 0] } };

/** What the board shows of the open layout and what hands do to it; knows nothing of the canvas. */
export class BoardView implements Hands {
  readonly #openLayout: OpenLayout;
  #graspable: readonly Graspable[] = [];
  #snaps: readonly SpotNear[] = [];
  #gesture: Gesture = idle;
  #frame = 0;
  /** Whether the sheet is on its way from one sight of it to another. */
  #flying = false;
  /** Whether what is seen is still what fitting showed, so that a new size of the board fits again. */
  #asFitted = true;

  size: Size = $state.raw({ width: 0, height: 0 });
  /** px of a line of weight 1; margins grow with it. */
  weight = $state(1);
  camera: Camera = $state.raw({ scale: 0.25, x: 0, y: 0 });
  sheet: Sheet = $state.raw(NO_SHEET);
  /** What each view covered when the sheet was arranged; the view's own plane, mm. */
  boxes: Record<View, Box> = $state.raw(emptyBoxes());
  guides: readonly Guide[] = $state.raw([]);
  hoverView: View = $state('side');
  /** Views that are looked at from nearby, as a photo's camera did. */
  eyes: Eyes = $state.raw(SQUARE);
  /** Rails and obstacles as they are drawn, in the order of painting. */
  bodies: readonly DrawnBody[] = $derived.by(() => drawnBodies(this.drawing, this.eyes));
  /** Where a pointer was looked for last; nothing once it has left the board. */
  #pointed: ViewPoint | undefined;
  /** A part of one view that fitting shows when that view fills the board, right of a margin kept for what lies there. */
  focus: { readonly view: View; readonly box: Box; readonly left: number } | undefined = $state.raw();
  readonly #besides = new Besides();
  #fits = $state(0);
  /** What the hand is doing, for the cursor and for labels that keep still meanwhile. */
  doing: Gesture['name'] = $state('idle');

  drawing: Drawing = $derived.by(() => drawLayout(this.#openLayout.layout));
  structure = $derived(structureOf(this.drawing));
  /** The views that show; none where the pictorial fills the board. */
  shown: readonly View[] = $derived.by(() => {
    const { enlarged } = this.#openLayout;
    if (enlarged === null) return VIEWS;
    return enlarged === 'pictorial' ? [] : [enlarged];
  });
  handles: readonly Handle[] = $derived.by(() => this.#handles());
  /** Where the grids of neighbouring views part, mm of the sheet. */
  gridGaps = $derived.by(() => {
    const side = moved(this.boxes.side, this.sheet.origin.side);
    const top = moved(this.boxes.top, this.sheet.origin.top);
    const front = moved(this.boxes.front, this.sheet.origin.front);
    return {
      right: (front.right + Math.min(side.left, top.left)) / 2,
      down: (top.bottom + Math.min(side.top, front.top)) / 2,
    };
  });

  /** The car in space, in the sheet's free quarter. */
  readonly pictorial: PictorialView;
  readonly #standing: StandingCar;
  /** Where the drawing's points stand in the present pose. */
  get standing(): Standing {
    return this.#standing.now;
  }

  constructor(openLayout: OpenLayout) {
    this.#openLayout = openLayout;
    this.#standing = new StandingCar(openLayout, () => this.drawing);
    this.pictorial = new PictorialView(openLayout, this);
  }

  /** Gives the hand more to take hold of than points. */
  grasps(graspable: readonly Graspable[]): void {
    this.#graspable = graspable;
  }

  /** Gives dragged points more to be drawn to than one another and the grid. */
  drawsTo(snaps: readonly SpotNear[]): void {
    this.#snaps = snaps;
  }

  // Places ---------------------------------------------------------------------------------------------------

  /** px on the board of a place on the sheet. */
  onSheet(place: ViewPoint): ScreenPoint {
    return toScreen(this.camera, place);
  }

  /** px on the board of a place in a view's own plane. */
  onBoard(view: View, place: ViewPoint): ScreenPoint {
    const [right, down] = this.sheet.origin[view];
    return toScreen(this.camera, [right + place[0], down + place[1]]);
  }

  /** px on the board at which a view shows a point of the car; undefined behind the eye that looks at it. */
  spotOf(view: View, at: Point): ScreenPoint | undefined {
    const eye = this.eyes[view];
    const place = eye ? seenFrom(eye, view, at) : project(view, at);
    return place && this.onBoard(view, place);
  }

  #handles(): Handle[] {
    const handles: Handle[] = [];
    const at = new Float64Array(3);
    for (const point of [...this.#openLayout.points, ...this.#openLayout.bodyPoints]) {
      this.#openLayout.carPose.carryPoint(point.carrier, point.at, at);
      const carried: Point = [at[0] as number, at[1] as number, at[2] as number];
      for (const view of this.shown) {
        if (!hasHandle(point, view)) continue;
        const spot = this.spotOf(view, carried);
        if (spot) handles.push({ view, point, x: spot[0], y: spot[1] });
      }
    }
    return handles;
  }

  // The sheet and how it is looked at ------------------------------------------------------------------------

  /** Lays the views out anew from the car as drawn, with gaps for the zoom at which they fit. */
  arrange(): void {
    this.boxes = this.#covered();
    this.pictorial.measure();
    const raster = RASTER[this.#openLayout.settings.unit];
    let gap = GAP_LEAST;
    // The gap decides the zoom a little and the zoom the gap: twice around is near enough.
    for (let round = 0; round < 2; round += 1) {
      this.sheet = arrangeSheet(this.boxes, gap, raster);
      if (this.size.width === 0) return;
      const { scale } = this.#fittedTo(VIEWS, false);
      gap = Math.min(GAP_MOST, Math.max(GAP_LEAST, (GAP_PX * this.weight) / scale));
    }
    this.sheet = arrangeSheet(this.boxes, gap, raster);
  }

  /** What each view of the car as drawn covers, with room above for its wheels in bump. */
  #covered(): Record<View, Box> {
    const placed = roomFor(this.drawing);
    placeAtRide(this.drawing, placed);
    const { side, top, front } = viewBoxes(this.drawing, placed);
    const { bump } = this.#openLayout.layout.travel;
    return { top, side: { ...side, top: side.top - bump }, front: { ...front, top: front.top - bump } };
  }

  /** After an edit: lays the views out anew if the car has outgrown its places. */
  arrangeIfOutgrown(): void {
    const boxes = this.#covered();
    const outgrown = VIEWS.some((view) => {
      const all = joined(this.boxes[view], boxes[view]);
      const was = this.boxes[view];
      const most = Math.max(
        was.left - all.left,
        was.top - all.top,
        all.right - was.right,
        all.bottom - was.bottom,
      );
      return most > OUTGROWN;
    });
    if (outgrown) this.arrange();
  }

  /** After something was added: the same, and where the whole sheet was in sight it is again. */
  makeRoom(): void {
    const before = this.sheet;
    this.arrangeIfOutgrown();
    if (this.sheet !== before && this.#asFitted) this.fit(true);
  }

  #margins(): Margins {
    return {
      left: MARGINS.left * this.weight,
      top: MARGINS.top * this.weight,
      right: MARGINS.right * this.weight,
      bottom: MARGINS.bottom * this.weight,
    };
  }

  /** Another than before where the sheet is looked at anew: another car, another size of the board, other views. */
  get occasion(): string {
    const { variant, enlarged } = this.#openLayout;
    return `${variant?.id} ${this.structure} ${enlarged} ${this.size.width} ${this.size.height} ${this.weight} ${this.#fits}`;
  }

  /** px of the board without its margins. */
  get room(): Size {
    const { left, top, right, bottom } = this.#margins();
    return { width: this.size.width - left - right, height: this.size.height - top - bottom };
  }

  /** px per mm at which the views that show would fit by themselves. */
  scaleAlone(): number {
    return this.#fittedTo(this.shown, false).scale;
  }

  /**
   * Puts something beside a view, or takes it away. Where the whole sheet was in sight it is again if something came or went, or if
   * the `occasion` is another than before; else the sheet stays where it is looked at, as after a drag.
   */
  putBeside(id: string, beside: Beside | undefined, occasion: string): void {
    const fits = this.#besides.put(id, beside, occasion);
    if (fits && this.#asFitted) this.fit(this.#flying);
  }

  /** What a view covers on the sheet, mm, with what others than `id` put beside it. */
  coveredBeside(id: string, view: View): Box {
    return this.#besides.boxesOf([view], id).reduce(joined, moved(this.boxes[view], this.sheet.origin[view]));
  }

  #fittedTo(views: readonly View[], withBesides = true): Camera {
    if (views.length === 0) return fitted(this.pictorial.fittedBox, this.size, this.#margins());
    // Alone on the board, a view also has room below for its wheels in droop; on the sheet the margin is enough.
    const [alone, ...others] = views;
    const { focus } = this;
    if (focus && alone === focus.view && others.length === 0) {
      const { left, top, right, bottom } = MARGINS;
      const room = { left: left + focus.left, top, right, bottom };
      return fitted(moved(focus.box, this.sheet.origin[alone]), this.size, room);
    }
    const droop = others.length === 0 && alone !== 'top' ? this.#openLayout.layout.travel.rebound : 0;
    const all = [
      ...views.map((view) => moved(this.boxes[view], this.sheet.origin[view])),
      ...(withBesides ? this.#besides.boxesOf(views) : []),
    ].reduce(joined);
    const box = { ...all, bottom: all.bottom + droop };
    return fitted(box, this.size, this.#margins());
  }

  fit(fly: boolean): void {
    if (this.size.width === 0) return;
    const to = this.#fittedTo(this.shown);
    cancelAnimationFrame(this.#frame);
    this.#asFitted = true;
    this.#flying = false;
    this.#fits += 1;
    if (!fly || window.matchMedia('(prefers-reduced-motion: reduce)').matches) {
      this.camera = to;
      return;
    }
    const from = this.camera;
    let begun: number | undefined;
    this.#flying = true;
    const step = (now: number) => {
      begun ??= now;
      const share = Math.min(1, (now - begun) / FLIGHT);
      this.camera = between(from, to, 1 - (1 - share) ** 3);
      this.#flying = share < 1;
      if (this.#flying) this.#frame = requestAnimationFrame(step);
    };
    this.#frame = requestAnimationFrame(step);
  }

  resize(size: Size): void {
    const first = this.size.width === 0;
    const { width, height } = this.size;
    this.size = size;
    if (first || this.#asFitted) {
      this.arrange();
      this.fit(false);
    }
    // Keeps what was in the middle there.
    else this.camera = panned(this.camera, (size.width - width) / 2, (size.height - height) / 2);
  }

  // Hands ----------------------------------------------------------------------------------------------------

  signal(signal: Signal): void {
    this.#gesture = this.#gesture.on(signal, this);
    this.doing = this.#gesture.name;
    if (this.doing !== 'dragging' && this.guides.length > 0) this.guides = [];
  }

  /** The rail or obstacle under a place of the board, and in which view. */
  #bodyAt([x, y]: ViewPoint): { readonly id: string; readonly view: View } | undefined {
    for (const view of this.shown) {
      const at = toScreen(this.camera, this.sheet.origin[view]);
      const id = bodyUnder(this.bodies, view, [
        (x - at[0]) / this.camera.scale,
        (y - at[1]) / this.camera.scale,
      ]);
      if (id) return { id, view };
    }
    return undefined;
  }

  #heldAt(x: number, y: number): { readonly hold: Hold; readonly by: Graspable } | undefined {
    if (this.#bodyAt([x, y])) return undefined;
    for (const view of this.shown) {
      const at = toScreen(this.camera, this.sheet.origin[view]);
      const { scale } = this.camera;
      const place: ViewPoint = [(x - at[0]) / scale, (y - at[1]) / scale];
      for (const by of this.#graspable) {
        const hold = by.at(this.drawing, view, place);
        if (hold) return { hold, by };
      }
    }
    return undefined;
  }

  holdAt(x: number, y: number): Hold | undefined {
    if (this.pictorial.contains(x, y)) {
      this.pictorial.heldPoint = this.pictorial.pointAt(x, y) !== undefined;
      return this.pictorial.hold;
    }
    return this.#heldAt(x, y)?.hold;
  }

  takeHold(hold: Hold): Grip | undefined {
    return hold.take(this.camera.scale);
  }

  handleAt(x: number, y: number, kind: 'mouse' | 'pen' | 'touch'): Handle | undefined {
    this.#pointed = [x, y];
    const radius = (kind === 'touch' ? HIT_RADIUS_TOUCH : HIT_RADIUS) * this.weight;
    return handleAt(this.handles, [x, y], radius, this.#openLayout.selection);
  }

  /** The point of the pictorial that the pointer is over. */
  #pictured(): Hardpoint | undefined {
    const over = this.#pointed !== undefined && this.pictorial.contains(this.#pointed[0], this.#pointed[1]);
    if (this.pictorial.over !== over) this.pictorial.over = over;
    return over && this.#pointed ? this.pictorial.pointAt(this.#pointed[0], this.#pointed[1]) : undefined;
  }

  hover(handle: Handle | undefined): void {
    const seen = handle ? undefined : this.#pictured();
    const body = handle || seen || !this.#pointed ? undefined : this.#bodyAt(this.#pointed);
    const id = handle?.point.id ?? seen?.id ?? body?.id ?? null;
    if (this.#openLayout.hover !== id) this.#openLayout.hover = id;
    const view = handle?.view ?? body?.view;
    if (view && this.hoverView !== view) this.hoverView = view;
    const free = !handle && !body && !this.pictorial.over && this.#pointed !== undefined;
    const offered = free && this.#pointed ? this.#heldAt(this.#pointed[0], this.#pointed[1]) : undefined;
    for (const each of this.#graspable) each.offer(offered?.by === each ? offered.hold : undefined);
  }

  /** The pointer is off the board. */
  leave(): void {
    this.#pointed = undefined;
    this.hover(undefined);
  }

  select(handle: Handle | undefined): void {
    const seen = handle ? undefined : this.#pictured();
    const body = handle || seen || !this.#pointed ? undefined : this.#bodyAt(this.#pointed);
    this.#openLayout.selection = handle?.point.id ?? seen?.id ?? body?.id ?? null;
    const view = handle?.view ?? body?.view;
    if (view) this.#openLayout.lastView = view;
  }

  panBy(right: number, down: number): void {
    this.#looked(panned(this.camera, right, down));
  }

  zoomAt(x: number, y: number, factor: number): void {
    this.#looked(zoomedAt(this.camera, [x, y], factor));
  }

  #looked(camera: Camera): void {
    cancelAnimationFrame(this.#frame);
    this.#flying = false;
    this.#asFitted = false;
    this.camera = camera;
  }

  takeUp({ point, view }: Handle): Grip | undefined {
    const before = this.#openLayout.document;
    if (!before) return undefined;
    const edit = this.#openLayout.edits.beginDrag(
      `Move ${point.name.charAt(0).toLowerCase()}${point.name.slice(1)}`,
    );
    const eye = this.eyes[view];
    const stretch = (eye && stretchAt(eye, view, point.at[VIEW_AXES[view].toward.axis])) ?? 1;
    const scale = this.camera.scale * stretch;
    // A rail or an obstacle is drawn to hardpoints and to its like; hardpoints are not drawn to an engine's corners.
    const own = bodyAt(before, point.id)?.id;
    const neighbours = own
      ? [
          ...this.#openLayout.points,
          ...this.#openLayout.bodyPoints.filter(
            ({ id }) => own.startsWith('rails') || !id.startsWith(`${own}.`),
          ),
        ].filter(({ id }) => id !== point.id)
      : neighboursOf(this.#openLayout.points, point);
    return {
      moveTo: (right, down, keys) => {
        const { at, guides } = this.#destination(point, view, right / scale, down / scale, keys, neighbours);
        if (edit.move(this.#openLayout.moved(before, point.id, at))) this.guides = guides;
      },
      putDown: () => {
        edit.commit();
        this.arrangeIfOutgrown();
      },
      giveBack: () => edit.cancel(),
    };
  }

  /** Where a point dragged by mm on the sheet goes: in the two axes of its view, drawn to grid and neighbours. */
  #destination(
    point: Hardpoint,
    view: View,
    right: number,
    down: number,
    keys: { readonly shift: boolean; readonly alt: boolean },
    neighbours: readonly Hardpoint[],
  ) {
    const start = project(view, point.at);
    const held = keys.shift ? [heldAxis(view, right, down)] : [];
    const free = unproject(view, [start[0] + right, start[1] + down], point.at);
    const to: Point = [
      held.includes(0) ? point.at[0] : free[0],
      held.includes(1) ? point.at[1] : free[1],
      held.includes(2) ? point.at[2] : free[2],
    ];
    // What slides on an axis meets no grid and no neighbour there.
    if (keys.alt || point.slides || !this.#openLayout.settings.snap) return unsnapped(to, view, held);
    const reach = (SNAP_REACH * this.weight) / this.camera.scale;
    // What is drawn under the view goes before points and grid, which know nothing of it; not where Shift holds an axis.
    const place = project(view, to);
    for (const snaps of held.length === 0 ? this.#snaps : []) {
      const spot = snaps(view, place, reach);
      if (spot) return unsnapped(unproject(view, spot, to), view);
    }
    const step = snapStep(this.#openLayout.settings.unit, this.camera.scale / this.weight);
    return snapped(to, view, { step, reach, neighbours }, held);
  }
}

function emptyBoxes(): Record<View, Box> {
  const nothing = { left: 0, top: 0, right: 1, bottom: 1 };
  return { side: nothing, top: nothing, front: nothing };
}
