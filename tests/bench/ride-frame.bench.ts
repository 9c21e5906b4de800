import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { handleOf } from '../support/board-pointer.ts';
import { openDemonstration, useBrowser } from '../support/browser-page.ts';

const openBoard = useBrowser();
/** ms that each is watched for. */
const WATCHED = 2000;

/**
 * The browser's own account, as for a drag step: script and task time between two readings, divided by the frames that
 * were drawn between them. The page's own thread alone; springs and tyres are stepped in a worker beside it.
 */
async function watched(page: Page, what: string): Promise<number> {
  const devtools = await page.context().newCDPSession(page);
  // The thread's own time, not the wall's: what else the machine does meanwhile is not counted.
  await devtools.send('Performance.enable', { timeDomain: 'threadTicks' });
  const readings = async () => {
    const { metrics } = await devtools.send('Performance.getMetrics');
    const read = (metric: string) => metrics.find((entry) => entry.name === metric)?.value ?? 0;
    return { script: read('ScriptDuration'), task: read('TaskDuration') };
  };
  const before = await readings();
  const { frames, ms } = await page.evaluate(
    (most) =>
      new Promise<{ frames: number; ms: number }>((done) => {
        let frames = 0;
        const begun = performance.now();
        const count = () => {
          frames += 1;
          const ms = performance.now() - begun;
          if (ms < most) requestAnimationFrame(count);
          else done({ frames, ms });
        };
        requestAnimationFrame(count);
      }),
    WATCHED,
  );
  const after = await readings();
  const script = ((after.script - before.script) * 1000) / frames;
  const task = ((after.task - before.task) * 1000) / frames;
  process.stdout.write(
    `${what}: ${((1000 * frames) / ms).toFixed(0)} frames a second; script ${script.toFixed(2)} ms a frame, all of the page's work ${task.toFixed(2)} ms\n`,
  );
  await devtools.detach();
  return script;
}

test.each(['alone', 'compared'] as const)('a frame of a drive, %s', async (beside) => {
  const { page } = await openBoard({ size: { width: 1440, height: 900 } });
  await openDemonstration(page, 'Side steer, box too low');
  await page.getByRole('button', { name: 'Road', exact: true }).click();
  await page.locator('[data-peak="Steers by itself, at most"] td').first().waitFor();
  if (beside === 'compared') {
    await page.getByRole('checkbox', { name: 'Side steer, box at the cowl' }).check();
    await page.locator('[data-peak="Steers by itself, at most"] td').nth(1).waitFor();
  }
  await page.getByRole('button', { name: /^1\/4/ }).click();
  await page.getByRole('button', { name: 'Drive', exact: true }).click();
  expect(await watched(page, `a frame of a drive, ${beside}`)).toBeGreaterThan(0);
});

test.each(['Layout', 'Turn', 'Road'] as const)('a frame with the axle in the hand, in %s', async (place) => {
  const { page } = await openBoard({ size: { width: 1440, height: 900 } });
  await openDemonstration(page, 'Side steer, box too low');
  await page.getByRole('button', { name: place, exact: true }).click();
  const { x, y } = await handleOf(page, 'front', 'axle.left.wheelCentre');
  await page.mouse.move(x + 6, y + 40);
  await page.mouse.down();
  await page.mouse.move(x + 6, y + 20, { steps: 4 });
  expect(await watched(page, `a frame with the axle in the hand, ${place}`)).toBeGreaterThan(0);
  await page.mouse.up();
});
