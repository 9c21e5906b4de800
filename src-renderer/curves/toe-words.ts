/** Toe as a length: finer than other lengths, as it is read against sixteenths. */
export function toeWords(value: number, unit: 'in' | 'mm'): string {
  const text = value.toFixed(unit === 'in' ? 3 : 1);
  return `${Number(text) === 0 ? (0).toFixed(unit === 'in' ? 3 : 1) : text} ${unit}`;
}
