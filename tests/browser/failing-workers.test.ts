import { expect, test } from 'vitest';
import { bringChecker, violations } from '../support/accessibility.ts';
import { pointButton, useBrowser, withSample } from '../support/browser-page.ts';
import { sampleLayout } from '../support/host-sample.ts';

const openBoard = useBrowser();

test('where every worker fails, small steps and the arrangements’ gaps say so instead of waiting for ever', async () => {
  const { page, context } = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
  await bringChecker(context);
  await context.addInitScript(() => {
    window.Worker = class {
      onerror: ((event: Event) => void) | undefined;
      postMessage() {
        queueMicrotask(() => this.onerror?.(new Event('error')));
      }
      terminate() {}
    } as unknown as typeof Worker;
  });
  await page.reload();
  await pointButton(page, 'Pitman ball').click();
  await page
    .getByText('What a small step does could not be worked out: the work beside the page failed twice.')
    .waitFor();
  expect(await violations(page)).toEqual([]);
  await page.keyboard.press('a');
  await page.getByText('not measured: the work beside the page failed twice').first().waitFor();
  await expect.poll(() => page.getByText('measuring…').count()).toBe(0);
});
