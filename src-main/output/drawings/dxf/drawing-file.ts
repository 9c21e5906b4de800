import {
  BlockFlags,
  type DxfBlock,
  Dxfier,
  DxfLayer,
  type DxfStyle,
  DxfWriter,
  LWPolylineFlags,
  point2d,
  point3d,
  TextHorizontalAlignment,
  Units,
} from '@tarikjabiri/dxf';
import {
  type LengthStyle,
  type LengthUnit,
  MM_PER_INCH,
  toDegrees,
  toRadians,
} from '../../../../shared-math/units/index.ts';
import { isCircular, isWhole, radiusOf, type Spot, type Stroke, strokeRoom } from '../strokes/stroke.ts';
import { type LayerLook, LINE_TYPES, NARROW } from './layers.ts';
import { AlongDimension, LevelDimension } from './placed-dimensions.ts';

/** How a drawing's mm become its own unit, without the digits that no metal has. */
export const inUnit = (unit: LengthUnit) => (mm: number) =>
  Math.round((unit === 'in' ? mm / MM_PER_INCH : mm) * 1e9) / 1e9 + 0;

/** The name of our own dimension style and of the style of its letters. */
const LENGTHS = 'shop-lengths';
const LETTERS = 'lettering';

/** mm on paper, by ISO 129-1 and ISO 3098: letters, strokes at a dimension's ends, gap and overrun of its extension lines. */
export const ON_PAPER = { letters: 2.5, title: 5, stroke: 3, gap: 1, past: 2, above: 1 } as const;

/** A layer with the weight of its lines, which the library leaves out. */
class WeightedLayer extends DxfLayer {
  readonly #weight: number;

  constructor(name: string, { colour, line, width }: LayerLook) {
    super(name, colour, line);
    this.#weight = Math.round(100 * width);
  }

