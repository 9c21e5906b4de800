import { mixed, type Palette } from './inks.ts';
import type { OverlayHandle, OverlayInk, OverlayMark, OverlayPicture, OverlayText } from './overlay.ts';

export interface LineInk {
  readonly colour: string;
  readonly width: number;
  readonly dash: readonly number[];
}

export function lineInks(palette: Palette): Record<OverlayInk, LineInk> {
  const { ink, inkSoft, paper, steel, stop, good } = palette;
  return {
    guide: { colour: mixed(ink, paper, 0.45), width: 0.9, dash: [4, 4] },
    snap: { colour: mixed(steel, paper, 0.2), width: 1, dash: [] },
    asked: { colour: ink, width: 1.9, dash: [] },
    allowed: { colour: stop, width: 1.9, dash: [5, 3.5] },
    gap: { colour: stop, width: 1.1, dash: [] },
    aim: { colour: good, width: 1.4, dash: [1.5, 4] },
    short: { colour: stop, width: 1.5, dash: [] },
    clear: { colour: good, width: 1.5, dash: [] },
    doubt: { colour: ink, width: 1.3, dash: [] },
    // Long-dashed double-dotted narrow line: extreme places of what moves (ISO 128-2:2020, line type 05.1, from memory).
    room: { colour: inkSoft, width: 0.9, dash: EXTREME_DASH },
    steeringRoom: { colour: steel, width: 0.9, dash: EXTREME_DASH },
    dimension: { colour: steel, width: 1.7, dash: [] },
    steel: { colour: steel, width: 1, dash: [] },
    ink: { colour: ink, width: 1, dash: [] },
    soft: { colour: inkSoft, width: 0.8, dash: [] },
  };
}

/** px at weight 1. */
const EXTREME_DASH = [13, 2.5, 1.5, 2.5, 1.5, 2.5];
const HANDLE_RADIUS = { rest: 3.6, hover: 5, chosen: 5, twin: 4 };
const STEERING_EXTRA = 0.9;
const RING = { hover: 9, chosen: 10, twin: 8 };
const TEXT_SIZE = 12.5;
/** px of a point's number, and how far it stands off its handle. */
const NUMBER_SIZE = 10;
const NUMBER_OFF = 7;
const HALO = 4;

/** Paints an overlay's picture. Keeps nothing between paints but its inks and the size of type. */
export class OverlayPainter {
  readonly #palette: Palette;
  readonly #inks: Record<OverlayInk, LineInk>;

  constructor(palette: Palette) {
    this.#palette = palette;
    this.#inks = lineInks(palette);
  }

  fontOf(strong: boolean): string {
    return `${strong ? 600 : 400} ${TEXT_SIZE * this.#palette.weight}px ${this.#palette.text}`;
  }

  lineHeight(): number {
    return 1.3 * TEXT_SIZE * this.#palette.weight;
  }

  paint(context: CanvasRenderingContext2D, picture: OverlayPicture): void {
    const { weight } = this.#palette;
    context.lineCap = 'round';
    context.lineJoin = 'round';
    for (const { points, ink, covers } of picture.lines) {
      if (points.length < 4) continue;
      const { colour, width, dash } = this.#inks[ink];
      context.strokeStyle = colour;
      context.lineWidth = width * weight;
      context.lineCap = dash.length > 0 && ink !== 'aim' ? 'butt' : 'round';
      context.setLineDash(dash.map((length) => length * weight));
      context.beginPath();
      context.moveTo(points[0] as number, points[1] as number);
      for (let i = 2; i < points.length; i += 2) context.lineTo(points[i] as number, points[i + 1] as number);
      if (covers) {
        context.fillStyle = this.#palette.paper;
        context.fill();
      }
      if (ink === 'asked' || ink === 'allowed' || ink === 'short' || ink === 'clear' || ink === 'dimension')
        this.#halo(context, width, weight);
      context.stroke();
    }
    context.setLineDash([]);
    for (const handle of picture.handles) this.#handle(context, handle, weight);
    this.#numbers(context, picture.handles, weight);
    for (const mark of picture.marks) this.#mark(context, mark, weight);
    for (const text of picture.texts) this.#text(context, text, weight);
  }

