import { expect, test } from 'vitest';
import type { Advised, Help } from '../../../../shared-math/trace/index.ts';
import { adviceWords } from '../../../../src-renderer/places/measure/photos/advice-words.ts';
import { boardPhoto } from '../../../support/photo-of-board.ts';
import type { Pinhole } from '../../../support/pinhole.ts';

// What is foretold is held by tests/thorough/trace/advice.test.ts; here is that the sentences carry it.

const camera: Pinhole = {
  at: [-1500, 4860, 550],
  lookAt: [-400, 860, 550],
  up: [0, 0, 1],
  roll: 0,
  focal: 3000,
  size: [4000, 3000],
  bend: 0,
};
const photos = [boardPhoto(camera, 860, { change: { name: 'askew' } })];
const asked = { photos, unit: 'in', name: (id: string) => `The ${id}` } as const;
const after = (help: Help, now = 10, left = 4): Advised => ({ now, steps: [{ help, now, left }] });

test('one more photo is asked for from a place that a person can walk to, with how far off square the first one stood', () => {
  const [words] = adviceWords(after({ kind: 'beside', photo: 0, right: -1828.8 }), asked);
  expect(words).toBe(
    'You stood 15° off square. Take one more from the side, 6 ft 0 in to the left of where you stood, as far off and as high. ' +
      'Points are then known to ± 0.16 in on average, not just ± 0.40 in.',
  );
  expect(adviceWords(after({ kind: 'beside', photo: 0, right: 900 }), { ...asked, unit: 'mm' })[0]).toContain(
    '0.90 m to the right of',
  );
});

test('a doubt is never rounded down, and one of depth is no figure', () => {
  const help = { kind: 'view', view: 'front', distance: 3657.6 } as const;
  expect(adviceWords(after(help, 10, 2.55), asked)[0]).toContain('± 0.11 in on average');
  const [words] = adviceWords(after(help, 250, 5), asked);
  expect(words).toContain('from ahead, square on, from 12 ft 0 in');
  expect(words).toContain('so far nothing says how deep they stand');
  expect(words).not.toContain('9.8');
});

test('what is done second is counted from the first, whose own figure stands above it', () => {
  const help = { kind: 'view', view: 'front', distance: 3657.6 } as const;
  const words = adviceWords(
    {
      now: 30,
      steps: [
        { help, now: 30, left: 9 },
        { help: { ...help, view: 'top' }, now: 7.2, left: 5 },
      ],
    },
    asked,
  );
  expect(words[0]).toContain('± 0.36 in on average, not just ± 1.19 in');
  expect(words[1]).toMatch(/known to ± 0\.20 in on average\.$/);
});

test('each thing that could be done has its sentence, and nothing to do has one', () => {
  const of = (help: Help) => adviceWords(after(help), asked)[0];
  expect(of({ kind: 'beside', photo: 1, right: 609.6 })).toContain('beside that one, 2 ft 0 in to the right');
  expect(of({ kind: 'view', view: 'top', distance: 2900 })).toContain('straight down, camera 9 ft 6 in up');
  expect(of({ kind: 'distance', photos: [0, 1] })).toContain('“askew” and the one to be taken');
  expect(of({ kind: 'plane', photos: [0] })).toContain('where the plane of “askew” stands');
  expect(of({ kind: 'edge', photos: [0] })).toContain('under Lens');
  expect(of({ kind: 'length', from: 'a', to: 'b' })).toContain('from the the a to the the b');
  expect(adviceWords({ now: 6.2, steps: [] }, asked)).toEqual([
    'With every point clicked on these photos they are known to about ± 0.25 in. Nothing that was tried, one photo or one length more, would take a fifth off that.',
  ]);
});
