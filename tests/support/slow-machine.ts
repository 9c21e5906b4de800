import type { BrowserContext, Page } from 'playwright-core';

/**
 * How many times slower than this machine the one is that browser tests imagine; 1 if they imagine none. What reads the page
 * before a slower machine has brought it fails there.
 */
export const SLOWNESS = Number(process.env['TOEBOARD_SLOW'] ?? 1);
if (!(SLOWNESS >= 1)) throw new Error('TOEBOARD_SLOW is by how many times the machine is slower: 1 or more');

/** Milliseconds by which a file of script, an answer of the host and an answer of a worker come later for each time slower. */
const LATER = { script: 120, host: 30, worker: 40 } as const;
const later = (what: keyof typeof LATER) => LATER[what] * SLOWNESS;
const passed = (ms: number) => new Promise<void>((done) => setTimeout(done, ms));

/** Makes what comes to the context's pages from elsewhere come late, in the order in which it was sent. */
export async function holdBack(context: BrowserContext): Promise<void> {
  if (SLOWNESS === 1) return;
  const held: readonly [RegExp, keyof typeof LATER][] = [
    [/\/assets\/[^/]*\.m?js(\?.*)?$/, 'script'],
    [/\/rpc$/, 'host'],
  ];
  for (const [address, what] of held)
    await context.route(address, async (route) => {
      await passed(later(what));
      // The page may be gone by now.
      await route.fallback().catch(() => undefined);
    });
  await context.addInitScript((ms) => {
    window.Worker = class extends Worker {
      constructor(...given: ConstructorParameters<typeof Worker>) {
        super(...given);
        // The first to hear of each answer; the one that it sends on is not the browser's own.
        this.addEventListener('message', (event) => {
          if (!event.isTrusted) return;
          event.stopImmediatePropagation();
          const { data, ports } = event;
          setTimeout(() => this.dispatchEvent(new MessageEvent('message', { data, ports: [...ports] })), ms);
        });
      }
    };
  }, later('worker'));
}

/** Slows the processor down for the page's own thread; its workers run as fast as ever. */
export async function slowDown(page: Page): Promise<void> {
  if (SLOWNESS === 1) return;
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWNESS });
}
