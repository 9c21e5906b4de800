import { Helper } from 'dxf';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type DrawnLine, type ReadDrawing, readDrawing } from '../../../shared-math/underlay/index.ts';
import { AT_RIDE, drawFile } from '../../../src-main/output/drawings/index.ts';
import { FRAME_DXF, line, plainDxf } from '../../support/drawing-files.ts';
import { sampleLayout } from '../../support/host-sample.ts';

function taken(text: string): ReadDrawing {
  const read = readDrawing(text);
  if (!read.ok) throw new Error(read.failure);
  return read.value;
}

const reason = (text: string): string => {
  const read = readDrawing(text);
  return read.ok ? 'taken' : read.failure;
};

const layer = (drawing: ReadDrawing, name: string) => {
  const found = drawing.layers.find((each) => each.name === name);
  if (!found) throw new Error(`there is no layer ${name}`);
  return found;
};

/** Length of all lines. */
const lengthOf = (lines: readonly DrawnLine[]): number =>
  lines.reduce((sum, { points, closed }) => {
    const count = points.length / 2;
    for (let i = 0; i < (closed ? count : count - 1); i += 1) {
      const j = (i + 1) % count;
      sum += Math.hypot(
        (points[2 * j] as number) - (points[2 * i] as number),
        (points[2 * j + 1] as number) - (points[2 * i + 1] as number),
      );
    }
    return sum;
  }, 0);

