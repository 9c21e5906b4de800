import type { Page } from 'playwright-core';
import { TWENTY, taped } from '../taped-car.ts';

/** What a person does at each step of a walk, and with what the board stands before the first one. */
export interface Acts {
  /** Brings the board to where the walk begins. */
  begin(page: Page): Promise<void>;
  readonly steps: readonly ((page: Page) => Promise<void>)[];
}

const place = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();
const tab = (page: Page, name: string) => page.getByRole('tab', { name, exact: true }).click();

async function openLayout(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name }).click();
  await page.getByRole('button', { name: 'Layout', exact: true }).waitFor();
  await page.locator('[data-save-state="saved"]').waitFor();
  await page.getByRole('button', { name: 'Fit', exact: true }).waitFor();
}

/** Types so many of the twenty measurements that every shop takes, from one of them on. */
async function measure(page: Page, from: number, to: number): Promise<void> {
  for (const [id] of TWENTY.slice(from, to)) {
    const field = page.locator(`input[data-row="${id}"]`);
    await field.fill(id === 'rail-outer' ? '15 1/4' : id === 'rail-top' ? '17 1/2' : taped(id));
    await field.press('Enter');
  }
}

export const ACTS: Readonly<Record<string, Acts>> = {
  measure: {
    begin: (page) => page.getByRole('button', { name: 'Start with a plain car' }).waitFor(),
    steps: [
      async (page) => {
        await page.getByRole('button', { name: 'Start with a plain car' }).click();
        await page.getByRole('tab', { name: 'By tape' }).waitFor();
      },
      (page) => measure(page, 0, 6),
      async (page) => {
        await measure(page, 6, TWENTY.length);
        await page.getByText('points measured').first().waitFor();
      },
      async (page) => {
        await page.getByRole('button', { name: 'Measure between two points' }).waitFor();
      },
      async (page) => place(page, 'Sheet'),
    ],
  },
  'side-or-cross': {
    begin: (page) => openLayout(page, 'Box at the cowl'),
    steps: [
      async (page) => {
        await page.getByRole('button', { name: 'Choose an arrangement for this car' }).click();
        await page
          .getByRole('button', { name: /^Add as a new variant/ })
          .first()
          .waitFor();
        await page.getByText('measuring…').first().waitFor({ state: 'hidden' });
      },
      async () => {},
      async (page) => {
        // From what was said of the car down to what speaks for and against, with nothing cut through above it.
        const said = page.getByRole('region', { name: 'The car', exact: true });
        await said.evaluate((element) => element.scrollIntoView({ block: 'start' }));
        await page.getByRole('row').filter({ hasText: 'For and against' }).waitFor();
      },
      async (page) => {
        await page.getByRole('button', { name: 'Add as a new variant: Cross steer, manual' }).click();
        await page.getByRole('tab', { name: 'Compare' }).waitFor();
      },
    ],
  },
  'kill-bump-steer': {
    begin: (page) => openLayout(page, 'Box too low'),
    steps: [
      async () => {},
      async (page) => {
        await tab(page, 'Verdict');
        await page
          .getByRole('button', { name: /^Must fix: Bump steer/ })
          .first()
          .click();
        await page.getByText('All ways, with toe, ratio and gap').waitFor();
      },
      async (page) => {
        await page.getByRole('button', { name: 'Where can the ball go?' }).click();
        await page.getByText('within the limit').waitFor();
        await page.locator('[data-map-ready]').or(page.getByText('Slide along the ridge')).first().waitFor();
        await page.getByText('working it out').first().waitFor({ state: 'hidden' });
      },
      async (page) => {
        await page.keyboard.press('Escape');
        await tab(page, 'Verdict');
      },
      async (page) => {
        await page
          .getByRole('button', { name: /^Raise the box with its arm/ })
          .first()
          .click();
        await page.getByRole('button', { name: /^Undo: Raise the box/ }).waitFor();
      },
    ],
  },
  'turn-and-stops': {
    begin: (page) => openLayout(page, 'Box at the cowl'),
    steps: [
      async (page) => {
        await place(page, 'Turn');
        await page.getByRole('region', { name: 'Figures of the turn' }).waitFor();
        await page.getByRole('slider', { name: 'Handwheel', exact: true }).focus();
        await page.keyboard.press('End');
      },
      async () => {},
      async () => {},
      async (page) => tab(page, 'Car'),
    ],
  },
  'route-the-shaft': {
    begin: (page) => openLayout(page, 'Box at the cowl'),
    steps: [
      async (page) => place(page, 'Shaft'),
      async (page) => {
        await page.getByRole('button', { name: 'Suggest routes' }).click();
        await page.getByRole('button', { name: 'Use this route' }).first().waitFor({ timeout: 60_000 });
        // As far up as they go, so that all of them are in sight.
        await page
          .getByRole('heading', { name: 'Routes the board would take' })
          .evaluate((heading) => heading.scrollIntoView({ block: 'start' }));
      },
      async (page) => {
        await page.getByRole('button', { name: 'Use this route' }).last().click();
        // A hand that moves a joint leaves the clocking behind.
        const clock = page.getByRole('textbox', { name: /^Shaft 1, clock/ });
        await clock.fill('20');
        await clock.press('Enter');
        await page.getByRole('button', { name: 'Set the best clocking' }).waitFor();
      },
      async (page) => {
        await page.getByRole('button', { name: 'Set the best clocking' }).click();
        await page.getByRole('button', { name: 'Clocked best' }).waitFor();
      },
      async (page) => {
        await tab(page, 'Ends');
        await tab(page, 'Make');
      },
    ],
  },
  'print-and-build': {
    begin: (page) => openLayout(page, 'Box at the cowl'),
    steps: [
      async (page) => {
        await place(page, 'Sheet');
        await page.getByRole('img', { name: /^Build sheet, page 1/ }).waitFor({ timeout: 60_000 });
      },
      async (page) => {
        await page.getByRole('radio', { name: 'Templates at full size', exact: true }).check();
        await page.getByRole('img', { name: /^Templates at full size, page 1/ }).waitFor({ timeout: 60_000 });
        await page.getByRole('button', { name: 'Next page' }).click();
        await page.getByRole('img', { name: /^Templates at full size, page 2/ }).waitFor();
      },
      async (page) => {
        await page.getByRole('radio', { name: 'Customer’s copy', exact: true }).check();
      },
      async (page) => {
        await place(page, 'Measure');
        await tab(page, 'Finished car');
      },
    ],
  },
};
