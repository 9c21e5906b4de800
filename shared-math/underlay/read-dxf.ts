import { toRadians } from '../units/index.ts';
import {
  after,
  DEPTH_MAX,
  DrawingCollector,
  DrawingRefusal,
  type ReadDrawing,
  type Transform,
  UNMOVED,
} from './read-drawing.ts';
import { splinePlaces } from './spline-places.ts';

// DXF, from R12 on, as its reference describes it: groups of a code and a value, one on each line; entities by layer, and
// blocks of entities that are put in at places. Nothing but lines is taken.

type Group = readonly [code: number, value: string];

/** An entity or the head of one: its name and its groups. Vertices of a POLYLINE are entities of their own that follow. */
interface Entity {
  readonly kind: string;
  readonly groups: readonly Group[];
}

/** mm of what $INSUNITS (group code 70) counts by; 0 and what is not here says nothing. */
const UNITS: Readonly<Record<number, number>> = {
  1: 25.4,
  2: 304.8,
  4: 1,
  5: 10,
  6: 1000,
  8: 25.4e-6,
  9: 0.0254,
  10: 914.4,
  13: 0.001,
  14: 100,
};

function* groupsOf(text: string): Generator<Group> {
  const length = text.length;
  let at = 0;
  const next = (): string | undefined => {
    if (at >= length) return undefined;
    let end = text.indexOf('\n', at);
    if (end < 0) end = length;
    const line = text.slice(at, text[end - 1] === '\r' ? end - 1 : end);
    at = end + 1;
    return line;
  };
  for (;;) {
    const code = next();
    const value = next();
    if (code === undefined || value === undefined) return;
    const number = Number(code);
    if (!Number.isInteger(number) || code.trim() === '')
      throw new DrawingRefusal('it is no whole DXF: a line that should be a group code is none');
    yield [number, value];
  }
}

const first = ({ groups }: Entity, code: number): string | undefined =>
  groups.find(([own]) => own === code)?.[1];

function figure(entity: Entity, code: number, absent = 0): number {
  const text = first(entity, code);
  if (text === undefined) return absent;
  const value = Number.parseFloat(text);
  return Number.isFinite(value) ? value : absent;
}

const layerOf = (entity: Entity): string => first(entity, 8)?.trim() || '0';

interface Sections {
  readonly header: Map<string, string>;
  readonly layers: Entity[];
  readonly blocks: Map<string, { readonly base: readonly [number, number]; readonly entities: Entity[] }>;
  readonly entities: Entity[];
}

function sectionsOf(text: string): Sections {
  const header = new Map<string, string>();
  const layers: Entity[] = [];
  const blocks: Sections['blocks'] = new Map();
  const entities: Entity[] = [];
  let section = '';
  let variable = '';
  let block: { base: readonly [number, number]; entities: Entity[] } | undefined;
  let entity: { kind: string; groups: Group[] } | undefined;
  const close = () => {
    if (!entity) return;
    if (section === 'TABLES' && entity.kind === 'LAYER') layers.push(entity);
    else if (section === 'ENTITIES') entities.push(entity);
    else if (section === 'BLOCKS') {
      if (entity.kind === 'BLOCK') {
        block = { base: [figure(entity, 10), figure(entity, 20)], entities: [] };
        blocks.set(first(entity, 2)?.trim() ?? '', block);
      } else if (entity.kind === 'ENDBLK') block = undefined;
      else block?.entities.push(entity);
    }
    entity = undefined;
  };
  let named = false;
  for (const [code, value] of groupsOf(text)) {
    if (code === 0) {
      close();
      const kind = value.trim();
      if (kind === 'SECTION') named = true;
      else if (kind === 'ENDSEC') section = '';
      else if (kind === 'EOF') break;
      else entity = { kind, groups: [] };
    } else if (named && code === 2) {
      section = value.trim();
      named = false;
    } else if (section === 'HEADER' && !entity) {
      if (code === 9) variable = value.trim();
      else header.set(`${variable} ${code}`, value.trim());
    } else entity?.groups.push([code, value]);
  }
  close();
  return { header, layers, blocks, entities };
}

/** Places of an LWPOLYLINE or a POLYLINE with the bulge from each to the next. */
interface Vertex {
  readonly x: number;
  readonly y: number;
  readonly bulge: number;
}

/**
 * A line through vertices, a bulge being the tangent of a quarter of the angle that its arc sweeps, positive
 * counter-clockwise: radius s (1 + b²) / (4 |b|) over a chord s, its centre off the chord's middle by s (1 - b²) / (4 b) to the left.
 */
