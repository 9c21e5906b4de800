import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type Layout, parseLayout, refusalLine, resolveLayout } from '../../shared-math/layout/index.ts';
import {
  COLUMNS,
  fitsNeed,
  needsOf,
  partFromCells,
  partsAgainstShelf,
  partWords,
  type ShelfPart,
  type Shelved,
  shelfPartSchema,
} from '../../shared-math/shelf/index.ts';
import { readShelfCsv } from '../../src-main/files/index.ts';
import { ROOT } from '../support/host-process.ts';
import { DOUBLE_D_SIDE, SPLINE_SIDE, WELD_SIDE } from '../support/shafts.ts';
import { SAMPLE_BOX, SAMPLE_JOINT, shelfPart } from '../support/shelf-sample.ts';

const INCHES = { unit: 'in', fraction: 16 } as const;
const MM = { unit: 'mm', fraction: 16 } as const;

function demonstration(file: string): Layout {
  const layout = parseLayout(readFileSync(join(ROOT, 'projects', file), 'utf8'));
  if (!layout.ok) throw new Error(refusalLine(layout.failure));
  return resolveLayout(layout.value);
}

function demonstrationShelf(): Shelved[] {
  const parts = readShelfCsv(readFileSync(join(ROOT, 'projects/shelf.csv'), 'utf8'));
  if (!parts.ok) throw new Error(parts.failure);
  return shelved(parts.value);
}

const shelved = (parts: readonly ShelfPart[]): Shelved[] => parts.map((part, i) => ({ id: String(i), part }));

const round = (name: string, length: number, count: number) =>
  shelfPart({ kind: 'stock', name, count, length, stock: { kind: 'round', diameter: 19.05 } });
const pieces = (...lengths: number[]) =>
  lengths.map((length) => ({
    wanted: { kind: 'stock', stock: { kind: 'round', diameter: 19.05 }, length } as const,
    count: 1,
    words: `round ${length} long`,
  }));

describe('what a car needs', () => {
  test('counts box, arms, links and their ends, and all of the shaft', () => {
    const count = (file: string, kind: string) =>
      needsOf(demonstration(file), INCHES)
        .filter(({ wanted }) => wanted.kind === kind)
        .reduce((sum, need) => sum + need.count, 0);
    const table = globSync('*-steer.json', { cwd: join(ROOT, 'projects') })
      .sort()
      .map((file) => [
        file,
        ...['box', 'arm', 'tube', 'rod-end', 'joint', 'stock', 'support'].map((kind) => count(file, kind)),
      ]);
    // Counted by hand on the drawings: drag link, tie rod and lateral bar have two ends each; hairpins two balls, a
    // wishbone one, four bars eight, leaves none. Tubes are those that run between two points: four bars are four of them.
    expect(table).toEqual([
      ['four-bar-cross-steer.json', 1, 4, 7, 14, 3, 3, 1],
      ['hairpins-side-steer.json', 1, 4, 2, 6, 2, 1, 0],
      ['parallel-leaf-cross-steer.json', 1, 4, 3, 6, 2, 1, 1],
      ['wishbone-side-steer.json', 1, 4, 3, 7, 2, 1, 0],
    ]);
  });

  test('gives lengths between ball centres and from the arms’ axes', () => {
    const layout = demonstration('hairpins-side-steer.json');
    const lines = needsOf(layout, MM).map(({ words }) => words);
    const { pitmanBall, sectorCentre } = layout.steering.box;
    // The sector axis of this car lies across it, so the arm is seen whole from the side.
    const arm = Math.hypot(pitmanBall[0] - sectorCentre[0], pitmanBall[2] - sectorCentre[2]);
    expect(lines).toContain(`Pitman arm, ${arm.toFixed(1)} mm to the ball`);
    const [left, right] = [layout.axle.left.tieRodBall, layout.axle.right.tieRodBall];
    expect(lines.join('\n')).toContain(
      `Tie rod, ${Math.hypot(left[0] - right[0], left[1] - right[1], left[2] - right[2]).toFixed(1)} mm between`,
    );
  });

  test('asks of a ball what the tilts ask, where they are known', () => {
    const layout = demonstration('hairpins-side-steer.json');
    const needs = needsOf(layout, MM, (id) => (id === 'steering.box.pitmanBall' ? 18 : 12));
    const ends = needs.filter(({ words }) => words.startsWith('Drag link end'));
    expect(ends.map(({ wanted }) => 'ballAngle' in wanted && wanted.ballAngle)).toEqual([18, 18]);
    expect(ends[0]?.words).toContain('ball tilts up to 18°');
  });
});

