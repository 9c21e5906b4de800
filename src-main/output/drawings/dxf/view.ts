import { holdTravel } from '../../../../shared-math/aim/index.ts';
import { arcsDetail } from '../../../../shared-math/detail/index.ts';
import {
  arrangeSheet,
  type Box,
  VIEWS,
  type View,
  viewBoxes,
} from '../../../../shared-math/drawing/index.ts';
import { norm, subtract } from '../../../../shared-math/geometry/vectors.ts';
import { pointNumbers } from '../../../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../../../shared-math/linkage/index.ts';
import { formatLength } from '../../../../shared-math/units/index.ts';
import { CAUTION } from '../../../../shared-math/words/index.ts';
import { outlinesOf, roomsOf, roomsWords, shownWith } from '../../pages/rooms.ts';
import { scaleFor, scaleWords } from '../../pens/scales.ts';
import { DRAWN_WORDS, type DrawingJob, isAtRide } from '../job.ts';
import { poseWords } from '../pose-words.ts';
import { type Scene, sceneOf } from '../scene.ts';
import type { Spot } from '../strokes/stroke.ts';
import { viewStrokes } from '../strokes/view-strokes.ts';
import { DrawingFile, inUnit, ON_PAPER } from './drawing-file.ts';
import { VIEW_LAYERS, type ViewLayer } from './layers.ts';
import { centreLines } from './links-in-space.ts';
import { type PlacedView, same, ViewWriter } from './view-writer.ts';
import { drawArcs, drawGaps, drawRooms } from './what-moves.ts';

/** mm of paper that the views may take where they are printed: what a sheet of A3 or of 11 by 17 in leaves. */
const ROOM = { width: 330, height: 220 };
/** mm on paper: from a view to its first dimension, from one to the next, and to the lines beside links. */
const FIRST = 8;
const NEXT = 7;
const BESIDE = 6;
/** mm on paper between views, with their dimensions. */
const BETWEEN = 16;

/** An upright rectangle that a label takes. */
type LabelRoom = readonly [left: number, bottom: number, right: number, top: number];

const clear = (room: LabelRoom, taken: readonly LabelRoom[]) =>
  taken.every(
    (other) => room[2] < other[0] || other[2] < room[0] || room[3] < other[1] || other[3] < room[1],
  );

/** Which links are dimensioned: those that a builder makes. Their true length, whatever the view foreshortens. */
const DIMENSIONED = [
  'drag link',
  'tie rod',
  'pitman arm',
  'lateral bar',
  'upper bar',
  'lower bar',
  'upper Watt bar',
  'lower Watt bar',
];
/** Points whose distances are written beside the views; those of all of them stand in the table. */
const ORDINATES = ['steering.dragLinkBall', 'steering.box.pitmanBall', 'steering.box.sectorCentre'];
/** mm by which a length must be foreshortened before a view no longer shows it. */
const FORESHORTENED = 0.05;

function drawLinkLengths(writer: ViewWriter, scene: Scene, job: DrawingJob): void {
  const { file } = writer;
  const written = new Set<string>();
  const taken: LabelRoom[] = [];
  for (const { name, points } of centreLines(scene)) {
    const [from, to] = points;
    if (!from || !to || !DIMENSIONED.includes(name)) continue;
    const length = norm(subtract(to, from));
    const figure = formatLength(length, job);
    // The bars of both sides are alike and lie behind one another.
    if (written.has(name + figure)) continue;
    const ends = [writer.at(from), writer.at(to)].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
    const [a, b] = ends as [Spot, Spot];
    const seen = Math.hypot(b[0] - a[0], b[1] - a[1]);
    // Seen end on there is nothing to measure.
    if (seen < file.onPaper(2 * ON_PAPER.stroke)) continue;
    written.add(name + figure);
    const aside: Spot = [-(b[1] - a[1]) / seen, (b[0] - a[0]) / seen];
    const words = length - seen < FORESHORTENED ? `${name} <>` : `${name} ${figure} true`;
    const long = (words.length + figure.length) * 0.75 * file.onPaper(ON_PAPER.letters);
    // Beside the link where no other figure stands already.
    const lines = [1, -1, 2, -2, 3, -3].map((by): [Spot, LabelRoom] => {
      const off = by * file.onPaper(BESIDE);
      const [x, y] = [(a[0] + b[0]) / 2 + off * aside[0], (a[1] + b[1]) / 2 + off * aside[1]];
      const [wide, high] = [Math.abs(aside[1]) * long, Math.abs(aside[0]) * long + file.onPaper(4)];
      return [
        [x, y],
        [x - wide / 2, y - high / 2, x + wide / 2, y + high / 2],
      ];
    });
    const [through, room] = lines.find((line) => clear(line[1], taken)) ?? (lines[0] as [Spot, LabelRoom]);
    taken.push(room);
    file.dimension('dimensions', a, b, through, words, figure);
  }
}

