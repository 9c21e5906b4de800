import type { Page } from 'playwright-core';

/** All that stands on the page in words: visible text of single elements, names of controls, choices of lists. */
export function labelsOnScreen(page: Page): Promise<string[]> {
  return page.evaluate(() => {
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
    return [...found];
  });
}
