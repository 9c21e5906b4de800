import { toDegrees, toRadians } from '../../units/index.ts';
import {
  angle,
  arc,
  arrow,
  ball,
  block,
  circle,
  dimension,
  HEAVY,
  LINE,
  line,
  type Mark,
  type Sketch,
  THIN,
  text,
  turnArrow,
} from './marks.ts';

// The steering shaft, its joints and its ends.

/** A universal joint where shafts from two places meet. */
function joint(x: number, y: number, size = 6): Mark[] {
  return [
    circle('steel', x, y, size, { fill: 'paper' }),
    line('steel', [x - size, y, x + size, y], { width: LINE }),
    line('steel', [x, y - size, x, y + size], { width: LINE }),
  ];
}

export const JOINT_ANGLE: Sketch = {
  alt: 'Two shafts meet in a joint: the angle by which the second leaves the line of the first',
  marks: [
    line('steel', [12, 30, 76, 46], { width: HEAVY }),
    line('steel', [76, 46, 130, 88], { width: HEAVY }),
    line('soft', [76, 46, 148, 64], { dash: 'centre', width: THIN }),
    ...joint(76, 46),
    ...angle([76, 46, 44], [14, 37.9], 'joint angle', [-2, 7], 'left'),
  ],
};

export const TRUE_ANGLE: Sketch = {
  alt: 'The same bend seen in two views, each smaller than the bend in space',
  marks: [
    line('rule', [80, 10, 80, 92], { width: THIN }),
    line('steel', [10, 40, 44, 50, 70, 74], { width: HEAVY }),
    line('steel', [90, 62, 120, 52, 152, 52], { width: HEAVY }),
    ...joint(44, 50, 4),
    ...joint(120, 52, 4),
    text(40, 18, 'one view', 'soft', 'centre'),
    text(120, 18, 'the other', 'soft', 'centre'),
    text(80, 98, 'in space it is more than either', 'attention', 'centre'),
  ],
};

export const DOUBLE_JOINT: Sketch = {
  alt: 'A double joint: two joints back to back, each taking half of the bend',
  marks: [
    line('steel', [12, 34, 66, 46], { width: HEAVY }),
    line('steel', [92, 58, 128, 92], { width: HEAVY }),
    line('steel', [66, 46, 92, 58], { width: HEAVY }),
    ...joint(66, 46),
    ...joint(92, 58),
    text(84, 36, 'half each', 'attention'),
  ],
};

export const CLOCK: Sketch = {
  alt: 'A shaft between two joints: one yoke turned on the shaft against the other by an angle',
  marks: [
    line('steel', [44, 50, 116, 50], { width: HEAVY }),
    circle('ink', 30, 50, 20),
    line('steel', [30, 30, 30, 70], { width: HEAVY }),
    circle('ink', 132, 50, 20),
    line('soft', [132, 30, 132, 70], { dash: 'centre', width: THIN }),
    line('steel', [121, 33.5, 143, 66.5], { width: HEAVY }),
    ...angle([132, 50, 24], [-90, -123], 'clock', [-2, -1], 'right'),
  ],
};

export const SWING: Sketch = {
  alt: 'Over a turn of the handwheel the box’s input runs ahead and behind by turns',
  marks: [
    line('soft', [12, 50, 150, 50], { dash: 'centre', width: THIN }),
    line(
      'steel',
      Array.from({ length: 70 }, (_, i) => [12 + 2 * i, 50 - 24 * Math.sin((i / 35) * 2 * Math.PI)]).flat(),
      { width: HEAVY },
    ),
    ...dimension([29.5, 50, 29.5, 26], '', [0, 0]),
    text(36, 20, 'swing', 'attention'),
    text(150, 90, 'one turn', 'soft', 'right'),
  ],
};

