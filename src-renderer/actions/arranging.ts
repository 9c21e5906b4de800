import type { LayoutDocument } from '../../shared-math/layout/index.ts';
import { PLAIN_LAYOUT } from '../../shared-math/layout/index.ts';
import type { Car } from '../document/find.ts';
import type { OpenLayout } from '../document/open-layout.svelte.ts';
import type { Shell } from '../document/shell.svelte.ts';

/** A layout that tells what a car is: the open one, else its first in the store, else a plain car's. Nothing on failure. */
async function layoutOf(
  openLayout: OpenLayout,
  car: Car,
): Promise<{ readonly document: LayoutDocument; readonly variantId?: string } | undefined> {
  const { document, variant } = openLayout;
  if (document && variant?.carId === car.id) return { document, variantId: variant.id };
  const [first] = car.variants;
  if (!first) return { document: PLAIN_LAYOUT };
  const opened = await openLayout.ask('The arrangements cannot be laid', 'variant.open', { id: first.id });
  return opened && { document: opened.document, variantId: first.id };
}

/** Opens the sheet on which an arrangement is chosen for a car. */
export async function chooseArrangement(openLayout: OpenLayout, shell: Shell, car: Car): Promise<void> {
  const found = await layoutOf(openLayout, car);
  if (found) shell.arrange({ carId: car.id, carName: car.name, ...found });
}
