import type { Group } from 'konva/lib/Group.js';
import { Shape as Node } from 'konva/lib/Shape.js';
import type { View } from '../../shared-math/drawing/index.ts';
import { mixed, type Palette } from './inks.ts';

/** The road under the car, in the ground's axes; mm. */
export interface RoadPicture {
  /** Heights along the car under the left and the right wheel, from the place `from` (x) backward by `step`. */
  readonly from: number;
  readonly step: number;
  readonly left: Float64Array;
  readonly right: Float64Array;
  /** Across the car: where each wheel runs (y), how wide its lane is drawn, and how high the road is under it. */
  readonly lanes: readonly { readonly y: number; readonly half: number; readonly height: number }[];
  /** Where marks stand along the car, x. */
  readonly marks: readonly number[];
}

/** mm that the road's section is drawn thick, and that the front view shows beside the wheels. */
const DEPTH = 70;
const BESIDE = 120;
/** Screen px of a dash and a gap of the far wheel's road. */
const FAR_DASH = [6, 4];
/** Screen px of a mark. */
const MARK = 7;

/** The line across the car: level in each lane, falling to the plain road between them and beside them. */
export function sectionAcross(lanes: RoadPicture['lanes']): [across: number, height: number][] {
  const line: [number, number][] = [];
  const sorted = [...lanes].sort((a, b) => a.y - b.y);
  sorted.forEach(({ y, half, height }, i) => {
    const next = sorted[i + 1];
    const even = next !== undefined && next.height === height;
    if (i === 0) line.push([y - half - BESIDE, height]);
    line.push([y - half, height], [y + half, height]);
    // A step that one wheel alone meets stands beside the other's lane.
    if (next && !even) {
      const step = Math.abs(height) > Math.abs(next.height) ? y + half : next.y - next.half;
      line.push([step, height], [step, next.height]);
    }
    if (!next) line.push([y + half + BESIDE, height]);
  });
  return line;
}

/** The road as a section with a pale body below its line, under the car in the side and the front view. */
export class RoadGround {
  readonly #side: Node;
  readonly #front: Node;
  #palette: Palette;
  #picture: RoadPicture | undefined;
  /** px per mm. */
  scale = 1;

  constructor(views: Record<View, Group>, palette: Palette) {
    this.#palette = palette;
    const plain = { listening: false, perfectDrawEnabled: false, visible: false };
    this.#side = new Node({ ...plain, sceneFunc: (context) => this.#paintSide(context._context) });
    this.#front = new Node({ ...plain, sceneFunc: (context) => this.#paintFront(context._context) });
    views.side.add(this.#side);
    views.front.add(this.#front);
  }

  ink(palette: Palette): void {
    this.#palette = palette;
  }

  /** Shows this road, or none. */
  show(picture: RoadPicture | undefined): void {
    if (!picture && !this.#picture) return;
    this.#picture = picture;
    for (const node of [this.#side, this.#front]) node.visible(picture !== undefined);
    this.#side.getLayer()?.batchDraw();
  }

  #paintSide(context: CanvasRenderingContext2D): void {
    const picture = this.#picture;
    if (!picture) return;
    const { from, step, left, right, marks } = picture;
    // The front of the car is to the left: x runs to the left on the sheet.
    const line = (heights: Float64Array): [number, number][] =>
      Array.from(heights, (height, i) => [-(from - i * step), height]);
    const near = line(left);
    this.#body(context, near);
    const { inkSoft, paper, weight } = this.#palette;
    const px = weight / this.scale;
    if (left.some((height, i) => height !== right[i])) {
      context.setLineDash(FAR_DASH.map((length) => length * px));
      this.#trace(context, line(right));
      context.lineWidth = 1 * px;
      context.strokeStyle = inkSoft;
      context.stroke();
      context.setLineDash([]);
    }
    this.#edge(context, near);
    context.beginPath();
    for (const x of marks) {
      const at = Math.round((from - x) / step);
      const height = left[at];
      if (height === undefined) continue;
      context.moveTo(-x, -height + 2 * px);
      context.lineTo(-x, -height + (2 + MARK) * px);
    }
    context.lineWidth = 1.2 * px;
    context.strokeStyle = mixed(inkSoft, paper, 0.3);
    context.stroke();
  }

  #paintFront(context: CanvasRenderingContext2D): void {
    if (!this.#picture) return;
    const line = sectionAcross(this.#picture.lanes);
    this.#body(context, line);
    this.#edge(context, line);
  }

  #trace(context: CanvasRenderingContext2D, line: readonly (readonly [number, number])[]): void {
    context.beginPath();
    for (const [across, height] of line) context.lineTo(across, -height);
  }

  #body(context: CanvasRenderingContext2D, line: readonly (readonly [number, number])[]): void {
    const { shade, paper } = this.#palette;
    this.#trace(context, line);
    const [first, last] = [line[0], line.at(-1)];
    if (!first || !last) return;
    context.lineTo(last[0], DEPTH);
    context.lineTo(first[0], DEPTH);
    context.closePath();
    const fade = context.createLinearGradient(0, 0, 0, DEPTH);
    fade.addColorStop(0, mixed(shade, paper, 0));
    fade.addColorStop(1, paper);
    context.fillStyle = fade;
    context.fill();
  }

  #edge(context: CanvasRenderingContext2D, line: readonly (readonly [number, number])[]): void {
    const { ink, paper, weight } = this.#palette;
    this.#trace(context, line);
    context.lineJoin = 'round';
    context.lineWidth = (1.5 * weight) / this.scale;
    context.strokeStyle = mixed(ink, paper, 0.15);
    context.stroke();
  }
}