export const SUPPORT: Sketch = {
  alt: 'A bearing on a bracket holds the shaft between its joints',
  marks: [
    line('steel', [10, 26, 50, 40], { width: HEAVY }),
    line('steel', [50, 40, 112, 58], { width: HEAVY }),
    line('steel', [112, 58, 150, 84], { width: HEAVY }),
    ...joint(50, 40),
    ...joint(112, 58),
    circle('ink', 80, 49, 7, { fill: 'paper' }),
    circle('steel', 80, 49, 3, { fill: 'steel' }),
    line('ink', [80, 56, 80, 88], { width: LINE }),
    line('ink', [66, 88, 94, 88], { width: LINE }),
    text(8, 76, 'support bearing', 'attention'),
  ],
};

export const COLUMN: Sketch = {
  alt: 'Handwheel and column, and where the steering shaft takes over',
  marks: [
    line('ink', [140, 6, 152, 36], { width: HEAVY }),
    line('steel', [146, 20, 76, 50], { width: HEAVY }),
    line('ink', [100, 28, 112, 56], { width: LINE }),
    line('steel', [76, 50, 26, 76], { width: HEAVY, dash: 'dashed' }),
    ...joint(76, 50),
    text(126, 60, 'column', 'attention', 'centre'),
    text(30, 94, 'shaft to the box'),
  ],
};

/** A round with two flats, as an outline about a middle. */
function flatted(x: number, y: number, radius: number, half: number): number[] {
  const cut = toDegrees(Math.asin(half / radius));
  const side = (from: number, to: number) =>
    Array.from({ length: 17 }, (_, i) => {
      const t = toRadians(from + ((to - from) * i) / 16);
      return [x + radius * Math.cos(t), y + radius * Math.sin(t)];
    }).flat();
  return [...side(-cut, cut), ...side(180 - cut, 180 + cut)];
}

export const DOUBLE_D: Sketch = {
  alt: 'A round bar with two flats across from one another',
  marks: [
    line('ink', flatted(70, 50, 32, 21), { closed: true, width: HEAVY }),
    circle('soft', 70, 50, 32, { dash: 'dotted', width: THIN }),
    ...dimension([112, 29, 112, 71], 'across flats', [4, 2], 'left'),
    line('attention', [94, 29, 114, 29], { width: THIN }),
    line('attention', [94, 71, 114, 71], { width: THIN }),
  ],
};

/** The face of a toothed end: tops and roots in turn. */
function teeth(
  x: number,
  y: number,
  [root, top]: readonly [number, number],
  count: number,
  share: number,
): number[] {
  return Array.from({ length: count }, (_, i) =>
    [
      [root, 0],
      [top, 0.5 - share],
      [top, 0.5 + share],
      [root, 1],
    ].map(([radius = 0, part = 0]) => {
      const t = ((i + part) / count) * 2 * Math.PI;
      return [x + radius * Math.cos(t), y + radius * Math.sin(t)];
    }),
  ).flat(2);
}

export const SPLINE: Sketch = {
  alt: 'The toothed face of a shaft’s end',
  marks: [
    line('ink', teeth(66, 50, [30, 36], 24, 0.18), { closed: true, width: LINE }),
    ...dimension([66, 14, 116, 14], '', [0, 0]),
    text(110, 36, 'over the teeth', 'attention'),
    text(110, 60, 'count: 24', 'attention'),
  ].filter((mark) => mark.kind !== 'line' || mark.ink === 'ink'),
};

export const SERRATION: Sketch = {
  alt: 'A toothed face with straight, pointed teeth beside one with curved flanks',
  marks: [
    line('ink', teeth(44, 46, [26, 32], 28, 0.02), { closed: true, width: LINE }),
    line('ink', teeth(116, 46, [25, 32], 20, 0.16), { closed: true, width: LINE }),
    text(44, 92, 'serration', 'attention', 'centre'),
    text(116, 92, 'spline', 'soft', 'centre'),
  ],
};

