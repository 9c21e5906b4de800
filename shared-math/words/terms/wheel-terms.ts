import * as sketch from '../sketches/wheel.ts';
import { between, noUsual, type Term, usually } from './term.ts';

const ISO = 'sign and definition as ISO 8855';

export const WHEEL_TERMS = {
  kingpin: {
    name: 'Kingpin',
    also: ['steering axis', 'spindle', 'stub axle'],
    what: 'The pin at the end of the axle that the front wheel turns about when you steer. Its line through space decides caster, inclination, scrub and trail.',
    measured:
      'Tape the middle of its top and of its bottom: back from the axle’s centre line, out from the middle of the car, up from the ground.',
    usual: usually('4 to 7 in (100 to 180 mm) long between top and bottom.'),
    sketch: sketch.KINGPIN,
    see: ['caster', 'kingpin-inclination', 'scrub', 'trail'],
  },
  caster: {
    name: 'Caster',
    also: ['castor'],
    what: 'How far the kingpin leans back at the top, seen from the side. It makes the wheels run straight by themselves, and the handwheel heavier.',
    measured:
      'With an angle finder on the kingpin or its boss, car level at ride height; the board also works it out from the kingpin’s two ends.',
    usual: between('casterLeast', 'casterMost'),
    sketch: sketch.CASTER,
    see: ['trail', 'kingpin-inclination', 'wind-up'],
  },
  'kingpin-inclination': {
    name: 'Kingpin inclination',
    also: ['KPI', 'steering axis inclination'],
    what: 'How far the kingpin leans in toward the middle of the car at the top, seen from ahead. It brings the kingpin’s line nearer to the tyre at the ground.',
    measured: 'With an angle finder across the kingpin, or worked out by the board from its two ends.',
    usual: usually('5° to 9°, mostly 7° or 8° on a beam axle.'),
    sketch: sketch.INCLINATION,
    see: ['scrub', 'camber', 'kingpin'],
  },
  camber: {
    name: 'Camber',
    what: `How far a wheel leans out at the top, seen from ahead. Above zero the top leans away from the car (${ISO}).`,
    measured: 'With an angle finder held upright across the rim, tyres on level ground.',
    usual: usually('0° to 1°.'),
    sketch: sketch.CAMBER,
    see: ['toe', 'kingpin-inclination'],
  },
  toe: {
    name: 'Toe',
    also: ['toe-in', 'toe-out', 'total toe-in'],
    what: 'Whether the front wheels point in or out when they look straight ahead. Toe-in: they stand closer together in front than behind.',
    measured:
      'Measure across between the tyres at hub height, in front and behind, and take one from the other. It is set at the tie rod.',
    usual: between('toeLeast', 'toeMost'),
    sketch: sketch.TOE,
    see: ['tie-rod', 'bump-steer', 'steer'],
  },
  steer: {
    name: 'Steer of a wheel',
    also: ['mean steer', 'steer of the wheels'],
    what: `The angle by which a wheel points to the left or right of straight ahead. To the left counts above zero (${ISO}); the mean of both wheels is what the car follows.`,
    measured:
      'Worked out by the board; on the finished car read on turning plates or with a gauge against the wheel.',
    usual: noUsual('Nothing while the handwheel is held straight: what is left then is bump steer.'),
    sketch: sketch.STEER,
    see: ['bump-steer', 'toe', 'lock'],
  },
  scrub: {
    name: 'Scrub radius',
    also: ['scrub', 'kingpin offset'],
    what: 'The distance on the ground from the kingpin’s line out to the middle of the tyre, seen from ahead. The more of it, the heavier the steering and the more the road kicks.',
    measured: 'Worked out by the board from kingpin, wheel centre and tyre.',
    usual: usually('0 to 3 in (0 to 75 mm), the tyre outside the kingpin’s line.'),
    sketch: sketch.SCRUB,
    see: ['trail', 'kingpin-inclination', 'parking-effort', 'kick'],
  },
  trail: {
    name: 'Trail',
    also: ['mechanical trail', 'caster trail'],
    what: 'The distance on the ground from where the kingpin’s line meets it back to the middle of the tyre, seen from the side. It pulls the wheels straight, like those of a shopping trolley.',
    measured: 'Worked out by the board from caster and the tyre’s radius.',
    usual: usually('1 to 2 in (25 to 50 mm): what 5° to 7° of caster leave on a usual tyre.'),
    sketch: sketch.TRAIL,
    see: ['caster', 'self-return', 'scrub'],
  },
  'tyre-radius': {
    name: 'Tyre radius',
    also: ['loaded radius'],
    what: 'From the middle of the hub down to the ground with the car’s weight on it. It is less than half of the tyre’s height off the car.',
    measured: 'Tape from the ground to the middle of the hub, car standing on its tyres.',
    usual: usually('12 to 15 in (300 to 380 mm). Measure yours: every height rests on it.'),
    sketch: sketch.TYRE,
    see: ['ride-height'],
  },
  wheelbase: {
    name: 'Wheelbase',
    what: 'From the middle of the front hubs back to the middle of the rear hubs.',
    measured:
      'Plumb both hub centres to the floor on one side and tape between the marks; then the other side, and take the mean.',
    usual: usually('90 to 115 in (2290 to 2920 mm).'),
    sketch: sketch.WHEELBASE,
    see: ['ackermann', 'kingpin-track'],
  },
  'kingpin-track': {
    name: 'Kingpin track',
    what: 'How far apart the two kingpins stand, from one’s line to the other’s.',
    measured: 'Tape from kingpin to kingpin across the car, middle to middle.',
    usual: usually('About 4 to 6 in (100 to 150 mm) less than between the tyres.'),
    sketch: sketch.TRACK,
    see: ['ackermann', 'kingpin'],
  },
  ackermann: {
    name: 'Ackermann',
    also: ['Ackermann error', 'ideal outer wheel'],
    what: 'In a turn the inner wheel has to turn further than the outer, as it runs on a smaller circle. Where both follow circles about one point, Ackermann is met and no tyre is dragged sideways.',
    measured:
      'Worked out by the board through the whole turn. It follows from where the tie rod arms point: near the middle of the rear axle is right.',
    usual: usually(
      '50 to 100 per cent at full lock; below nothing it is reversed, and tyres scrub.',
      'Ackermann condition as ISO 8855; how much, common practice, no published source',
    ),
    sketch: sketch.ACKERMANN,
    see: ['tie-rod', 'lock', 'turning-circle'],
  },
  'turning-circle': {
    name: 'Turning circle',
    also: ['circle between kerbs', 'circle between walls'],
    what: 'The smallest circle that the car can turn around in. Between kerbs is measured at the tyres, between walls at the nose.',
    measured:
      'Worked out by the board from both wheels’ angles at full lock. Between walls needs how far the nose reaches and how wide it is.',
    usual: usually('32 to 42 ft (10 to 13 m) between kerbs.'),
    sketch: sketch.TURNING,
    see: ['lock', 'ackermann', 'wheelbase'],
  },
} as const satisfies Record<string, Term>;
