import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ballMove } from '../../shared-math/findings/ball-move.ts';
import { moveWords } from '../../shared-math/findings/finding.ts';
import { analyse, type Finding, findings } from '../../shared-math/findings/index.ts';
import { distance, type Point } from '../../shared-math/geometry/points.ts';
import type { Layout } from '../../shared-math/layout/index.ts';
import { createState, prepareFrontEnd, solveFrontEnd } from '../../shared-math/linkage/index.ts';
import { sweepTurn } from '../../shared-math/sweep/index.ts';
import { formatLength, type LengthStyle, parseLength } from '../../shared-math/units/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { CROSS_STEER, layoutOf, PLAIN_HALF, SIDE_STEER } from '../support/layouts.ts';

// What the words of a finding mean to somebody who has only the words.

const STYLES: readonly LengthStyle[] = [
  { unit: 'in', fraction: 16 },
  { unit: 'mm', fraction: 16 },
];
const coordinate = fc.double({ min: -900, max: 900, noNaN: true });
const point = fc.tuple(coordinate, coordinate, coordinate) as fc.Arbitrary<Point>;

/** Follows "Raise the X 3 in", "Lower …", "Move the X 3 in ahead | back | inboard | outboard": x forward, y left, z up. */
function followed(words: string, from: Point): { to: Point; axis: number; by: number } {
  const match =
    /^(Raise|Lower) the .+? (\d.*)$/.exec(words) ??
    /^Move the .+? (\d.*?) (ahead|back|inboard|outboard)$/.exec(words);
  if (!match) throw new Error(`not a move: ${words}`);
  const upright = words.startsWith('Raise') || words.startsWith('Lower');
  const way = (upright ? match[1] : match[2]) as string;
  const length = parseLength((upright ? match[2] : match[1]) as string, 'mm');
  if (!length.ok) throw new Error(length.failure);
  const outward = from[1] < 0 ? -1 : 1;
  const [axis, sign] = {
    Raise: [2, 1],
    Lower: [2, -1],
    ahead: [0, 1],
    back: [0, -1],
    outboard: [1, outward],
    inboard: [1, -outward],
  }[way] as [number, number];
  const to = from.map((value, i) => (i === axis ? value + sign * length.value : value));
  return { to: to as unknown as Point, axis, by: length.value };
}

describe('a move in words', () => {
  test('followed, brings the point to the place along the way that it is furthest off', () => {
    fc.assert(
      fc.property(point, point, fc.constantFrom(...STYLES), (from, to, style) => {
        const words = moveWords('pitman ball', from, to, (mm) => formatLength(mm, style));
        const { to: there, axis } = followed(words, from);
        const off = to.map((value, i) => Math.abs(value - (from[i] as number)));
        expect(off[axis]).toBe(Math.max(...off));
        // To the last figure of the words: half of 1/16 in, or of 0.1 mm.
        const last = style.unit === 'in' ? 25.4 / 32 : 0.05;
        expectClose(there[axis]!, to[axis]!, last + 1e-9, words);
      }),
      { seed: 11, numRuns: 300 },
    );
  });

  test('names what is moved; a place in the middle has its outboard to the left', () => {
    const length = (mm: number) => formatLength(mm, { unit: 'mm', fraction: 16 });
    expect(moveWords('pitman ball', [0, 0, 0], [1, 5, 2], length)).toBe(
      'Move the pitman ball 5.0 mm outboard',
    );
    expect(moveWords('box', [0, 0, 0], [0, -5, 0], length)).toBe('Move the box 5.0 mm inboard');
    expect(moveWords('box', [0, -300, 0], [0, -305, 0], length)).toBe('Move the box 5.0 mm outboard');
  });
});

describe('the pitman ball brought to a place', () => {
  const { sectorCentre, pitmanBall } = SIDE_STEER.box as unknown as Record<string, Point>;
  const length = (mm: number) => formatLength(mm, { unit: 'mm', fraction: 16 });

  test('alone where an arm of 4 1/2 to 7 in reaches, else the box with its arm by the same way; words as the remedy', () => {
    fc.assert(
      fc.property(point, (by) => {
        const layout = layoutOf();
        const to: Point = [
          pitmanBall![0] + by[0] / 6,
          pitmanBall![1] + by[1] / 6,
          pitmanBall![2] + by[2] / 6,
        ];
        const { words, remedy } = ballMove(layout, to, length);
        if (remedy.kind !== 'move') throw new Error('a move');
        const arm = distance(sectorCentre!, to);
        const alone = arm >= 4.5 * 25.4 && arm <= 7 * 25.4;
        expect(remedy.id).toBe(alone ? 'steering.box.pitmanBall' : 'steering.box.sectorCentre');
        expect(words).toContain(alone ? 'the pitman ball' : 'the box with its arm');
        const from = (alone ? pitmanBall : sectorCentre) as Point;
        remedy.to.forEach((value, i) => {
          expectClose(value - from[i]!, to[i]! - pitmanBall![i]!, 1e-9);
        });
        const { to: there, axis } = followed(words, from);
        expectClose(there[axis]!, remedy.to[axis]!, 0.05 + 1e-9, words);
      }),
      { seed: 12, numRuns: 100 },
    );
  });
});

