import { toDegrees } from '../../units/index.ts';
import {
  arc,
  arrow,
  ball,
  block,
  circle,
  dimension,
  fixedPivot,
  ground,
  HEAVY,
  LINE,
  line,
  type Mark,
  type Sketch,
  THIN,
  text,
  turnArrow,
  wheelSide,
} from './marks.ts';

// The axle from ahead, and what holds it from the side. From the side the front of the car is at the left.

/** The axle from ahead: how high each wheel stands above its place, and the frame. */
function fromAhead(alt: string, [left, right]: readonly [number, number], marks: readonly Mark[]): Sketch {
  const lean = toDegrees(Math.atan2(right - left, -104));
  const tilt = lean > 90 ? lean - 180 : lean < -90 ? lean + 180 : lean;
  return {
    alt,
    marks: [
      ground(92),
      block([28, 68 - left], [16, 48], tilt),
      block([132, 68 - right], [16, 48], tilt),
      line('steel', [36, 66 - left, 124, 66 - right], { width: HEAVY }),
      block([62, 34], [8, 14]),
      block([98, 34], [8, 14]),
      line('ink', [66, 34, 94, 34], { width: LINE }),
      ...marks,
    ],
  };
}

export const HEAVE = fromAhead(
  'From ahead: the whole axle rises toward the frame, level',
  [10, 10],
  [
    ...arrow('attention', [50, 84, 50, 62]),
    ...arrow('attention', [110, 84, 110, 62]),
    text(80, 84, 'heave', 'attention', 'centre'),
  ],
);

export const ROLL = fromAhead(
  'From ahead: one wheel up and the other down against the frame',
  [10, -6],
  [
    ...arrow('attention', [46, 84, 46, 64]),
    ...arrow('attention', [114, 58, 114, 78]),
    text(80, 88, 'roll', 'attention', 'centre'),
  ],
);

export const ONE_WHEEL = fromAhead(
  'From ahead: one wheel goes over a bump, the other stays down',
  [14, 0],
  [
    line('ink', [14, 92, 18, 78, 38, 78, 42, 92], { closed: true, fill: 'soft', width: LINE }),
    text(80, 84, 'one wheel up', 'attention', 'centre'),
  ],
);

export const TRAVEL = fromAhead(
  'From ahead: how far the axle goes up and down from ride height',
  [0, 0],
  [
    line('soft', [36, 54, 124, 54], { dash: 'dashed', width: THIN }),
    line('soft', [36, 80, 124, 80], { dash: 'dashed', width: THIN }),
    ...arrow('attention', [80, 66, 80, 55]),
    ...arrow('attention', [80, 66, 80, 79]),
    text(84, 60, 'bump', 'attention'),
    text(84, 77, 'droop', 'attention'),
  ],
);

export const RIDE_HEIGHT = fromAhead(
  'From ahead: the car at rest on its springs, frame above ground',
  [0, 0],
  [...dimension([98, 41, 98, 92], '', [0, 0]), text(94, 84, 'ride height', 'attention', 'right')],
);

export const CENTRED = fromAhead(
  'From ahead: what keeps the axle in the middle of the car',
  [0, 0],
  [
    arc('ink', [80, 96, 62], [232, 308], { width: LINE }),
    ...arrow('attention', [70, 78, 50, 78]),
    ...arrow('attention', [90, 78, 110, 78]),
    text(80, 88, 'sideways', 'attention', 'centre'),
  ],
);

export const LATERAL_BAR = fromAhead(
  'From ahead: a bar from the frame to the axle keeps it from moving sideways',
  [0, 0],
  [
    line('ink', [62, 41, 62, 56], { width: LINE }),
    line('steel', [62, 56, 116, 60], { width: HEAVY }),
    line('ink', [116, 60, 116, 66], { width: LINE }),
    ball(62, 56),
    ball(116, 60),
    text(88, 80, 'lateral bar', 'attention', 'centre'),
  ],
);

