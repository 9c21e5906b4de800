/** A moment as it stands in file names, sorted by name and legal on every system: 2026-03-09-140501 (UTC). */
export function dateForFileName(time: number): string {
  return new Date(time).toISOString().slice(0, 19).replace('T', '-').replaceAll(':', '');
}
