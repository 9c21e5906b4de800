import type { LayoutDocument } from '../../shared-math/layout/index.ts';
import { PLAIN_LAYOUT } from '../document/blank-layout.ts';
import type { Car } from '../document/find.ts';
import type { Shell } from '../document/shell.svelte.ts';
import type { Workbench } from '../document/workbench.svelte.ts';

/** A layout that tells what a car is: the open one, else its first in the store, else a plain car's. Nothing on failure. */
async function layoutOf(workbench: Workbench, car: Car): Promise<LayoutDocument | undefined> {
  if (workbench.document && workbench.variant?.carId === car.id) return workbench.document;
  const [first] = car.variants;
  if (!first) return PLAIN_LAYOUT;
  const opened = await workbench.ask('The arrangements cannot be laid', 'variant.open', { id: first.id });
  return opened?.document;
}

/** Opens the sheet on which an arrangement is chosen for a car. */
export async function chooseArrangement(workbench: Workbench, shell: Shell, car: Car): Promise<void> {
  const document = await layoutOf(workbench, car);
  if (document) shell.arrange({ carId: car.id, carName: car.name, document });
}