interface Ordinate {
  /** The point's number. */
  readonly number: number;
  readonly at: Spot;
}

/** Distances from one line, the nearest first, each on a line of its own with its point's number. */
function drawOrdinates(
  writer: ViewWriter,
  spots: readonly Ordinate[],
  along: 'x' | 'y',
  zero: Spot,
  edge: number,
  job: DrawingJob,
): void {
  const { file } = writer;
  const axis = along === 'x' ? 0 : 1;
  const size = ({ at }: Ordinate) => Math.abs(at[axis] - zero[axis]);
  const rows = spots.filter((spot) => size(spot) >= FORESHORTENED).sort((a, b) => size(a) - size(b));
  rows.forEach((spot, i) => {
    const line = edge - file.onPaper(FIRST + i * NEXT);
    // From the view's edge on, so that no line runs through the car.
    const foot = ([x, y]: Spot): Spot => (along === 'x' ? [x, edge] : [edge, y]);
    const through: Spot = along === 'x' ? [0, line] : [line, 0];
    const figure = formatLength(size(spot), job);
    file.dimension('dimensions', foot(zero), foot(spot.at), through, `${spot.number}: <>`, figure, along);
  });
}

/** Box, pitman ball and steering-arm ball from axle line, centre line and ground, and those lines with their names. */
function drawOrdinatesOf(
  writer: ViewWriter,
  scene: Scene,
  numbers: ReadonlyMap<string, number>,
  job: DrawingJob,
): void {
  const { view, box } = writer.placed;
  const { file } = writer;
  const spots: Ordinate[] = scene.points
    .filter(({ id }) => ORDINATES.includes(id))
    .map(({ id, at }) => ({ number: numbers.get(id) as number, at: writer.at(at) }));
  const zero = writer.at(view === 'front' ? [0, 0, 0] : [scene.layout.axle.left.wheelCentre[0], 0, 0]);
  const [left, bottom] = writer.on([box.left, -box.bottom]);
  drawOrdinates(writer, spots, 'x', zero, bottom, job);
  drawOrdinates(writer, spots, 'y', zero, left, job);
  const past = file.onPaper(3);
  const top = writer.on([0, -box.top])[1] + past;
  const right = writer.on([box.right, 0])[0] + past;
  const name = (words: string, spot: Spot, align: 'left' | 'centre') =>
    file.text('dimensions', words, spot, { height: file.onPaper(ON_PAPER.letters), align });
  file.stroke('middle-lines', { kind: 'line', a: [zero[0], bottom - past], b: [zero[0], top] });
  name(view === 'front' ? 'centre line' : 'axle line', [zero[0], top + file.onPaper(1)], 'centre');
  if (view === 'top' || !isAtRide(job))
    file.stroke('middle-lines', { kind: 'line', a: [left - past, zero[1]], b: [right, zero[1]] });
  const middle = zero[1] - file.onPaper(ON_PAPER.letters / 2);
  // In a pose the tyres stand elsewhere in the frame's axes than where the distances are counted from.
  const ground = isAtRide(job) ? 'ground' : 'ground at ride height';
  name(view === 'top' ? 'centre line' : ground, [right + file.onPaper(1), middle], 'left');
}

