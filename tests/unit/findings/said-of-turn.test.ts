import { describe, expect, test } from 'vitest';
import {
  box,
  car,
  carWith,
  DEG,
  heard,
  said,
  straightCar,
  turned,
  withLayout,
  withParts,
  withTurn,
} from '../../support/judged-car.ts';
import { rawShaft } from '../../support/shafts.ts';

// The whole of each finding in both units, with figures put in where a rule takes them ready made: which way round its
// words, parts and remedies go, and what lies at a limit and on either side of it.

const tilts = (...all: readonly (readonly [name: string, id: string, degrees: number])[]) => ({
  tilts: all.map(([name, id, degrees]) => ({
    joint: { id, name },
    tilt: degrees * DEG,
    at: { heave: 40, roll: 0.02, handwheel: -3 },
  })),
});
const ends = (pitman: number, arm: number) => ({
  pitmanTransmission: { angle: pitman * DEG, at: { heave: 30, roll: 0, handwheel: -200 * DEG } },
  steeringArmTransmission: { angle: arm * DEG, at: { heave: -30, roll: 0.01, handwheel: 310 * DEG } },
});
/** Newtons at the rim, and where the most is, degrees of handwheel. */
const force = (centre: number, worst: number, handwheel: number) => ({
  effort: { centre: { rimForce: centre }, worst: { rimForce: worst, handwheel: handwheel * DEG } },
});
/** Newtons in a pound-force. */
const POUND = 4.4482216152605;

