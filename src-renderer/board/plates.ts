import type { Rect } from './labels.ts';

/**
 * What stands over the drawing as elements of the page, px of the board: whatever carries `data-plate`. Asks the page where they
 * are, which it has to lay out for that: only for words that look for room.
 */
export function platesOver(paper: HTMLElement): Rect[] {
  const at = paper.getBoundingClientRect();
  const plates = paper.closest('[data-board]')?.querySelectorAll('[data-plate]') ?? [];
  return [...plates].map((plate) => {
    const { x, y, width, height } = plate.getBoundingClientRect();
    return { x: x - at.x, y: y - at.y, width, height };
  });
}
