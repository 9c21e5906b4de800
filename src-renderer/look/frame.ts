/*
 * What the page keeps for its next start, read by `public/at-start.js` before the first paint, and the frame that is painted then.
 */

/** Whether the page stood on the dark ground last: `night` or `day`. */
export const GROUND_KEY = 'toeboard-ground';
/** What stood in it last: `board` with nothing folded away, or `sheet`. */
export const FRAME_KEY = 'toeboard-frame';

/** Keeps a word for the next start; a page that may keep nothing begins on paper and without a board. */
export function keepForStart(key: typeof GROUND_KEY | typeof FRAME_KEY, word: string): void {
  try {
    localStorage.setItem(key, word);
  } catch {
    // As above.
  }
}

/** Takes the frame away, once what it stood for is there. */
export function dropFrame(): void {
  document.getElementById('frame')?.remove();
}