describe('which parts fit', () => {
  test('a joint either way round, by kind, form and size', () => {
    const wanted = { kind: 'joint', joint: 'single', ends: [DOUBLE_D_SIDE, SPLINE_SIDE] } as const;
    expect(fitsNeed(wanted, SAMPLE_JOINT)).toBe(true);
    expect(fitsNeed({ ...wanted, ends: [SPLINE_SIDE, undefined] }, SAMPLE_JOINT)).toBe(true);
    expect(fitsNeed({ ...wanted, joint: 'double' }, SAMPLE_JOINT)).toBe(false);
    expect(fitsNeed({ ...wanted, ends: [DOUBLE_D_SIDE, DOUBLE_D_SIDE] }, SAMPLE_JOINT)).toBe(false);
    expect(fitsNeed({ ...wanted, ends: [WELD_SIDE, SPLINE_SIDE] }, SAMPLE_JOINT)).toBe(false);
    for (const [change, fits] of [
      [{ teeth: 35 }, false],
      [{ pitch: 32 }, false],
      [{ form: 'unidentified' }, true],
      [{ diameter: SPLINE_SIDE.diameter + 0.2 }, true],
      [{ diameter: SPLINE_SIDE.diameter + 0.3 }, false],
    ] as const)
      expect(
        fitsNeed({ ...wanted, ends: [DOUBLE_D_SIDE, { ...SPLINE_SIDE, ...change }] }, SAMPLE_JOINT),
        JSON.stringify(change),
      ).toBe(fits);
  });

  test('a box by what it is for, its ratio, and at least the sector travel', () => {
    const wanted = {
      kind: 'box',
      mounting: 'side',
      assist: 'manual',
      ratio: 12,
      sectorTravel: 34,
      input: undefined,
    } as const;
    expect(fitsNeed(wanted, SAMPLE_BOX)).toBe(true);
    expect(fitsNeed({ ...wanted, mounting: 'cross' }, SAMPLE_BOX)).toBe(false);
    expect(fitsNeed({ ...wanted, assist: 'power' }, SAMPLE_BOX)).toBe(false);
    expect(fitsNeed({ ...wanted, ratio: 16 }, SAMPLE_BOX)).toBe(false);
    expect(fitsNeed({ ...wanted, sectorTravel: 30 }, SAMPLE_BOX)).toBe(true);
    expect(fitsNeed({ ...wanted, sectorTravel: 38 }, SAMPLE_BOX)).toBe(false);
  });

  test('a rod end by hand, a thread that leaves the tube a wall, and the tilt it allows', () => {
    const end = shelfPart({
      kind: 'rod-end',
      name: 'x',
      thread: { diameter: 15.875, pitch: 1.411 },
      hand: 'right',
      size: 15.875,
      ballAngle: 16,
    });
    const wanted = { kind: 'rod-end', hand: 'right', tube: 22, ballAngle: 12 } as const;
    expect(fitsNeed(wanted, end)).toBe(true);
    expect(fitsNeed({ ...wanted, hand: undefined }, end)).toBe(true);
    expect(fitsNeed({ ...wanted, hand: 'left' }, end)).toBe(false);
    expect(fitsNeed({ ...wanted, tube: 19 }, end)).toBe(false);
    expect(fitsNeed({ ...wanted, ballAngle: 20 }, end)).toBe(false);
  });

  test('stock formed at both ends is not cut shorter than its forms have to spare', () => {
    const stock = {
      kind: 'double-d-end',
      diameter: 19.05,
      acrossFlats: 14.2,
      ends: 'both',
      formed: 60,
    } as const;
    const part = shelfPart({ kind: 'stock', name: 'x', stock, length: 400 });
    const wanted = (length: number) => ({ kind: 'stock', stock: { ...stock, formed: 50 }, length }) as const;
    expect(fitsNeed(wanted(385), part)).toBe(true);
    expect(fitsNeed(wanted(370), part)).toBe(false);
    expect(fitsNeed(wanted(401), part)).toBe(false);
  });
});

