import type { Locator } from 'playwright-core';

/**
 * Clicks by px of a picture that a canvas shows at another size. Words above it and buttons below it move it: a person looks where
 * it is before each click.
 */
export function photoClicks(canvas: Locator, image: { readonly width: number; readonly height: number }) {
  return async (x: number, y: number): Promise<void> => {
    await canvas.scrollIntoViewIfNeeded();
    const box = await canvas.boundingBox();
    if (!box) throw new Error('the photo does not show');
    const at = { x: box.x + (x / image.width) * box.width, y: box.y + (y / image.height) * box.height };
    await canvas.page().mouse.click(at.x, at.y);
  };
}
