import { Helper } from 'dxf';
import DxfParser, { type IDxf, type IEntity } from 'dxf-parser';
import { describe, expect, test } from 'vitest';
import { project, VIEWS } from '../../../../shared-math/drawing/index.ts';
import { distance, type Point } from '../../../../shared-math/geometry/points.ts';
import { hardpoints, resolveLayout } from '../../../../shared-math/layout/index.ts';
import {
  carryPoint,
  createState,
  prepareFrontEnd,
  solveFrontEnd,
} from '../../../../shared-math/linkage/index.ts';
import { parseLength, toRadians } from '../../../../shared-math/units/index.ts';
import {
  AT_RIDE,
  type DrawingJob,
  DrawingRefused,
  drawFile,
} from '../../../../src-main/output/drawings/index.ts';
import { DEMONSTRATIONS } from '../../../support/demonstration-files.ts';
import { dxfRecords, dxfTags } from '../../../support/dxf-tags.ts';
import { sampleLayout } from '../../../support/host-sample.ts';

// Read back by dxf-parser and by dxf, two readers that share nothing with the writer or with one another.

const LAYERS = [
  'arc-gaps',
  'axle',
  'ball-path',
  'dimensions',
  'fine-lines',
  'ground',
  'hardpoints',
  'hidden-edges',
  'link-arc',
  'location',
  'middle-lines',
  'obstacles',
  'rails',
  'room-drag-link',
  'room-tie-rod',
  'room-tyre',
  'shaft',
  'steering',
  'wheels',
  'words',
];

