/// <reference path="./fontkit.d.ts" />
import { readFileSync } from 'node:fs';
import { create } from 'fontkit';
import { type Face, faceFile, PARTS, systemFont } from './fonts.ts';
import { type Candidate, stretchesOf, unsettable } from './stretches.ts';

/** A letter's place in a line, from its left end, in parts of the type's size; `glyph` is its outline's id. */
export interface SetGlyph {
  readonly glyph: string;
  readonly at: number;
}

/** A line of text set in type; lengths in parts of the type's size. */
export interface SetLine {
  readonly glyphs: readonly SetGlyph[];
  readonly width: number;
}

interface Font {
  readonly unitsPerEm: number;
  hasGlyphForCodePoint(codePoint: number): boolean;
  layout(
    text: string,
    features: readonly string[],
  ): {
    readonly advanceWidth: number;
    readonly glyphs: readonly { readonly id: number; readonly path: { toSVG(): string } }[];
    readonly positions: readonly {
      readonly xAdvance: number;
      readonly xOffset: number;
      readonly yOffset: number;
    }[];
  };
}

/** As the PDF sets it: tabular figures, kerned, its narrow spaces widened. */
const FEATURES = ['tnum', 'kern'];
const WIDER_SPACE = 0.055;

/** The shipped type as outlines: the same faces, fallbacks and widths as in the PDF. Kept for the program's life. */
class TypeCase {
  readonly #fonts = new Map<string, Font>();
  readonly #lines = new Map<string, SetLine>();
  readonly #outlines = new Map<string, string>();
  #system: Font | undefined | null = null;
  readonly #candidatesOf = new Map<
    Face,
    readonly (Candidate & { readonly font: () => Font | undefined })[]
  >();

  #font(name: string, file: () => Uint8Array): Font {
    let font = this.#fonts.get(name);
    if (!font) {
      font = create(file()) as Font;
      this.#fonts.set(name, font);
    }
    return font;
  }

  #systemType(): Font | undefined {
    if (this.#system === null) {
      const path = systemFont();
      this.#system = path ? this.#font('system', () => readFileSync(path)) : undefined;
    }
    return this.#system;
  }

  /** What a face's letters may be set with, the first that has one first. */
  #candidates(face: Face): readonly (Candidate & { readonly font: () => Font | undefined })[] {
    const known = this.#candidatesOf.get(face);
    if (known) return known;
    const list = [
      ...PARTS.map((part) => {
        const name = `${face} ${part}`;
        return { name, font: (): Font | undefined => this.#font(name, () => faceFile(face, part)) };
      }),
      { name: 'system', font: () => this.#systemType() },
    ].map((one) => ({
      ...one,
      has: (codePoint: number) => one.font()?.hasGlyphForCodePoint(codePoint) ?? false,
    }));
    this.#candidatesOf.set(face, list);
    return list;
  }

  /** The letters of a text that no type at hand has. */
  unsettable(text: string): string[] {
    return unsettable(text, this.#candidates('regular'));
  }

  #stretches(text: string, face: Face): { name: string; font: Font; text: string }[] {
    const candidates = this.#candidates(face);
    return stretchesOf(text, candidates).map((stretch) => ({
      name: stretch.font,
      font: candidates.find(({ name }) => name === stretch.font)?.font() as Font,
      text: stretch.text,
    }));
  }

  /** Sets a line of text. */
  set(text: string, face: Face): SetLine {
    const key = `${face} ${text}`;
    const known = this.#lines.get(key);
    if (known) return known;
    const glyphs: SetGlyph[] = [];
    let at = 0;
    for (const { name, font, text: words } of this.#stretches(text, face)) {
      const run = font.layout(words, FEATURES);
      // Glyphs may stand for several letters, but no ligature holds a space: spaces are counted as they come.
      const space = font.layout(' ', []).glyphs[0]?.id;
      run.glyphs.forEach((glyph, i) => {
        const { xAdvance, xOffset } = run.positions[i] as (typeof run.positions)[number];
        const id = `${name.replaceAll(' ', '-')}-${glyph.id}`;
        if (!this.#outlines.has(id)) {
          const scale = 1 / font.unitsPerEm;
          this.#outlines.set(id, scaledPath(glyph.path.toSVG(), scale));
        }
        if (this.#outlines.get(id)) glyphs.push({ glyph: id, at: at + xOffset / font.unitsPerEm });
        at += xAdvance / font.unitsPerEm + (glyph.id === space ? WIDER_SPACE : 0);
      });
    }
    const line = { glyphs, width: at };
    // Sheets say much the same; a long run of others must not pile up.
    if (this.#lines.size > 20_000) this.#lines.clear();
    this.#lines.set(key, line);
    return line;
  }

  /** A letter's outline as an SVG path, size 1, upright with y down. */
  outline(glyph: string): string {
    return this.#outlines.get(glyph) ?? '';
  }
}

/** A path in font units, y up, as one of size 1, y down. */
function scaledPath(path: string, scale: number): string {
  let isY = false;
  return path.replace(/[A-Za-z]|-?\d+(?:\.\d+)?(?:e-?\d+)?/gi, (token) => {
    if (/^[A-Za-z]$/.test(token)) {
      isY = false;
      return token;
    }
    const value = Number(token) * scale * (isY ? -1 : 1);
    isY = !isY;
    return String(Number(value.toFixed(4)) + 0);
  });
}

export const TYPE = new TypeCase();
