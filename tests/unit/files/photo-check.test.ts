import { describe, expect, test } from 'vitest';
import { checkPhoto } from '../../../src-main/files/index.ts';
import { avifFile, claiming, heicFile } from '../../support/heif-files.ts';
import { pagesPdf } from '../../support/pdf-files.ts';
import {
  animatedPng,
  bombPng,
  exifSegment,
  greyPng,
  jpegHeaders,
  webpHeader,
} from '../../support/picture-files.ts';

const TAKEN = 'bring a JPEG, PNG, WebP, HEIC, AVIF or PDF';

const told = (bytes: Uint8Array) => {
  const checked = checkPhoto(bytes);
  return checked.ok ? checked.value : checked.failure;
};

describe('a photo’s file is looked at without decoding it', () => {
  test('type and size come from the first bytes, whatever the file is called', () => {
    expect(told(greyPng(9, 12, 7))).toEqual({ type: 'image/png', width: 12, height: 7, orientation: 1 });
    expect(told(jpegHeaders(4032, 3024))).toEqual({
      type: 'image/jpeg',
      width: 4032,
      height: 3024,
      orientation: 1,
    });
    expect(told(webpHeader(1600, 900))).toMatchObject({ type: 'image/webp', width: 1600, height: 900 });
  });

  test.each([1, 2, 3, 4, 5, 6, 7, 8])(
    'orientation %i tells which way up, in either order of bytes',
    (orientation) => {
      for (const little of [false, true]) {
        const size = orientation >= 5 ? { width: 30, height: 40 } : { width: 40, height: 30 };
        expect(told(jpegHeaders(40, 30, [exifSegment(orientation, little)]))).toEqual({
          type: 'image/jpeg',
          ...size,
          orientation,
        });
      }
    },
  );

  test('an orientation that there is not is none', () => {
    expect(told(jpegHeaders(40, 30, [exifSegment(9)]))).toMatchObject({ width: 40, orientation: 1 });
  });

  test('what a photo cannot be is refused in plain words', () => {
    const whole = greyPng(5, 64, 64);
    expect(told(whole.subarray(0, whole.length - 8))).toBe('it breaks off before its end');
    const jpeg = jpegHeaders(40, 30);
    for (const length of [3, 10, jpeg.length - 2])
      expect(told(jpeg.subarray(0, length)), `${length} bytes`).toBe('it breaks off before its end');
    expect(told(webpHeader(4, 4).subarray(0, 36))).toBe('it breaks off before its end');
    expect(told(bombPng(60_000, 60_000))).toMatch(/^its picture is 60000 by 60000 pixels, more than/);
    expect(told(bombPng(15_000, 15_000))).toMatch(/more than 120 million/);
    expect(told(jpegHeaders(65_000, 65_000))).toMatch(/^its picture is 65000 by 65000 pixels/);
    expect(told(bombPng(0, 5))).toBe('its picture has no size');
    expect(told(animatedPng())).toBe('it is animated; take a single picture');
    expect(told(webpHeader(40, 30, true))).toBe('it is animated; take a single picture');
    expect(told(Buffer.from('GIF89a and so on'))).toBe(`it is a GIF picture; ${TAKEN}`);
    expect(told(Buffer.from('{"format": "toeboard-layout"}'))).toBe(`it is plain text; ${TAKEN}`);
    expect(told(new Uint8Array(0))).toBe('it is empty');
  });

  test('HEIC and AVIF are as large as they stand once they are turned, whatever their EXIF says', () => {
    expect(told(heicFile())).toEqual({ type: 'image/heic', width: 64, height: 96, orientation: 1 });
    for (const [turns, width, height] of [
      [0, 64, 96],
      [1, 96, 64],
      [2, 64, 96],
      [3, 96, 64],
    ] as const)
      expect(told(heicFile({ turns })), `${turns} quarter turns`).toMatchObject({ width, height });
    expect(told(heicFile({ mirror: 0 }))).toMatchObject({ width: 64, height: 96 });
    expect(told(avifFile())).toMatchObject({ type: 'image/avif', width: 96, height: 64 });
    expect(told(avifFile({ turns: 1 }))).toMatchObject({ width: 64, height: 96 });
    expect(told(claiming(heicFile(), 30_000, 4))).toMatch(/^its picture is 30000 by 4 pixels/);
    expect(told(heicFile().subarray(0, -1))).toBe('it breaks off before its end');
    // Two items of 65,535 stretches each that take no byte to be said.
    const endless = Buffer.from(heicFile());
    const iloc = endless.indexOf('iloc');
    endless.set([0, 0], iloc + 8);
    for (const item of [0, 1]) endless.writeUInt16BE(0xffff, iloc + 12 + 6 * item + 4);
    expect(told(endless)).toBe('it is damaged: its header makes no sense');
    const moving = Buffer.from(avifFile());
    moving.write('avis', 8, 'latin1');
    expect(told(moving)).toBe(`it is an animated picture; ${TAKEN}`);
  });

  test('a PDF has no px of its own; one that breaks off is refused', () => {
    expect(told(pagesPdf(3))).toEqual({ type: 'application/pdf', orientation: 1 });
    expect(told(pagesPdf(3).subarray(0, -10))).toBe('it breaks off before its end');
  });

  test('any byte of a header may be another, and is answered', () => {
    for (const file of [heicFile({ turns: 3 }), avifFile({ mirror: 1 })])
      for (let at = 0; at < 400 && at < file.length; at += 1)
        for (const value of [0, 1, 0x7f, 0xff]) {
          const other = Buffer.from(file);
          other[at] = value;
          const answer = checkPhoto(other);
          expect(answer.ok ? answer.value.type : answer.failure, `byte ${at}`).toEqual(expect.any(String));
        }
  });

  test('any first part of a photo is answered, never thrown at', () => {
    for (const file of [
      greyPng(1, 30, 20),
      jpegHeaders(40, 30, [exifSegment(6)]),
      webpHeader(4, 4),
      heicFile({ turns: 3 }),
      // What comes behind the mark of its end is not missed.
      pagesPdf(1).subarray(0, -1),
    ])
      for (let length = 0; length < file.length; length += 1)
        expect(told(file.subarray(0, length)), `${length} bytes`).toEqual(expect.any(String));
  });
});
