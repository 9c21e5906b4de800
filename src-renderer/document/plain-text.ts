/** Lower case and without accents, so that finding needs neither. */
export function plainText(text: string): string {
  return text.normalize('NFD').replaceAll(/\p{M}/gu, '').toLowerCase();
}
