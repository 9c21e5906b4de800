import { USUAL_INSTRUMENTS } from '../../adjust/list/index.ts';
import * as sketch from '../sketches/judging.ts';
import { CURVE } from '../sketches/steering.ts';
import { atLeast, bothLengths, noUsual, PRACTICE, type Term, usually } from './term.ts';

export const BOARD_TERMS = {
  layout: {
    name: 'Layout',
    also: ['variant', 'arrangement'],
    what: 'One complete arrangement of one car’s front end, as it is drawn. A variant is a layout kept beside the others of the same car, so that you can try and compare.',
    measured: 'Drawn by you, or begun from a plain car or a usual arrangement.',
    usual: noUsual('As many variants as you like; none is lost.'),
    sketch: sketch.LAYOUT,
    see: ['point', 'origin'],
  },
  point: {
    name: 'Point',
    also: ['hardpoint'],
    what: 'A place that decides how the car steers: a ball, a pivot, the end of a kingpin. Trades call it a hardpoint.',
    measured:
      'Three distances: back from the axle’s centre line, out from the car’s centre line, up from the ground, all at ride height.',
    usual: noUsual('Two or three dozen to a car.'),
    sketch: sketch.HARDPOINT,
    see: ['origin', 'ride-height'],
  },
  origin: {
    name: 'Origin of a point',
    also: ['guess', 'guessed', 'plan', 'planned', 'tape', 'taped', 'photo', 'traced'],
    what: 'Where a point’s place comes from. Guess: from the plain car, drawn hollow. Plan: put there by you. Tape: measured on the car. Photo: traced.',
    measured: 'The board keeps it with every point and says what rests on guesses.',
    usual: noUsual('A verdict on guesses alone waits.'),
    sketch: sketch.ORIGIN,
    see: ['doubt', 'point'],
  },
  doubt: {
    name: 'Doubt',
    also: ['give or take', '±', 'standard deviation'],
    what: 'How far off a figure may well be. Two times in three the true one lies within the doubt, nineteen times in twenty within twice of it.',
    measured:
      'Of a measurement: what the instrument can be read to. Of a result: worked out by the board from all measurements that it rests on.',
    usual: usually(
      `A tape ${bothLengths(USUAL_INSTRUMENTS.tape)}, a plumb bob ${bothLengths(USUAL_INSTRUMENTS['plumb-bob'])}, an angle finder ${USUAL_INSTRUMENTS['angle-finder']}°.`,
    ),
    sketch: sketch.DOUBT,
    see: ['adjust', 'origin', 'build-tolerance'],
  },
  adjust: {
    name: 'Adjusting',
    also: ['adjust', 'best fit', 'least squares'],
    what: 'Every measurement is a little off. The board puts the points where all of them together fit best, and says how well each point is then known.',
    measured: 'By least squares: the sum of all misses, each weighed by its doubt, is as small as it can be.',
    usual: noUsual('More rows than needed: each then checks the others.', PRACTICE),
    sketch: sketch.ADJUST,
    see: ['doubt', 'does-not-fit'],
  },
  'does-not-fit': {
    name: 'Does not fit',
    also: ['misfit', 'nothing checks it'],
    what: 'A measurement that is further from what all the others say than its doubt explains: a slip of hand or eye. Where no other row looks at the same thing, nothing checks it.',
    measured: 'Worked out by the board for each row; it is left out until you say which is right.',
    usual: usually(
      'Once in a thousand rows by chance alone.',
      'Baarda, A testing procedure for use in geodetic networks (from memory)',
    ),
    sketch: sketch.MISFIT,
    see: ['adjust', 'doubt'],
  },
  verdict: {
    name: 'Verdict',
    also: ['finding', 'findings', 'must fix', 'check', 'stop', 'attention'],
    what: 'What the board finds, one sentence each. Must fix: do not drive it so. Check: past a usual limit, for you to fix or to answer for. OK: within its limit.',
    measured: 'Each finding is worked out and held against its limit; the limit’s source stands below it.',
    usual: noUsual('Nothing to fix. That is not an approval: have the finished car inspected.'),
    sketch: sketch.FINDING,
    see: ['limit'],
  },
  limit: {
    name: 'Limit',
    also: ['limits of this shop'],
    what: 'The figure that a finding is held against. None is a limit of law; the shop can set its own.',
    measured: 'On the page Limits, each with where it comes from.',
    usual: noUsual('A shop’s own figure is named as its own wherever it is used.'),
    sketch: sketch.LIMIT,
    see: ['verdict'],
  },
  clearance: {
    name: 'Clearance',
    also: ['gap', 'nearest', 'obstacle'],
    what: 'The least distance between two parts over all of the travel and turn.',
    measured:
      'Worked out by the board from the parts as drawn, and from what you add as rails and obstacles.',
    usual: atLeast('clearanceMoving', ' to anything that moves, twice that around tyres'),
    sketch: sketch.CLEARANCE,
    see: ['stops', 'travel'],
  },
  'build-tolerance': {
    name: 'Build tolerance',
    also: ['tolerance', 'band'],
    what: 'How closely the shop builds to the drawing. The band on the steer curve is where 19 cars in 20 would lie if every point were built to within that.',
    measured: 'Typed beside the curve; the band is worked out from many cars, each point moved by chance.',
    usual: usually('1/16 in (1.6 mm) each way.'),
    sketch: sketch.TOLERANCE,
    see: ['bump-steer', 'doubt'],
  },
  station: {
    name: 'Station',
    also: ['gauge', 'turning plates'],
    what: 'A height of the axle at which the gauge is read on the finished car.',
    measured: 'Blocks or a jack below the axle, springs out, the gauge set to zero at ride height.',
    usual: usually('Every 1/2 or 1 in (10 or 25 mm) from full bump to full droop.'),
    sketch: sketch.STATION,
    see: ['bump-steer', 'heave'],
  },
  curve: {
    name: 'Curves',
    also: ['plot', 'strip'],
    what: 'How a figure goes over the travel or the turn. What counts is how flat it is near ride height and how far it gets at the ends.',
    measured: 'Every pose is solved; nothing is drawn that was not.',
    usual: noUsual('Steer: flat. Toe: flat. Caster: as little change as possible.', PRACTICE),
    sketch: CURVE,
    see: ['bump-steer', 'bump-steer-slope'],
  },
} as const satisfies Record<string, Term>;