describe('a DXF', () => {
  test('gives its lines by layer, its unit, and what was left out', () => {
    const drawing = taken(FRAME_DXF);
    expect(drawing.unit).toBe(25.4);
    expect(drawing.layers.map(({ name }) => name)).toEqual(['rail', 'holes', 'marks']);
    expect(layer(drawing, 'rail').lines).toEqual([
      { points: [-12, 18, 20, 18, 40, 20, 70, 20], closed: false },
    ]);
    expect(layer(drawing, 'holes').centres).toEqual([34, 14]);
    expect(lengthOf(layer(drawing, 'holes').lines)).toBeCloseTo(3 * Math.PI, 1);
    expect(layer(drawing, 'marks').ends).toEqual([30, 10, 38, 18, 30, 18, 38, 10]);
    expect(drawing.left).toEqual([['texts', 1]]);
  });

  test.each([
    // DXF reference, $INSUNITS.
    [1, 25.4],
    [2, 304.8],
    [4, 1],
    [5, 10],
    [6, 1000],
    [0, undefined],
  ])('of unit %i is one unit %s mm', (code, mm) => {
    expect(
      taken(
        plainDxf(line('0', 0, 0, 1, 1), {
          header: [
            [9, '$INSUNITS'],
            [70, code],
          ],
        }),
      ).unit,
    ).toBe(mm);
  });

  test('without a header says nothing of its unit', () => {
    expect(taken(plainDxf(line('0', 0, 0, 1, 1))).unit).toBeUndefined();
  });

  test('turns off what it has turned off or frozen', () => {
    const tables = [
      [0, 'TABLE'],
      [2, 'LAYER'],
      [0, 'LAYER'],
      [2, 'hidden'],
      [70, 0],
      [62, -7],
      [0, 'LAYER'],
      [2, 'cold'],
      [70, 1],
      [62, 7],
      [0, 'ENDTAB'],
    ] as const;
    const drawing = taken(
      plainDxf([...line('hidden', 0, 0, 1, 0), ...line('cold', 0, 0, 1, 0), ...line('seen', 0, 0, 1, 0)], {
        tables,
      }),
    );
    expect(drawing.layers.map(({ name, shown }) => [name, shown])).toEqual([
      ['hidden', false],
      ['cold', false],
      ['seen', true],
    ]);
  });

  // By hand: a bulge of 1 is half a circle, tan(90°/4) a quarter (DXF reference, LWPOLYLINE group 42).
  test('bends a polyline by its bulges: to the right of the way, where they are positive', () => {
    const polyline = (bulge: number) =>
      taken(
        plainDxf([
          [0, 'LWPOLYLINE'],
          [8, '0'],
          [90, 2],
          [70, 0],
          [10, 0],
          [20, 0],
          [42, bulge],
          [10, 10],
          [20, 0],
        ]),
      ).layers[0];
    const half = polyline(1);
    expect(half?.centres.map((value) => Math.round(value * 1e9) / 1e9 + 0)).toEqual([5, 0]);
    expect(lengthOf(half?.lines ?? [])).toBeCloseTo(5 * Math.PI, 1);
    const ys = half?.lines[0]?.points.filter((_, i) => i % 2 === 1) ?? [];
    // Counter-clockwise from (0, 0) to (10, 0) goes below.
    expect(Math.min(...ys)).toBeCloseTo(-5, 1);
    expect(Math.max(...ys)).toBeLessThan(1e-9);
    const quarter = polyline(-Math.tan(Math.PI / 8));
    expect(lengthOf(quarter?.lines ?? [])).toBeCloseTo((10 / Math.SQRT2) * (Math.PI / 2), 1);
    expect(Math.max(...(quarter?.lines[0]?.points.filter((_, i) => i % 2 === 1) ?? []))).toBeGreaterThan(1);
  });

  test('puts blocks in where they belong: moved, turned, larger, mirrored, in rows, one within another', () => {
    const blocks = [
      [0, 'BLOCK'],
      [2, 'tab'],
      [10, 1],
      [20, 0],
      ...line('0', 1, 0, 2, 0),
      [0, 'ENDBLK'],
      [0, 'BLOCK'],
      [2, 'pair'],
      [10, 0],
      [20, 0],
      [0, 'INSERT'],
      [8, '0'],
      [2, 'tab'],
      [10, 0],
      [20, 5],
      [0, 'ENDBLK'],
    ] as const;
    const placed = (...facts: readonly (readonly [number, string | number])[]) =>
      taken(plainDxf([[0, 'INSERT'], [8, 'brackets'], ...facts], { blocks })).layers;
    const points = (layers: ReadDrawing['layers']) =>
      layers[0]?.lines.map(({ points: each }) => each.map((value) => Math.round(value * 1e6) / 1e6 + 0));
    const tab = placed([2, 'tab'], [10, 100], [20, 50], [41, 2], [42, 2], [50, 90]);
    expect(tab[0]?.name).toBe('brackets');
    // From its base (1, 0): a unit to the right, twice as long, turned upward, at (100, 50).
    expect(points(tab)).toEqual([[100, 50, 100, 52]]);
    expect(points(placed([2, 'tab'], [10, 0], [20, 0], [41, -1]))).toEqual([[0, 0, -1, 0]]);
    expect(points(placed([2, 'pair'], [10, 10], [20, 0]))).toEqual([[10, 5, 11, 5]]);
    expect(points(placed([2, 'tab'], [10, 0], [20, 0], [70, 2], [71, 2], [44, 10], [45, 20]))).toEqual([
      [0, 0, 1, 0],
      [10, 0, 11, 0],
      [0, 20, 1, 20],
      [10, 20, 11, 20],
    ]);
    expect(
      reason(
        plainDxf([
          [0, 'INSERT'],
          [8, '0'],
          [2, 'nowhere'],
          [10, 0],
          [20, 0],
        ]),
      ),
    ).toContain('no lines');
  });

  test('of what the program itself writes: places and lengths as another reader has them', async () => {
    const bytes = await drawFile({
      view: 'views',
      format: 'dxf',
      document: sampleLayout(),
      unit: 'mm',
      fraction: 16,
      pose: AT_RIDE,
    });
    const text = Buffer.from(bytes).toString('utf8');
    const own = taken(text);
    const { polylines } = new Helper(text).toPolylines() as unknown as {
      polylines: { layer?: { name: string }; vertices: [number, number][] }[];
    };
    const length = (vertices: readonly (readonly [number, number])[]) =>
      vertices.slice(1).reduce((sum, [x, y], i) => {
        const [px, py] = vertices[i] as readonly [number, number];
        return sum + Math.hypot(x - px, y - py);
      }, 0);
    const theirs = polylines.reduce((sum, { vertices }) => sum + length(vertices), 0);
    const ours = own.layers.reduce((sum, { lines }) => sum + lengthOf(lines), 0);
    expect(ours).toBeGreaterThan(10_000);
    // Arcs by chords of 5° on either side: within a thousandth.
    expect(Math.abs(ours / theirs - 1)).toBeLessThan(2e-3);
    expect(own.unit).toBe(1);
    expect(own.left.some(([what]) => what === 'dimensions')).toBe(true);
  });

  test('a spline goes where its curve goes', () => {
    // Four control points over the knots 0 0 0 0 1 1 1 1 are a cubic Bézier curve: at the middle (P0 + 3 P1 + 3 P2 + P3) / 8.
    const spline = plainDxf([
      [0, 'SPLINE'],
      [8, '0'],
      [71, 3],
      ...[0, 0, 0, 0, 1, 1, 1, 1].map((knot) => [40, knot] as const),
      ...[
        [0, 0],
        [0, 8],
        [8, 8],
        [8, 0],
      ].flatMap(([x, y]) => [[10, x as number] as const, [20, y as number] as const]),
    ]);
    const points = taken(spline).layers[0]?.lines[0]?.points ?? [];
    expect(points.slice(0, 2)).toEqual([0, 0]);
    expect(points.slice(-2)).toEqual([8, 0]);
    const middle = points.slice(points.length / 2 - 1, points.length / 2 + 1);
    expect(middle[0]).toBeCloseTo(4, 9);
    expect(middle[1]).toBeCloseTo(6, 9);
  });
});

