import DxfParser, { type IDxf, type IEntity } from 'dxf-parser';
import { describe, expect, test } from 'vitest';
import { project, VIEWS } from '../../../../shared-math/drawing/index.ts';
import { distance, type Point } from '../../../../shared-math/geometry/points.ts';
import { hardpoints, resolveLayout } from '../../../../shared-math/layout/index.ts';
import { createState, prepareFrontEnd, solveFrontEnd } from '../../../../shared-math/linkage/index.ts';
import { toRadians } from '../../../../shared-math/units/index.ts';
import {
  AT_RIDE,
  type DrawingJob,
  DrawingRefused,
  drawFile,
} from '../../../../src-main/output/drawings/index.ts';
import { DEMONSTRATIONS } from '../../../support/demonstration-files.ts';
import { sampleLayout } from '../../../support/host-sample.ts';

// Read back by dxf-parser, a reader that shares nothing with the writer.

const LAYERS = [
  'axle',
  'dimensions',
  'ground',
  'hardpoints',
  'location',
  'obstacles',
  'rails',
  'shaft',
  'steering',
  'wheels',
];

interface Spot {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

async function read(job: Partial<DrawingJob> & Pick<DrawingJob, 'view' | 'document'>): Promise<IDxf> {
  const bytes = await drawFile({ format: 'dxf', unit: 'mm', fraction: 16, pose: AT_RIDE, ...job });
  const dxf = new DxfParser().parseSync(Buffer.from(bytes).toString('utf8'));
  if (!dxf) throw new Error('the reader takes the file for none');
  return dxf;
}

const of = (dxf: IDxf, type: string, layer: string) =>
  dxf.entities.filter((entity) => entity.type === type && entity.layer === layer);
const spots = (dxf: IDxf) =>
  of(dxf, 'POINT', 'hardpoints').map((entity) => (entity as IEntity & { position: Spot }).position);
const texts = (dxf: IDxf) =>
  dxf.entities
    .filter(({ type }) => type === 'TEXT')
    .map((entity) => (entity as IEntity & { text: string }).text);

describe.each(DEMONSTRATIONS)('DXF of %s', (_, document) => {
  test.each(VIEWS)('the %s view: every hardpoint within 1e-6, in mm and in inches', async (view) => {
    const points = hardpoints(document);
    for (const [unit, per, code] of [
      ['mm', 1, 4],
      ['in', 25.4, 1],
    ] as const) {
      const dxf = await read({ view, document, unit });
      // DXF reference, header variable $INSUNITS (group code 70): 1 is inches, 4 millimetres.
      expect(dxf.header['$INSUNITS']).toBe(code);
      const found = spots(dxf);
      expect(found).toHaveLength(points.length);
      points.forEach(({ at }, i) => {
        const [right, down] = project(view, at);
        const spot = found[i] as Spot;
        expect(Math.abs(spot.x * per - right)).toBeLessThan(1e-6);
        expect(Math.abs(spot.y * per + down)).toBeLessThan(1e-6);
      });
      const words = texts(dxf);
      for (const { name } of points) expect(words).toContain(name);
    }
  });

  test('has its layers by plain names, and something on each that the car has', async () => {
    const dxf = await read({ view: 'side', document });
    expect(
      Object.keys(dxf.tables.layer.layers)
        .filter((name) => name !== '0' && name !== 'Defpoints')
        .sort(),
    ).toEqual(LAYERS);
    const used = new Set(dxf.entities.map(({ layer }) => layer));
    for (const layer of ['axle', 'wheels', 'steering', 'location', 'ground', 'hardpoints', 'dimensions'])
      expect(used).toContain(layer);
    expect(used.has('rails')).toBe(document.rails.length > 0);
    expect(used.has('obstacles')).toBe(document.obstacles.length > 0);
    expect(used.has('shaft')).toBe(document.shaft !== null);
    expect([...used].sort()).toEqual([...used].filter((layer) => LAYERS.includes(layer)).sort());
  });

  test('in space: every hardpoint within 1e-6, and the drag link and tie rod as long as they are', async () => {
    const dxf = await read({ view: '3d', document });
    const found = spots(dxf);
    hardpoints(document).forEach(({ at }, i) => {
      const spot = found[i] as Spot;
      at.forEach((value, axis) => {
        expect(Math.abs(([spot.x, spot.y, spot.z][axis] as number) - value)).toBeLessThan(1e-6);
      });
    });
    const { steering, axle } = resolveLayout(document);
    const lengths = of(dxf, 'LINE', 'steering').map((entity) => {
      const [a, b] = (entity as IEntity & { vertices: Spot[] }).vertices as [Spot, Spot];
      return Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);
    });
    for (const length of [
      distance(steering.dragLinkBall, steering.box.pitmanBall),
      distance(axle.left.tieRodBall, axle.right.tieRodBall),
    ])
      expect(lengths.some((found) => Math.abs(found - length) < 1e-6)).toBe(true);
  });
});

describe('DXF of a pose', () => {
  const pose = { heave: 40, roll: toRadians(1.5), handwheel: toRadians(120) };

  test('links keep their lengths, and wheels rise as the solver says', async () => {
    const document = sampleLayout();
    const dxf = await read({ view: '3d', document, pose });
    const points = hardpoints(document);
    const found = spots(dxf);
    const at = (id: string): Point => {
      const { x, y, z } = found[points.findIndex((point) => point.id === id)] as Spot;
      return [x, y, z];
    };
    const { steering, axle } = resolveLayout(document);
    expect(distance(at('steering.dragLinkBall'), at('steering.box.pitmanBall'))).toBeCloseTo(
      distance(steering.dragLinkBall, steering.box.pitmanBall),
      6,
    );
    expect(distance(at('axle.left.tieRodBall'), at('axle.right.tieRodBall'))).toBeCloseTo(
      distance(axle.left.tieRodBall, axle.right.tieRodBall),
      6,
    );
    const state = createState();
    const frontEnd = prepareFrontEnd(resolveLayout(document));
    solveFrontEnd(frontEnd, pose.heave, pose.roll, pose.handwheel, state);
    expect(at('axle.left.wheelCentre')[2] - axle.left.wheelCentre[2]).toBeCloseTo(state.left.wheelRise, 6);
    expect(state.left.wheelRise).toBeGreaterThan(40);
  });

  test('one that cannot be is refused in one sentence', async () => {
    const far = { ...pose, heave: 1500 };
    const refused = read({ view: 'side', document: sampleLayout(), pose: far });
    await expect(refused).rejects.toThrow(/^the links leave the axle free to move, so no pose is drawn$/);
    await expect(refused).rejects.toBeInstanceOf(DrawingRefused);
  });

  test('names with signs that mean something in the format come back as they are read', async () => {
    const name = 'Löwe & "Söhne"\n<1932> 100%';
    const dxf = await read({ view: 'side', document: { ...sampleLayout(), name } });
    const title = texts(dxf).find((words) => words.includes('full size'));
    expect(title).toContain('& "S');
    expect(title).toContain('<1932>');
    expect(title).not.toMatch(/[\r\n]/);
  });
});
