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
import { pathInto } from './svg-path.ts';

// SVG, of which only lines are taken: nothing of it is run, fetched or shown. Elements are read one after another by their
// tags; what stands within one that draws nothing itself is passed over.

/** Elements whose insides are no lines of the drawing. */
const PASSED_OVER = new Set([
  'defs',
  'symbol',
  'clipPath',
  'mask',
  'pattern',
  'marker',
  'style',
  'script',
  'text',
  'foreignObject',
  'metadata',
  'title',
  'desc',
  'filter',
]);
const WORDS_FOR_LEFT: Readonly<Record<string, string>> = {
  text: 'texts',
  image: 'pictures',
  use: 'copies of parts',
  script: 'scripts',
  foreignObject: 'pieces of web pages',
};

/** mm of an SVG's units of length (CSS: 96 px to the inch). */
const LENGTHS: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
};

const NUMBERS = /[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/g;

/** A tag: its name without its prefix, what stands in it, and whether it opens, closes or does both. */
interface Tag {
  readonly name: string;
  readonly facts: string;
  readonly closing: boolean;
  readonly empty: boolean;
}

/** Where what begins at `at` is over, with its last sign; the text's end if it never is. */
function pastEnd(text: string, at: number, end: string): number {
  const found = text.indexOf(end, at);
  return found < 0 ? text.length : found + end.length;
}

/** The tags of a text in their order, each sign looked at once: a hostile text takes no longer than any other. */
function* tagsOf(text: string): Generator<Tag> {
  let at = text.indexOf('<');
  while (at >= 0 && at < text.length) {
    if (text.startsWith('<!--', at)) at = pastEnd(text, at, '-->');
    else if (text.startsWith('<![CDATA[', at)) at = pastEnd(text, at, ']]>');
    else if (text[at + 1] === '?' || text[at + 1] === '!') at = pastEnd(text, at, '>');
    else {
      let end = at + 1;
      let quote = '';
      for (; end < text.length; end += 1) {
        const sign = text[end] as string;
        if (quote) quote = sign === quote ? '' : quote;
        else if (sign === '"' || sign === "'") quote = sign;
        else if (sign === '>') break;
      }
      const closing = text[at + 1] === '/';
      const inside = text.slice(at + (closing ? 2 : 1), end);
      const empty = inside.endsWith('/');
      const name = /^[\w:.-]{1,80}/.exec(inside)?.[0] ?? '';
      const facts = inside.slice(name.length, empty ? -1 : undefined);
      yield { name: name.slice(name.lastIndexOf(':') + 1), facts, closing, empty };
      at = end + 1;
    }
    at = text.indexOf('<', at);
  }
}

/** What a tag says of itself: each name with the text in quotes after it. */
function attributesOf(facts: string): Map<string, string> {
  const found = new Map<string, string>();
  let at = 0;
  for (;;) {
    const equals = facts.indexOf('=', at);
    if (equals < 0) return found;
    let open = equals + 1;
    while (/\s/.test(facts[open] ?? 'x')) open += 1;
    const quote = facts[open];
    if (quote !== '"' && quote !== "'") {
      at = equals + 1;
      continue;
    }
    const end = facts.indexOf(quote, open + 1);
    if (end < 0) return found;
    const key = facts.slice(Math.max(at, equals - 120), equals).trim();
    found.set(key.slice(key.search(/\S+$/)), facts.slice(open + 1, end));
    at = end + 1;
  }
}

/** Signs of a transform that are read: more is no transform that anybody wrote. */
const TRANSFORM_MAX = 2000;

const numbersIn = (text: string | undefined): number[] => (text?.match(NUMBERS) ?? []).map(Number);

function transformOf(text: string | undefined): Transform {
  let all = UNMOVED;
  for (const [, kind, inside] of (text ?? '').slice(0, TRANSFORM_MAX).matchAll(/(\w+)\s*\(([^)]*)\)/g)) {
    const [a = 0, b, c, d, e, f] = numbersIn(inside);
    const angle = toRadians(a);
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const one: Transform | undefined =
      kind === 'matrix' && f !== undefined
        ? [a, b as number, c as number, d as number, e as number, f]
        : kind === 'translate'
          ? [1, 0, 0, 1, a, b ?? 0]
          : kind === 'scale'
            ? [a, 0, 0, b ?? a, 0, 0]
            : kind === 'rotate'
              ? after(
                  [1, 0, 0, 1, b ?? 0, c ?? 0],
                  after([cos, sin, -sin, cos, 0, 0], [1, 0, 0, 1, -(b ?? 0), -(c ?? 0)]),
                )
              : kind === 'skewX'
                ? [1, 0, Math.tan(angle), 1, 0, 0]
                : kind === 'skewY'
                  ? [1, Math.tan(angle), 0, 1, 0, 0]
                  : undefined;
    if (one) all = after(all, one);
  }
  return all;
}

