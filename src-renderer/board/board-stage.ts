import { Konva } from 'konva/lib/Global.js';
import { Group } from 'konva/lib/Group.js';
import { Layer } from 'konva/lib/Layer.js';
import { Shape as Node } from 'konva/lib/Shape.js';
import { Stage } from 'konva/lib/Stage.js';
import { type Box, type Drawing, type Sheet, VIEWS, type View } from '../../shared-math/drawing/index.ts';
import type { Camera, Size } from './camera.ts';
import { addChanged, CarNodes, type ChangedBoxes, type DrawnWith } from './car-nodes.ts';
import { type GridPicture, paintGrid } from './grid-painter.ts';
import { carInks, ghostInks, type Palette } from './inks.ts';
import { OtherCars } from './other-cars.ts';
import { EMPTY_PICTURE, type OverlayPicture } from './overlay.ts';
import { OverlayPainter } from './overlay-painter.ts';
import { ProposedCar, seeThroughInks } from './proposed-car.ts';
import { RoadGround, type RoadPicture } from './road-ground.ts';

const GROUND_ONLY: ReadonlySet<string> = new Set(['ground']);
const NOTHING: ReadonlySet<string> = new Set();
/** px at weight 1 that a line of the car reaches beyond its outline at most: half the heaviest, drawn heavier, and its soft edge. */
const LINE_REACH = 3;

interface World {
  readonly layer: Layer;
  readonly world: Group;
  readonly views: Record<View, Group>;
}

function createWorld(): World {
  const layer = new Layer({ listening: false });
  const world = new Group({ listening: false });
  const views = { side: new Group(), top: new Group(), front: new Group() };
  for (const view of VIEWS) world.add(views[view]);
  layer.add(world);
  return { layer, world, views };
}

/**
 * The canvas: the sheet below, then the car as it stood, other variants, the car as it stands, and what lies over all.
 * It is given what to show and answers nothing; pointers are read beside it.
 */
export class BoardStage {
  readonly #stage: Stage;
  readonly #sheet = new Layer({ listening: false });
  readonly #ghost = createWorld();
  readonly #others = createWorld();
  readonly #car = createWorld();
  readonly #over = new Layer({ listening: false });
  readonly #ghostWith: DrawnWith;
  readonly #carWith: DrawnWith;
  #palette: Palette;
  #painter: OverlayPainter;
  readonly ghostNodes: CarNodes;
  readonly carNodes: CarNodes;
  readonly road: RoadGround;
  readonly otherCars: OtherCars;
  readonly proposed: ProposedCar;
  #under: ((context: CanvasRenderingContext2D, palette: Palette) => void) | undefined;
  #grid: GridPicture | undefined;
  #picture: OverlayPicture = EMPTY_PICTURE;
  #camera: Camera | undefined;
  #sheetPlan: Sheet | undefined;
  #shown: readonly View[] = [];
  /** Of the car, since it was drawn last. */
  #changed: ChangedBoxes = {};
  #frame = 0;
  readonly #measured = new Map<string, { width: number; height: number }>();

