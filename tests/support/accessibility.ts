import { createRequire } from 'node:module';
import type { BrowserContext, Page } from 'playwright-core';
import { piecesThere } from './frames.ts';

const CHECKER = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

/** Puts the checker into every page that is loaded from now on: the pages' own policy would not let it in later. */
export function bringChecker(context: BrowserContext): Promise<void> {
  return context.addInitScript({ path: CHECKER }).then(() => undefined);
}

/** The serious faults of a page for those who cannot see it, one line each; on request those of every weight. */
export async function violations(page: Page, ofEveryWeight = false): Promise<string[]> {
  await piecesThere(page);
  return page.evaluate(async (all) => {
    // biome-ignore lint/suspicious/noExplicitAny: put there by the checker's script
    const found = await (globalThis as any).axe.run(document, { resultTypes: ['violations'] });
    return found.violations
      .filter((each: { impact: string }) => all || each.impact === 'serious' || each.impact === 'critical')
      .flatMap((each: { id: string; nodes: { html: string }[] }) =>
        each.nodes.map((node) => `${each.id}: ${node.html.slice(0, 160)}`),
      );
  }, ofEveryWeight);
}
