import type { LayoutDocument } from '../../../shared-math/layout/index.ts';
import {
  checkPhoto,
  type DemonstrationShop,
  demonstrationPhotos,
  photosNamed,
  readDemonstrationShelf,
  readDemonstrations,
} from '../../files/index.ts';
import { StoreError } from '../../store/index.ts';
import type { Handlers, Program } from './handlers.ts';

type DemonstrationCalls = 'demonstration.list' | 'demonstration.take' | 'demonstration.read';

export function demonstrationHandlers({
  store,
  projectsFolder,
}: Program): Pick<Handlers, DemonstrationCalls> {
  const { customers, cars, variants, photos, shelf } = store;

  function shop(): DemonstrationShop {
    const read = readDemonstrations(projectsFolder);
    if (!read.ok) throw new StoreError('refused-document', read.failure);
    return read.value;
  }

  /** Brings the photos of layouts into the store. */
  function bringPhotos(documents: readonly LayoutDocument[]): void {
    for (const content of demonstrationPhotos(projectsFolder, photosNamed(documents))) {
      const checked = checkPhoto(content);
      if (!checked.ok)
        throw new StoreError('refused-document', `a demonstration's photo: ${checked.failure}`);
      photos.put(content, checked.value);
    }
  }

  /** Adds what is not there yet under its name: taking the demonstrations twice makes nothing twice. */
  function take(): { variantIds: string[] } {
    const { customers: shown } = shop();
    const documents = shown.flatMap((customer) =>
      customer.cars.flatMap((car) => car.layouts.map(({ document }) => document)),
    );
    bringPhotos(documents);
    return store.together(() => {
      fillShelf();
      return {
        variantIds: shown.flatMap((customer) => {
          const customerId = customers.named(customer.name) ?? customers.add(customer.name, customer.notes);
          return customer.cars.flatMap((car) => {
            const carId = cars.named(customerId, car.name) ?? cars.add(customerId, car.name, car.notes);
            return car.layouts.map(
              ({ document }) =>
                variants.named(carId, document.name) ?? variants.add(carId, document, 'Demonstration'),
            );
          });
        }),
      };
    });
  }

  /** Puts on the shelf what it does not have under that name yet. */
  function fillShelf(): void {
    const parts = readDemonstrationShelf(projectsFolder);
    if (!parts.ok) throw new StoreError('refused-document', parts.failure);
    const there = new Set(shelf.list().map(({ part }) => `${part.kind} ${part.name}`));
    shelf.add(parts.value.filter(({ kind, name }) => !there.has(`${kind} ${name}`)));
  }

  return {
    'demonstration.list': () => {
      const { name, customers: shown } = shop();
      return {
        shop: name,
        customers: shown.map((customer) => ({
          name: customer.name,
          cars: customer.cars.map((car) => ({
            name: car.name,
            layouts: car.layouts.map(({ file, about, document }) => ({ file, name: document.name, about })),
          })),
        })),
      };
    },
    'demonstration.take': take,
    'demonstration.read': ({ file }) => {
      const layouts = shop().customers.flatMap(({ cars: shown }) => shown.flatMap((car) => car.layouts));
      const found = layouts.find((layout) => layout.file === file);
      if (!found) throw new StoreError('not-found', `${file}: there is no such demonstration`);
      bringPhotos([found.document]);
      return { document: found.document };
    },
  };
}
