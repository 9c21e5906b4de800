import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { programFolder, projectsFolder, readDemonstrations } from '../../../src-main/files/index.ts';
import { testFolder } from '../../support/host-folder.ts';
import { ROOT } from '../../support/host-process.ts';
import { impossibleLayout, sampleLayout } from '../../support/host-sample.ts';

const SHOP = {
  format: 'toeboard-shop',
  version: 1,
  name: 'An invented shop',
  customers: [
    {
      name: 'Odd Fellow',
      notes: '',
      cars: [{ name: 'Roadster', notes: '', layouts: [{ file: 'arm-down.json', about: 'The arm hangs.' }] }],
    },
  ],
};

function shopFolder(shop: unknown, layout: unknown = sampleLayout()): string {
  const folder = join(testFolder(), 'projects');
  mkdirSync(folder);
  writeFileSync(join(folder, 'shop.json'), typeof shop === 'string' ? shop : JSON.stringify(shop));
  writeFileSync(join(folder, 'arm-down.json'), JSON.stringify(layout));
  writeFileSync(join(folder, '..', 'outside.json'), JSON.stringify(sampleLayout()));
  return folder;
}

function withFile(file: string) {
  const text = JSON.stringify(SHOP);
  return text.replace('arm-down.json', file);
}

describe('the demonstrations', () => {
  test('are read with their layouts', () => {
    const read = readDemonstrations(shopFolder(SHOP));
    expect(read.ok && read.value.customers[0]?.cars[0]?.layouts).toEqual([
      { file: 'arm-down.json', about: 'The arm hangs.', document: sampleLayout() },
    ]);
  });

  test.each([
    ['torn {', sampleLayout(), /^shop\.json: not JSON: /],
    [{ ...SHOP, version: 2 }, sampleLayout(), /^shop\.json: version: expected 1, found 2$/],
    [{ ...SHOP, extra: 1 }, sampleLayout(), /^shop\.json: unknown key "extra"$/],
    [
      withFile('../outside.json'),
      sampleLayout(),
      /^shop\.json: customers\[0\]\.cars\[0\]\.layouts\[0\]\.file: /,
    ],
    [withFile('gone.json'), sampleLayout(), /^gone\.json: cannot be read$/],
    [SHOP, impossibleLayout(), /^arm-down\.json: steering\.dragLinkBall: on the same spot/],
  ])('are refused with file and place: %#', (shop, layout, reason) => {
    const read = readDemonstrations(shopFolder(shop, layout));
    expect(read.ok ? '' : read.failure).toMatch(reason);
    expect(read.ok ? '' : read.failure).not.toContain('\n');
  });

  test('that are not there are said so', () => {
    expect(readDemonstrations(testFolder())).toEqual({
      ok: false,
      failure: 'the demonstrations are not there: projects/shop.json cannot be read',
    });
  });

  test('that ship with the program are all in order', () => {
    const read = readDemonstrations(projectsFolder());
    if (!read.ok) throw new Error(read.failure);
    const layouts = read.value.customers.flatMap(({ cars }) => cars.flatMap((car) => car.layouts));
    expect(layouts.length).toBeGreaterThanOrEqual(5);
  });
});

test("the program's folder is found from source and from where it is built to", () => {
  expect(programFolder()).toBe(ROOT);
  expect(programFolder(join(ROOT, 'out', 'main', 'chunks'))).toBe(ROOT);
  expect(() => programFolder('/')).toThrow('no package.json above /');
});
