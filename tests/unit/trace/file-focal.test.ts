import { expect, test } from 'vitest';
import { distanceQuestion, focalByFile } from '../../../shared-math/trace/index.ts';
import { fileFocal } from '../../../src-renderer/places/measure/photos/file-focal.ts';
import { lots, photoOf, RADIANS } from '../../support/photo-world.ts';
import { exifSegment, jpegHeaders, lensSegment } from '../../support/picture-files.ts';

// The equivalent is by the diagonal of 36 by 24 mm, as CIPA DC-001 has the angle of view; from memory. A main camera of a phone that
// is sold as 26 mm sees 79.5 degrees across its diagonal: twice the arc tangent of 21.63 / 26.
test('an equivalent gives the angle of view across the diagonal, whatever the number of pixels', () => {
  for (const size of [
    [4032, 3024],
    [3024, 4032],
    [2000, 1500],
  ] as const) {
    const found = focalByFile({ focal35: 26, width: 4032, height: 3024 }, size);
    const across = 2 * Math.atan(Math.hypot(...size) / 2 / (found?.px ?? 0));
    expect((across * 180) / Math.PI).toBeCloseTo(79.5, 1);
    expect(found?.share).toBe(0.05);
  }
});

// 36 mm across 6000 px are 166.67 px to a mm, or 4233.3 to an inch: an 85 mm lens is 14167 px long.
test('the sensor’s own pixels are taken before an equivalent', () => {
  const notes = {
    focal: 85,
    focal35: 85,
    perUnit: (6000 / 36) * 25.4,
    unit: 25.4,
    width: 6000,
    height: 4000,
  };
  expect(focalByFile(notes, [6000, 4000])?.px).toBeCloseTo((85 / 36) * 6000, 6);
  expect(focalByFile(notes, [3000, 2000])?.px).toBeCloseTo((85 / 36) * 3000, 6);
});

test('a picture that was cut, or whose file says nothing, has none', () => {
  expect(focalByFile({ focal35: 26, width: 4032, height: 3024 }, [3000, 3000])).toBeUndefined();
  expect(focalByFile({}, [4032, 3024])).toBeUndefined();
  expect(focalByFile({ focal35: 0 }, [4032, 3024])).toBeUndefined();
});

test('it is read out of a JPEG file, and a file without it gives none', async () => {
  const files = [[lensSegment(26)], [exifSegment(6)], []].map(
    (segments) => new Blob([new Uint8Array(jpegHeaders(4032, 3024, segments))]),
  );
  const [given, other, none] = await Promise.all(files.map((file) => fileFocal(file, [4032, 3024])));
  expect(given?.px).toBeCloseTo((26 / Math.hypot(36, 24)) * 5040, 6);
  expect([other, none]).toEqual([undefined, undefined]);
  expect(await fileFocal(new Blob(['Dear customer']), [40, 30])).toBeUndefined();
});

const photo = photoOf({ view: 'side', away: 4000, askew: 0.5 * RADIANS, focal: 35 }, lots(1));

test('a camera’s distance that needs a lens that nobody has is questioned, with what was probably meant', () => {
  expect(distanceQuestion(photo)).toBeUndefined();
  const meant = photo.distance ?? 0;
  const far = distanceQuestion({ ...photo, distance: 12 * meant });
  expect(far?.equivalent).toBeGreaterThan(250);
  expect(far?.meant).toBeCloseTo(meant, 6);
  expect(distanceQuestion({ ...photo, distance: 12 * meant, distanceSure: true })).toBeUndefined();
  // From as near as that no lens shows it at all.
  const near = distanceQuestion({ ...photo, distance: meant / 25.4 });
  expect(near).toEqual({ equivalent: undefined, meant: expect.closeTo(meant, 6) });
});

test('and one that the photo’s own file contradicts', () => {
  const px = (28 / Math.hypot(36, 24)) * Math.hypot(...photo.size);
  expect(distanceQuestion({ ...photo, focal: { px, share: 0.05 } })?.meant).toBeUndefined();
  expect(distanceQuestion({ ...photo, focal: { px, share: 0.05 } })?.equivalent).toBeCloseTo(35, 0);
  expect(distanceQuestion({ ...photo, focal: { px: (px * 36) / 28, share: 0.05 } })).toBeUndefined();
});
