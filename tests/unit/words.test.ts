import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OWN_LIMIT } from '../../shared-math/findings/index.ts';
import {
  ASSIST_WORDS,
  BEAM_WORDS,
  CAUTION,
  DRIVER_WORDS,
  EYES_WORDS,
  gapWords,
  groundsOf,
  handwheelWords,
  LATERAL_WORDS,
  LOCATION_WORDS,
  lockWords,
  pairWords,
  placeInTurn,
  poseWords,
  ROCKER_WORDS,
  ratioWords,
  SEVERITY_WORDS,
  SIDE_WORDS,
  tallyWords,
  turnsWords,
  wordsOf,
} from '../../shared-math/words/index.ts';
import { DEGREE } from '../support/close.ts';
import { LATERALS, LOCATIONS } from '../support/layouts.ts';

const inches = (mm: number) => `${Math.round(mm / 25.4)} in`;

describe('the kinds of a car, in a builder’s words', () => {
  const lists = {
    LOCATION_WORDS,
    LATERAL_WORDS,
    EYES_WORDS,
    ROCKER_WORDS,
    BEAM_WORDS,
    SIDE_WORDS,
    DRIVER_WORDS,
    ASSIST_WORDS,
  } as Record<string, readonly (readonly [string, string])[]>;
  test.each(Object.entries(lists))('%s: each has words of its own, and its value finds them', (_, list) => {
    expect(list.length).toBeGreaterThan(1);
    expect(new Set(list.map(([, words]) => words)).size).toBe(list.length);
    for (const [value, words] of list) {
      expect(words).toMatch(/^\p{L}[\p{L}\p{P} ]+$/u);
      expect(wordsOf(list, value)).toBe(words);
    }
  });

  test('there are words for what a layout can have, and for nothing else', () => {
    const values = Object.values(lists).map((list) => list.map(([value]) => value).sort());
    expect(values).toEqual([
      Object.keys(LOCATIONS).sort(),
      Object.keys(LATERALS).sort(),
      ['pinned', 'sliding'],
      ['axle', 'frame'],
      ['i-beam', 'tube'],
      ['left', 'right'],
      ['left', 'right'],
      ['manual', 'power'],
    ]);
  });

  test('say what the value is called', () => {
    // The value's own word is in its words: nothing is called by another's name.
    for (const [list, value, word] of [
      [LOCATION_WORDS, 'hairpins', 'hairpin'],
      [LOCATION_WORDS, 'split-rods', 'split radius rods'],
      [LOCATION_WORDS, 'wishbone', 'wishbone'],
      [LOCATION_WORDS, 'four-bar', 'four bar'],
      [LOCATION_WORDS, 'parallel-leaf', 'leaf'],
      [LOCATION_WORDS, 'quarter-elliptic', 'quarter-elliptic'],
      [EYES_WORDS, 'sliding', 'sliding'],
      [LATERAL_WORDS, 'bar', 'bar'],
      [LATERAL_WORDS, 'spring', 'spring'],
      [LATERAL_WORDS, 'fixed-spring', 'fixed spring eye'],
      [LATERAL_WORDS, 'watt', 'Watt'],
      [ROCKER_WORDS, 'frame', 'frame'],
      [BEAM_WORDS, 'i-beam', 'I-beam'],
      [BEAM_WORDS, 'tube', 'tube'],
      [SIDE_WORDS, 'left', 'left'],
      [SIDE_WORDS, 'right', 'right'],
      [DRIVER_WORDS, 'left', 'left'],
      [DRIVER_WORDS, 'right', 'right'],
      [ASSIST_WORDS, 'manual', 'manual'],
      [ASSIST_WORDS, 'power', 'power'],
    ] as const)
      expect(wordsOf<string>(list, value)).toContain(word);
  });

  test('a value without words is said as it stands', () => {
    expect(wordsOf<string>(SIDE_WORDS, 'middle')).toBe('middle');
  });

  test('the caution says what can happen and who has the say', () => {
    expect(CAUTION).toMatch(/dangerously.*certifies nothing.*local codes.*makers.*licensed practice\.$/);
  });
});

describe('what sets a lock', () => {
  test.each([
    ['sector-travel', /box.*end/],
    ['drag-link', /drag link.*reach/],
    ['tie-rod', /tie rod.*reach/],
    ['dead-centre', /dead centre/],
    ['no-pose', /no pose/],
  ] as const)('%s', (cause, words) => {
    expect(lockWords(cause, undefined)).toMatch(words);
    expect(lockWords(cause, 33)).toBe(lockWords(cause, undefined));
  });

  test('a stop by its angle, as it was given', () => {
    expect(lockWords('stop', undefined)).toBe('the stop');
    expect(lockWords('stop', 33)).toBe('the stop at 33°');
    expect(lockWords('stop', 32.5)).toBe('the stop at 32.5°');
  });
});

