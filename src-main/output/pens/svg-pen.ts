import type { Face } from './fonts.ts';
import type { PageSize } from './papers.ts';
import type { Align, Points, PrintPen, StrokeStyle, TextStyle } from './print-pen.ts';
import { TYPE } from './svg-type.ts';
import { attributes, short, xmlText } from './xml.ts';

/** mm of a point of type. */
const POINT = 25.4 / 72;

const FAMILIES: Record<Face, readonly [family: string, weight: number, style?: 'italic']> = {
  regular: ['Barlow', 400],
  medium: ['Barlow', 500],
  bold: ['Barlow', 600],
  italic: ['Barlow', 400, 'italic'],
  heading: ['Barlow Condensed', 500],
  headingBold: ['Barlow Condensed', 600],
};

const ANCHORS: Record<Align, string | undefined> = { left: undefined, centre: 'middle', right: 'end' };

interface Page {
  readonly size: PageSize;
  readonly marks: string[];
  /** Letters whose outlines the page needs. */
  readonly glyphs: Set<string>;
}

/** How letters are written: as text, which stays text wherever it is opened, or as outlines, which look the same everywhere. */
export type Lettering = 'text' | 'outlines';

/**
 * The pen of SVG pages: everything in mm from a page's upper left corner. A page is as large as it says, and one unit
 * of its viewBox is a millimetre.
 */
export class SvgPen implements PrintPen {
  readonly #lettering: Lettering;
  readonly #pages: Page[] = [];
  #page: Page | undefined;
  #clips = 0;
  readonly #ids = new Map<string, number>();

  constructor(lettering: Lettering) {
    this.#lettering = lettering;
  }

  /** The letters of a text that no type at hand has. */
  unsettable(text: string): string[] {
    return TYPE.unsettable(text);
  }

  addPage(size: PageSize): void {
    this.#page = { size, marks: [], glyphs: new Set() };
    this.#pages.push(this.#page);
  }

  get pageCount(): number {
    return this.#pages.length;
  }

  turnTo(page: number): void {
    this.#page = this.#pages[page];
  }