describe('an SVG', () => {
  const svg = (inside: string, facts = 'width="100mm" height="50mm" viewBox="0 0 200 100"') =>
    `<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg" ${facts}>${inside}</svg>`;

  test('has its y turned upward, its unit by its width, its layers by its outer groups', () => {
    const drawing = taken(
      svg(
        '<g id="rail"><line x1="0" y1="10" x2="30" y2="10"/></g><g id="holes"><circle cx="5" cy="6" r="2"/></g>' +
          '<rect x="1" y="2" width="3" height="4"/>',
      ),
    );
    expect(drawing.unit).toBe(0.5);
    expect(layer(drawing, 'rail').lines[0]?.points).toEqual([0, -10, 30, -10]);
    expect(layer(drawing, 'holes').centres).toEqual([5, -6]);
    expect(layer(drawing, 'drawing').lines[0]).toEqual({
      points: [1, -2, 4, -2, 4, -6, 1, -6],
      closed: true,
    });
  });

  test.each([
    ['width="800" height="400"', undefined],
    ['width="10in" viewBox="0 0 100 50"', 2.54],
    ['viewBox="0 0 100 50"', undefined],
  ])('of %s: mm of a unit are %s', (facts, mm) => {
    expect(taken(svg('<line x1="0" y1="0" x2="1" y2="1"/>', facts)).unit).toBe(mm);
  });

  test('transforms are applied from the inside out', () => {
    // SVG 1.1, 7.5: the rightmost of a list first. (1, 0) turned by 90° is (0, 1), moved (10, 1); y is turned upward.
    const drawing = taken(
      svg('<g transform="translate(10 0) rotate(90)"><line x1="0" y1="0" x2="1" y2="0"/></g>'),
    );
    const points = drawing.layers[0]?.lines[0]?.points.map((value) => Math.round(value * 1e9) / 1e9 + 0);
    expect(points).toEqual([10, 0, 10, -1]);
  });

  test('paths: straight lines, arcs, curves, relative and not', () => {
    const path = (d: string) => taken(svg(`<path d="${d}"/>`)).layers[0];
    expect(path('M1 2h3v4l-1-1z')?.lines).toEqual([{ points: [1, -2, 4, -2, 4, -6, 3, -5], closed: true }]);
    const half = path('M0 0A5 5 0 0 1 10 0');
    expect(half?.centres.map((value) => Math.round(value * 1e6) / 1e6 + 0)).toEqual([5, 0]);
    expect(lengthOf(half?.lines ?? [])).toBeCloseTo(5 * Math.PI, 1);
    // A sweep of 1 goes clockwise as seen with y down: over the top, which is up here.
    expect(Math.max(...(half?.lines[0]?.points.filter((_, i) => i % 2 === 1) ?? []))).toBeCloseTo(5, 1);
    const curve = path('M0 0C0 8 8 8 8 0');
    expect(curve?.lines[0]?.points.slice(16, 18)).toEqual([4, -6]);
  });

  test('scripts, pages within, pictures and copies are named and nothing of them is taken', () => {
    const drawing = taken(
      svg(
        '<script>fetch("https://example.invalid")</script><style>@import url(https://example.invalid)</style>' +
          '<image href="https://example.invalid/x.png" width="9" height="9"/><use href="#a"/>' +
          '<foreignObject><p onclick="x()">a</p><line x1="0" y1="0" x2="9" y2="9"/></foreignObject>' +
          '<g onload="x()" style="display:none"><line x1="0" y1="0" x2="7" y2="7"/></g>' +
          '<line onclick="x()" x1="0" y1="0" x2="1" y2="1"/>',
      ),
    );
    expect(drawing.layers).toHaveLength(1);
    expect(drawing.layers[0]?.lines).toEqual([{ points: [0, 0, 1, -1], closed: false }]);
    expect(JSON.stringify(drawing)).not.toMatch(/example|onclick|fetch/);
    expect(drawing.left.map(([what]) => what).sort()).toEqual([
      'copies of parts',
      'pictures',
      'pieces of web pages',
      'scripts',
    ]);
  });
});

