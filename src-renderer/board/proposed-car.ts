import { Group } from 'konva/lib/Group.js';
import {
  drawLayout,
  type Eyes,
  placeInPose,
  roomFor,
  VIEWS,
  type View,
} from '../../shared-math/drawing/index.ts';
import type { FrontEnd, FrontEndState } from '../../shared-math/linkage/index.ts';
import { CarNodes, type DrawnWith } from './car-nodes.ts';
import { carInks, type Palette, type RoleInks } from './inks.ts';

/** px of line and gap. */
const DASH = [6, 3.5];
const CLEAR = 'rgb(0 0 0 / 0%)';

/** As a car of thin broken lines in the colour of what moves, with nothing covered. */
function proposedInks(palette: Palette): RoleInks {
  const inks = carInks(palette);
  return Object.fromEntries(
    Object.entries(inks).map(([role, ink]) => [
      role,
      {
        ...ink,
        line: palette.steel,
        fineLine: CLEAR,
        width: role === 'steering' || role === 'box' ? 1.6 : 1,
        tint: CLEAR,
        cover: CLEAR,
      },
    ]),
  ) as RoleInks;
}

/** The car over a map: its lines as ever, what it covers still to be seen. */
export function seeThroughInks(palette: Palette): RoleInks {
  const faint = (fill: string) => (/^#[0-9a-f]{6}$/i.test(fill) ? `${fill}59` : fill);
  return Object.fromEntries(
    Object.entries(carInks(palette)).map(([role, ink]) => [
      role,
      { ...ink, tint: faint(ink.tint), cover: faint(ink.cover) },
    ]),
  ) as RoleInks;
}

/** The steering and the links of a proposed layout, over the car as it stands. */
export class ProposedCar {
  readonly #views: Record<View, Group>;
  readonly #with: DrawnWith;
  #groups: Record<View, Group> | undefined;
  #nodes: CarNodes | undefined;
  #of: FrontEnd | undefined;

  constructor(views: Record<View, Group>, palette: Palette) {
    this.#views = views;
    this.#with = {
      inks: proposedInks(palette),
      scale: 1,
      weight: palette.weight,
      stressed: new Set(),
      dash: DASH,
    };
  }

  get shown(): boolean {
    return this.#nodes !== undefined;
  }

  /** px per mm. */
  set scale(scale: number) {
    this.#with.scale = scale;
  }

  ink(palette: Palette): void {
    Object.assign(this.#with, { inks: proposedInks(palette), weight: palette.weight });
  }

  /** Shows a layout in a pose, or none; one that does not reach its pose is not drawn. `links` where they moved too. */
  show(frontEnd: FrontEnd | undefined, state: FrontEndState | undefined, eyes: Eyes, links = false): void {
    if (this.#of && this.#of !== frontEnd) {
      this.#remove();
      this.#views.side.getLayer()?.batchDraw();
    }
    if (!frontEnd || state?.status !== 'ok') {
      if (!this.#nodes) return;
      this.#remove();
    } else {
      const drawing = drawLayout(frontEnd.layout);
      const placed = roomFor(drawing);
      placeInPose(drawing, frontEnd, state, placed);
      if (!this.#nodes) {
        const groups = { side: new Group(), top: new Group(), front: new Group() };
        for (const view of VIEWS) this.#views[view].add(groups[view]);
        this.#groups = groups;
        this.#nodes = new CarNodes(
          groups,
          this.#with,
          links ? ['link', 'box', 'steering'] : ['box', 'steering'],
        );
        this.#nodes.seeFrom(eyes);
        this.#nodes.build(drawing, placed);
        this.#of = frontEnd;
      } else {
        this.#nodes.seeFrom(eyes);
        this.#nodes.update(drawing, placed);
      }
    }
    this.#views.side.getLayer()?.batchDraw();
  }

  #remove(): void {
    if (this.#groups) for (const view of VIEWS) this.#groups[view].destroy();
    this.#groups = undefined;
    this.#nodes = undefined;
    this.#of = undefined;
  }
}
