import { expect, test } from 'vitest';
import { handleOf } from '../support/board-pointer.ts';
import { openDemonstration, useBrowser } from '../support/browser-page.ts';

const openBoard = useBrowser();
const STEPS = 150;
/** ms at 60 frames a second. */
const FRAME = 1000 / 60;

/**
 * Not a timing of ours but the browser's own account: script and task time between two readings, divided by the steps
 * of the pointer between them. Beside it the same pointer moved over the board without a button pressed, which is what
 * the page costs anyway.
 */
test.each([
  ['Side steer, box too low', 'Layout', 'alone'],
  ['Cross steer, bar beside the drag link', 'Layout', 'alone'],
  ['Side steer, box too low', 'Turn', 'alone'],
  ['Side steer, box too low', 'Layout', 'compared'],
  ['Side steer, box too low', 'Turn', 'compared'],
] as const)('a drag step on %s in %s, %s, as a share of a frame', async (name, place, beside) => {
  const { page } = await openBoard({ size: { width: 1440, height: 900 } });
  await openDemonstration(page, name);
  if (beside === 'compared') {
    await page.getByRole('tab', { name: 'Compare' }).click();
    await page.getByRole('checkbox', { name: 'Side steer, box at the cowl' }).check();
    await page.locator('[data-compared="Worst bump steer"]').waitFor();
  }
  await page.getByRole('button', { name: place, exact: true }).click();
  const start = await handleOf(page, 'side', 'steering.box.pitmanBall');
  const devtools = await page.context().newCDPSession(page);
  // The thread's own time: what else the machine does is not counted.
  await devtools.send('Performance.enable', { timeDomain: 'threadTicks' });
  const readings = async () => {
    const { metrics } = await devtools.send('Performance.getMetrics');
    const read = (metric: string) => metrics.find((entry) => entry.name === metric)?.value ?? 0;
    return { script: read('ScriptDuration'), task: read('TaskDuration') };
  };
  const frame = () => page.evaluate(() => new Promise((done) => requestAnimationFrame(done)));
  const wave = async (from: { x: number; y: number }) => {
    const before = await readings();
    for (let step = 0; step < STEPS; step += 1) {
      await page.mouse.move(from.x + 25 * Math.sin(step / 9), from.y + 20 * Math.sin(step / 7));
      await frame();
    }
    const after = await readings();
    return {
      script: ((after.script - before.script) * 1000) / STEPS,
      task: ((after.task - before.task) * 1000) / STEPS,
    };
  };
  await page.mouse.move(start.x, start.y);
  await page.mouse.down();
  await wave(start);
  const dragged = await wave(start);
  await page.keyboard.press('Escape');
  await page.mouse.up();
  const idle = await wave({ x: start.x - 60, y: start.y + 120 });
  process.stdout.write(
    `drag step, ${name}, ${place}, ${beside}: script ${dragged.script.toFixed(2)} ms, ${((100 * dragged.script) / FRAME).toFixed(0)} per cent of a frame; ` +
      `all of the page's work ${dragged.task.toFixed(2)} ms; the pointer alone ${idle.script.toFixed(2)} ms of script, ${(dragged.script / idle.script).toFixed(1)} times\n`,
  );
  expect(dragged.script).toBeGreaterThan(0);
});
