import { toRadians } from '../../units/index.ts';
import {
  angle,
  arc,
  arrow,
  ball,
  block,
  circle,
  dimension,
  ground,
  HEAVY,
  LINE,
  line,
  type Mark,
  type Sketch,
  THIN,
  text,
  wheelSide,
} from './marks.ts';

// One wheel with its kingpin, from the side and from ahead, and both from above. The front of the car is at the left.

const FRONT: readonly Mark[] = [...arrow('soft', [26, 10, 8, 10]), text(29, 12.5, 'front')];

/** Where the kingpin's axis stands at a height of the side view: it meets the ground 9 ahead of the contact point. */
const casterX = (y: number) => 80 + ((55 - y) * 9) / 32;

const sideKingpin = (alt: string, marks: readonly Mark[]): Sketch => ({
  alt,
  marks: [
    ground(87),
    ...wheelSide(80, 55, 32),
    line('soft', [80, 92, 80, 8], { dash: 'centre', width: THIN }),
    line('steel', [casterX(92), 92, casterX(8), 8], { width: HEAVY }),
    ...FRONT,
    ...marks,
  ],
});

export const CASTER = sideKingpin(
  'A wheel from the side: the kingpin leans back at the top, an angle from plumb',
  [...angle([80, 55, 40], [-90, -74.3], 'caster', [16, 4], 'left')],
);

export const TRAIL = sideKingpin(
  'A wheel from the side: the kingpin’s line meets the ground ahead of the middle of the tyre’s contact',
  [
    ...dimension([casterX(87), 95, 80, 95], 'trail', [8, 1], 'left'),
    line('attention', [80, 87, 80, 97], { width: THIN }),
  ],
);

/** The kingpin's axis from ahead: leans in at the top and meets the ground 9 inboard of the contact point. */
const kingpinX = (y: number) => 103 - ((87 - y) * 13) / 73;

const beam: readonly Mark[] = [
  line('ink', [4, 62, 70, 62, kingpinX(57), 57], { width: HEAVY }),
  line('soft', [12, 92, 12, 8], { dash: 'centre', width: THIN }),
  text(15, 12.5, 'car’s centre'),
];

const frontKingpin = (alt: string, marks: readonly Mark[]): Sketch => ({
  alt,
  marks: [
    ground(87),
    ...beam,
    block([112, 55], [22, 64]),
    line('steel', [kingpinX(92), 92, kingpinX(8), 8], { width: HEAVY }),
    ball(kingpinX(70), 70),
    ball(kingpinX(42), 42),
    ...marks,
  ],
});

export const KINGPIN = frontKingpin('From ahead: the beam ends in a kingpin, and the wheel turns about it', [
  ...arrow('steel', [128, 20, 101, 26]),
  text(130, 22.5, 'kingpin', 'steel'),
]);

export const INCLINATION = frontKingpin(
  'From ahead: the kingpin leans toward the middle of the car at the top',
  [
    line('soft', [103, 87, 103, 8], { dash: 'centre', width: THIN }),
    ...angle([103, 87, 72], [-100, -90], 'inclination', [16, 0], 'left'),
  ],
);

export const SCRUB = frontKingpin(
  'From ahead: the kingpin’s line meets the ground inboard of the middle of the tyre',
  [
    line('soft', [112, 87, 112, 97], { width: THIN }),
    line('soft', [112, 87, 112, 20], { dash: 'centre', width: THIN }),
    ...dimension([kingpinX(87), 95, 112, 95], 'scrub', [9, 1], 'left'),
  ],
);

export const CAMBER: Sketch = {
  alt: 'From ahead: the wheel leans outward at the top',
  marks: [
    ground(87),
    ...beam,
    block([112, 55], [22, 64], 7),
    line('soft', [110, 92, 110, 8], { dash: 'centre', width: THIN }),
    line('steel', [107.4, 92, 117.8, 8], { width: LINE }),
    ...angle([110, 71, 58], [-90, -83], 'camber', [3, 0], 'left'),
  ],
};

/** Both front wheels from above, each turned by its own degrees (front of the wheel toward the top above 0). */
const fromAbove = (
  alt: string,
  [right, left]: readonly [number, number],
  marks: readonly Mark[],
): Sketch => ({
  alt,
  marks: [
    line('ink', [52, 22, 52, 78], { width: HEAVY }),
    block([52, 18], [36, 12], right),
    block([52, 82], [36, 12], left),
    ...FRONT.map((mark) => shifted(mark, 0, 40)),
    ...marks,
  ],
});

