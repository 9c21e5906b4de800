/** Characters that XML 1.0 (W3C, 5th ed., production 2) does not allow in a document at all. */
const FORBIDDEN = /[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu;

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
};

/** A text for XML, in content and in attributes alike. */
export function xmlText(text: string): string {
  return text
    .toWellFormed()
    .replace(FORBIDDEN, '')
    .replace(/[&<>"]/g, (sign) => ESCAPES[sign] as string);
}

/** A number to a thousandth, as short as it can be written. */
export function short(value: number): string {
  return String(Number(value.toFixed(3)) + 0);
}

/** Attributes of an element; those that are undefined are left out. */
export function attributes(entries: Readonly<Record<string, string | number | undefined>>): string {
  return Object.entries(entries)
    .filter(([, value]) => value !== undefined)
    .map(
      ([name, value]) => ` ${name}="${typeof value === 'number' ? short(value) : xmlText(value as string)}"`,
    )
    .join('');
}
