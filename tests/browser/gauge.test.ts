import { expect, test } from 'vitest';
import { gaugeStations } from '../../shared-math/adjust/gauge/index.ts';
import { type LayoutDocument, resolveLayout, withValue } from '../../shared-math/layout/index.ts';
import { createState, prepareFrontEnd, solveFrontEnd } from '../../shared-math/linkage/index.ts';
import { toDegrees } from '../../shared-math/units/index.ts';
import { openStore } from '../../src-main/store/index.ts';
import { type OpenBoard, useBrowser, withSample } from '../support/browser-page.ts';
import { demonstration } from '../support/printed.ts';

const openBoard = useBrowser();

const DRAWN: LayoutDocument = demonstration('hairpins-side-steer.json');
const STATIONS = gaugeStations(DRAWN.travel, 'in').reverse();

/** The car as it was built: its pitman ball 12 mm lower than drawn. */
const [x, y, z] = DRAWN.steering.box.pitmanBall;
const BUILT = withValue(DRAWN, 'steering.box.pitmanBall', [x, y, z - 12]);

/** Toe-in that the left wheel of a car gains at each station, degrees as a gauge shows them. */
function toeOf(document: LayoutDocument): string[] {
  const frontEnd = prepareFrontEnd(resolveLayout(document));
  const state = createState();
  const toe = (heave: number) => {
    solveFrontEnd(frontEnd, heave, 0, 0, state);
    return toDegrees(state.left.toeIn);
  };
  return STATIONS.map((heave) => (toe(heave) - toe(0)).toFixed(2));
}

async function openGauge(): Promise<OpenBoard> {
  const board = await openBoard({ prepare: withSample(DRAWN) });
  const { page } = board;
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await page.getByRole('tab', { name: 'Finished car' }).click();
  await page.getByText('Nothing read yet.').waitFor();
  return board;
}

/** Types every station from the top, going on with Tab as a person does. */
async function typeStations({ page }: OpenBoard, readings: readonly string[]): Promise<void> {
  await page
    .getByRole('textbox', { name: /^Toe-in read at/ })
    .first()
    .click();
  for (const reading of readings) {
    await page.keyboard.type(reading);
    await page.keyboard.press('Tab');
  }
}

function storedGauge({ dataFolder }: OpenBoard) {
  const store = openStore({ folder: dataFolder });
  try {
    const [customer] = store.shop.read();
    return store.surveys.read(customer?.cars[0]?.id ?? '').survey.gauge;
  } finally {
    store.close();
  }
}

test('a car built as drawn agrees; its readings are kept with the car', async () => {
  const board = await openGauge();
  const { page } = board;
  await typeStations(board, toeOf(DRAWN));
  await page.getByText('Agrees within the doubt.').waitFor();
  await expect.poll(() => page.locator('[data-read]').count()).toBe(STATIONS.length);
  await expect.poll(() => storedGauge(board)?.stations.length).toBe(STATIONS.length);
  await page.reload();
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await page.getByRole('tab', { name: 'Finished car' }).click();
  await page.getByText('Agrees within the doubt.').waitFor();
});

test('a pitman ball that was built too low is named, with what to measure, and one click shows it', async () => {
  const board = await openGauge();
  const { page } = board;
  await typeStations(board, toeOf(BUILT));
  await page.getByText('Does not agree.').waitFor();
  const why = page.getByRole('region', { name: 'What would explain it' });
  const more = why.getByRole('button', { name: /^Show all/ });
  if ((await more.count()) > 0) await more.click();
  const line = why.getByRole('listitem').filter({ has: page.getByRole('button', { name: 'Pitman ball' }) });
  await expect.poll(() => line.textContent()).toMatch(/in lower/);
  await expect.poll(() => why.textContent()).toMatch(/Measure this:.*height: drawn/s);
  await line.getByRole('button').click();
  await page
    .getByRole('button', { name: /^Pitman ball/, pressed: true })
    .or(line)
    .first()
    .waitFor();
});

test('two dials, a typing error and the turning plates', async () => {
  const board = await openGauge();
  const { page } = board;
  await page.getByRole('combobox', { name: 'Gauge' }).selectOption({ label: 'Two dials on a plate' });
  const front = page.getByRole('textbox', { name: /^Front at/ }).first();
  await front.fill('a lot');
  await front.press('Enter');
  await page.getByRole('alert').first().waitFor();
  await front.fill('.050');
  await front.press('Enter');
  await expect.poll(() => storedGauge(board)?.stations[0]).toMatchObject({ front: 1.27, rear: 0 });
  // Read with dials: another kind of gauge cannot have read it.
  await page.getByRole('combobox', { name: 'Gauge' }).selectOption({ label: 'Reads the angle' });
  await page.getByText('Clear the stations first').waitFor();
  await page.getByRole('button', { name: 'Clear the stations' }).click();
  await page.getByText('Nothing read yet.').waitFor();

  const frontEnd = prepareFrontEnd(resolveLayout(DRAWN));
  const state = createState();
  solveFrontEnd(frontEnd, 0, 0, 5, state);
  const [left, right] = [toDegrees(state.left.steer), toDegrees(state.right.steer)];
  await page.getByRole('textbox', { name: 'Turned to the left, left wheel' }).fill(left.toFixed(1));
  await page.getByRole('textbox', { name: 'Turned to the left, right wheel' }).fill(right.toFixed(1));
  await page.keyboard.press('Enter');
  await page.getByText(/^Agrees: right wheel/).waitFor();
  await page.getByRole('textbox', { name: 'Turned to the left, right wheel' }).fill((right + 4).toFixed(1));
  await page.keyboard.press('Enter');
  await page.getByText(/^Does not agree: right wheel/).waitFor();
});