/** Where a number stands beside its point: above right, or the first place around it that no other number takes. */
function labelRoom([x, y]: Spot, wide: number, high: number, off: number, taken: LabelRoom[]): LabelRoom {
  const rooms = [1, 2, 3].flatMap((ring) =>
    (
      [
        [1, 1],
        [-1, 1],
        [1, -1],
        [-1, -1],
      ] as const
    ).map(([across, up]): LabelRoom => {
      const left = across > 0 ? x + off * ring : x - off * ring - wide;
      const bottom = up > 0 ? y + off * ring : y - off * ring - high;
      return [left, bottom, left + wide, bottom + high];
    }),
  );
  const room = rooms.find((each) => clear(each, taken)) ?? (rooms[0] as LabelRoom);
  taken.push(room);
  return room;
}

/** The hardpoints with their numbers, each place and each number once. */
function drawHardpoints(writer: ViewWriter, scene: Scene, numbers: ReadonlyMap<string, number>): void {
  const { file } = writer;
  const marks: { spot: Spot; numbers: number[] }[] = [];
  for (const { id, at } of scene.points) {
    const spot = writer.at(at);
    const number = numbers.get(id) as number;
    const mark = marks.find((other) => same(other.spot, spot));
    if (!mark) marks.push({ spot, numbers: [number] });
    else if (!mark.numbers.includes(number)) mark.numbers.push(number);
  }
  const height = file.onPaper(0.8 * ON_PAPER.letters);
  // No number stands on another point.
  const dot = file.onPaper(1);
  const taken = marks.map(({ spot: [x, y] }): LabelRoom => [x - dot, y - dot, x + dot, y + dot]);
  for (const { spot, numbers: list } of marks) {
    file.point('hardpoints', spot);
    const words = list.join(', ');
    const room = labelRoom(spot, 0.7 * height * words.length, height, file.onPaper(1.3), taken);
    file.text('hardpoints', words, [room[0], room[1]], { height });
  }
}

/** A table of the points in the car's own frame, its upper left corner at a place. */
function drawTable(
  file: DrawingFile<ViewLayer>,
  scene: Scene,
  numbers: ReadonlyMap<string, number>,
  [left, top]: Spot,
  job: DrawingJob,
): void {
  const size = inUnit(job.unit);
  const decimals = job.unit === 'in' ? 4 : 3;
  const figure = (mm: number) =>
    size(mm)
      .toFixed(decimals)
      .replace(/^-(0\.0+)$/, '$1');
  const height = file.onPaper(ON_PAPER.letters);
  const write = (words: string, mm: number, row: number, align: 'left' | 'right' = 'left') =>
    file.text('words', words, [left + file.onPaper(mm), top - row * 1.8 * height], { height, align });
  write(`x forward, y left, z up from the ground below the axle, ${job.unit}`, 0, 0);
  scene.points.forEach(({ id, at, name }, i) => {
    write(String(numbers.get(id)), 5, i + 2, 'right');
    write(name, 9, i + 2);
    at.forEach((value, axis) => {
      write(`${'xyz'[axis]} ${figure(value)}`, 82 + (axis + 1) * 26, i + 2, 'right');
    });
  });
}

/** Room around a view for its dimensions, right and down, mm of the car. */
function withDimensions({ left, top, right, bottom }: Box, scale: number): Box {
  const rows = FIRST + 3 * NEXT;
  return {
    left: left - rows * scale,
    top: top - 9 * scale,
    right: right + 22 * scale,
    bottom: bottom + (rows + 8) * scale,
  };
}

function placedViews(views: readonly View[], boxes: Record<View, Box>, scale: number): PlacedView[] {
  if (views.length === 1) return views.map((view) => ({ view, origin: [0, 0], box: boxes[view] }));
  const wide = Object.fromEntries(VIEWS.map((view) => [view, withDimensions(boxes[view], scale)])) as Record<
    View,
    Box
  >;
  const { origin } = arrangeSheet(wide, BETWEEN * scale);
  return views.map((view) => ({
    view,
    origin: [origin[view][0], -origin[view][1] + 0],
    box: boxes[view],
  }));
}

