import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { findAim, findBestSpot, holdTravel } from '../../shared-math/aim/index.ts';
import { analyse, type Finding, findings, RULES, withClearances } from '../../shared-math/findings/index.ts';
import { distance, type Point } from '../../shared-math/geometry/points.ts';
import { type LayoutDocument, parseLayout, resolveLayout } from '../../shared-math/layout/index.ts';
import {
  all,
  between,
  type Edit,
  move,
  pitmanArm,
  pointAt,
  set,
  shift,
  steeringArm,
  tipBack,
} from '../support/edits.ts';
import { CROSS_STEER, documentOf, LOCATIONS, PLAIN_HALF, rawLayout, SIDE_STEER } from '../support/layouts.ts';
import {
  BALL,
  bind,
  brakeSteer,
  bumpSteer,
  bumpSteerAtBestHeight,
  casterChange,
  casterGone,
  casterOut,
  countOf,
  frontEndOf,
  judged,
  lockOut,
  locksApart,
  nearest,
  oneWheel,
  ratioOut,
  reversedAckermann,
  rimForce,
  rollOversteer,
  slope,
  steersWrong,
  tieRodMargin,
  tilt,
  toeOut,
  transmission,
  turnsOut,
  twist,
} from '../support/measures.ts';

// An advice, taken, makes its finding better: for each that names a way, what a builder does who takes it at its word,
// and how bad the thing then is, by figures of the solved car and not by what the finding says.

const root = resolve(import.meta.dirname, '../..');
const raw = (over: Record<string, unknown> = {}) => documentOf(rawLayout(over));
const box = (over: Record<string, unknown>) => ({ ...SIDE_STEER, box: { ...SIDE_STEER.box, ...over } });
const half = (over: Record<string, unknown>) => ({
  axle: { beam: 'i-beam', left: { ...PLAIN_HALF, ...over }, right: 'mirror' },
});
function demonstration(name: string): LayoutDocument {
  const outcome = parseLayout(readFileSync(join(root, 'projects', `${name}.json`), 'utf8'));
  if (!outcome.ok) throw new Error(outcome.failure.reason);
  return outcome.value;
}

// What a builder does.
const toe = (by: number): Edit =>
  all((document) => set('axle.left.toeIn', document.axle.left.toeIn + by)(document));
/** The tie rod arms aimed so that their lines from the kingpins meet on the rear axle, 150 mm behind the front one. */
const aimedArms: Edit = (document) => {
  const { kingpinTop, kingpinBottom, tieRodBall } = document.axle.left;
  const z = tieRodBall[2];
  const foot = between(
    kingpinBottom,
    kingpinTop,
    (z - kingpinBottom[2]) / (kingpinTop[2] - kingpinBottom[2]),
  );
  const rear: Point = [-document.car.wheelbase, 0, z];
  return set('axle.left.tieRodBall', between(foot, rear, 150 / document.car.wheelbase))(document);
};
const towardSpot =
  (share: number): Edit =>
  (document) => {
    const frontEnd = frontEndOf(document);
    const travel = holdTravel(frontEnd);
    const aim = findAim(frontEnd, travel);
    if (!aim.ok) throw new Error('no aim');
    const spot = findBestSpot(frontEnd, aim.value, travel);
    if (!spot) throw new Error('no spot');
    return move(BALL, (at) => between(at, spot.point, share))(document);
  };
/** Straight up or down onto the line from the steering-arm ball through the centre of its path, in the side view. */
const ontoLine: Edit = (document) => {
  const aim = findAim(frontEndOf(document));
  if (!aim.ok) throw new Error('no aim');
  const { ball, point } = aim.value;
  return move(BALL, ([x, y]) => [
    x,
    y,
    ball[2] + ((x - ball[0]) * (point[2] - ball[2])) / (point[0] - ball[0]),
  ])(document);
};
/** The pitman arm turned about its shaft until it stands square to the line to the steering-arm ball. */
const squareArm: Edit = (document) => {
  const { sectorCentre: c, pitmanBall } = document.steering.box;
  const ball = document.steering.dragLinkBall;
  const arm = distance(c, pitmanBall);
  const far = Math.hypot(ball[0] - c[0], ball[2] - c[2]);
  const down = Math.atan2(ball[2] - c[2], ball[0] - c[0]) - Math.acos(arm / far);
  return set(BALL, [c[0] + arm * Math.cos(down), c[1], c[2] + arm * Math.sin(down)])(document);
};
const remedyOf =
  (rule: string): Edit =>
  (document) => {
    const remedy = judged(document).find((one) => one.rule === rule && one.remedy)?.remedy;
    if (!remedy) throw new Error(`no remedy of ${rule}`);
    return remedy.kind === 'move'
      ? move(remedy.id, () => remedy.to)(document)
      : set(remedy.path, remedy.value)(document);
  };