describe('where the handwheel stands', () => {
  test('turns and ratio have a size and no sign', () => {
    expect(turnsWords(-561.6)).toBe('1.56 turns');
    expect(turnsWords(360)).toBe('1.00 turns');
    expect(ratioWords(15.84)).toBe('15.8 to 1');
  });

  const locks = {
    left: { handwheel: 540 * DEGREE, cause: 'stop', leftSteer: 0.6, rightSteer: 0.5 },
    right: { handwheel: -500 * DEGREE, cause: 'stop', leftSteer: -0.5, rightSteer: -0.6 },
  } as const;

  test('counter-clockwise for the driver is to the left', () => {
    fc.assert(
      fc.property(fc.double({ min: -490, max: 490, noNaN: true }), (degrees) => {
        const [long, short] = [handwheelWords(degrees), placeInTurn(degrees * DEGREE, locks)];
        if (Math.abs(degrees) < 0.499) {
          expect([long, short]).toEqual(['straight ahead', 'straight ahead']);
        } else if (Math.abs(degrees) > 0.501) {
          const side = degrees > 0 ? 'left' : 'right';
          const size = Math.abs(degrees).toFixed(0);
          expect([long, short]).toEqual([`at ${size}° of handwheel to the ${side}`, `${size}° ${side}`]);
        }
      }),
      { seed: 4, numRuns: 200, examples: [[0], [0.49], [-0.49], [0.51], [-0.51]] },
    );
    expect(handwheelWords(0.5)).toBe('at 1° of handwheel to the left');
    expect(placeInTurn(-0.5 * DEGREE * 1.000001, locks)).toBe('1° right');
  });

  test('a lock is called by its name', () => {
    expect(placeInTurn(540 * DEGREE, locks)).toBe('left lock');
    expect(placeInTurn(-500 * DEGREE, locks)).toBe('right lock');
  });
});

describe('the verdict', () => {
  test('has a sign in words for each severity', () => {
    expect(SEVERITY_WORDS).toEqual({ stop: 'Must fix', attention: 'Check', info: 'OK' });
  });

  test.each([
    [0, 0, 'Nothing past its limit'],
    [1, 0, '1 to fix'],
    [2, 0, '2 to fix'],
    [0, 1, '1 to check'],
    [0, 3, '3 to check'],
    [2, 3, '2 to fix · 3 to check'],
  ])('%d to stop at, %d to attend to: %s', (stop, attention, words) => {
    expect(tallyWords({ stop, attention, info: 7 })).toBe(words);
  });

  const finding = { rule: 'r', severity: 'info', sentence: 's', part: 'p', advice: '' } as const;
  const PRACTICE = 'common practice, no published source';
  test('names limit and source, with the shop’s own limits set apart', () => {
    expect(groundsOf({ ...finding, limit: '', source: PRACTICE })).toEqual([{ text: PRACTICE, own: false }]);
    expect(groundsOf({ ...finding, limit: 'limit 1°', source: PRACTICE })).toEqual([
      { text: `limit 1° · ${PRACTICE}`, own: false },
    ]);
    expect(groundsOf({ ...finding, limit: 'limit 1°', source: OWN_LIMIT })).toEqual([
      { text: 'limit 1° · ', own: false },
      { text: OWN_LIMIT, own: true },
    ]);
    expect(groundsOf({ ...finding, limit: '', source: `${OWN_LIMIT}; ${OWN_LIMIT}` })).toEqual([
      { text: OWN_LIMIT, own: true },
      { text: '; ', own: false },
      { text: OWN_LIMIT, own: true },
    ]);
  });

  test('in short says the practice by its first words, wherever it stands', () => {
    const short = groundsOf({ ...finding, limit: '', source: `${PRACTICE}; ${PRACTICE}` }, true);
    expect(short).toEqual([{ text: 'common practice; common practice', own: false }]);
  });
});

describe('a pose in words', () => {
  const still = { heave: 0, roll: 0, handwheel: 0 };
  test.each([
    [{}, 'ride height'],
    [{ heave: 76.2 }, '3 in of bump'],
    [{ heave: -76.2 }, '3 in of droop'],
    [{ roll: 3 }, '3° of roll, left wheel up'],
    [{ roll: -2.55 }, '2.6° of roll, right wheel up'],
    [{ roll: 0.2 }, '0.2° of roll, left wheel up'],
    [{ handwheel: 543.6 }, '544° of handwheel to the left'],
    [{ handwheel: -270 }, '270° of handwheel to the right'],
    [
      { heave: 76.2, roll: -3, handwheel: 90 },
      '3 in of bump, 3° of roll, right wheel up, 90° of handwheel to the left',
    ],
    // What rounds away is not shown.
    [{ heave: 0.05, roll: 0.005, handwheel: 0.05 }, 'ride height'],
    [{ heave: -0.049, roll: -0.0049, handwheel: -0.049 }, 'ride height'],
    [{ heave: -0.06 }, '0 in of droop'],
    [{ roll: 0.006 }, '0° of roll, left wheel up'],
    [{ handwheel: -0.06 }, '0° of handwheel to the right'],
  ])('%o: %s', (pose, words) => {
    expect(poseWords({ ...still, ...pose }, inches)).toBe(words);
  });
});

describe('how near two parts come', () => {
  test('in words for the length, or that they touch or hit', () => {
    expect(gapWords({ distance: 50.8 }, inches)).toBe('2 in');
    // 3 mm is a gap, whatever the words round to; 0.04 mm is none that a feeler tells.
    expect(gapWords({ distance: 3 }, (mm) => `${mm} mm`)).toBe('3 mm');
    expect(gapWords({ distance: 0.04 }, inches)).toBe('touches');
    expect(gapWords({ distance: 0 }, inches)).toBe('hits');
    expect(gapWords({ distance: -4 }, inches)).toBe('hits');
  });

  test('the pair by its two names, the first with a capital', () => {
    const pair = { nameOfA: 'drag link', nameOfB: 'left tyre' } as Parameters<typeof pairWords>[0];
    expect(pairWords(pair)).toBe('Drag link – left tyre');
  });
});
