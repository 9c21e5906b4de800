/** mm. Less than this is none: far below what anybody builds to or measures. */
const NONE = 0.005;

/** The size of a gap in words; undefined if there is none. One that the reader's own smallest step would round away is "under" it. */
export function gapSize(size: number, fineLength: (mm: number) => string): string | undefined {
  if (Math.abs(size) < NONE) return undefined;
  const nothing = fineLength(0);
  const words = fineLength(Math.abs(size));
  if (words !== nothing) return words;
  // The first size that is not rounded away reads as the smallest step itself.
  let shown = NONE;
  while (fineLength(shown) === nothing) shown *= 1.25;
  return `under ${fineLength(shown)}`;
}
