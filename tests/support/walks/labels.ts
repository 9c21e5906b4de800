import type { Page } from 'playwright-core';
import { SLOWNESS } from '../slow-machine.ts';

/** ms. What has not come by then is not there, on the slowest of machines. */
const PATIENCE = 15_000 * SLOWNESS;

/**
 * Runs in the page. Returns all that stands there in words (visible text of single elements, names of controls, choices of
 * lists), or undefined if one of those that are wanted is not among it.
 */
function labelsWith(wanted: readonly string[]): string[] | undefined {
  const found = new Set<string>();
  const add = (text: string | null | undefined) => {
    const plain = text?.replaceAll(/\s+/g, ' ').trim();
    if (plain) found.add(plain);
  };
  for (const element of document.querySelectorAll('body *')) {
    if (element.getClientRects().length === 0 && element.tagName !== 'OPTION') continue;
    add(element.getAttribute('aria-label'));
    add(
      [...element.childNodes]
        .map((node) => (node.nodeType === Node.TEXT_NODE ? node.textContent : ''))
        .join(' '),
    );
    if (element.childElementCount < 4) add(element.textContent);
  }
  return wanted.every((label) => found.has(label)) ? [...found] : undefined;
}

export async function labelsOnScreen(page: Page): Promise<ReadonlySet<string>> {
  return new Set(await page.evaluate(labelsWith, []));
}

/**
 * Waits as a person does until every label that is wanted stands on the page: a part of it may be on its way. Returns those
 * that have not come in time.
 */
export async function labelsNotComing(page: Page, wanted: readonly string[]): Promise<string[]> {
  try {
    await page.waitForFunction(labelsWith, wanted, { polling: 100, timeout: PATIENCE });
    return [];
  } catch {
    const there = await labelsOnScreen(page);
    return wanted.filter((label) => !there.has(label));
  }
}
