import {
  type Box,
  isClosed,
  isShown,
  type Outline,
  outline,
  project,
  type View,
  type ViewPoint,
} from '../../../../shared-math/drawing/index.ts';
import type { Point } from '../../../../shared-math/geometry/points.ts';
import { unit } from '../../../../shared-math/geometry/vectors.ts';
import { halfOf, type Side } from '../../../../shared-math/layout/index.ts';
import { INK } from '../../pens/colours.ts';
import type { PrintPen } from '../../pens/print-pen.ts';
import { axleLine, sided, usually } from '../points.ts';
import type { SheetModel } from '../sheet-model.ts';
import { cornersOf, type TemplateCut, withinBox } from './cut.ts';
import {
  around,
  ballMark,
  centreLine,
  centreMark,
  type OnPaper,
  type Template,
  tag,
  type WaySign,
} from './template.ts';

// Where brackets go, at full size: the rail as it is drawn, and on it the centres that are known. The layout holds no
// bolt patterns, so none are drawn: they are taken off the part itself.

const SEEN: Record<View, string> = {
  side: 'Seen from the car’s left',
  top: 'Seen from above',
  front: 'Seen from ahead',
};

/** Which ways of the car lie which way in each view: see the views' own axes. */
const WAYS: Record<View, readonly WaySign[]> = {
  side: [
    { words: 'FRONT', way: [-1, 0] },
    { words: 'UP', way: [0, -1] },
  ],
  top: [
    { words: 'FRONT', way: [-1, 0] },
    { words: 'LEFT SIDE', way: [0, 1] },
  ],
  front: [
    { words: 'LEFT SIDE', way: [1, 0] },
    { words: 'UP', way: [0, -1] },
  ],
};

/** mm around the centres that are shown. */
const AROUND = 24;
/** mm within which the rail's edge is brought into the picture. */
const NEAR = 120;

interface Mark {
  readonly at: Point;
  readonly words: string;
  readonly ball?: boolean;
}

/** The rail at full size on the side where the bracket is: its outlines, or from ahead its section at the bracket. */
function paintFrame(
  pen: PrintPen,
  model: SheetModel,
  view: View,
  first: Point,
  at: OnPaper,
  wordsOnRight: boolean,
): void {
  if (view === 'front') {
    const section = model.datum.sectionAt(first[0], first[1]);
    if (!section) return;
    const y = (size: number) => Math.sign(first[1] || 1) * size;
    const corners = [
      [first[0], y(section.outer), section.top],
      [first[0], y(section.outer), section.bottom],
      [first[0], y(section.inner), section.bottom],
      [first[0], y(section.inner), section.top],
    ] as const;
    pen.stroke(
      corners.flatMap((corner) => [...at(project(view, corner))]),
      { width: 0.35, colour: INK },
      true,
    );
    const [x, down] = at(project(view, corners[0]));
    tag(pen, 'rail, there', [x, down - 2], view === 'front' && first[1] >= 0 ? 'right' : 'left', true);
    return;
  }
  const side = halfOf(first);
  const section = model.datum.sectionAt(first[0], first[1]);
  const topEdge = model.datum.topAt(first[0]);
  for (const part of model.drawing.parts) {
    if (part.role !== 'frame' || (part.side !== undefined && part.side !== side)) continue;
    for (const shape of part.shapes) {
      if (!isShown(shape, view)) continue;
      const line: Outline = [];
      outline(shape, model.placed, view, line);
      const points: number[] = [];
      for (let i = 0; i < line.length; i += 2) points.push(...at([line[i] as number, line[i + 1] as number]));
      pen.stroke(points, { width: shape.ink === 'fine' ? 0.18 : 0.35, colour: INK }, isClosed(shape));
    }
  }
  if (view === 'side' && section && topEdge !== undefined) {
    const low = topEdge - (section.top - section.bottom);
    for (const [z, words] of [
      [topEdge, 'rail, upper edge'],
      [low, 'rail, lower edge'],
    ] as const) {
      const [x, y] = at(project(view, [first[0], first[1], z]));
      // On the side that the cross's own words leave free.
      tag(pen, words, [wordsOnRight ? x - 24 : x + 24, y - 1.5], wordsOnRight ? 'right' : 'left', true);
    }
  }
}

/** How a centre lies from what a builder measures from, in one sentence. */
function placeWords(model: SheetModel, name: string, at: Point): string {
  const { both, datum } = model;
  const [x, y, z] = at;
  const face = datum.faceAt(x, y);
  const top = datum.topAt(x);
  return [
    `${name}: ${usually(both, axleLine(model) - x, 'ahead of the axle centre line')}${x > axleLine(model) ? '' : ' behind the axle centre line'}`,
    `${sided(both, y)} of the car’s centre line`,
    face === undefined
      ? ''
      : `${both(Math.abs(Math.abs(y) - face))} ${Math.abs(y) < face ? 'inside' : 'outside'} the rail’s outer face`,
    top === undefined
      ? `${both(z)} above ground`
      : `${both(Math.abs(top - z))} ${z > top ? 'above' : 'below'} the rail’s top, there`,
  ]
    .filter(Boolean)
    .join(', ')
    .concat('.');
}

