import { describe, expect, test } from 'vitest';
import { zeroSlopeHeight, zeroSlopeLine } from '../../../shared-math/aim/index.ts';
import type { Analysis } from '../../../shared-math/findings/index.ts';
import type { Point } from '../../../shared-math/geometry/points.ts';
import { box, car, DEG, heard, said, withLayout, withParts } from '../../support/judged-car.ts';
import { CROSS_STEER, LATERALS, LOCATIONS } from '../../support/layouts.ts';

// The whole of each finding in both units, with figures put in where a rule takes them ready made: which way round its
// words, parts and remedies go, and what lies at a limit and on either side of it.

const LOW = { steering: box({ pitmanBall: [-800, 500, 290], sectorCentre: [-800, 500, 430] }) };
const summary = (degrees: number, at: number, over: object = {}) => ({
  heaveSummary: {
    ...car().heaveSummary,
    okCount: 31,
    worstBumpSteer: Math.abs(degrees) * DEG,
    worstSteer: degrees * DEG,
    worstAt: at,
    ...over,
  },
});
const slope = (degreesPerInch: number, okCount = 31) => ({
  heaveSummary: { ...car().heaveSummary, slopeAtRide: (degreesPerInch * DEG) / 25.4, okCount },
});
const rollSlope = (value: number, okCount = 31) => ({
  rollSummary: { ...car().rollSummary, slopeAtRide: value, okCount },
});
const oneWheel = (degrees: number, heave: number, roll: number) => ({
  oneWheel: { status: 'ok', worst: Math.abs(degrees) * DEG, steer: degrees * DEG, heave, roll: roll * DEG },
});
const barred = (axle: Point, frame: Point) => ({
  location: LOCATIONS['four-bar'],
  lateral: { kind: 'bar', axle, frame },
  steering: CROSS_STEER,
});
const LEAF_BEHIND = {
  kind: 'parallel-leaf',
  left: { fixedEye: [-580, 400, 365], seat: [0, 400, 320], shackleEye: [510, 400, 372] },
  right: 'mirror',
};
const BOX_AHEAD = box({ sectorCentre: [800, 500, 490], pitmanBall: [800, 500, 350] });
/** The plain car with its pitman ball that far above the line. */
function onLine(off: number): Analysis {
  const { frontEnd, layout } = car();
  const line = zeroSlopeLine(frontEnd);
  if (!line) throw new Error('no line');
  const { steering } = layout;
  const ball = [-800, 500, zeroSlopeHeight(line, -800) + off];
  return withLayout(car(), { steering: { ...steering, box: { ...steering.box, pitmanBall: ball } } });
}

