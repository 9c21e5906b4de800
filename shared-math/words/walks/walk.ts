/** A picture of the board as it stands after a step, and what of the page it shows. */
export interface WalkPicture {
  /** Name of its file, without ending. */
  readonly file: string;
  /** What it shows, to whoever cannot see it. */
  readonly alt: string;
  /** The part of the page: all of it, the board alone, the right column, the strip below, or the place's own sheet. */
  readonly of: 'page' | 'board' | 'column' | 'strip' | 'sheet';
}

export interface WalkStep {
  /** What to do, in a sentence or three. What stands on the screen is in “these marks”, letter by letter. */
  readonly words: string;
  readonly picture?: WalkPicture;
}

/** A short way through the board, from what a person wants to where it is done. */
export interface Walk {
  readonly id: string;
  readonly title: string;
  /** What it is for, and what is in hand at its end. */
  readonly about: string;
  readonly steps: readonly WalkStep[];
}

/** Width and height of the window that the pictures are taken in, px. */
export const WALK_WINDOW = { width: 1280, height: 720 } as const;

/** The labels that a step names. */
export function labelsIn(words: string): string[] {
  return [...words.matchAll(/“([^”]+)”/g)].map(([, label]) => label as string);
}