interface Advised {
  readonly rule: string;
  readonly words: RegExp;
  readonly on: LayoutDocument;
  /** Each way that the words offer, by what it is called in them. */
  readonly ways: Readonly<Record<string, Edit>>;
  readonly bad: (document: LayoutDocument) => number;
}

const LEVEL_BARS = {
  kind: 'four-bar',
  left: {
    upper: { axle: [-45, 430, 400], frame: [-645, 430, 400] },
    lower: { axle: [-45, 430, 262], frame: [-645, 430, 262] },
  },
  right: 'mirror',
};
const SHORT_RODS = { kind: 'hairpins', left: { framePivot: [-600, 415, 335] }, right: 'mirror' };
const LEAVES_AHEAD = raw({ location: LOCATIONS['parallel-leaf'] });
const barOf = (axle: Point, frame: Point) => ({
  location: LOCATIONS['four-bar'],
  lateral: { kind: 'bar', axle, frame },
  steering: CROSS_STEER,
});
/** A pitman ball far behind the rods' pivots: a link much longer than the rods. */
const FAR_BEHIND = remedyOf('bump-steer-worst')(
  raw({
    location: SHORT_RODS,
    steering: box({ sectorCentre: [-1500, 484, 500], pitmanBall: [-1500, 484, 360] }),
  }),
);
const TOO_LOW = demonstration('hairpins-box-too-low');
const PLAIN_CAR = rawLayout()['car'] as Record<string, unknown>;
const HEAVY = {
  wheelbase: 2640,
  frontAxleLoad: 12_000,
  tyreRadius: 330,
  tyreWidth: 220,
  handwheelRadius: 170,
};

const SOFT_LEAVES = { location: LOCATIONS['parallel-leaf'] };

