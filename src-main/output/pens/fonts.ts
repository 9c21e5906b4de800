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

/** The family comes in parts by script. */
const OWN_PARTS = ['latin', 'latin-ext', 'vietnamese'] as const;

/** For letters that the sheet's own type does not have: a family of many scripts, in two weights, part by part. */
const FALLBACKS: Readonly<Record<string, readonly [family: string, part: string]>> = {
  greek: ['noto-sans', 'greek'],
  'greek-ext': ['noto-sans', 'greek-ext'],
  cyrillic: ['noto-sans', 'cyrillic'],
  'cyrillic-ext': ['noto-sans', 'cyrillic-ext'],
  hebrew: ['noto-sans-hebrew', 'hebrew'],
  arabic: ['noto-sans-arabic', 'arabic'],
  armenian: ['noto-sans-armenian', 'armenian'],
  georgian: ['noto-sans-georgian', 'georgian'],
  thai: ['noto-sans-thai', 'thai'],
  devanagari: ['noto-sans', 'devanagari'],
  'more latin': ['noto-sans', 'latin-ext'],
};

/** The parts of a face; a letter is taken from the first that has it. */
export const PARTS: readonly string[] = [...OWN_PARTS, ...Object.keys(FALLBACKS)];

// Not called "require": the bundler brings one of its own.
const packages = createRequire(import.meta.url);

/** Fonts as they were unpacked: a program prints more than once. */
const unpacked = new Map<string, Buffer>();

/** A part of a face, as a plain OpenType font. */
export function faceFile(face: Face, part: string): Buffer {
  const [own, ownStyle] = FILES[face];
  const [family, script] = FALLBACKS[part] ?? [own, part];
  const style = FALLBACKS[part] ? `${face === 'regular' || face === 'italic' ? 400 : 600}-normal` : ownStyle;
  const name = `@fontsource/${family}/files/${family}-${script}-${style}.woff`;
  const known = unpacked.get(name);
  if (known) return known;
  const font = unpackWoff(readFileSync(packages.resolve(name)));
  unpacked.set(name, font);
  return font;
}

/** Where systems keep a font of many scripts, for letters that none of the program's own type has. */
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

/** The system's font of many scripts, or undefined if there is none. */
export function systemFont(): string | undefined {
  return SYSTEM_FONTS.find((path) => existsSync(path));
}