/** The scale at which letters and dashes are made to be read: that at which the views fit the paper. */
function printedScale(views: readonly View[], boxes: Record<View, Box>, job: DrawingJob): number {
  const width = (view: View) => boxes[view].right - boxes[view].left;
  const height = (view: View) => boxes[view].bottom - boxes[view].top;
  const [first] = views;
  if (views.length === 1 && first) return scaleFor(job.unit, width(first), height(first), ROOM);
  return scaleFor(job.unit, width('side') + width('front'), height('side') + height('top'), ROOM);
}

/**
 * Views of the car as a DXF in model space at full size. One view: right and up from where it shows the car's origin.
 * Three: as they stand on a sheet in third-angle projection, the side view's origin that of the drawing.
 */
export function viewDxf(job: DrawingJob, views: readonly View[]): string {
  const scene = sceneOf(job);
  const numbers = pointNumbers(job.document);
  const matter = { job, layout: scene.layout, frontEnd: prepareFrontEnd(scene.layout) };
  const rooms = roomsOf(matter);
  const outlines = (view: View) => (rooms ? outlinesOf(rooms, view) : []);
  const inViews: Record<View, ReturnType<typeof outlines>> = { side: [], top: [], front: [] };
  const boxes = viewBoxes(scene.drawing, scene.placed);
  for (const view of views) {
    inViews[view] = outlines(view);
    boxes[view] = shownWith(boxes[view], inViews[view]);
  }
  const arcs = arcsDetail(holdTravel(matter.frontEnd), job.unit);
  const scale = printedScale(views, boxes, job);
  const { unit, fraction } = job;
  const file = new DrawingFile({ unit, fraction, scale, layers: VIEW_LAYERS });
  const placed = placedViews(views, boxes, scale);
  const height = file.onPaper(ON_PAPER.letters);
  let [left, top, right] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const each of placed) {
    const writer = new ViewWriter(file, each);
    writer.strokes(viewStrokes(scene, each.view));
    drawRooms(writer, inViews[each.view]);
    if (arcs.view === each.view) drawArcs(writer, arcs);
    drawHardpoints(writer, scene, numbers);
    drawLinkLengths(writer, scene, job);
    drawOrdinatesOf(writer, scene, numbers, job);
    const wide = withDimensions(each.box, scale);
    const corner = writer.on([wide.left, -wide.top]);
    const foot = writer.on([(each.box.left + each.box.right) / 2, -wide.bottom]);
    file.text('words', DRAWN_WORDS[each.view], [foot[0], foot[1] + file.onPaper(1)], {
      height: file.onPaper(1.4 * ON_PAPER.letters),
      align: 'centre',
    });
    left = Math.min(left, corner[0]);
    top = Math.max(top, corner[1]);
    right = Math.max(right, writer.on([wide.right, 0])[0]);
  }
  const beside: Spot = [right + file.onPaper(10), top];
  drawTable(file, scene, numbers, beside, job);
  const rowHigh = 1.8 * height;
  let below = top - (scene.points.length + 4) * rowHigh;
  if (views.includes(arcs.view)) {
    drawGaps(file, arcs, [beside[0], below], job);
    below -= (arcs.ticks.length + 4) * rowHigh;
  }
  const said = roomsWords({ ...matter, length: (mm) => formatLength(mm, job) }, rooms);
  if (said) file.text('words', said, [beside[0], below], { height });
  const what = views.map((view) => DRAWN_WORDS[view]).join(', ');
  const title = `${job.document.name}: ${what}, ${poseWords(job)}, full size in ${unit === 'in' ? 'inches' : 'millimetres'}`;
  file.text('words', title, [left, top + file.onPaper(16)], { height: file.onPaper(ON_PAPER.title) });
  file.text('words', CAUTION, [left, top + file.onPaper(10)], { height });
  const read = `Letters are ${ON_PAPER.letters} mm high where it is printed at ${scaleWords(scale)}.${views.length > 1 ? ' Third-angle projection.' : ''}`;
  file.text('words', read, [left, top + file.onPaper(5)], { height });
  return file.toString();
}
