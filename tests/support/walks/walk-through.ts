import type { Page } from 'playwright-core';
import { labelsIn, type Walk, type WalkPicture } from '../../../shared-math/words/walks/index.ts';
import { ACTS } from './acts.ts';
import { labelsNotComing, labelsOnScreen } from './labels.ts';

/** A label that a walk names and that stood nowhere on the page, before the step or after it. */
export interface MissingLabel {
  readonly walk: string;
  readonly step: number;
  readonly label: string;
}

/**
 * Goes a walk as a person does. Returns the labels that its sentences name and the page does not have; `picture` is called
 * where the walk has one, with the page as it then stands. Throws where a step cannot be done.
 */
export async function walkThrough(
  page: Page,
  walk: Walk,
  picture: (page: Page, wanted: WalkPicture) => Promise<void> = async () => {},
): Promise<MissingLabel[]> {
  const acts = ACTS[walk.id];
  if (!acts || acts.steps.length !== walk.steps.length)
    throw new Error(`${walk.id}: its acts are not its steps`);
  await acts.begin(page);
  const missing: MissingLabel[] = [];
  for (const [step, { words, picture: shown }] of walk.steps.entries()) {
    const before = await labelsOnScreen(page);
    await acts.steps[step]?.(page);
    const wanted = labelsIn(words).filter((label) => !before.has(label));
    for (const label of await labelsNotComing(page, wanted)) missing.push({ walk: walk.id, step, label });
    if (shown) await picture(page, shown);
  }
  return missing;
}