const SAID = [
  said('no steer of its own', 'bump-steer-worst', () => withParts(car(), summary(0.004, 75)), [
    'info steering.box.pitmanBall | The wheels do not steer themselves over the travel | limit 0.5° |  | common practice, no published source | {at:{heave:75,roll:0,handwheel:0}}',
  ]),
  said(
    'at its limit, in bump, to the left',
    'bump-steer-worst',
    () => withParts(car(), summary(0.5, 75)),
    [
      'info steering.box.pitmanBall | Bump steer 0.50° to the left at 2 15/16 in of bump | limit 0.5° |  | common practice, no published source | {at:{heave:75,roll:0,handwheel:0}}',
    ],
    { mm: ['Bump steer 0.50° to the left at 75.0 mm of bump | limit 0.5° | '] },
  ),
  said(
    'at ride height it is called bump',
    'bump-steer-worst',
    () => withParts(car(), summary(0.3, 0)),
    [
      'info steering.box.pitmanBall | Bump steer 0.30° to the left at 0 in of bump | limit 0.5° |  | common practice, no published source | {at:{heave:0,roll:0,handwheel:0}}',
    ],
    { mm: ['Bump steer 0.30° to the left at 0.0 mm of bump | limit 0.5° | '] },
  ),
  said(
    'past its limit, in droop, to the right',
    'bump-steer-worst',
    () => withParts(car(LOW), summary(-0.9, -50)),
    [
      'attention steering.box.pitmanBall | Bump steer 0.90° to the right at 1 15/16 in of droop | limit 0.5° | Raise the box with its arm 2 in: bump steer 0.14° | common practice, no published source | {at:{heave:-50,roll:0,handwheel:0},remedy:{kind:move,id:steering.box.sectorCentre,to:[-800,500,481.0295]}}',
    ],
    {
      mm: [
        'Bump steer 0.90° to the right at 50.0 mm of droop | limit 0.5° | Raise the box with its arm 51.0 mm: bump steer 0.14°',
      ],
    },
  ),
  said(
    'at twice its limit',
    'bump-steer-worst',
    () => withParts(car(LOW), summary(1, 75)),
    [
      'attention steering.box.pitmanBall | Bump steer 1.00° to the left at 2 15/16 in of bump | limit 0.5° | Raise the box with its arm 2 in: bump steer 0.14° | common practice, no published source | {at:{heave:75,roll:0,handwheel:0},remedy:{kind:move,id:steering.box.sectorCentre,to:[-800,500,481.0295]}}',
    ],
    {
      mm: [
        'Bump steer 1.00° to the left at 75.0 mm of bump | limit 0.5° | Raise the box with its arm 51.0 mm: bump steer 0.14°',
      ],
    },
  ),
  said(
    'past twice its limit',
    'bump-steer-worst',
    () => withParts(car(LOW), summary(1.01, 75)),
    [
      'stop steering.box.pitmanBall | Bump steer 1.01° to the left at 2 15/16 in of bump | limit 0.5° | Raise the box with its arm 2 in: bump steer 0.14° | common practice, no published source | {at:{heave:75,roll:0,handwheel:0},remedy:{kind:move,id:steering.box.sectorCentre,to:[-800,500,481.0295]}}',
    ],
    {
      mm: [
        'Bump steer 1.01° to the left at 75.0 mm of bump | limit 0.5° | Raise the box with its arm 51.0 mm: bump steer 0.14°',
      ],
    },
  ),
  said(
    'a low box: up with it',
    'bump-steer-worst',
    () => car(LOW),
    [
      'stop steering.box.pitmanBall | Bump steer 1.94° to the right at 2 15/16 in of bump | limit 0.5° | Raise the box with its arm 2 in: bump steer 0.14° | common practice, no published source | {at:{heave:75,roll:0,handwheel:0},remedy:{kind:move,id:steering.box.sectorCentre,to:[-800,500,481.0295]}}',
    ],
    {
      mm: [
        'Bump steer 1.94° to the right at 75.0 mm of bump | limit 0.5° | Raise the box with its arm 51.0 mm: bump steer 0.14°',
      ],
    },
  ),
  said(
    'a ball that a usual arm reaches: up with the ball',
    'bump-steer-worst',
    () => car({ steering: box({ pitmanBall: [-800, 500, 310], sectorCentre: [-800, 500, 480] }) }),
    [
      'stop steering.box.pitmanBall | Bump steer 1.24° to the right at 2 15/16 in of bump | limit 0.5° | Raise the pitman ball 1 1/4 in: bump steer 0.14° | common practice, no published source | {at:{heave:75,roll:0,handwheel:0},remedy:{kind:move,id:steering.box.pitmanBall,to:[-800,500,341.0302]}}',
    ],
    {
      mm: [
        'Bump steer 1.24° to the right at 75.0 mm of bump | limit 0.5° | Raise the pitman ball 31.0 mm: bump steer 0.14°',
      ],
    },
  ),
  said(
    'leaves ahead, the box behind: on the other side',
    'bump-steer-worst',
    () =>
      car({
        location: LOCATIONS['parallel-leaf'],
        steering: box({ sectorCentre: [-800, 500, 476.4], pitmanBall: [-800, 500, 336.4] }),
      }),
    [
      'stop steering.box.pitmanBall | Bump steer 4.30° to the right at 2 15/16 in of droop | limit 0.5° | Put the box on the other side of the steering arm ball, where the aim point lies, or run the drag link the other way. | common practice, no published source | {at:{heave:-75,roll:0,handwheel:0}}',
    ],
    {
      mm: [
        'Bump steer 4.30° to the right at 75.0 mm of droop | limit 0.5° | Put the box on the other side of the steering arm ball, where the aim point lies, or run the drag link the other way.',
      ],
    },
  ),
  said(
    'short rods, a long link: nearer to the aim point',
    'bump-steer-worst',
    () =>
      car({
        location: { kind: 'hairpins', left: { framePivot: [-600, 415, 335] }, right: 'mirror' },
        steering: box({ sectorCentre: [-1500, 484, 385.77], pitmanBall: [-1500, 484, 245.77] }),
      }),
    [
      'stop steering.box.pitmanBall | Bump steer 1.09° to the left at 2 15/16 in of bump | limit 0.5° | Bring the pitman ball nearer to the aim point. | common practice, no published source | {at:{heave:75,roll:0,handwheel:0}}',
    ],
    {
      mm: [
        'Bump steer 1.09° to the left at 75.0 mm of bump | limit 0.5° | Bring the pitman ball nearer to the aim point.',
      ],
    },
  ),
  said(
    'no aim: both ways together',
    'bump-steer-worst',
    () =>
      withParts(car(LOW), { ...summary(1.2, 60), aim: { ok: false }, travel: { status: 'out-of-reach' } }),
    [
      'stop steering.box.pitmanBall | Bump steer 1.20° to the left at 2 3/8 in of bump | limit 0.5° | Use Tune to move the box up and along together: the height of the pitman ball alone does not bring it down. | common practice, no published source | {at:{heave:60,roll:0,handwheel:0}}',
    ],
    {
      mm: [
        'Bump steer 1.20° to the left at 60.0 mm of bump | limit 0.5° | Use Tune to move the box up and along together: the height of the pitman ball alone does not bring it down.',
      ],
    },
  ),
  said(
    'nothing solved, no bump steer',
    'bump-steer-worst',
    () => withParts(car(), summary(2, 20, { okCount: 0 })),
    [],
  ),
  said(
    'a shop’s own limit',
    'bump-steer-worst',
    () => withParts(car(), summary(0.28, 40)),
    [
      'attention steering.box.pitmanBall | Bump steer 0.28° to the left at 1 9/16 in of bump | limit 0.25° | Lower the pitman ball 3/8 in: bump steer 0.14° | this shop’s own limit | {at:{heave:40,roll:0,handwheel:0},remedy:{kind:move,id:steering.box.pitmanBall,to:[-800,500,341.0302]}}',
    ],
    {
      mm: [
        'Bump steer 0.28° to the left at 40.0 mm of bump | limit 0.25° | Lower the pitman ball 9.0 mm: bump steer 0.14°',
      ],
      shop: { bumpSteerWorst: 0.25 },
    },
  ),
  said(
    'within its limit, one wheel up',
    'one-wheel',
    () => withParts(car(), oneWheel(0.5, 40, 0)),
    [
      'info steering.box.pitmanBall | Bump steer 0.50° to the left with both wheels 1 9/16 in up | limit 0.5° |  | common practice, no published source | {at:{heave:40,roll:0,handwheel:0}}',
    ],
    { mm: ['Bump steer 0.50° to the left with both wheels 40.0 mm up | limit 0.5° | '] },
  ),
  said(
    'past it, the left wheel up, no height mends it',
    'one-wheel',
    () => withParts(car(), oneWheel(0.6, 20, 1.5)),
    [
      'attention steering.box.pitmanBall | Bump steer 0.60° to the left with the left wheel 1 1/2 in up and the right 1/16 in up | limit 0.5° | Lower the pitman ball 1/2 in: bump steer 0.26° | common practice, no published source | {at:{heave:20,roll:0.0262,handwheel:0},remedy:{kind:move,id:steering.box.pitmanBall,to:[-800,500,337.7003]}}',
    ],
    {
      mm: [
        'Bump steer 0.60° to the left with the left wheel 38.6 mm up and the right 1.4 mm up | limit 0.5° | Lower the pitman ball 12.3 mm: bump steer 0.26°',
      ],
    },
  ),
  said(
    'both wheels down',
    'one-wheel',
    () => withParts(car(), oneWheel(-0.4, -50.8, 0)),
    [
      'info steering.box.pitmanBall | Bump steer 0.40° to the right with both wheels 2 in down | limit 0.5° |  | common practice, no published source | {at:{heave:-50.8,roll:0,handwheel:0}}',
    ],
    { mm: ['Bump steer 0.40° to the right with both wheels 50.8 mm down | limit 0.5° | '] },
  ),
  said('both wheels at ride height', 'one-wheel', () => withParts(car(), oneWheel(-0.4, 0, 0)), [
    'info steering.box.pitmanBall | Bump steer 0.40° to the right with both wheels at ride height | limit 0.5° |  | common practice, no published source | {at:{heave:0,roll:0,handwheel:0}}',
  ]),
  said(
    'the right wheel at ride height',
    'one-wheel',
    () => withParts(car(), oneWheel(0.2, 710 * Math.sin(2 * DEG), 2)),
    [
      'info steering.box.pitmanBall | Bump steer 0.20° to the left with the left wheel 1 15/16 in up and the right at ride height | limit 0.5° |  | common practice, no published source | {at:{heave:24.7786,roll:0.0349,handwheel:0}}',
    ],
    {
      mm: [
        'Bump steer 0.20° to the left with the left wheel 49.6 mm up and the right at ride height | limit 0.5° | ',
      ],
    },
  ),
  said(
    'at twice its limit, a low box',
    'one-wheel',
    () => withParts(car(LOW), oneWheel(1, 40, 1)),
    [
      'attention steering.box.pitmanBall | Bump steer 1.00° to the left with the left wheel 2 1/16 in up and the right 1 1/16 in up | limit 0.5° | Raise the box with its arm 1 7/8 in: bump steer 0.26° | common practice, no published source | {at:{heave:40,roll:0.0175,handwheel:0},remedy:{kind:move,id:steering.box.sectorCentre,to:[-800,500,477.6996]}}',
    ],
    {
      mm: [
        'Bump steer 1.00° to the left with the left wheel 52.4 mm up and the right 27.6 mm up | limit 0.5° | Raise the box with its arm 47.7 mm: bump steer 0.26°',
      ],
    },
  ),
  said(
    'past twice its limit, a low box',
    'one-wheel',
    () => withParts(car(LOW), oneWheel(-1.01, -40, -1)),
    [
      'stop steering.box.pitmanBall | Bump steer 1.01° to the right with the left wheel 2 1/16 in down and the right 1 1/16 in down | limit 0.5° | Raise the box with its arm 1 7/8 in: bump steer 0.26° | common practice, no published source | {at:{heave:-40,roll:-0.0175,handwheel:0},remedy:{kind:move,id:steering.box.sectorCentre,to:[-800,500,477.6996]}}',
    ],
    {
      mm: [
        'Bump steer 1.01° to the right with the left wheel 52.4 mm down and the right 27.6 mm down | limit 0.5° | Raise the box with its arm 47.7 mm: bump steer 0.26°',
      ],
    },
  ),
  said(
    'a low box as it is',
    'one-wheel',
    () => car(LOW),
    [
      'stop steering.box.pitmanBall | Bump steer 1.94° to the right with both wheels 2 15/16 in up | limit 0.5° | Raise the box with its arm 1 7/8 in: bump steer 0.26° | common practice, no published source | {at:{heave:75,roll:0,handwheel:0},remedy:{kind:move,id:steering.box.sectorCentre,to:[-800,500,477.6996]}}',
    ],
    {
      mm: [
        'Bump steer 1.94° to the right with both wheels 75.0 mm up | limit 0.5° | Raise the box with its arm 47.7 mm: bump steer 0.26°',
      ],
    },
  ),
  said(
    'a low box out of reach in travel',
    'one-wheel',
    () =>
      withParts(car(LOW), {
        ...oneWheel(0.9, 40, 1),
        travel: { ...car(LOW).travel, status: 'out-of-reach' },
      }),
    [
      'attention steering.box.pitmanBall | Bump steer 0.90° to the left with the left wheel 2 1/16 in up and the right 1 1/16 in up | limit 0.5° | Use Tune to move the box up and along together: the height of the pitman ball alone does not bring it down. | common practice, no published source | {at:{heave:40,roll:0.0175,handwheel:0}}',
    ],
    {
      mm: [
        'Bump steer 0.90° to the left with the left wheel 52.4 mm up and the right 27.6 mm up | limit 0.5° | Use Tune to move the box up and along together: the height of the pitman ball alone does not bring it down.',
      ],
    },
  ),
  said(
    'no pose, no wheel',
    'one-wheel',
    () => withParts(car(), { oneWheel: { status: 'out-of-reach', heave: 0, roll: 0 } }),
    [],
  ),
  said(
    'slope within its limit',
    'bump-steer-slope',
    () => withParts(car(), slope(0.2)),
    [
      'info steering.box.pitmanBall | Bump steer starts at 0.20° per inch to the left in bump | limit 0.25° per inch |  | common practice, no published source',
    ],
    { mm: ['Bump steer starts at 0.20° per 25 mm to the left in bump | limit 0.2461° per 25 mm | '] },
  ),
  said(
    'slope past its limit',
    'bump-steer-slope',
    () => withParts(car(), slope(-0.7)),
    [
      'attention steering.box.pitmanBall | Bump steer starts at 0.70° per inch to the right in bump | limit 0.25° per inch | Bring the pitman ball onto the zero-slope line. | common practice, no published source',
    ],
    {
      mm: [
        'Bump steer starts at 0.69° per 25 mm to the right in bump | limit 0.2461° per 25 mm | Bring the pitman ball onto the zero-slope line.',
      ],
    },
  ),
  said(
    'slope past three times its limit',
    'bump-steer-slope',
    () => withParts(car(), slope(0.77)),
    [
      'stop steering.box.pitmanBall | Bump steer starts at 0.77° per inch to the left in bump | limit 0.25° per inch | Bring the pitman ball onto the zero-slope line. | common practice, no published source',
    ],
    {
      mm: [
        'Bump steer starts at 0.76° per 25 mm to the left in bump | limit 0.2461° per 25 mm | Bring the pitman ball onto the zero-slope line.',
      ],
    },
  ),
  said(
    'slope by a shop’s own limit',
    'bump-steer-slope',
    () => withParts(car(), slope(0.3)),
    [
      'attention steering.box.pitmanBall | Bump steer starts at 0.30° per inch to the left in bump | limit 0.125° per inch | Bring the pitman ball onto the zero-slope line. | this shop’s own limit',
    ],
    {
      mm: [
        'Bump steer starts at 0.30° per 25 mm to the left in bump | limit 0.123° per 25 mm | Bring the pitman ball onto the zero-slope line.',
      ],
      shop: { bumpSteerSlope: 0.125 },
    },
  ),
  said(
    'no slope to speak of',
    'bump-steer-slope',
    () => withParts(car(), slope(1e-9)),
    [
      'info steering.box.pitmanBall | Bump steer starts at 0.00° per inch | limit 0.25° per inch |  | common practice, no published source',
    ],
    { mm: ['Bump steer starts at 0.00° per 25 mm | limit 0.2461° per 25 mm | '] },
  ),
  said('no slope out of one pose', 'bump-steer-slope', () => withParts(car(), slope(1, 1)), []),
  said(
    'a slope out of two',
    'bump-steer-slope',
    () => withParts(car(), slope(0.1, 2)),
    [
      'info steering.box.pitmanBall | Bump steer starts at 0.10° per inch to the left in bump | limit 0.25° per inch |  | common practice, no published source',
    ],
    { mm: ['Bump steer starts at 0.10° per 25 mm to the left in bump | limit 0.2461° per 25 mm | '] },
  ),
  said(
    'the ball on the line',
    'aim-height',
    () => onLine(0),
    [
      'info steering.box.pitmanBall | The pitman ball is on the zero-slope line in its own plane | limit 1/2 in |  | common practice, no published source',
    ],
    { mm: ['The pitman ball is on the zero-slope line in its own plane | limit 12.7 mm | '] },
  ),
  said(
    'the ball a little above the line',
    'aim-height',
    () => onLine(12),
    [
      'info steering.box.pitmanBall | The pitman ball is 0.472 in above the zero-slope line in its own plane | limit 1/2 in |  | common practice, no published source',
    ],
    { mm: ['The pitman ball is 12.0 mm above the zero-slope line in its own plane | limit 12.7 mm | '] },
  ),
  said(
    'the ball too far above the line',
    'aim-height',
    () => onLine(13),
    [
      'attention steering.box.pitmanBall | The pitman ball is 0.512 in above the zero-slope line in its own plane | limit 1/2 in | Lower the pitman ball 1/2 in: no bump steer slope | common practice, no published source | {remedy:{kind:move,id:steering.box.pitmanBall,to:[-800,500,341.0674]}}',
    ],
    {
      mm: [
        'The pitman ball is 13.0 mm above the zero-slope line in its own plane | limit 12.7 mm | Lower the pitman ball 13.0 mm: no bump steer slope',
      ],
    },
  ),
  said(
    'the ball too far below the line',
    'aim-height',
    () => onLine(-30),
    [
      'attention steering.box.pitmanBall | The pitman ball is 1 3/16 in below the zero-slope line in its own plane | limit 1/2 in | Raise the pitman ball 1 3/16 in: no bump steer slope | common practice, no published source | {remedy:{kind:move,id:steering.box.pitmanBall,to:[-800,500,341.0674]}}',
    ],
    {
      mm: [
        'The pitman ball is 30.0 mm below the zero-slope line in its own plane | limit 12.7 mm | Raise the pitman ball 30.0 mm: no bump steer slope',
      ],
    },
  ),
  said(
    'half a millimetre off the line is told',
    'aim-height',
    () => onLine(0.6),
    [
      'info steering.box.pitmanBall | The pitman ball is 0.024 in above the zero-slope line in its own plane | limit 1/2 in |  | common practice, no published source',
    ],
    { mm: ['The pitman ball is 0.6 mm above the zero-slope line in its own plane | limit 12.7 mm | '] },
  ),
  said('cross steer has no line', 'aim-height', () => car({ steering: CROSS_STEER }), []),
  said(
    'leaves fixed in front, box behind',
    'leaf-fixed-in-front',
    () => car({ location: LOCATIONS['parallel-leaf'] }),
    [
      'attention location.left.fixedEye | The leaves are fixed in front and the box stands behind: axle and drag link swing opposite ways |  | No height of the box evens that out. Put the shackle at the other end, the box at the fixed eye’s end, or use cross steer. | common practice, no published source',
    ],
  ),
  said(
    'leaves fixed in front, box in front',
    'leaf-fixed-in-front',
    () => car({ location: LOCATIONS['parallel-leaf'], steering: BOX_AHEAD }),
    [
      'info location.left.fixedEye | Leaves and drag link swing about the same end of the car |  |  | common practice, no published source',
    ],
  ),
  said('leaves fixed behind, box behind', 'leaf-fixed-in-front', () => car({ location: LEAF_BEHIND }), [
    'info location.left.fixedEye | Leaves and drag link swing about the same end of the car |  |  | common practice, no published source',
  ]),
  said(
    'leaves fixed behind, box in front',
    'leaf-fixed-in-front',
    () => car({ location: LEAF_BEHIND, steering: BOX_AHEAD }),
    [
      'attention location.left.fixedEye | The leaves are fixed behind and the box stands in front: axle and drag link swing opposite ways |  | No height of the box evens that out. Put the shackle at the other end, the box at the fixed eye’s end, or use cross steer. | common practice, no published source',
    ],
  ),
  said(
    'leaves and cross steer',
    'leaf-fixed-in-front',
    () => car({ location: LOCATIONS['parallel-leaf'], steering: CROSS_STEER }),
    [],
  ),
  said('no leaves', 'leaf-fixed-in-front', () => car(), []),
  said(
    'parallel and of one length',
    'bar-and-link',
    () => car(barred([-72, -628, 352], [-72, 258, 362])),
    [
      'info lateral.frame | Lateral bar and drag link are parallel | limit 2° |  | common practice, no published source',
      'info lateral.axle | Lateral bar and drag link are the same length, 34 7/8 in | limit 10 per cent apart |  | common practice, no published source',
    ],
    {
      mm: [
        'Lateral bar and drag link are parallel | limit 2° | ',
        'Lateral bar and drag link are the same length, 886.1 mm | limit 10 per cent apart | ',
      ],
    },
  ),
  said(
    'shorter, at 2 degrees still near enough',
    'bar-and-link',
    () => car(barred([-72, -500, 352], [-72, 258, 380])),
    [
      'info lateral.frame | Lateral bar and drag link are 1.5° from parallel | limit 2° |  | common practice, no published source',
      'attention lateral.axle | Lateral bar 29 7/8 in, drag link 34 7/8 in: 14.4 per cent apart | limit 10 per cent apart | Make the lateral bar longer, as near to equal as space allows. | common practice, no published source',
    ],
    {
      mm: [
        'Lateral bar and drag link are 1.5° from parallel | limit 2° | ',
        'Lateral bar 758.5 mm, drag link 886.1 mm: 14.4 per cent apart | limit 10 per cent apart | Make the lateral bar longer, as near to equal as space allows.',
      ],
    },
  ),
  said(
    'not parallel, the bar short',
    'bar-and-link',
    () => car(barred([-72, -400, 352], [-72, 100, 420])),
    [
      'attention lateral.frame | Lateral bar and drag link are 7.1° from parallel | limit 2° | Raise the box with its arm 4 3/8 in: parallel | common practice, no published source | {remedy:{kind:move,id:steering.box.sectorCentre,to:[-150,262,620.496]}}',
      'attention lateral.axle | Lateral bar 19 7/8 in, drag link 34 7/8 in: 43.1 per cent apart | limit 10 per cent apart | Make the lateral bar longer, as near to equal as space allows. | common practice, no published source',
    ],
    {
      mm: [
        'Lateral bar and drag link are 7.1° from parallel | limit 2° | Raise the box with its arm 110.5 mm: parallel',
        'Lateral bar 504.6 mm, drag link 886.1 mm: 43.1 per cent apart | limit 10 per cent apart | Make the lateral bar longer, as near to equal as space allows.',
      ],
    },
  ),
  said(
    'not parallel, the bar long',
    'bar-and-link',
    () => car(barred([-72, -700, 300], [-72, 420, 420])),
    [
      'attention lateral.frame | Lateral bar and drag link are 5.5° from parallel | limit 2° | Raise the box with its arm 3 5/16 in: parallel | common practice, no published source | {remedy:{kind:move,id:steering.box.sectorCentre,to:[-150,262,594.9286]}}',
      'attention lateral.axle | Lateral bar 44 3/8 in, drag link 34 7/8 in: 21.3 per cent apart | limit 10 per cent apart | Make the drag link longer, as near to equal as space allows. | common practice, no published source',
    ],
    {
      mm: [
        'Lateral bar and drag link are 5.5° from parallel | limit 2° | Raise the box with its arm 84.9 mm: parallel',
        'Lateral bar 1126.4 mm, drag link 886.1 mm: 21.3 per cent apart | limit 10 per cent apart | Make the drag link longer, as near to equal as space allows.',
      ],
    },
  ),
  said(
    'frame ends on opposite sides',
    'bar-and-link',
    () => car(barred([-72, 570, 352], [-72, -316, 362])),
    [
      'attention lateral.frame | Lateral bar and drag link have their frame ends on opposite sides | limit 2° | Put the frame end of the bar on the side of the steering box. | common practice, no published source',
      'info lateral.axle | Lateral bar and drag link are the same length, 34 7/8 in | limit 10 per cent apart |  | common practice, no published source',
    ],
    {
      mm: [
        'Lateral bar and drag link have their frame ends on opposite sides | limit 2° | Put the frame end of the bar on the side of the steering box.',
        'Lateral bar and drag link are the same length, 886.1 mm | limit 10 per cent apart | ',
      ],
    },
  ),
  said(
    'frame ends on opposite sides, and skew',
    'bar-and-link',
    () => car(barred([-72, 570, 352], [-72, -316, 420])),
    [
      'attention lateral.frame | Lateral bar and drag link have their frame ends on opposite sides | limit 2° | Put the frame end of the bar on the side of the steering box. | common practice, no published source',
      'info lateral.axle | Lateral bar 35 in, drag link 34 7/8 in: 0.3 per cent apart | limit 10 per cent apart |  | common practice, no published source',
    ],
    {
      mm: [
        'Lateral bar and drag link have their frame ends on opposite sides | limit 2° | Put the frame end of the bar on the side of the steering box.',
        'Lateral bar 888.6 mm, drag link 886.1 mm: 0.3 per cent apart | limit 10 per cent apart | ',
      ],
    },
  ),
  said(
    'a shop’s own angle and length',
    'bar-and-link',
    () => car(barred([-72, -570, 352], [-72, 316, 372])),
    [
      'attention lateral.frame | Lateral bar and drag link are 0.6° from parallel | limit 0.5° | Raise the pitman ball 3/8 in: parallel | this shop’s own limit | {remedy:{kind:move,id:steering.box.pitmanBall,to:[-150,258,372]}}',
      'info lateral.axle | Lateral bar 34.891 in, drag link 34.884 in: 0.02 per cent apart | limit 1.5 per cent apart |  | this shop’s own limit',
    ],
    {
      mm: [
        'Lateral bar and drag link are 0.6° from parallel | limit 0.5° | Raise the pitman ball 10.0 mm: parallel',
        'Lateral bar 886.2 mm, drag link 886.1 mm: 0.02 per cent apart | limit 1.5 per cent apart | ',
      ],
      shop: { barLinkAngle: 0.5, barLinkLength: 0.015 },
    },
  ),
  said(
    'side steer has no such pair',
    'bar-and-link',
    () => car({ location: LOCATIONS['four-bar'], lateral: LATERALS.bar }),
    [],
  ),
  said(
    'cross steer without a bar has no such pair',
    'bar-and-link',
    () => car({ steering: CROSS_STEER }),
    [],
  ),
  said(
    'cross steer on a transverse spring',
    'cross-steer-without-bar',
    () => car({ steering: CROSS_STEER }),
    [
      'attention steering.dragLinkBall | Nothing but the transverse spring holds the axle sideways against the drag link |  | Add a lateral bar of the drag link’s length, parallel to it. | common practice, no published source',
    ],
  ),
  said(
    'cross steer on leaves',
    'cross-steer-without-bar',
    () => car({ steering: CROSS_STEER, location: LOCATIONS['parallel-leaf'] }),
    [
      'info steering.dragLinkBall | The leaves alone hold the axle sideways against the drag link |  | Add a lateral bar of the drag link’s length, parallel to it. | common practice, no published source',
    ],
  ),
  said(
    'cross steer with a bar',
    'cross-steer-without-bar',
    () => car(barred([-72, -570, 352], [-72, 316, 362])),
    [],
  ),
  said('side steer needs no bar for it', 'cross-steer-without-bar', () => car(), []),
  said('roll understeer', 'roll-steer', () => withParts(car(), rollSlope(0.12)), [
    'info steering.box.pitmanBall | Roll understeer 0.12° for each degree | limit 0.1° of roll oversteer for each degree |  | common practice, no published source; terms as ISO 8855',
  ]),
  said('roll oversteer within its limit', 'roll-steer', () => withParts(car(), rollSlope(-0.08)), [
    'info steering.box.pitmanBall | Roll oversteer 0.08° for each degree | limit 0.1° of roll oversteer for each degree |  | common practice, no published source; terms as ISO 8855',
  ]),
  said('hardly any roll steer', 'roll-steer', () => withParts(car(), rollSlope(0.004)), [
    'info steering.box.pitmanBall | Leaning hardly steers the wheels | limit 0.1° of roll oversteer for each degree |  | common practice, no published source; terms as ISO 8855',
  ]),
  said(
    'roll oversteer past its limit: the ball up',
    'roll-steer',
    () => withParts(car(LOW), rollSlope(-0.2)),
    [
      'attention steering.box.pitmanBall | Roll oversteer 0.20° for each degree | limit 0.1° of roll oversteer for each degree | Raise the pitman ball: leaning then turns the wheels less far in. Check the bump steer again afterwards. | common practice, no published source; terms as ISO 8855',
    ],
  ),
  said(
    'roll oversteer past its limit in cross steer',
    'roll-steer',
    () => withParts(car(barred([-72, -570, 352], [-72, 316, 362])), rollSlope(-0.15)),
    [
      'attention steering.box.pitmanBall | Roll oversteer 0.15° for each degree | limit 0.1° of roll oversteer for each degree | Lower the pitman ball: leaning then turns the wheels less far in. Check the bump steer again afterwards. | common practice, no published source; terms as ISO 8855',
    ],
  ),
  said('no roll steer out of one pose', 'roll-steer', () => withParts(car(), rollSlope(-0.2, 1)), []),
  said('roll steer out of two poses', 'roll-steer', () => withParts(car(), rollSlope(0.05, 2)), [
    'info steering.box.pitmanBall | Roll understeer 0.05° for each degree | limit 0.1° of roll oversteer for each degree |  | common practice, no published source; terms as ISO 8855',
  ]),
  said(
    'no roll, no roll steer',
    'roll-steer',
    () => withParts(car({ travel: { bump: 75, rebound: 75, roll: 0 } }), rollSlope(0.05)),
    [],
  ),
  said('five thousandths each degree is told', 'roll-steer', () => withParts(car(), rollSlope(0.005)), [
    'info steering.box.pitmanBall | Roll understeer 0.01° for each degree | limit 0.1° of roll oversteer for each degree |  | common practice, no published source; terms as ISO 8855',
  ]),
  said('five thousandths the other way', 'roll-steer', () => withParts(car(), rollSlope(-0.0051)), [
    'info steering.box.pitmanBall | Roll oversteer 0.01° for each degree | limit 0.1° of roll oversteer for each degree |  | common practice, no published source; terms as ISO 8855',
  ]),
  said(
    'leaves level fore and aft with their seat count as behind',
    'leaf-fixed-in-front',
    () =>
      withLayout(car({ location: LOCATIONS['parallel-leaf'] }), {
        location: {
          kind: 'parallel-leaf',
          left: { fixedEye: [0, 400, 365], seat: [0, 400, 320], shackleEye: [-580, 400, 372] },
        },
      }),
    [
      'info location.left.fixedEye | Leaves and drag link swing about the same end of the car |  |  | common practice, no published source',
    ],
  ),
  said(
    'a box level with the steering arm ball counts as behind',
    'leaf-fixed-in-front',
    () =>
      withLayout(car({ location: LEAF_BEHIND }), {
        steering: {
          ...car().layout.steering,
          box: { ...car().layout.steering.box, pitmanBall: [0, 500, 350] },
        },
      }),
    [
      'info location.left.fixedEye | Leaves and drag link swing about the same end of the car |  |  | common practice, no published source',
    ],
  ),
  said('nearly none is none', 'bump-steer-worst', () => withParts(car(), summary(-0.0049, -75)), [
    'info steering.box.pitmanBall | The wheels do not steer themselves over the travel | limit 0.5° |  | common practice, no published source | {at:{heave:-75,roll:0,handwheel:0}}',
  ]),
  said(
    'a little is told',
    'bump-steer-worst',
    () => withParts(car(), summary(-0.0051, -75)),
    [
      'info steering.box.pitmanBall | Bump steer 0.01° to the right at 2 15/16 in of droop | limit 0.5° |  | common practice, no published source | {at:{heave:-75,roll:0,handwheel:0}}',
    ],
    { mm: ['Bump steer 0.01° to the right at 75.0 mm of droop | limit 0.5° | '] },
  ),
];

describe('what is said of bump steer', () => {
  test.each(SAID)('$label', (one) => {
    expect(heard(one)).toEqual({ inches: one.inches, mm: one.mm });
  });
});
