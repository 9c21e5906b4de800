import { describe, expect, test } from 'vitest';
import { documentText, refusalLine } from '../../../shared-math/layout/index.ts';
import { carFile, readImport } from '../../../src-main/files/index.ts';
import { impossibleLayout, sampleLayout } from '../../support/host-sample.ts';

function refusalOf(input: unknown): string {
  const read = readImport(typeof input === 'string' ? input : JSON.stringify(input));
  if (read.ok) throw new Error('the file was taken and should have been refused');
  return refusalLine(read.failure);
}

const CAR = carFile({ name: 'Roadster', notes: 'dropped axle' }, [
  sampleLayout(),
  sampleLayout('Arm up', 400),
]);

describe('a file', () => {
  test('is taken for what it says it is', () => {
    expect(readImport(documentText(sampleLayout()))).toEqual({
      ok: true,
      value: { kind: 'layout', layout: sampleLayout() },
    });
    expect(readImport(documentText(CAR))).toEqual({
      ok: true,
      value: { kind: 'car', car: { ...CAR, photos: [] } },
    });
    expect(readImport(`\uFEFF${JSON.stringify(CAR)}`).ok).toBe(true);
    const bare = { format: 'toeboard-car', version: 1, name: 'Roadster', layouts: [] };
    expect(readImport(JSON.stringify(bare))).toEqual({
      ok: true,
      value: { kind: 'car', car: { ...bare, version: 2, notes: '', photos: [] } },
    });
  });

  test.each([
    ['', /^not JSON: /],
    ['{"format": "toeboard-car",', /^car file: not JSON: /],
    ['[]', /^not a layout document/],
    ['null', /^not a layout document/],
    [{ format: 'something-else' }, /^format: expected "toeboard-layout"/],
    [
      { ...CAR, version: 4 },
      /^car file: version: this file is version 4, newer than this program reads \(3\); use a newer Toeboard$/,
    ],
    [{ ...CAR, version: '1' }, /^car file: version: expected 1 or 2 or 3, found the text "1"$/],
    [{ ...CAR, name: 7 }, /^car file: name: expected text, found 7$/],
    [{ ...CAR, name: ' ' }, /^car file: name: must not be empty$/],
    [{ ...CAR, owner: 'x' }, /^car file: unknown key "owner"$/],
    [{ ...CAR, layouts: {} }, /^car file: layouts: expected a list, found an object/],
    [{ ...CAR, layouts: [sampleLayout(), null] }, /^car file: layouts\[1\]: not a layout document/],
    [
      { ...CAR, layouts: [{ ...sampleLayout(), version: 9 }] },
      /^car file: layouts\[0\]\.version: this document is version 9, newer/,
    ],
    [
      { ...CAR, layouts: [sampleLayout(), sampleLayout(), impossibleLayout()] },
      /^car file: layouts\[2\]\.steering\.dragLinkBall: on the same spot as the pitman ball/,
    ],
  ])('of another sort is refused with its place: %#', (input, reason) => {
    expect(refusalOf(input)).toMatch(reason);
    expect(refusalOf(input)).not.toContain('\n');
  });

  test.each([
    ['one bracket', '['.repeat(9_900_000)],
    ['no JSON', 'x'.repeat(9_900_000)],
    ['numbers', `[${'1,'.repeat(4_900_000)}1]`],
    ['far too much', '{'.repeat(10_000_001)],
  ])('of ten million characters of rubbish is refused in under a second: %s', (_, text) => {
    const begun = performance.now();
    expect(refusalOf(text)).toMatch(/^too large to be a (Toeboard file|layout document)/);
    expect(performance.now() - begun).toBeLessThan(1000);
  });
});

describe("a document's text", () => {
  test('has each point on one line and every sentence as it was', () => {
    const layout = { ...sampleLayout(), notes: 'not a point: [\n  1,\n  2\n] nor [ 1,  2 ]' };
    const text = documentText(layout);
    expect(JSON.parse(text)).toEqual(layout);
    expect(text).toContain('\n      "kingpinTop": [-7, 631, 395],\n');
    expect(text).toContain('\n      "sectorAxis": [0, -1, 0],\n');
    expect(text.endsWith('}\n')).toBe(true);
    const rails = {
      path: [
        [1e-7, -0.5, 1e21],
        [0, 0, 0],
      ],
      none: [],
    };
    expect(JSON.parse(documentText(rails))).toEqual(rails);
    expect(documentText(rails)).toContain('\n    [1e-7, -0.5, 1e+21],\n');
  });
});