function shifted(mark: Mark, dx: number, dy: number): Mark {
  if (mark.kind !== 'line') return { ...mark, x: mark.x + dx, y: mark.y + dy };
  return { ...mark, at: mark.at.map((value, i) => value + (i % 2 === 0 ? dx : dy)) };
}

export const TOE = fromAbove(
  'From above: the wheels stand closer together in front than behind',
  [-7, 7],
  [
    line('soft', [34, 20.2, 34, 79.8], { width: THIN, dash: 'dotted' }),
    ...dimension([33, 22, 33, 78], '', [0, 0]),
    ...dimension([71, 18, 71, 82], 'wider behind', [4, 0], 'left'),
    text(29, 66, 'closer', 'attention', 'right'),
  ],
);

export const WHEELBASE = fromAbove(
  'From above: from the front axle’s centre line to the rear axle’s',
  [0, 0],
  [
    line('ink', [136, 22, 136, 78], { width: HEAVY }),
    block([136, 18], [36, 12]),
    block([136, 82], [36, 12]),
    ...dimension([52, 50, 136, 50], 'wheelbase', [0, -3]),
  ],
);

export const TRACK = fromAbove(
  'From above: how far the two kingpins stand apart',
  [0, 0],
  [
    ball(52, 28),
    ball(52, 72),
    line('attention', [52, 28, 88, 28], { width: THIN }),
    line('attention', [52, 72, 88, 72], { width: THIN }),
    ...dimension([84, 28, 84, 72], 'kingpin track', [4, 2], 'left'),
  ],
);

export const STEER = fromAbove(
  'From above: both front wheels turned the same way',
  [12, 12],
  [
    ...arrow('steel', arcPointsOf(52, 18, 26, 180, 206)),
    ...arrow('steel', arcPointsOf(52, 82, 26, 180, 206)),
    text(92, 46, 'both wheels'),
    text(92, 55, 'the same way'),
  ],
);

function arcPointsOf(x: number, y: number, radius: number, from: number, to: number): readonly number[] {
  const mark = arc('steel', [x, y, radius], [from, to]);
  return mark.kind === 'line' ? mark.at : [];
}

export const ACKERMANN: Sketch = {
  alt: 'From above: lines from the kingpins through the tie rod balls meet near the middle of the rear axle',
  marks: [
    line('ink', [34, 22, 34, 78], { width: HEAVY }),
    block([34, 18], [30, 11]),
    block([34, 82], [30, 11]),
    line('ink', [140, 24, 140, 76], { width: HEAVY }),
    block([140, 18], [30, 11]),
    block([140, 82], [30, 11]),
    line('good', [34, 27, 140, 50, 34, 73], { dash: 'dotted', width: LINE }),
    line('steel', [34, 27, 52, 31, 52, 69, 34, 73], { width: HEAVY }),
    ball(52, 31),
    ball(52, 69),
    ball(34, 27, 'ink'),
    ball(34, 73, 'ink'),
    circle('good', 140, 50, 2.6, { fill: 'good' }),
    text(88, 46, 'aim here', 'good', 'right'),
  ],
};

export const TURNING: Sketch = {
  alt: 'From above: the car at full lock on the circle that its outer front corner just clears',
  marks: [
    arc('attention', [96, 78, 62], [180, 345], { dash: 'dashed' }),
    line('ink', [52, 44, 40, 60], { width: HEAVY }),
    line('ink', [92, 68, 82, 83], { width: HEAVY }),
    line('ink', [46, 52, 87, 75], { width: LINE }),
    block([52, 44], [17, 6], 8),
    block([40, 60], [17, 6], -2),
    block([92, 68], [17, 6], 30),
    block([82, 83], [17, 6], 30),
    ...dimension([96, 78, 145, 40], '', [0, 0]),
    text(154, 97, 'twice this, between kerbs', 'attention', 'right'),
    circle('ink', 96, 78, 1.4, { fill: 'ink' }),
  ],
};

export const TYRE: Sketch = {
  alt: 'A tyre on the ground: from the hub’s middle down to the ground',
  marks: [
    ground(88),
    line('ink', arcOpen(), { width: LINE }),
    circle('ink', 70, 55, 21, { width: THIN }),
    ball(70, 55),
    ...dimension([70, 55, 70, 88], '', [0, 0]),
    text(112, 74, 'loaded radius', 'attention'),
    line('attention', [110, 72, 72, 72], { width: THIN }),
  ],
};

/** A tyre's outline with the flat that it stands on. */
function arcOpen(): readonly number[] {
  const points: number[] = [];
  for (let degrees = 112; degrees <= 428; degrees += 6) {
    const t = toRadians(degrees);
    points.push(70 + 35 * Math.cos(t), Math.min(88, 55 + 35 * Math.sin(t)));
  }
  return points.slice();
}