const SAID = [
  said('left steers left', 'box-direction', () => car(), [
    'info steering.box.sectorCentre | Left on the handwheel steers left |  |  | ISO 8855: steering-wheel angle is positive for a left turn',
  ]),
  said(
    'a box the wrong way round',
    'box-direction',
    () => car({ steering: box({ sectorAxis: [0, 1, 0] }) }),
    [
      'stop steering.box.sectorCentre | Left on the handwheel steers right |  | Use a box that turns the other way, or one made for this mounting. | ISO 8855: steering-wheel angle is positive for a left turn | {remedy:{kind:set,path:steering.box.sectorAxis,value:[0,-1,0],words:Use a box that turns the other way}}',
    ],
  ),
  said('no turn, no direction', 'box-direction', () => withTurn(car(), { status: 'out-of-reach' }), []),
  said('a turn of no rows, no direction', 'box-direction', () => withTurn(car(), { count: 0 }), []),
  said('the driver’s side not given', 'driver-side', () => car(), []),
  said(
    'the driver on the other side of the box',
    'driver-side',
    () => car(carWith({ driverSide: 'right' })),
    [
      'attention steering.box.sectorCentre | The driver sits on the right; the steering box is drawn on the left |  | Move the steering to the right, or say that the driver sits on the left. | what the layout says of the car | {remedy:{kind:set,path:car.driverSide,value:left,words:Say that the driver sits on the left}}',
    ],
  ),
  said('the driver where the box is', 'driver-side', () => car(carWith({ driverSide: 'left' })), [
    'info steering.box.sectorCentre | The steering box is on the left, where the driver sits |  |  | what the layout says of the car',
  ]),
  said(
    'the driver where the box is, on the right',
    'driver-side',
    () => car({ ...carWith({ driverSide: 'right' }), steering: box({ sectorCentre: [-800, -500, 490] }) }),
    [
      'info steering.box.sectorCentre | The steering box is on the right, where the driver sits |  |  | what the layout says of the car',
    ],
  ),
  said(
    'the driver on the other side of the column',
    'driver-side',
    () => car({ ...carWith({ driverSide: 'right' }), shaft: rawShaft() }),
    [
      'attention shaft.column.end | The driver sits on the right; the column is drawn on the left |  | Move the steering to the right, or say that the driver sits on the left. | what the layout says of the car | {remedy:{kind:set,path:car.driverSide,value:left,words:Say that the driver sits on the left}}',
    ],
  ),
  said(
    'the driver where the column is',
    'driver-side',
    () => car({ ...carWith({ driverSide: 'left' }), shaft: rawShaft() }),
    [
      'info shaft.column.end | The column is on the left, where the driver sits |  |  | what the layout says of the car',
    ],
  ),
  said('arms square enough', 'dead-centre', () => withParts(car(), { extremes: ends(40, 55) }), [
    'info steering.box.pitmanBall | Drag link and pitman arm come to 40° of a straight line, at 200° of handwheel | at least 40° |  | Norton, Design of Machinery, ch. 2 (from memory) | {at:{heave:30,roll:0,handwheel:-3.4907}}',
  ]),
  said(
    'the pitman arm near its dead centre',
    'dead-centre',
    () => withParts(car(), { extremes: ends(39.9, 55) }),
    [
      'attention steering.box.pitmanBall | Drag link and pitman arm come to 39.9° of a straight line, at 200° of handwheel | at least 40° | Fit a shorter pitman arm, or set stops for less lock, to keep clear of dead centre. | Norton, Design of Machinery, ch. 2 (from memory) | {at:{heave:30,roll:0,handwheel:-3.4907}}',
    ],
  ),
  said(
    'the steering arm near its dead centre',
    'dead-centre',
    () => withParts(car(), { extremes: ends(60, 20) }),
    [
      'attention steering.dragLinkBall | Drag link and steering arm come to 20° of a straight line, at 310° of handwheel | at least 40° | Fit a longer steering arm, or set stops for less lock, to keep clear of dead centre. | Norton, Design of Machinery, ch. 2 (from memory) | {at:{heave:-30,roll:0.01,handwheel:5.4105}}',
    ],
  ),
  said(
    'the steering arm too near its dead centre',
    'dead-centre',
    () => withParts(car(), { extremes: ends(60, 19.9) }),
    [
      'stop steering.dragLinkBall | Drag link and steering arm come to 20° of a straight line, at 310° of handwheel | at least 40° | Fit a longer steering arm, or set stops for less lock, to keep clear of dead centre. | Norton, Design of Machinery, ch. 2 (from memory) | {at:{heave:-30,roll:0.01,handwheel:5.4105}}',
    ],
  ),
  said(
    'both arms alike: the pitman arm is named',
    'dead-centre',
    () => withParts(car(), { extremes: ends(30, 30) }),
    [
      'info steering.box.pitmanBall | Drag link and pitman arm come to 30° of a straight line, at 200° of handwheel | at least 25° |  | this shop’s own limit | {at:{heave:30,roll:0,handwheel:-3.4907}}',
    ],
    { shop: { transmissionLeast: 25 } },
  ),
  said('no turn, no dead centre', 'dead-centre', () => withParts(car(), { extremes: undefined }), []),
  said(
    'balls within their tilt: the one tilted most',
    'ball-tilt',
    () =>
      withParts(car(), {
        extremes: tilts(
          ['Tie rod ball', 'axle.left.tieRodBall', 11],
          ['Pitman ball', 'steering.box.pitmanBall', 25],
          ['Steering arm ball', 'steering.dragLinkBall', 12],
        ),
      }),
    [
      'info steering.box.pitmanBall | Balls tilt 25.0° at most (pitman ball) | limit 25° |  | common practice, no published source; the maker’s figure rules | {at:{heave:40,roll:0.02,handwheel:-3}}',
    ],
  ),
  said(
    'balls tilted too far: each of them, the worst first',
    'ball-tilt',
    () =>
      withParts(car(), {
        extremes: tilts(
          ['Tie rod ball', 'axle.left.tieRodBall', 25.1],
          ['Pitman ball', 'steering.box.pitmanBall', 24],
          ['Steering arm ball', 'steering.dragLinkBall', 31],
        ),
      }),
    [
      'stop steering.dragLinkBall | Steering arm ball tilts 31.0° | limit 25° | Turn its stud square to the link, or use a ball with more room. | common practice, no published source; the maker’s figure rules | {at:{heave:40,roll:0.02,handwheel:-3}}',
      'stop axle.left.tieRodBall | Tie rod ball tilts 25.1° | limit 25° | Turn its stud square to the link, or use a ball with more room. | common practice, no published source; the maker’s figure rules | {at:{heave:40,roll:0.02,handwheel:-3}}',
    ],
  ),
  said(
    'a shop’s own tilt',
    'ball-tilt',
    () => withParts(car(), { extremes: tilts(['Pitman ball', 'steering.box.pitmanBall', 14]) }),
    [
      'stop steering.box.pitmanBall | Pitman ball tilts 14.0° | limit 12.5° | Turn its stud square to the link, or use a ball with more room. | this shop’s own limit | {at:{heave:40,roll:0.02,handwheel:-3}}',
    ],
    { shop: { ballTilt: 12.5 } },
  ),
  said('no balls, no tilt', 'ball-tilt', () => withParts(car(), { extremes: { tilts: [] } }), []),
  said('no turn, no tilt', 'ball-tilt', () => withParts(car(), { extremes: undefined }), []),
  said(
    'enough lock, ended by stops',
    'lock',
    () => turned(straightCar(), { left: [28, 25], right: [40, 34] }),
    [
      'info axle.left.wheelCentre | Inner wheel turns 28.0° to the left, 40.0° to the right | usual 28° to 40° |  | common practice, no published source | {at:{heave:0,roll:0,handwheel:9.4248}}',
    ],
  ),
  said(
    'too little lock to the left',
    'lock',
    () => turned(straightCar(), { left: [27.9, 25], right: [33, 28] }),
    [
      'attention axle.left.wheelCentre | Inner wheel turns 27.9° to the left, 33.0° to the right | usual 28° to 40° | Fit a longer pitman arm or a shorter steering arm: either gives more lock. | common practice, no published source | {at:{heave:0,roll:0,handwheel:9.4248}}',
    ],
  ),
  said(
    'too little lock to the right',
    'lock',
    () => turned(straightCar(), { left: [33, 28], right: [27.96, 25] }),
    [
      'attention axle.left.wheelCentre | Inner wheel turns 33.0° to the left, 27.96° to the right | usual 28° to 40° | Fit a longer pitman arm or a shorter steering arm: either gives more lock. | common practice, no published source | {at:{heave:0,roll:0,handwheel:-9.4248}}',
    ],
  ),
  said(
    'too much lock to the right',
    'lock',
    () => turned(straightCar(), { left: [33, 28], right: [41, 34] }),
    [
      'attention axle.left.wheelCentre | Inner wheel turns 33.0° to the left, 41.0° to the right | usual 28° to 40° | Set stops at the axle. | common practice, no published source | {at:{heave:0,roll:0,handwheel:-9.4248},remedy:{kind:set,path:steering.stopAngle,value:36,words:Set stops at 36° of either wheel}}',
    ],
  ),
  said(
    'too much lock to the left, no stops: one remedy, not two',
    'lock',
    () => turned(straightCar(), { left: [44, 36], right: [42, 35], causes: ['box', 'box'] }),
    [
      'attention axle.left.wheelCentre | Inner wheel turns 44.0° to the left, 42.0° to the right | usual 28° to 40° | Set stops at the axle. | common practice, no published source | {at:{heave:0,roll:0,handwheel:9.4248},remedy:{kind:set,path:steering.stopAngle,value:36,words:Set stops at 36° of either wheel}}',
      'attention steering.box.sectorCentre | The box comes to its own end before any stop | stops at the axle should end the turn | Set stops at the axle so that neither the box nor a link ends the turn. | common practice, no published source',
    ],
  ),
  said(
    'one lock short, the other long: the arm stands askew',
    'lock',
    () => turned(straightCar(), { left: [27, 25], right: [41, 34] }),
    [
      'attention axle.left.wheelCentre | Inner wheel turns 27.0° to the left, 41.0° to the right | usual 28° to 40° | Stand the pitman arm square to the drag link with the wheels straight: it turns further one way than the other. | common practice, no published source | {at:{heave:0,roll:0,handwheel:-9.4248}}',
    ],
  ),
  said(
    'a shop’s own range of lock',
    'lock',
    () => turned(straightCar(), { left: [33, 28], right: [41.5, 34] }),
    [
      'attention axle.left.wheelCentre | Inner wheel turns 33.0° to the left, 41.5° to the right | usual 30.5° to 36.6° | Set stops at the axle. | this shop’s own limit | {at:{heave:0,roll:0,handwheel:-9.4248},remedy:{kind:set,path:steering.stopAngle,value:33,words:Set stops at 33° of either wheel}}',
    ],
    { shop: { lockLeast: 30.5, lockMost: 36.6 } },
  ),
  said(
    'the box ends the turn: stops a degree short of it',
    'lock',
    () => turned(straightCar(), { left: [33.4, 28], right: [31.7, 27], causes: ['box', 'box'] }),
    [
      'info axle.left.wheelCentre | Inner wheel turns 33.4° to the left, 31.7° to the right | usual 28° to 40° |  | common practice, no published source | {at:{heave:0,roll:0,handwheel:-9.4248}}',
      'attention steering.box.sectorCentre | The box comes to its own end before any stop | stops at the axle should end the turn | Set stops at the axle so that neither the box nor a link ends the turn. | common practice, no published source | {remedy:{kind:set,path:steering.stopAngle,value:30,words:Set stops at 30° of either wheel}}',
    ],
  ),
  said(
    'the box ends the turn to one side',
    'lock',
    () => turned(straightCar(), { causes: ['stop', 'box'] }),
    [
      'info axle.left.wheelCentre | Inner wheel turns 32.0° to the left, 32.0° to the right | usual 28° to 40° |  | common practice, no published source | {at:{heave:0,roll:0,handwheel:9.4248}}',
      'attention steering.box.sectorCentre | The box comes to its own end before any stop | stops at the axle should end the turn | Set stops at the axle so that neither the box nor a link ends the turn. | common practice, no published source | {remedy:{kind:set,path:steering.stopAngle,value:31,words:Set stops at 31° of either wheel}}',
    ],
  ),
  said(
    'stops that are beyond the box’s end',
    'lock',
    () =>
      withLayout(turned(straightCar(), { causes: ['box', 'stop'] }), {
        steering: { ...straightCar().layout.steering, stopAngle: 38 },
      }),
    [
      'info axle.left.wheelCentre | Inner wheel turns 32.0° to the left, 32.0° to the right | usual 28° to 40° |  | common practice, no published source | {at:{heave:0,roll:0,handwheel:9.4248}}',
      'attention steering.box.sectorCentre | The box comes to its own end before any stop | stops at the axle should end the turn | Set stops at the axle so that neither the box nor a link ends the turn. | common practice, no published source',
    ],
  ),
  said(
    'next to no lock: stops are not set below 5 degrees',
    'lock',
    () => turned(straightCar(), { left: [3, 2.9], right: [3, 2.9], causes: ['box', 'box'] }),
    [
      'attention axle.left.wheelCentre | Inner wheel turns 3.0° to the left, 3.0° to the right | usual 28° to 40° | Fit a longer pitman arm or a shorter steering arm: either gives more lock. | common practice, no published source | {at:{heave:0,roll:0,handwheel:9.4248}}',
      'attention steering.box.sectorCentre | The box comes to its own end before any stop | stops at the axle should end the turn | Set stops at the axle so that neither the box nor a link ends the turn. | common practice, no published source | {remedy:{kind:set,path:steering.stopAngle,value:5,words:Set stops at 5° of either wheel}}',
    ],
  ),
  said('the drag link ends the turn', 'lock', () => turned(straightCar(), { causes: ['box', 'drag-link'] }), [
    'info axle.left.wheelCentre | Inner wheel turns 32.0° to the left, 32.0° to the right | usual 28° to 40° |  | common practice, no published source | {at:{heave:0,roll:0,handwheel:9.4248}}',
    'stop steering.box.sectorCentre | The turn ends where the drag link does not reach | stops at the axle should end the turn | Set stops at the axle so that neither the box nor a link ends the turn. | common practice, no published source | {remedy:{kind:set,path:steering.stopAngle,value:31,words:Set stops at 31° of either wheel}}',
  ]),
  said('the tie rod ends the turn', 'lock', () => turned(straightCar(), { causes: ['tie-rod', 'stop'] }), [
    'info axle.left.wheelCentre | Inner wheel turns 32.0° to the left, 32.0° to the right | usual 28° to 40° |  | common practice, no published source | {at:{heave:0,roll:0,handwheel:9.4248}}',
    'stop steering.box.sectorCentre | The turn ends where the tie rod does not reach | stops at the axle should end the turn | Set stops at the axle so that neither the box nor a link ends the turn. | common practice, no published source | {remedy:{kind:set,path:steering.stopAngle,value:31,words:Set stops at 31° of either wheel}}',
  ]),
  said(
    'an arm’s dead centre ends the turn',
    'lock',
    () => turned(straightCar(), { causes: ['stop', 'dead-centre'] }),
    [
      'info axle.left.wheelCentre | Inner wheel turns 32.0° to the left, 32.0° to the right | usual 28° to 40° |  | common practice, no published source | {at:{heave:0,roll:0,handwheel:9.4248}}',
      'stop steering.box.sectorCentre | The turn ends with an arm at its dead centre | stops at the axle should end the turn | Set stops at the axle so that neither the box nor a link ends the turn. | common practice, no published source | {remedy:{kind:set,path:steering.stopAngle,value:31,words:Set stops at 31° of either wheel}}',
    ],
  ),
  said('no turn, no lock', 'lock', () => withTurn(car(), { status: 'no-pose' }), []),
  said('a turn of no rows, no lock', 'lock', () => withTurn(car(), { count: 0 }), []),
  said(
    'locks as far apart as they may be',
    'turns-unequal',
    () => turned(straightCar(), { left: [34, 29], right: [31.1, 27] }),
    [
      'info steering.box.pitmanBall | Left lock 34.0°, right lock 31.1°: 2.9° apart | limit 3° apart |  | common practice, no published source | {at:{heave:0,roll:0,handwheel:-9.4248}}',
    ],
  ),
  said('left lock short', 'turns-unequal', () => turned(straightCar(), { left: [28, 25], right: [33, 28] }), [
    'attention steering.box.pitmanBall | Left lock 28.0°, right lock 33.0°: 5.0° apart | limit 3° apart | Stand the pitman arm square to the drag link with the wheels straight, or set equal stops at the axle. | common practice, no published source | {at:{heave:0,roll:0,handwheel:9.4248}}',
  ]),
  said(
    'right lock short',
    'turns-unequal',
    () => turned(straightCar(), { left: [34, 29], right: [30.9, 27] }),
    [
      'attention steering.box.pitmanBall | Left lock 34.0°, right lock 30.9°: 3.1° apart | limit 3° apart | Stand the pitman arm square to the drag link with the wheels straight, or set equal stops at the axle. | common practice, no published source | {at:{heave:0,roll:0,handwheel:-9.4248}}',
    ],
  ),
  said('no turn, no locks apart', 'turns-unequal', () => withTurn(car(), { status: 'no-pose' }), []),
  said('a turn of no rows, no locks apart', 'turns-unequal', () => withTurn(car(), { count: 0 }), []),
  said(
    'the inner wheel leads: the side where by less',
    'ackermann',
    () => turned(straightCar(), { left: [32, 29], right: [32, 28] }),
    [
      'info axle.left.tieRodBall | At lock the inner wheel turns 3.0° further: 47 per cent of Ackermann at equal inner angle | ideal 6.4° further |  | Ackermann condition, as ISO 8855 | {at:{heave:0,roll:0,handwheel:9.4248}}',
    ],
  ),
  said(
    'the same with the right side the worse',
    'ackermann',
    () => turned(straightCar(), { left: [32, 28], right: [32, 30] }),
    [
      'info axle.left.tieRodBall | At lock the inner wheel turns 2.0° further: 31 per cent of Ackermann at equal inner angle | ideal 6.4° further |  | Ackermann condition, as ISO 8855 | {at:{heave:0,roll:0,handwheel:-9.4248}}',
    ],
  ),
  said(
    'the outer wheel leads',
    'ackermann',
    () => turned(straightCar(), { left: [30, 28], right: [30, 31.5] }),
    [
      'attention axle.left.tieRodBall | At lock the outer wheel turns 1.5° further than the inner: Ackermann reversed | ideal 5.7° further | Aim the tie rod arms so that their lines from the kingpins meet near the rear axle. | Ackermann condition, as ISO 8855 | {at:{heave:0,roll:0,handwheel:-9.4248}}',
    ],
  ),
  said(
    'both wheels alike are not reversed',
    'ackermann',
    () => turned(straightCar(), { left: [30, 30], right: [30, 27] }),
    [
      'info axle.left.tieRodBall | At lock the inner wheel turns 0.0° further: 0 per cent of Ackermann at equal inner angle | ideal 5.7° further |  | Ackermann condition, as ISO 8855 | {at:{heave:0,roll:0,handwheel:9.4248}}',
    ],
  ),
  said(
    'next to no lock, no Ackermann',
    'ackermann',
    () => turned(straightCar(), { left: [0.01, 0.01], right: [0.01, 0.01] }),
    [],
  ),
  said('no turn, no Ackermann', 'ackermann', () => withTurn(car(), { status: 'no-pose' }), []),
  said('a turn of no rows, no Ackermann', 'ackermann', () => withTurn(car(), { count: 0 }), []),
  said(
    'ratio and turns as usual',
    'ratio',
    () => withTurn(turned(straightCar(), { handwheel: 540 }), { straightRatio: 16.5 }),
    [
      'info steering.box.sectorCentre | Overall ratio 16.5 to 1 at the centre | usual 12 to 24 |  | common practice, no published source',
      'info steering.box.sectorCentre | The handwheel goes 3.0 turns lock to lock | 2 to 6 |  | Washington Administrative Code 204-10-034, where it applies',
    ],
  ),
  said(
    'ratio and turns at their lower ends',
    'ratio',
    () => withTurn(turned(straightCar(), { handwheel: 360 }), { straightRatio: 12 }),
    [
      'info steering.box.sectorCentre | Overall ratio 12.0 to 1 at the centre | usual 12 to 24 |  | common practice, no published source',
      'info steering.box.sectorCentre | The handwheel goes 2.0 turns lock to lock | 2 to 6 |  | Washington Administrative Code 204-10-034, where it applies',
    ],
  ),
  said(
    'ratio and turns at their upper ends',
    'ratio',
    () => withTurn(turned(straightCar(), { handwheel: 1080 }), { straightRatio: 24 }),
    [
      'info steering.box.sectorCentre | Overall ratio 24.0 to 1 at the centre | usual 12 to 24 |  | common practice, no published source',
      'info steering.box.sectorCentre | The handwheel goes 6.0 turns lock to lock | 2 to 6 |  | Washington Administrative Code 204-10-034, where it applies',
    ],
  ),
  said(
    'quick, and few turns',
    'ratio',
    () => withTurn(turned(straightCar(), { handwheel: 350 }), { straightRatio: 11.96 }),
    [
      'attention steering.box.sectorCentre | Overall ratio 11.96 to 1 at the centre | usual 12 to 24 | Fit a slower box, a shorter pitman arm or a longer steering arm. | common practice, no published source',
      'attention steering.box.sectorCentre | The handwheel goes 1.9 turns lock to lock | 2 to 6 | Fit a slower box, a shorter pitman arm or a longer steering arm: more turns for the same lock. | Washington Administrative Code 204-10-034, where it applies',
    ],
  ),
  said(
    'slow, and many turns',
    'ratio',
    () => withTurn(turned(straightCar(), { handwheel: 1120 }), { straightRatio: 26.2 }),
    [
      'attention steering.box.sectorCentre | Overall ratio 26.2 to 1 at the centre | usual 12 to 24 | Fit a quicker box, a longer pitman arm or a shorter steering arm. | common practice, no published source',
      'attention steering.box.sectorCentre | The handwheel goes 6.2 turns lock to lock | 2 to 6 | Fit a quicker box, or set stops at the axle that end the turn sooner. | Washington Administrative Code 204-10-034, where it applies',
    ],
  ),
  said(
    'a box that steers the wrong way has a ratio too',
    'ratio',
    () => withTurn(turned(straightCar(), {}), { straightRatio: -15 }),
    [
      'info steering.box.sectorCentre | Overall ratio 15.0 to 1 at the centre | usual 12 to 24 |  | common practice, no published source',
      'info steering.box.sectorCentre | The handwheel goes 3.0 turns lock to lock | 2 to 6 |  | Washington Administrative Code 204-10-034, where it applies',
    ],
  ),
  said(
    'a shop’s own ratio and turns',
    'ratio',
    () => withTurn(turned(straightCar(), { handwheel: 540 }), { straightRatio: 16 }),
    [
      'attention steering.box.sectorCentre | Overall ratio 16.0 to 1 at the centre | usual 18.5 to 24 | Fit a slower box, a shorter pitman arm or a longer steering arm. | this shop’s own limit; common practice, no published source',
      'attention steering.box.sectorCentre | The handwheel goes 3.0 turns lock to lock | 2 to 2.75 | Fit a quicker box, or set stops at the axle that end the turn sooner. | Washington Administrative Code 204-10-034, where it applies; this shop’s own limit',
    ],
    { shop: { ratioLeast: 18.5, turnsMost: 2.75 } },
  ),
  said('no turn, no ratio', 'ratio', () => withTurn(car(), { status: 'no-pose' }), []),
  said('a turn of no rows, no ratio', 'ratio', () => withTurn(car(), { count: 0 }), []),
  said(
    'light enough, worst to the left',
    'effort',
    () => withParts(car(), force(90, 30 * POUND, 420)),
    [
      'info steering.box.sectorCentre | Parking takes about 20 lb at the rim straight ahead, at the most 30 lb, 420° of handwheel left | limit 30 lb |  | this shop’s own limit; effort by a hydraulic steering handbook’s formula, good to a third either way | {at:{heave:0,roll:0,handwheel:7.3304}}',
    ],
    {
      mm: [
        'Parking takes about 90 N at the rim straight ahead, at the most 133 N, 420° of handwheel left | limit 133.4 N | ',
      ],
      shop: { rimForce: 133.446648457815 },
    },
  ),
  said(
    'within the usual force',
    'effort',
    () => withParts(car(), force(90, 140, 420)),
    [
      'info steering.box.sectorCentre | Parking takes about 20 lb at the rim straight ahead, at the most 31 lb, 420° of handwheel left | limit 33.7 lb |  | UN Regulation 79, category M1, intact steering (from memory; a moving car); effort by a hydraulic steering handbook’s formula, good to a third either way | {at:{heave:0,roll:0,handwheel:7.3304}}',
    ],
    {
      mm: [
        'Parking takes about 90 N at the rim straight ahead, at the most 140 N, 420° of handwheel left | limit 150 N | ',
      ],
    },
  ),
  said(
    'heavy, worst to the right',
    'effort',
    () => withParts(car(), force(140, 231, -515)),
    [
      'attention steering.box.sectorCentre | Parking takes about 31 lb at the rim straight ahead, at the most 52 lb, 515° of handwheel right | limit 33.7 lb | Fit a slower box, a larger handwheel or assistance, or take out scrub or trail. | UN Regulation 79, category M1, intact steering (from memory; a moving car); effort by a hydraulic steering handbook’s formula, good to a third either way | {at:{heave:0,roll:0,handwheel:-8.9884}}',
    ],
    {
      mm: [
        'Parking takes about 140 N at the rim straight ahead, at the most 231 N, 515° of handwheel right | limit 150 N | Fit a slower box, a larger handwheel or assistance, or take out scrub or trail.',
      ],
    },
  ),
  said(
    'heavy straight ahead, nowhere more',
    'effort',
    () => withParts(car(), force(200, 200, 0)),
    [
      'attention steering.box.sectorCentre | Parking takes about 45 lb at the rim straight ahead, nowhere more | limit 33.7 lb | Fit a slower box, a larger handwheel or assistance, or take out scrub or trail. | UN Regulation 79, category M1, intact steering (from memory; a moving car); effort by a hydraulic steering handbook’s formula, good to a third either way | {at:{heave:0,roll:0,handwheel:0}}',
    ],
    {
      mm: [
        'Parking takes about 200 N at the rim straight ahead, nowhere more | limit 150 N | Fit a slower box, a larger handwheel or assistance, or take out scrub or trail.',
      ],
    },
  ),
  said(
    'heavy, but assisted',
    'effort',
    () => withParts(car({ steering: box({ assist: 'power' }) }), force(300, 420, 380)),
    [
      'info steering.box.sectorCentre | Parking takes about 67 lb at the rim straight ahead, at the most 94 lb, 380° of handwheel left, if the assistance fails | limit 33.7 lb |  | UN Regulation 79, category M1, intact steering (from memory; a moving car); effort by a hydraulic steering handbook’s formula, good to a third either way | {at:{heave:0,roll:0,handwheel:6.6323}}',
    ],
    {
      mm: [
        'Parking takes about 300 N at the rim straight ahead, at the most 420 N, 380° of handwheel left, if the assistance fails | limit 150 N | ',
      ],
    },
  ),
  said(
    'a shop’s own force',
    'effort',
    () => withParts(car(), force(90, 120, 400)),
    [
      'attention steering.box.sectorCentre | Parking takes about 20 lb at the rim straight ahead, at the most 27 lb, 400° of handwheel left | limit 25 lb | Fit a slower box, a larger handwheel or assistance, or take out scrub or trail. | this shop’s own limit; effort by a hydraulic steering handbook’s formula, good to a third either way | {at:{heave:0,roll:0,handwheel:6.9813}}',
    ],
    {
      mm: [
        'Parking takes about 90 N at the rim straight ahead, at the most 120 N, 400° of handwheel left | limit 111.2 N | Fit a slower box, a larger handwheel or assistance, or take out scrub or trail.',
      ],
      shop: { rimForce: 111.2 },
    },
  ),
  said('no turn, no effort', 'effort', () => withParts(car(), { effort: undefined }), []),
  said('locks alike', 'turns-unequal', () => turned(straightCar(), { left: [32, 28], right: [32, 28] }), [
    'info steering.box.pitmanBall | Left lock 32.0°, right lock 32.0°: 0.0° apart | limit 3° apart |  | common practice, no published source | {at:{heave:0,roll:0,handwheel:-9.4248}}',
  ]),
  said(
    'a ratio just within, turns just within',
    'ratio',
    () => withTurn(turned(straightCar(), { handwheel: 1079 }), { straightRatio: 23.98 }),
    [
      'info steering.box.sectorCentre | Overall ratio 23.98 to 1 at the centre | usual 12 to 24 |  | common practice, no published source',
      'info steering.box.sectorCentre | The handwheel goes 5.99 turns lock to lock | 2 to 6 |  | Washington Administrative Code 204-10-034, where it applies',
    ],
  ),
  said(
    'locks alike, both too long, stops given',
    'lock',
    () =>
      withLayout(turned(straightCar(), { left: [42, 36], right: [42, 36], causes: ['box', 'stop'] }), {
        steering: { ...straightCar().layout.steering, stopAngle: 44 },
      }),
    [
      'attention axle.left.wheelCentre | Inner wheel turns 42.0° to the left, 42.0° to the right | usual 28° to 40° | Set stops at the axle. | common practice, no published source | {at:{heave:0,roll:0,handwheel:9.4248},remedy:{kind:set,path:steering.stopAngle,value:36,words:Set stops at 36° of either wheel}}',
      'attention steering.box.sectorCentre | The box comes to its own end before any stop | stops at the axle should end the turn | Set stops at the axle so that neither the box nor a link ends the turn. | common practice, no published source',
    ],
  ),
  said(
    'locks that a tenth of a degree does not tell apart',
    'turns-unequal',
    () => turned(straightCar(), { left: [32.02, 28], right: [31.98, 28] }),
    [
      'info steering.box.pitmanBall | Left lock 32.02°, right lock 31.98°: 0.04° apart | limit 3° apart |  | common practice, no published source | {at:{heave:0,roll:0,handwheel:-9.4248}}',
    ],
  ),
  said(
    'nearly all of Ackermann',
    'ackermann',
    () => turned(straightCar(), { left: [32, 25.62], right: [32, 25.5] }),
    [
      'info axle.left.tieRodBall | At lock the inner wheel turns 6.380° further: 100.02 per cent of Ackermann at equal inner angle | ideal 6.379° further |  | Ackermann condition, as ISO 8855 | {at:{heave:0,roll:0,handwheel:9.4248}}',
    ],
  ),
  said(
    'next to no more at lock than straight ahead',
    'effort',
    () => withParts(car(), force(99.9, 100.2, 300)),
    [
      'info steering.box.sectorCentre | Parking takes about 22 lb at the rim straight ahead, at the most 23 lb, 300° of handwheel left | limit 33.7 lb |  | UN Regulation 79, category M1, intact steering (from memory; a moving car); effort by a hydraulic steering handbook’s formula, good to a third either way | {at:{heave:0,roll:0,handwheel:5.236}}',
    ],
    {
      mm: [
        'Parking takes about 99.9 N at the rim straight ahead, at the most 100.2 N, 300° of handwheel left | limit 150 N | ',
      ],
    },
  ),
];

describe('what is said of the turn', () => {
  test.each(SAID)('$label', (one) => {
    expect(heard(one)).toEqual({ inches: one.inches, mm: one.mm });
  });
});
