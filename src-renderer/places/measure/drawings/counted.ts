/** "1 line", "240 lines". */
export const countWords = (count: number, what: string): string =>
  `${count.toLocaleString('en')} ${what}${count === 1 ? '' : 's'}`;