describe('what is no drawing, or too much of one, is refused in one line', () => {
  const nested = (depth: number) =>
    plainDxf(
      [
        [0, 'INSERT'],
        [8, '0'],
        [2, 'b0'],
        [10, 0],
        [20, 0],
      ],
      {
        blocks: Array.from(
          { length: depth },
          (_, i) =>
            [
              [0, 'BLOCK'],
              [2, `b${i}`],
              [0, 'INSERT'],
              [8, '0'],
              [2, `b${i + 1}`],
              [10, 0],
              [20, 0],
              [0, 'ENDBLK'],
            ] as const,
        ).flat(),
      },
    );
  /** Ten blocks, each of which holds ten of the next: ten thousand million lines. */
  const bomb = plainDxf(
    [
      [0, 'INSERT'],
      [8, '0'],
      [2, 'b0'],
      [10, 0],
      [20, 0],
    ],
    {
      blocks: Array.from({ length: 10 }, (_, i) => [
        [0, 'BLOCK'] as const,
        [2, `b${i}`] as const,
        ...Array.from({ length: 10 }, () => [
          [0, 'INSERT'] as const,
          [8, '0'] as const,
          [2, i === 9 ? 'none' : `b${i + 1}`] as const,
          [10, 0] as const,
          [20, 0] as const,
        ]).flat(),
        ...line('0', 0, 0, 1, 1),
        [0, 'ENDBLK'] as const,
      ]).flat(),
    },
  );

  test.each<[string, string, string | RegExp]>([
    ['nothing', '', 'it is neither a DXF nor an SVG; bring one of these'],
    ['a page of the web', '<!doctype html><p>a</p>', 'it is neither a DXF nor an SVG; bring one of these'],
    ['a JSON', '{"format":"toeboard-layout"}', 'it is neither a DXF nor an SVG; bring one of these'],
    ['a binary DXF', 'SomeCAD Binary DXF\r\n\u001a\u0000', /^it is a binary DXF; save it as a DXF in text/],
    [
      'a DXF without lines',
      plainDxf([
        [0, 'TEXT'],
        [8, '0'],
        [1, 'a'],
      ]),
      /no lines that can be laid/,
    ],
    ['a DXF that goes wrong', '0\nSECTION\n2\nENTITIES\nhello\nthere\n', /no whole DXF/],
    ['blocks that hold one another', nested(40), /more than 12 deep/],
    [
      'a block that holds itself',
      plainDxf(
        [
          [0, 'INSERT'],
          [8, '0'],
          [2, 'a'],
          [10, 0],
          [20, 0],
        ],
        {
          blocks: [
            [0, 'BLOCK'],
            [2, 'a'],
            [0, 'INSERT'],
            [8, '0'],
            [2, 'a'],
            [10, 0],
            [20, 0],
            [0, 'ENDBLK'],
          ],
        },
      ),
      /more than 12 deep/,
    ],
    ['blocks that multiply', bomb, /puts in more than 20000 blocks/],
    [
      'too many layers',
      plainDxf(Array.from({ length: 300 }, (_, i) => line(`l${i}`, 0, 0, 1, 1)).flat()),
      /more than 200 layers/,
    ],
    [
      'too many places',
      plainDxf(Array.from({ length: 110_000 }, () => line('0', 0, 0, 1, 1)).flat()),
      /more than 200000 places/,
    ],
    [
      'entities that multiply',
      '<!DOCTYPE svg [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><svg><text>&b;</text></svg>',
      /declares entities/,
    ],
    ['an SVG without lines', '<svg><text>a</text></svg>', /no lines that can be laid/],
    ['deep groups', `<svg>${'<g>'.repeat(100_000)}<line x1="0" y1="0" x2="1" y2="1"/></svg>`, /too deep/],
    ['too long', `0\nSECTION\n${' '.repeat(16_000_001)}`, /longer than 16 million characters/],
  ])('%s', (_, text, said) => {
    const found = reason(text);
    expect(found).not.toBe('taken');
    if (typeof said === 'string') expect(found).toBe(said);
    else expect(found).toMatch(said);
    expect(found).not.toMatch(/[\r\n]/);
  });

  // As long as any other text of their length: each sign is looked at once. 3 s is many times what they take.
  test.each<[string, string]>([
    ['tags that are never closed', `<svg>${'<a '.repeat(2_000_000)}`],
    ['quotes that are never closed', `<svg><line x1="${'"<'.repeat(2_000_000)}`],
    ['names without an end', `<svg><line ${'a'.repeat(4_000_000)}/></svg>`],
    ['transforms without an end', `<svg><line transform="${'a'.repeat(4_000_000)}" x1="0"/></svg>`],
    ['comments without an end', `<svg>${'<!--'.repeat(1_000_000)}`],
    ['empty lines', `0\nSECTION\n${'\n'.repeat(8_000_000)}`],
  ])('hostile: %s, quickly', (_, text) => {
    const begun = performance.now();
    expect(reason(text)).not.toBe('taken');
    expect(performance.now() - begun).toBeLessThan(3000);
  });

  test('whatever is damaged in a drawing, it is taken or refused, and no number in it is none', () => {
    fc.assert(
      fc.property(fc.nat(FRAME_DXF.length - 1), fc.string({ maxLength: 6 }), fc.nat(8), (at, put, off) => {
        const read = readDrawing(FRAME_DXF.slice(0, at) + put + FRAME_DXF.slice(at + off));
        if (!read.ok) return;
        for (const { lines, ends, centres } of read.value.layers)
          for (const value of [...lines.flatMap(({ points }) => points), ...ends, ...centres])
            expect(Number.isFinite(value)).toBe(true);
      }),
      { numRuns: 400, seed: 17 },
    );
  });
});
