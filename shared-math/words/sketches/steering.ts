import {
  angle,
  arc,
  arrow,
  ball,
  block,
  circle,
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

// The steering from the side and from above; the front of the car is at the left.

/** Side steer from the side: wheel and axle at the left, the box on the rail behind them. */
function sideSteer(alt: string, marks: readonly Mark[], { quiet = false } = {}): Sketch {
  const steel = quiet ? 'soft' : 'steel';
  return {
    alt,
    marks: [
      ground(88),
      ...wheelSide(36, 62, 26),
      line('ink', [14, 30, 152, 30], { width: LINE }),
      line('ink', [14, 37, 152, 37], { width: LINE }),
      circle('ink', 118, 26, 8, { fill: 'paper' }),
      line(steel, [118, 26, 118, 54], { width: HEAVY }),
      line(steel, [36, 46, 118, 54], { width: HEAVY }),
      line(steel, [36, 62, 36, 46], { width: HEAVY }),
      ball(36, 46, steel),
      ball(118, 54, steel),
      circle('ink', 118, 26, 2, { fill: 'ink' }),
      ...marks,
    ],
  };
}

const pointer = (words: string, x: number, y: number, toX: number, toY: number): Mark[] => [
  ...arrow('attention', [x, y - 2.5, toX, toY], { width: THIN }),
  text(x + (toX < x ? 2 : -2), y, words, 'attention', toX < x ? 'left' : 'right'),
];

export const SIDE_STEER = sideSteer(
  'From the side: the box on the rail swings its arm fore and aft, a link runs along the car to the wheel',
  [...turnArrow('attention', [118, 26, 40], [70, 110]), text(118, 78, 'fore and aft', 'attention', 'centre')],
);

export const PITMAN_ARM = sideSteer('The pitman arm hangs from the box and carries the drag link', [
  ...pointer('pitman arm', 111, 46, 117, 43),
]);

export const DRAG_LINK = sideSteer(
  'The drag link runs from the pitman arm to the steering arm at the wheel',
  [...pointer('drag link', 84, 74, 78, 53)],
);

export const STEERING_ARM = sideSteer(
  'The steering arm is fixed to the spindle and carries the drag link’s front end',
  [...pointer('steering arm', 66, 74, 39, 55)],
);

export const BOX = sideSteer('The steering box is bolted to the rail', [...pointer('box', 138, 15, 126, 22)]);

export const SECTOR_SHAFT = sideSteer('The sector shaft comes out of the box and carries the pitman arm', [
  ...pointer('sector shaft', 98, 14, 115, 25),
  ...turnArrow('attention', [118, 26, 12], [-150, -30]),
]);

export const AIM_POINT = sideSteer(
  'The front end of the drag link swings on an arc; the middle of that arc is the aim point',
  [
    arc('good', [104, 51, 68], [168, 200], { dash: 'dotted', width: LINE }),
    circle('good', 104, 51, 4, { width: LINE }),
    line('good', [98, 51, 110, 51], { width: THIN }),
    line('good', [104, 45, 104, 57], { width: THIN }),
    text(104, 68, 'aim point', 'good', 'centre'),
  ],
  { quiet: true },
);

export const ZERO_SLOPE = sideSteer(
  'A line from the steering arm ball through the aim point: a pitman ball on it starts with no bump steer',
  [
    line('good', [36, 46, 156, 52.9], { dash: 'dotted', width: LINE }),
    circle('good', 104, 49.9, 3, { width: LINE }),
    line('attention', [118, 54, 118, 50.7], { width: HEAVY }),
    text(104, 72, 'zero-slope line', 'good', 'centre'),
  ],
  { quiet: true },
);

export const RIDGE: Sketch = {
  alt: 'A map of places for the pitman ball: bands of bump steer, and along their bottom the ridge of least',
  marks: [
    line('rule', [20, 12, 140, 12, 140, 88, 20, 88], { closed: true, width: LINE }),
    line('attention', [20, 26, 60, 30, 100, 34, 140, 33], { width: THIN }),
    line('attention', [20, 38, 60, 41, 100, 44, 140, 43], { width: THIN }),
    line('attention', [20, 66, 60, 64, 100, 62, 140, 63], { width: THIN }),
    line('attention', [20, 78, 60, 75, 100, 72, 140, 74], { width: THIN }),
    line('good', [20, 52, 60, 52.5, 100, 53, 140, 53], { dash: 'dotted', width: HEAVY }),
    circle('good', 88, 53, 3.4, { fill: 'good' }),
    text(134, 50, 'ridge', 'good', 'right'),
    text(24, 22, 'more bump steer', 'attention'),
    text(24, 86, 'more bump steer', 'attention'),
  ],
};

export const BEST_SPOT: Sketch = {
  alt: 'On the ridge of the map, the one place with the least bump steer of all',
  marks: [
    ...RIDGE.marks.filter((mark) => mark.kind !== 'text'),
    text(88, 61.5, 'best spot', 'good', 'centre'),
  ],
};

export const BUMP_STEER: Sketch = {
  alt: 'From above: the axle rises, the link pulls, and both wheels turn although nobody turns the handwheel',
  marks: [
    line('ink', [44, 24, 44, 76], { width: HEAVY }),
    block([44, 20], [34, 11], 10, {}, 'soft'),
    block([44, 80], [34, 11], 10, {}, 'soft'),
    ...turnArrow('stop', [44, 20, 24], [180, 204]),
    ...turnArrow('stop', [44, 80, 24], [180, 204]),
    line('steel', [56, 74, 124, 68], { width: HEAVY }),
    line('steel', [44, 76, 56, 74], { width: HEAVY }),
    ball(56, 74),
    ball(124, 68),
    circle('ink', 124, 46, 12, { width: LINE }),
    circle('ink', 124, 46, 2, { fill: 'ink' }),
    text(124, 30, 'held', 'soft', 'centre'),
    text(66, 40, 'axle up', 'stop'),
  ],
};

export const SLOPE: Sketch = {
  alt: 'A curve of steer over travel: how steep it is at ride height is the slope',
  marks: [
    line('soft', [80, 10, 80, 92], { width: THIN }),
    line('soft', [12, 52, 150, 52], { width: THIN }),
    line('steel', [30, 12, 46, 24, 62, 37, 80, 52, 98, 62, 116, 68, 134, 70], { width: HEAVY }),
    line('attention', [50, 27, 110, 77], { dash: 'dashed', width: LINE }),
    text(114, 88, 'slope', 'attention'),
    text(148, 48, 'travel', 'soft', 'right'),
    text(84, 16, 'steer'),
  ],
};

export const CURVE: Sketch = {
  alt: 'A curve of steer over travel, and its largest value',
  marks: [
    ...SLOPE.marks.slice(0, 3),
    circle('stop', 30, 12, 3),
    text(36, 14, 'worst', 'stop'),
    text(148, 48, 'travel', 'soft', 'right'),
    text(84, 16, 'steer'),
  ],
};

/** Both front wheels from above with a tie rod behind them, and what else there is. */
const above = (alt: string, marks: readonly Mark[], turned = 0): Sketch => ({
  alt,
  marks: [
    line('ink', [44, 24, 44, 76], { width: HEAVY }),
    block([44, 20], [34, 11], turned),
    block([44, 80], [34, 11], turned),
    ...marks,
  ],
});

const TIE: readonly Mark[] = [
  line('steel', [44, 27, 62, 30, 62, 70, 44, 73], { width: HEAVY }),
  ball(62, 30),
  ball(62, 70),
];

export const TIE_ROD = above('From above: the tie rod joins both spindles behind the axle', [
  ...TIE,
  ...pointer('tie rod', 96, 52, 66, 50),
]);

export const CROSS_STEER = above(
  'From above: the box at the rail swings its arm across the car, a link runs over to the far wheel',
  [
    ...TIE,
    line('ink', [14, 64, 152, 64], { width: THIN }),
    block([36, 62], [14, 12]),
    line('steel', [30, 62, 30, 48], { width: HEAVY }),
    line('steel', [30, 48, 40, 20], { width: HEAVY }),
    ball(30, 48),
    ball(40, 22),
    ...turnArrow('attention', [30, 62, 19], [-115, -60]),
    text(74, 18, 'to the far wheel', 'attention'),
    text(110, 73, 'rail'),
  ],
);

export const LOCK = above(
  'From above: the inner wheel turned as far as it goes',
  [
    line('soft', [44, 20, 8, 20], { dash: 'centre', width: THIN }),
    line('soft', [44, 80, 8, 80], { dash: 'centre', width: THIN }),
    ...angle([44, 80, 32], [180, 208], 'lock', [-9, -8], 'left'),
    text(86, 52, 'as far as it goes'),
  ],
  28,
);

export const STOPS = above(
  'From above: a bolt at the spindle meets the axle and ends the turn before the box does',
  [
    ball(44, 73, 'ink'),
    line('steel', [44, 73, 58, 66], { width: HEAVY }),
    line('stop', [49, 58, 57, 58], { width: HEAVY }),
    line('stop', [53, 54, 53, 64], { width: LINE }),
    ...pointer('stop', 88, 62, 60, 60),
  ],
  20,
);

export const DEAD_CENTRE: Sketch = {
  alt: 'Arm and link in one straight line: the link cannot push the arm any further',
  marks: [
    ...fixedPivot(46, 50),
    line('steel', [46, 50, 82, 50], { width: HEAVY }),
    line('steel', [82, 50, 150, 50], { width: HEAVY }),
    ball(82, 50),
    ball(150, 50),
    ball(46, 50, 'ink'),
    ...turnArrow('stop', [46, 50, 36], [-40, -8]),
    text(98, 42, 'in line: stuck', 'stop'),
  ],
};

export const TRANSMISSION: Sketch = {
  alt: 'The angle between a link and the arm that it moves',
  marks: [
    ...fixedPivot(46, 78),
    line('steel', [46, 78, 58, 30], { width: HEAVY }),
    line('steel', [58, 30, 148, 42], { width: HEAVY }),
    ball(58, 30),
    ball(148, 42),
    ...angle([58, 30, 24], [7.6, 104], 'square is best', [4, 4], 'left'),
  ],
};

export const HANDWHEEL: Sketch = {
  alt: 'A handwheel turned from one lock to the other',
  marks: [
    circle('ink', 80, 52, 32, { width: HEAVY }),
    circle('ink', 80, 52, 6),
    line('ink', [74, 54, 49, 60], { width: LINE }),
    line('ink', [86, 54, 111, 60], { width: LINE }),
    line('ink', [80, 58, 80, 84], { width: LINE }),
    ...turnArrow('attention', [80, 52, 42], [-60, -130]),
    ...turnArrow('attention', [80, 52, 42], [-30, 40]),
  ],
};

export const RATIO: Sketch = {
  alt: 'The handwheel turns many degrees for one degree of the wheels',
  marks: [
    circle('ink', 40, 50, 24, { width: HEAVY }),
    circle('ink', 40, 50, 3, { fill: 'ink' }),
    ...turnArrow('attention', [40, 50, 32], [-90, 30]),
    text(80, 53, 'to', 'soft', 'centre'),
    block([122, 50], [44, 14], 8),
    line('soft', [94, 50, 150, 50], { dash: 'centre', width: THIN }),
    ...turnArrow('attention', [122, 50, 30], [180, 189]),
    text(40, 94, '16°', 'attention', 'centre'),
    text(122, 80, '1°', 'attention', 'centre'),
  ],
};

export const EFFORT: Sketch = {
  alt: 'A pull at the rim of the handwheel',
  marks: [
    circle('ink', 70, 52, 32, { width: HEAVY }),
    circle('ink', 70, 52, 3, { fill: 'ink' }),
    ...arrow('attention', [102, 28, 102, 84]),
    text(108, 60, 'pull at the rim', 'attention'),
  ],
};

export const KICK: Sketch = {
  alt: 'A wheel meets a bump and throws the handwheel',
  marks: [
    ground(88),
    line('ink', [40, 88, 52, 80, 64, 80, 76, 88], { closed: true, fill: 'soft', width: LINE }),
    ...wheelSide(34, 62, 22),
    circle('ink', 122, 44, 22, { width: HEAVY }),
    circle('ink', 122, 44, 3, { fill: 'ink' }),
    ...turnArrow('stop', [122, 44, 30], [-120, -60]),
    line('steel', [50, 60, 98, 48], { width: LINE, dash: 'dashed' }),
    text(122, 84, 'kick', 'stop', 'centre'),
  ],
};

export const RETURN: Sketch = {
  alt: 'The wheels turned, and an arrow back to straight ahead',
  marks: [
    line('soft', [20, 50, 140, 50], { dash: 'centre', width: THIN }),
    block([80, 50], [64, 20], 20),
    ...turnArrow('good', [80, 50, 44], [200, 182]),
    ...turnArrow('good', [80, 50, 44], [20, 2]),
    text(80, 88, 'back to straight', 'good', 'centre'),
  ],
};