  /** A rim of paper under a line, so that it stands off the ink it crosses. Leaves the context as it was. */
  #halo(context: CanvasRenderingContext2D, width: number, weight: number): void {
    context.save();
    context.strokeStyle = this.#palette.paper;
    context.lineWidth = (width + 2.6) * weight;
    context.setLineDash([]);
    context.globalAlpha = 0.85;
    context.stroke();
    context.restore();
  }

  #circle(context: CanvasRenderingContext2D, x: number, y: number, radius: number): void {
    context.beginPath();
    context.arc(x, y, radius, 0, 2 * Math.PI);
  }

  #handle(context: CanvasRenderingContext2D, handle: OverlayHandle, weight: number): void {
    const { steel, ink, panel } = this.#palette;
    const { x, y, state, steering, guessed, square = false } = handle;
    const lit = state !== 'rest';
    const radius = (HANDLE_RADIUS[state] + (steering && !lit ? STEERING_EXTRA : 0)) * weight;
    context.strokeStyle = lit || steering ? steel : ink;
    if (state !== 'rest') {
      context.lineWidth = (state === 'chosen' ? 1.6 : 1.1) * weight;
      this.#circle(context, x, y, RING[state] * weight);
      if (state === 'twin') context.setLineDash([2.5 * weight, 2.5 * weight]);
      context.stroke();
      context.setLineDash([]);
    }
    context.lineWidth = (steering || lit ? 1.7 : 1.2) * weight;
    // Hollow is what nobody measured or planned; a rail's or an obstacle's square tells nothing of the kind.
    const full = state === 'chosen' || (!guessed && !square);
    context.fillStyle = full ? (lit || steering ? steel : ink) : panel;
    if (square) {
      const half = 0.88 * radius;
      context.beginPath();
      context.rect(x - half, y - half, 2 * half, 2 * half);
    } else this.#circle(context, x, y, radius);
    context.fill();
    context.stroke();
  }

  /** The numbers of spots, at a corner of each, small and on a rim of paper. */
  #numbers(context: CanvasRenderingContext2D, handles: readonly OverlayHandle[], weight: number): void {
    // Once for all of them: a browser looks its styles over for every font that it is given.
    context.font = `600 ${NUMBER_SIZE * weight}px ${this.#palette.text}`;
    context.textBaseline = 'middle';
    context.lineJoin = 'round';
    context.strokeStyle = this.#palette.paper;
    context.lineWidth = HALO * weight;
    for (const { x, y, numbers, corner, state } of handles) {
      if (numbers === undefined || corner === undefined) continue;
      context.textAlign = corner[0] === 1 ? 'left' : 'right';
      const [right, up] = [x + corner[0] * NUMBER_OFF * weight, y + corner[1] * NUMBER_OFF * weight];
      context.strokeText(numbers, right, up);
      context.fillStyle = state === 'rest' ? this.#palette.ink : this.#palette.steel;
      context.fillText(numbers, right, up);
    }
  }

  #mark(context: CanvasRenderingContext2D, { x, y, kind }: OverlayMark, weight: number): void {
    const { good, stop, ink } = this.#palette;
    const arms = (radius: number, turned: boolean) => {
      context.beginPath();
      for (const quarter of [0, 1, 2, 3]) {
        const angle = (quarter * Math.PI) / 2 + (turned ? Math.PI / 4 : 0);
        context.moveTo(x, y);
        context.lineTo(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
      }
      context.stroke();
    };
    if (kind === 'aim') {
      context.strokeStyle = good;
      context.lineWidth = 1.6 * weight;
      this.#circle(context, x, y, 7 * weight);
      context.stroke();
      context.lineWidth = 1.1 * weight;
      arms(12 * weight, false);
    } else if (kind === 'cross' || kind === 'stop') {
      context.strokeStyle = stop;
      context.lineWidth = (kind === 'stop' ? 2.2 : 1.8) * weight;
      arms((kind === 'stop' ? 8.5 : 4.5) * weight, true);
    } else {
      context.fillStyle = ink;
      this.#circle(context, x, y, 1.8 * weight);
      context.fill();
    }
  }

  #text(
    context: CanvasRenderingContext2D,
    { x, y, text, ink, strong, align }: OverlayText,
    weight: number,
  ): void {
    context.font = this.fontOf(strong);
    context.textAlign = align;
    context.textBaseline = 'middle';
    context.lineJoin = 'round';
    context.strokeStyle = this.#palette.paper;
    context.lineWidth = HALO * weight;
    context.strokeText(text, x, y);
    context.fillStyle = this.#inks[ink].colour;
    context.fillText(text, x, y);
  }
}
