import {
  arrow,
  ball,
  block,
  circle,
  dimension,
  HEAVY,
  LINE,
  line,
  type Sketch,
  THIN,
  text,
} from './marks.ts';

// What the board says of a figure: where it comes from, how well it is known, what it is held to.

export const DOUBT: Sketch = {
  alt: 'A figure on a scale with a stretch to either side in which the true one lies',
  marks: [
    line('soft', [16, 62, 144, 62], { width: LINE }),
    ...[24, 40, 56, 72, 88, 104, 120, 136].map((x) => line('soft', [x, 58, x, 66], { width: THIN })),
    line('steel', [60, 62, 100, 62], { width: HEAVY }),
    line('steel', [60, 54, 60, 70], { width: LINE }),
    line('steel', [100, 54, 100, 70], { width: LINE }),
    circle('steel', 80, 62, 3.4, { fill: 'steel' }),
    text(80, 42, 'two times in three, in here', 'steel', 'centre'),
    text(100, 84, '±', 'steel', 'centre'),
  ],
};

export const ORIGIN: Sketch = {
  alt: 'Four points: hollow for a guess, filled for planned, a cross for taped, a square for a photo',
  marks: [
    circle('steel', 30, 40, 5, { dash: 'dotted' }),
    circle('steel', 64, 40, 5, { fill: 'steel' }),
    circle('steel', 98, 40, 5, { fill: 'steel' }),
    line('steel', [88, 40, 108, 40], { width: LINE }),
    line('steel', [98, 30, 98, 50], { width: LINE }),
    block([132, 40], [18, 14], 0, { width: LINE }, 'steel'),
    circle('steel', 132, 40, 3.4, { fill: 'steel' }),
    text(30, 68, 'guess', 'soft', 'centre'),
    text(64, 68, 'plan', 'soft', 'centre'),
    text(98, 68, 'tape', 'soft', 'centre'),
    text(132, 68, 'photo', 'soft', 'centre'),
  ],
};

export const ADJUST: Sketch = {
  alt: 'Three tapes to one point do not quite meet; the point is put where all of them fit best',
  marks: [
    ball(18, 84, 'ink'),
    ball(140, 84, 'ink'),
    ball(80, 12, 'ink'),
    line('soft', [18, 84, 80, 50], { width: LINE }),
    line('soft', [140, 84, 76, 54], { width: LINE }),
    line('soft', [80, 12, 83, 56], { width: LINE }),
    circle('good', 80, 54, 4, { fill: 'good' }),
    text(90, 50, 'best fit', 'good'),
  ],
};

export const MISFIT: Sketch = {
  alt: 'Of four measurements three agree and one does not',
  marks: [
    line('soft', [80, 12, 80, 90], { dash: 'centre', width: THIN }),
    ...[24, 42, 78].map((y, i) => circle('good', 80 + [-3, 2, 1][i]!, y, 3.4, { fill: 'good' })),
    line('stop', [124, 54, 132, 62], { width: HEAVY }),
    line('stop', [132, 54, 124, 62], { width: HEAVY }),
    ...arrow('stop', [118, 58, 88, 58]),
    text(128, 80, 'does not fit', 'stop', 'centre'),
  ],
};

export const FINDING: Sketch = {
  alt: 'Three lines of a verdict: one with a cross, one with an exclamation mark, one with a tick',
  marks: [
    line('stop', [22, 18, 32, 28], { width: HEAVY }),
    line('stop', [32, 18, 22, 28], { width: HEAVY }),
    text(44, 26, 'must fix', 'stop'),
    line('attention', [27, 43, 27, 52], { width: HEAVY }),
    circle('attention', 27, 57, 1, { fill: 'attention' }),
    text(44, 53, 'check', 'attention'),
    line('good', [21, 77, 26, 82, 34, 71], { width: HEAVY }),
    text(44, 80, 'OK', 'good'),
    ...[23, 50, 77].map((y) => line('rule', [84, y, 144, y], { width: LINE })),
  ],
};

export const LIMIT: Sketch = {
  alt: 'A figure beside the line that it should not pass',
  marks: [
    line('soft', [20, 84, 140, 84], { width: LINE }),
    line('stop', [20, 34, 140, 34], { dash: 'dashed', width: LINE }),
    text(140, 30, 'limit', 'stop', 'right'),
    block([56, 64], [18, 40], 0, { fill: 'steel' }, 'steel'),
    block([100, 54], [18, 60], 0, { fill: 'stop' }, 'stop'),
  ],
};

export const CLEARANCE: Sketch = {
  alt: 'Two parts and the least distance between them',
  marks: [
    line('steel', [10, 62, 150, 48], { width: HEAVY }),
    block([80, 22], [60, 26]),
    ...dimension([96, 35, 96, 53.4], 'nearest', [4, 3], 'left'),
  ],
};

export const TOLERANCE: Sketch = {
  alt: 'A curve and the band in which nineteen cars of twenty lie',
  marks: [
    line('rule', [14, 24, 50, 42, 80, 47, 116, 52, 148, 70, 148, 88, 116, 66, 80, 53, 50, 56, 14, 46], {
      closed: true,
      fill: 'rule',
      width: THIN,
    }),
    line('steel', [14, 34, 50, 49, 80, 50, 116, 59, 148, 80], { width: HEAVY }),
    line('soft', [80, 10, 80, 92], { width: THIN }),
    text(20, 92, '19 cars in 20'),
  ],
};

export const LAYOUT: Sketch = {
  alt: 'One drawing, and copies of it that differ',
  marks: [
    block([92, 40], [62, 46], 0, { width: LINE }, 'soft'),
    block([80, 50], [62, 46], 0, { width: LINE }, 'soft'),
    block([68, 60], [62, 46], 0, { width: LINE }),
    line('steel', [48, 66, 88, 60], { width: HEAVY }),
    ball(48, 66),
    ball(88, 60),
  ],
};

export const HARDPOINT: Sketch = {
  alt: 'A point with its three distances: back from the axle, out from the centre line, up from the ground',
  marks: [
    line('soft', [30, 80, 140, 80], { width: LINE }),
    line('soft', [30, 80, 30, 14], { dash: 'centre', width: THIN }),
    ball(104, 38),
    ...dimension([30, 66, 104, 66], 'back from the axle', [0, -2.5]),
    ...dimension([120, 38, 120, 80], 'up', [3, 2.5], 'left'),
    line('attention', [104, 38, 122, 38], { width: THIN }),
    line('attention', [104, 41, 104, 68], { width: THIN }),
  ],
};

export const STATION: Sketch = {
  alt: 'Heights of the axle at which the gauge is read',
  marks: [
    line('soft', [80, 10, 80, 92], { width: LINE }),
    ...[18, 34, 50, 66, 82].map((y) => line('steel', [72, y, 88, y], { width: LINE })),
    text(94, 53, 'ride height'),
    text(94, 21, 'bump'),
    text(94, 85, 'droop'),
    circle('good', 52, 18, 3),
    circle('good', 57, 34, 3),
    circle('good', 62, 50, 3),
    circle('good', 67, 66, 3),
    circle('good', 66, 82, 3),
  ],
};
