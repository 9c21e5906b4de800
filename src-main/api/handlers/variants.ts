import { done, type Handlers, type Program } from './handlers.ts';

type VariantCalls =
  | 'variant.add'
  | 'variant.open'
  | 'variant.save'
  | 'variant.rename'
  | 'variant.duplicate'
  | 'variant.move'
  | 'history.list'
  | 'history.read'
  | 'history.restore';

export function variantHandlers({ store }: Program): Pick<Handlers, VariantCalls> {
  const { variants, history } = store;
  return {
    'variant.add': ({ carId, document }) => ({ id: variants.add(carId, document, 'Created') }),
    'variant.open': ({ id }) => variants.open(id),
    'variant.save': (save) => variants.save(save),
    'variant.rename': ({ id, name }) => variants.rename(id, name),
    'variant.duplicate': ({ id }) => ({ id: variants.duplicate(id) }),
    'variant.move': ({ id, carId }) => done(() => variants.move(id, carId)),

    'history.list': ({ variantId }) => ({ states: variants.states(variantId) }),
    'history.read': ({ id }) => ({ document: history.read(id) }),
    'history.restore': ({ variantId, id }) => variants.restore(variantId, id),
  };
}
