import { lineHeight, type PrintPen, type TextStyle } from './print-pen.ts';

/** The space inside a figure, and between it and its unit, at which no line is broken: "24 15/16 in". */
const HELD = /(\d) (?=\d+\/\d|in\b|mm\b|ft\b|m\b|lb\b|N\b|turns\b)/g;
const HOLD = '\u2060';

/** A text broken into lines no wider than `width` mm: at spaces, and inside a word that alone is wider. */
export function brokenInto(pen: PrintPen, text: string, style: TextStyle, width: number): string[] {
  const lines: string[] = [];
  for (const paragraph of text.split('\n')) {
    let line = '';
    let used = 0;
    const gap = pen.widthOf(' ', style);
    for (const held of paragraph
      .replace(HELD, `$1${HOLD}`)
      .split(/[ \t\n\r]+/)
      .filter(Boolean)) {
      const word = held.replaceAll(HOLD, ' ');
      // Word by word, so that each is measured once for all the lines that it may stand in.
      const wide = pen.widthOf(word, style);
      if (line ? used + gap + wide <= width : wide <= width) {
        used += (line ? gap : 0) + wide;
        line = line ? `${line} ${word}` : word;
        continue;
      }
      if (line) lines.push(line);
      line = wide <= width ? word : '';
      used = wide;
      if (line) continue;
      for (const letter of word) {
        if (line && pen.widthOf(line + letter, style) > width) {
          lines.push(line);
          line = '';
        }
        line += letter;
      }
      used = pen.widthOf(line, style);
    }
    lines.push(line);
  }
  return lines;
}

/** A text on one line no wider than `width` mm, its end given up for an ellipsis where it is longer. */
export function shortened(pen: PrintPen, text: string, style: TextStyle, width: number): string {
  const plain = text.replace(/[\p{Cc}\s]+/gu, ' ').trim();
  if (pen.widthOf(plain, style) <= width) return plain;
  const letters = [...plain];
  let least = 0;
  let most = letters.length;
  while (least < most) {
    const middle = Math.ceil((least + most) / 2);
    if (pen.widthOf(`${letters.slice(0, middle).join('').trimEnd()}…`, style) <= width) least = middle;
    else most = middle - 1;
  }
  return `${letters.slice(0, least).join('').trimEnd()}…`;
}

/** Writes lines one below the other, the first one's top at `y`; answers where the next would begin. mm. */
export function writeLines(
  pen: PrintPen,
  lines: readonly string[],
  x: number,
  y: number,
  style: TextStyle,
  align: 'left' | 'right' | 'centre' = 'left',
): number {
  const step = lineHeight(style.size);
  lines.forEach((line, i) => {
    pen.text(line, x, y + (i + 0.77) * step, style, align);
  });
  return y + lines.length * step;
}
