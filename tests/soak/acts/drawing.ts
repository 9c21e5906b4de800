import type { Page } from 'playwright-core';
import type { View } from '../../../shared-math/drawing/index.ts';
import { drag, findHandle, handleOf, type Spot } from '../../support/board-pointer.ts';
import { pause } from '../pause.ts';
import { drawn } from '../plan.ts';
import { NotNow, typePitmanHeight, type World } from '../world.ts';

const VIEWS: readonly View[] = ['side', 'top', 'front'];
/** Points of every kind of axle location; a layout has some of them. */
const POINTS = [
  'steering.box.pitmanBall',
  'steering.box.sectorCentre',
  'steering.dragLinkBall',
  'axle.left.tieRodBall',
  'axle.left.kingpinTop',
  'axle.left.kingpinBottom',
  'location.framePivot',
  'location.left.framePivot',
  'location.left.upper.frame',
  'location.left.lower.axle',
  'location.left.fixedEye',
  'location.left.shackleEye',
  'lateral.axle',
  'lateral.frame',
];

interface Shown extends Spot {
  readonly view: View;
  readonly point: string;
}

/** The handles that a pointer can reach: on the canvas, with nothing over them. */
async function shown(page: Page): Promise<Shown[]> {
  return page.evaluate(
    ([views, points]) =>
      views.flatMap((view) =>
        points.flatMap((point) => {
          const spot = window.toeboardBoard?.handleAt(view as View, point);
          const free = spot && document.elementFromPoint(spot.x, spot.y)?.tagName === 'CANVAS';
          return free ? [{ view: view as View, point, x: spot.x, y: spot.y }] : [];
        }),
      ),
    [VIEWS, POINTS] as const,
  );
}

async function someHandle(page: Page, lot: number): Promise<Shown> {
  const handles = await shown(page);
  if (handles.length === 0) throw new NotNow('no handle is in sight');
  return drawn(handles, lot);
}

const between = (lot: number, most: number) => Math.round((2 * lot - 1) * most);

export async function dragPoint({ page }: World, lots: readonly number[]): Promise<string> {
  const [which = 0, right = 0, down = 0, how = 0] = lots;
  const from = await someHandle(page, which);
  const [across, along] = [between(right, 18), between(down, 18)];
  const key = how < 0.15 ? 'Shift' : how < 0.3 ? 'Alt' : undefined;
  if (key) await page.keyboard.down(key);
  try {
    await drag(page, from, across, along);
    // Now and then it is taken up again before it is saved, or given back in the middle.
    if (how > 0.85) {
      await page.mouse.down();
      await page.mouse.move(from.x, from.y, { steps: 4 });
      if (how > 0.92) await page.keyboard.press('Escape');
      await page.mouse.up();
    }
  } finally {
    if (key) await page.keyboard.up(key);
  }
  return `${from.point} in ${from.view} by ${across}, ${along} px${key ? ` with ${key}` : ''}`;
}

export async function nudgePoint({ page }: World, lots: readonly number[]): Promise<string> {
  const [which = 0, way = 0, times = 0] = lots;
  const at = await someHandle(page, which);
  await page.mouse.click(at.x, at.y);
  const key = drawn(['ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight'], way);
  const presses = 1 + Math.floor(times * 8);
  for (let press = 0; press < presses; press += 1) await page.keyboard.press(key);
  return `${at.point}, ${key} ${presses} times`;
}

export async function typeHeight({ page }: World, lots: readonly number[]): Promise<string> {
  const given = (lots[1] ?? 0) < 0.2 ? 'about so high' : `${Math.round(300 + 100 * (lots[0] ?? 0))} mm`;
  await typePitmanHeight(page, given);
  // What is no length is told beside the field, and taken back.
  if (given.startsWith('about')) await page.keyboard.press('Escape');
  return given;
}

export async function undo({ page }: World, lots: readonly number[]): Promise<string> {
  const times = 1 + Math.floor((lots[0] ?? 0) * 4);
  for (let time = 0; time < times; time += 1) await page.keyboard.press('ControlOrMeta+z');
  return `${times} times`;
}

export async function redo({ page }: World, lots: readonly number[]): Promise<string> {
  const times = 1 + Math.floor((lots[0] ?? 0) * 3);
  for (let time = 0; time < times; time += 1) await page.keyboard.press('ControlOrMeta+Shift+z');
  return `${times} times`;
}

export async function pose({ page }: World, lots: readonly number[]): Promise<string> {
  const name = drawn(['Heave', 'Roll', 'Handwheel'], lots[0] ?? 0);
  const slider = page.getByRole('slider', { name, exact: true });
  await slider.focus();
  const key = (lots[1] ?? 0) < 0.5 ? 'PageUp' : 'PageDown';
  for (let press = 0; press < 6; press += 1) await slider.press(key);
  await slider.blur();
  await page.keyboard.press('r');
  return `${name}, ${key}`;
}

export async function pullTyre({ page }: World, lots: readonly number[]): Promise<string> {
  if (!(await findHandle(page, 'front', 'axle.left.wheelCentre'))) throw new NotNow('no wheel is in sight');
  const { x, y } = await handleOf(page, 'front', 'axle.left.wheelCentre');
  await page.mouse.move(x + 6, y + 40);
  await page.mouse.down();
  await page.mouse.move(x + 6, y + 40 - between(lots[0] ?? 0, 25), { steps: 6 });
  await pause(200);
  if ((lots[1] ?? 0) < 0.3) await page.keyboard.press('Escape');
  await page.mouse.up();
  await page.keyboard.press('r');
  return 'the left tyre';
}