/** The datums that a view shows a centre from, with which way they lie: "axle centre line 34 5/16 in ahead". */
function datumsOf(model: SheetModel, view: View, [x, y, z]: Point): string[] {
  const { both } = model;
  const line = axleLine(model);
  const axle = `axle centre line ${both(Math.abs(line - x))} ${x > line ? 'behind' : 'ahead'}`;
  const middle = `car’s centre line ${both(Math.abs(y))} to the ${y > 0 ? 'right' : 'left'}`;
  const ground = `ground ${both(z)} below`;
  return { side: [axle, ground], top: [axle, middle], front: [middle, ground] }[view];
}

/** Places of the rail's upper and lower edge near a point, so that the picture shows them. */
function railEdges(model: SheetModel, view: View, [x, y, z]: Point): ViewPoint[] {
  const section = model.datum.sectionAt(x, y);
  if (!section || view === 'top') return [];
  const out = Math.sign(y || 1) * (Math.abs(y) > section.outer ? section.outer : section.inner);
  return [[x, out, section.top] as const, [x, out, section.bottom] as const]
    .filter((edge) => Math.abs(edge[2] - z) < NEAR && (view === 'side' || Math.abs(edge[1] - y) < NEAR))
    .map((edge) => project(view, edge));
}

/** The edges of the frame on the side where a bracket is, as a view shows them: straight lines from place to place. */
function frameEdges(model: SheetModel, view: View, first: Point): [ViewPoint, ViewPoint][] {
  const side = halfOf(first);
  const edges: [ViewPoint, ViewPoint][] = [];
  for (const part of model.drawing.parts) {
    if (part.role !== 'frame' || (part.side !== undefined && part.side !== side)) continue;
    for (const shape of part.shapes) {
      if (!isShown(shape, view) || shape.ink !== 'outline') continue;
      const line: Outline = [];
      outline(shape, model.placed, view, line);
      const count = line.length / 2;
      const place = (i: number): ViewPoint => [
        line[2 * (i % count)] as number,
        line[2 * (i % count) + 1] as number,
      ];
      for (let i = 0; i < (isClosed(shape) ? count : count - 1); i += 1) edges.push([place(i), place(i + 1)]);
    }
  }
  return edges;
}

/** A plate with the bracket's centres and the rail's edges on it. */
function bracketCut(
  model: SheetModel,
  view: View,
  first: Point,
  places: readonly ViewPoint[],
  bounds: Box,
): TemplateCut {
  const [right, down] = places[0] as ViewPoint;
  const lines: [ViewPoint, ViewPoint][] = [
    [
      [right, bounds.top],
      [right, bounds.bottom],
    ],
    [
      [bounds.left, down],
      [bounds.right, down],
    ],
    ...frameEdges(model, view, first),
  ];
  // Scribed lines keep off the plate's own edge.
  const inside = {
    left: bounds.left + 2,
    top: bounds.top + 2,
    right: bounds.right - 2,
    bottom: bounds.bottom - 2,
  };
  return {
    outlines: [{ places: cornersOf(bounds) }],
    centres: places,
    openings: [],
    bends: [],
    marks: lines.flatMap((line) => {
      const seen = withinBox(line, inside);
      return seen ? [seen] : [];
    }),
  };
}

function bracket(
  model: SheetModel,
  title: string,
  view: View,
  marks: readonly Mark[],
  words: readonly string[],
): Template {
  const first = marks[0] as Mark;
  const side = halfOf(first.at);
  const places = marks.map(({ at }) => project(view, at));
  const bounds = around([...places, ...marks.flatMap(({ at }) => railEdges(model, view, at))], AROUND);
  const isRight = ([right]: ViewPoint) => right > (bounds.left + bounds.right) / 2 + 1;
  return {
    title,
    note: `${SEEN[view]}; ${side} side of the car`,
    ways: WAYS[view],
    bounds,
    cut: bracketCut(model, view, first.at, places, bounds),
    words: [...marks.map(({ at, words: name }) => placeWords(model, name, at)), ...words],
    draw(pen, at) {
      paintFrame(pen, model, view, first.at, at, !isRight(places[0] as ViewPoint));
      places.forEach((place, i) => {
        const mark = marks[i] as Mark;
        const [x, y] = at(place);
        if (i === 0) {
          centreLine(pen, at([place[0], bounds.top]), at([place[0], bounds.bottom]));
          centreLine(pen, at([bounds.left, place[1]]), at([bounds.right, place[1]]));
        }
        if (mark.ball) ballMark(pen, [x, y]);
        else centreMark(pen, [x, y], 14);
        // Toward the picture's middle, so that no page's edge cuts them.
        const align = isRight(place) ? 'right' : 'left';
        const aside = align === 'right' ? x - 6 : x + 6;
        tag(pen, mark.words, [aside, y + 7], align);
        // Where it is from, at the cross itself: the paper may be cut.
        datumsOf(model, view, mark.at).forEach((words, line) => {
          tag(pen, words, [aside, y + 11 + 3.6 * line], align, true);
        });
      });
    },
  };
}

