import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { expectClose } from '../support/close.ts';
import { toeboard } from '../support/command-line.ts';
import { rawLayout, SIDE_STEER } from '../support/layouts.ts';

const folder = mkdtempSync(join(tmpdir(), 'toeboard-forces-'));
function file(name: string, content: unknown): string {
  const path = join(folder, name);
  writeFileSync(path, JSON.stringify(content));
  return path;
}

const LEAF_DEMONSTRATION = 'projects/parallel-leaf-cross-steer.json';
const answered = async (...args: string[]) => {
  const { code, out, err } = await toeboard('forces', ...args);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  return JSON.parse(out);
};

describe('forces', () => {
  test('answers for the leaf demonstration: three cases, five links and balls, each an assumed tube', async () => {
    const answer = await answered(LEAF_DEMONSTRATION);
    expect(answer).toMatchObject({ format: 'toeboard-forces', version: 1, heave: 0, roll: 0 });
    expect(answer.cases.map(({ id }: { id: string }) => id)).toEqual(['parking', 'box', 'braking']);
    for (const { figures, failure } of answer.cases) {
      expect(failure).toBeNull();
      expect(figures.map(({ id }: { id: string }) => id)).toEqual([
        'dragLink',
        'tieRod',
        'location.left.seat',
        'location.right.seat',
        'lateral.frame',
        'sector',
        'kingpin.left',
        'kingpin.right',
        'location.left.seat.wind-up',
        'location.right.seat.wind-up',
      ]);
    }
    expect(answer.links.map(({ id }: { id: string }) => id)).toEqual(['dragLink', 'tieRod', 'lateral.frame']);
    for (const { bears, cut, madeOf } of answer.links) {
      expect(bears.assumed).toBe(true);
      expect(cut.assumed).toBe(true);
      expect(madeOf.outside).toEqual({ value: 22, assumed: true });
    }
    expect(answer.leftOut.length).toBeGreaterThan(3);
    expect(answer.caution).toMatch(/no strength is certified/);
  });

  test('a link’s margin is what it bears by Euler’s formula over what the case asks, by hand', async () => {
    const box = { ...SIDE_STEER.box, greatestOutput: 800 };
    const links = { dragLink: { section: 'tube', wall: 4, material: 'drawn-steel', offset: 0 } };
    const { links: found, cases } = await answered(
      file('given.json', rawLayout({ steering: { ...SIDE_STEER, box }, diameters: { dragLink: 22 }, links })),
    );
    const [drag] = found;
    // 22 by 14 mm: I = π/64 (22⁴ - 14⁴) = 9613.3 mm⁴; π² 200000 I/L².
    const euler = (Math.PI ** 2 * 200_000 * 9613.28) / drag.length ** 2;
    expectClose(drag.bears.push, euler, 1);
    expect(drag.bears).toMatchObject({ pushBy: 'euler', assumed: false });
    const byBox = cases.find(({ id }: { id: string }) => id === 'box');
    expect(byBox.loads).toEqual({ light: 800, heavy: 800, unit: 'N·m', assumed: false });
    const reach = byBox.figures.find(({ id }: { id: string }) => id === 'dragLink').heavy;
    const most = Math.max(-reach.least.value / drag.bears.push, reach.most.value / drag.bears.pull);
    expectClose(drag.margins.box.heavy.times, 1 / most, 1e-9);
  });

  test('CSV has one line for each figure of each case', async () => {
    const { code, out } = await toeboard('forces', LEAF_DEMONSTRATION, '--csv');
    expect(code).toBe(0);
    const [head, ...lines] = out.trimEnd().split('\n');
    expect(head).toBe(
      'case,lightLoad,heavyLoad,figure,kind,light.least,light.leastHandwheel,light.most,light.mostHandwheel,heavy.least,heavy.leastHandwheel,heavy.most,heavy.mostHandwheel',
    );
    expect(lines).toHaveLength(30);
    const { cases } = await answered(LEAF_DEMONSTRATION);
    const first = lines[0]?.split(',') as string[];
    expect(first.slice(0, 5)).toEqual(['parking', '0.4', '0.9', 'dragLink', 'link']);
    expect(Number(first[9])).toBe(cases[0].figures[0].heavy.least.value);
  });

  test('what cannot be is refused by file and path', async () => {
    const path = file('heavy.json', rawLayout({ ride: { unsprungMass: 900 } }));
    const { code, err } = await toeboard('forces', path);
    expect(code).toBe(1);
    expect(err).toMatch(/ride\.unsprungMass/);
    expect((await toeboard('forces', LEAF_DEMONSTRATION, '--grip', '1')).code).toBe(2);
    expect(JSON.parse(readFileSync(path, 'utf8')).format).toBe('toeboard-layout');
  });
});