  override dxfy(dx: Dxfier): void {
    const own = new Dxfier();
    super.dxfy(own);
    for (let i = 0; i + 1 < own.lines.length; i += 2) {
      const [code, value] = [own.lines[i] as number, own.lines[i + 1]];
      // The plot style and material of the library's layers name nothing.
      if (code === 390 || code === 347) continue;
      dx.push(code, code === 370 ? this.#weight : value);
    }
  }
}

/** Text as the format takes it: one line, signs beyond ASCII as \U+XXXX, which every reader knows. */
export function dxfText(text: string): string {
  return [...text.replace(/[\p{Cc}\s]+/gu, ' ').trim()]
    .map((letter) => {
      if (letter === '°') return '%%d';
      if (letter === '%') return '%%%';
      if (letter === '^') return '^ ';
      if (letter === '\\') return '/';
      const code = letter.codePointAt(0) as number;
      if (code < 0x7f) return letter;
      return code > 0xffff ? '?' : `\\U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
    })
    .join('');
}

export interface TextLook {
  /** mm of the drawing. */
  readonly height: number;
  readonly degrees?: number;
  readonly align?: 'left' | 'centre' | 'right';
}

const ALIGN = {
  left: undefined,
  centre: TextHorizontalAlignment.Center,
  right: TextHorizontalAlignment.Right,
} as const;

/** How wide a letter is for its height, where a room for it must be kept; readers bring their own type. */
const LETTER_WIDTH = 0.75;

export interface DrawingFacts<Layer extends string> extends LengthStyle {
  readonly layers: Readonly<Record<Layer, LayerLook>>;
  /** What the drawing is divided by where it is printed: letters and dashes are made to be read there. */
  readonly scale: number;
}

/**
 * A DXF being written (R2007 form, model space): strokes, texts and dimensions by layer. All places are mm, right and up;
 * the file's own unit stands in its header, and so do the extents of what was drawn.
 */
export class DrawingFile<Layer extends string> {
  readonly #dxf = new DxfWriter();
  readonly #facts: DrawingFacts<Layer>;
  readonly #size: (mm: number) => number;
  readonly #room = {
    left: Number.POSITIVE_INFINITY,
    bottom: Number.POSITIVE_INFINITY,
    right: Number.NEGATIVE_INFINITY,
    top: Number.NEGATIVE_INFINITY,
  };
  readonly #letters: DxfStyle;
  #blocks = 0;

  constructor(facts: DrawingFacts<Layer>) {
    const { unit, layers, scale } = facts;
    const dxf = this.#dxf;
    this.#facts = facts;
    this.#size = inUnit(unit);
    dxf.setUnits(unit === 'in' ? Units.Inches : Units.Millimeters);
    dxf.setVariable('$MEASUREMENT', { 70: unit === 'in' ? 0 : 1 });
    dxf.setVariable('$LASTSAVEDBY', { 1: 'Toeboard' });
    dxf.setVariable('$LTSCALE', { 40: 1 });
    // Points show as a small cross in a circle.
    dxf.setVariable('$PDMODE', { 70: 34 });
    dxf.setVariable('$PDSIZE', { 40: this.#size(2 * scale) });
    for (const [name, { words, pattern }] of Object.entries(LINE_TYPES))
      dxf.addLType(
        name,
        words,
        pattern.map((widths) => this.#size(widths * NARROW * scale)),
      );
    const { layerTable } = dxf.tables;
    for (const [name, look] of Object.entries<LayerLook>(layers)) {
      const layer = new WeightedLayer(name, look);
      layer.ownerObjectHandle = layerTable.handle;
      layerTable.records.push(layer);
    }
    this.#letters = dxf.tables.addStyle(LETTERS);
    this.#addDimensionStyle();
  }

  /** mm of the drawing that are so many on paper. */
  onPaper(mm: number): number {
    return mm * this.#facts.scale;
  }

  #addDimensionStyle(): void {
    const { unit, fraction, scale } = this.#facts;
    const style = this.#dxf.addDimStyle(LENGTHS);
    style.DIMSCALE = scale;
    style.DIMTXT = this.#size(ON_PAPER.letters);
    style.DIMTSZ = this.#size(ON_PAPER.stroke / 2);
    style.DIMEXO = this.#size(ON_PAPER.gap);
    style.DIMEXE = this.#size(ON_PAPER.past);
    style.DIMGAP = this.#size(ON_PAPER.above);
    // Above the line and along it.
    style.DIMTAD = 1;
    style.DIMTIH = 0;
    style.DIMTOH = 0;
    style.DIMPOST = unit === 'in' ? '<> in' : '<> mm';
    const fractional = unit === 'in' && fraction !== 0;
    style.DIMLUNIT = fractional ? 5 : 2;
    style.DIMDEC = fractional ? Math.log2(fraction) : unit === 'in' ? 3 : 1;
    style.DIMFRAC = 2;
    style.DIMDSEP = 46;
    style.DIMZIN = 8;
    style.DIMTXSTY = this.#letters.handle;
    style.DIMLWD = 100 * NARROW;
    style.DIMLWE = 100 * NARROW;
    this.#dxf.setVariable('$DIMSTYLE', { 2: LENGTHS });
    this.#dxf.setVariable('$TEXTSTYLE', { 7: LETTERS });
  }

  #take(...spots: readonly Spot[]): void {
    const room = this.#room;
    for (const [x, y] of spots) {
      room.left = Math.min(room.left, x);
      room.right = Math.max(room.right, x);
      room.bottom = Math.min(room.bottom, y);
      room.top = Math.max(room.top, y);
    }
  }

  #at = ([x, y]: Spot) => point3d(this.#size(x), this.#size(y), 0);

  /** Whole circles as CIRCLE, stretches of them as ARC, of ellipses as ELLIPSE, straight lines as LINE. */
  stroke(layer: Layer, stroke: Stroke): void {
    const room = strokeRoom(stroke);
    this.#take([room.left, room.bottom], [room.right, room.top]);
    const options = { layerName: layer };
    if (stroke.kind === 'line') {
      this.#dxf.addLine(this.#at(stroke.a), this.#at(stroke.b), options);
      return;
    }
    const { centre, u, v, from, sweep } = stroke;
    const [start, end] = sweep > 0 ? [from, from + sweep] : [from + sweep, from];
    const handed = u[0] * v[1] - u[1] * v[0] > 0;
    // The format counts counter-clockwise from the long half axis.
    const [first, last] = handed ? [start, end] : [-end, -start];
    const turn = Math.atan2(u[1], u[0]);
    if (isCircular(stroke)) {
      if (isWhole(stroke)) this.#dxf.addCircle(this.#at(centre), this.#size(radiusOf(stroke)), options);
      else {
        const degrees = (t: number) => (((toDegrees((t + turn) as never) % 360) + 360) % 360) + 0;
        this.#dxf.addArc(
          this.#at(centre),
          this.#size(radiusOf(stroke)),
          degrees(first),
          degrees(last),
          options,
        );
      }
      return;
    }
    const ratio = Math.hypot(...v) / Math.hypot(...u);
    const [low, high] = isWhole(stroke) ? [0, 2 * Math.PI] : [first, last];
    this.#dxf.addEllipse(this.#at(centre), this.#at(u), ratio, low, high, options);
  }

  /** A line through places, straight from one to the next; closed, it ends where it began. */
  polyline(layer: Layer, spots: readonly Spot[], closed: boolean, bulges: readonly number[] = []): void {
    this.#take(...spots);
    this.#dxf.addLWPolyline(
      spots.map(([x, y], i) => ({
        point: point2d(this.#size(x), this.#size(y)),
        ...(bulges[i] ? { bulge: bulges[i] } : {}),
      })),
      { layerName: layer, flags: closed ? LWPolylineFlags.Closed : LWPolylineFlags.None },
    );
  }

  point(layer: Layer, [x, y]: Spot): void {
    this.#take([x, y]);
    this.#dxf.addPoint(this.#size(x), this.#size(y), 0, { layerName: layer });
  }

  text(layer: Layer, words: string, spot: Spot, look: TextLook): void {
    this.#write(this.#dxf.modelSpace, layer, words, spot, look);
  }

  #write(block: DxfBlock, layer: Layer, words: string, spot: Spot, look: TextLook): void {
    const { height, degrees = 0, align = 'left' } = look;
    const text = dxfText(words);
    const long = LETTER_WIDTH * height * text.length;
    const lead = align === 'left' ? 0 : align === 'centre' ? -long / 2 : -long;
    const [c, s] = [Math.cos(toRadians(degrees)), Math.sin(toRadians(degrees))];
    const corner = (along: number, up: number): Spot => [
      spot[0] + along * c - up * s,
      spot[1] + along * s + up * c,
    ];
    this.#take(corner(lead, 0), corner(lead + long, 0), corner(lead, height), corner(lead + long, height));
    const anchor = ALIGN[align];
    const entity = block.addText(this.#at(spot), this.#size(height), text, {
      layerName: layer,
      rotation: degrees,
      ...(anchor === undefined ? {} : { horizontalAlignment: anchor, secondAlignmentPoint: this.#at(spot) }),
    });
    entity.textStyle = LETTERS;
  }

  /**
   * A DIMENSION between two places with its line through a third, measured along the straight line between them or, with
   * `along`, along x or y alone; and the block with what it looks like, so that a reader that draws no dimensions shows it.
   *
   * @param words What stands on it, `<>` for the figure, which a reader works out from the places.
   * @param figure The same figure as it is written on the sheet.
   */
  dimension(
    layer: Layer,
    from: Spot,
    to: Spot,
    through: Spot,
    words: string,
    figure: string,
    along?: 'x' | 'y',
  ): void {
    const way: Spot =
      along === 'x'
        ? [1, 0]
        : along === 'y'
          ? [0, 1]
          : [(to[0] - from[0]) / gap(from, to), (to[1] - from[1]) / gap(from, to)];
    const aside: Spot = [-way[1], way[0]];
    const on = (spot: Spot): Spot => {
      const off = (through[0] - spot[0]) * aside[0] + (through[1] - spot[1]) * aside[1];
      return [spot[0] + off * aside[0], spot[1] + off * aside[1]];
    };
    const [p, q] = [on(from), on(to)];
    this.#blocks += 1;
    const name = `*D${this.#blocks}`;
    const block = this.#dxf.blocks.addBlock(name, this.#dxf.document.objects, false);
    block.flags = BlockFlags.AnonymousBlock;
    const line = (a: Spot, b: Spot) => {
      this.#take(a, b);
      block.addLine(this.#at(a), this.#at(b), { layerName: layer });
    };
    for (const [spot, end] of [
      [from, p],
      [to, q],
    ] as const) {
      const off = (end[0] - spot[0]) * aside[0] + (end[1] - spot[1]) * aside[1];
      const sign = Math.sign(off);
      const at = (by: number): Spot => [spot[0] + by * aside[0], spot[1] + by * aside[1]];
      if (Math.abs(off) > this.onPaper(ON_PAPER.gap))
        line(at(sign * this.onPaper(ON_PAPER.gap)), at(off + sign * this.onPaper(ON_PAPER.past)));
    }
    line(p, q);
    const half = this.onPaper(ON_PAPER.stroke / 2);
    for (const [x, y] of [p, q])
      line(
        [x - (half * (way[0] + aside[0])) / Math.SQRT2, y - (half * (way[1] + aside[1])) / Math.SQRT2],
        [x + (half * (way[0] + aside[0])) / Math.SQRT2, y + (half * (way[1] + aside[1])) / Math.SQRT2],
      );
    // Read from below or from the right (ISO 129-1).
    const turned = way[0] < -1e-9 || (Math.abs(way[0]) <= 1e-9 && way[1] < 0);
    const degrees = toDegrees(Math.atan2(turned ? -way[1] : way[1], turned ? -way[0] : way[0]) as never);
    const up = this.onPaper(ON_PAPER.above) * (turned ? -1 : 1);
    const height = this.onPaper(ON_PAPER.letters);
    const said = words.replace('<>', figure);
    // What is longer than its line stands beyond the line's end.
    const fits = LETTER_WIDTH * height * said.length < gap(p, q);
    const [first, last] = turned ? [q, p] : [p, q];
    const ahead = turned ? -1 : 1;
    const beyond: Spot = [last[0] + ahead * half * 1.6 * way[0], last[1] + ahead * half * 1.6 * way[1]];
    const [x, y] = fits ? [(first[0] + last[0]) / 2, (first[1] + last[1]) / 2] : beyond;
    const middle: Spot = [x + up * aside[0], y + up * aside[1]];
    this.#write(block, layer, said, middle, { height, degrees, align: fits ? 'centre' : 'left' });
    const common = {
      blockName: name,
      definitionPoint: this.#at(q),
      middlePoint: this.#at(middle),
      text: dxfText(words),
      styleName: LENGTHS,
      layerName: layer,
      ActualMeasurement: this.#size(gap(p, q)),
    };
    const ends = [this.#at(from), this.#at(to)] as const;
    this.#dxf.modelSpace.addEntity(
      along === undefined
        ? new AlongDimension(...ends, common)
        : new LevelDimension(...ends, { ...common, angle: along === 'x' ? 0 : 90 }),
    );
  }

  /** Lines in space, mm of the car's own frame. */
  lineInSpace(layer: Layer, from: SpacePoint, to: SpacePoint): void {
    this.#take([from[0], from[1]], [to[0], to[1]]);
    this.#dxf.addLine(this.#inSpace(from), this.#inSpace(to), { layerName: layer });
  }

  pointInSpace(layer: Layer, at: SpacePoint, name: string, height: number): void {
    const { x, y, z } = this.#inSpace(at);
    this.#take([at[0], at[1]]);
    this.#dxf.addPoint(x, y, z, { layerName: layer });
    const text = this.#dxf.addText({ x, y, z }, this.#size(height), dxfText(name), { layerName: layer });
    text.textStyle = LETTERS;
  }

  #inSpace = ([x, y, z]: SpacePoint) => point3d(this.#size(x), this.#size(y), this.#size(z));

  /** The whole file. */
  toString(): string {
    const { left, bottom, right, top } = this.#room;
    const corner = (x: number, y: number) =>
      left <= right ? { 10: this.#size(x), 20: this.#size(y), 30: 0 } : { 10: 0, 20: 0, 30: 0 };
    this.#dxf.setVariable('$EXTMIN', corner(left, bottom));
    this.#dxf.setVariable('$EXTMAX', corner(right, top));
    this.#dxf.setVariable('$LIMMIN', { 10: corner(left, bottom)[10], 20: corner(left, bottom)[20] });
    this.#dxf.setVariable('$LIMMAX', { 10: corner(right, top)[10], 20: corner(right, top)[20] });
    return this.#dxf.stringify();
  }
}

type SpacePoint = readonly [number, number, number];

const gap = (a: Spot, b: Spot) => Math.hypot(a[0] - b[0], a[1] - b[1]);