interface Open {
  readonly name: string;
  readonly to: Transform;
  readonly layer: string;
  readonly passed: boolean;
  readonly hidden: boolean;
}

type Attributes = ReadonlyMap<string, string>;

function drawElement(
  out: DrawingCollector,
  name: string,
  own: Attributes,
  layer: string,
  to: Transform,
): void {
  const [x, y, width, height, r, rx, ry, cx, cy, x1, y1, x2, y2] = (
    ['x', 'y', 'width', 'height', 'r', 'rx', 'ry', 'cx', 'cy', 'x1', 'y1', 'x2', 'y2'] as const
  ).map((key) => numbersIn(own.get(key))[0] ?? 0) as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  switch (name) {
    case 'line':
      out.line(layer, to, [x1, y1, x2, y2], false);
      return;
    case 'polyline':
    case 'polygon': {
      const points = numbersIn(own.get('points'));
      out.line(layer, to, points.slice(0, points.length & ~1), name === 'polygon');
      return;
    }
    case 'rect':
      if (width > 0 && height > 0)
        out.line(layer, to, [x, y, x + width, y, x + width, y + height, x, y + height], true);
      return;
    case 'circle':
      if (r > 0) out.arc(layer, to, [cx, cy, r, 0, 0, r], 0, 2 * Math.PI);
      return;
    case 'ellipse':
      if (rx > 0 && ry > 0) out.arc(layer, to, [cx, cy, rx, 0, 0, ry], 0, 2 * Math.PI);
      return;
    case 'path':
      pathInto(own.get('d') ?? '', {
        line: (points, closed, curved) => out.line(layer, to, points, closed, curved),
        arc: (conic, from, sweep) => out.arc(layer, to, conic, from, sweep),
      });
      return;
    default:
      if (WORDS_FOR_LEFT[name]) out.leave(WORDS_FOR_LEFT[name]);
  }
}

/** mm of the drawing's own unit, from the size that it gives itself; undefined if that is in pixels. */
function unitOf(own: Attributes): number | undefined {
  const [, figure, word] = /^\s*([\d.eE+-]+)\s*([a-z]*)\s*$/.exec(own.get('width') ?? '') ?? [];
  const mm = LENGTHS[word ?? ''];
  if (mm === undefined || figure === undefined) return undefined;
  const [, , wide] = numbersIn(own.get('viewBox'));
  const width = Number(figure) * mm;
  // Without a viewBox a unit is a pixel, whatever the width is written in.
  const unit = wide && wide > 0 ? width / wide : PIXEL;
  return Number.isFinite(unit) && unit > 0 ? unit : undefined;
}

/** mm of a pixel of CSS. */
export const PIXEL = 25.4 / 96;

/** The lines of an SVG, its y turned upward. Throws a DrawingRefusal where it is none, or too much. */
export function svgDrawing(text: string): ReadDrawing {
  if (/<!ENTITY/i.test(text))
    throw new DrawingRefusal('it declares entities of its own, which are not taken');
  const out = new DrawingCollector();
  const open: Open[] = [];
  let unit: number | undefined;
  let seen = false;
  for (const { name, facts, closing, empty } of tagsOf(text)) {
    if (name === '') continue;
    if (closing) {
      // Back to the one that it closes; one that closes nothing is passed over.
      for (let i = open.length - 1; i >= 0; i -= 1)
        if (open[i]?.name === name) {
          open.length = i;
          break;
        }
      continue;
    }
    const own = attributesOf(facts);
    const parent = open.at(-1);
    if (name === 'svg' && !seen) {
      seen = true;
      unit = unitOf(own);
    }
    if (!seen) continue;
    const style = own.get('style') ?? '';
    const hidden = own.get('display') === 'none' || /display\s*:\s*none/.test(style);
    const passed = (parent?.passed ?? false) || PASSED_OVER.has(name) || hidden;
    const to = after(parent?.to ?? [1, 0, 0, -1, 0, 0], transformOf(own.get('transform')));
    const label = [...own].find(([key]) => key.endsWith(':label'))?.[1] ?? own.get('id');
    const layer = name === 'g' && label && (parent?.layer ?? '') === '' ? label : (parent?.layer ?? '');
    if (!parent?.passed && (!passed || WORDS_FOR_LEFT[name]) && !hidden)
      drawElement(out, name, own, layer || 'drawing', to);
    if (!empty) {
      if (open.length > 40 * DEPTH_MAX)
        throw new DrawingRefusal('its parts stand within one another too deep');
      open.push({ name, to, layer, passed, hidden });
    }
  }
  if (!seen) throw new DrawingRefusal('it is no SVG');
  return out.drawing(unit);
}
