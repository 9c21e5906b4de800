import { describe, expect, test } from 'vitest';
import {
  arrangementRows,
  assistedWords,
  firstFacts,
  frameWidth,
  laidNotes,
  proposeArrangements,
  rollSteerWords,
  tooNearWords,
  USUAL_FRAME_WIDTH,
} from '../../../shared-math/arrange/index.ts';
import { readLayout, resolveLayout } from '../../../shared-math/layout/index.ts';
import { carInSpace, type SpaceStroke, TONES } from '../../../src-renderer/shell/arrange/car-in-space.ts';
import { pictureOf, planBox } from '../../../src-renderer/shell/arrange/car-picture.ts';
import { demonstration } from '../../support/demonstration-files.ts';
import { documentOf, LOCATIONS, rawLayout } from '../../support/layouts.ts';

const INCHES = { unit: 'in', fraction: 16 } as const;
const rail = (path: number[][], mirrored: boolean) => ({
  name: 'Rail',
  path,
  height: 90,
  width: 50,
  mirrored,
});

describe('the frame’s width beside the axle', () => {
  test('is outside to outside, where the rails pass the axle', () => {
    const path = [
      [400, 330, 430],
      [-400, 350, 430],
      [-2000, 450, 400],
    ];
    expect(frameWidth(documentOf(rawLayout({ rails: [rail(path, true)] })))).toBeCloseTo(2 * (340 + 25), 9);
  });

  test('counts a rail of each side, and a rail that ends behind the axle by its end', () => {
    const left = rail(
      [
        [-100, 320, 430],
        [-900, 330, 430],
      ],
      false,
    );
    const right = rail(
      [
        [300, -310, 430],
        [-900, -310, 430],
      ],
      false,
    );
    expect(frameWidth(documentOf(rawLayout({ rails: [left, right] })))).toBe(345 + 335);
  });

  test('is not known from one side alone: a usual one stands until the person types theirs', () => {
    const left = rail(
      [
        [300, 320, 430],
        [-900, 330, 430],
      ],
      false,
    );
    const document = documentOf(rawLayout({ rails: [left] }));
    expect(frameWidth(document)).toBeUndefined();
    expect(firstFacts(document).frameWidth).toBe(USUAL_FRAME_WIDTH);
  });
});

describe('the small drawing of an arrangement', () => {
  test.each(Object.entries(LOCATIONS))(
    'has strokes for every kind of axle, all of them numbers: %s',
    (_, location) => {
      const document = documentOf(rawLayout({ location }));
      for (const { document: laid } of proposeArrangements(document, firstFacts(document))) {
        const strokes = pictureOf(resolveLayout(laid), 'top');
        expect(strokes.length).toBeGreaterThan(20);
        expect(strokes.some(({ role }) => role === 'steering')).toBe(true);
        for (const { d } of strokes) expect(d).toMatch(/^M-?\d[-\d. L]*Z?$/);
      }
    },
  );

  test('shows the front end from tyre to tyre', () => {
    const box = planBox(resolveLayout(documentOf(rawLayout())));
    expect(box.bottom).toBeGreaterThan(710 + 75);
    expect(box.top).toBe(-box.bottom);
    expect(box.left).toBeLessThan(-330);
  });
});

