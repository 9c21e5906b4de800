import { expect, test } from 'vitest';
import { balloons, onOneSpot } from '../../../src-main/output/pens/balloons.ts';
import type { CarView } from '../../../src-main/output/pens/car-view.ts';
import { SvgPen } from '../../../src-main/output/pens/svg-pen.ts';

const VIEW: CarView = {
  view: 'side',
  shown: { left: -400, right: 400, top: -400, bottom: 0 },
  scale: 10,
  x: 60,
  y: 60,
};

test('a spot that one of its points was guessed for is a guess', () => {
  const spots = onOneSpot(VIEW, [
    { number: 1, at: [0, 100, 200] },
    { number: 2, at: [0, -100, 200], guessed: true },
    { number: 3, at: [-300, 0, 100] },
  ]);
  expect(spots.map(({ words, guessed }) => [words, guessed])).toEqual([
    ['1, 2', true],
    ['3', false],
  ]);
});

test('a guessed point’s balloon is broken, a measured one’s is not', () => {
  const drawn = (guessed: boolean) => {
    const pen = new SvgPen('outlines');
    pen.addPage({ width: 120, height: 80 });
    balloons(pen, VIEW, [{ number: 1, at: [0, 0, 200], guessed }]);
    return pen.document(0, 'a balloon');
  };
  expect(drawn(true)).toContain('stroke-dasharray');
  expect(drawn(false)).not.toContain('stroke-dasharray');
});