  sizeOf(page: number): PageSize {
    return (this.#pages[page] as Page).size;
  }

  /** The page as a whole SVG document. */
  document(page: number, title: string, about = ''): string {
    const { size, marks, glyphs } = this.#pages[page] as Page;
    const defs = [...glyphs].map((id) => `<path${attributes({ id, d: TYPE.outline(id) })}/>`).join('');
    const head = attributes({
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${short(size.width)}mm`,
      height: `${short(size.height)}mm`,
      viewBox: `0 0 ${short(size.width)} ${short(size.height)}`,
      fill: 'none',
      'font-variant': this.#lettering === 'text' ? 'tabular-nums' : undefined,
    });
    return [
      '<?xml version="1.0" encoding="UTF-8"?>',
      `<svg${head}>`,
      `<title>${xmlText(title)}</title>`,
      ...(about ? [`<desc>${xmlText(about)}</desc>`] : []),
      ...(defs ? [`<defs>${defs}</defs>`] : []),
      `<rect${attributes({ width: size.width, height: size.height, fill: '#ffffff' })}/>`,
      ...marks,
      '</svg>',
      '',
    ].join('\n');
  }

  #mark(mark: string): void {
    this.#page?.marks.push(mark);
  }

  // Type

  widthOf(text: string, style: TextStyle): number {
    return TYPE.set(text, style.face).width * style.size * POINT;
  }

  text(text: string, x: number, y: number, style: TextStyle, align: Align = 'left'): void {
    this.#text(text, x, y, style, align, 0);
  }

  turnedText(
    text: string,
    x: number,
    y: number,
    style: TextStyle,
    degrees: number,
    align: Align = 'left',
  ): void {
    this.#text(text, x, y, style, align, degrees);
  }

  #text(text: string, x: number, y: number, style: TextStyle, align: Align, degrees: number): void {
    if (!text.trim()) return;
    const size = style.size * POINT;
    if (this.#lettering === 'text') {
      const [family, weight, slant] = FAMILIES[style.face];
      const words = attributes({
        x,
        y,
        'font-family': `${family}, sans-serif`,
        'font-weight': weight,
        'font-style': slant,
        'font-size': size,
        'word-spacing': 0.055 * size,
        'text-anchor': ANCHORS[align],
        fill: style.colour,
        transform: degrees ? `rotate(${short(-degrees)} ${short(x)} ${short(y)})` : undefined,
      });
      this.#mark(`<text${words}>${xmlText(text)}</text>`);
      return;
    }
    const line = TYPE.set(text, style.face);
    const lead = align === 'left' ? 0 : -line.width * (align === 'right' ? 1 : 0.5);
    const turn = degrees ? ` rotate(${short(-degrees)})` : '';
    const letters = line.glyphs.map(({ glyph, at }) => {
      this.#page?.glyphs.add(glyph);
      return `<use href="#${glyph}" x="${short(at + lead)}"/>`;
    });
    this.#mark(
      `<g fill="${style.colour}" transform="translate(${short(x)} ${short(y)})${turn} scale(${size.toFixed(5)})">${letters.join('')}</g>`,
    );
  }

  // Lines

  #ink({ width, colour, dash, cap }: StrokeStyle) {
    return {
      stroke: colour,
      'stroke-width': width,
      'stroke-linejoin': 'round',
      'stroke-linecap': cap ?? 'round',
      'stroke-dasharray': dash?.map(short).join(' '),
    };
  }

  stroke(points: Points, style: StrokeStyle, closed = false): void {
    if (points.length < 4) return;
    this.#mark(`<path${attributes({ d: pathOf(points, closed), ...this.#ink(style) })}/>`);
  }

  fill(points: Points, colour: string): void {
    if (points.length < 6) return;
    this.#mark(`<path${attributes({ d: pathOf(points, true), fill: colour })}/>`);
  }

  line(x1: number, y1: number, x2: number, y2: number, style: StrokeStyle): void {
    this.stroke([x1, y1, x2, y2], style);
  }

  rect(x: number, y: number, width: number, height: number, style: StrokeStyle, fill?: string): void {
    this.#mark(`<rect${attributes({ x, y, width, height, fill, ...this.#ink(style) })}/>`);
  }

  pill(x: number, y: number, width: number, height: number, style: StrokeStyle, fill: string): void {
    this.#mark(
      `<rect${attributes({ x, y, width, height, rx: Math.min(width, height) / 2, fill, ...this.#ink(style) })}/>`,
    );
  }

  circle(x: number, y: number, radius: number, style: StrokeStyle | undefined, fill?: string): void {
    this.#mark(
      `<circle${attributes({ cx: x, cy: y, r: radius, fill, ...(style ? this.#ink(style) : {}) })}/>`,
    );
  }

  picture(png: Uint8Array, x: number, y: number, width: number, height: number): void {
    const href = `data:image/png;base64,${Buffer.from(png).toString('base64')}`;
    this.#mark(`<image${attributes({ x, y, width, height, href })}/>`);
  }

  figure(alt: string, work: () => void): void {
    this.#group({ role: 'img', 'aria-label': alt }, work);
  }

  within(outline: Points | undefined, opacity: number, work: () => void): void {
    let clip: string | undefined;
    if (outline && outline.length >= 6) {
      this.#clips += 1;
      const id = `clip-${this.#clips}`;
      this.#mark(`<clipPath id="${id}"><path d="${pathOf(outline, true)}"/></clipPath>`);
      clip = `url(#${id})`;
    }
    this.#group({ 'clip-path': clip, opacity: opacity < 1 ? opacity : undefined }, work);
  }

  /** A group with an id; one that is there already has a number behind it. */
  named(id: string, work: () => void): void {
    const count = (this.#ids.get(id) ?? 0) + 1;
    this.#ids.set(id, count);
    this.#group({ id: count === 1 ? id : `${id}-${count}` }, work);
  }

  smaller(x: number, y: number, factor: number, work: () => void): void {
    const stays = `translate(${short(x)} ${short(y)}) scale(${factor}) translate(${short(-x)} ${short(-y)})`;
    this.#group({ transform: stays }, work);
  }

  #group(facts: Parameters<typeof attributes>[0], work: () => void): void {
    this.#mark(`<g${attributes(facts)}>`);
    work();
    this.#mark('</g>');
  }
}

function pathOf(points: Points, closed: boolean): string {
  let path = '';
  for (let i = 0; i < points.length; i += 2)
    path += `${i === 0 ? 'M' : 'L'}${short(points[i] as number)} ${short(points[i + 1] as number)}`;
  return closed ? `${path}Z` : path;
}
