import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { unpackWoff } from './woff.ts';

// The type that the program ships, as files: found where the packages are, from source and from the built program alike.

/** Faces of the sheet: Barlow for text, Barlow Condensed for headings and big figures. */
export type Face = 'regular' | 'medium' | 'bold' | 'italic' | 'heading' | 'headingBold';

const FILES: Record<Face, readonly [family: string, style: string]> = {
  regular: ['barlow', '400-normal'],
  medium: ['barlow', '500-normal'],
  bold: ['barlow', '600-normal'],
  italic: ['barlow', '400-italic'],
  heading: ['barlow-condensed', '500-normal'],
  headingBold: ['barlow-condensed', '600-normal'],
};

export const FACES = Object.keys(FILES) as readonly Face[];

/** The family comes in parts by script; a letter is taken from the first part that has it. */
export const PARTS = ['latin', 'latin-ext', 'vietnamese'] as const;
export type Part = (typeof PARTS)[number];

// Not called "require": the bundler brings one of its own.
const packages = createRequire(import.meta.url);

/** Fonts as they were unpacked: a program prints more than once. */
const unpacked = new Map<string, Buffer>();

/** A part of a face, as a plain OpenType font. */
export function faceFile(face: Face, part: Part): Buffer {
  const [family, style] = FILES[face];
  const name = `@fontsource/${family}/files/${family}-${part}-${style}.woff`;
  const known = unpacked.get(name);
  if (known) return known;
  const font = unpackWoff(readFileSync(packages.resolve(name)));
  unpacked.set(name, font);
  return font;
}

/** Where systems keep a font of many scripts, for names in letters that the sheet's own type does not have. */
const SYSTEM_FONTS = [
  '/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf',
  '/usr/share/fonts/TTF/DejaVuSans.ttf',
  '/usr/share/fonts/dejavu-sans-fonts/DejaVuSans.ttf',
  '/usr/share/fonts/truetype/liberation/LiberationSans-Regular.ttf',
  '/usr/share/fonts/liberation-sans/LiberationSans-Regular.ttf',
  '/usr/share/fonts/truetype/noto/NotoSans-Regular.ttf',
  '/System/Library/Fonts/Supplemental/Arial Unicode.ttf',
  '/System/Library/Fonts/Supplemental/Arial.ttf',
  join(process.env['WINDIR'] ?? 'C:\\Windows', 'Fonts', 'arial.ttf'),
];

/** The system's font of many scripts, or nothing where there is none. */
export function systemFont(): string | undefined {
  return SYSTEM_FONTS.find((path) => existsSync(path));
}

/** Greek in Latin letters, letter by letter (ISO 843), for a machine that has no Greek type. */
const GREEK: Readonly<Record<string, string>> = {
  α: 'a',
  β: 'v',
  γ: 'g',
  δ: 'd',
  ε: 'e',
  ζ: 'z',
  η: 'i',
  θ: 'th',
  ι: 'i',
  κ: 'k',
  λ: 'l',
  μ: 'm',
  ν: 'n',
  ξ: 'x',
  ο: 'o',
  π: 'p',
  ρ: 'r',
  σ: 's',
  ς: 's',
  τ: 't',
  υ: 'y',
  φ: 'f',
  χ: 'ch',
  ψ: 'ps',
  ω: 'o',
};

/** A letter in plainer ones, where no type has it: without its accent, Greek in Latin letters, else a question mark. */
export function plainer(letter: string): string {
  const base = letter.normalize('NFD').replace(/\p{M}/gu, '');
  const latin = GREEK[base.toLowerCase()];
  if (latin) return base === base.toLowerCase() ? latin : latin.charAt(0).toUpperCase() + latin.slice(1);
  return /^[\u0020-\u007e]+$/.test(base) ? base : '?';
}
