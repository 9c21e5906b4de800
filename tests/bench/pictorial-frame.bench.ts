import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { handleOf } from '../support/board-pointer.ts';
import { openDemonstration, pointButton, useBrowser } from '../support/browser-page.ts';

const openBoard = useBrowser();
/** Steps of the pointer in a wave, and pairs of waves that are compared. */
const STEPS = 40;
const PAIRS = 7;

/**
 * What the pictorial adds to the script of a frame, by the browser's own account of the page's thread. The same drag is made
 * with it and without it, turn about in one run: the page's callbacks of a frame are looked at, and the one that clears the
 * pictorial's canvas is let through or held back.
 */
interface Watch {
  held: boolean;
  paint: FrameRequestCallback | undefined;
  waiting: FrameRequestCallback | undefined;
}
declare global {
  interface Window {
    pictorialWatch?: Watch;
  }
}

function watchFrames(): void {
  const watch: Watch = { held: false, paint: undefined, waiting: undefined };
  window.pictorialWatch = watch;
  const plain = window.requestAnimationFrame.bind(window);
  let clears: HTMLCanvasElement | undefined;
  const clear = CanvasRenderingContext2D.prototype.clearRect;
  CanvasRenderingContext2D.prototype.clearRect = function (...box) {
    clears = this.canvas as HTMLCanvasElement;
    return clear.apply(this, box);
  };
  window.requestAnimationFrame = (callback) =>
    plain((now) => {
      if (watch.held && callback === watch.paint) {
        watch.waiting = callback;
        return;
      }
      clears = undefined;
      callback(now);
      if (clears && (clears as HTMLCanvasElement).closest('[aria-label="Pictorial"]')) watch.paint = callback;
    });
}

const hold = (page: Page, held: boolean) =>
  page.evaluate((holds) => {
    const watch = window.pictorialWatch as Watch;
    if (!watch.paint) throw new Error('the pictorial was never painted');
    watch.held = holds;
    if (!holds && watch.waiting) requestAnimationFrame(watch.waiting);
    watch.waiting = undefined;
  }, held);

test.each(['Side steer, box too low', 'Cross steer on parallel leaves'])(
  'what the pictorial adds to a drag step on %s',
  async (name) => {
    const { page, context } = await openBoard({ size: { width: 1440, height: 900 } });
    await openDemonstration(page, name);
    await context.addInitScript(watchFrames);
    await page.reload();
    await pointButton(page, 'Pitman ball').waitFor();
    const start = await handleOf(page, 'side', 'steering.box.pitmanBall');
    const devtools = await context.newCDPSession(page);
    await devtools.send('Performance.enable', { timeDomain: 'threadTicks' });
    const script = async () => {
      const { metrics } = await devtools.send('Performance.getMetrics');
      return metrics.find((entry) => entry.name === 'ScriptDuration')?.value ?? 0;
    };
    const frame = () => page.evaluate(() => new Promise((done) => requestAnimationFrame(done)));
    /** ms of script for each step of the pointer. */
    const wave = async (from: { x: number; y: number }, wide: number) => {
      const before = await script();
      for (let step = 0; step < STEPS; step += 1) {
        await page.mouse.move(from.x + wide * Math.sin(step / 4.5), from.y + 20 * Math.sin(step / 3.5));
        await frame();
      }
      return ((await script()) - before) * (1000 / STEPS);
    };
    /** What the second of two waves takes more than the first, which go turn about: its median, and those of both. */
    const compared = async (without: () => Promise<number>, beside: () => Promise<number>) => {
      const pairs: [number, number][] = [];
      for (let pair = 0; pair < PAIRS; pair += 1) pairs.push([await without(), await beside()]);
      const median = (of: readonly number[]) => of.toSorted((a, b) => a - b)[PAIRS >> 1] as number;
      const more = pairs.map(([a, b]) => b - a).toSorted((a, b) => a - b);
      return {
        more: median(more),
        of: [median(pairs.map(([a]) => a)), median(pairs.map(([, b]) => b))] as const,
        range: [more[0] as number, more[PAIRS - 1] as number] as const,
      };
    };
    await page.mouse.move(start.x, start.y);
    await page.mouse.down();
    await wave(start, 25);
    const dragged = await compared(
      async () => {
        await hold(page, true);
        return wave(start, 25);
      },
      async () => {
        await hold(page, false);
        return wave(start, 25);
      },
    );
    await page.keyboard.press('Escape');
    await page.mouse.up();
    const picture = await page.getByRole('application', { name: 'Pictorial' }).boundingBox();
    const spot = { x: (picture?.x ?? 0) + 30, y: (picture?.y ?? 0) + 60 };
    const turned = await compared(
      async () => {
        await page.mouse.move(spot.x, spot.y);
        return wave(spot, 12);
      },
      async () => {
        await page.mouse.move(spot.x, spot.y);
        await page.mouse.down();
        const taken = await wave(spot, 120);
        await page.mouse.up();
        return taken;
      },
    );
    const said = ({ more, of, range }: typeof dragged) =>
      `${of[1].toFixed(2)} ms of script beside ${of[0].toFixed(2)}, ${more.toFixed(2)} more ` +
      `(${range.map((ms) => ms.toFixed(2)).join(' to ')} in ${PAIRS} pairs)`;
    process.stdout.write(
      `${name}: a drag step with the pictorial and without ${said(dragged)}; ` +
        `a step of turning it and of the pointer over it ${said(turned)}\n`,
    );
    expect(dragged.more).toBeLessThan(dragged.of[0]);
  },
);
