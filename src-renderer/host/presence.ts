import * as doubt from './doubt.ts';

/*
 * A program without a window of its own cannot see whether its page is still open. The page says that it is here, and as
 * it goes that it goes, so that the program need not stay for ever.
 */

/** ms */
const EVERY = 60_000;
const page = crypto.randomUUID();

async function report(token: string, here: boolean): Promise<void> {
  try {
    if (doubt.stands() && (!here || !(await doubt.settle(token)))) return;
    await fetch('/here', {
      method: 'POST',
      headers: { 'content-type': 'application/json', authorization: `Bearer ${token}` },
      body: JSON.stringify({ page, here }),
      keepalive: true,
    });
  } catch {
    doubt.raise();
  }
}

/** Keeps the program informed that this page is open, until it is left. */
export function showPresence(token: string): void {
  const here = () => void report(token, true);
  here();
  setInterval(here, EVERY);
  window.addEventListener('pagehide', () => void report(token, false));
  // Come back to: out of the browser's memory of pages, or out of a sleep in which no timer ran.
  window.addEventListener('pageshow', ({ persisted }) => persisted && here());
  document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && here());
}
