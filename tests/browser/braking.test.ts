import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { type LayoutDocument, parseLayout } from '../../shared-math/layout/index.ts';
import { figure } from '../support/board-pointer.ts';
import { pointButton, useBrowser, withSample } from '../support/browser-page.ts';

const openBoard = useBrowser();

function demonstration(name: string): LayoutDocument {
  const outcome = parseLayout(
    readFileSync(join(resolve(import.meta.dirname, '../..'), 'projects', `${name}.json`), 'utf8'),
  );
  if (!outcome.ok) throw new Error(outcome.failure.reason);
  return outcome.value;
}

async function opened(name: string, size = { width: 1440, height: 900 }) {
  const board = await openBoard({ prepare: withSample(demonstration(name)), size });
  await pointButton(board.page, 'Pitman ball').waitFor();
  return board;
}

test('the leaf demonstration is braked by the slider: the curves, what is left, and what helps', async () => {
  const { page } = await opened('parallel-leaf-cross-steer');
  await page.getByRole('button', { name: 'over braking' }).click();
  const slider = page.getByRole('slider', { name: 'Braking', exact: true });
  await expect.poll(() => slider.getAttribute('aria-valuetext')).toBe('brakes off');
  // The command line's figures, tests/contract/brake-command.test.ts.
  await expect.poll(() => figure(page, 'caster left')).toBe('-0.9°');
  await expect.poll(() => figure(page, 'caster gone')).toMatch(/^gone at 0\.6\d g$/);
  await expect.poll(() => figure(page, 'assumed')).toContain('50 % of the weight in front');
  const caster = page.getByRole('region', { name: 'Caster' });
  const typed = page.getByRole('textbox', { name: 'Braking, typed' });
  await typed.fill('0.5');
  await typed.press('Enter');
  await expect.poll(() => slider.getAttribute('aria-valuetext')).toBe('braking at 0.50 g');
  await caster.getByText('1.11°').first().waitFor();
  await page.getByRole('button', { name: 'To ride height' }).click();
  await expect.poll(() => slider.getAttribute('aria-valuetext')).toBe('brakes off');
});

test('links that hold the axle are said to, and a typed stiffness lets it wind up', async () => {
  const { page } = await opened('hairpins-side-steer', { width: 1280, height: 720 });
  const slider = page.getByRole('slider', { name: 'Braking', exact: true });
  await slider.focus();
  await page.keyboard.press('End');
  await page
    .getByRole('status')
    .getByText(/Its links hold this axle/)
    .waitFor();
  await page.getByRole('button', { name: 'over braking' }).click();
  await expect.poll(() => figure(page, 'wind-up')).toBe('0.0°');
  await page.getByRole('tab', { name: 'Car', exact: true }).click();
  const stiffness = page.getByRole('textbox', { name: 'Stiffness against winding up' });
  await expect.poll(() => stiffness.getAttribute('placeholder')).toBe('links do not give');
  await stiffness.fill('500 N·m/°');
  await stiffness.press('Enter');
  await page.locator('[data-figure="wind-up stiffness"]').waitFor();
  await expect.poll(() => figure(page, 'wind-up')).not.toBe('0.0°');
});