function drawVertices(
  out: DrawingCollector,
  layer: string,
  to: Transform,
  vertices: readonly Vertex[],
  closed: boolean,
): void {
  if (vertices.every(({ bulge }) => bulge === 0)) {
    out.line(
      layer,
      to,
      vertices.flatMap(({ x, y }) => [x, y]),
      closed,
    );
    return;
  }
  const count = closed ? vertices.length : vertices.length - 1;
  for (let i = 0; i < count; i += 1) {
    const a = vertices[i] as Vertex;
    const b = vertices[(i + 1) % vertices.length] as Vertex;
    if (a.bulge === 0) {
      out.line(layer, to, [a.x, a.y, b.x, b.y], false);
      continue;
    }
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const off = (1 - a.bulge ** 2) / (4 * a.bulge);
    const [cx, cy] = [(a.x + b.x) / 2 - off * dy, (a.y + b.y) / 2 + off * dx];
    const radius = Math.hypot(a.x - cx, a.y - cy);
    out.arc(
      layer,
      to,
      [cx, cy, radius, 0, 0, radius],
      Math.atan2(a.y - cy, a.x - cx),
      4 * Math.atan(a.bulge),
    );
  }
}

function lightVertices(entity: Entity): Vertex[] {
  const vertices: { x: number; y: number; bulge: number }[] = [];
  for (const [code, value] of entity.groups) {
    const number = Number.parseFloat(value);
    if (code === 10) vertices.push({ x: number, y: 0, bulge: 0 });
    const last = vertices.at(-1);
    if (last && code === 20) last.y = number;
    if (last && code === 42 && Number.isFinite(number)) last.bulge = number;
  }
  return vertices;
}

const every = (entity: Entity, code: number) =>
  entity.groups.flatMap(([own, value]) => (own === code ? [Number.parseFloat(value)] : []));

/** What is seen as lines but is taken by its own words only. */
const WORDS_FOR_LEFT: Readonly<Record<string, string>> = {
  TEXT: 'texts',
  MTEXT: 'texts',
  ATTDEF: 'texts',
  ATTRIB: 'texts',
  DIMENSION: 'dimensions',
  LEADER: 'leaders',
  HATCH: 'hatches',
  IMAGE: 'pictures',
};

class Reader {
  readonly #out = new DrawingCollector();
  readonly #blocks: Sections['blocks'];
  /** Blocks put in so far: a few that hold one another many times are a great many. */
  #inserted = 0;

  constructor(sections: Sections) {
    this.#blocks = sections.blocks;
    for (const layer of sections.layers) {
      const name = first(layer, 2)?.trim();
      // Colour below 0: turned off; flag 1: frozen.
      if (name) this.#out.layer(name, figure(layer, 62, 7) >= 0 && (figure(layer, 70) & 1) === 0);
    }
    this.#draw(sections.entities, UNMOVED, undefined, 0);
  }

  drawing(unit: number | undefined): ReadDrawing {
    return this.#out.drawing(unit);
  }

