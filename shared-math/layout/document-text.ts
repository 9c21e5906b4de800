/** A list of numbers as the JSON writer spreads it: one number a line. Line breaks never occur inside JSON strings. */
const SPREAD_NUMBERS = /\[\n\s+(-?[\d.eE+-]+(?:,\n\s+-?[\d.eE+-]+)*)\n\s+\]/g;

/** The text of a file: JSON for reading, indented, each point on one line. */
export function documentText(document: object): string {
  const spread = JSON.stringify(document, null, 2);
  return `${spread.replace(SPREAD_NUMBERS, (_, numbers: string) => `[${numbers.replace(/,\n\s+/g, ', ')}]`)}\n`;
}