describe('a car held against the shelf', () => {
  test('promises no part twice, and tells what to order by its dimensions', () => {
    const [need] = needsOf(demonstration('wishbone-side-steer.json'), INCHES).filter(
      ({ wanted }) => wanted.kind === 'joint',
    );
    expect(need?.count).toBe(2);
    const one = shelved([{ ...SAMPLE_JOINT, count: 1 }]);
    const needs = need ? [need] : [];
    expect(partsAgainstShelf(needs, one)[0]?.line).toBe(
      `on the shelf: 36 spline to double-D; order 1, by dimension: ${need?.words}`,
    );
    expect(partsAgainstShelf(needs, [])[0]?.line).toBe(`order 2, by dimension: ${need?.words}`);
    expect(partsAgainstShelf(needs, shelved([SAMPLE_JOINT]))[0]?.line).toBe(
      'on the shelf: 2 × 36 spline to double-D',
    );
    // The same two again: nothing is left for them.
    const twice = partsAgainstShelf(
      [...needs, { ...needs[0], words: 'again' } as never],
      shelved([SAMPLE_JOINT]),
    );
    expect(twice.map(({ toOrder }) => toOrder)).toEqual([0, 2]);
  });

  test('cuts stock from the shortest piece that is long enough, the saw’s cut counted', () => {
    const orders = (shelf: ShelfPart[], ...lengths: number[]) =>
      partsAgainstShelf(pieces(...lengths), shelved(shelf)).map(
        ({ drawn, toOrder }) => drawn[0]?.name ?? `order ${toOrder}`,
      );
    expect(orders([round('long', 900, 1), round('short', 400, 1)], 390)).toEqual(['short']);
    // 300 + 3 + 597 fill 900 to the millimetre; one more millimetre does not go.
    expect(orders([round('long', 900, 1)], 300, 597)).toEqual(['long', 'long']);
    expect(orders([round('long', 900, 1)], 300, 598)).toEqual(['order 1', 'long']);
    expect(orders([round('none', 900, 0)], 300)).toEqual(['order 1']);
  });

  test('every demonstration finds its box on the demonstration’s shelf, or is told what to order', () => {
    const shelf = demonstrationShelf();
    for (const [file, box] of [
      ['hairpins-side-steer.json', 'Cowl box, manual'],
      ['four-bar-cross-steer.json', 'Cross box, assisted'],
      ['wishbone-side-steer.json', undefined],
    ] as const) {
      const against = partsAgainstShelf(needsOf(demonstration(file), INCHES), shelf);
      expect(against[0]?.drawn[0]?.name, file).toBe(box);
      for (const { need, drawn, toOrder } of against)
        expect(drawn.reduce((sum, { count }) => sum + count, 0) + toOrder, need.words).toBe(need.count);
    }
  });
});

describe('the table of figures', () => {
  test('names every figure of every kind once, and no two alike', () => {
    expect(new Set(COLUMNS.map(({ title }) => title)).size).toBe(COLUMNS.length);
    for (const { title } of COLUMNS) expect(title).not.toMatch(/[,;()]/);
  });

  test('every entry says what it is in both units, and no figure stands without one', () => {
    for (const { part } of demonstrationShelf())
      for (const style of [INCHES, MM]) {
        const words = partWords(part, style);
        expect(words).not.toMatch(/undefined|NaN|\[object/);
        expect(words).toContain(style.unit === 'in' ? ' in' : ' mm');
      }
  });

  test('the schema refuses what no shelf has', () => {
    expect(shelfPartSchema.safeParse({ ...SAMPLE_BOX, count: -1 }).success).toBe(false);
    expect(shelfPartSchema.safeParse({ ...SAMPLE_BOX, name: ' ' }).success).toBe(false);
    expect(shelfPartSchema.safeParse({ ...SAMPLE_BOX, ratio: Number.NaN }).success).toBe(false);
    expect(shelfPartSchema.safeParse({ ...SAMPLE_BOX, colour: 'red' }).success).toBe(false);
    expect(partFromCells('support', [])).toEqual({
      ok: false,
      failure: { column: 'name', reason: 'is missing' },
    });
  });
});