  #draw(entities: readonly Entity[], to: Transform, within: string | undefined, depth: number): void {
    for (let i = 0; i < entities.length; i += 1) {
      const entity = entities[i] as Entity;
      if (entity.kind === 'POLYLINE') {
        const vertices: Entity[] = [];
        while (entities[i + 1]?.kind === 'VERTEX') {
          i += 1;
          vertices.push(entities[i] as Entity);
        }
        if (entities[i + 1]?.kind === 'SEQEND') i += 1;
        this.#drawOne(entity, vertices, to, within, depth);
      } else this.#drawOne(entity, [], to, within, depth);
    }
  }

  #drawOne(
    entity: Entity,
    vertices: readonly Entity[],
    to: Transform,
    within: string | undefined,
    depth: number,
  ): void {
    // On paper beside the model.
    if (figure(entity, 67) === 1) return;
    const own = layerOf(entity);
    // What stands on layer 0 of a block is on the layer that the block is put in on.
    const layer = own === '0' && within !== undefined ? within : own;
    const out = this.#out;
    const [nx, ny, nz] = [figure(entity, 210), figure(entity, 220), figure(entity, 230, 1)];
    if (Math.abs(nx) > 1e-6 || Math.abs(ny) > 1e-6) {
      if (entity.kind !== 'LINE' && entity.kind !== 'POINT' && entity.kind !== 'SPLINE') {
        out.leave('parts turned in space');
        return;
      }
    }
    // Seen from below, the reference's own axes have x reversed. Lines, points and splines are in the world's axes.
    const turned = after(to, nz < 0 ? [-1, 0, 0, 1, 0, 0] : UNMOVED);
    const [x, y] = [figure(entity, 10), figure(entity, 20)];
    switch (entity.kind) {
      case 'LINE':
        out.line(layer, to, [x, y, figure(entity, 11), figure(entity, 21)], false);
        return;
      case 'POINT':
        out.end(layer, to, x, y);
        return;
      case 'CIRCLE': {
        const radius = figure(entity, 40);
        out.arc(layer, turned, [x, y, radius, 0, 0, radius], 0, 2 * Math.PI);
        return;
      }
      case 'ARC': {
        const radius = figure(entity, 40);
        const [from, until] = [figure(entity, 50), figure(entity, 51)];
        const sweep = toRadians((((until - from) % 360) + 360) % 360 || 360);
        out.arc(layer, turned, [x, y, radius, 0, 0, radius], toRadians(from), sweep);
        return;
      }
      case 'ELLIPSE': {
        const [ux, uy, ratio] = [figure(entity, 11), figure(entity, 21), figure(entity, 40, 1)];
        const [from, until] = [figure(entity, 41), figure(entity, 42, 2 * Math.PI)];
        const sweep = until > from ? until - from : until - from + 2 * Math.PI;
        const way = nz < 0 ? -1 : 1;
        out.arc(layer, to, [x, y, ux, uy, -uy * ratio * way, ux * ratio * way], from, sweep);
        return;
      }
      case 'LWPOLYLINE':
        drawVertices(out, layer, turned, lightVertices(entity), (figure(entity, 70) & 1) === 1);
        return;
      case 'POLYLINE': {
        const flags = figure(entity, 70);
        if (flags & 80) {
          out.leave('meshes');
          return;
        }
        const spots = vertices
          // A spline's frame of control points is not the line itself.
          .filter((vertex) => (figure(vertex, 70) & 16) === 0)
          .map((vertex) => ({ x: figure(vertex, 10), y: figure(vertex, 20), bulge: figure(vertex, 42) }));
        drawVertices(out, layer, flags & 8 ? to : turned, spots, (flags & 1) === 1);
        return;
      }
      case 'SPLINE': {
        const places = splinePlaces({
          degree: figure(entity, 71, 3),
          knots: every(entity, 40),
          weights: every(entity, 41),
          xs: every(entity, 10),
          ys: every(entity, 20),
        });
        const fitted = every(entity, 11).flatMap((fit, at) => [fit, every(entity, 21)[at] ?? 0]);
        out.line(layer, to, places ?? fitted, false, places !== undefined);
        return;
      }
      case 'SOLID':
      case 'TRACE':
      case '3DFACE':
        out.leave('filled faces');
        return;
      case 'INSERT':
        this.#insert(entity, turned, layer, depth);
        return;
      case 'VERTEX':
      case 'SEQEND':
      case 'VIEWPORT':
        return;
      default:
        out.leave(WORDS_FOR_LEFT[entity.kind] ?? 'other parts');
    }
  }

  #insert(entity: Entity, to: Transform, layer: string, depth: number): void {
    const name = first(entity, 2)?.trim() ?? '';
    const block = this.#blocks.get(name);
    if (!block) {
      this.#out.leave('blocks that are not in the file');
      return;
    }
    if (depth >= DEPTH_MAX)
      throw new DrawingRefusal(`its blocks hold one another more than ${DEPTH_MAX} deep`);
    const angle = toRadians(figure(entity, 50));
    const [sx, sy] = [figure(entity, 41, 1), figure(entity, 42, 1)];
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const [columns, rows] = [Math.max(1, figure(entity, 70, 1)), Math.max(1, figure(entity, 71, 1))];
    for (let row = 0; row < rows; row += 1)
      for (let column = 0; column < columns; column += 1) {
        this.#inserted += 1;
        if (this.#inserted > INSERTS_MAX)
          throw new DrawingRefusal(`it puts in more than ${INSERTS_MAX} blocks`);
        const aside: Transform = [1, 0, 0, 1, column * figure(entity, 44), row * figure(entity, 45)];
        const placed = after(
          after(to, [c, s, -s, c, figure(entity, 10), figure(entity, 20)]),
          after(aside, after([sx, 0, 0, sy, 0, 0], [1, 0, 0, 1, -block.base[0], -block.base[1]])),
        );
        this.#draw(block.entities, placed, layer, depth + 1);
      }
  }
}

const INSERTS_MAX = 20_000;

/** The lines of a DXF. Throws a DrawingRefusal where it is none, or too much. */
export function dxfDrawing(text: string): ReadDrawing {
  const sections = sectionsOf(text);
  const unit = UNITS[Number(sections.header.get('$INSUNITS 70') ?? 0)];
  return new Reader(sections).drawing(unit);
}
