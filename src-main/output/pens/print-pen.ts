import PDFDocument from 'pdfkit';
import { type Face, faceFile, PARTS, systemFont } from './fonts.ts';
import type { PageSize } from './papers.ts';
import { type Candidate, type Stretch, stretchesOf, unsettable } from './stretches.ts';

/** Points of the printer in a millimetre. */
const POINTS = 72 / 25.4;

/** How a text is set: face, size in points, colour. Figures are tabular everywhere. */
export interface TextStyle {
  readonly face: Face;
  readonly size: number;
  readonly colour: string;
}

export interface StrokeStyle {
  readonly width: number;
  readonly colour: string;
  /** mm of line and gap. */
  readonly dash?: readonly number[];
  readonly cap?: 'butt' | 'round' | 'square';
}

export type Align = 'left' | 'right' | 'centre';

/** Flat list of x, y, x, y …, mm from the page's upper left corner. */
export type Points = readonly number[];

interface OpenFont {
  readonly font: { hasGlyphForCodePoint(codePoint: number): boolean };
}

/** The type's spaces are narrow beside tabular figures: this share of the size wider, a figure and its unit stand apart. */
const WIDER_SPACE = 0.055;

/** Points at which widths are measured; a type scales evenly. */
const MEASURED_AT = 100;

const FEATURES: PDFKit.Mixins.OpenTypeFeatures[] = ['tnum', 'kern'];

/** mm of a text's height above its baseline: capitals and figures. */
export const capHeight = (size: number) => (0.7 * size) / POINTS;
/** mm from one line of text to the next. */
export const lineHeight = (size: number) => (1.3 * size) / POINTS;

/** What a text is in the structure of its page, by how it is set: the page's title, a section's heading, or a paragraph. */
function kindOf({ face, size }: TextStyle): 'H1' | 'H2' | 'P' {
  if (face !== 'headingBold') return 'P';
  return size >= 16 && size < 20 ? 'H1' : size >= 11 && size < 16 ? 'H2' : 'P';
}

/** Facts of the file itself. */
export interface FileFacts {
  readonly title: string;
  readonly author: string;
  readonly subject: string;
  readonly date: Date;
}

/** What pages are drawn with: everything in mm from a page's upper left corner, right and down. */
export type PrintPen = Omit<PdfPen, 'end'>;

/** The pen of a PDF. */
export class PdfPen {
  readonly #doc: PDFKit.PDFDocument;
  readonly #chunks: Buffer[] = [];
  readonly #whole: Promise<Uint8Array>;
  readonly #open = new Map<string, boolean>();
  readonly #coverage = new Map<string, OpenFont>();
  readonly #candidatesOf = new Map<Face, readonly Candidate[]>();
  /** mm at one size, by face and text: the same words are asked for over and over while columns are filled. */
  readonly #widths = new Map<string, number>();
  /** The structure of each page, and that of the page at hand. */
  readonly #sections: PDFKit.PDFStructureElement[] = [];
  #section: PDFKit.PDFStructureElement | undefined;
  #inMark = false;
  #system: string | undefined | null = null;

