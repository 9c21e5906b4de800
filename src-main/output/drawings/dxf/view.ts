import { type DxfWriter, LWPolylineFlags, point3d } from '@tarikjabiri/dxf';
import {
  type Box,
  isClosed,
  isShown,
  type Outline,
  outline,
  project,
  type View,
  type ViewPoint,
  viewBoxes,
} from '../../../../shared-math/drawing/index.ts';
import type { Point } from '../../../../shared-math/geometry/points.ts';
import { norm, subtract } from '../../../../shared-math/geometry/vectors.ts';
import { formatLength, toDegrees } from '../../../../shared-math/units/index.ts';
import { CAUTION } from '../../../../shared-math/words/index.ts';
import { DRAWN_WORDS, type DrawingJob } from '../job.ts';
import { poseWords } from '../pose-words.ts';
import { type Scene, sceneOf } from '../scene.ts';
import { BROKEN, type DxfLayer, dxfText, inUnit, layerOf, newDrawing } from './layers.ts';
import { centreLines } from './links-in-space.ts';

/** mm of the car: the height of texts, and of the ticks at a dimension's ends. */
const TEXT = 11;
const TICK = 6;

/** One view being written: places are the view's own, right and up, in the drawing's unit. */
class ViewWriter {
  readonly dxf: DxfWriter;
  readonly #size: (mm: number) => number;
  readonly #view: View;

  constructor(job: DrawingJob, view: View) {
    this.dxf = newDrawing(job.unit);
    this.#size = inUnit(job.unit);
    this.#view = view;
  }

