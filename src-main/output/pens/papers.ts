export type Paper = 'letter' | 'a4';

export const PAPER_NAMES: readonly Paper[] = ['letter', 'a4'];

/** A rectangle on a page, mm from the page's upper left corner. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface PageSize {
  readonly width: number;
  readonly height: number;
}

/** Upright, mm: ISO 216 A4, and ANSI A (8 1/2 by 11 in). */
const UPRIGHT: Record<Paper, PageSize> = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
};

export const PAPER_WORDS: Record<Paper, string> = { a4: 'A4', letter: 'US letter' };

/** A paper's size as it lies, mm. */
export function pageSize(paper: Paper, lying: boolean): PageSize {
  const { width, height } = UPRIGHT[paper];
  return lying ? { width: height, height: width } : { width, height };
}

/** An area less a margin all around, or less one across and one up and down. */
export function inset(area: Area, by: number, down = by): Area {
  return { x: area.x + by, y: area.y + down, width: area.width - 2 * by, height: area.height - 2 * down };
}
