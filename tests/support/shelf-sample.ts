import fc from 'fast-check';
import { type ShelfPart, type ShelfPartInput, shelfPartSchema } from '../../shared-math/shelf/index.ts';
import { DOUBLE_D_SIDE, SCREW_SIDE, SPLINE, SPLINE_SIDE, WELD_SIDE } from './shafts.ts';

/** An entry as it comes out of the schema. */
export function shelfPart(input: ShelfPartInput): ShelfPart {
  return shelfPartSchema.parse(input);
}

export const SAMPLE_BOX = shelfPart({
  kind: 'box',
  name: 'Cowl box',
  note: 'rebuilt; "as new"',
  price: 420.5,
  count: 2,
  mounting: 'side',
  assist: 'manual',
  ratio: 12,
  sectorTravel: 34,
  turns: 'counter-clockwise',
  input: SPLINE,
  size: [215, 130, 120],
});

export const SAMPLE_JOINT = shelfPart({
  kind: 'joint',
  name: '36 spline to double-D',
  count: 2,
  joint: 'single',
  limit: 30,
  ends: [SPLINE_SIDE, DOUBLE_D_SIDE],
});

/** mm on the grid that typed figures stand on. */
const length = fc.integer({ min: 1, max: 2_000_000_000 }).map((n) => n / 1e6);
const text = fc
  .string({ unit: 'grapheme', maxLength: 40 })
  .filter((entry) => entry.isWellFormed())
  .map((entry) => entry.trim());
const name = fc
  .tuple(fc.constantFrom('', '=', '+', '-', '@', "'", "'=", '"', ';', ',', '\n'), text)
  .map((both) => both.join('').trim().slice(0, 60).trim())
  .filter((entry) => entry !== '' && entry.isWellFormed());
const facts = {
  name,
  note: text,
  count: fc.nat(500),
  price: fc.option(
    fc.nat(10_000_000).map((n) => n / 100),
    { nil: undefined },
  ),
};
const maybe = <Value>(arbitrary: fc.Arbitrary<Value>) => fc.option(arbitrary, { nil: undefined });
const spline = fc.record({
  form: fc.constantFrom(
    'involute-30',
    'involute-37.5',
    'involute-45',
    'reference-30',
    'serrated',
    'unidentified',
  ),
  teeth: fc.integer({ min: 6, max: 200 }),
  pitch: maybe(fc.constantFrom(24, 32, 48, 64)),
  module: maybe(fc.constantFrom(0.5, 0.75, 1)),
  diameter: length,
});
const end = fc.constantFrom(DOUBLE_D_SIDE, SCREW_SIDE, WELD_SIDE, SPLINE_SIDE, {
  kind: 'spline',
  ...SPLINE,
} as const);
const degrees = fc.integer({ min: 1, max: 600 }).map((n) => n / 10);

/** Any entry that a shelf may have. */
export const anyShelfPart: fc.Arbitrary<ShelfPart> = fc
  .oneof(
    fc.record({
      kind: fc.constant('box'),
      ...facts,
      mounting: fc.constantFrom('side', 'cross'),
      assist: fc.constantFrom('manual', 'power'),
      ratio: degrees,
      sectorTravel: degrees,
      turns: fc.constantFrom('clockwise', 'counter-clockwise'),
      input: maybe(spline),
      sector: maybe(spline),
      size: maybe(fc.tuple(length, length, length)),
    }),
    fc.record({
      kind: fc.constant('joint'),
      ...facts,
      joint: fc.constantFrom('single', 'double'),
      limit: maybe(degrees),
      ends: fc.tuple(end, end),
    }),
    fc.record({
      kind: fc.constant('stock'),
      ...facts,
      length,
      stock: fc.constantFrom(
        { kind: 'round', diameter: 19.05, material: 'steel' },
        { kind: 'double-d', diameter: 19.05, acrossFlats: 14.2, slip: { travel: 25.4, overlap: 63.5 } },
        { kind: 'double-d-end', diameter: 19.05, acrossFlats: 14.2, ends: 'both', formed: 50 },
        { kind: 'splined', ...SPLINE, ends: 'column', formed: 40, material: 'stainless' },
      ),
    }),
    fc.record({ kind: fc.constant('support'), ...facts, bore: length }),
    fc.record({
      kind: fc.constant('rod-end'),
      ...facts,
      thread: fc.record({ diameter: length, pitch: fc.constantFrom(1, 1.25, 1.5, 2, 1.411111111, 1.5875) }),
      hand: fc.constantFrom('right', 'left'),
      size: length,
      ballAngle: degrees,
    }),
    fc.record({
      kind: fc.constant('arm'),
      ...facts,
      arm: fc.constantFrom('pitman', 'steering'),
      length,
      hole: maybe(
        fc.oneof(
          spline.map((entry) => ({ kind: 'spline', ...entry })),
          fc.record({ kind: fc.constant('bore'), diameter: length }),
        ),
      ),
      ballHole: maybe(fc.record({ diameter: length, taper: maybe(fc.constantFrom(6, 8)) })),
    }),
  )
  // As it would be read from JSON: what is left out is not there at all.
  .map((part) => shelfPart(JSON.parse(JSON.stringify(part)) as ShelfPartInput));