/** The view in which an axis is seen most nearly end on. */
function endOn(axis: Point): View {
  const sizes = unit(axis).map(Math.abs);
  return (['front', 'side', 'top'] as const)[sizes.indexOf(Math.max(...sizes))] as View;
}

/** Brackets of box, lateral bar and the rods' frame ends. */
export function bracketTemplates(model: SheetModel): Template[] {
  const { layout, job } = model;
  const { box } = layout.steering;
  const { lateral, location } = layout;
  const mirrored = 'right' in job.document.location && job.document.location.right === 'mirror';
  const both = mirrored ? ['For the other side lay the paper face down.'] : [];
  const holes =
    'No bolt holes are drawn, as the layout holds none: lay the box on this paper with its sector shaft on the cross, level it as drawn, and take its holes off it. The box’s maker says what it must be bolted to.';
  const templates = [
    bracket(
      model,
      'Steering box bracket',
      endOn(box.sectorAxis),
      [
        { at: box.sectorCentre, words: 'Sector centre' },
        { at: box.pitmanBall, words: 'Pitman ball', ball: true },
      ],
      [holes],
    ),
  ];
  const bolt =
    'The cross is the middle of the eye or bushing; its bolt and the bracket’s own holes are the maker’s.';
  if (lateral.kind === 'bar')
    templates.push(
      bracket(
        model,
        'Lateral bar, frame bracket',
        'front',
        [{ at: lateral.frame, words: 'Lateral bar, frame end' }],
        [bolt],
      ),
      bracket(
        model,
        'Lateral bar, axle bracket',
        'front',
        [{ at: lateral.axle, words: 'Lateral bar, axle end' }],
        [bolt],
      ),
    );
  if (lateral.kind === 'watt') {
    templates.push(
      bracket(
        model,
        'Watt’s linkage, rocker',
        'front',
        [
          { at: lateral.pivot, words: 'Rocker bolt' },
          { at: lateral.upper.rocker, words: 'Upper bar' },
          { at: lateral.lower.rocker, words: 'Lower bar' },
        ],
        [bolt],
      ),
    );
    for (const bar of ['upper', 'lower'] as const)
      templates.push(
        bracket(
          model,
          `Watt’s linkage, ${bar} bar, ${lateral.rockerOn === 'axle' ? 'frame' : 'axle'} bracket`,
          'front',
          [{ at: lateral[bar].end, words: `${bar === 'upper' ? 'Upper' : 'Lower'} bar, far end` }],
          [bolt],
        ),
      );
  }
  if (lateral.kind === 'fixed-spring')
    templates.push(
      bracket(
        model,
        'Transverse spring, perch of its fixed eye',
        'front',
        [{ at: lateral.eye, words: 'Spring, fixed eye' }],
        [bolt],
      ),
    );
  const sides: readonly Side[] = mirrored ? ['left'] : ['left', 'right'];
  if (location.kind === 'wishbone')
    templates.push(
      bracket(model, 'Wishbone pivot', 'side', [{ at: location.framePivot, words: 'Wishbone ball' }], [bolt]),
    );
  if (location.kind === 'hairpins' || location.kind === 'split-rods') {
    const [name, mark] =
      location.kind === 'hairpins'
        ? (['Hairpin pivot', 'Hairpin pivot'] as const)
        : (['Radius rod ball', 'Radius rod ball'] as const);
    for (const side of sides)
      templates.push(
        bracket(model, name, 'side', [{ at: location[side].framePivot, words: mark }], [bolt, ...both]),
      );
  }
  if (location.kind === 'quarter-elliptic')
    for (const side of sides) {
      const { butt, clamp, eye, rod } = location[side];
      templates.push(
        bracket(
          model,
          'Quarter-elliptic spring, clamp and rod bracket',
          'side',
          [
            { at: clamp, words: 'Spring leaves the clamp' },
            { at: butt, words: 'Thick end' },
            { at: rod.frame, words: 'Radius rod' },
          ],
          [bolt, ...both],
        ),
        bracket(
          model,
          'Quarter-elliptic spring, axle bracket',
          'side',
          [
            { at: eye, words: location.eyes === 'pinned' ? 'Spring eye' : 'Spring slides here' },
            { at: rod.axle, words: 'Radius rod' },
          ],
          [bolt, ...both],
        ),
      );
    }
  if (location.kind === 'four-bar')
    for (const side of sides)
      templates.push(
        bracket(
          model,
          'Four bars, frame bracket',
          'side',
          [
            { at: location[side].upper.frame, words: 'Upper bar' },
            { at: location[side].lower.frame, words: 'Lower bar' },
          ],
          [bolt, ...both],
        ),
      );
  return templates;
}
