import type { LayoutDocument } from '../../shared-math/layout/index.ts';
import { PLAIN_LAYOUT } from '../document/blank-layout.ts';
import type { Car } from '../document/find.ts';
import type { Tools } from './actions.ts';

/** A layout that tells what a car is: the open one, else its first in the store, else a plain car's. Nothing on failure. */
async function layoutOf({ bench }: Tools, car: Car): Promise<LayoutDocument | undefined> {
  if (bench.document && bench.variant?.carId === car.id) return bench.document;
  const [first] = car.variants;
  if (!first) return PLAIN_LAYOUT;
  const opened = await bench.ask('The arrangements cannot be laid', 'variant.open', { id: first.id });
  return opened?.document;
}

/** Opens the sheet on which an arrangement is chosen for a car. */
export async function chooseArrangement(tools: Tools, car: Car): Promise<void> {
  const document = await layoutOf(tools, car);
  if (document) tools.shell.arrange({ carId: car.id, carName: car.name, document });
}