export const PINCH: Sketch = {
  alt: 'A bolt across the bore, through a notch in the shaft, so that it cannot pull out',
  marks: [
    block([92, 50], [64, 46]),
    line('steel', [12, 40, 82, 40, 86, 45, 94, 45, 98, 40, 108, 40], { width: LINE }),
    line('steel', [12, 60, 108, 60, 108, 40], { width: LINE }),
    circle('stop', 90, 39, 6, { fill: 'paper', width: HEAVY }),
    text(90, 16, 'bolt in its notch', 'stop', 'centre'),
  ],
};

export const BALL_TILT: Sketch = {
  alt: 'A ball joint: how far the link leans from square to its stud',
  marks: [
    line('ink', [70, 92, 70, 44], { width: HEAVY }),
    circle('ink', 70, 40, 10),
    line('steel', [70, 40, 142, 22], { width: HEAVY }),
    line('soft', [70, 40, 148, 40], { dash: 'centre', width: THIN }),
    ...angle([70, 40, 46], [-14, 0], 'tilt', [3, 3], 'left'),
    text(60, 84, 'stud', 'soft', 'right'),
  ],
};

export const STUD: Sketch = {
  alt: 'A ball joint: the stud is the tapered pin that its ball sits on',
  marks: [
    line('ink', [63, 52, 66, 92, 74, 92, 77, 52], { width: LINE, closed: true }),
    circle('ink', 70, 40, 13, { fill: 'paper' }),
    line('steel', [83, 40, 144, 40], { width: HEAVY }),
    line('soft', [70, 98, 70, 12], { dash: 'centre', width: THIN }),
    ...arrow('attention', [104, 76, 78, 72], { width: THIN }),
    text(106, 79, 'stud', 'attention'),
  ],
};

export const THREAD: Sketch = {
  alt: 'A threaded end in its tube: how much thread is inside, and the jam nut',
  marks: [
    block([112, 50], [76, 22]),
    line('steel', [40, 44, 116, 44, 116, 56, 40, 56], { width: LINE }),
    block([68, 50], [9, 26]),
    circle('steel', 30, 50, 11),
    ball(30, 50, 'steel', 5),
    ...dimension([74, 72, 116, 72], 'in the tube', [0, 9]),
    line('attention', [116, 56, 116, 74], { width: THIN }),
    text(68, 28, 'jam nut', 'soft', 'centre'),
  ],
};

export const STRUT: Sketch = {
  alt: 'A slender link pushed from both ends bows out',
  marks: [
    line('soft', [30, 50, 130, 50], { dash: 'centre', width: THIN }),
    arc('steel', [80, 122, 88], [235.5, 304.5], { width: HEAVY }),
    ball(30, 50),
    ball(130, 50),
    ...arrow('stop', [8, 50, 24, 50]),
    ...arrow('stop', [152, 50, 136, 50]),
    text(80, 72, 'bows out', 'stop', 'centre'),
  ],
};

export const STRETCH: Sketch = {
  alt: 'A bar pulled: it springs back up to its yield, and stays longer past it',
  marks: [
    line('soft', [24, 88, 24, 12], { width: THIN }),
    line('soft', [24, 88, 150, 88], { width: THIN }),
    line('steel', [24, 88, 54, 34, 64, 28, 92, 24, 128, 22], { width: HEAVY }),
    circle('stop', 54, 34, 3),
    text(60, 44, 'yield', 'stop'),
    text(28, 18, 'pull'),
    text(150, 98, 'stretch', 'soft', 'right'),
  ],
};

export const ASSIST: Sketch = {
  alt: 'A pump helps the box; when it stops, the arms do all of it',
  marks: [
    block([44, 50], [36, 26]),
    text(44, 53, 'pump', 'soft', 'centre'),
    block([116, 50], [36, 26]),
    text(116, 53, 'box', 'soft', 'centre'),
    ...arrow('steel', [62, 45, 97, 45]),
    ...arrow('steel', [98, 56, 63, 56]),
    ...turnArrow('attention', [116, 50, 30], [-140, -40]),
  ],
};
