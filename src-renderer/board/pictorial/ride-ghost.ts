import { type Drawing, placeAtRide, roomFor } from '../../../shared-math/drawing/index.ts';
import { Pictorial, type Turn } from '../../../shared-math/pictorial/index.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import type { Contribution } from '../contributor.ts';
import { paintStrokes } from './paint-strokes.ts';
import type { PictorialInks } from './pictorial-inks.ts';

/** How the picture looks at the car. */
export interface Sight {
  readonly turn: Turn;
  /** px of the canvas: its size, and where the car's origin is seen. */
  readonly width: number;
  readonly height: number;
  readonly x: number;
  readonly y: number;
  /** px of the canvas for a mm of the picture. */
  readonly scale: number;
  /** mm of a line of weight 1, and that a round outline may be off. */
  readonly px: number;
  readonly off: number;
  readonly inks: Partial<PictorialInks>;
}

/** Whether the car at ride height stands pale behind the one that is shown: over a road that goes on its own way, and nothing does. */
export function hasRideGhost({ carPose }: OpenLayout, contributions: readonly Contribution[]): boolean {
  return !carPose.atRide && !contributions.some((each) => each.ground?.() !== undefined);
}

const NOTHING: ReadonlySet<string> = new Set();

/** Whether two sights show the same, place by place. */
function isAlike(a: Sight, b: Sight): boolean {
  return (
    a.turn.azimuth === b.turn.azimuth &&
    a.turn.elevation === b.turn.elevation &&
    a.width === b.width &&
    a.height === b.height &&
    a.x === b.x &&
    a.y === b.y &&
    a.scale === b.scale &&
    a.px === b.px &&
    a.off === b.off &&
    a.inks === b.inks
  );
}

/** Milliseconds without a turn, by a key or on the way back to square, after which it shows again. */
const RESTS = 120;

/**
 * The car as it stood at ride height, pale, on a canvas under that of one that has moved. It is painted once and stays there while the
 * pose moves, so that it costs a frame nothing; while the picture is turned it is hidden, and it comes back when that rests.
 */
export class RideGhost {
  readonly #canvas: HTMLCanvasElement;
  readonly #again: () => void;
  #pictorial: Pictorial | undefined;
  #drawing: Drawing | undefined;
  #placed: Float64Array = new Float64Array(0);
  /** What stands on the canvas. */
  #sight: Sight | undefined;
  /** The turn that was asked for last. */
  #turn: Turn | undefined;
  #resting: ReturnType<typeof setTimeout> | undefined;

  /** `again` is to ask for another frame. */
  constructor(canvas: HTMLCanvasElement, again: () => void) {
    this.#canvas = canvas;
    this.#again = again;
    this.hide();
  }

  /** Shows it, on a screen of so many px of the canvas for each of the page. */
  show(drawing: Drawing, sight: Sight, ratio: number): void {
    const { turn } = sight;
    const turned =
      this.#turn && (turn.azimuth !== this.#turn.azimuth || turn.elevation !== this.#turn.elevation);
    this.#turn = turn;
    if (drawing === this.#drawing && this.#sight && isAlike(this.#sight, sight)) {
      this.#stop();
      this.#canvas.hidden = false;
      return;
    }
    if (turned) {
      this.#stop();
      this.#canvas.hidden = true;
      this.#resting = setTimeout(() => {
        this.#resting = undefined;
        this.#again();
      }, RESTS);
    }
    if (this.#resting !== undefined) return;
    this.#paint(drawing, sight);
    this.#canvas.style.width = `${sight.width / ratio}px`;
    this.#canvas.style.height = `${sight.height / ratio}px`;
    this.#canvas.hidden = false;
  }

  hide(): void {
    this.#stop();
    this.#turn = undefined;
    this.#canvas.hidden = true;
  }

  #stop(): void {
    clearTimeout(this.#resting);
    this.#resting = undefined;
  }

  #paint(drawing: Drawing, sight: Sight): void {
    const own = this.#canvas.getContext('2d');
    if (!own) return;
    const { width, height, scale } = sight;
    // A canvas that is given a size is bare.
    this.#canvas.width = width;
    this.#canvas.height = height;
    if (drawing !== this.#drawing) {
      if (this.#placed.length !== 3 * drawing.points.length) this.#placed = roomFor(drawing);
      placeAtRide(drawing, this.#placed);
      if (!this.#pictorial?.take(drawing)) this.#pictorial = new Pictorial(drawing);
      this.#drawing = drawing;
    }
    this.#sight = sight;
    if (!this.#pictorial) return;
    own.setTransform(scale, 0, 0, scale, sight.x, sight.y);
    const strokes = this.#pictorial.draw(this.#placed, sight.turn, [], sight.off);
    paintStrokes(own, strokes, drawing, sight.inks, sight.px, NOTHING, []);
  }
}