  constructor(container: HTMLDivElement, palette: Palette) {
    this.#palette = palette;
    this.#stage = new Stage({ container, width: 1, height: 1, listening: false });
    this.#carWith = { inks: carInks(palette), scale: 1, weight: palette.weight, stressed: new Set() };
    this.#ghostWith = { inks: ghostInks(palette), scale: 1, weight: palette.weight, stressed: new Set() };
    this.#painter = new OverlayPainter(palette);
    this.ghostNodes = new CarNodes(this.#ghost.views, this.#ghostWith, [
      'ground',
      'tyre',
      'axle',
      'link',
      'spring',
      'steering',
    ]);
    this.carNodes = new CarNodes(
      this.#car.views,
      this.#carWith,
      ['ground', 'tyre', 'frame', 'obstacle', 'axle', 'link', 'spring', 'box', 'steering'],
      (changed) => this.#redrawCar(changed),
    );
    this.road = new RoadGround(this.#others.views, palette);
    this.otherCars = new OtherCars(this.#others.views, palette);
    this.proposed = new ProposedCar(this.#car.views, palette);
    const plain = { listening: false, perfectDrawEnabled: false };
    this.#sheet.add(
      new Node({
        ...plain,
        sceneFunc: (context) => {
          if (this.#grid) paintGrid(context._context, this.#grid, this.#palette);
        },
      }),
      new Node({
        ...plain,
        sceneFunc: (context) => this.#under?.(context._context, this.#palette),
      }),
    );
    this.#over.add(
      new Node({ ...plain, sceneFunc: (context) => this.#painter.paint(context._context, this.#picture) }),
    );
    this.#stage.add(this.#sheet, this.#ghost.layer, this.#others.layer, this.#car.layer, this.#over);
    this.#ghost.layer.visible(false);
  }

  /** Takes other colours or another weight of line. */
  ink(palette: Palette): void {
    this.#palette = palette;
    this.#painter = new OverlayPainter(palette);
    this.#measured.clear();
    const inks = this.#under ? seeThroughInks(palette) : carInks(palette);
    Object.assign(this.#carWith, { inks, weight: palette.weight });
    Object.assign(this.#ghostWith, { inks: ghostInks(palette), weight: palette.weight });
    this.road.ink(palette);
    this.otherCars.ink(palette);
    this.proposed.ink(palette);
    this.#stage.batchDraw();
  }

  /** Fits the canvas to its place; sharp on any screen, also after the window moved to another. */
  resize(size: Size): void {
    const ratio = window.devicePixelRatio || 1;
    if (Konva.pixelRatio !== ratio) {
      Konva.pixelRatio = ratio;
      for (const layer of this.#stage.getLayers()) layer.getCanvas().setPixelRatio(ratio);
    }
    this.#stage.size({ width: size.width, height: size.height });
  }

  lookFrom(camera: Camera, sheet: Sheet, shown: readonly View[]): void {
    for (const { world, views, layer } of [this.#ghost, this.#others, this.#car]) {
      world.setAttrs({ x: camera.x, y: camera.y, scaleX: camera.scale, scaleY: camera.scale });
      for (const view of VIEWS) {
        const [x, y] = sheet.origin[view];
        views[view].setAttrs({ x, y, visible: shown.includes(view) });
      }
      layer.batchDraw();
    }
    this.#camera = camera;
    this.#sheetPlan = sheet;
    this.#shown = shown;
    this.#carWith.scale = camera.scale;
    this.#ghostWith.scale = camera.scale;
    this.road.scale = camera.scale;
    this.otherCars.scale = camera.scale;
    this.proposed.scale = camera.scale;
  }

  showGrid(grid: GridPicture): void {
    this.#grid = grid;
    this.#sheet.batchDraw();
  }

  /** Lays something under the car, which can then be seen through; or takes it away. */
  showUnder(under: ((context: CanvasRenderingContext2D, palette: Palette) => void) | undefined): void {
    if (!under && !this.#under) return;
    if (!under !== !this.#under) {
      this.#carWith.inks = under ? seeThroughInks(this.#palette) : carInks(this.#palette);
      this.#car.layer.batchDraw();
    }
    this.#under = under;
    this.#sheet.batchDraw();
  }

  /**
   * Draws what has changed of the car in the next frame, and of the car only that: a dragged point moves a few parts of
   * it. Where a proposed car lies over it all of both is drawn.
   */
  #redrawCar(changed: ChangedBoxes): void {
    if (this.proposed.shown) {
      this.#car.layer.batchDraw();
      return;
    }
    for (const view of VIEWS) {
      const box = changed[view];
      if (box) addChanged(this.#changed, view, box);
    }
    if (this.#frame === 0)
      this.#frame = requestAnimationFrame(() => {
        this.#frame = 0;
        this.#paintChanged();
      });
  }

  #paintChanged(): void {
    const [camera, sheet, changed] = [this.#camera, this.#sheetPlan, this.#changed];
    this.#changed = {};
    if (!camera || !sheet) return;
    const canvas = this.#car.layer.getCanvas();
    const ratio = canvas.getPixelRatio();
    const context = this.#car.layer.getContext()._context;
    const scale = ratio * camera.scale;
    const reach = (LINE_REACH * this.#palette.weight) / camera.scale;
    /** Device px of a view's origin. */
    const origin = (view: View) => {
      const [x, y] = sheet.origin[view];
      return [ratio * (camera.x + camera.scale * x), ratio * (camera.y + camera.scale * y)] as const;
    };
    for (const view of this.#shown) {
      const box = changed[view];
      if (!box) continue;
      const [x, y] = origin(view);
      const left = Math.max(0, Math.floor(x + scale * (box.left - reach)));
      const top = Math.max(0, Math.floor(y + scale * (box.top - reach)));
      const right = Math.min(canvas.width, Math.ceil(x + scale * (box.right + reach)));
      const bottom = Math.min(canvas.height, Math.ceil(y + scale * (box.bottom + reach)));
      if (right <= left || bottom <= top) continue;
      context.save();
      context.setTransform(1, 0, 0, 1, 0, 0);
      context.beginPath();
      context.rect(left, top, right - left, bottom - top);
      context.clip();
      context.clearRect(left, top, right - left, bottom - top);
      // A part of one view may reach into another's place.
      for (const each of VIEWS) {
        if (!this.#shown.includes(each)) continue;
        const [ex, ey] = origin(each);
        context.setTransform(scale, 0, 0, scale, ex, ey);
        const within: Box = {
          left: (left - ex) / scale,
          top: (top - ey) / scale,
          right: (right - ex) / scale,
          bottom: (bottom - ey) / scale,
        };
        this.carNodes.paintWithin(context, each, within, reach);
      }
      context.restore();
    }
  }

  build(drawing: Drawing, atRide: Float64Array): void {
    this.ghostNodes.build(drawing, atRide);
    this.carNodes.build(drawing, atRide);
  }

  /** Lays a road under the car, in the place of the level ground that its tyres carry along; or takes it away. */
  showRoad(picture: RoadPicture | undefined): void {
    this.road.show(picture);
    this.carNodes.hide(picture ? GROUND_ONLY : NOTHING);
  }

  showGhost(shown: boolean): void {
    this.#ghost.layer.visible(shown);
  }

  stress(parts: ReadonlySet<string>): void {
    this.#carWith.stressed = parts;
    this.#car.layer.batchDraw();
  }

  showOver(picture: OverlayPicture): void {
    this.#picture = picture;
    this.#over.batchDraw();
  }

  /** px that a text is wide, and how high a line of it is. */
  measure(text: string, strong: boolean): { width: number; height: number } {
    const key = `${strong} ${text}`;
    const known = this.#measured.get(key);
    if (known) return known;
    const context = this.#over.getCanvas().getContext()._context;
    context.font = this.#painter.fontOf(strong);
    const size = { width: context.measureText(text).width, height: this.#painter.lineHeight() };
    // A drag writes new figures all the time; old ones are not kept for ever.
    if (this.#measured.size > 400) this.#measured.clear();
    this.#measured.set(key, size);
    return size;
  }

  /** To be called once the page's type has come: everything written is measured and drawn anew. */
  typeCame(): void {
    this.#measured.clear();
    this.#over.batchDraw();
  }

  destroy(): void {
    cancelAnimationFrame(this.#frame);
    this.#stage.destroy();
  }
}