describe('the small drawing of a proposal in space', () => {
  const seen = (driverSide: 'left' | 'right') => {
    const document = demonstration('hairpins-side-steer');
    return carInSpace({ ...document, car: { ...document.car, driverSide } });
  };
  const rightward = (strokes: readonly SpaceStroke[], role: SpaceStroke['role']) => {
    const places = strokes
      .filter((stroke) => stroke.role === role)
      .flatMap(({ d }) => d.match(/-?\d+(?= )/g) ?? [])
      .map(Number);
    return places.reduce((sum, x) => sum + x, 0) / places.length;
  };

  test('has the car and its steering in strokes, all of them numbers, inside what it says that it covers', () => {
    const { strokes, box } = seen('left');
    for (const role of ['tyre', 'frame', 'axle', 'steering', 'obstacle'])
      expect(strokes.some((stroke) => stroke.role === role)).toBe(true);
    for (const { d, tone } of strokes) {
      expect(d).toMatch(/^(M-?\d+ -?\d+(L-?\d+ -?\d+)+Z?)+$/);
      expect(tone).toBeGreaterThanOrEqual(0);
      expect(tone).toBeLessThan(TONES);
      for (const x of (d.match(/-?\d+(?= )/g) ?? []).map(Number)) {
        expect(x).toBeGreaterThanOrEqual(box.left - 1);
        expect(x).toBeLessThanOrEqual(box.right + 1);
      }
    }
  });

  test('is seen from the driver’s side: what lies behind goes to the right of a car with its driver on the left', () => {
    // The rails run on behind the axle, where the tyres are not.
    const [left, right] = [seen('left').strokes, seen('right').strokes];
    expect(rightward(left, 'frame')).toBeGreaterThan(rightward(left, 'tyre') + 100);
    expect(rightward(right, 'frame')).toBeLessThan(rightward(right, 'tyre') - 100);
  });
});

describe('arrangements in words', () => {
  test('roll steer by its sense', () => {
    expect(rollSteerWords(0.02)).toBe('0.02° understeer');
    expect(rollSteerWords(-0.116)).toBe('0.12° oversteer');
    expect(rollSteerWords(0.004)).toBe('0.004° understeer');
    expect(rollSteerWords(0.00004)).toBe('none');
  });

  test('assistance as a range with its unit once', () => {
    expect(assistedWords(190, 'in')).toBe('2 to 7 lb');
    expect(assistedWords(190, 'mm')).toBe('11 to 32 N');
  });

  test('figures with their units', () => {
    const figures = {
      worstBumpSteer: 0.184,
      oneWheel: 0.271,
      rollSteer: 0,
      brakeSteer: 0.034,
      overallRatio: 18.84,
      turnsLockToLock: 3.304,
      innerLock: 33.6,
      circleBetweenKerbs: 11_176,
      rimForce: 80,
      rimForceMost: 130,
    };
    expect(arrangementRows(INCHES).map(({ words }) => words(figures))).toEqual([
      '0.18°',
      '0.27°',
      'none',
      '0.03°',
      '18.8 to 1',
      '3.30 turns',
      '33.6°',
      '36 ft 8 in',
    ]);
  });

  test('what comes too near by its worst, and how much more there is', () => {
    const pair = (nameOfA: string, distance: number, limit: 'moving' | 'tyre' = 'moving') => ({
      a: nameOfA,
      b: 'left-rail',
      nameOfA,
      nameOfB: 'left rail',
      limit,
      distance,
      at: { heave: 0, roll: 0, handwheel: 0 },
      onA: [0, 0, 0] as const,
      onB: [0, 0, 0] as const,
      assumed: false,
      part: 'x',
    });
    const clearances = (...pairs: ReturnType<typeof pair>[]) => ({
      pairs,
      within: 300,
      judged: 9,
      poses: 9,
      outOfReach: 0,
    });
    const words = (...pairs: ReturnType<typeof pair>[]) =>
      tooNearWords(clearances(...pairs), { moving: 12.7, tyre: 25.4 }, (mm) => `${mm} mm`);
    expect(words(pair('drag link', 13))).toBe('nothing');
    expect(words(pair('drag link', 5))).toBe('drag link comes within 5 mm of the left rail');
    expect(words(pair('pitman arm', -3), pair('left tyre', 20, 'tyre'))).toBe(
      'pitman arm hits the left rail, 1 more',
    );
  });

  test('what a laid layout remembers fits a document', () => {
    const facts = { frameWidth: 742.95, engineFillsFrame: true, driven: 'town' } as const;
    const notes = laidNotes(facts, INCHES);
    expect(notes).toMatch(/frame 29 1\/4 in wide .* is in the way .* driven in town/);
    expect(readLayout({ ...documentOf(rawLayout()), notes }).ok).toBe(true);
  });
});