  constructor({ title, author, subject, date }: FileFacts) {
    this.#doc = new PDFDocument({
      autoFirstPage: false,
      bufferPages: true,
      margin: 0,
      info: {
        Title: title,
        Author: author,
        Subject: subject,
        Creator: 'Toeboard',
        Producer: 'Toeboard',
        CreationDate: date,
      },
      lang: 'en',
      displayTitle: true,
      // Tagged, so that whoever has it read aloud hears what stands on it, in order.
      pdfVersion: '1.7',
      tagged: true,
    });
    this.#whole = new Promise((resolve, reject) => {
      this.#doc.on('data', (chunk: Buffer) => this.#chunks.push(chunk));
      this.#doc.on('end', () => resolve(new Uint8Array(Buffer.concat(this.#chunks))));
      this.#doc.on('error', reject);
    });
  }

  addPage(size: PageSize): void {
    this.#doc.addPage({ size: [size.width * POINTS, size.height * POINTS], margin: 0 });
    const section = this.#doc.struct('Sect');
    this.#doc.addStructure(section);
    this.#sections.push(section);
    this.#section = section;
  }

  get pageCount(): number {
    return this.#doc.bufferedPageRange().count;
  }

  /** Goes back to a page, counted from 0. */
  turnTo(page: number): void {
    this.#doc.switchToPage(page);
    this.#section = this.#sections[page];
  }

  end(): Promise<Uint8Array> {
    for (const section of this.#sections) section.end();
    this.#doc.end();
    return this.#whole;
  }

  // Structure (ISO 32000-1, 14.8): each page is a section; words are headings or paragraphs, pictures are figures with a
  // text in their place, and every other line is an artifact.

  /** Marks what `work` draws as a piece of the page's structure, or as an artifact where it is none. */
  #marked(kind: 'H1' | 'H2' | 'P' | 'Figure' | 'Artifact', work: () => void, alt?: string): void {
    // Marks do not nest: what stands in a figure is the figure's.
    if (this.#inMark || !this.#section) {
      work();
      return;
    }
    this.#inMark = true;
    if (kind === 'Artifact') this.#doc.markContent('Artifact', { type: 'Layout' });
    else {
      const content = this.#doc.markStructureContent(kind);
      this.#section.add(this.#doc.struct(kind, alt === undefined ? {} : { alt }, content));
    }
    work();
    this.#doc.endMarkedContent();
    this.#inMark = false;
  }

  /** What `work` draws is one picture; `alt` says what it shows to whoever cannot see it. */
  figure(alt: string, work: () => void): void {
    this.#marked('Figure', work, alt);
  }

  // Type

  #fontFor(face: Face, part: string): string {
    const name = `${face} ${part}`;
    if (!this.#open.has(name)) {
      this.#doc.registerFont(name, faceFile(face, part));
      this.#open.set(name, true);
    }
    return name;
  }

  #has(name: string, codePoint: number): boolean {
    let font = this.#coverage.get(name);
    if (!font) {
      this.#doc.font(name);
      font = (this.#doc as unknown as { _font: OpenFont })._font;
      this.#coverage.set(name, font);
    }
    return font.font.hasGlyphForCodePoint(codePoint);
  }

  #systemHas(codePoint: number): boolean {
    if (this.#system === null) {
      this.#system = systemFont();
      if (this.#system) this.#doc.registerFont('system', this.#system);
    }
    return this.#system !== undefined && this.#has('system', codePoint);
  }

  /** What a face's letters may be set with, the first that has one first. */
  #candidates(face: Face): readonly Candidate[] {
    const known = this.#candidatesOf.get(face);
    if (known) return known;
    const list: Candidate[] = [
      ...PARTS.map((part) => ({
        name: `${face} ${part}`,
        has: (codePoint: number) => this.#has(this.#fontFor(face, part), codePoint),
      })),
      { name: 'system', has: (codePoint) => this.#systemHas(codePoint) },
    ];
    this.#candidatesOf.set(face, list);
    return list;
  }

  /** The letters of a text that no type at hand has. */
  unsettable(text: string): string[] {
    return unsettable(text, this.#candidates('regular'));
  }

  /** A text as stretches of one font each. Most are one; a name may need several. */
  #stretches(text: string, face: Face): Stretch[] {
    if (/^[\u0020-\u007e\u00a0-\u00ff’–″′−]*$/.test(text))
      return text ? [{ font: this.#fontFor(face, 'latin'), text }] : [];
    return stretchesOf(text, this.#candidates(face));
  }

  /** How wide a text is on one line, mm. */
  widthOf(text: string, style: TextStyle): number {
    const key = `${style.face} ${text}`;
    let width = this.#widths.get(key);
    if (width === undefined) {
      width = this.#measured(text, { ...style, size: MEASURED_AT });
      this.#widths.set(key, width);
    }
    return (width * style.size) / MEASURED_AT;
  }

  #measured(text: string, style: TextStyle): number {
    let width = 0;
    for (const stretch of this.#stretches(text, style.face)) {
      this.#doc.font(stretch.font).fontSize(style.size);
      width += this.#doc.widthOfString(stretch.text, { features: FEATURES });
      width += WIDER_SPACE * style.size * (stretch.text.split(' ').length - 1);
    }
    return width / POINTS;
  }

  /** One line of text whose baseline stands at `y`; `x` is its left end, its middle or its right end. */
  text(text: string, x: number, y: number, style: TextStyle, align: Align = 'left'): void {
    if (text.trim() === '') return;
    this.#marked(kindOf(style), () => this.#text(text, x, y, style, align));
  }

  #text(text: string, x: number, y: number, style: TextStyle, align: Align): void {
    let at = x;
    if (align !== 'left') at -= this.widthOf(text, style) * (align === 'right' ? 1 : 0.5);
    for (const stretch of this.#stretches(text, style.face)) {
      this.#doc.font(stretch.font).fontSize(style.size).fillColor(style.colour);
      // The library drops spaces at the front of a line; a stretch after another font's may begin with one.
      const bare = stretch.text.trimStart();
      const lead = stretch.text.slice(0, stretch.text.length - bare.length);
      const indent = this.#doc.widthOfString(lead) + WIDER_SPACE * style.size * lead.length;
      if (bare)
        this.#doc.text(bare, at * POINTS + indent, y * POINTS, {
          lineBreak: false,
          baseline: 'alphabetic',
          features: FEATURES,
          wordSpacing: WIDER_SPACE * style.size,
        });
      at += this.#doc.widthOfString(stretch.text, { features: FEATURES }) / POINTS;
      at += (WIDER_SPACE * style.size * (stretch.text.split(' ').length - 1)) / POINTS;
    }
  }

  /** The same, turned by `degrees` counter-clockwise about its place. */
  turnedText(
    text: string,
    x: number,
    y: number,
    style: TextStyle,
    degrees: number,
    align: Align = 'left',
  ): void {
    this.#doc.save();
    this.#doc.rotate(-degrees, { origin: [x * POINTS, y * POINTS] });
    this.text(text, x, y, style, align);
    this.#doc.restore();
  }

  // Lines

  #path(points: Points, closed: boolean): void {
    this.#doc.moveTo((points[0] as number) * POINTS, (points[1] as number) * POINTS);
    for (let i = 2; i < points.length; i += 2)
      this.#doc.lineTo((points[i] as number) * POINTS, (points[i + 1] as number) * POINTS);
    if (closed) this.#doc.closePath();
  }

  #begin({ width, colour, dash, cap }: StrokeStyle): void {
    this.#doc
      .lineWidth(width * POINTS)
      .strokeColor(colour)
      .lineJoin('round')
      .lineCap(cap ?? 'round');
    if (dash) {
      const [length = 1, ...rest] = dash.map((entry) => entry * POINTS);
      // The library takes line and gap apart, or a whole pattern in their place.
      this.#doc.dash([length, ...rest] as unknown as number, {});
    } else this.#doc.undash();
  }

  stroke(points: Points, style: StrokeStyle, closed = false): void {
    if (points.length < 4) return;
    this.#marked('Artifact', () => {
      this.#begin(style);
      this.#path(points, closed);
      this.#doc.stroke();
    });
  }

  fill(points: Points, colour: string): void {
    if (points.length < 6) return;
    this.#marked('Artifact', () => {
      this.#path(points, true);
      this.#doc.fillColor(colour).fill();
    });
  }

  line(x1: number, y1: number, x2: number, y2: number, style: StrokeStyle): void {
    this.stroke([x1, y1, x2, y2], style);
  }

  rect(x: number, y: number, width: number, height: number, style: StrokeStyle, fill?: string): void {
    const points = [x, y, x + width, y, x + width, y + height, x, y + height];
    if (fill) this.fill(points, fill);
    this.stroke(points, style, true);
  }

  /** A rectangle whose narrow ends are half circles. */
  pill(x: number, y: number, width: number, height: number, style: StrokeStyle, fill: string): void {
    const box = [
      x * POINTS,
      y * POINTS,
      width * POINTS,
      height * POINTS,
      (Math.min(width, height) / 2) * POINTS,
    ] as const;
    this.#marked('Artifact', () => {
      this.#doc
        .roundedRect(...box)
        .fillColor(fill)
        .fill();
      this.#begin(style);
      this.#doc.roundedRect(...box).stroke();
    });
  }

  circle(x: number, y: number, radius: number, style: StrokeStyle | undefined, fill?: string): void {
    this.#marked('Artifact', () => {
      if (fill)
        this.#doc
          .circle(x * POINTS, y * POINTS, radius * POINTS)
          .fillColor(fill)
          .fill();
      if (!style) return;
      this.#begin(style);
      this.#doc.circle(x * POINTS, y * POINTS, radius * POINTS).stroke();
    });
  }

  /** A PNG as large as given, mm; how it lies in its own pixels is the picture's. */
  picture(png: Uint8Array, x: number, y: number, width: number, height: number): void {
    this.#marked('Artifact', () => {
      this.#doc.image(Buffer.from(png), x * POINTS, y * POINTS, {
        width: width * POINTS,
        height: height * POINTS,
      });
    });
  }

  /** Draws only inside an outline, and at a share of full ink, while `work` runs. */
  within(outline: Points | undefined, opacity: number, work: () => void): void {
    this.#doc.save();
    if (outline && outline.length >= 6) {
      this.#path(outline, true);
      this.#doc.clip();
    }
    if (opacity < 1) this.#doc.opacity(opacity);
    work();
    this.#doc.restore();
  }

  /** What `work` draws belongs together under a name; a printed page shows nothing of that. */
  named(_id: string, work: () => void): void {
    work();
  }

  /** Draws smaller about a place of the page, which stays where it is, while `work` runs. */
  smaller(x: number, y: number, factor: number, work: () => void): void {
    this.#doc.save();
    this.#doc.scale(factor, factor, { origin: [x * POINTS, y * POINTS] });
    work();
    this.#doc.restore();
  }
}
