import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { project, VIEWS } from '../../../../shared-math/drawing/index.ts';
import type { Point } from '../../../../shared-math/geometry/points.ts';
import { hardpoints } from '../../../../shared-math/layout/index.ts';
import {
  AT_RIDE,
  DRAWN_VIEWS,
  type DrawingJob,
  DrawingRefused,
  drawFile,
  drawSvg,
  formatTrouble,
  SvgPen,
} from '../../../../src-main/output/drawings/index.ts';
import { PdfPen } from '../../../../src-main/output/pens/print-pen.ts';
import { BODY, FIGURE, TITLE } from '../../../../src-main/output/pens/styles.ts';
import { DEMONSTRATIONS } from '../../../support/demonstration-files.ts';
import { sampleLayout } from '../../../support/host-sample.ts';
import { difference, pixelsOf } from '../../../support/pictures.ts';

const job = (others: Partial<DrawingJob>): DrawingJob => ({
  view: 'side',
  format: 'svg',
  document: sampleLayout(),
  unit: 'mm',
  fraction: 16,
  pose: AT_RIDE,
  ...others,
});

const drawn = DRAWN_VIEWS.filter((view) => formatTrouble(view, 'svg') === undefined);

describe('SVG', () => {
  test.each(drawn)('of %s: text is text, as large as it says, one unit to the millimetre', async (view) => {
    const svg = Buffer.from(await drawFile(job({ view }))).toString('utf8');
    const [, width, height, box] =
      /<svg[^>]* width="([\d.]+)mm" height="([\d.]+)mm" viewBox="([^"]+)"/.exec(svg) ?? [];
    expect(box).toBe(`0 0 ${width} ${height}`);
    expect(svg).toContain('<text ');
    expect(svg).toContain('it certifies nothing');
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
  });

  test.each(['side', 'top', 'front', 'views'] as const)(
    'of %s: a group and an id for each layer and each hardpoint',
    (view) => {
      const document = sampleLayout();
      const { svg } = drawSvg(job({ view, document }), 'text');
      const ids = [...svg.matchAll(/<g id="([^"]+)"/g)].map(([, id]) => id as string);
      // XML 1.0: an id is a name, and stands once.
      for (const id of ids) expect(id).toMatch(/^[A-Za-z_][\w.-]*$/);
      expect(new Set(ids).size).toBe(ids.length);
      for (const each of view === 'views' ? VIEWS : [view]) {
        for (const layer of ['axle', 'wheels', 'steering', 'location', 'hardpoints'])
          expect(ids).toContain(`${each}-${layer}`);
        for (const { id } of hardpoints(document)) {
          const [, x, y] =
            new RegExp(
              `<g id="${each}-${id.replaceAll('.', '\\.')}">\\s*<circle cx="([\\d.-]+)" cy="([\\d.-]+)"`,
            ).exec(svg) ?? [];
          expect(Number.isFinite(Number(x)) && Number.isFinite(Number(y)), `${each} ${id}`).toBe(true);
        }
      }
      // Two points are as far apart as in the view, by the scale that stands on the plate.
      if (view === 'views') return;
      const at = (id: string) => {
        const [, x, y] =
          new RegExp(
            `<g id="${view}-${id.replaceAll('.', '\\.')}">\\s*<circle cx="([\\d.-]+)" cy="([\\d.-]+)"`,
          ).exec(svg) ?? [];
        return [Number(x), Number(y)] as const;
      };
      const [, scale] = /scale 1 : (\d+)</.exec(svg) ?? [];
      const points = hardpoints(document);
      const seen = (id: string) => project(view, points.find((point) => point.id === id)?.at as Point);
      const [a, b] = ['axle.left.kingpinTop', 'steering.box.pitmanBall'] as const;
      for (const axis of [0, 1] as const)
        expect((at(b)[axis] - at(a)[axis]) * Number(scale)).toBeCloseTo(seen(b)[axis] - seen(a)[axis], 0);
    },
  );

  test('what moves has groups of its own: rooms where they are asked for, the arcs where they are judged', () => {
    const ids = (view: DrawingJob['view'], rooms: DrawingJob['rooms'] = []) =>
      [...drawSvg(job({ view, rooms }), 'text').svg.matchAll(/<g id="([^"]+)"/g)].map(
        ([, id]) => id as string,
      );
    const of = (all: readonly string[], what: RegExp) => all.filter((id) => what.test(id)).sort();
    // The sample steers from the side.
    expect(of(ids('side'), /arcs|room/)).toEqual(['arcs-detail', 'side-arcs']);
    expect(of(ids('front'), /arcs|room/)).toEqual([]);
    expect(of(ids('top', ['tyre', 'drag-link']), /arcs|room/)).toEqual([
      'top-room-drag-link',
      'top-room-tyre',
    ]);
    expect(of(ids('views', ['tie-rod']), /arcs|room/)).toEqual([
      'arcs-detail',
      'front-room-tie-rod',
      'side-arcs',
      'side-room-tie-rod',
      'top-room-tie-rod',
    ]);
    const { svg } = drawSvg(job({ view: 'side', rooms: ['tyre'] }), 'text');
    expect(svg).toContain('>DETAIL A (');
    expect(svg).toContain('the room needed by tyres');
  });

  test('states its scale and holds to it: the rule is as long as it says', () => {
    const { svg } = drawSvg(job({ view: 'top' }), 'text');
    const [, scale] = /scale 1 : (\d+)</.exec(svg) ?? [];
    const rule = [...svg.matchAll(/d="M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)"[^>]*stroke-width="0.35"/g)]
      .map(([, x1, y1, x2, y2]) => Math.hypot(Number(x2) - Number(x1), Number(y2) - Number(y1)))
      .sort((a, b) => b - a)[0];
    expect((rule as number) * Number(scale)).toBeCloseTo(250, 1);
  });

  test('escapes what names bring along, and leaves out what XML cannot hold', () => {
    const { svg } = drawSvg(
      job({ document: { ...sampleLayout(), name: '<b>"A&B"</b>\u0007\ud800' } }),
      'text',
    );
    expect(svg).toContain('&lt;b&gt;&quot;A&amp;B&quot;&lt;/b&gt;');
    expect([...svg].some((sign) => sign < ' ' && sign !== '\n')).toBe(false);
  });

  test('letters are as wide as in the PDF, so that a page breaks alike with either pen', () => {
    const pdf = new PdfPen({ title: '', author: '', subject: '', date: new Date(0) });
    pdf.addPage({ width: 100, height: 100 });
    const pen = new SvgPen('outlines');
    for (const style of [BODY, TITLE, FIGURE])
      for (const text of ['Drag link 24 15/16 in, 0.25°', 'AVATAR Toe', 'Łódź αβγ', 'fi fl ffi'])
        expect(pen.widthOf(text, style)).toBeCloseTo(pdf.widthOf(text, style), 3);
  });
});

