import { Group } from 'konva/lib/Group.js';
import {
  type Drawing,
  drawLayout,
  type Eyes,
  placeInPose,
  type Role,
  roomFor,
  VIEWS,
  type View,
} from '../../shared-math/drawing/index.ts';
import type { FrontEnd, FrontEndState } from '../../shared-math/linkage/index.ts';
import { type FramePose, placeFrame } from '../document/frame-pose.ts';
import { CarNodes, type DrawnWith } from './car-nodes.ts';
import { otherInks, type Palette } from './inks.ts';

const LINKAGE: readonly Role[] = ['link', 'spring', 'box', 'steering'];
const WHOLE: readonly Role[] = ['tyre', 'axle', ...LINKAGE];

/** A variant that stands beside the open one. */
export interface OtherCar {
  readonly id: string;
  readonly frontEnd: FrontEnd;
  readonly state: FrontEndState;
  readonly dash: readonly number[];
  /** How its frame stands over the ground. */
  readonly framePose: FramePose;
  /** With axle and wheels, which stand where they are brought and not where the open variant's do. */
  readonly whole: boolean;
}

interface Drawn {
  readonly whole: boolean;
  readonly of: FrontEnd;
  readonly drawing: Drawing;
  readonly placed: Float64Array;
  readonly groups: Record<View, Group>;
  readonly nodes: CarNodes;
  readonly drawnWith: DrawnWith;
}

/**
 * The linkages of other variants of the car, as broken lines in a quieter ink: what steers it and what holds the axle.
 * In the same pose axle and wheels are the same car's and are drawn once, by the open variant; so are rails always.
 */
export class OtherCars {
  readonly #views: Record<View, Group>;
  #palette: Palette;
  #scale = 1;
  #drawn = new Map<string, Drawn>();

  constructor(views: Record<View, Group>, palette: Palette) {
    this.#views = views;
    this.#palette = palette;
  }

  /** px per mm. */
  set scale(scale: number) {
    this.#scale = scale;
    for (const { drawnWith } of this.#drawn.values()) drawnWith.scale = scale;
  }

  ink(palette: Palette): void {
    this.#palette = palette;
    for (const { drawnWith } of this.#drawn.values())
      Object.assign(drawnWith, { inks: otherInks(palette), weight: palette.weight });
  }

  /** Shows these variants in their poses and no others; one that does not reach its pose is not drawn. */
  show(others: readonly OtherCar[], eyes: Eyes): void {
    if (others.length === 0 && this.#drawn.size === 0) return;
    for (const [id, drawn] of this.#drawn)
      if (
        !others.some((other) => other.id === id && other.frontEnd === drawn.of && other.whole === drawn.whole)
      )
        this.#remove(id, drawn);
    for (const other of others) {
      const reached = other.state.status === 'ok';
      let drawn = this.#drawn.get(other.id);
      if (!drawn && reached) drawn = this.#add(other, eyes);
      if (!drawn) continue;
      for (const view of VIEWS) drawn.groups[view].visible(reached);
      if (!reached) continue;
      placeInPose(drawn.drawing, other.frontEnd, other.state, drawn.placed);
      placeFrame(drawn.placed, other.framePose);
      drawn.nodes.seeFrom(eyes);
      drawn.nodes.update(drawn.drawing, drawn.placed);
    }
    this.#views.side.getLayer()?.batchDraw();
  }

  #add({ id, frontEnd, state, dash, framePose, whole }: OtherCar, eyes: Eyes): Drawn {
    const drawing = drawLayout(frontEnd.layout);
    const placed = roomFor(drawing);
    placeInPose(drawing, frontEnd, state, placed);
    placeFrame(placed, framePose);
    const groups = { side: new Group(), top: new Group(), front: new Group() };
    for (const view of VIEWS) this.#views[view].add(groups[view]);
    const drawnWith: DrawnWith = {
      inks: otherInks(this.#palette),
      scale: this.#scale,
      weight: this.#palette.weight,
      stressed: new Set(),
      dash,
    };
    const nodes = new CarNodes(groups, drawnWith, whole ? WHOLE : LINKAGE);
    nodes.seeFrom(eyes);
    nodes.build(drawing, placed);
    const drawn = { of: frontEnd, whole, drawing, placed, groups, nodes, drawnWith };
    this.#drawn.set(id, drawn);
    return drawn;
  }

  #remove(id: string, { groups }: Drawn): void {
    for (const view of VIEWS) groups[view].destroy();
    this.#drawn.delete(id);
  }
}
