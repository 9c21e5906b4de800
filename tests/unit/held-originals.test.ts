import { expect, test } from 'vitest';
import { HELD_PIXELS_MOST, HeldOriginals } from '../../src-renderer/pictures/held-originals.ts';

const picture = (megapixels: number) => ({
  width: 1e6,
  height: megapixels,
  closed: 0,
  close() {
    this.closed += 1;
  },
});

test('originals are held within what memory should bear, the one asked for last longest', () => {
  const held = new HeldOriginals<ReturnType<typeof picture>>();
  const [a, b, c] = [picture(24), picture(24), picture(24)];
  held.take('a', a);
  held.take('b', b);
  expect(held.pixels).toBe(48e6);
  // Asked for again, the older of the two is the one that stays.
  expect(held.get('a')).toBe(a);
  held.take('c', c);
  expect([a, b, c].map(({ closed }) => closed)).toEqual([0, 1, 0]);
  expect(held.get('b')).toBeUndefined();
  expect(held.pixels).toBeLessThanOrEqual(HELD_PIXELS_MOST);

  // One larger than all that is allowed is held by itself.
  const large = picture(120);
  held.take('large', large);
  expect([a, c, large].map(({ closed }) => closed)).toEqual([1, 1, 0]);
  expect(held.get('large')).toBe(large);

  // Taken once more under its name, the former is closed; in the end all are, once.
  const again = picture(1);
  held.take('large', again);
  held.letGo();
  expect([a, b, c, large, again].map(({ closed }) => closed)).toEqual([1, 1, 1, 1, 1]);
  expect(held.pixels).toBe(0);
});
