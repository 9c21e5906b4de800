import { parse } from 'node:path';
import { documentText, refusalLine } from '../../../shared-math/layout/index.ts';
import { shownText } from '../../../shared-math/outside/index.ts';
import {
  CAR_FILE_EXTENSION,
  carFile,
  FILE_TEXT_MAX,
  photosNamed,
  readImport,
  safeFileName,
} from '../../files/index.ts';
import { StoreError } from '../../store/index.ts';
import type { Received } from '../contract.ts';
import type { Handlers, Program } from './handlers.ts';

/** Whose cars those are that come without a customer. */
const IMPORTED = 'Imported';

export function fileHandlers({
  store,
}: Program): Pick<Handlers, 'file.import' | 'file.exportVariant' | 'file.exportCar'> {
  const { customers, cars, variants, surveys, photos } = store;

  /** `named` is the customer that the file itself tells of. */
  function customerFor({ carId, customerId }: Received<'file.import'>, named = IMPORTED): string {
    if (customerId !== undefined) return customerId;
    if (carId !== undefined) return cars.read(carId).customerId;
    return customers.named(named) ?? customers.add(named, '');
  }

  function importFile(input: Received<'file.import'>): { variantIds: string[] } {
    const file = readImport(input.text);
    if (!file.ok)
      throw new StoreError('refused-document', `${shownText(input.fileName)}: ${refusalLine(file.failure)}`);
    const label = `Imported from ${shownText(input.fileName)}`;
    return store.together(() => {
      if (file.value.kind === 'car') {
        const { name, notes, layouts, customer, measured } = file.value.car;
        for (const { content, facts } of file.value.car.photos) photos.put(content, facts);
        const carId = cars.addDistinct(customerFor(input, customer), name, notes);
        if (measured) surveys.begin(carId, measured);
        return { variantIds: layouts.map((layout) => variants.add(carId, layout, label)) };
      }
      const { layout } = file.value;
      // A layout that comes without a car gets one named after its file, as that is the name the person just saw.
      const carName = parse(input.fileName).name.trim().slice(0, 200) || layout.name;
      const carId = input.carId ?? cars.addDistinct(customerFor(input), carName, '');
      return { variantIds: [variants.add(carId, layout, label)] };
    });
  }

  return {
    'file.import': importFile,
    'file.exportVariant': ({ id }) => {
      const { carName, document } = variants.open(id);
      return {
        fileName: safeFileName(`${carName} - ${document.name}`, 'json'),
        text: documentText(document),
      };
    },
    'file.exportCar': ({ id }) => {
      const { name, notes, customerName } = cars.read(id);
      const { documents: layouts, damaged: damagedLayouts } = variants.readableIn(id);
      const damaged = [...damagedLayouts, ...(surveys.damaged(id) ? ['its measurements'] : [])];
      const contents = new Map(
        photosNamed(layouts).flatMap((hash) => {
          const photo = photos.read(hash);
          return photo ? [[hash, photo.content] as const] : [];
        }),
      );
      const text = documentText(
        carFile({ name, notes, customer: customerName }, layouts, contents, surveys.readable(id)),
      );
      if (text.length > FILE_TEXT_MAX)
        throw new StoreError('refused-document', `${shownText(name)}: its photos are too large for one file`);
      return {
        fileName: safeFileName(name, CAR_FILE_EXTENSION),
        text,
        ...(damaged.length > 0 ? { damaged } : {}),
      };
    },
  };
}
