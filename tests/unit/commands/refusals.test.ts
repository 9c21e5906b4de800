import { expect, test } from 'vitest';
import { toeboard } from '../../support/command-line.ts';

const LAYOUT = 'projects/hairpins-side-steer.json';

// What is wrong, and what to do about it, in one line that a person at a keyboard takes in at a glance.
test.each([
  [['aim', LAYOUT, LAYOUT], `only one layout file is taken: remove "${LAYOUT}"`],
  [['measure', LAYOUT, 'tape.json', 'more.json'], 'one layout and one survey are taken: remove "more.json"'],
  [['handbook', 'file.pdf'], 'handbook takes no file: remove "file.pdf"'],
  [['spline', 'photo.png', '--diameter=0.75', '--half=18'], 'spline takes no file: remove "photo.png"'],
  [['spline', '--diameter=0.75'], 'give --count or --half, one of the two'],
  [['sweep', LAYOUT, '--heave=0:10:-1'], '--heave: the step goes the wrong way and never reaches 10'],
  [['sit', LAYOUT, '--csv'], '--csv needs --over: there is one answer without it, and no rows'],
  [['tune', LAYOUT, '--free=box-up=9:3'], '--free box-up: the range runs backwards: 9 is more than 3'],
])('%j is refused plainly', async (words, reason) => {
  const { code, out, err } = await toeboard(...words);
  expect([code, out]).toEqual([2, '']);
  expect(err.split('\n')[0]).toContain(reason);
});