describe('what cannot be drawn', () => {
  test('is told by view and format', async () => {
    expect(formatTrouble('3d', 'svg')).toBe('points in space are drawn as dxf only');
    expect(formatTrouble('turn', 'dxf')).toBe('curves are drawn as svg or png, not as dxf');
    await expect(drawFile(job({ view: 'turn', format: 'dxf' }))).rejects.toBeInstanceOf(DrawingRefused);
  });

  test('stops when called off', async () => {
    const reason = new Error('enough');
    await expect(drawFile(job({ signal: AbortSignal.abort(reason) }))).rejects.toBe(reason);
  });
});

/** Pictures as they were looked at. To take new ones: remove the file, run, look at it. */
describe('PNG', () => {
  const [, document] = DEMONSTRATIONS.find(([file]) => file === 'hairpins-side-steer.json') ?? [];
  const WIDE = 760;

  test.each(['side', 'curves'] as const)('of %s is as it was looked at', async (view) => {
    const png = await drawFile(job({ view, format: 'png', ...(document ? { document } : {}) }));
    expect([...png.subarray(0, 8)]).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
    const golden = resolve(import.meta.dirname, `../../../golden/${view}-view.png`);
    if (!existsSync(golden)) {
      writeFileSync(golden, png);
      throw new Error(`${golden} was missing and is made anew: look at it, and keep it if it is right`);
    }
    const seen = pixelsOf(png, WIDE);
    const looked = pixelsOf(readFileSync(golden), WIDE);
    expect([seen.width, seen.height]).toEqual([looked.width, looked.height]);
    const { mean, others } = difference(seen.rgba, looked.rgba);
    expect(mean).toBeLessThan(0.8);
    expect(others).toBeLessThan(0.004);
    // The measure itself can tell one car from another.
    const other = await drawFile(job({ view, format: 'png' }));
    const apart = pixelsOf(other, WIDE);
    if (apart.height === looked.height)
      expect(difference(apart.rgba, looked.rgba).others).toBeGreaterThan(0.004);
  });
});
