/** Beginnings that a spreadsheet takes for a formula, and would work out. */
const FORMULA = /^[=+\-@\t\r]/;

/**
 * A text as one cell of a CSV (RFC 4180). A text that a spreadsheet would take for a formula is led by an apostrophe;
 * numbers are written as they are and never come here.
 */
export function textCell(text: string): string {
  const plain = FORMULA.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}