const ADVICE: readonly Advised[] = [
  {
    rule: 'toe-static',
    words: /^Add toe-in/,
    on: raw(half({ toeIn: -0.1 })),
    ways: { add: toe(0.05) },
    bad: toeOut,
  },
  {
    rule: 'toe-static',
    words: /^Take toe-in off/,
    on: raw(half({ toeIn: 0.4 })),
    ways: { take: toe(-0.05) },
    bad: toeOut,
  },
  ...[half({ kingpinTop: [4, 631, 395] }), half({ kingpinTop: [0, 631, 395] })].map((over) => ({
    rule: 'caster-static',
    words: /^Tip the axle back .* goes back\.$/,
    on: raw(over),
    ways: { back: tipBack(0.5) },
    bad: casterOut,
  })),
  {
    rule: 'caster-static',
    words: /^Tip the axle forward .* goes ahead\.$/,
    on: raw(half({ kingpinTop: [-20, 631, 395] })),
    ways: { forward: tipBack(-0.5) },
    bad: casterOut,
  },
  {
    rule: 'caster-change',
    words: /^Make the rods longer, .* equal parallel bars/,
    on: raw({ location: SHORT_RODS }),
    ways: {
      'longer rods': move('location.left.framePivot', ([x, y, z]) => [1.3 * x, y, z]),
      'equal parallel bars': set('location', LEVEL_BARS),
    },
    bad: casterChange,
  },
  {
    rule: 'caster-braked',
    words:
      /^What helps, most first: a radius rod each side, .* \(5\.2° left\); wedges of 2° .*; leaves a tenth thicker .*; one more leaf of full length \(/,
    on: demonstration('parallel-leaf-cross-steer'),
    ways: {
      // A rod as good as rigid.
      'a radius rod each side': set('braking', { windUpStiffness: 1e6 }),
      'wedges of 2°': tipBack(2),
      'a tenth thicker': set('ride.spring.thickness', 7.04),
      'one more of full length': all(set('ride.spring.leaves', 6), set('ride.spring.fullLeaves', 2)),
    },
    bad: casterGone,
  },
  {
    rule: 'caster-braked',
    words: /springs a quarter stiffer/,
    on: raw({ ...SOFT_LEAVES, ride: { spring: { kind: 'rate', rate: 20 } } }),
    ways: {
      'a quarter stiffer': set('ride.spring.rate', 25),
      'wedges of 2°': tipBack(2),
    },
    bad: casterGone,
  },
  {
    rule: 'caster-braked',
    words:
      /^Fit a radius rod each side, which holds the axle; or stiffer springs, or set more caster with the brakes off/,
    on: raw({ ...SOFT_LEAVES, braking: { windUpStiffness: 150 } }),
    ways: {
      'a radius rod': set('braking.windUpStiffness', 1e6),
      stiffer: set('braking.windUpStiffness', 180),
      'more caster': tipBack(2),
    },
    bad: casterGone,
  },
  {
    rule: 'brake-steer',
    words: /^Lower the steering arm ball .*, near the height of the spring seat: \d/,
    on: raw(SOFT_LEAVES),
    ways: {
      remedy: remedyOf('brake-steer'),
      'half of it': shift('steering.dragLinkBall', [0, 0, -35]),
    },
    bad: brakeSteer,
  },
  {
    rule: 'brake-steer',
    words: /^Raise the steering arm ball .*, near the height of the axle: \d/,
    on: raw({
      steering: { ...SIDE_STEER, dragLinkBall: [0, 484, 265] },
      braking: { windUpStiffness: 300 },
    }),
    ways: { remedy: remedyOf('brake-steer') },
    bad: brakeSteer,
  },
  {
    rule: 'brake-steer',
    words:
      /^Fit a radius rod each side, which ends the wind-up and the steer with it; or stiffer springs, which lessen both/,
    on: raw({
      ...SOFT_LEAVES,
      steering: {
        ...CROSS_STEER,
        box: { ...CROSS_STEER.box, sectorCentre: [-150, 262, 610], pitmanBall: [-150, 258, 500] },
      },
    }),
    ways: {
      'a radius rod': set('braking', { windUpStiffness: 1e6 }),
      stiffer: set('braking', { windUpStiffness: 400 }),
    },
    bad: brakeSteer,
  },
  {
    rule: 'beam-twist',
    words: /nearer to the middle of the car, or make the rods longer/,
    on: raw({ location: { kind: 'hairpins', left: { framePivot: [-450, 520, 335] }, right: 'mirror' } }),
    ways: {
      'nearer to the middle': shift('location.left.framePivot', [0, -80, 0]),
      longer: shift('location.left.framePivot', [-150, 0, 0]),
    },
    bad: twist,
  },
  {
    rule: 'bind-in-roll',
    words: /use an I-beam, four bars, or one central wishbone/,
    on: raw({ axle: { beam: 'tube', left: PLAIN_HALF, right: 'mirror' } }),
    ways: {
      'I-beam': set('axle.beam', 'i-beam'),
      'four bars': set('location', LEVEL_BARS),
      wishbone: set('location', LOCATIONS['wishbone']),
    },
    bad: bind,
  },
  {
    rule: 'bind-in-roll',
    words: /^Make the bars alike and parallel/,
    on: raw({
      axle: { beam: 'tube', left: PLAIN_HALF, right: 'mirror' },
      location: {
        ...LEVEL_BARS,
        left: { ...LEVEL_BARS.left, upper: { axle: [-45, 430, 400], frame: [-245, 430, 480] } },
      },
    }),
    ways: { 'alike and parallel': set('location', LEVEL_BARS) },
    bad: bind,
  },
  ...[
    TOO_LOW,
    raw({
      ...barOf([-72, -570, 352], [-72, 316, 362]),
      steering: { ...CROSS_STEER, box: { ...CROSS_STEER.box, pitmanBall: [-150, 258, 412] } },
    }),
  ].flatMap((on) =>
    (['Raise', 'Lower'] as const).map((way) => ({
      rule: 'roll-steer',
      words: new RegExp(`^${way} the pitman ball`),
      on,
      ways: { [way]: shift(BALL, [0, 0, way === 'Raise' ? 5 : -5]) },
      bad: rollOversteer,
    })),
  ),
  {
    rule: 'bump-steer-worst',
    words: /^Raise the box with its arm/,
    on: TOO_LOW,
    ways: {
      remedy: remedyOf('bump-steer-worst'),
      'half of it': shift('steering.box.sectorCentre', [0, 0, 20]),
    },
    bad: bumpSteer,
  },
  {
    rule: 'bump-steer-worst',
    words: /^Put the box on the other side of the steering arm ball/,
    // Leaves fixed ahead swing the ball about a point ahead; the box stands behind, at its best height.
    on: remedyOf('bump-steer-worst')(LEAVES_AHEAD),
    ways: {
      'that side': all(
        set('steering.box.sectorCentre', [800, 500, 490]),
        set('steering.box.pitmanBall', [800, 500, 400]),
        set('steering.box.sectorAxis', [0, 1, 0]),
      ),
    },
    bad: bumpSteer,
  },
  {
    rule: 'bump-steer-worst',
    words: /nearer to the aim point/,
    // Behind the aim and at its best height: only nearer helps.
    on: FAR_BEHIND,
    ways: { nearer: towardSpot(0.2), 'much nearer': towardSpot(0.8) },
    bad: bumpSteer,
  },
  {
    rule: 'one-wheel',
    words: /^Raise the box with its arm/,
    on: TOO_LOW,
    ways: {
      remedy: remedyOf('one-wheel'),
      'half of it': shift('steering.box.sectorCentre', [0, 0, 20]),
    },
    bad: oneWheel,
  },
  {
    rule: 'bump-steer-slope',
    words: /onto the zero-slope line/,
    on: TOO_LOW,
    ways: { onto: ontoLine },
    bad: slope,
  },
  {
    rule: 'aim-height',
    words: /no bump steer slope$/,
    on: TOO_LOW,
    ways: { remedy: remedyOf('aim-height') },
    bad: slope,
  },
  {
    rule: 'leaf-fixed-in-front',
    words: /the shackle at the other end, the box at the fixed eye’s end, or use cross steer/,
    on: LEAVES_AHEAD,
    ways: {
      shackle: set('location', {
        kind: 'parallel-leaf',
        left: { fixedEye: [-580, 400, 365], seat: [0, 400, 320], shackleEye: [510, 400, 372] },
        right: 'mirror',
      }),
      box: all(
        set('steering.box.sectorCentre', [800, 500, 490]),
        set('steering.box.pitmanBall', [800, 500, 350]),
        set('steering.box.sectorAxis', [0, 1, 0]),
      ),
      cross: set('steering', CROSS_STEER),
    },
    bad: bumpSteerAtBestHeight,
  },
  {
    rule: 'bar-and-link',
    words: /: parallel$/,
    on: raw(barOf([-72, -400, 352], [-72, 100, 420])),
    ways: { remedy: remedyOf('bar-and-link') },
    bad: bumpSteer,
  },
  {
    rule: 'bar-and-link',
    words: /on the side of the steering box/,
    on: raw(barOf([-72, 570, 352], [-72, -316, 362])),
    ways: {
      'the side': all(set('lateral.axle', [-72, -570, 352]), set('lateral.frame', [-72, 316, 362])),
    },
    bad: bumpSteer,
  },
  {
    rule: 'bar-and-link',
    words: /^Make the lateral bar longer/,
    on: raw(barOf([-72, -300, 352], [-72, 250, 358])),
    ways: { longer: set('lateral.axle', [-72, -570, 349]) },
    bad: bumpSteer,
  },
  {
    rule: 'bar-and-link',
    words: /^Make the drag link longer/,
    on: raw({
      ...barOf([-72, -570, 352], [-72, 316, 362]),
      steering: {
        ...CROSS_STEER,
        box: { ...CROSS_STEER.box, sectorCentre: [-150, -46, 510], pitmanBall: [-150, -50, 358] },
      },
    }),
    ways: {
      longer: all(
        set('steering.box.sectorCentre', [-150, 104, 510]),
        set('steering.box.pitmanBall', [-150, 100, 360]),
      ),
    },
    bad: bumpSteer,
  },
  {
    rule: 'cross-steer-without-bar',
    words: /^Add a lateral bar of the drag link’s length, parallel to it/,
    on: raw({ steering: CROSS_STEER }),
    ways: { add: set('lateral', { kind: 'bar', axle: [-72, -570, 352], frame: [-72, 316, 362] }) },
    bad: (document) => countOf('cross-steer-without-bar')(document) + countOf('bar-and-link')(document),
  },
  {
    rule: 'box-direction',
    words: /turns the other way/,
    on: raw({ steering: box({ sectorAxis: [0, 1, 0] }) }),
    ways: { remedy: remedyOf('box-direction') },
    bad: steersWrong,
  },
  {
    rule: 'dead-centre',
    words: /^Fit a longer steering arm, or set stops for less lock/,
    on: raw({ steering: { ...box({ sectorTravel: 33 }), dragLinkBall: [0, 550, 395] } }),
    ways: { 'longer arm': steeringArm(1.2), 'less lock': set('steering.box.sectorTravel', 25) },
    bad: transmission,
  },
  {
    rule: 'dead-centre',
    words: /^Fit a shorter pitman arm, or set stops for less lock/,
    on: raw({ steering: { ...box({ sectorTravel: 60 }), dragLinkBall: [0, 390, 395] } }),
    ways: {
      'shorter arm': all(set('steering.stopAngle', 24), pitmanArm(0.85)),
      'less lock': set('steering.box.sectorTravel', 40),
    },
    bad: transmission,
  },
  {
    rule: 'ball-tilt',
    words: /^Turn its stud square to the link/,
    on: raw({ studs: { 'steering.dragLinkBall': [1, 0, 1] } }),
    ways: {
      square: (document) => {
        const [from, to] = [pointAt(document, 'steering.dragLinkBall'), pointAt(document, BALL)];
        const link: Point = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
        return set('studs', { 'steering.dragLinkBall': [-link[2], 0, link[0]] })(document);
      },
    },
    bad: tilt,
  },
  {
    rule: 'lock',
    words: /^Fit a longer pitman arm or a shorter steering arm: either gives more lock/,
    on: raw({ steering: box({ sectorTravel: 22 }) }),
    ways: { 'longer pitman arm': pitmanArm(1.15), 'shorter steering arm': steeringArm(0.85) },
    bad: lockOut,
  },
  {
    rule: 'lock',
    words: /^Set stops at the axle\.$/,
    on: raw({ steering: box({ sectorTravel: 48 }) }),
    ways: { stops: set('steering.stopAngle', 34), remedy: remedyOf('lock') },
    bad: lockOut,
  },
  {
    rule: 'lock',
    words: /^Stand the pitman arm square to the drag link/,
    on: raw({ steering: box({ pitmanBall: [-880, 500, 373], sectorTravel: 41 }) }),
    ways: { square: squareArm },
    bad: locksApart,
  },
  {
    rule: 'turns-unequal',
    words: /^Stand the pitman arm square .*, or set equal stops/,
    on: raw({ steering: box({ pitmanBall: [-860, 500, 370] }) }),
    ways: {
      square: squareArm,
      stops: set('steering.stopAngle', 24),
    },
    bad: locksApart,
  },
  {
    rule: 'ackermann',
    words: /^Aim the tie rod arms .* meet near the rear axle/,
    on: raw(half({ tieRodBall: [-150, 690, 292] })),
    ways: { aim: aimedArms },
    bad: reversedAckermann,
  },
  {
    rule: 'tie-rod-ahead',
    words: /^Put the arms behind the axle/,
    on: raw(half({ tieRodBall: [150, 640, 292] })),
    ways: { behind: aimedArms },
    bad: reversedAckermann,
  },
  {
    rule: 'ratio',
    words: /^Fit a slower box, a shorter pitman arm or a longer steering arm\.$/,
    on: raw({ steering: box({ ratio: 9 }) }),
    ways: {
      slower: set('steering.box.ratio', 10),
      'shorter pitman arm': pitmanArm(0.9),
      'longer steering arm': steeringArm(1.1),
    },
    bad: ratioOut,
  },
  {
    rule: 'ratio',
    words: /^Fit a quicker box, a longer pitman arm or a shorter steering arm\.$/,
    on: raw({ steering: box({ ratio: 32 }) }),
    ways: {
      quicker: set('steering.box.ratio', 30),
      'longer pitman arm': pitmanArm(1.1),
      'shorter steering arm': steeringArm(0.9),
    },
    bad: ratioOut,
  },
  {
    rule: 'ratio',
    words: /^Fit a slower box, .* more turns for the same lock/,
    on: raw({ steering: { ...box({ ratio: 10, sectorTravel: 60 }), stopAngle: 25 } }),
    ways: {
      slower: set('steering.box.ratio', 11),
      'shorter pitman arm': pitmanArm(0.9),
      'longer steering arm': steeringArm(1.1),
    },
    bad: turnsOut,
  },
  {
    rule: 'ratio',
    words: /^Fit a quicker box, or set stops at the axle that end the turn sooner/,
    on: raw({ steering: box({ ratio: 32 }) }),
    ways: { quicker: set('steering.box.ratio', 28), stops: set('steering.stopAngle', 25) },
    bad: turnsOut,
  },
  {
    rule: 'effort',
    words: /^Fit a slower box, a larger handwheel or assistance/,
    on: raw({ car: HEAVY }),
    ways: {
      slower: set('steering.box.ratio', 20),
      'larger handwheel': set('car.handwheelRadius', 200),
      'less scrub': all(
        shift('axle.left.kingpinTop', [0, 15, 0]),
        shift('axle.left.kingpinBottom', [0, 15, 0]),
        shift('axle.left.tieRodBall', [0, 15, 0]),
        shift('steering.dragLinkBall', [0, 15, 0]),
        shift('steering.box.sectorCentre', [0, 15, 0]),
      ),
    },
    bad: rimForce,
  },
  {
    rule: 'effort',
    words: /take out scrub or trail/,
    on: raw({ car: HEAVY }),
    ways: { assistance: set('steering.box.assist', 'power') },
    bad: countOf('effort'),
  },
  {
    rule: 'tyre-and-ground',
    words: /set the tyre radius to 13 in;/,
    on: raw({ car: { ...PLAIN_CAR, tyreRadius: 406.4 } }),
    ways: { set: set('car.tyreRadius', 13 * 25.4), remedy: remedyOf('tyre-and-ground') },
    bad: ({ car, axle }) => Math.abs(axle.left.wheelCentre[2] - car.tyreRadius),
  },
  {
    rule: 'driver-side',
    words: /^Move the steering to the right, or say that the driver sits on the left/,
    on: raw({ car: { ...PLAIN_CAR, driverSide: 'right' } }),
    ways: {
      'steering to the right': set('steering', {
        ...SIDE_STEER,
        dragLinkTo: 'right',
        dragLinkBall: [0, -484, 395],
        box: { ...SIDE_STEER.box, sectorCentre: [-800, -500, 490], pitmanBall: [-800, -500, 350] },
      }),
      'driver on the left': set('car.driverSide', 'left'),
    },
    bad: countOf('driver-side'),
  },
  {
    rule: 'clearance',
    words: /^Move one of the two, or set stops that end the turn or the travel sooner/,
    on: raw({
      obstacles: [
        {
          name: 'Header tube',
          role: 'header',
          kind: 'capsule',
          from: [-300, 480, 440],
          to: [-320, 300, 480],
          radius: 25,
          mirrored: false,
        },
      ],
    }),
    ways: {
      'move one': (document) =>
        set(
          'obstacles',
          document.obstacles.map((one) =>
            one.kind === 'capsule'
              ? { ...one, from: [-300, 480, 470] as const, to: [-320, 300, 510] as const }
              : one,
          ),
        )(document),
      'less travel': set('travel', { bump: 40, rebound: 40, roll: 1 }),
    },
    bad: nearest,
  },
  {
    rule: 'link-strength',
    words: /^Use a larger or thicker tube/,
    on: raw({
      diameters: { tieRod: 16 },
      links: { tieRod: { section: 'tube', wall: 2, material: 'mild-steel', offset: 0 } },
    }),
    ways: { larger: set('diameters.tieRod', 25), thicker: set('links.tieRod.wall', 4) },
    bad: (document) => -tieRodMargin(resolveLayout(document)),
  },
  {
    rule: 'link-strength',
    words: /a straighter one/,
    on: raw({
      diameters: { tieRod: 25 },
      links: { tieRod: { section: 'tube', wall: 3, material: 'mild-steel', offset: 60 } },
    }),
    ways: { straighter: set('links.tieRod.offset', 20) },
    bad: (document) => -tieRodMargin(resolveLayout(document)),
  },
  ...[55, 30].map((takeOff) => ({
    rule: 'link-thread',
    words: takeOff === 55 ? /^Cut the tube .* longer there/ : /^Cut the tube .* shorter there/,
    on: raw({
      links: {
        tieRod: {
          ends: { left: { kind: 'threaded', takeOff, thread: { diameter: 15.875, pitch: 25.4 / 18 } } },
        },
      },
    }),
    ways: { remedy: remedyOf('link-thread') },
    // By hand, of an end 66.675 mm to its tip, 41.275 of it threaded, with a nut of 9.525: what thread or nut lacks.
    bad: (document: LayoutDocument) => {
      const end = document.links?.tieRod?.ends?.left;
      const takes = end?.takeOff ?? Number.NaN;
      return Math.max(0, 1.5 * 15.875 - (66.675 - takes), 66.675 - 41.275 + 9.525 - takes);
    },
  })),
];

/** Rules whose advice names no way to go: it asks for a look, or is done by its remedy, which `findings.test.ts` takes. */
const NO_WAY = [
  'plausible',
  'shaft-box-input',
  'tape',
  'sights',
  'out-of-reach',
  'shaft-joint-angle',
  'shaft-ends',
  'shaft-clearance',
  'shaft-support',
  'shaft-span',
  'shaft-clocking',
  'shaft-axis',
];

const adviceOn = (document: LayoutDocument, { rule }: Advised): Finding[] =>
  findings(withClearances(analyse(resolveLayout(document))), { unit: 'in', fraction: 16 }).filter(
    (finding) => finding.rule === rule && finding.severity !== 'info',
  );

describe('an advice, taken, makes its finding better', () => {
  test('there is a case for every rule whose advice names a way', () => {
    const covered = new Set([...ADVICE.map(({ rule }) => rule), ...NO_WAY]);
    expect(RULES.map(({ name }) => name).filter((name) => !covered.has(name))).toEqual([]);
  });

  test.each(ADVICE.map((one) => ({ ...one, label: `${one.rule}: ${one.words.source}` })))(
    '$label',
    (advised) => {
      const { on, words, ways, bad, rule } = advised;
      const said = adviceOn(on, advised).map(({ advice }) => advice);
      // Of two ways the rule says one; the other case of the pair is then none.
      if (rule === 'roll-steer' && !said.some((advice) => words.test(advice))) {
        const other = ADVICE.find((one) => one.rule === rule && one.on === on && one.words !== words);
        expect(said.some((advice) => other?.words.test(advice))).toBe(true);
        return;
      }
      expect(
        said.some((advice) => words.test(advice)),
        `says: ${said.join(' | ')}`,
      ).toBe(true);
      const before = bad(on);
      for (const [way, taken] of Object.entries(ways)) {
        const after = bad(taken(on));
        expect(Number.isFinite(after), `${way}: ${after}`).toBe(true);
        expect(after, `${way}: ${before} before`).toBeLessThan(before);
      }
    },
  );
});