export const WATT = fromAhead(
  'From ahead: two bars and a rocker lead the axle straight up and down',
  [0, 0],
  [
    line('steel', [62, 50, 80, 50], { width: HEAVY }),
    line('steel', [80, 50, 80, 78], { width: HEAVY }),
    line('steel', [80, 78, 98, 78], { width: HEAVY }),
    line('ink', [62, 41, 62, 50], { width: LINE }),
    line('ink', [98, 41, 98, 78], { width: LINE }),
    ball(62, 50),
    ball(80, 50),
    ball(80, 64),
    ball(80, 78),
    ball(98, 78),
    text(104, 56, 'rocker', 'attention'),
  ],
);

export const TRANSVERSE = fromAhead(
  'From ahead: one spring across the car, hung from the axle by shackles',
  [0, 0],
  [
    arc('ink', [80, 122, 82], [238, 302], { width: HEAVY }),
    line('ink', [36.5, 52, 42, 64], { width: LINE }),
    line('ink', [123.5, 52, 118, 64], { width: LINE }),
    ball(36.5, 52, 'ink'),
    ball(123.5, 52, 'ink'),
    text(80, 80, 'spring', 'attention', 'centre'),
  ],
);

/** Wheel and frame rail from the side, and what joins the axle to the frame. */
const held = (alt: string, marks: readonly Mark[]): Sketch => ({
  alt,
  marks: [
    ground(90),
    ...wheelSide(40, 62, 28),
    line('ink', [12, 26, 152, 26], { width: LINE }),
    line('ink', [12, 34, 152, 34], { width: LINE }),
    ...marks,
  ],
});

export const HAIRPIN = held('From the side: a hairpin, fixed to the axle, with one ball on the frame', [
  line('steel', [40, 52, 124, 60, 40, 72], { width: HEAVY }),
  line('ink', [124, 34, 124, 60], { width: LINE }),
  ball(124, 60),
  ...turnArrow('attention', [124, 60, 84], [196, 168]),
]);

export const FOUR_BAR = held('From the side: two bars each side, with a ball at both ends of each', [
  line('steel', [40, 50, 118, 48], { width: HEAVY }),
  line('steel', [40, 74, 118, 72], { width: HEAVY }),
  line('steel', [40, 50, 40, 74], { width: HEAVY }),
  line('ink', [118, 34, 118, 72], { width: LINE }),
  ball(40, 50),
  ball(118, 48),
  ball(40, 74),
  ball(118, 72),
]);

export const LEAF = held(
  'From the side: a leaf spring along the rail, its front eye fixed, a shackle behind',
  [
    line('steel', [14, 50, 24, 58, 40, 64, 70, 62, 96, 52, 108, 46], { width: HEAVY }),
    line('ink', [108, 34, 112, 36, 108, 46], { width: LINE }),
    line('ink', [14, 34, 14, 50], { width: LINE }),
    ball(14, 50, 'ink'),
    ball(108, 46, 'ink'),
    ...arrow('attention', [134, 52, 112, 42], { width: THIN }),
    text(136, 56, 'shackle', 'attention'),
  ],
);

export const QUARTER = held('From the side: half a leaf spring, its thick end clamped to the frame', [
  line('steel', [40, 60, 70, 54, 118, 40], { width: HEAVY }),
  block([122, 38], [18, 12]),
  ball(40, 60),
  text(122, 56, 'clamped', 'attention', 'centre'),
]);

export const WRAP = held('From the side: braking turns the axle on its leaves, and the kingpin stands up', [
  line('soft', [14, 50, 24, 58, 40, 64, 70, 62, 96, 52, 108, 46], { dash: 'dashed', width: LINE }),
  line('steel', [14, 50, 24, 60, 34, 70, 44, 58, 62, 50, 90, 52, 108, 46], { width: HEAVY }),
  line('soft', [35, 88, 47, 22], { dash: 'centre', width: THIN }),
  line('steel', [40, 88, 40, 20], { width: LINE }),
  ...turnArrow('stop', [40, 62, 36], [-75, -98]),
  text(76, 82, 'braking turns the axle', 'stop'),
]);

export const RADIUS_ROD = held('From the side: a rod from the axle back to one pivot on the frame', [
  line('steel', [40, 62, 124, 58], { width: HEAVY }),
  line('ink', [124, 34, 124, 58], { width: LINE }),
  ball(40, 62),
  ball(124, 58),
]);

