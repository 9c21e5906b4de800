import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { type Browser, type BrowserContext, chromium, type Locator, type Page } from 'playwright-core';
import { afterAll, beforeAll, inject, onTestFinished } from 'vitest';
import type { LayoutDocument } from '../../shared-math/layout/index.ts';
import { type Loopback, startLoopback } from '../../src-main/hosts/loopback/start-loopback.ts';
import { openStore, type Store } from '../../src-main/store/index.ts';
import { holdBack, SLOWNESS, slowDown } from './slow-machine.ts';

const RENDERER = resolve(import.meta.dirname, '../../out/renderer');

/** Milliseconds for anything to show up. What takes longer on the slowest of machines is not there. */
const PATIENCE = 15_000 * SLOWNESS;

/** A board in a browser window, with the host and the store behind it. */
export interface OpenBoard {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly dataFolder: string;
  readonly host: Loopback;
  /** One more window onto the same store; on request one of another browser, which windows of this one do not hear. */
  readonly anotherWindow: (options?: { readonly ofAnotherBrowser?: boolean }) => Promise<Page>;
  /** What the page has complained about so far; a test that expects a complaint empties it. */
  readonly complaints: string[];
}

export interface BoardOptions {
  readonly size?: { readonly width: number; readonly height: number };
  /** Lets the test put things into the store before the page opens it. */
  readonly prepare?: (store: Store) => void;
  readonly dataFolder?: string;
  /** Where the page's files are; the program's own build if absent. */
  readonly rendererFolder?: string;
  /** The page of the right column that the window showed last; the list of points, the board's mirror, if absent. */
  readonly column?: 'verdict' | 'points' | 'car';
}

function listen(page: Page, complaints: string[]): void {
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.stack ?? error.message));
}

/** The run's one browser, as a test file reaches it; what the file opened in it is closed at its end. */
export function connectBrowser(): () => Browser {
  let browser: Browser;
  beforeAll(async () => {
    browser = await chromium.connect(inject('browserEndpoint'));
  });
  afterAll(async () => {
    await browser?.close();
  });
  return () => browser;
}

/**
 * The browser for a test file. Gives the function that opens a board for the present test: a fresh data folder, a
 * host of its own, a page. After the test all of it is gone, and a page that complained on its console fails it.
 */
export function useBrowser(): (options?: BoardOptions) => Promise<OpenBoard> {
  const browser = connectBrowser();
  beforeAll(() => {
    if (!existsSync(join(RENDERER, 'index.html')))
      throw new Error('out/renderer is not built; the browser tests build it at their start');
  });

  return async ({
    size = { width: 1440, height: 900 },
    prepare,
    dataFolder,
    rendererFolder = RENDERER,
    column = 'points',
  } = {}) => {
    const folder = dataFolder ?? mkdtempSync(join(tmpdir(), 'toeboard-test-'));
    if (prepare) {
      const store = openStore({ folder });
      prepare(store);
      store.close();
    }
    const host = await startLoopback({ dataFolder: folder, rendererFolder });
    // A language of its own: a bare machine's "C" reaches pages as one that number formatting refuses.
    const context = await browser().newContext({ viewport: size, locale: 'en-GB' });
    context.setDefaultTimeout(PATIENCE);
    await holdBack(context);
    await context.addInitScript((page) => {
      if (!sessionStorage.getItem('toeboard-column')) sessionStorage.setItem('toeboard-column', page);
    }, column);
    const complaints: string[] = [];

    const anotherWindow = async ({ ofAnotherBrowser = false } = {}) => {
      const page = await context.newPage();
      await slowDown(page);
      if (ofAnotherBrowser)
        await page.addInitScript(() => {
          class Unheard extends EventTarget {
            postMessage() {}
          }
          Object.defineProperty(window, 'BroadcastChannel', { value: Unheard });
        });
      listen(page, complaints);
      await page.goto(host.newAddress());
      await page
        .locator('#app > *')
        .first()
        .waitFor()
        .catch(() => {
          throw new Error(`The page stayed empty:\n${complaints.join('\n')}`);
        });
      return page;
    };
    onTestFinished(async () => {
      await context.close();
      await host.close();
      if (!dataFolder) rmSync(folder, { recursive: true, force: true });
      if (complaints.length > 0) throw new Error(`The page complained:\n${complaints.join('\n')}`);
    });
    return { page: await anotherWindow(), context, dataFolder: folder, host, anotherWindow, complaints };
  };
}

/** The button of a point in the list: the board's mirror for keyboard, screen reader and tests. */
export function pointButton(page: Page, name: string): Locator {
  return page.getByRole('button', { name, exact: true });
}

/** Opens the demonstration from the first start's sheet, as a person does, and waits for the board. */
export async function takeDemonstration(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Add the demonstration shop' }).click();
  await pointButton(page, 'Pitman ball').waitFor();
}

/** Opens one of the demonstration's layouts by its name, from the first start's sheet. */
export async function openDemonstration(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name }).click();
  await pointButton(page, 'Pitman ball').waitFor();
}

/** Waits until the page says that everything is in the store. */
export async function saved(page: Page): Promise<void> {
  await page.locator('[data-save-state="saved"]').waitFor();
}

/** What the store itself holds, read beside the page: the documents of all shown variants of a name. */
export function storedDocuments(board: OpenBoard, name: string): LayoutDocument[] {
  const store = openStore({ folder: board.dataFolder });
  try {
    return store.shop
      .read()
      .flatMap((customer) => customer.cars.flatMap((car) => car.variants))
      .filter((variant) => variant.name === name)
      .map((variant) => store.variants.open(variant.id).document);
  } finally {
    store.close();
  }
}

/** The one document of a name in the store. */
export function storedDocument(board: OpenBoard, name: string): LayoutDocument {
  const [document, ...others] = storedDocuments(board, name);
  if (!document || others.length > 0)
    throw new Error(`The store holds ${document ? others.length + 1 : 0} layouts called ${name}`);
  return document;
}

/** A store with one customer, one car and one variant, open at the start. */
export function withSample(document: LayoutDocument): (store: Store) => void {
  return (store) => {
    const car = store.cars.add(store.customers.add('Sample customer', ''), 'Sample car', '');
    store.settings.write({ lastVariant: store.variants.add(car, document, 'Begun') });
  };
}

/** Presses Tab until the element of that accessible name has the focus, as somebody without a pointer does. */
export async function tabTo(page: Page, name: string): Promise<void> {
  for (let presses = 0; presses < 120; presses += 1) {
    const here = await page.evaluate(() => {
      const at = document.activeElement;
      return at?.getAttribute('aria-label') ?? at?.textContent?.trim() ?? '';
    });
    if (here === name) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`No Tab leads to "${name}"`);
}