  /** Where a point of the car is drawn: right and up, mm. */
  at(point: Point): ViewPoint {
    const [right, down] = project(this.#view, point);
    return [right, -down + 0];
  }

  line(layer: DxfLayer, places: readonly ViewPoint[], closed = false, broken = false): void {
    if (places.length < 2) return;
    this.dxf.addLWPolyline(
      places.map(([x, y]) => ({ point: { x: this.#size(x), y: this.#size(y) } })),
      {
        layerName: layer,
        flags: closed ? LWPolylineFlags.Closed : LWPolylineFlags.None,
        ...(broken ? { lineType: BROKEN } : {}),
      },
    );
  }

  text(layer: DxfLayer, words: string, [x, y]: ViewPoint, height = TEXT, degrees = 0): void {
    this.dxf.addText(point3d(this.#size(x), this.#size(y), 0), this.#size(height), dxfText(words), {
      layerName: layer,
      rotation: degrees,
    });
  }

  point([x, y]: ViewPoint): void {
    this.dxf.addPoint(this.#size(x), this.#size(y), 0, { layerName: 'hardpoints' });
  }
}

function drawStrokes(writer: ViewWriter, { drawing, placed }: Scene, view: View): void {
  for (const part of drawing.parts)
    for (const shape of part.shapes) {
      if (!isShown(shape, view)) continue;
      const line: Outline = [];
      outline(shape, placed, view, line);
      const places: ViewPoint[] = [];
      for (let i = 0; i < line.length; i += 2) places.push([line[i] as number, -(line[i + 1] as number) + 0]);
      writer.line(layerOf(part), places, isClosed(shape), shape.ink === 'broken');
    }
}

/** A distance between two places, drawn beside them by `off` mm, with its ticks and its words above the line. */
function dimension(writer: ViewWriter, a: ViewPoint, b: ViewPoint, off: number, words: string): void {
  const [from, to] = a[0] < b[0] || (a[0] === b[0] && a[1] <= b[1]) ? [a, b] : [b, a];
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length < 4 * TICK) return;
  const along: ViewPoint = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const square: ViewPoint = [-along[1], along[0]];
  const moved = ([x, y]: ViewPoint, by: number): ViewPoint => [x + square[0] * by, y + square[1] * by];
  const [p, q] = [moved(from, off), moved(to, off)];
  const past = off + Math.sign(off) * TICK;
  writer.line('dimensions', [p, q]);
  writer.line('dimensions', [moved(from, Math.sign(off) * TICK), moved(from, past)]);
  writer.line('dimensions', [moved(to, Math.sign(off) * TICK), moved(to, past)]);
  for (const [x, y] of [p, q])
    writer.line('dimensions', [
      [x - (TICK / 2) * (along[0] + square[0]), y - (TICK / 2) * (along[1] + square[1])],
      [x + (TICK / 2) * (along[0] + square[0]), y + (TICK / 2) * (along[1] + square[1])],
    ]);
  // Seen from the middle, the words stand about as wide as they are long.
  const half = (words.length * TEXT * 0.6) / 2;
  const middle: ViewPoint = [(p[0] + q[0]) / 2 - along[0] * half, (p[1] + q[1]) / 2 - along[1] * half];
  const degrees = toDegrees(Math.atan2(along[1], along[0]));
  writer.text('dimensions', words, [middle[0] + square[0] * 4, middle[1] + square[1] * 4], TEXT, degrees);
}

/** Which links are dimensioned: those that a builder makes. Their true length, whatever the view foreshortens. */
const DIMENSIONED = ['drag link', 'tie rod', 'pitman arm', 'lateral bar', 'upper bar', 'lower bar'];

function drawDimensions(writer: ViewWriter, scene: Scene, view: View, box: Box, job: DrawingJob): void {
  const words = (mm: number) => formatLength(mm, job);
  const written = new Set<string>();
  for (const { name, points } of centreLines(scene)) {
    const [from, to] = points;
    if (!from || !to || !DIMENSIONED.includes(name)) continue;
    const length = words(norm(subtract(to, from)));
    // The bars of both sides are alike and lie behind one another.
    if (written.has(name + length)) continue;
    written.add(name + length);
    dimension(writer, writer.at(from), writer.at(to), 34, `${name} ${length} true`);
  }
  const { box: steering, dragLinkBall } = scene.layout.steering;
  const { wheelCentre } = scene.layout.axle.left;
  const datum: Point = view === 'front' ? [0, 0, 0] : [wheelCentre[0], 0, 0];
  const foot = -box.bottom;
  const spots: (readonly [string, Point])[] = [
    ['steering arm ball', scene.place(`spindle-${scene.layout.steering.dragLinkTo}`, dragLinkBall)],
    ['pitman ball', scene.place('pitman', steering.pitmanBall)],
    ['steering box', steering.sectorCentre],
  ];
  spots.forEach(([name, point], i) => {
    const [x] = writer.at(point);
    const [zero] = writer.at(datum);
    const from = view === 'front' ? 'centre line' : 'axle line';
    const y = foot - 45 - i * 34;
    dimension(writer, [zero, y + 26], [x, y + 26], -26, `${name} from ${from} ${words(Math.abs(x - zero))}`);
  });
  const [zero] = writer.at(datum);
  writer.line(
    'dimensions',
    [
      [zero, foot - 45 - 3 * 34],
      [zero, -box.top + 30],
    ],
    false,
    true,
  );
}

/** The hardpoints with their numbers, and a table of them in the car's own frame beside the view. */
function drawHardpoints(writer: ViewWriter, scene: Scene, box: Box, job: DrawingJob): void {
  const size = inUnit(job.unit);
  const decimals = job.unit === 'in' ? 4 : 3;
  const figure = (mm: number) =>
    size(mm)
      .toFixed(decimals)
      .replace(/^-(0\.0+)$/, '$1');
  const left = Math.max(box.right, ...scene.points.map(({ at }) => writer.at(at)[0])) + 140;
  const row = (i: number): number => -box.top - i * 1.9 * TEXT;
  writer.text('hardpoints', `x forward, y left, z up from the ground below the axle, ${job.unit}`, [
    left,
    row(0),
  ]);
  scene.points.forEach(({ at, name }, i) => {
    const spot = writer.at(at);
    writer.point(spot);
    writer.text('hardpoints', String(i + 1), [spot[0] + 5, spot[1] + 5], 0.8 * TEXT);
    const y = row(i + 2);
    writer.text('hardpoints', String(i + 1), [left, y]);
    writer.text('hardpoints', name, [left + 30, y]);
    at.forEach((value, axis) => {
      writer.text('hardpoints', `${'xyz'[axis]} ${figure(value)}`, [left + 330 + axis * 130, y]);
    });
  });
}

/** A view of the car as a DXF in model space, full size: right and up from where the view shows the car's origin. */
export function viewDxf(job: DrawingJob, view: View): string {
  const scene = sceneOf(job);
  const writer = new ViewWriter(job, view);
  const box = viewBoxes(scene.drawing, scene.placed)[view];
  drawStrokes(writer, scene, view);
  drawDimensions(writer, scene, view, box, job);
  drawHardpoints(writer, scene, box, job);
  const title = `${job.document.name}: ${DRAWN_WORDS[view]}, ${poseWords(job)}, full size in ${job.unit === 'in' ? 'inches' : 'millimetres'}`;
  writer.text('dimensions', title, [box.left, -box.top + 90], 1.5 * TEXT);
  writer.text('dimensions', CAUTION, [box.left, -box.top + 62], TEXT);
  return writer.dxf.stringify();
}
