import type { ViewPoint } from '../../../../shared-math/drawing/index.ts';
import { toDegrees } from '../../../../shared-math/units/index.ts';
import { mixed, type Palette } from '../../../board/inks.ts';
import { type MapImage, NOWHERE } from './map-image.ts';
import type { MapAnswer, MapHits } from './map-job.ts';
import { type Box, hatchRuns, type LabelSpot, labelSpots } from './map-marks.ts';
import { levelWords } from './map-scale.ts';

/** What is painted of a map. Colours by step of the scale. */
export interface MapPicture {
  readonly answer: MapAnswer;
  readonly hits: MapHits | null;
  readonly colours: readonly string[];
  /** rad: the level that is drawn heavier. */
  readonly limit: number;
}

/** px on the board of a place of the map's plane, mm. */
export type ToBoard = (across: number, up: number) => ViewPoint;

const HATCH_STEP = 7;
const LABEL_SIZE = 11;

/** Paints maps: keeps the picture of the last one, since it is painted at every move of the camera. */
export class MapPainter {
  #of: MapImage | undefined;
  #inked: readonly string[] | undefined;
  readonly #canvas = document.createElement('canvas');

  paint(context: CanvasRenderingContext2D, picture: MapPicture, toBoard: ToBoard, palette: Palette): void {
    const { window: shown } = picture.answer;
    const box = boxOf(toBoard(shown.from[0], shown.from[1]), toBoard(shown.to[0], shown.to[1]));
    context.save();
    this.#develop(picture);
    context.imageSmoothingEnabled = true;
    context.drawImage(this.#canvas, box.left, box.top, box.right - box.left, box.bottom - box.top);
    context.beginPath();
    context.rect(box.left, box.top, box.right - box.left, box.bottom - box.top);
    context.clip();
    paintHatches(context, picture, toBoard, box, palette);
    const labels = paintContours(context, picture, toBoard, box, palette);
    paintRidge(context, picture.answer, toBoard, palette);
    paintLabels(context, labels, palette);
    context.restore();
    context.strokeStyle = palette.inkSoft;
    context.lineWidth = 0.8 * palette.weight;
    context.strokeRect(box.left, box.top, box.right - box.left, box.bottom - box.top);
  }

  /** Inks the steps of the scale into pixels, where it has not been done. */
  #develop({ answer, colours }: MapPicture): void {
    const { image } = answer;
    if (this.#of === image && this.#inked === colours) return;
    const { width, height, bands } = image;
    if (this.#canvas.width !== width || this.#canvas.height !== height)
      Object.assign(this.#canvas, { width, height });
    const context = this.#canvas.getContext('2d');
    if (!context) return;
    const data = context.createImageData(width, height);
    const pixels = new Uint32Array(data.data.buffer);
    const inks = colours.map(abgr);
    for (let i = 0; i < bands.length; i += 1) {
      const band = bands[i] as number;
      pixels[i] = band === NOWHERE ? 0 : (inks[band] as number);
    }
    context.putImageData(data, 0, 0);
    this.#of = image;
    this.#inked = colours;
  }
}

/** A colour as a canvas keeps it: alpha, blue, green, red from the highest byte. */
function abgr(colour: string): number {
  const value = Number.parseInt(colour.slice(1), 16);
  return (0xff000000 | ((value & 0xff) << 16) | (value & 0xff00) | (value >> 16)) >>> 0;
}

function boxOf(a: ViewPoint, b: ViewPoint): Box {
  return {
    left: Math.min(a[0], b[0]),
    right: Math.max(a[0], b[0]),
    top: Math.min(a[1], b[1]),
    bottom: Math.max(a[1], b[1]),
  };
}

/** Lines up to the right for what is hit, both ways for what is out of reach. */
function paintHatches(
  context: CanvasRenderingContext2D,
  { answer, hits }: MapPicture,
  toBoard: ToBoard,
  box: Box,
  palette: Palette,
): void {
  const layers = [
    { of: answer.reach, both: true },
    { of: hits, both: false },
  ];
  for (const { of, both } of layers) {
    if (!of) continue;
    const runs = hatchRuns(of);
    if (runs.length === 0) continue;
    const path = new Path2D();
    for (const run of runs) {
      const { left, right, top, bottom } = boxOf(
        toBoard(run.from[0], run.from[1]),
        toBoard(run.to[0], run.to[1]),
      );
      path.rect(left, top, right - left, bottom - top);
    }
    context.save();
    context.clip(path);
    context.strokeStyle = mixed(palette.ink, palette.paper, both ? 0.35 : 0.15);
    context.lineWidth = 0.9 * palette.weight;
    context.beginPath();
    const step = HATCH_STEP * palette.weight;
    const height = box.bottom - box.top;
    for (let x = box.left - height; x < box.right + height; x += step) {
      context.moveTo(x, box.bottom);
      context.lineTo(x + height, box.top);
      if (!both) continue;
      context.moveTo(x, box.top);
      context.lineTo(x + height, box.bottom);
    }
    context.stroke();
    context.restore();
  }
}

/** Draws the lines of the scale's levels and tells where their figures can stand. */
function paintContours(
  context: CanvasRenderingContext2D,
  { answer, limit }: MapPicture,
  toBoard: ToBoard,
  box: Box,
  palette: Palette,
): LabelSpot[] {
  const lines = answer.contours.map(({ level, points }) => {
    const on: number[] = [];
    for (let i = 0; i + 1 < points.length; i += 2)
      on.push(...toBoard(points[i] as number, points[i + 1] as number));
    return { level, points: on };
  });
  context.strokeStyle = mixed(palette.ink, palette.paper, 0.3);
  context.lineJoin = 'round';
  for (const heavy of [false, true]) {
    context.lineWidth = (heavy ? 1.5 : 0.7) * palette.weight;
    context.beginPath();
    for (const { level, points } of lines) {
      if (Math.abs(level - limit) < 1e-9 !== heavy) continue;
      context.moveTo(points[0] as number, points[1] as number);
      for (let i = 2; i < points.length; i += 2) context.lineTo(points[i] as number, points[i + 1] as number);
    }
    context.stroke();
  }
  context.font = `500 ${LABEL_SIZE * palette.weight}px ${palette.text}`;
  return labelSpots(
    lines.map(({ level, points }) => ({ text: levelWords(toDegrees(level)), points })),
    (text) => context.measureText(text).width,
    LABEL_SIZE * palette.weight,
    box,
    answer.best ? [toBoard(answer.best.across, answer.best.up)] : [],
  );
}

/** The ridge of the valley: a green line of long dashes on a rim of paper. */
function paintRidge(
  context: CanvasRenderingContext2D,
  { ridge }: MapAnswer,
  toBoard: ToBoard,
  palette: Palette,
): void {
  if (ridge.length < 6) return;
  context.beginPath();
  for (let i = 0; i + 2 < ridge.length; i += 3) {
    const [x, y] = toBoard(ridge[i] as number, ridge[i + 1] as number);
    if (i === 0) context.moveTo(x, y);
    else context.lineTo(x, y);
  }
  context.lineCap = 'butt';
  context.strokeStyle = palette.panel;
  context.lineWidth = 4.4 * palette.weight;
  context.stroke();
  context.strokeStyle = palette.good;
  context.lineWidth = 2 * palette.weight;
  context.setLineDash([11 * palette.weight, 4 * palette.weight]);
  context.stroke();
  context.setLineDash([]);
}

function paintLabels(
  context: CanvasRenderingContext2D,
  labels: readonly LabelSpot[],
  palette: Palette,
): void {
  context.font = `500 ${LABEL_SIZE * palette.weight}px ${palette.text}`;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.lineJoin = 'round';
  for (const { text, x, y, turn } of labels) {
    context.save();
    context.translate(x, y);
    context.rotate(turn);
    context.strokeStyle = palette.panel;
    context.lineWidth = 3.2 * palette.weight;
    context.strokeText(text, 0, 0);
    context.fillStyle = palette.ink;
    context.fillText(text, 0, 0);
    context.restore();
  }
}
