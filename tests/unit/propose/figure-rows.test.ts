import { expect, test } from 'vitest';
import {
  figureRows,
  givingWords,
  heldWords,
  type ProposalFigures,
} from '../../../shared-math/propose/index.ts';
import { foundWords, newPartWords, triedWords } from '../../../src-renderer/shell/arrange/proposing-words.ts';
import { INCHES, MM } from '../../support/judged-car.ts';

const FIGURES: ProposalFigures = {
  bumpSteer: 0.214,
  oneWheel: 0.4,
  rollSteer: -0.031,
  brakeSteer: undefined,
  overallRatio: 17.24,
  turns: 3.1,
  innerLock: 31,
  circle: 10_300,
  rimForce: 70,
  rimForceMost: 110,
  pitmanTransmission: 55.4,
  armTransmission: 48,
  ballTilt: 13.04,
  nearest: { words: 'drag link to left tyre', distance: 25.4, limit: 19.05 },
  shaftJoints: [12, 23.4],
  supports: 1,
  band: 0.5,
};

const rowOf = (what: string, drawn?: ProposalFigures, style = INCHES) =>
  figureRows(FIGURES, drawn, style).find((row) => row.what === what);

test('figures are read in the reader’s units, and one that was not found says so', () => {
  expect(rowOf('Worst bump steer')).toEqual({
    what: 'Worst bump steer',
    proposed: '0.21°',
    drawn: undefined,
    better: undefined,
    main: true,
  });
  // Hundredths, and finer where they would read as none at all.
  const hardly = figureRows({ ...FIGURES, bumpSteer: 0.0034, rollSteer: 0.002 }, undefined, INCHES);
  expect(hardly.find(({ what }) => what === 'Worst bump steer')?.proposed).toBe('0.003°');
  expect(hardly.find(({ what }) => what === 'Roll steer per degree')?.proposed).toBe('0.002° understeer');
  expect(rowOf('Steers itself in a hard stop')?.proposed).toBe('not worked out');
  expect(rowOf('Roll steer per degree')?.proposed).toBe('0.03° oversteer');
  // 10.300 m are 33 ft 9.5 in; 110 N are 24.7 lb (0.3048 m and 4.44822 N, exact by their definitions).
  expect(rowOf('Circle between kerbs')?.proposed).toBe('33 ft 10 in');
  expect(rowOf('Circle between kerbs', undefined, MM)?.proposed).toBe('10.30 m');
  expect(rowOf('Parking, no assistance')?.proposed).toBe('25 lb');
  expect(rowOf('Nearest two parts')?.proposed).toBe('1 in: drag link to left tyre');
  expect(rowOf('Steering shaft')?.proposed).toBe('2 joints, 1 bearing, bent 23° at the most');
  expect(rowOf('Parts off by 1/8 in')?.proposed).toBe('0.50°');
  // An eighth of an inch is 3.175 mm, exact by its definition.
  expect(rowOf('Parts off by 3.2 mm', undefined, MM)?.proposed).toBe('0.50°');
});

test('beside the layout as drawn it says which is better, where one is', () => {
  const drawn = { ...FIGURES, bumpSteer: 3.8, oneWheel: 0.3, innerLock: 28, band: undefined, circle: 10_301 };
  expect(rowOf('Worst bump steer', drawn)).toMatchObject({ drawn: '3.80°', better: true });
  expect(rowOf('One wheel over a bump', drawn)).toMatchObject({ drawn: '0.30°', better: false });
  expect(rowOf('Parts off by 1/8 in', drawn)).toMatchObject({ drawn: 'not worked out', better: undefined });
  // Neither more nor less of these is better by itself, and what reads alike is alike.
  expect(rowOf('Inner wheel at lock', drawn)).toMatchObject({ drawn: '28.0°', better: undefined });
  expect(rowOf('Circle between kerbs', drawn)).toMatchObject({ better: undefined });
});

test('what is held is named in one sentence', () => {
  expect(heldWords([])).toBe('Nothing of the steering is kept as drawn.');
  expect(heldWords(['pitman-arm', 'stops'])).toBe('Kept as drawn: the pitman ball, the axle’s stops.');
});

test('what would have to give is said where there is more than one thing', () => {
  expect(givingWords({ excluding: ['the sump as high as it is'], single: true })).toBe('');
  expect(givingWords({ excluding: ['the sump', 'the header tube'], single: true })).toBe(
    'Any one of these would have to give: the sump; the header tube.',
  );
  expect(givingWords({ excluding: ['the sump', 'the header tube'], single: false })).toBe(
    'These two would have to give together: the sump; the header tube.',
  );
  expect(givingWords({ excluding: ['the sump', 'the header tube', 'the rail'], single: false })).toBe(
    'More than one of these would have to give: the sump; the header tube; the rail.',
  );
});

test('how the search stands, and a part to get, are said in one line', () => {
  expect(foundWords(false, false, false, 0)).toBe('Nothing has been looked for yet.');
  expect(foundWords(true, true, false, 0)).toBe('None found so far.');
  expect(foundWords(true, true, false, 1)).toBe('1 arrangement fits so far.');
  expect(foundWords(true, false, true, 2)).toBe(
    '2 arrangements fit. The search was stopped: there may be more.',
  );
  expect(foundWords(true, false, false, 0)).toBe('Nothing fits this car as it is drawn and held.');
  expect(triedWords(0)).toBe('');
  expect(triedWords(12_400)).toBe('12,400 arrangements tried.');
  expect(newPartWords({ words: 'Single joint', count: 3, onShelf: 1 })).toBe(
    '3 × Single joint, 1 on the shelf',
  );
  expect(newPartWords({ words: 'Pitman arm', count: 1, onShelf: 1 })).toBe('Pitman arm, on the shelf');
});