interface Spot {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

type Asked = Partial<DrawingJob> & Pick<DrawingJob, 'view' | 'document'>;

async function textOf(job: Asked): Promise<string> {
  const bytes = await drawFile({ format: 'dxf', unit: 'mm', fraction: 16, pose: AT_RIDE, ...job });
  return Buffer.from(bytes).toString('utf8');
}

async function read(job: Asked): Promise<IDxf> {
  const dxf = new DxfParser().parseSync(await textOf(job));
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
      // Points that lie behind one another in the view are one.
      for (const { at } of points) {
        const [right, down] = project(view, at);
        const there = found.filter(
          ({ x, y }) => Math.abs(x * per - right) < 1e-6 && Math.abs(y * per + down) < 1e-6,
        );
        expect(there).toHaveLength(1);
      }
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
    expect([...used].filter((layer) => layer.startsWith('room-'))).toEqual([]);
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

describe.each(DEMONSTRATIONS)('DXF of %s as a shop needs it', (_, document) => {
  test('three views stand in third-angle projection: above the side view from above, left of it from ahead', async () => {
    const found = spots(await read({ view: 'views', document }));
    const near = (a: number, b: number) => Math.abs(a - b) < 1e-6;
    const offsets = { up: Number.NaN, left: Number.NaN };
    for (const { at } of hardpoints(document)) {
      const [x, y, z] = at;
      // ASME Y14.3: the top view keeps the side view's right, the front view its height.
      expect(found.some((spot) => near(spot.x, -x) && near(spot.y, z))).toBe(true);
      const above = found.filter((spot) => near(spot.x, -x) && spot.y > 1000);
      const ahead = found.filter((spot) => near(spot.y, z) && spot.x < -1000);
      const up = above.map((spot) => spot.y + y);
      const left = ahead.map((spot) => spot.x - y);
      // One and the same shift for all points.
      if (Number.isNaN(offsets.up) && above.length === 1) offsets.up = up[0] as number;
      if (Number.isNaN(offsets.left) && ahead.length === 1) offsets.left = left[0] as number;
    }
    for (const { at } of hardpoints(document)) {
      const [x, y, z] = at;
      expect(found.some((spot) => near(spot.x, -x) && near(spot.y, offsets.up - y))).toBe(true);
      expect(found.some((spot) => near(spot.y, z) && near(spot.x, offsets.left + y))).toBe(true);
    }
    expect(offsets.up).toBeGreaterThan(1000);
    expect(offsets.left).toBeLessThan(-1000);
  });

  test.each(['side', 'top', 'front', 'views'] as const)(
    '%s: both readers find the same in it',
    async (view) => {
      const text = await textOf({ view, document });
      const one = new DxfParser().parseSync(text);
      const other = new Helper(text).parsed;
      const count = (kinds: readonly string[]) => {
        const tally: Record<string, number> = {};
        for (const kind of kinds) tally[kind] = (tally[kind] ?? 0) + 1;
        return tally;
      };
      const first = count((one?.entities ?? []).map(({ type }) => type));
      expect(count(other.entities.map(({ type }) => type))).toEqual(first);
      for (const kind of ['LINE', 'ARC', 'CIRCLE', 'ELLIPSE', 'LWPOLYLINE', 'DIMENSION', 'TEXT', 'POINT'])
        expect(first[kind], kind).toBeGreaterThan(0);
      const arcs = (list: readonly unknown[]) =>
        (list as { type: string; radius?: number; r?: number }[])
          .filter(({ type }) => type === 'CIRCLE' || type === 'ARC')
          .map(({ radius, r }) => radius ?? r);
      expect(arcs(other.entities)).toEqual(arcs(one?.entities ?? []));
    },
  );

  test.each(['mm', 'in'] as const)(
    '%s: dimensions measure what they say, and show it without a reader that draws them',
    async (unit) => {
      const tags = dxfTags(await textOf({ view: 'views', document, unit }));
      const dxf = await read({ view: 'views', document, unit });
      const dimensions = dxfRecords(tags, 'DIMENSION');
      expect(dimensions.length).toBeGreaterThan(8);
      for (const dimension of dimensions) {
        const number = (code: number) => Number(dimension.get(code));
        const [x1, y1, x2, y2] = [number(13), number(23), number(14), number(24)];
        // DXF reference, DIMENSION: 70 is the kind (0 along a direction, 1 between two places) plus 32 for a block of its own.
        const between =
          number(70) === 33 ? Math.hypot(x2 - x1, y2 - y1) : Math.abs(number(50) === 0 ? x2 - x1 : y2 - y1);
        expect([32, 33]).toContain(number(70));
        expect(number(42)).toBeCloseTo(between, 6);
        expect(dimension.get(3)).toBe('shop-lengths');
        const block = dxf.blocks[dimension.get(2) as string];
        const words = block?.entities.filter(({ type }) => type === 'TEXT') as (IEntity & { text: string })[];
        expect(words).toHaveLength(1);
        expect(block?.entities.filter(({ type }) => type === 'LINE').length).toBeGreaterThanOrEqual(5);
        const figure = (dimension.get(1) as string).replace('<>', '');
        expect(words[0]?.text.startsWith(figure.trim())).toBe(true);
        // A figure that the reader works out itself is the one that is drawn: to the sixteenth, or to the tenth.
        if ((dimension.get(1) as string).includes('<>')) {
          const shown = parseLength(String(words[0]?.text).slice(figure.length), unit);
          if (!shown.ok) throw new Error(shown.failure);
          const exact = between * (unit === 'in' ? 25.4 : 1);
          expect(Math.abs(shown.value - exact)).toBeLessThan(unit === 'in' ? 25.4 / 32 + 1e-6 : 0.05 + 1e-6);
        } else expect(dimension.get(1)).toMatch(/ true$/);
      }
    },
  );

  test('says in its header how far it reaches, and is no larger', async () => {
    for (const view of ['side', 'views'] as const) {
      const text = await textOf({ view, document });
      const { header } = new DxfParser().parseSync(text) as IDxf;
      const [low, high] = [header['$EXTMIN'], header['$EXTMAX']] as unknown as [Spot, Spot];
      const lines = new Helper(text).toPolylines();
      const points = lines.polylines.flatMap(({ vertices }) => vertices);
      const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
      const within = (least: number, most: number, from: number, to: number) => {
        expect(least).toBeGreaterThan(from - 1e-6);
        expect(most).toBeLessThan(to + 1e-6);
      };
      within(Math.min(...xs), Math.max(...xs), low.x, high.x);
      within(Math.min(...ys), Math.max(...ys), low.y, high.y);
    }
  });
});

test('line types and weights go by layer, as ISO 128-2 has them, and no name is another program’s', async () => {
  const tags = dxfTags(await textOf({ view: 'side', document: sampleLayout() }));
  const layers = new Map(dxfRecords(tags, 'LAYER').map((layer) => [layer.get(2) as string, layer]));
  // From memory, ISO 128-2: edges are wide (0.5 mm of the group 0.25/0.5), all else is narrow; hidden ones are dashed, axes
  // long-dashed dotted, neighbours long-dashed double-dotted. Group code 370 counts hundredths of a millimetre.
  const look = (name: string) => [layers.get(name)?.get(6), Number(layers.get(name)?.get(370))];
  for (const name of ['axle', 'wheels', 'steering', 'location', 'rails', 'shaft'])
    expect(look(name)).toEqual(['Continuous', 50]);
  for (const name of ['fine-lines', 'ground', 'hardpoints', 'dimensions', 'words'])
    expect(look(name)).toEqual(['Continuous', 25]);
  expect(look('hidden-edges')).toEqual(['hidden-edges', 25]);
  expect(look('middle-lines')).toEqual(['middle-lines', 25]);
  expect(look('obstacles')).toEqual(['neighbours', 25]);
  const dots = (name: string) => {
    const at = tags.findIndex(
      ([code, value], i) => code === 2 && value === name && tags[i - 1]?.[1] === 'AcDbLinetypeTableRecord',
    );
    const end = tags.findIndex(([code], i) => i > at && code === 0);
    return tags.slice(at, end).flatMap(([code, value]) => (code === 49 ? [Math.sign(Number(value))] : []));
  };
  expect(dots('hidden-edges')).toEqual([1, -1]);
  expect(dots('middle-lines')).toEqual([1, -1, 0, -1]);
  expect(dots('neighbours')).toEqual([1, -1, 0, -1, 0, -1]);
  // What the format itself asks for keeps its name; all others are ours, in lower case.
  const named = ['LAYER', 'LTYPE', 'STYLE', 'DIMSTYLE'].flatMap((kind) =>
    dxfRecords(tags, kind).map((record) => record.get(2) as string),
  );
  const asked = ['0', 'ByBlock', 'ByLayer', 'Continuous', 'Standard'];
  for (const name of named) if (!asked.includes(name)) expect(name).toMatch(/^[a-z]+(-[a-z]+)*$/);
  expect(named).toContain('shop-lengths');
  expect(named).toContain('lettering');
});

describe.each(DEMONSTRATIONS)('what moves in the DXF of %s', (_, document) => {
  const lines = (dxf: IDxf, layer: string) =>
    dxf.entities
      .filter((entity) => entity.layer === layer)
      .map((entity) => entity as IEntity & { vertices: Spot[]; shape?: boolean });

  /** The ball of the steering arm at a heave, wheels straight: the axle posed by itself, without the drag link. */
  function carriedBall(heave: number): Point {
    const frontEnd = prepareFrontEnd(resolveLayout(document));
    const state = createState();
    expect(solveFrontEnd(frontEnd, heave, 0, 0, state)).toBe('ok');
    const room = new Float64Array(3);
    const { dragLinkBall, dragLinkTo } = frontEnd.layout.steering;
    const [x, y, z] = dragLinkBall;
    carryPoint(frontEnd, state, `axle-${dragLinkTo}`, [x, y, z], room);
    return [room[0] as number, room[1] as number, room[2] as number];
  }

  test.each(['mm', 'in'] as const)(
    'path, arc and gaps stand in the view they are judged in, in %s',
    async (unit) => {
      const per = unit === 'in' ? 25.4 : 1;
      const { steering, travel } = resolveLayout(document);
      // Side steer is judged from the side, cross steer from ahead: the link's longest way on paper tells which it is.
      const way = steering.dragLinkBall.map((value, i) =>
        Math.abs(value - (steering.box.pitmanBall[i] as number)),
      );
      const [judged, other] =
        (way[0] as number) > (way[1] as number) ? (['side', 'front'] as const) : (['front', 'side'] as const);
      const dxf = await read({ view: judged, document, unit });
      const [path] = lines(dxf, 'ball-path');
      const [arc] = lines(dxf, 'link-arc');
      const gaps = lines(dxf, 'arc-gaps');
      if (!path || !arc) throw new Error('no arcs');
      const onDrawing = (at: Point) => {
        const [right, down] = project(judged, at);
        return { x: right / per, y: -down / per };
      };
      const near = (from: Spot | undefined, at: { x: number; y: number }, within: number) =>
        expect(Math.hypot((from?.x ?? Number.NaN) - at.x, (from?.y ?? Number.NaN) - at.y)).toBeLessThan(
          within / per,
        );
      near(path.vertices[0], onDrawing(carriedBall(-travel.rebound)), 1e-4);
      near(path.vertices.at(-1), onDrawing(carriedBall(travel.bump)), 1e-4);
      // Each place of the arc can be reached from the pitman ball with the link as long as it is: no farther than that on paper.
      const long = distance(steering.dragLinkBall, steering.box.pitmanBall) / per;
      const pitman = onDrawing(steering.box.pitmanBall);
      for (const { x, y } of arc.vertices)
        expect(Math.hypot(x - pitman.x, y - pitman.y)).toBeLessThan(long + 1e-6);
      expect(gaps.length).toBeGreaterThan(4);
      const onPath = ({ x, y }: Spot) =>
        Math.min(...path.vertices.map((at) => Math.hypot(at.x - x, at.y - y)));
      for (const { vertices } of gaps) expect(onPath(vertices[0] as Spot) * per).toBeLessThan(4);
      // The figures beside it: the gap at full bump is what the link lacks to the ball with the wheels straight.
      const words = texts(dxf);
      const at = words.findIndex(
        (each) => each === `heave +${(travel.bump / per).toFixed(unit === 'in' ? 4 : 3)}`,
      );
      const written = /^gap ([+-]?[\d.]+)$/.exec(words[at + 1] ?? '')?.[1];
      expect(written).toBeDefined();
      const lacking = distance(carriedBall(travel.bump), steering.box.pitmanBall) / per - long;
      expect(Math.sign(Number(written)) * Math.sign(lacking)).not.toBe(-1);
      expect(Math.abs(Number(written))).toBeGreaterThan(Math.abs(lacking) - 0.001);
      const none = await read({ view: other, document, unit });
      for (const layer of ['ball-path', 'link-arc', 'arc-gaps']) expect(lines(none, layer)).toEqual([]);
    },
  );

  test('rooms are drawn where they are asked for: closed, around what they are the room of', async () => {
    const dxf = await read({ view: 'top', document, rooms: ['tyre', 'tie-rod'] });
    expect(lines(dxf, 'room-drag-link')).toEqual([]);
    const { axle, car } = resolveLayout(document);
    for (const [layer, within] of [
      ['room-tyre', [axle.left.wheelCentre, axle.right.wheelCentre]],
      ['room-tie-rod', [axle.left.tieRodBall, axle.right.tieRodBall]],
    ] as const) {
      const outlines = lines(dxf, layer);
      expect(outlines.length).toBeGreaterThan(0);
      for (const { shape } of outlines) expect(shape).toBe(true);
      for (const at of within) {
        const [right, down] = project('top', at);
        expect(
          outlines.some(({ vertices }) => surrounds(vertices, right, -down)),
          layer,
        ).toBe(true);
      }
    }
    const reach = lines(dxf, 'room-tyre').flatMap(({ vertices }) => vertices.map(({ x }) => Math.abs(x)));
    expect(Math.max(...reach)).toBeGreaterThan(car.tyreRadius);
    expect(texts(dxf).some((words) => words.includes('the room needed by tyres, tie rod'))).toBe(true);
    await expect(read({ view: '3d', document, rooms: ['tyre'] })).rejects.toBeInstanceOf(DrawingRefused);
  });
});

/** Whether a closed line goes round a place: a ray to the right crosses it an odd number of times. */
function surrounds(line: readonly Spot[], x: number, y: number): boolean {
  let inside = false;
  line.forEach((a, i) => {
    const b = line[(i + 1) % line.length] as Spot;
    if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
  });
  return inside;
}

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

describe.each(DEMONSTRATIONS)('templates of %s for a cutting table', (_, document) => {
  test.each(['mm', 'in'] as const)(
    'in %s: closed outlines, holes where the centres are, at full size',
    async (unit) => {
      const per = unit === 'in' ? 25.4 : 1;
      const text = await textOf({ view: 'templates', document, unit });
      const dxf = new DxfParser().parseSync(text) as IDxf;
      const layers = [...new Set(dxf.entities.map(({ layer }) => layer))].sort();
      for (const layer of layers)
        expect(['bend-lines', 'holes', 'outline', 'scribe-lines', 'words']).toContain(layer);
      const outlines = of(dxf, 'LWPOLYLINE', 'outline') as (IEntity & { shape: boolean; vertices: Spot[] })[];
      expect(outlines.length).toBeGreaterThan(4);
      for (const { shape } of outlines) expect(shape).toBe(true);
      // Nothing but closed lines and circles is cut.
      for (const { type, layer } of dxf.entities)
        if (layer === 'outline' || layer === 'holes') expect(['LWPOLYLINE', 'CIRCLE']).toContain(type);
      const holes = of(dxf, 'CIRCLE', 'holes') as (IEntity & { center: Spot; radius: number })[];
      for (const { radius } of holes) expect(radius * per).toBeCloseTo(1.5, 6);
      // The pitman arm's centres are as far apart as the arm is long in the plane square to its shaft.
      const { box } = resolveLayout(document).steering;
      const size = Math.hypot(...box.sectorAxis);
      const away = box.pitmanBall.map((value, i) => value - (box.sectorCentre[i] as number));
      const along = away.reduce((sum, value, i) => sum + (value * (box.sectorAxis[i] as number)) / size, 0);
      const arm = Math.sqrt(away.reduce((sum, value) => sum + value * value, 0) - along * along);
      const [one, two] = holes.map(({ center }) => center) as [Spot, Spot];
      expect(Math.hypot(one.x - two.x, one.y - two.y) * per).toBeCloseTo(arm, 4);
      // Each hole lies within an outline: counted by a line to the right.
      for (const { center } of holes) {
        const inside = outlines.some(({ vertices }) => {
          let odd = false;
          vertices.forEach((a, i) => {
            const b = vertices[(i + 1) % vertices.length] as Spot;
            if (
              a.y > center.y !== b.y > center.y &&
              center.x < a.x + ((center.y - a.y) / (b.y - a.y)) * (b.x - a.x)
            )
              odd = !odd;
          });
          // A plate about two centres has its holes on the middle line between its straight sides, or at their ends.
          return (
            odd ||
            vertices.some((at) => Math.abs(Math.hypot(at.x - center.x, at.y - center.y) * per - 18) < 1e-6)
          );
        });
        expect(inside).toBe(true);
      }
      expect(new Helper(text).parsed.entities).toHaveLength(dxf.entities.length);
    },
  );

  test('take no pose', async () => {
    await expect(textOf({ view: 'templates', document, pose: { ...AT_RIDE, heave: 20 } })).rejects.toThrow(
      'templates are of the car at ride height, so they take no pose',
    );
  });
});