/** Axle and rods from above. */
const rods = (alt: string, marks: readonly Mark[]): Sketch => ({
  alt,
  marks: [
    line('ink', [30, 22, 30, 78], { width: HEAVY }),
    block([30, 18], [28, 10]),
    block([30, 82], [28, 10]),
    ...marks,
  ],
});

export const WISHBONE = rods('From above: two rods from the axle meet in one ball in the middle of the car', [
  line('steel', [30, 30, 128, 50, 30, 70], { width: HEAVY }),
  ball(128, 50),
  text(128, 66, 'one ball', 'attention', 'centre'),
]);

export const SPLIT_RODS = rods('From above: the rods cut apart, each with its own ball at the rail', [
  line('ink', [14, 36, 152, 36], { width: THIN }),
  line('ink', [14, 64, 152, 64], { width: THIN }),
  line('steel', [30, 30, 128, 36], { width: HEAVY }),
  line('steel', [30, 70, 128, 64], { width: HEAVY }),
  ball(128, 36),
  ball(128, 64),
  text(128, 54, 'one each', 'attention', 'centre'),
]);

export const BIND: Sketch = {
  alt: 'Two rods want the axle in different places: a gap is left that bushings have to give',
  marks: [
    ...fixedPivot(130, 24),
    ...fixedPivot(130, 66),
    line('steel', [130, 24, 60, 44], { width: HEAVY }),
    line('steel', [130, 66, 60, 58], { width: HEAVY }),
    ball(60, 44),
    ball(60, 58),
    ball(130, 24, 'ink'),
    ball(130, 66, 'ink'),
    ...dimension([46, 44, 46, 58], 'has to give', [-4, 2.5], 'right', 'stop'),
  ],
};

export const BEAM: Sketch = {
  alt: 'An I-beam twists along its length; a tube does not',
  marks: [
    block([46, 36], [36, 5]),
    block([46, 64], [36, 5]),
    block([46, 50], [6, 24]),
    circle('ink', 116, 50, 17),
    circle('ink', 116, 50, 12),
    ...turnArrow('attention', [46, 50, 26], [-150, -40]),
    text(46, 90, 'I-beam: twists', 'soft', 'centre'),
    text(116, 90, 'tube: does not', 'soft', 'centre'),
  ],
};

export const BRAKE_STEER: Sketch = {
  alt: 'Braking from the side: the axle turns under, carries the steering arm forward, and the link holds it back',
  marks: [
    ground(90),
    ...wheelSide(40, 62, 28),
    ...turnArrow('stop', [40, 62, 18], [60, 150]),
    line('soft', [40, 62, 40, 40], { dash: 'dashed', width: LINE }),
    line('steel', [40, 62, 34, 41], { width: HEAVY }),
    line('steel', [34, 41, 124, 50], { width: HEAVY }),
    ball(34, 41),
    ball(124, 50),
    ...arrow('stop', [70, 34, 52, 32]),
    text(74, 36, 'carried along', 'stop'),
  ],
};

export const FREQUENCY: Sketch = {
  alt: 'A weight on a spring moves up and down, a little less each time',
  marks: [
    line('soft', [12, 50, 150, 50], { dash: 'centre', width: THIN }),
    line('steel', waves(), { width: HEAVY }),
    ...dimension([37, 90, 87, 90], 'one bounce', [0, -2.5]),
  ],
};

/** A swing that dies away, as points of the field. */
function waves(): readonly number[] {
  return Array.from({ length: 67 }, (_, i) => {
    const x = 12 + 2 * i;
    return [x, 50 - 34 * Math.exp(-i / 24) * Math.cos(((x - 12) / 50) * 2 * Math.PI)];
  }).flat();
}

export const SPRUNG: Sketch = {
  alt: 'Car, spring, axle and tyre one above the other',
  marks: [
    ground(94),
    block([80, 22], [70, 22]),
    text(80, 25, 'carried', 'soft', 'centre'),
    line('ink', [80, 33, 88, 37, 72, 42, 88, 47, 72, 52, 80, 56], { width: LINE }),
    block([80, 64], [44, 14]),
    text(80, 67, 'not carried', 'soft', 'centre'),
    line('ink', [80, 71, 86, 75, 74, 80, 86, 85, 80, 94], { width: LINE }),
    text(94, 48, 'springs'),
    text(94, 85, 'tyre'),
  ],
};