const said = (layout: Layout, rule: string): Finding =>
  findings(analyse(layout), { unit: 'mm', fraction: 16 }).find((finding) => finding.rule === rule)!;

describe('roll steer', () => {
  // ISO 8855: in a left turn the frame leans to the right, so that its right wheel is up on it: roll below 0. Wheels
  // that then point further left (positive) turn the car in more than asked: oversteer.
  test.each(
    [-80, -40, 0, 40, 80, 120].flatMap((up) => [
      { up, steering: SIDE_STEER },
      { up, steering: CROSS_STEER },
    ]),
  )('is called by what the wheels do in a left turn: pitman ball $up mm higher', ({ up, steering }) => {
    const [x, y, z] = steering.box.pitmanBall as [number, number, number];
    const box = { ...steering.box, pitmanBall: [x, y, z + up] };
    const layout = layoutOf({ steering: { ...steering, box } });
    const state = createState();
    const mean = (roll: number) => {
      solveFrontEnd(prepareFrontEnd(layout), 0, roll, 0, state);
      return state.meanSteer;
    };
    const further = (mean(-0.1 * DEGREE) - mean(0.1 * DEGREE)) / (0.2 * DEGREE);
    const { sentence, severity } = said(layout, 'roll-steer');
    if (Math.abs(further) < 0.005) expect(sentence).toMatch(/hardly/);
    else {
      expect(sentence).toMatch(further > 0 ? /oversteer/ : /understeer/);
      expectClose(Number(/([\d.]+)° for each degree/.exec(sentence)?.[1]), Math.abs(further), 0.0075);
    }
    // Common practice, no published source: at most a tenth of a degree further in for each degree.
    if (Math.abs(further - 0.1) > 1e-3) expect(severity).toBe(further > 0.1 ? 'attention' : 'info');
  });

  test('both are met in these layouts', () => {
    const kinds = [-80, 120].map((up) => {
      const box = { ...SIDE_STEER.box, pitmanBall: [-800, 500, 350 + up] };
      return said(layoutOf({ steering: { ...SIDE_STEER, box } }), 'roll-steer').sentence.split(' ')[1];
    });
    expect([...kinds].sort()).toEqual(['oversteer', 'understeer']);
  });
});

describe('Ackermann at lock', () => {
  test('is told of the side where the inner wheel leads by less, with that side’s own figures', () => {
    const sides = new Set<string>();
    fc.assert(
      fc.property(
        fc.double({ min: 560, max: 690, noNaN: true }),
        fc.double({ min: 560, max: 690, noNaN: true }),
        (leftArm, rightArm) => {
          const left = { ...PLAIN_HALF, tieRodBall: [-150, leftArm, 292] };
          const right = {
            ...PLAIN_HALF,
            kingpinTop: [-7, -631, 395],
            kingpinBottom: [7, -649, 265],
            wheelCentre: [0, -710, 330],
            tieRodBall: [-150, -rightArm, 292],
          };
          const layout = layoutOf({ axle: { beam: 'i-beam', left, right } });
          const turn = sweepTurn(prepareFrontEnd(layout), 0, 0);
          // By how much the inner wheel leads: in a left lock the left one, in a right lock the right one.
          // Each wheel is counted from where its toe-in of 0.1° has it straight ahead.
          const toe = 2 * PLAIN_HALF.toeIn * DEGREE;
          const leads = {
            left: turn.left.leftSteer - turn.left.rightSteer + toe,
            right: turn.right.leftSteer - turn.right.rightSteer + toe,
          };
          const worse = leads.left < leads.right ? 'left' : 'right';
          sides.add(worse);
          const { sentence, at, severity } = said(layout, 'ackermann');
          expect(at?.handwheel).toBe(turn[worse].handwheel);
          const figure = Number(/([\d.]+)° further/.exec(sentence)?.[1]);
          expectClose(figure, Math.abs(leads[worse]) / DEGREE, 0.0501);
          expect(sentence.includes('reversed')).toBe(leads[worse] < 0);
          expect(severity).toBe(leads[worse] < 0 ? 'attention' : 'info');
        },
      ),
      { seed: 13, numRuns: 25 },
    );
    expect(sides.size).toBe(2);
  });
});
